package practice

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// FaultKind is a way in which a booth is badly set.
type FaultKind string

// The kinds of fault, as sentences name them: "fault-" and its name.
const (
	Clogged      FaultKind = "clogged"        // a part passes less than what it is called passes
	WallGaugeUp  FaultKind = "wall-gauge-up"  // reads high
	WallGaugeLow FaultKind = "wall-gauge-low" // reads low
	GunGaugeUp   FaultKind = "gun-gauge-up"
	GunGaugeLow  FaultKind = "gun-gauge-low"
	ValveShut    FaultKind = "valve-shut" // nearly, under a high wall
	WallLow      FaultKind = "wall-low"   // set too low, by a gauge that reads right
	HeldFar      FaultKind = "held-far"
	HeldNear     FaultKind = "held-near"
)

// kinds is every kind of fault.
var kinds = []FaultKind{Clogged, WallGaugeUp, WallGaugeLow, GunGaugeUp, GunGaugeLow, ValveShut, WallLow, HeldFar, HeldNear}

// Cause is what is wrong, as it can be named: a kind, and of a clogged part which.
type Cause struct {
	Kind FaultKind
	Part int // in the request's line; 0 of the other kinds
}

// fault is a cause and how far it goes: the share of what a part passes, what a gauge or the
// wall is off by in Pa, how many times the wall stands, how far the gun is held off in m.
type fault struct {
	Cause
	size float64
}

// reaches is the least and the most that each kind goes.
var reaches = map[FaultKind][2]float64{
	Clogged:      {0.08, 0.5},
	WallGaugeUp:  {3 * unit.PascalPerPSI, 12 * unit.PascalPerPSI},
	WallGaugeLow: {3 * unit.PascalPerPSI, 12 * unit.PascalPerPSI},
	GunGaugeUp:   {3 * unit.PascalPerPSI, 10 * unit.PascalPerPSI},
	GunGaugeLow:  {3 * unit.PascalPerPSI, 10 * unit.PascalPerPSI},
	ValveShut:    {1.5, 4},
	WallLow:      {4 * unit.PascalPerPSI, 15 * unit.PascalPerPSI},
	HeldFar:      {1 * unit.MetrePerInch, 4 * unit.MetrePerInch},
	HeldNear:     {1 * unit.MetrePerInch, 2.5 * unit.MetrePerInch},
}

// steps is how many sizes of a kind are worked: so near each other that what the readings show
// of one and of the next is hardly told apart.
const steps = 16

// size is one of the sizes of a kind, from 0 to steps-1: each as many times the one before.
func size(k FaultKind, step int) float64 {
	low, high := reaches[k][0], reaches[k][1]
	return low * math.Pow(high/low, float64(step)/(steps-1))
}

// cloggable is the kinds of part that clog, kink or turn out to be smaller than they are called.
var cloggable = []line.Kind{line.FilterKind, line.DryerKind, line.CouplingKind, line.HoseKind}

// Causes is every cause that a job's booth could have, in the order in which it is named.
func (j *Job) Causes() (all []Cause) {
	if j.Request.RegulatorAt() != calc.Nowhere {
		all = append(all, Cause{Kind: WallLow}, Cause{Kind: WallGaugeUp}, Cause{Kind: WallGaugeLow})
	}
	for i := range j.Request.Line {
		if slices.Contains(cloggable, j.Request.Line[i].Kind) {
			all = append(all, Cause{Clogged, i})
		}
	}
	if valve := slices.Contains(j.Asks(), Opening); valve {
		if j.Request.Gauge == calc.InHandle { // it is what the valve is set by
			all = append(all, Cause{Kind: GunGaugeUp}, Cause{Kind: GunGaugeLow})
		}
		if j.Request.RegulatorAt() != calc.Nowhere {
			all = append(all, Cause{Kind: ValveShut})
		}
	}
	return append(all, Cause{Kind: HeldFar}, Cause{Kind: HeldNear})
}

// booth is a job's booth with a fault in it, set as somebody sets it who does not know of that.
type booth struct {
	request         *calc.Request
	set             calc.Set // what stands, whatever the gauges show
	wallOff, gunOff unit.Drop
	sprayed         calc.Sprayed
	signs           []calc.Sign
}

// with is the booth with a fault; false where it cannot have that.
func (j *Job) with(f fault) (b booth, ok bool) {
	s := j.Setup
	b = booth{request: j.Request, set: s.Set()}
	switch f.Kind {
	case Clogged:
		b.request = clogged(j.Request, f.Part, f.size)
	case WallGaugeUp:
		b.wallOff = unit.Drop(f.size)
		b.set.Wall -= unit.Gauge(f.size)
	case WallGaugeLow:
		b.wallOff = -unit.Drop(f.size)
		b.set.Wall += unit.Gauge(f.size)
	case GunGaugeUp:
		b.gunOff = unit.Drop(f.size)
		b.set.Opening = j.openingFor(&b, s.Working.Pressure-unit.Gauge(f.size))
	case GunGaugeLow:
		b.gunOff = -unit.Drop(f.size)
		want := s.Working.Pressure + unit.Gauge(f.size)
		if b.set.Opening = j.openingFor(&b, want); b.set.Opening == 1 { // then the wall is raised
			b.set.Wall = j.wallFor(&b, want)
		}
	case ValveShut:
		b.set.Wall *= unit.Gauge(f.size)
		b.set.Opening = j.openingFor(&b, s.Working.Pressure)
	case WallLow:
		b.set.Wall -= unit.Gauge(f.size)
	case HeldFar:
		b.set.Distance += unit.Length(f.size)
	case HeldNear:
		b.set.Distance -= unit.Length(f.size)
	}
	if b.set.Wall < unit.Gauge(calc.LeastReserve) || !calc.DistanceBound.Holds(float64(b.set.Distance)) {
		return b, false
	}
	j.spray(&b)
	held := b.sprayed.Wall > b.set.Wall-unit.Gauge(j.Request.Mark) // else the supply holds no such wall
	return b, held || j.Request.RegulatorAt() == calc.Nowhere
}

// sound is the booth set as advised, with nothing wrong.
func (j *Job) sound() booth {
	b := booth{request: j.Request, set: j.Setup.Set()}
	j.spray(&b)
	return b
}

// spray works what comes of a booth as it is set.
func (j *Job) spray(b *booth) {
	advised := j.Request.Spray(j.Setup, j.Setup.Set())
	b.sprayed = b.request.Spray(j.Setup, b.set)
	b.signs = j.Setup.Signs(j.Request, &advised, &b.sprayed, b.set.Opening)
}

// clogged is a request with a part of its line passing a share of what it does. Of a hose that
// is one whose bore passes as much: what a tube passes goes with the power 5/2 of its bore, and
// what its ends do with the square.
func clogged(q *calc.Request, at int, share float64) *calc.Request {
	worse := *q
	worse.Line = slices.Clone(q.Line)
	p := &worse.Line[at]
	if p.Kind != line.HoseKind {
		p.Restriction.C *= unit.Conductance(share)
		return &worse
	}
	bore := math.Pow(share, 2.0/5)
	p.Hose.Bore *= unit.Length(bore)
	p.Hose.End.C *= unit.Conductance(bore * bore)
	return &worse
}

// openingFor is how far the valve is open where the gun gets a pressure, as far as it can.
func (j *Job) openingFor(b *booth, gun unit.Gauge) float64 {
	const least, within = 1e-3, 1e-9
	return line.FalsePosition(func(open float64) float64 {
		set := b.set
		set.Opening = open
		x := b.request.Spray(j.Setup, set)
		return float64((x.Gun - gun) / gun)
	}, least, 1, within)
}

// wallFor is where the wall stands where the gun gets a pressure, up to what the supply holds.
func (j *Job) wallFor(b *booth, gun unit.Gauge) unit.Gauge {
	const within = 1e-9
	return unit.Gauge(line.FalsePosition(func(wall float64) float64 {
		set := b.set
		set.Wall = unit.Gauge(wall)
		x := b.request.Spray(j.Setup, set)
		return float64((x.Gun - gun) / gun)
	}, float64(b.set.Wall), float64(j.Request.Supply), within))
}
