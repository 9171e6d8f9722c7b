package practice

import (
	"math"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// ReadingKind is something that can be looked at in a booth.
type ReadingKind string

// The kinds of reading, as sentences name them: "look-" and its name.
const (
	LookDistance ReadingKind = "distance"  // from cap to panel, by a rule
	LookKnob     ReadingKind = "knob"      // turns of the valve
	LookWall     ReadingKind = "wall"      // the wall's gauge, trigger pulled
	LookGun      ReadingKind = "gun"       // the gun's gauge, trigger pulled
	LookOpen     ReadingKind = "open"      // the same with the valve wide open
	LookStill    ReadingKind = "still"     // the wall's gauge less the gun's, no air moving
	LookTestWall ReadingKind = "test-wall" // a gauge that reads right at the wall, trigger pulled
	LookTestGun  ReadingKind = "test-gun"  // one at the gun inlet
	LookTestCap  ReadingKind = "test-cap"  // one at the air cap
	LookPanel    ReadingKind = "panel"     // a test panel, sprayed: what shows first
	LookSound    ReadingKind = "sound"     // the gun with a sound part in a part's place
)

// Reading is one that can be taken: its kind, and which part is taken out.
type Reading struct {
	Kind ReadingKind
	Part int // in the request's line, of LookSound
}

// takes is how long each takes. Judgement: what a painter needs with what lies at hand, a test
// gauge on a quick coupling, a spare part beside it; a filter's bowl is unscrewed. The painter
// holds the trigger with the cup empty.
var takes = map[ReadingKind]time.Duration{
	LookDistance: time.Minute / 4, LookKnob: time.Minute / 4, LookWall: time.Minute / 2, LookGun: time.Minute / 2,
	LookOpen: time.Minute, LookStill: time.Minute, LookTestWall: 4 * time.Minute, LookTestGun: 3 * time.Minute, LookTestCap: 3 * time.Minute, LookPanel: 3 * time.Minute,
}

// swapping is how long a sound part in a part's place takes.
var swapping = map[line.Kind]time.Duration{
	line.CouplingKind: 4 * time.Minute, line.HoseKind: 6 * time.Minute, line.FilterKind: 8 * time.Minute, line.DryerKind: 12 * time.Minute,
}

// apart is how far two values of a reading must be apart to be told apart, in SI. Judgement:
// what a gauge in a shop shows and a hand measures.
func (k ReadingKind) apart() float64 {
	switch k {
	case LookDistance:
		return 0.4 * unit.MetrePerInch
	case LookKnob:
		return 1.5 / unit.TurnParts
	case LookPanel:
		return 0 // it is the place among seen
	}
	return 1 * unit.PascalPerPSI
}

// Takes is how long a reading takes in the job's booth.
func (j *Job) Takes(r Reading) time.Duration {
	if r.Kind == LookSound {
		return swapping[j.Request.Line[r.Part].Kind]
	}
	return takes[r.Kind]
}

// Readings is every reading that can be taken in the job's booth, the quickest kinds first.
func (j *Job) Readings() (all []Reading) {
	add := func(is bool, kinds ...ReadingKind) {
		for _, k := range kinds {
			if is {
				all = append(all, Reading{Kind: k})
			}
		}
	}
	valve := !j.Setup.Valve.None && !j.Setup.Foot.Is
	wall, gun := j.Request.RegulatorAt() != calc.Nowhere, j.Request.Gauge != calc.NoGauge
	add(true, LookDistance)
	add(valve, LookKnob)
	add(wall, LookWall)
	add(gun, LookGun)
	add(gun && valve, LookOpen)
	add(gun && wall && !j.Setup.Foot.Is, LookStill)
	add(wall, LookTestWall)
	add(true, LookTestGun, LookTestCap, LookPanel)
	for _, c := range j.Causes() {
		if c.Kind == Clogged {
			all = append(all, Reading{LookSound, c.Part})
		}
	}
	return all
}

// seen is what a test panel can show first, by the ids of signs; nothing first.
var seen = []string{"", "spitting", "orange-peel", "split", "dry-spray", "runs", "poor-hiding", "touchy", "fading"}

// sees is what a booth's test panel shows first.
func (j *Job) sees(b *booth) string {
	if len(b.signs) == 0 {
		return ""
	}
	return b.signs[0].ID
}

// value is what a reading shows in a booth: a pressure in Pa, a distance in m, turns of the knob
// as they are counted, a place among seen.
func (j *Job) value(b *booth, r Reading) float64 {
	x := &b.sprayed
	switch r.Kind {
	case LookDistance:
		return float64(b.set.Distance)
	case LookKnob:
		return j.Setup.Valve.Knob("", b.set.Opening).Value
	case LookWall:
		return float64(x.Wall + unit.Gauge(b.wallOff))
	case LookGun:
		return float64(x.Reads + unit.Gauge(b.gunOff))
	case LookOpen:
		open := b.set
		open.Opening = 1
		return float64(b.request.Spray(j.Setup, open).Reads + unit.Gauge(b.gunOff))
	case LookStill:
		return float64(b.wallOff - b.gunOff)
	case LookTestWall:
		return float64(x.Wall)
	case LookTestGun:
		return float64(x.Foot)
	case LookTestCap:
		return float64(x.Cap)
	case LookPanel:
		return float64(slices.Index(seen, j.sees(b)))
	}
	sound := *b.request
	sound.Line = slices.Clone(b.request.Line)
	sound.Line[r.Part] = j.Request.Line[r.Part]
	with := sound.Spray(j.Setup, b.set)
	if j.Request.Gauge == calc.NoGauge {
		return float64(with.Cap)
	}
	return float64(with.Reads + unit.Gauge(b.gunOff))
}

// Shows is what a value of a reading is, for sentences.
func (j *Job) Shows(r Reading, name string, v float64) calc.Figure {
	switch r.Kind {
	case LookDistance:
		return calc.FigureOf(name, calc.FigureDistance, v)
	case LookKnob:
		return calc.FigureOf(name, j.Setup.Valve.Knob("", 1).Kind, v)
	case LookStill:
		return calc.BriefFigure(name, calc.FigureDrop, v)
	case LookPanel:
		return calc.SentenceFigure(name, seenSentence(seen[int(v)]))
	}
	return calc.BriefFigure(name, calc.FigureGauge, v)
}

// seenSentence is what a test panel shows.
func seenSentence(sign string) string {
	switch sign {
	case "":
		return "practice-nothing"
	case "touchy":
		return "practice-touchy"
	}
	return "name-sign-" + sign
}

// told reports whether two values of a reading are told apart.
func told(r Reading, a, b float64) bool { return math.Abs(a-b) > r.Kind.apart() }
