package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// The chart of days: from where to where.
const (
	coldestDay   = unit.Temp(unit.ZeroCelsius + 5)
	hottestDay   = unit.Temp(unit.ZeroCelsius + 45)
	driestDay    = 0.0
	dampestDay   = 1.0
	mostTemps    = 9
	mostHumids   = 6
	dayWide      = 76 // columns from which the chart stands beside its sentences
	leastDayHigh = 12 // rows below which it is too coarse to read today off it
)

// dayView is today among all days: which are good to spray in, and where the panel
// draws water.
func (b *bench) dayView(room size) [][]string {
	if room.h < leastDayHigh {
		return shareOut([][]string{b.daySentences(room.w), b.dayLimits(room.w)}, room)
	}
	chart := b.climate()
	if room.w >= dayWide {
		left := room.w * 3 / 5
		sentences := b.daySentences(room.w - left - 2)
		if rows := chart.Rows(left, room.h, b.s.glyphs, b.s.ink); rows != nil && len(sentences) <= room.h {
			return [][]string{joined(rows, sentences, left+2)}
		}
	}
	sentences := b.daySentences(room.w)
	if rows := chart.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink); rows != nil {
		return shareOut([][]string{rows, sentences}, room)
	}
	return shareOut([][]string{sentences, b.dayLimits(room.w)}, room)
}

// dayInWords is the view without its picture.
func (b *bench) dayInWords(w int) [][]string { return [][]string{b.daySentences(w), b.dayLimits(w)} }

// daySentences is what the day does to the coat and to the settings.
func (b *bench) daySentences(w int) (rows []string) {
	s, d := b.s, b.tried.Today
	rows = append(rows, wrap(s.say("day-"+string(d.Verdict))+": "+answer.RemedyText(d, s.words, s.sys), w)...)
	for _, r := range b.tried.Setup.Reasons {
		if r.About == "weather" {
			rows = append(rows, hang("- ", s.text(r.ID, r.Figures...), w)...)
		}
	}
	return rows
}

// dayLimits is the chart in sentences: how humid air as warm as today's may be.
func (b *bench) dayLimits(w int) []string {
	day := b.tried.Day
	l := day.Limits(day.Air)
	id := "day-chart"
	switch {
	case l.Wait == 0:
		id = "day-chart-none"
	case l.Stop-l.Wait <= calc.HumidityStep:
		id = "day-chart-stop"
	}
	return wrap(b.s.text(id, calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("wait", calc.FigureShare, l.Wait), calc.FigureOf("stop", calc.FigureShare, l.Stop)), w)
}

func (b *bench) climate() draw.Climate {
	s, day := b.s, b.tried.Day
	warm, damp := s.axis(unit.Temperature), s.axis(unit.Share)
	warm.decimals = 0
	known := map[float64]calc.DayLimits{}
	limits := func(t float64) calc.DayLimits {
		l, ok := known[t]
		if !ok {
			l = day.Limits(unit.Temp(warm.Of(s.sys, t)))
			known[t] = l
		}
		return l
	}
	point := func(d calc.Day, text string) draw.DayPoint {
		return draw.DayPoint{Temperature: warm.at(float64(d.Air)), Humidity: damp.at(d.Humidity), Text: text}
	}
	c := draw.Climate{
		Temperature: draw.NewScale(warm.at(float64(coldestDay)), warm.at(float64(hottestDay)), mostTemps, warm.number),
		Humidity:    draw.NewScale(damp.at(driestDay), damp.at(dampestDay), mostHumids, damp.text),
		At: func(t, h float64) draw.Region {
			switch l := limits(t); {
			case h > damp.at(l.Stop):
				return draw.Stop
			case h > damp.at(l.Wait), l.Wait == 0:
				return draw.Wait
			}
			return draw.Go
		},
		Dew:     func(t float64) float64 { return damp.at(limits(t).Stop) },
		DewText: s.say("day-dew"),
		Today:   point(day.Day, s.text("day-today", calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("humidity", calc.FigureShare, day.Humidity))),
		Go:      s.say("day-go"), Wait: s.say("day-wait"), Stop: s.say("day-stop"),
	}
	if was := &b.kept.Day.Day; was.Air != day.Air || was.Humidity != day.Humidity {
		c.Ghost = point(*was, s.say("mark-was"))
	}
	return c
}
