package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// The chart of days: from where to where, in degrees Celsius and in percent.
const (
	coldestDay   = 5
	hottestDay   = 45
	driestDay    = 0
	dampestDay   = 100
	mostTemps    = 9
	mostHumids   = 6
	dayNarrowed  = 76 // columns from which the chart stands beside its sentences
	leastDayHigh = 12 // rows below which it is too coarse to read today off it
)

// dayView is today among all days: which are good to spray in, and where the panel
// draws water.
func (b *bench) dayView(room size) [][]string {
	if room.h < leastDayHigh {
		return leaves([][]string{b.dayTold(room.w), b.dayTurns(room.w)}, room)
	}
	chart := b.climate()
	if room.w >= dayNarrowed {
		left := room.w * 3 / 5
		told := b.dayTold(room.w - left - 2)
		if rows := chart.Rows(left, room.h, b.s.glyphs, b.s.ink); rows != nil && len(told) <= room.h {
			return [][]string{joined(rows, told, left+2)}
		}
	}
	told := b.dayTold(room.w)
	if rows := chart.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink); rows != nil {
		return leaves([][]string{rows, told}, room)
	}
	return leaves([][]string{told, b.dayTurns(room.w)}, room)
}

// dayTold is what the day does to the coat and to the settings.
func (b *bench) dayTold(w int) (rows []string) {
	s, d := b.s, &b.tried.today
	text := s.say("turn-none")
	if d.Remedy.ID != "" {
		text = s.text(d.Remedy.Sentence(), d.Remedy.Figures())
	}
	rows = append(rows, wrap(s.say("day-"+string(d.Verdict))+": "+text, w)...)
	for _, r := range b.tried.setup.Reasons {
		if r.About == "weather" {
			rows = append(rows, hang("- ", s.text(r.ID, r.Figures), w)...)
		}
	}
	return rows
}

// dayTurns is the chart in sentences: how humid air as warm as today's may be.
func (b *bench) dayTurns(w int) []string {
	l := b.tried.day.Limits(b.tried.day.Air)
	f := calc.Figures{tempFigure("air", b.tried.day.Air), shareFigure("wait", l.Wait), shareFigure("stop", l.Stop)}
	switch {
	case l.Wait == 0:
		return wrap(b.s.text("day-chart-none", f), w)
	case l.Stop-l.Wait <= calc.HumidityStep:
		return wrap(b.s.text("day-chart-stop", f), w)
	}
	return wrap(b.s.text("day-chart", f), w)
}

func (b *bench) climate() draw.Climate {
	s, day := b.s, &b.tried.day
	percent := func(v float64) string { return unit.PercentText(v/100, 0) }
	known := map[float64]calc.DayLimits{}
	limits := func(t float64) calc.DayLimits {
		l, ok := known[t]
		if !ok {
			l = day.Limits(s.temperature(t))
			known[t] = l
		}
		return l
	}
	c := draw.Climate{
		Temperature: draw.NewScale(s.degrees(unit.Celsius(coldestDay)), s.degrees(unit.Celsius(hottestDay)), mostTemps, func(v float64) string { return bare(s.degreesText(v)) }),
		Humidity:    draw.NewScale(driestDay, dampestDay, mostHumids, percent),
		At: func(t, h float64) draw.Region {
			switch l := limits(t); {
			case h > 100*l.Stop:
				return draw.Stop
			case h > 100*l.Wait, l.Wait == 0:
				return draw.Wait
			}
			return draw.Go
		},
		Dew:     func(t float64) float64 { return 100 * limits(t).Stop },
		DewText: s.say("day-dew"),
		Today:   draw.DayPoint{Temperature: s.degrees(day.Air), Humidity: 100 * day.Humidity, Text: s.text("day-today", calc.Figures{tempFigure("air", day.Air), shareFigure("humidity", day.Humidity)})},
		Go:      s.say("day-go"), Wait: s.say("day-wait"), Stop: s.say("day-stop"),
	}
	if was := &b.kept.day; was.Air != day.Air || was.Humidity != day.Humidity {
		c.Ghost = draw.DayPoint{Temperature: s.degrees(was.Air), Humidity: 100 * was.Humidity, Text: s.say("mark-was")}
	}
	return c
}
