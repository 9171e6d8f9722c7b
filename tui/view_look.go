package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// Rooms in which the three pictures stand together, and what each has of them.
const (
	lookWide  = 76
	lookHigh  = 14
	rulerHigh = 4
)

// lookView is the settings as a painter sees them: the needle of the wall's gauge, how
// far the inlet valve is open, the gun before the panel.
func (b *bench) lookView(room size) [][]string {
	if b.tried.Stopped() {
		return shareOut([][]string{b.unset(room.w)}, room)
	}
	if room.w >= lookWide && room.h >= lookHigh {
		high := room.h - rulerHigh - 1
		left := room.w / 2
		dial, bore := b.dial().Rows(left-2, high, b.s.glyphs, b.s.ink), b.bore().Rows(room.w-left, high, b.s.glyphs, b.s.ink)
		ruler := b.ruler().Rows(room.w, rulerHigh+1, b.s.glyphs, b.s.ink)
		if dial != nil && bore != nil && ruler != nil {
			return [][]string{append(joined(dial, bore, left), ruler...)}
		}
	}
	room.h = max(room.h-1, 1) // for the row that says there is more
	var ruler []string
	if room.h > rulerHigh { // else it has no room for its words
		ruler = b.ruler().Rows(room.w, room.h, b.s.glyphs, b.s.ink)
	}
	var all [][]string
	for _, p := range []struct {
		rows []string
		text string
	}{
		{b.dial().Rows(room.w, room.h, b.s.glyphs, b.s.ink), b.dialText()},
		{b.bore().Rows(room.w, room.h, b.s.glyphs, b.s.ink), b.boreText()},
		{ruler, b.rulerText()},
	} {
		if p.rows == nil {
			p.rows = wrap(p.text, room.w)
		}
		for len(p.rows) > room.h {
			all, p.rows = append(all, p.rows[:room.h]), p.rows[room.h:]
		}
		all = append(all, p.rows)
	}
	return all
}

// unset is what stands where the settings would, of a job that is stopped.
func (b *bench) unset(w int) []string {
	return wrap(b.s.text("unset", calc.TextFigure("turn", answer.TurnText(b.s.words, b.s.sys, b.tried.Setup.Turn()))), w)
}

// joined is two blocks side by side, the right one from a column on.
func joined(left, right []string, col int) (rows []string) {
	for y := range max(len(left), len(right)) {
		var l, r string
		if y < len(left) {
			l = left[y]
		}
		if y < len(right) {
			r = right[y]
		}
		rows = append(rows, pad(l, col)+r)
	}
	return rows
}

// lookInWords is the view without its pictures.
func (b *bench) lookInWords(w int) [][]string {
	if b.tried.Stopped() {
		return [][]string{b.unset(w)}
	}
	return [][]string{wrap(b.dialText(), w), wrap(b.boreText(), w), wrap(b.rulerText(), w)}
}

// mark is a value on an axis under the sentence of an id.
func (s *session) mark(a axis, id string, si float64) draw.Mark {
	return draw.Mark{At: a.at(si), Text: s.say(id) + " " + a.Text(s.sys, si, unit.Usual)}
}

func (b *bench) dial() draw.Dial {
	s, v := b.s, b.tried.Setup
	pressure, wall, was := s.axis(unit.Pressure), &v.Wall, b.kept.Setup.Wall
	top := max(wall.Limit, wall.Static, was.Static, v.Now.Wall)
	setting := b.settings(&b.tried)[0]
	d := draw.Dial{
		Scale: draw.NewScale(0, pressure.at(float64(top))*1.15, 7, pressure.number),
		Set:   s.mark(pressure, "mark-set", float64(wall.Flowing)),
		Rest:  s.mark(pressure, "mark-rest", float64(wall.Static)),
		Limit: s.mark(pressure, "mark-limit", float64(wall.Limit)),
		Label: setting.name + " " + setting.text,
	}
	if likely, ok := b.tried.LikelyWall(); ok {
		d.Likely = draw.Span{Low: pressure.at(float64(likely.Low)), High: pressure.at(float64(likely.High)), Text: setting.likely}
	}
	switch {
	case was.Flowing != wall.Flowing && !b.kept.Stopped():
		d.Ghost = s.mark(pressure, "mark-was", float64(was.Flowing))
	case v.Now.Given:
		d.Ghost = s.mark(pressure, "mark-now", float64(v.Now.Wall))
	}
	return d
}

// dialText says what the dial shows.
func (b *bench) dialText() string {
	w := b.tried.Setup.Wall
	id := "look-dial-short"
	f := []calc.Figure{calc.RegulatorFigure(b.tried.Request.RegulatorAt()), calc.FigureOf("flowing", calc.FigureGauge, w.Flowing), calc.BriefFigure("static", calc.FigureGauge, w.Static), calc.FigureOf("limit", calc.FigureGauge, w.Limit)}
	if likely, ok := b.tried.LikelyWall(); ok {
		id = "look-dial"
		f = append(f, calc.BriefFigure("low", calc.FigureGauge, likely.Low), calc.BriefFigure("high", calc.FigureGauge, likely.High))
	}
	return b.s.text(id, f...)
}

func (b *bench) bore() draw.Bore {
	s, v := b.s, b.tried.Setup
	opening := func(id string, w calc.Way) draw.Opening {
		f := []calc.Figure{calc.FigureOf("wall", calc.FigureGauge, w.Wall), calc.FigureOf("opening", calc.FigureShare, w.Opening), calc.FigureOf("mach", calc.FigureRatio, w.Mach)}
		return draw.Opening{Share: w.Area, Texts: []string{s.text(id, f...), s.text("bore-opening", f...), s.text("bore-mach", f...)}}
	}
	if v.Valve.None {
		return draw.Bore{}
	}
	out := draw.Bore{Open: s.say("bore-open"), Closed: s.say("bore-closed")}
	out.Now = opening("bore-set", calc.Way{Wall: v.Wall.Flowing, Opening: v.Valve.Opening, Area: v.Valve.Area, Mach: v.Valve.Mach})
	if v.Comparison.Given {
		out.Else = opening("bore-high", v.Comparison.High)
	}
	return out
}

// boreText says what the bores show.
func (b *bench) boreText() string {
	v := b.tried.Setup
	if v.Valve.None {
		return b.s.say("look-no-valve")
	}
	f := []calc.Figure{
		calc.FigureOf("wall", calc.FigureGauge, v.Wall.Flowing), calc.FigureOf("opening", calc.FigureShare, v.Valve.Opening),
		calc.FigureOf("area", calc.FigureShare, v.Valve.Area), calc.FigureOf("mach", calc.FigureRatio, v.Valve.Mach),
	}
	if !v.Comparison.Given {
		return b.s.text("look-bore", f...)
	}
	h := v.Comparison.High
	return b.s.text("look-bore-high", append(f, calc.RegulatorFigure(b.tried.Request.RegulatorAt()), calc.FigureOf("highWall", calc.FigureGauge, h.Wall), calc.FigureOf("highOpening", calc.FigureShare, h.Opening),
		calc.FigureOf("highArea", calc.FigureShare, h.Area), calc.FigureOf("highMach", calc.FigureRatio, h.Mach))...)
}

func (b *bench) ruler() draw.Ruler {
	s, d := b.s, b.tried.Setup.Distance
	distance, setting := s.axis(unit.Distance), b.settings(&b.tried)[1]
	span := func(low, high unit.Length, text string) draw.Span {
		return draw.Span{Low: distance.at(float64(low)), High: distance.at(float64(high)), Text: text}
	}
	far := max(d.High, b.kept.Setup.Distance.High)
	r := draw.Ruler{
		Target: draw.Mark{At: distance.at(float64(d.Target)), Text: setting.text},
		Keep:   span(d.Low, d.High, setting.notes[0]),
		Gun:    s.say("ruler-cap"), Panel: s.say("ruler-panel"),
	}
	if p := b.tried.Spread; p != nil {
		far = max(far, p.Distance.High)
		r.Likely = span(p.Distance.Low, p.Distance.High, setting.likely)
	}
	if was := b.kept.Setup.Distance.Target; was != d.Target && !b.kept.Stopped() {
		r.Ghost = s.mark(distance, "mark-was", float64(was))
	}
	r.Scale = draw.NewScale(0, distance.at(float64(far))*1.1, 12, distance.number)
	return r
}

// rulerText says what the ruler shows.
func (b *bench) rulerText() string {
	d := b.tried.Setup.Distance
	return b.s.text("look-ruler", calc.FigureOf("target", calc.FigureDistance, d.Target), calc.FigureOf("low", calc.FigureDistance, d.Low), calc.FigureOf("high", calc.FigureDistance, d.High))
}
