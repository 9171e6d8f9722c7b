package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
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

func (b *bench) dial() draw.Dial {
	s, v := b.s, b.tried.setup
	wall := &v.Wall
	top := max(wall.Limit, wall.Static, b.kept.setup.Wall.Static, v.Now.Wall)
	d := draw.Dial{
		Scale: draw.NewScale(0, s.pressure(top)*1.15, 7, func(p float64) string { return bare(s.pressureText(p)) }),
		Set:   draw.Mark{At: s.pressure(wall.Flowing), Text: s.say("mark-set") + " " + s.sys.Gauge(wall.Flowing, unit.Usual)},
		Rest:  draw.Mark{At: s.pressure(wall.Static), Text: s.say("mark-rest") + " " + s.sys.Gauge(wall.Static, unit.Usual)},
		Limit: draw.Mark{At: s.pressure(wall.Limit), Text: s.say("mark-limit") + " " + s.sys.Gauge(wall.Limit, unit.Usual)},
		Label: b.three(&b.tried)[0].name + " " + s.sys.Gauge(wall.Flowing, unit.Usual),
	}
	if p := b.tried.spread; p != nil {
		d.Likely = draw.Span{Low: s.pressure(p.Wall.Low), High: s.pressure(p.Wall.High), Text: b.three(&b.tried)[0].likely}
	}
	switch {
	case b.kept.setup.Wall.Flowing != wall.Flowing:
		d.Ghost = draw.Mark{At: s.pressure(b.kept.setup.Wall.Flowing), Text: s.say("mark-was") + " " + s.sys.Gauge(b.kept.setup.Wall.Flowing, unit.Usual)}
	case v.Now.Given:
		d.Ghost = draw.Mark{At: s.pressure(v.Now.Wall), Text: s.say("mark-now") + " " + s.sys.Gauge(v.Now.Wall, unit.Usual)}
	}
	return d
}

// dialText says what the dial shows.
func (b *bench) dialText() string {
	w := b.tried.setup.Wall
	id := "look-dial"
	f := calc.Figures{gaugeFigure("flowing", w.Flowing), gaugeFigure("static", w.Static), gaugeFigure("limit", w.Limit)}
	if p := b.tried.spread; p != nil {
		f = append(f, gaugeFigure("low", p.Wall.Low), gaugeFigure("high", p.Wall.High))
	} else {
		id = "look-dial-short"
	}
	return b.s.text(id, f)
}

func (b *bench) bore() draw.Bore {
	s, v := b.s, b.tried.setup
	gun := &b.tried.request.Gun
	told := func(id string, w calc.Way) draw.Opening {
		f := calc.Figures{gaugeFigure("wall", w.Wall), shareFigure("opening", w.Opening), ratioFigure("mach", w.Mach)}
		return draw.Opening{Share: gun.Valve.Shape.Share(w.Opening), Texts: []string{s.text(id, f), s.text("bore-opening", f), s.text("bore-mach", f)}}
	}
	out := draw.Bore{Open: s.say("bore-open"), Closed: s.say("bore-closed")}
	out.Now = told("bore-set", calc.Way{Wall: v.Wall.Flowing, Opening: v.Valve.Opening, Mach: v.Valve.Mach})
	if v.Comparison.Given {
		out.Else = told("bore-high", v.Comparison.High)
	}
	return out
}

// boreText says what the bores show.
func (b *bench) boreText() string {
	v := b.tried.setup
	gun := &b.tried.request.Gun
	f := calc.Figures{
		gaugeFigure("wall", v.Wall.Flowing), shareFigure("opening", v.Valve.Opening), shareFigure("area", gun.Valve.Shape.Share(v.Valve.Opening)), ratioFigure("mach", v.Valve.Mach),
	}
	if !v.Comparison.Given {
		return b.s.text("look-bore", f)
	}
	h := v.Comparison.High
	f = append(f, gaugeFigure("highWall", h.Wall), shareFigure("highOpening", h.Opening), shareFigure("highArea", gun.Valve.Shape.Share(h.Opening)), ratioFigure("highMach", h.Mach))
	return b.s.text("look-bore-high", f)
}

func (b *bench) ruler() draw.Ruler {
	s, d := b.s, b.tried.setup.Distance
	far := max(d.High, b.kept.setup.Distance.High)
	if p := b.tried.spread; p != nil {
		far = max(far, p.Distance.High)
	}
	r := draw.Ruler{
		Scale:  draw.NewScale(0, s.distance(far)*1.1, 12, func(v float64) string { return bare(s.distanceText(v)) }),
		Target: draw.Mark{At: s.distance(d.Target), Text: s.sys.Small(d.Target, unit.Usual)},
		Keep:   draw.Span{Low: s.distance(d.Low), High: s.distance(d.High), Text: b.three(&b.tried)[1].told[0]},
		Gun:    s.say("ruler-cap"), Panel: s.say("ruler-panel"),
	}
	if p := b.tried.spread; p != nil {
		r.Likely = draw.Span{Low: s.distance(p.Distance.Low), High: s.distance(p.Distance.High), Text: b.three(&b.tried)[1].likely}
	}
	if was := b.kept.setup.Distance.Target; was != d.Target {
		r.Ghost = draw.Mark{At: s.distance(was), Text: s.say("mark-was") + " " + s.sys.Small(was, unit.Usual)}
	}
	return r
}

// rulerText says what the ruler shows.
func (b *bench) rulerText() string {
	d := b.tried.setup.Distance
	return b.s.text("look-ruler", calc.Figures{nearFigure("target", d.Target), nearFigure("low", d.Low), nearFigure("high", d.High)})
}
