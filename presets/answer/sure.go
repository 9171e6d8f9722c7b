package answer

import (
	"math"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// leastShort is how often a setup must fall short for that to be said.
const leastShort = 0.05

// LearntRow is what the line's own readings came to, of a plan that is worked with them or was not
// for the reason told; false where there are none.
func (p *Plan) LearntRow(w *words.Words, sys unit.System) (r Row, ok bool) {
	x := p.Request.Learnt
	if x == nil {
		return r, false
	}
	parts := make([]string, len(x.Odd))
	for i := range x.Odd {
		parts[i] = x.Odd[i].Name
	}
	id := "learnt-told-" + string(x.Told)
	return Row{Role: Range, ID: id, Ground: w.Ground(calc.Ground{Basis: calc.OwnReadings}), Text: w.Text(sys, id, calc.Figures{
		calc.CountFigure("readings", x.Readings), calc.CountFigure("elsewhere", x.Elsewhere), calc.TextFigure("parts", w.Listed(parts)),
	})}, true
}

// SureRows is how sure the setup is, in sentences: what the line's own readings came to, what can be
// checked for nothing, the ranges with what they are given, what most of them comes from, and how
// often the wall falls short. Without a spread it is the first alone.
func (p *Plan) SureRows(w *words.Words, sys unit.System) (rows []Row) {
	s, r := p.Spread, p.Request
	if row, ok := p.LearntRow(w, sys); ok {
		rows = append(rows, row)
	}
	if s == nil {
		return rows
	}
	say := func(id string, f calc.Figures) {
		rows = append(rows, Row{Role: Range, ID: id, Text: w.Text(sys, id, f)})
	}
	f := p.sureFigures()
	if gauges := s.Of("wall-gauge") + s.Of("gun-gauge"); r.Gauge != calc.NoGauge && s.Set && gauges > 0 && !p.Setup.Foot.Is {
		say("spread-check", calc.Figures{calc.FigureOf("share", calc.FigureShare, min(gauges, 1))})
	}
	say("spread-given-"+p.setAt(), f)
	if !r.Coat.Working.Fixed {
		say("spread-start", f)
	}
	if s.Set && len(s.Causes) > 0 {
		c := &s.Causes[0]
		known := c.Known.Marked(r.Mark)
		id := "spread-cause-" + p.setAt()
		if c.ID == spread.CauseReadings {
			id = "spread-cause-readings"
		}
		say(id, calc.Figures{
			calc.SentenceFigure("cause", "cause-"+c.ID), calc.SentenceFigure("measure", "measure-"+c.ID), calc.FigureOf("share", calc.FigureShare, c.Wall),
			calc.BriefFigure("knownLow", calc.FigureGauge, known.Low), calc.BriefFigure("knownHigh", calc.FigureGauge, known.High),
		})
	}
	if s.Set && s.Short >= leastShort && !p.Setup.Valve.None {
		id := "spread-short-"
		if r.Gauge == calc.NoGauge {
			id = "spread-blind-"
		}
		at := p.setAt()
		if p.Setup.Foot.Is {
			at = "feeds"
		}
		say(id+at, append(f, calc.CountFigure("times", int(math.Round(10*s.Short)))))
	}
	return rows
}

// LikelyWall is the wall's range as its gauge shows it; false where it is not known, or
// nothing is set.
func (p *Plan) LikelyWall() (r spread.GaugeRange, known bool) {
	if p.Spread == nil || !p.Spread.Set {
		return r, false
	}
	return p.Spread.Wall.Marked(p.Request.Mark), true
}

// LikelyDistance is the range of the distance that the gun is held at, of a plan whose spread is
// known. Where the push is met outside of what the gun's class or the coat's stage allows, the gun
// is held at the end of that, and so are the ends of the range.
func (p *Plan) LikelyDistance() spread.LengthRange {
	r := p.Spread.Distance
	if p.Setup.Distance.Held == calc.NotHeld {
		return r
	}
	nearest, farthest := p.Request.Held()
	r.Low, r.High = min(max(r.Low, nearest), farthest), min(max(r.High, nearest), farthest)
	return r
}

// setAt is where the pressure is set, as the ids of sentences end.
func (p *Plan) setAt() string {
	return map[calc.Place]string{calc.Wall: "wall", calc.Foot: "foot", calc.Nowhere: "none"}[p.Request.RegulatorAt()]
}

// sureFigures is what the sentences of the spread name.
func (p *Plan) sureFigures() calc.Figures {
	s, r := p.Spread, p.Request
	wall, _ := p.LikelyWall()
	distance := p.LikelyDistance()
	low, valve := calc.FigureOf("turnsLow", calc.FigureTurns, s.Knob().Low), "spread-closed-"
	low.WithoutUnit = true
	if s.CountsFromShut {
		valve = "spread-opened-"
	}
	switch {
	case p.Setup.Valve.None:
		valve = "spread-valve-none"
	case p.Setup.Foot.Is:
		valve = "spread-valve-foot"
	case s.Opening.High >= 1:
		valve += "full"
	default:
		valve += "part"
	}
	given := "spread-by-tolerances"
	if r.AsRead() {
		given = "spread-by-readings"
	}
	return calc.Figures{
		calc.SentenceFigure("given", given), calc.SentenceFigure("valve", valve), low, calc.FigureOf("turnsHigh", calc.FigureTurns, s.Knob().High),
		calc.FigureOf("working", calc.FigureGauge, p.Setup.Working.Pressure+r.GunReads()), calc.FigureOf("reads", calc.FigureGauge, p.Setup.Working.ReadsOpen), calc.TextFigure("coat", r.Coat.Name), calc.TextFigure("gun", r.Gun.Name),
		calc.BriefFigure("low", calc.FigureGauge, r.Coat.Working.Low), calc.BriefFigure("high", calc.FigureGauge, min(r.Coat.Working.High, p.Setup.Working.Highest)),
		calc.BriefFigure("wallLow", calc.FigureGauge, wall.Low), calc.BriefFigure("wallHigh", calc.FigureGauge, wall.High),
		calc.FigureOf("openingLow", calc.FigureShare, s.Opening.Low), calc.FigureOf("openingHigh", calc.FigureShare, s.Opening.High),
		calc.FigureOf("distanceLow", calc.FigureDistance, distance.Low), calc.FigureOf("distanceHigh", calc.FigureDistance, distance.High),
	}
}
