package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Set is how a job is set by hand.
type Set struct {
	Wall     unit.Gauge  // flowing, at the regulator farthest upstream, as its gauge reads it; not used without one
	Opening  float64     // of the inlet valve, above 0 to 1; not used without one
	Distance unit.Length // from the panel, within DistanceBound
}

// Set is how the setup says to set it; its supply must not be short.
func (s *Setup) Set() Set { return Set{s.Wall.Flowing, s.Valve.Opening, s.Distance.Target} }

// Sprayed is what a job comes to with the trigger pulled, as it is set.
type Sprayed struct {
	Wall   unit.Gauge // downstream of that regulator: less than set where the supply holds no more
	Static unit.Gauge // the same with no air moving, the knob left as it is
	Foot   unit.Gauge // before the inlet valve
	Gun    unit.Gauge // downstream of it
	Cap    unit.Gauge
	Reads  unit.Gauge // what the gun's own gauge shows, 0 without one
	Flow   unit.Flow

	Distance unit.Length // as set

	Choked     bool      // the inlet valve
	EighthTurn unit.Drop // what an eighth of a turn of it moves at the gun; 0 without one

	// Known is false where the gun gets too little for the models of drops and of what lands.
	Known bool
	Drops unit.Length // Sauter mean diameter: an estimate, of which only the change is of use
	Lost  float64     // what is gone from the drops on their way, of what can be; 0 of a coat that does not dry
}

// Spray is what the job comes to as it is set. s is what was worked out of it, or of the same
// job with a sound line: a second regulator, nearer the gun, stands as that says.
func (r *Request) Spray(s *Setup, set Set) Sprayed {
	amb := s.Weather.Ambient
	j := newJob(r, amb)
	if r.Gun.Valve.None {
		set.Opening = 1
	}
	// Each regulator holds back what is more than it is set to, and so does the supply.
	working, q := j.gunAt(-1, r.Supply.Abs(amb), set.Opening)
	hold := func(at int, pressure unit.Gauge) {
		if w, flow := j.gunAt(at, (pressure - j.reads(at)).Abs(amb), set.Opening); w < working {
			working, q = w, flow
		}
	}
	if j.wall >= 0 {
		hold(j.wall, set.Wall)
	}
	if j.footSets() {
		hold(j.sets, s.Foot.Flowing)
	}
	j.solveFor(working.Gauge(amb))
	valve, reads := r.Gun.Valve.At(set.Opening), j.reads(j.wall)
	into, choked := valve.Upstream(q, working, j.air)
	x := Sprayed{
		Wall: min(set.Wall, j.heldBy(r.Supply.Abs(amb), j.wall, q).Gauge(amb)+reads), Foot: into.Gauge(amb), Gun: working.Gauge(amb), Cap: j.cap.Gauge(amb), Flow: q,
		Reads: r.reads(working.Gauge(amb), into.Gauge(amb)), Choked: choked, Distance: set.Distance,
	}
	x.Static = min(r.regulator(j.wall).Set(x.Wall, q), max(r.Supply+reads, x.Wall))
	if j.wall < 0 {
		x.Wall, x.Static = 0, 0
	}
	if !r.Gun.Valve.None && q > 0 {
		var sens sensitivity
		sens.at(&j)
		x.EighthTurn = sens.eighthTurn(set.Opening)
	}
	x.land(&j)
	return x
}

// land works out the drops and what they lose on their way.
func (x *Sprayed) land(j *job) {
	e := newEvaporation(&j.r.Coat, &j.r.Gun, j.r.Day, j.air.Ambient)
	if !InletBound.Holds(float64(x.Gun)) || !DistanceBound.Holds(float64(x.Distance)) {
		return
	}
	var err error
	if x.Drops, _, _, err = e.drop(x.Gun, j.r.Day.Air); err != nil {
		return
	}
	if x.Known = true; !j.r.Coat.Dries() {
		return
	}
	x.Lost, _, err = e.lossFrom(flightCase{pressure: x.Gun, day: j.r.Day}, x.Distance)
	x.Known = err == nil
}

// Beside is how what is sprayed differs from what the same job comes to otherwise: each as many
// times as much, above 0.
type Beside struct {
	Drops float64 // across
	Drier float64 // lost on the way
	Fan   float64 // width at the panel: it widens in proportion to the distance
	Film  float64 // at the same hand speed, the passes as far apart for the fan's width
}

// Beside is how x differs from another; both must be Known.
func (x *Sprayed) Beside(other *Sprayed) Beside {
	b := Beside{Drops: float64(x.Drops / other.Drops), Drier: 1, Fan: float64(x.Distance / other.Distance)}
	if other.Lost > 0 {
		b.Drier = x.Lost / other.Lost
	}
	b.Film = 1 / b.Fan
	// How much lands is known by its changes alone: of any share, far from the bounds of one.
	const anyShare = 0.4
	if t, err := (coat.GunTransfer{Transfer: anyShare, Pressure: other.Gun, Distance: other.Distance}).At(x.Gun, x.Distance); err == nil {
		b.Film *= t.Value / anyShare
	}
	return b
}
