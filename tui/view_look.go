package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/tui/draw"
)

// Rooms in which the three pictures stand together, and what each has of them.
const (
	lookWide = 76
	lookHigh = 18
)

// lookView is the settings as a painter sees them: the needle of the wall's gauge, the knob of
// the inlet valve, the gun before the panel.
func (b *bench) lookView(room size) [][]string {
	if b.tried.Stopped() {
		return shareOut([][]string{b.unset(room.w)}, room)
	}
	if room.w >= lookWide && room.h >= lookHigh {
		high := room.h - reachHigh
		left := room.w / 2
		gauge, knob := b.wallGauge().Rows(left-2, high, b.s.glyphs, b.s.ink), b.knob().Rows(room.w-left, high, b.s.glyphs, b.s.ink)
		reach := b.reach().Rows(room.w, reachHigh, b.s.glyphs, b.s.ink)
		if gauge != nil && reach != nil {
			return [][]string{append(joined(gauge, knob, left), reach...)}
		}
	}
	if pictures := b.pictures(room.w, room.h); pictures != nil {
		return [][]string{pictures}
	}
	room.h = max(room.h-1, 1) // for the row that says there is more
	var all [][]string
	for _, p := range []struct {
		rows []string
		text string
	}{
		{b.wallGauge().Rows(room.w, room.h, b.s.glyphs, b.s.ink), b.dialText()},
		{b.knob().Rows(room.w, room.h, b.s.glyphs, b.s.ink), b.boreText()},
		{b.reach().Rows(room.w, min(room.h, reachHigh), b.s.glyphs, b.s.ink), b.rulerText()},
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

// gaugeSpan is where the scale of the gauge ends that the pressure is set by.
func (b *bench) gaugeSpan() float64 {
	v, _ := b.s.counting(b.tried.answers).One(question.GaugeSpan)
	return v.SI[0]
}

// Ticks of a gauge with a number, at most, and the parts between two of them.
const (
	gaugeTicks = 9
	gaugeMinor = 4
)

func (b *bench) wallGauge() draw.Gauge {
	s, v := b.s, b.tried.Setup
	pressure, wall, was := s.axis(unit.Pressure), &v.Wall, b.kept.Setup.Wall
	pressure.decimals = 0
	setting := b.settings(&b.tried)[atWall]
	value := s.axis(unit.Pressure)
	g := draw.Gauge{
		Scale: draw.NewScale(0, pressure.at(b.gaugeSpan()), gaugeTicks, pressure.number), Minor: gaugeMinor,
		Set:   s.mark(value, "mark-set", float64(wall.Flowing)),
		Rest:  s.mark(value, "mark-rest", float64(wall.Static)),
		Limit: s.mark(value, "mark-limit", float64(wall.Limit)),
		Name:  setting.name, Value: setting.text,
	}
	if likely, ok := b.tried.LikelyWall(); ok {
		g.Likely = draw.Span{Low: value.at(float64(likely.Low)), High: value.at(float64(likely.High)), Text: setting.likely}
	}
	switch {
	case was.Flowing != wall.Flowing && !b.kept.Stopped():
		g.Ghost = s.mark(value, "mark-was", float64(was.Flowing))
	case v.Now.Given:
		g.Ghost = s.mark(value, "mark-now", float64(v.Now.Wall))
	}
	return g
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

// knob is the inlet valve's, seen from the front; nothing where the gun has none.
func (b *bench) knob() draw.Knob {
	v := &b.tried.Setup.Valve
	if v.None {
		return draw.Knob{}
	}
	s, n := b.s, b.settings(&b.tried)[atValve]
	k := draw.Knob{Shut: v.TurnsOf, Set: draw.Mark{At: v.Turns, Text: n.text}, Open: s.say("bore-open"), Closed: s.say("bore-closed")}
	limit, least := v.Limit()
	k.Limit = draw.Mark{At: (1 - v.Floor) * v.TurnsOf, Text: s.text(limit.Text, least)}
	if was := &b.kept.Setup.Valve; was.Turns != v.Turns && !b.kept.Stopped() && !was.None {
		k.Ghost = draw.Mark{At: was.Turns, Text: s.say("mark-was") + " " + b.settings(&b.kept)[atValve].text}
	}
	return k
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

func (b *bench) reach() draw.Reach {
	s, d := b.s, b.tried.Setup.Distance
	distance, setting := s.axis(unit.Distance), b.settings(&b.tried)[atDistance]
	distance.decimals = 0
	span := func(low, high unit.Length, text string) draw.Span {
		return draw.Span{Low: distance.at(float64(low)), High: distance.at(float64(high)), Text: text}
	}
	r := draw.Reach{
		Scale: draw.NewScale(0, distance.at(float64(max(bandDistance, d.High))), 13, distance.number), Unit: unit.Distance.Unit(s.sys),
		Set:  draw.Mark{At: distance.at(float64(d.Target)), Text: setting.text},
		Keep: span(d.Low, d.High, setting.notes[0]),
		Gun:  s.say("ruler-cap"), Panel: s.say("ruler-panel"),
	}
	if b.tried.Spread != nil && setting.likely != "" {
		near := b.tried.LikelyDistance()
		r.Likely = span(near.Low, near.High, setting.likely)
	}
	if was := b.kept.Setup.Distance.Target; was != d.Target && !b.kept.Stopped() {
		r.Ghost = s.mark(s.axis(unit.Distance), "mark-was", float64(was))
	}
	return r
}

// rulerText says what the ruler shows.
func (b *bench) rulerText() string {
	d := b.tried.Setup.Distance
	return b.s.text("look-ruler", calc.FigureOf("target", calc.FigureDistance, d.Target), calc.FigureOf("low", calc.FigureDistance, d.Low), calc.FigureOf("high", calc.FigureDistance, d.High))
}
