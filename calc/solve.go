package calc

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Choices of the plan.
const (
	// SagShare is the fall of the supply that the reserve is to ride out.
	SagShare = 0.05
	// LeastReserve is the least that the wall is set above what the open valve needs.
	LeastReserve = unit.Drop(1 * unit.PascalPerPSI)
)

// Solve works a request. It fails, with a *Problem, where Check does.
func Solve(r *Request) (*Setup, error) {
	if err := r.Check(); err != nil {
		return nil, err
	}
	s := new(Setup)
	var err error
	if s.Weather, err = weather(r); err != nil {
		return nil, err
	}
	j := newJob(r, s.Weather.Ambient)
	j.pressure(s.Weather.Correction)
	j.setWall()
	var sens sensitivity
	sens.at(&j)
	s.assemble(&j, &sens)
	s.compare(&j, &sens)
	s.fixes(&j, &sens)
	if err := s.checkSupply(r, &j); err != nil {
		return nil, err
	}
	s.judge(r)
	if !s.Stopped() {
		s.First = s.first(r)
	}
	s.explain(r)
	s.warn(r)
	return s, nil
}

// job is a request being solved, all pressures absolute.
type job struct {
	r   *Request
	air line.Air

	target  unit.Gauge // downstream of the valve
	working unit.Abs   // the same
	flow    unit.Flow  // there
	cap     unit.Abs

	open    unit.Abs // set pressure at which the open valve gives the target
	reserve unit.Drop
	set     unit.Abs   // set pressure advised, flowing
	flowing unit.Gauge // the same as the gauge reads it
	most    unit.Abs   // highest set pressure the supply can hold at this flow
	short   bool
	held    bool // the set pressure, by the gun's stamp
}

func newJob(r *Request, ambient unit.Abs) job {
	return job{r: r, air: line.NewAir(ambient, r.Day.Air)}
}

// pressure fixes the working pressure: the coat's start, the weather's correction, held
// inside the coat's band and below what the gun may be run at.
func (j *job) pressure(correction unit.Drop) {
	j.solveFor(advised(&j.r.Coat, &j.r.Gun, correction, j.air))
}

// advised is the working pressure that a coat is advised on a gun with the weather's
// correction.
func advised(c *Coat, g *Gun, correction unit.Drop, a line.Air) unit.Gauge {
	w := &c.Working
	return min(max(w.Start+unit.Gauge(correction), w.Low), w.High, g.Highest(a))
}

// solveFor takes a working pressure as the target.
func (j *job) solveFor(target unit.Gauge) {
	j.target, j.working = target, target.Abs(j.air.Ambient)
	j.flow, j.cap = j.r.Gun.Air(j.working, j.air)
}

// before and after are the parts of the line upstream and downstream of the set
// pressure.
func (j *job) before() []line.Part {
	if j.r.RegulatorAt == Foot {
		return j.r.Line
	}
	return nil
}

func (j *job) after() []line.Part {
	if j.r.RegulatorAt == Foot {
		return nil
	}
	return j.r.Line
}

// setNeeded is the set pressure that brings q to the working pressure p through the
// valve as given.
func (j *job) setNeeded(q unit.Flow, p unit.Abs, valve line.Restriction) unit.Abs {
	p, _ = valve.Upstream(q, p, j.air)
	p, _ = line.Upstream(j.after(), q, p, j.air)
	return p
}

// supplyNeeded is the supply that holds the set pressure set at q: through the open
// seat of the regulator, where there is one, and the line before it.
func (j *job) supplyNeeded(q unit.Flow, set unit.Abs) unit.Abs {
	if j.r.RegulatorAt == Nowhere {
		return set
	}
	p, _ := j.r.Regulator.Seat.Upstream(q, set, j.air)
	p, _ = line.Upstream(j.before(), q, p, j.air)
	return p
}

// heldBy is the highest set pressure that supply can hold at q, 0 where it cannot
// pass q at all.
func (j *job) heldBy(supply unit.Abs, q unit.Flow) unit.Abs {
	if j.r.RegulatorAt == Nowhere {
		return supply
	}
	p, _, ok := line.Downstream(j.before(), q, supply, j.air)
	if !ok {
		return 0
	}
	p, _ = j.r.Regulator.Seat.Downstream(q, p, j.air)
	return p
}

// setWall finds the set pressure: the next mark of the gauge at or above what the
// open valve needs and the reserve, or as much of that as the supply holds.
func (j *job) setWall() {
	supply := j.r.Supply.Abs(j.air.Ambient)
	j.open = j.setNeeded(j.flow, j.working, j.r.Gun.Valve.Full)
	j.most = j.heldBy(supply, j.flow)
	if j.most < j.open {
		j.short = true
		return
	}
	if j.r.RegulatorAt == Nowhere {
		j.setAt(j.r.Supply)
		return
	}
	reserve := LeastReserve
	wanted := j.mark(reserve)
	sagged := unit.Gauge(float64(j.r.Supply) * (1 - SagShare)).Abs(j.air.Ambient)
	if held := j.heldBy(sagged, j.flow); held < wanted.Abs(j.air.Ambient) {
		// The seat is at its limit: a sag of the supply comes through to the line.
		reserve = max(reserve, unit.Drop(j.most-held))
		wanted = j.mark(reserve)
	}
	wanted = j.withinStamp(wanted)
	j.setAt(min(wanted, j.most.Gauge(j.air.Ambient)))
}

// withinStamp is a mark of the gauge, or the highest below it at which the open valve leaves
// the gun at what it may be run at, where one of those reaches the target.
func (j *job) withinStamp(wanted unit.Gauge) unit.Gauge {
	open := j.open.Gauge(j.air.Ambient)
	if wanted-open <= j.r.Gun.Highest(j.air)-j.target {
		return wanted // what the line loses grows with the flow
	}
	limit := j.limit()
	step := float64(j.r.Mark)
	held := unit.Gauge(math.Floor(float64(limit)/step+1e-9) * step)
	if wanted <= limit || held < open {
		return wanted
	}
	j.held = true
	return held
}

// limit is the set pressure at which the open valve gives the gun the most it may be run at.
func (j *job) limit() unit.Gauge {
	g := &j.r.Gun
	highest := g.Highest(j.air).Abs(j.air.Ambient)
	q, _ := g.Air(highest, j.air)
	return j.setNeeded(q, highest, g.Valve.Full).Gauge(j.air.Ambient)
}

// valveInlet is the pressure before the inlet valve at the set pressure advised.
func (j *job) valveInlet() unit.Abs {
	p, _, _ := line.Downstream(j.after(), j.flow, j.set, j.air)
	return p
}

// setAt takes a set pressure as the gauge reads it.
func (j *job) setAt(flowing unit.Gauge) {
	j.flowing = flowing
	j.set = flowing.Abs(j.air.Ambient)
	j.reserve = unit.Drop(j.set - j.open)
}

// mark is the next mark of the gauge at or above the open pressure and a reserve.
func (j *job) mark(reserve unit.Drop) unit.Gauge {
	g := float64(j.open.Gauge(j.air.Ambient)) + float64(reserve)
	step := float64(j.r.Mark)
	return unit.Gauge(math.Ceil(g/step-1e-9) * step)
}

// best is the highest working pressure, the flow and the set pressure that the
// supply can give with regulator and valve wide open.
func (j *job) best() (working unit.Abs, q unit.Flow, set unit.Abs) {
	g := &j.r.Gun
	needed := func(q unit.Flow) unit.Abs {
		w, _ := g.Upstream(q, j.air)
		return j.supplyNeeded(q, j.setNeeded(q, w, g.Valve.Full))
	}
	supply := j.r.Supply.Abs(j.air.Ambient)
	q = line.Root(needed, supply, j.mostFlow(supply, j.r.Line))
	working, _ = g.Upstream(q, j.air)
	return working, q, j.setNeeded(q, working, g.Valve.Full)
}

// mostFlow is an upper bound of what parts, the open valve and the gun pass from p.
func (j *job) mostFlow(p unit.Abs, parts []line.Part) unit.Flow {
	g := &j.r.Gun
	bound := func(r line.Restriction) unit.Flow {
		part := line.Part{Kind: line.ValveKind, Restriction: r}
		return part.Most(p, j.air)
	}
	q := min(bound(g.Cap), bound(g.Passages), bound(g.Valve.Full))
	for i := range parts {
		q = min(q, parts[i].Most(p, j.air))
	}
	return q
}

// gunAt is the forward solve: what the gun gets from a set pressure with its valve
// at an opening.
func (j *job) gunAt(set unit.Abs, opening float64) (working unit.Abs, q unit.Flow) {
	g := &j.r.Gun
	if opening <= 0 || set <= j.air.Ambient {
		return j.air.Ambient, 0
	}
	valve := g.Valve.At(opening)
	q = line.Root(func(q unit.Flow) unit.Abs {
		w, _ := g.Upstream(q, j.air)
		return j.setNeeded(q, w, valve)
	}, set, j.mostFlow(set, j.after()))
	working, _ = g.Upstream(q, j.air)
	return working, q
}
