package calc

import (
	"math"

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
		Pressure: j.target, Wanted: j.wanted, ReadsOpen: j.target, Cap: j.cap.Gauge(amb),
		Flow: j.flow, Highest: g.Highest(j.air), JetMach: jet.Mach,
	}
	open, _ := g.Valve.Full.Upstream(j.flow, j.working, j.air)
	if j.r.Gauge == AtFoot {
		s.Working.ReadsOpen = open.Gauge(amb)
	}
	s.Working.ReadsOpen += j.r.GunReads()
	s.Distance = distance(&j.r.Coat, g, jet.Reach(g.Felt))
	e := newEvaporation(&j.r.Coat, g, j.r.Day, amb)
	e.atWorking(&s.Weather.InFlight, j.target, s.Distance.Target)
	s.settings(j)
	s.Valve = ValveMargin{None: g.Valve.None, Floor: sens.floor(), TurnsOf: g.Valve.Turns, CountsFromShut: g.Valve.FromShut}
	s.Valve.open(1, &g.Valve)
	if j.short {
		s.assembleShort(j, sens)
		return
	}
	into := j.valveInlet()
	v := &s.Valve
	v.Reserve = j.reserve
	opening, choked, _ := g.Valve.OpeningFor(j.flow, into, j.working, j.air)
	if j.footSets() {
		opening = 1 // and not a rounding below
	}
	v.open(opening, &g.Valve)
	v.Choked = choked
	v.Mach = j.valveMach(into, v.Opening, v.Choked)
	v.EighthTurn = sens.eighthTurn(v.Opening)
	s.Working.Reads = j.r.reads(j.target, into.Gauge(amb))
	s.walk(j, j.flow, j.working, into)
	s.Bottleneck = s.bottleneck(unit.Drop(open - j.working))
	s.assembleNow(j, sens)
}

// settings are the pressures to set, of a supply that is not short all of them.
func (s *Setup) settings(j *job) {
	limit, q := j.limit()
	s.Wall = j.advised(&j.atWall, j.wall, j.neededAt(j.wall, q, limit), j.r.Supply)
	s.Wall.Held = j.held
	if j.footSets() {
		s.Foot = FootSetting{true, j.advised(&j.setting, j.sets, limit, s.Wall.Static)}
	}
}

// advised is a setting of the regulator at: limit is where the gun gets the most it may be
// run at, and no gauge shows more than before.
func (j *job) advised(to *setting, at int, limit unit.Abs, before unit.Gauge) WallSetting {
	reads := j.reads(at)
	w := WallSetting{Open: to.open.Gauge(j.air.Ambient) + reads, Limit: limit.Gauge(j.air.Ambient) + reads, Reads: unit.Drop(reads)}
	if !j.short {
		w.Flowing = to.flowing
		rise := float64(j.r.regulator(at).Set(w.Flowing, j.flow) - w.Flowing)
		marks := math.Round(rise/float64(j.r.Mark)) * float64(j.r.Mark)
		w.Static = min(w.Flowing+unit.Gauge(marks), max(before+reads, w.Flowing))
	}
	return w
}

// assembleShort describes a line run as far as the supply goes.
func (s *Setup) assembleShort(j *job, sens *sensitivity) {
	amb := j.air.Ambient
	working, q, set := j.best()
	valve := j.r.Gun.Valve.Full
	into, _ := valve.Upstream(q, working, j.air)
	s.Short = Shortfall{
		Is: true, Best: working.Gauge(amb),
		Needed: j.neededAt(-1, j.flow, j.open).Gauge(amb),
	}
	reads := j.reads(j.wall)
	s.Wall.Flowing = j.neededAt(j.wall, q, set).Gauge(amb) + reads
	s.Wall.Static = max(j.r.Supply+reads, s.Wall.Flowing)
	if s.Foot.Is {
		s.Foot.Flowing, s.Foot.Static = set.Gauge(amb), s.Wall.Static
	}
	s.Valve.Mach = throat(q, into, valve, j.air)
	s.Working.Reads = j.r.reads(s.Short.Best, into.Gauge(amb))
	s.walk(j, q, working, into)
	s.Bottleneck = s.bottleneck(unit.Drop(into - working))
	s.assembleNow(j, sens)
}

// walk lists every part from the supply to the cap at flow q, with into before the inlet
// valve.
func (s *Setup) walk(j *job, q unit.Flow, working, into unit.Abs) {
	s.Line = make([]Step, 0, len(j.r.Line)+3)
	g := &j.r.Gun
	amb := j.air.Ambient
	add := func(name string, kind line.Kind, in, out unit.Abs, mach float64, bore unit.Length) {
		s.Line = append(s.Line, Step{
			Name: name, Kind: kind, In: in.Gauge(amb), Out: out.Gauge(amb), Loss: unit.Drop(in - out), Mach: mach, Bore: bore,
		})
	}
	// The march goes upstream, which has an answer even where a part is choked. A regulator
	// takes up what is left of what comes to it.
	var ends [MostParts + 1]unit.Abs
	n := len(j.r.Line)
	ends[n] = into
	var seats [MostParts]line.Restriction
	for i := n - 1; i >= 0; i-- {
		p := &j.r.Line[i]
		ends[i], _ = p.Upstream(q, ends[i+1], j.air)
		if p.Kind != line.RegulatorKind {
			continue
		}
		if !j.short {
			ends[i], ends[i+1] = j.comesTo(i), j.settingOf(i).set
		}
		seats[i] = p.Restriction
		if c, _, ok := seats[i].Needed(q, ends[i], ends[i+1], j.air); ok {
			seats[i].C = c
		}
	}
	for i := range j.r.Line {
		p := &j.r.Line[i]
		switch p.Kind {
		case line.RegulatorKind:
			add(p.Name, p.Kind, ends[i], ends[i+1], throat(q, ends[i], seats[i], j.air), p.Restriction.Bore())
		case line.HoseKind:
			called := &j.r.described(i).Hose // what was read of it is what it passes
			add(p.Name, p.Kind, ends[i], ends[i+1], p.Mach(q, ends[i], ends[i+1], j.air), called.Bore)
			s.Line[i].Length = called.Length
		default:
			add(p.Name, p.Kind, ends[i], ends[i+1], p.Mach(q, ends[i], ends[i+1], j.air), p.Restriction.Bore())
		}
	}
	if !g.Valve.None {
		add(j.r.Parts.Valve, line.ValveKind, into, working, s.Valve.Mach, g.Valve.At(s.Valve.Opening).Bore())
	}
	s.share()
	_, cap := g.Upstream(q, j.air)
	add(j.r.Parts.Passages, line.PassagesKind, working, cap, throat(q, working, g.Passages, j.air), g.Passages.Bore())
	add(j.r.Parts.Cap, line.CapKind, cap, amb, gun.JetOf(q, cap, j.air).Mach, g.Cap.Bore())
}

// settingOf is the setting of the regulator at.
func (j *job) settingOf(at int) *setting {
	if at == j.sets {
		return &j.setting
	}
	return &j.atWall
}

// comesTo is the pressure that comes to the regulator at as set, from the supply or from the
// regulator before it.
func (j *job) comesTo(at int) unit.Abs {
	from, p := 0, j.r.Supply.Abs(j.air.Ambient)
	if at != j.wall {
		from, p = j.wall+1, j.atWall.set
	}
	p, _, _ = line.Downstream(j.r.Line[from:at], j.flow, p, j.air)
	return p
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
	w, enough := sens.way(j.r.Now)
	open := j.working // where a second regulator holds what it is set to
	if !j.footSets() || !enough {
		open, _ = j.gunAt(j.wall, (j.r.Now - j.reads(j.wall)).Abs(j.air.Ambient), 1)
	}
	s.Now = Now{
		Given: true, Wall: w.Wall, GunIfOpen: open.Gauge(j.air.Ambient), Enough: enough,
		Opening: w.Opening, Area: w.Area, Choked: w.Choked, Mach: w.Mach, EighthTurn: w.EighthTurn,
	}
}

// distance is where the push is felt, as the stage is held, and the coat's own addition, held
// inside the gun's class or what the stage has in its place.
func distance(c *Coat, g *Gun, felt unit.Length) Distance {
	nearest, farthest := held(c, g)
	at, end := felt*unit.Length(c.Stage.times())+c.Farther, NotHeld
	switch {
	case nearest == farthest: // as the product's sheet says
		return Distance{Target: nearest, Low: nearest - bandHalf, High: nearest + bandHalf, Held: HeldBySheet}
	case at >= farthest:
		at, end = farthest, HeldFarthest
	case at <= nearest:
		at, end = nearest, HeldNearest
	}
	return Distance{Target: at, Low: max(at-bandHalf, nearest), High: min(at+bandHalf, farthest), Held: end}
}
