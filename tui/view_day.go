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
	leastDayHigh = 10 // rows below which it is too coarse to read today off it
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
	headline := answer.Headline(s.words, s.sys, &d.Judgement, answer.DayGoes)
	rows = append(rows, wrap(headline.Name+": "+headline.Text, w)...)
	for _, c := range answer.AgainstRows(s.words, s.sys, &d.Judgement) {
		rows = append(rows, hang("- ", c.Text, w)...)
	}
	for _, r := range b.tried.Setup.Reasons {
		if r.About == "weather" {
			rows = append(rows, hang("- ", s.text(r.ID, r.Figures...), w)...)
		}
	}
	return rows
}

// dayLimits is the chart in sentences.
func (b *bench) dayLimits(w int) []string { return wrap(b.s.dayLimits(b.tried.Day), w) }

// dayLimits says how humid air as warm as a day's may be.
func (s *session) dayLimits(day *calc.DayRequest) string {
	l := calc.NewChart(day).Limits(day.Air)
	id := "day-chart"
	if l.Watch <= l.DryWatch {
		id = "day-chart-none"
	}
	return s.text(id, calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("from", calc.FigureShare, l.DryWatch), calc.FigureOf("to", calc.FigureShare, l.Watch), calc.FigureOf("stop", calc.FigureShare, l.Stop))
}

// regions is how each verdict of a day is shown.
var regions = [...]draw.Region{calc.VerdictGo: draw.Go, calc.VerdictWatch: draw.Watch, calc.VerdictWait: draw.Wait, calc.VerdictStop: draw.Stop}

// climate is the day that is tried among all days, with what it was.
func (b *bench) climate() draw.Weather {
	c, day := b.s.climate(b.tried.Day), b.tried.Day
	if was := &b.kept.Day.Day; was.Air != day.Air || was.Humidity != day.Humidity {
		c.Ghost = b.s.dayPoint(was, b.s.say("mark-was"))
	}
	return c
}

// dayAxes are the chart's temperature and humidity.
func (s *session) dayAxes() (warm, damp axis) {
	warm, damp = s.axis(unit.Temperature), s.axis(unit.Share)
	warm.decimals = 0
	return warm, damp
}

// dayPoint is a day on the chart.
func (s *session) dayPoint(d *calc.Day, text string) draw.DayPoint {
	warm, damp := s.dayAxes()
	return draw.DayPoint{Temperature: warm.at(float64(d.Air)), Humidity: damp.at(d.Humidity), Text: text}
}

// climate is a day among all days.
func (s *session) climate(day *calc.DayRequest) draw.Weather {
	warm, damp := s.dayAxes()
	chart, known := calc.NewChart(day), map[float64]calc.DayLimits{}
	limits := func(t float64) calc.DayLimits {
		l, ok := known[t]
		if !ok {
			l = chart.Limits(unit.Temp(warm.Of(s.sys, t)))
			known[t] = l
		}
		return l
	}
	return draw.Weather{
		Temperature: draw.NewScale(warm.at(float64(coldestDay)), warm.at(float64(hottestDay)), mostTemps, warm.number),
		Humidity:    draw.NewScale(damp.at(driestDay), damp.at(dampestDay), mostHumids, damp.number),
		At: func(t, h float64) draw.Region {
			l := limits(t)
			return regions[l.At(damp.Of(s.sys, h))]
		},
		Dew:     func(t float64) float64 { return damp.at(limits(t).Dew) },
		DewText: s.say("day-dew"), TemperatureUnit: unit.Temperature.Unit(s.sys), HumidityUnit: s.say("short-humidity") + " " + unit.Share.Unit(s.sys),
		TemperatureError: warm.at(float64(coldestDay)+float64(day.Instruments.Thermometer.Within)) - warm.at(float64(coldestDay)),
		HumidityError:    damp.at(day.Instruments.Hygrometer.Within),
		Today:            s.dayPoint(&day.Day, s.text("day-today", calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("humidity", calc.FigureShare, day.Humidity))),
		Go:               s.say("day-go"), Watch: s.say("day-watch"), Wait: s.say("day-wait"), Stop: s.say("day-stop"),
	}
}
