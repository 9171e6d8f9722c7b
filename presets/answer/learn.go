package answer

import (
	"math"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Learn is what readings say of a plan's line.
type Learn struct {
	Request *learn.Request
	Found   *learn.Answer
}

// Stopped reports whether the readings cannot all be right.
func (l *Learn) Stopped() bool { return len(l.Found.Contradictions) > 0 }

// Reasons is what it rests on.
func (l *Learn) Reasons() []calc.Reason {
	estimate := calc.Ground{Basis: calc.Estimate, Source: "source-learn"}
	return []calc.Reason{
		{About: "line", ID: "learn-why-odd", Figures: calc.Figures{
			calc.FigureOf("share", calc.FigureShare, learn.OddShare), calc.FigureOf("least", calc.FigureShare, learn.LeastOdd), calc.FigureOf("most", calc.FigureShare, learn.MostOdd),
		}, Ground: estimate},
		{About: "wall", ID: "learn-why-gauges", Figures: calc.Figures{calc.FigureOf("noise", calc.FigureDrop, learn.ReadingNoise)}, Ground: l.Request.Plan.Tolerances.WallGauge.Ground},
		{About: "line", ID: "learn-why-draws", Figures: calc.Figures{calc.CountFigure("draws", l.Request.Draws), calc.CountFigure("counting", int(l.Found.Counting))}, Ground: calc.Ground{Basis: calc.Computed}},
	}
}

// Cautions is what protects whoever takes the readings.
func (l *Learn) Cautions() []calc.Caution {
	caution := func(id string) calc.Caution { return calc.Caution{Level: calc.Warn, ID: id, Safety: true} }
	return []calc.Caution{caution("trouble-zero"), caution("trouble-pull"), caution("learn-cup")}
}

// Rows is all that is said of it.
func (l *Learn) Rows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	o.block(append([]Row{l.Headline(w, sys)}, l.MoveRows(w)...)...)
	o.add(l.UntoldRows(w, sys)...)
	o.heading(o.say("learn-heading", calc.CountFigure("readings", len(l.Request.Readings)), calc.TextFigure("gun", l.Request.Plan.Gun.Name)))
	o.block(l.settings(o)...)
	o.block(l.pieces(o)...)
	o.block(l.NextRows(w, sys)...)
	o.cautions(l.Cautions())
	o.why(l.Reasons())
	return o.rows
}

// Called is what a piece is called.
func (l *Learn) Called(w *words.Words, piece int) string {
	parts := l.Request.Plan.Parts
	switch p := &l.Found.Pieces[piece]; p.Role {
	case learn.InletValve:
		return parts.Valve
	case learn.GunItself:
		return w.Say("learn-gun")
	default:
		return p.Part.Name
	}
}

// called is several pieces in one text.
func (l *Learn) called(w *words.Words, pieces []int) string {
	all := make([]string, len(pieces))
	for i, k := range pieces {
		all[i] = l.Called(w, k)
	}
	return w.Listed(all)
}

// Headline is what the readings come to: that some cannot be right, what is odd, that nothing
// is, or that it cannot be told yet.
func (l *Learn) Headline(w *words.Words, sys unit.System) Row {
	a := l.Found
	end := "untold"
	var f calc.Figures
	level := calc.Note
	switch {
	case len(a.Contradictions) > 0:
		level = calc.Stop
		c := &a.Contradictions[0]
		end = "contradicts"
		switch at := c.First; {
		case at != c.Second:
		case c.Gauges[0] == c.Gauges[1]:
			end = "rises"
		case !l.Request.Readings[at].Still:
			end = "above"
		default:
			end = "gauges"
		}
		f = calc.Figures{
			calc.CountFigure("first", c.First+1), calc.CountFigure("second", c.Second+1), calc.FigureOf("apart", calc.FigureDrop, c.Apart),
			calc.SentenceFigure("one", gaugeName(c.Gauges[0])), calc.SentenceFigure("other", gaugeName(c.Gauges[1])),
		}
	case len(a.Found) > 0:
		level, end = calc.Warn, "odd"
		f = calc.Figures{calc.TextFigure("pieces", l.called(w, a.Found)), calc.FigureOf("share", calc.FigureShare, wholePercent(a.Odd[a.Found[0]])), calc.FigureOf("bore", calc.FigureTip, a.Bores[0])}
		if a.Bores[0] == 0 {
			end = "odd-gun"
		}
	case a.Right:
		end = "right"
		f = calc.Figures{calc.FigureOf("share", calc.FigureShare, wholePercent(a.Nothing))}
	default:
		f = calc.Figures{calc.FigureOf("share", calc.FigureShare, wholePercent(a.Nothing))}
	}
	return Row{Role: Verdict, Level: level, ID: end, Name: w.Say("learn-end-" + end), Text: w.Text(sys, "learn-told-"+end, f)}
}

// gaugeName is the sentence of what a gauge is called.
func gaugeName(g learn.Gauge) string {
	return [...]string{learn.WallGauge: "learn-gauge-wall", learn.FootGauge: "learn-gauge-foot", learn.CapGauge: "learn-gauge-cap", learn.GunGauge: "learn-gauge-gun"}[g]
}

// UntoldRows is what cannot be told yet, and why.
func (l *Learn) UntoldRows(w *words.Words, sys unit.System) (rows []Row) {
	for i := range l.Found.Untold {
		rows = append(rows, Row{Role: Against, Level: calc.Warn, ID: "untold", Name: w.Say("learn-untold"), Text: l.Untold(w, sys, &l.Found.Untold[i])})
	}
	return rows
}

// Untold is which pieces may be odd, and why that cannot be told yet.
func (l *Learn) Untold(w *words.Words, sys unit.System, u *learn.Untold) string {
	return w.Text(sys, "learn-untold-"+u.Why.String(), calc.Figures{calc.TextFigure("pieces", l.called(w, u.Pieces))})
}

// settings is the rows of what there is to set since, and of what the gauges read too high.
func (l *Learn) settings(o *speaker) []Row {
	a, r := l.Found, l.Request.Plan
	gauges := func(g spread.GaugeRange) string {
		g = g.Marked(r.Mark)
		return o.span(o.sys.Gauge(g.Low, unit.Usual), o.sys.Gauge(g.High, unit.Usual))
	}
	rows := []Row{
		{Role: Setting, About: "wall", Name: o.say("label-wall"), Text: o.sys.Gauge(l.Found.Set, unit.Usual),
			More: o.say("learn-wall", calc.TextFigure("range", gauges(a.Sure.Wall)), calc.FigureOf("was", calc.FigureGauge, a.Setup.Wall.Flowing), calc.TextFigure("rangeWas", gauges(a.Taken.Wall)))},
		{Role: Value, About: "gun", Name: o.say("learn-label-gun"), Text: gauges(a.Gets), More: o.say("learn-open", calc.FigureOf("wall", calc.FigureGauge, l.advised()))},
	}
	if !a.Setup.Valve.None {
		rows = append(rows, Row{Role: Value, About: "valve", Name: o.say("learn-label-valve"), Text: o.span(unit.PercentText(a.Sure.Opening.Low, 0), unit.PercentText(a.Sure.Opening.High, 0)), More: o.say("learn-opening", calc.FigureOf("wall", calc.FigureGauge, l.advised()))})
	}
	reads := func(about, label string, of spread.Range) {
		id := "learn-reads-either"
		f := []calc.Figure{calc.FigureOf("low", calc.FigureDrop, math.Abs(of.Low)), calc.FigureOf("high", calc.FigureDrop, math.Abs(of.High))}
		switch {
		case of.Low >= 0:
			id = "learn-reads-high"
		case of.High <= 0:
			id, f[0].Value, f[1].Value = "learn-reads-low", math.Abs(of.High), math.Abs(of.Low)
		}
		rows = append(rows, Row{Role: Value, About: about, Name: o.say(label), Text: o.say(id, f...)})
	}
	reads("wall-gauge", "learn-gauge-wall", a.Wall)
	if r.Gauge != calc.NoGauge {
		reads("gun-gauge", "learn-gauge-gun", a.Gun)
	}
	if a.After.Short.Is {
		rows = append(rows, Row{Role: Against, Level: calc.Stop, About: "wall", ID: "learn-short-since", Text: o.say("learn-short-since", calc.FigureOf("needed", calc.FigureGauge, a.After.Short.Needed), calc.FigureOf("supply", calc.FigureGauge, r.Supply))})
	}
	if x := a.Since.Learnt; x != nil && x.Elsewhere > 0 {
		rows = append(rows, Row{Role: Remark, About: "gun", ID: "learn-elsewhere", Text: o.say("learn-elsewhere", calc.CountFigure("readings", x.Elsewhere))})
	}
	if a.AsDescribed {
		rows = append(rows, Row{Role: Remark, About: "line", ID: "learn-described", Text: o.say("learn-described")})
	}
	return rows
}

// advised is what the wall's gauge is at for what the gun then gets.
func (l *Learn) advised() unit.Gauge {
	if l.Found.After.Short.Is {
		return l.Found.Setup.Wall.Flowing
	}
	return l.Found.After.Wall.Flowing
}

// pieces is a row each of what may be odd, with how probable that is.
func (l *Learn) pieces(o *speaker) []Row {
	rows := []Row{{Role: Title, ID: "learn-pieces", Text: o.say("learn-pieces")}}
	for i := range l.Found.Pieces {
		p := &l.Found.Pieces[i]
		if l.Spare(i) {
			continue
		}
		rows = append(rows, Row{Role: Value, About: "piece", ID: p.ID, Name: unit.PercentText(wholePercent(l.Found.Odd[i]), 0), Text: l.Called(o.words, i), More: p.ID})
	}
	return append(rows, Row{Role: Value, About: "piece", ID: "none", Name: unit.PercentText(wholePercent(l.Found.Nothing), 0), Text: o.say("learn-nothing")})
}

// Spare is whether a piece is not in the line, nor of its gun.
func (l *Learn) Spare(piece int) bool {
	p := &l.Found.Pieces[piece]
	if p.Role != learn.InLine {
		return p.Gun != 0
	}
	return !slices.Contains(learn.PieceIDs(l.Request.Plan), p.ID)
}

// Bore is that of a good fitting which passes as much as a piece that was found odd; 0 of others,
// and of the gun itself.
func (l *Learn) Bore(piece int) unit.Length {
	if at := slices.Index(l.Found.Found, piece); at >= 0 {
		return l.Found.Bores[at]
	}
	return 0
}

// mostNext is how many readings are told of that could be taken next.
const mostNext = 3

// NextRows is what to read next, and what each should tell.
func (l *Learn) NextRows(w *words.Words, sys unit.System) []Row {
	a := l.Found
	title, tells := "learn-next-wall", "learn-narrows"
	if a.Seeks {
		title, tells = "learn-next-odd", "learn-tells"
	}
	if len(a.Next) == 0 {
		return []Row{{Role: Title, ID: "learn-next-none", Text: w.Say("learn-next-none")}}
	}
	rows := []Row{{Role: Title, ID: title, Text: w.Say(title)}}
	for _, x := range a.Next[:min(mostNext, len(a.Next))] {
		more := w.Text(sys, tells, calc.Figures{calc.FigureOf("minutes", calc.FigureMinutes, 60*x.Minutes), calc.FigureOf("now", calc.FigureDrop, x.Wall+x.Narrows), calc.FigureOf("after", calc.FigureDrop, x.Wall), calc.FigureOf("share", calc.FigureShare, wholePercent(a.Settles(&x)))})
		rows = append(rows, Row{Role: Remark, About: "next", ID: x.Kind.String(), Text: l.Do(w, sys, &x.Option) + " " + more})
	}
	return rows
}

// Do is what is done to take a reading: what stays out of the line, the reading itself, and the
// gauges besides that are on for a test.
func (l *Learn) Do(w *words.Words, sys unit.System, o *learn.Option) string {
	var all []string
	stays := func(id string, pieces []int) {
		for _, k := range pieces {
			all = append(all, w.Text(sys, id, l.pieceFigures(w, k)))
		}
	}
	stays("learn-do-odd-swapped", o.Odd.Swapped)
	stays("learn-do-odd-without", o.Odd.Without)
	f := calc.Figures{calc.FigureOf("wall", calc.FigureGauge, o.Shows[0].Pressure), l.Found.Setup.Valve.Knob("knob", l.Found.Setup.Valve.Opening)}
	if o.Piece >= 0 {
		f = append(f, l.pieceFigures(w, o.Piece)...)
	}
	all = append(all, w.Text(sys, "learn-do-"+o.Kind.String(), f))
	on := 0
	for _, x := range o.Shows {
		if x.Gauge == learn.FootGauge && o.Kind != learn.ReadFoot || x.Gauge == learn.CapGauge && o.Kind != learn.ReadCap {
			on++
		}
	}
	if on > 0 {
		all = append(all, w.Text(sys, "learn-do-on", calc.Figures{calc.CountFigure("gauges", on)}))
	}
	return strings.Join(all, " ")
}

// pieceFigures are a piece's name and its id.
func (l *Learn) pieceFigures(w *words.Words, piece int) calc.Figures {
	return calc.Figures{calc.TextFigure("piece", l.Called(w, piece)), calc.TextFigure("id", l.Found.Pieces[piece].ID)}
}
