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
	wanted := s.Weather.Correction
	s.Weather.Correction = j.pressure(wanted)
	s.Weather.Held = wanted < 0 && s.Weather.Correction == 0
	j.setWall()
	var sens sensitivity
	sens.at(&j)
	s.assemble(&j, &sens)
	s.times(r)
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
	// wall and sets are the places of its regulators: see Regulators.
	wall, sets int

	wanted  unit.Gauge // by the coat and the day
	target  unit.Gauge // downstream of the valve: the same, but for a gun without one
	working unit.Abs   // the same
	flow    unit.Flow  // there
	cap     unit.Abs

	setting          // of what sets the pressure for the gun: the last regulator, or the supply
	atWall  setting  // of the regulator farthest upstream: the same where there is but one
	most    unit.Abs // highest set pressure the supply can hold at this flow
	short   bool
	held    bool // the set pressure, by the gun's stamp
}

// setting is a pressure that is set.
type setting struct {
	open    unit.Abs   // at which what lies downstream gets just what it asks for
	set     unit.Abs   // advised, flowing
	flowing unit.Gauge // the same as the gauge reads it
	reserve unit.Drop  // set less open
}

func newJob(r *Request, ambient unit.Abs) job {
	j := job{r: r, air: line.NewAir(ambient, r.HoseTemp())}
	j.wall, j.sets = r.Regulators()
	return j
}

// reads is what the gauge of the regulator at reads too high; known of the wall's alone.
func (j *job) reads(at int) unit.Gauge {
	if !j.r.AsRead() || at < 0 || at != j.wall {
		return 0
	}
	return unit.Gauge(j.r.Learnt.Middle.WallGauge)
}

// footSets is whether a second regulator, nearer the gun, sets its pressure: the gun's valve
// then stands open, and the first one gives the second what it asks for.
func (j *job) footSets() bool { return j.sets != j.wall }

// pressure fixes the working pressure: the coat's start, the weather's correction, held
// inside the coat's band and below what the gun may be run at, as the gun's gauge shows it. It
// gives what came of the correction inside these.
func (j *job) pressure(correction unit.Drop) unit.Drop {
	shown := workingFor(&j.r.Coat, &j.r.Gun, correction, j.air)
	if j.wanted = shown; j.r.AsRead() {
		j.wanted = min(shown-j.r.GunReads(), j.r.Gun.Highest(j.air))
	}
	j.solveFor(j.wanted)
	return unit.Drop(shown - workingFor(&j.r.Coat, &j.r.Gun, 0, j.air))
}

// workingFor is the working pressure that a coat is given on a gun with the weather's
// correction.
func workingFor(c *Coat, g *Gun, correction unit.Drop, a line.Air) unit.Gauge {
	w := &c.Working
	return min(max(w.Start+unit.Gauge(correction), w.Low), w.High, g.Highest(a))
}

// solveFor takes a working pressure as the target.
func (j *job) solveFor(target unit.Gauge) {
	j.target, j.working = target, target.Abs(j.air.Ambient)
	j.flow, j.cap = j.r.Gun.Air(j.working, j.air)
}

// after is the parts of the line downstream of what sets the pressure for the gun.
func (j *job) after() []line.Part { return j.r.Line[j.sets+1:] }

// setNeeded is the set pressure that brings q to the working pressure p through the
// valve as given.
func (j *job) setNeeded(q unit.Flow, p unit.Abs, valve line.Restriction) unit.Abs {
	p, _ = valve.Upstream(q, p, j.air)
	p, _ = line.Upstream(j.after(), q, p, j.air)
	return p
}

// neededAt is the pressure needed downstream of the part at so that set stands downstream of
// the regulator that sets, at q, every regulator between wide open; at -1 it is the supply.
func (j *job) neededAt(at int, q unit.Flow, set unit.Abs) unit.Abs {
	p, _ := line.Upstream(j.r.Line[at+1:j.sets+1], q, set, j.air)
	return p
}

// heldBy is the highest pressure that supply can hold downstream of the part at, at q, every
// regulator on the way wide open; 0 where it cannot pass q at all.
func (j *job) heldBy(supply unit.Abs, at int, q unit.Flow) unit.Abs {
	p, _, ok := line.Downstream(j.r.Line[:at+1], q, supply, j.air)
	if !ok {
		return 0
	}
	return p
}

// setWall finds the pressures to set. The gun's is that at which the open valve gives the
// target, where a second regulator sets it; else the wall's holds the reserve besides.
func (j *job) setWall() {
	supply := j.r.Supply.Abs(j.air.Ambient)
	j.open = j.setNeeded(j.flow, j.working, j.r.Gun.Valve.Full)
	j.most = j.heldBy(supply, j.sets, j.flow)
	if j.most < j.open {
		j.short = true
		j.atWall.open = j.neededAt(j.wall, j.flow, j.open)
		return
	}
	switch {
	case j.sets < 0 && j.r.Gun.Valve.None:
		j.nearestMark()
	case j.sets < 0:
		j.take(&j.setting, j.sets, j.r.Supply)
	case j.footSets():
		j.take(&j.setting, j.sets, j.open.Gauge(j.air.Ambient))
		j.set, j.reserve = j.open, 0
		j.atWall.open = j.neededAt(j.wall, j.flow, j.set)
		j.take(&j.atWall, j.wall, j.marked(j.wall, j.atWall.open))
		return
	case j.r.Gun.Valve.None:
		j.nearestMark()
	default:
		j.take(&j.setting, j.sets, j.withinStamp(j.marked(j.sets, j.open)))
	}
	j.atWall = j.setting
}

// marked is the pressure to set at the regulator at, flowing: the next mark of the gauge at
// or above open and the reserve, or as much of that as the supply holds.
func (j *job) marked(at int, open unit.Abs) unit.Gauge {
	most := j.heldBy(j.r.Supply.Abs(j.air.Ambient), at, j.flow)
	reserve, reads := LeastReserve, j.reads(at)
	wanted := j.mark(open, reserve, reads)
	sagged := unit.Gauge(float64(j.r.Supply) * (1 - SagShare)).Abs(j.air.Ambient)
	if held := j.heldBy(sagged, at, j.flow); held < (wanted - reads).Abs(j.air.Ambient) {
		// The seat is at its limit: a sag of the supply comes through to the line.
		reserve = max(reserve, unit.Drop(most-held))
		wanted = j.mark(open, reserve, reads)
	}
	return min(wanted, most.Gauge(j.air.Ambient)+reads)
}

// mark is the next mark of a gauge that reads so much too high at or above the open pressure and
// a reserve.
func (j *job) mark(open unit.Abs, reserve unit.Drop, reads unit.Gauge) unit.Gauge {
	g := float64(open.Gauge(j.air.Ambient)+reads) + float64(reserve)
	step := float64(j.r.Mark)
	return unit.Gauge(math.Ceil(g/step-1e-9) * step)
}

// take takes a set pressure of the regulator at as its gauge reads it.
func (j *job) take(s *setting, at int, flowing unit.Gauge) {
	s.flowing = flowing
	s.set = (flowing - j.reads(at)).Abs(j.air.Ambient)
	s.reserve = unit.Drop(s.set - s.open)
}

// withinStamp is a mark of the gauge, or the highest below it at which the open valve leaves
// the gun at what it may be run at, where one of those reaches the target.
func (j *job) withinStamp(wanted unit.Gauge) unit.Gauge {
	reads := j.reads(j.sets)
	open := j.open.Gauge(j.air.Ambient) + reads
	if wanted-open <= j.r.Gun.Highest(j.air)-j.target {
		return wanted // what the line loses grows with the flow
	}
	most, _ := j.limit()
	limit, step := most.Gauge(j.air.Ambient)+reads, float64(j.r.Mark)
	held := unit.Gauge(math.Floor(float64(limit)/step+1e-9) * step)
	if wanted <= limit || held < open {
		return wanted
	}
	j.held = true
	return held
}

// limit is the set pressure at which the open valve gives the gun the most it may be run at,
// and the flow there.
func (j *job) limit() (set unit.Abs, q unit.Flow) {
	g := &j.r.Gun
	highest := g.Highest(j.air).Abs(j.air.Ambient)
	q, _ = g.Air(highest, j.air)
	return j.setNeeded(q, highest, g.Valve.Full), q
}

// valveInlet is the pressure before the inlet valve at the set pressure advised: what its
// open valve needs where that is all there is, since a choked part may then pass a rounding
// too little.
func (j *job) valveInlet() unit.Abs {
	p, _, ok := line.Downstream(j.after(), j.flow, j.set, j.air)
	if !ok || j.footSets() {
		p, _ = j.r.Gun.Valve.Full.Upstream(j.flow, j.working, j.air)
	}
	return p
}

// best is the highest working pressure, the flow and the set pressure that the
// supply can give with regulator and valve wide open.
func (j *job) best() (working unit.Abs, q unit.Flow, set unit.Abs) {
	g := &j.r.Gun
	needed := func(q unit.Flow) unit.Abs {
		w, _ := g.Upstream(q, j.air)
		return j.neededAt(-1, q, j.setNeeded(q, w, g.Valve.Full))
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

// gunAt is the forward solve: what the gun gets from a pressure downstream of the part at,
// every regulator from there on wide open and its valve at an opening.
func (j *job) gunAt(at int, set unit.Abs, opening float64) (working unit.Abs, q unit.Flow) {
	g := &j.r.Gun
	if opening <= 0 || set <= j.air.Ambient {
		return j.air.Ambient, 0
	}
	valve := g.Valve.At(opening)
	q = line.Root(func(q unit.Flow) unit.Abs {
		w, _ := g.Upstream(q, j.air)
		return j.neededAt(at, q, j.setNeeded(q, w, valve))
	}, set, j.mostFlow(set, j.r.Line[at+1:]))
	working, _ = g.Upstream(q, j.air)
	return working, q
}
