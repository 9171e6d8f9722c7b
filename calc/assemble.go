package calc

import (
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// bandHalf is how far either side of the target the gun may wander: common practice
// speaks of 5 to 6 in, an inch in all.
const bandHalf = unit.Length(0.5 * unit.MetrePerInch)

// assemble puts what the job found into the setup.
func (s *Setup) assemble(j *job, sens *sensitivity) {
	amb := j.air.Ambient
	g := &j.r.Gun
	jet := gun.JetOf(j.flow, j.cap, j.air)
	s.Working = Working{
		Pressure: j.target, Reads: j.target, Cap: j.cap.Gauge(amb),
		Flow: j.flow, Highest: g.Highest(j.air), JetMach: jet.Mach,
	}
	s.Distance = distance(&j.r.Coat, g, jet)
	e := newEvaporation(&j.r.Coat, g, j.r.Day, amb)
	e.atWorking(&s.Weather.InFlight, j.target, s.Distance.Target)
	s.Wall.Open = j.open.Gauge(amb)
	s.Wall.Limit = j.limit()
	s.Wall.Held = j.held
	s.Valve = ValveMargin{Opening: 1, Floor: sens.floor()}
	if j.short {
		s.assembleShort(j, sens)
		return
	}
	s.Wall.Flowing = j.flowing
	s.Wall.Static = min(j.r.Regulator.Set(s.Wall.Flowing, j.flow), max(j.r.Supply, s.Wall.Flowing))
	into := j.valveInlet()
	v := &s.Valve
	v.Reserve = j.reserve
	v.Opening, v.Choked, _ = g.Valve.OpeningFor(j.flow, into, j.working, j.air)
	v.Mach = j.valveMach(into, v.Opening, v.Choked)
	v.EighthTurn = sens.eighthTurn(v.Opening)
	if j.r.Gauge == AtFoot {
		s.Working.Reads = into.Gauge(amb)
	}
	s.walk(j, j.flow, j.working, into, j.set)
	open, _ := g.Valve.Full.Upstream(j.flow, j.working, j.air)
	s.Bottleneck = s.bottleneck(unit.Drop(open - j.working))
	s.assembleNow(j, sens)
}

// assembleShort describes a line run as far as the supply goes.
func (s *Setup) assembleShort(j *job, sens *sensitivity) {
	amb := j.air.Ambient
	working, q, set := j.best()
	valve := j.r.Gun.Valve.Full
	into, _ := valve.Upstream(q, working, j.air)
	s.Short = Shortfall{
		Is: true, Best: working.Gauge(amb),
		Needed: j.supplyNeeded(j.flow, j.open).Gauge(amb),
	}
	s.Wall.Flowing = set.Gauge(amb)
	s.Wall.Static = max(j.r.Supply, s.Wall.Flowing)
	s.Valve.Mach = throat(q, into, valve, j.air)
	if j.r.Gauge == AtFoot {
		s.Working.Reads = into.Gauge(amb)
	}
	s.walk(j, q, working, into, set)
	s.Bottleneck = s.bottleneck(unit.Drop(into - working))
	s.assembleNow(j, sens)
}

// walk lists every part from the wall to the cap at flow q, with into before the
// inlet valve and the set pressure set.
func (s *Setup) walk(j *job, q unit.Flow, working, into, set unit.Abs) {
	s.Line = make([]Step, 0, len(j.r.Line)+4)
	g := &j.r.Gun
	amb := j.air.Ambient
	add := func(name string, kind line.Kind, in, out unit.Abs, mach float64) {
		s.Line = append(s.Line, Step{
			Name: name, Kind: kind, In: in.Gauge(amb), Out: out.Gauge(amb), Loss: unit.Drop(in - out), Mach: mach,
		})
	}
	// The march goes upstream, which has an answer even where a part is choked.
	var ends [MostParts + 1]unit.Abs
	along := func(out unit.Abs) {
		n := len(j.r.Line)
		ends[n] = out
		for i := n - 1; i >= 0; i-- {
			ends[i], _ = j.r.Line[i].Upstream(q, ends[i+1], j.air)
		}
		for i := range j.r.Line {
			p := &j.r.Line[i]
			add(p.Name, p.Kind, ends[i], ends[i+1], p.Mach(q, ends[i], ends[i+1], j.air))
		}
	}
	regulator := func(in unit.Abs) {
		seat := j.r.Regulator.Seat
		if c, _, ok := seat.Needed(q, in, set, j.air); ok {
			seat.C = c
		}
		add(j.r.RegulatorName, line.RegulatorKind, in, set, throat(q, in, seat, j.air))
	}
	supply := j.r.Supply.Abs(amb)
	switch j.r.RegulatorAt {
	case Wall:
		regulator(supply)
		along(into)
	case Foot:
		at, _ := j.r.Regulator.Seat.Upstream(q, set, j.air)
		if !j.short {
			at, _, _ = line.Downstream(j.r.Line, q, supply, j.air)
		}
		along(at)
		regulator(at)
	case Nowhere:
		along(into)
	}
	add(j.r.Parts.Valve, line.ValveKind, into, working, s.Valve.Mach)
	s.share()
	_, cap := g.Upstream(q, j.air)
	add(j.r.Parts.Passages, line.PassagesKind, working, cap, throat(q, working, g.Passages, j.air))
	add(j.r.Parts.Cap, line.CapKind, cap, amb, gun.JetOf(q, cap, j.air).Mach)
}

// throat is the Mach number in a restriction that passes q from p1.
func throat(q unit.Flow, p1 unit.Abs, r line.Restriction, a line.Air) float64 {
	return line.ThroatMach(float64(q) / float64(r.Flow(p1, 0, a)))
}

// share fills in what part of the whole loss each step takes; a regulator's fall is
// wanted and does not count.
func (s *Setup) share() {
	var lost unit.Drop
	for _, step := range s.Line {
		if step.Kind != line.RegulatorKind {
			lost += step.Loss
		}
	}
	for i := range s.Line {
		if s.Line[i].Kind != line.RegulatorKind && lost > 0 {
			s.Line[i].Share = float64(s.Line[i].Loss / lost)
		}
	}
}

// bottleneck is the part up to the gun that costs most with the valve open; a
// regulator counts only where it is wide open for want of supply.
func (s *Setup) bottleneck(openValve unit.Drop) int {
	worst, most := 0, unit.Drop(-1)
	for i, step := range s.Line {
		loss := step.Loss
		switch step.Kind {
		case line.PassagesKind, line.CapKind:
			continue
		case line.RegulatorKind:
			if !s.Short.Is {
				continue
			}
		case line.ValveKind:
			loss = openValve
		}
		if loss > most {
			worst, most = i, loss
		}
	}
	return worst
}

// valveMach is the Mach number in the valve's throat at the target's flow.
func (j *job) valveMach(into unit.Abs, opening float64, choked bool) float64 {
	if choked {
		return 1 // and not a rounding below
	}
	return j.r.Gun.Valve.Mach(j.flow, into, opening, j.air)
}

// assembleNow works the wall as it stands.
func (s *Setup) assembleNow(j *job, sens *sensitivity) {
	if !j.r.HasNow {
		return
	}
	amb := j.air.Ambient
	open, _ := j.gunAt(j.r.Now.Abs(amb), 1)
	w, enough := sens.way(j.r.Now)
	s.Now = Now{
		Given: true, Wall: w.Wall, GunIfOpen: open.Gauge(amb), Enough: enough,
		Opening: w.Opening, Choked: w.Choked, Mach: w.Mach, EighthTurn: w.EighthTurn,
	}
}

// distance is the jet's reach, the coat's own addition, held inside the gun's class.
func distance(c *Coat, g *Gun, jet gun.Jet) Distance {
	at := min(max(jet.Reach(g.Felt)+c.Farther, g.Nearest), g.Farthest)
	return Distance{Target: at, Low: max(at-bandHalf, g.Nearest), High: min(at+bandHalf, g.Farthest)}
}
