package calc

import (
	"time"

	"boothset/calc/line"
	"boothset/calc/unit"
)

func gauge(name string, p unit.Gauge) Figure {
	return Figure{Name: name, Kind: FigureGauge, Value: float64(p)}
}
func drop(name string, d unit.Drop) Figure {
	return Figure{Name: name, Kind: FigureDrop, Value: float64(d)}
}
func near(name string, l unit.Length) Figure {
	return Figure{Name: name, Kind: FigureDistance, Value: float64(l)}
}
func share(name string, v float64) Figure { return Figure{Name: name, Kind: FigureShare, Value: v} }
func ratio(name string, v float64) Figure { return Figure{Name: name, Kind: FigureRatio, Value: v} }
func text(name, v string) Figure          { return Figure{Name: name, Text: v} }
func flow(name string, q unit.Flow) Figure {
	return Figure{Name: name, Kind: FigureFlow, Value: float64(q)}
}
func temp(name string, t unit.Temp) Figure {
	return Figure{Name: name, Kind: FigureTemp, Value: float64(t)}
}
func minutes(name string, d time.Duration) Figure {
	return Figure{Name: name, Kind: FigureMinutes, Value: d.Seconds()}
}
func volume(name string, v unit.Volume) Figure {
	return Figure{Name: name, Kind: FigureVolume, Value: float64(v)}
}
func litres(name string, v float64) Figure { return Figure{Name: name, Kind: FigureLitres, Value: v} }
func times(name string, v float64) Figure  { return Figure{Name: name, Kind: FigureTimes, Value: v} }
func clock(name string, c Clock) Figure {
	return Figure{Name: name, Kind: FigureClock, Value: time.Duration(c).Seconds()}
}
func cupSeconds(name string, s float64) Figure {
	return Figure{Name: name, Kind: FigureCup, Value: s}
}
func viscous(name string, nu unit.Kinematic) Figure {
	return Figure{Name: name, Kind: FigureViscosity, Value: float64(nu)}
}
func degrees(name string, d unit.TempDiff) Figure {
	return Figure{Name: name, Kind: FigureTempDiff, Value: float64(d)}
}

// Standings that several reasons share.
var (
	lineStanding   = Standing{Computed, "ISO 6358-1 restrictions; isothermal hose flow, friction by Churchill 1977"}
	jetStanding    = Standing{Estimate, "free-jet momentum; scale from common practice, 5.5 in at 26 psi on a reduced-pressure gun"}
	dewStanding    = Standing{Published, "ASHRAE Handbook of Fundamentals, psychrometrics"}
	dryingStanding = Standing{Estimate, "vapour pressure against a 21 C (70 F), 50 % day; drop size by El-Shanawany and Lefebvre 1980, loss in flight by the d-squared law with Ranz and Marshall's factor; size of the correction from common practice"}
	valveStanding  = Standing{Estimate, "shape and conductance of the gun class's inlet valve"}
	droopStanding  = Standing{Computed, "droop of the regulator's size class, as ISO 6953 describes it"}
)

// explain gives the reason of each value, with its own figures.
func (s *Setup) explain(r *Request) {
	add := &reasons{list: make([]Reason, 0, 20), room: make(Figures, 0, 96)}
	w := r.Coat.Working
	add.reason("gun", "gun-start", w.Standing, text("coat", r.Coat.Name), text("gun", r.Gun.Name), gauge("start", w.Start), gauge("low", w.Low), gauge("high", w.High))
	s.explainWeather(r, add)
	if s.Working.Pressure >= s.Working.Highest {
		add.reason("gun", "gun-held-by-stamp", r.Gun.Standing, gauge("highest", s.Working.Highest))
	}
	add.reason("gun", "gun-flow", r.Gun.Standing, gauge("working", s.Working.Pressure), flow("flow", s.Working.Flow), gauge("cap", s.Working.Cap),
		gauge("stampInlet", r.Gun.Stamp.Inlet), flow("stampFlow", r.Gun.Stamp.Flow))
	s.explainWall(r, add)
	s.explainValve(r, add)
	s.explainComparison(add)
	switch reach := s.Distance.Target; {
	case reach >= r.Gun.Farthest:
		add.reason("distance", "distance-held-far", r.Gun.Distance, near("target", reach), gauge("cap", s.Working.Cap))
	case reach <= r.Gun.Nearest:
		add.reason("distance", "distance-held-near", r.Gun.Distance, near("target", reach), gauge("cap", s.Working.Cap))
	default:
		add.reason("distance", "distance-jet", jetStanding, near("target", reach), gauge("cap", s.Working.Cap))
	}
	if r.Coat.Farther > 0 {
		add.reason("distance", "distance-coat", Standing{CommonPractice, ""}, text("coat", r.Coat.Name), near("farther", r.Coat.Farther))
	}
	b := s.Line[s.Bottleneck]
	if s.Short.Is {
		add.reason("line", "line-limit", lineStanding, text("part", b.Name), drop("loss", b.Loss), gauge("best", s.Short.Best), gauge("needed", s.Short.Needed))
	} else {
		add.reason("line", "line-bottleneck", lineStanding, text("part", b.Name), drop("loss", b.Loss), share("share", b.Share))
		if couplings, n := s.couplings(); n > 1 && couplings > couplingsWorthSaying {
			add.reason("line", "line-couplings", lineStanding, ratio("count", float64(n)), drop("loss", couplings))
		}
	}
	s.explainSupply(r, add)
	s.Reasons = add.list
}

// explainComparison sets the wall right and the valve open against the wall high and
// the valve shut down.
func (s *Setup) explainComparison(add *reasons) {
	c := &s.Comparison
	if !c.Given {
		return
	}
	id := "compare"
	if c.High.Choked {
		id = "compare-choked"
	}
	r, h := c.Right, c.High
	add.reason("valve", id, lineStanding, gauge("wall", r.Wall), share("opening", r.Opening), ratio("mach", r.Mach), drop("nudge", r.Nudge), drop("sag", r.Sag),
		gauge("highWall", h.Wall), share("highOpening", h.Opening), ratio("highMach", h.Mach), drop("highNudge", h.Nudge), drop("highSag", h.Sag),
		gauge("working", s.Working.Pressure), share("sagShare", SagShare))
}

// couplingsWorthSaying is the loss in all couplings together from which the answer
// speaks of them.
const couplingsWorthSaying = unit.Drop(3 * unit.PascalPerPSI)

func (s *Setup) couplings() (loss unit.Drop, n int) {
	for _, step := range s.Line {
		if step.Kind == line.CouplingKind {
			loss += step.Loss
			n++
		}
	}
	return loss, n
}

// adder takes one reason.
type adder func(about, id string, st Standing, f ...Figure)

// reasons gathers reasons, with one room for the figures of all.
type reasons struct {
	list []Reason
	room Figures
}

func (w *reasons) reason(about, id string, st Standing, f ...Figure) {
	start := len(w.room)
	w.room = append(w.room, f...)
	w.list = append(w.list, Reason{About: about, ID: id, Figures: w.room[start:len(w.room):len(w.room)], Standing: st})
}

func (s *Setup) explainWeather(r *Request, add *reasons) {
	w := s.Weather
	f := Figures{temp("air", r.Day.Air), share("humidity", r.Day.Humidity), ratio("drying", w.Drying), ratio("drier", w.Landing.Drier),
		drop("less", -w.Correction), share("growth", w.Landing.Growth)}
	switch {
	case w.Correction < 0:
		add.reason("weather", "weather-hot", dryingStanding, f...)
	case w.Drying < slowDrying:
		add.reason("weather", "weather-slow", dryingStanding, f...)
	default:
		add.reason("weather", "weather-mild", dryingStanding, f...)
	}
	if w.Landing.Drier > worthLevers {
		for _, l := range w.Landing.Levers {
			add.reason("weather", l.ID, dryingStanding, l.Size, share("less", l.Less))
		}
	}
	add.reason("weather", "weather-dew", dewStanding, temp("dew", w.DewPoint), temp("panel", r.Day.Panel), degrees("margin", w.PanelMargin))
}

// worthLevers is how much drier a coat must land for the answer to say what would
// help.
const worthLevers = 1.25

// slowDrying is the drying below which a day is called slow.
const slowDrying = 0.7

func (s *Setup) explainWall(r *Request, add *reasons) {
	f := []Figure{gauge("open", s.Wall.Open), gauge("working", s.Working.Pressure), drop("lost", unit.Drop(s.Wall.Open-s.Working.Pressure)),
		gauge("flowing", s.Wall.Flowing), drop("reserve", s.Valve.Reserve), gauge("supply", r.Supply)}
	switch {
	case s.Short.Is:
		add.reason("wall", "wall-short", lineStanding, f...)
		return
	case r.RegulatorAt == Nowhere:
		add.reason("wall", "wall-none", lineStanding, f...)
		return
	case r.RegulatorAt == Foot:
		add.reason("wall", "wall-foot", lineStanding, f...)
	default:
		add.reason("wall", "wall-set", lineStanding, f...)
	}
	add.reason("wall", "wall-static", droopStanding, gauge("static", s.Wall.Static), gauge("flowing", s.Wall.Flowing), flow("flow", s.Working.Flow))
}

func (s *Setup) explainValve(r *Request, add *reasons) {
	v := s.Valve
	if s.Short.Is {
		add.reason("valve", "valve-open-wide", lineStanding)
	} else {
		add.reason("valve", "valve-opening", valveStanding, share("opening", v.Opening), drop("reserve", v.Reserve), ratio("mach", v.Mach), drop("nudge", v.Nudge), gauge("working", s.Working.Pressure))
		if v.Opening < v.Floor {
			add.reason("valve", "valve-below-floor", valveStanding, share("floor", v.Floor), gauge("open", s.Wall.Open))
		} else {
			add.reason("valve", "valve-floor", valveStanding, share("floor", v.Floor), drop("most", MostNudge))
		}
	}
	switch r.Gauge {
	case AtFoot:
		add.reason("valve", "gauge-foot", Standing{Computed, ""}, gauge("reads", s.Working.Reads), gauge("working", s.Working.Pressure))
	case NoGauge:
		add.reason("valve", "gauge-none", Standing{CommonPractice, ""}, gauge("working", s.Working.Pressure))
	}
	if n := s.Now; n.Given {
		set := s.Wall.Flowing
		if s.Short.Is {
			set = s.Wall.Open // what it would take, had the supply it
		}
		id := "now-valve"
		switch {
		case !n.Enough:
			id = "now-too-low"
		case n.Choked:
			id = "now-choked"
		}
		add.reason("valve", id, lineStanding, gauge("wall", n.Wall), gauge("gun", n.GunIfOpen), share("opening", n.Opening), ratio("mach", n.Mach),
			drop("nudge", n.Nudge), gauge("working", s.Working.Pressure), gauge("set", set))
	}
}
