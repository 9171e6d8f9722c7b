package practice

import (
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Idea is the one idea that explains a miss, by its sentences: "idea-" and its name is what it
// is called, "why-idea-" and its name what it says.
type Idea string

// The ideas about the day and the job as a whole.
const (
	Dew         Idea = "dew"         // the panel near the dew point
	Damp        Idea = "damp"        // the air too damp
	Cold        Idea = "cold"        // air, panel or paint too cold
	Hot         Idea = "hot"         // air or panel too hot
	LandsDry    Idea = "lands-dry"   // the coat loses too much on its way
	SlowWater   Idea = "slow-water"  // water does not leave
	Short       Idea = "short"       // the supply gives the gun less than its target
	NoRegulator Idea = "regulator"   // nothing sets the pressure
	HighWall    Idea = "high-wall"   // the line asks for far more than the gun bears
	PotLife     Idea = "pot-life"    // the mix sets before the last coat is on
	Instruments Idea = "instruments" // a limit within an instrument's error
	Fine        Idea = "fine"        // nothing speaks against it
)

// The ideas about the settings.
const (
	Lost     Idea = "lost"     // what the line loses
	TooHigh  Idea = "too-high" // more than the line loses
	Choked   Idea = "choked"   // the wall high and the valve shut down
	Eased    Idea = "eased"    // a hot, dry day asks for less
	Feeds    Idea = "feeds"    // the wall only feeds a second regulator
	NoValve  Idea = "no-valve" // the wall alone sets the gun
	Reserve  Idea = "reserve"  // the valve takes up what is to spare, no more
	Class    Idea = "class"    // the gun's class and its distances
	Reach    Idea = "reach"    // the jet's own reach
	Farther  Idea = "farther"  // a stage or a coat that is held farther
	Together Idea = "together" // each in its range, and not together
)

// ofCause is the idea behind each thing that speaks against spraying.
var ofCause = map[string]Idea{
	"dew-near": Dew, "dew-on-panel": Dew, "wet-paint": Dew, "damp": Damp,
	"cold": Cold, "cold-panel": Cold, "cold-paint": Cold, "hot-air": Hot, "hot-panel": Hot,
	"lands-dry": LandsDry, "lands-drier": LandsDry, "slow-water": SlowWater, "still-water": SlowWater,
	"supply-below-target": Short, "supply-short": Short, "supply-from-full": Short, "supply-gives-out": Short, "supply-series": Short, "supply-deficit": Short, "mask-starves": Short,
	"no-regulator": NoRegulator, "gun-over-stamp": NoRegulator, "wall-high": HighWall, "pot-life-short": PotLife, "close": Instruments, "day-assumed": Instruments,
}

// verdict is the idea behind the answer's verdict.
func (j *Job) verdict() Idea {
	if len(j.Setup.Against) == 0 {
		return Fine
	}
	return ofCause[j.Setup.Against[0].ID]
}

// From where on an idea is in a job. Judgement.
const (
	muchLost = unit.Drop(5 * unit.PascalPerPSI) // by the line, to be worth forgetting
	easedBy  = unit.Drop(1 * unit.PascalPerPSI) // less at the gun than on the reference day
)

// Lessons is the ideas that a job asks for.
func (j *Job) Lessons() []Idea {
	all := []Idea{j.verdict()}
	if !Sprays(j.Setup.Verdict) {
		return all
	}
	add := func(is bool, of Idea) {
		if is {
			all = append(all, of)
		}
	}
	s := j.Setup
	add(s.Foot.Is, Feeds)
	add(s.Valve.None && !s.Foot.Is, NoValve)
	add(!s.Foot.Is && unit.Drop(s.Wall.Open-s.Working.Pressure) >= muchLost, Lost)
	add(slices.Contains(j.Asks(), Opening), Reserve)
	add(s.Weather.Correction <= -easedBy, Eased)
	add(true, j.distance())
	return all
}

// distance is the idea behind the advised distance.
func (j *Job) distance() Idea {
	switch c := &j.Request.Coat; {
	case c.Stage.Times > 1 || c.Farther > 0 || c.Stage.Held.Known():
		return Farther
	case j.Setup.Distance.Held != calc.NotHeld:
		return Class
	}
	return Reach
}

// explain finds the idea that explains the miss: whether it is sprayed at all before what was
// set, and of the settings the one that is farthest out.
func (d *Judged) explain(j *Job) {
	d.Figures = j.figures(d)
	var worst *Mark
	for i := range d.Marks {
		if m := &d.Marks[i]; !m.Right() && (worst == nil || m.off() > worst.off()) {
			worst = m
		}
	}
	switch sprays := Sprays(d.Guess.Verdict) == Sprays(j.Setup.Verdict); {
	case !sprays:
		d.Idea = j.verdict()
	case worst == nil && len(d.Signs) > 0:
		d.Idea = Together
		if d.forgotDay(j) {
			d.Idea = Eased
		}
	case worst == nil && !d.Verdict:
		d.Idea = j.verdict()
	case worst == nil:
	case worst.Of == Distance:
		d.Idea = j.distance()
		if nearest, farthest := j.Request.Held(); d.Idea == Reach && (d.Set.Distance < nearest || d.Set.Distance > farthest) {
			d.Idea = Class
		}
	default:
		d.Idea = d.pressure(j, worst)
	}
}

// pressure is the idea behind a wall or a valve that is out.
func (d *Judged) pressure(j *Job, worst *Mark) Idea {
	v := &j.Setup.Valve
	high := d.Set.Wall > j.Setup.Wall.Flowing
	switch {
	case j.Setup.Foot.Is:
		return Feeds
	case v.None:
		return NoValve
	case high && (d.As.Choked || d.Set.Opening < v.Floor):
		return Choked
	case d.forgotDay(j):
		return Eased
	case worst.Of == Opening:
		return Reserve
	case high:
		return TooHigh
	}
	return Lost
}

// forgotDay reports whether the guess gives the gun what it would get on the reference day,
// where this one asks for less.
func (d *Judged) forgotDay(j *Job) bool {
	eased := -j.Setup.Weather.Correction
	over := unit.Drop(d.As.Gun - d.Advised.Gun)
	return eased >= easedBy && over >= eased/2 && over <= 2*eased
}

// figures is what the ideas' sentences may speak of.
func (j *Job) figures(d *Judged) calc.Figures {
	s, r := j.Setup, j.Request
	v, w := &s.Valve, &s.Weather
	nearest, farthest := r.Held()
	of := calc.BriefFigure[unit.Gauge]
	f := calc.Figures{
		of("working", calc.FigureGauge, s.Working.Pressure), of("open", calc.FigureGauge, s.Wall.Open), of("wall", calc.FigureGauge, s.Wall.Flowing),
		of("guessed", calc.FigureGauge, d.Set.Wall), of("gets", calc.FigureGauge, d.As.Gun), of("inlet", calc.FigureGauge, r.Gun.Stamp.Inlet),
		of("foot", calc.FigureGauge, s.Foot.Flowing), of("supply", calc.FigureGauge, r.Supply),
		calc.FigureOf("lost", calc.FigureDrop, unit.Drop(s.Wall.Open-s.Working.Pressure)), calc.FigureOf("reserve", calc.FigureDrop, s.Reserve()),
		calc.FigureOf("eased", calc.FigureDrop, -w.Correction), calc.FigureOf("nudge", calc.FigureDrop, v.EighthTurn), calc.FigureOf("guessedNudge", calc.FigureDrop, d.As.EighthTurn),
		v.Knob("valve", v.Opening), v.Knob("guessedValve", d.Set.Opening),
		calc.FigureOf("target", calc.FigureDistance, s.Distance.Target), calc.FigureOf("guessedDistance", calc.FigureDistance, d.Set.Distance),
		calc.FigureOf("nearest", calc.FigureDistance, nearest), calc.FigureOf("farthest", calc.FigureDistance, farthest),
		calc.FigureOf("air", calc.FigureTemp, r.Day.Air), calc.FigureOf("panel", calc.FigureTemp, r.Day.Panel), calc.FigureOf("dew", calc.FigureTemp, w.DewPoint),
		calc.FigureOf("humidity", calc.FigureShare, r.Day.Humidity), calc.FigureOf("least", calc.FigureTempDiff, calc.LeastPanelMargin),
		calc.FigureOf("drier", calc.FigureTimes, w.InFlight.Drier),
		calc.TextFigure("coat", r.Coat.Name), calc.TextFigure("gunName", r.Gun.Name),
	}
	part := takesMost(s)
	return append(f, calc.TextFigure("part", part.Name), calc.FigureOf("partLost", calc.FigureDrop, part.Loss))
}

// takesMost is the part that loses most between what sets the pressure and the gun; where the
// supply is short, the part that limits it.
func takesMost(s *calc.Setup) (most calc.Step) {
	if s.Short.Is {
		return s.Line[s.Bottleneck]
	}
	for _, part := range s.Line {
		switch part.Kind {
		case line.RegulatorKind, line.ValveKind, line.PassagesKind, line.CapKind:
		default:
			if part.Loss > most.Loss || most.Name == "" {
				most = part
			}
		}
	}
	return most
}
