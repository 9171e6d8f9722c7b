package learn

import (
	"math"

	"boothset/calc"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Reading is what the gauges showed at one time.
type Reading struct {
	// Still: the trigger is released, no air moves. Else it is pulled.
	Still bool
	Gun   int // which one: 0 is the request's
	Line  int // 0 is the request's, each above it one of Elsewhere
	// Opening is how far the inlet valve is open, above 0 to 1.
	Opening float64
	// Pieces are those that the air passes from the wall's regulator to the gun, in order; nil
	// is the line as it stands. One that is left out is bypassed, one of another number swapped.
	Pieces []int
	Shows  []Shown
}

// Shown is what one gauge showed.
type Shown struct {
	Gauge    Gauge
	Pressure unit.Gauge
	// Before: the wall's gauge before the trigger was pulled, the knob left as it is.
	Before bool
}

// quantity is a pressure of a line, downstream of the wall's regulator.
type quantity uint8

// The pressures: downstream of the wall's regulator with the air moving, and before it moved;
// before the inlet valve; downstream of it; in the cap.
const (
	atWall quantity = iota
	atWallBefore
	atFoot
	atWorking
	atCap
	quantities = iota
)

// observation is one gauge's part in a reading, Pa.
type observation struct {
	quantity quantity
	gauge    Gauge
	value    float64
}

// taken is a reading as it is worked.
type taken struct {
	Reading
	seen []observation // the wall's first
	// known is the one by which a draw's working pressure is found: the nearest to the gun that shows
	// enough, else the wall's. A line in which nearly nothing comes to the gun is far from straight
	// within what the gun's gauge is off by.
	known   observation
	misread float64 // variance of the opening
	most    float64 // that the logarithm of its likelihood comes to, on any line
}

// takes is a reading as it is worked; it shows something.
func (m *model) takes(x Reading) taken {
	t := taken{Reading: x}
	if t.Pieces == nil {
		t.Pieces = m.stands
	}
	valve := &m.guns[x.Gun].Gun.Valve
	if x.Still || valve.None {
		t.Opening = 1
	}
	if t.Opening < 1 {
		off := turnNoise / valve.Turns
		t.misread = off * off
	}
	for _, s := range x.Shows {
		o := observation{m.quantityOf(s), s.Gauge, float64(s.Pressure)}
		if s.Gauge == WallGauge && x.Line > 0 {
			o.gauge = OfGun(len(m.guns) + x.Line - 1)
		}
		t.seen = append(t.seen, o)
		if s.Gauge == WallGauge && !s.Before {
			copy(t.seen[1:], t.seen)
			t.seen[0] = o
		}
	}
	for _, o := range t.seen {
		variance := m.noise[o.gauge]
		if o.quantity == atWall {
			variance += anywhere
		}
		t.most -= math.Log(variance) / 2
	}
	t.known = t.seen[0]
	for _, q := range []quantity{atWall, atCap, atFoot, atWorking} {
		for _, o := range t.seen {
			if o.quantity == q && o.value >= enoughShown*m.instruments[o.gauge].atMost() {
				t.known = o
			}
		}
	}
	return t
}

// enoughShown is how many times what a gauge may be off by in one reading it shows at least where
// the line is worked from it: the curve of a flow through an opening, a square root, is then off by
// 1/8 of a 64th of the wall's pressure at one standard deviation.
const enoughShown = 4

// quantityOf is what a gauge shows.
func (m *model) quantityOf(s Shown) quantity {
	switch {
	case s.Before:
		return atWallBefore
	case s.Gauge == WallGauge:
		return atWall
	case s.Gauge == CapGauge:
		return atCap
	case s.Gauge == FootGauge || m.guns[s.Gauge-GunGauge].Gauge == calc.AtFoot:
		return atFoot
	}
	return atWorking
}

// curve is the pressures of one draw's line in one reading: at one pressure of the wall, how
// they move with it, and how with the valve's opening, the wall's being the same.
type curve struct {
	at, slope, byOpening [quantities]float64 // Pa, 1, Pa
}

// still is the curve of a line in which no air moves: one pressure all over.
func still(p float64) (c curve) {
	for q := range c.at {
		c.at[q], c.slope[q] = p, 1
	}
	return c
}

// solver works readings for draws, one after another.
type solver struct {
	m       *model
	pieces  [MostPieces]line.Part // of the draw
	line    [calc.MostParts]line.Part
	parts   []line.Part // of the reading, in line
	draw    *draw
	ratio   float64 // by which the draw's critical ratios are off
	held    int     // which gun is to hand, of the draw
	gun     gun.Gun
	valve   line.Restriction
	wall    line.Regulator
	ambient unit.Abs
}

// step is how much higher a line is worked once more for its slopes.
const step = unit.Abs(1 * unit.PascalPerPSI)

// solve is the curve of the draw that is put, for a reading.
func (s *solver) solve(t *taken) curve {
	if t.Still {
		return still(t.known.value)
	}
	s.arrange(t)
	x := s.working(t.known)
	here, there := s.march(x), s.march(x+step)
	var c curve
	c.at = here
	for q := range here {
		c.slope[q] = (there[q] - here[q]) / (there[atWall] - here[atWall])
	}
	if t.Opening < 1 {
		const small = 1e-3
		s.valve = s.gun.Valve.At(t.Opening + small)
		opened := s.march(x)
		for q := range here {
			c.byOpening[q] = (opened[q] - here[q] - c.slope[q]*(opened[atWall]-here[atWall])) / small
		}
	}
	return c
}

// arrange puts the pieces of a reading in line.
func (s *solver) arrange(t *taken) {
	s.parts = s.line[:len(t.Pieces)]
	for i, p := range t.Pieces {
		s.parts[i] = s.pieces[p]
	}
	s.hold(t.Gun)
	s.valve = s.gun.Valve.At(t.Opening)
}

// march is the pressures of the line at a working pressure, gauge.
func (s *solver) march(working unit.Abs) (p [quantities]float64) {
	a := s.m.air
	q, cap := s.gun.Air(working, a)
	foot, _ := s.valve.Upstream(q, working, a)
	wall, _ := line.Upstream(s.parts, q, foot, a)
	before := s.wall.Set(wall.Gauge(s.ambient), q)
	return [quantities]float64{
		atWall: float64(wall - s.ambient), atWallBefore: float64(before), atFoot: float64(foot - s.ambient),
		atWorking: float64(working - s.ambient), atCap: float64(cap - s.ambient),
	}
}

// working is the working pressure at which the line has a pressure that is known.
func (s *solver) working(known observation) unit.Abs {
	a, p := s.m.air, unit.Gauge(known.value).Abs(s.ambient)
	foot := func(x unit.Abs) unit.Abs {
		q, _ := s.gun.Air(x, a)
		p, _ := s.valve.Upstream(q, x, a)
		return p
	}
	switch known.quantity {
	case atWorking:
		return p
	case atCap:
		return s.gun.AtCap(unit.Gauge(known.value), a).Abs(s.ambient)
	case atFoot:
		return s.between(foot, p)
	}
	return s.between(func(x unit.Abs) unit.Abs {
		q, _ := s.gun.Air(x, a)
		p, _ := line.Upstream(s.parts, q, foot(x), a)
		return p
	}, p)
}

// between is the working pressure, from the air around up to p, at which another pressure
// that is never below it comes to p.
func (s *solver) between(pressure func(unit.Abs) unit.Abs, p unit.Abs) unit.Abs {
	const within = 1e-9
	return unit.Abs(line.FalsePosition(func(x float64) float64 {
		return float64(pressure(unit.Abs(x))/p) - 1
	}, float64(s.ambient), float64(p), within))
}
