package line

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// Roughness of the walls the air meets.
const (
	SmoothRubber = unit.Length(1.5e-6) // rubber or PVC hose, as drawn tube
	SteelPipe    = unit.Length(45e-6)  // commercial steel
)

// Hose is a round tube of constant bore with a fitting at either end.
type Hose struct {
	Length    unit.Length
	Bore      unit.Length
	Roughness unit.Length
	// End is the fitting at each end, narrower than the tube; a C of 0 means none.
	End Restriction
}

// FrictionFactor is the Darcy friction factor for Reynolds number re (above 0) and
// relative roughness rel, laminar to turbulent in one formula. Source: Churchill
// 1977, Chemical Engineering.
func FrictionFactor(re, rel float64) float64 {
	x := math.Exp(0.9*math.Log(7/re)) + 0.27*rel // as math.Pow, in half its time
	a := -2.457 * math.Log(x)
	a16 := pow16(a)
	b16 := pow16(37530 / re)
	c := 8 / re
	c3 := c * c * c
	c12 := c3 * c3 * c3 * c3
	s := a16 + b16
	return 8 * math.Sqrt(math.Sqrt(math.Cbrt(c12+1/(s*math.Sqrt(s)))))
}

func pow16(x float64) float64 {
	x *= x
	x *= x
	x *= x
	return x * x
}

// tiny is the relative error at which the hose's equations count as solved.
const tiny = 1e-11

// tube is a hose at one flow: everything of the isothermal equation that the
// pressures do not change.
type tube struct {
	g2rt float64 // G^2 R T, Pa^2
	fld  float64 // f L/D
}

func (h Hose) at(q unit.Flow, a Air) tube {
	d := float64(h.Bore)
	g := float64(q.Mass()) / (math.Pi / 4 * d * d)
	re := g * d / a.mu
	return tube{
		g2rt: g * g * a.rt,
		fld:  FrictionFactor(re, float64(h.Roughness)/d) * float64(h.Length) / d,
	}
}

// Upstream is the pressure needed at the inlet of the hose to pass q into p2 at its
// outlet: isothermal flow of an ideal gas,
//
//	p1^2 - p2^2 = G^2 R T (f L/D + 2 ln(p1/p2)),   G = mdot/A, f Darcy.
//
// A tube cannot deliver air faster than the isothermal limit, Mach 1/sqrt(gamma) at
// its outlet: where p2 is below that, the outlet is at the limit and choked is
// true. It exists for every q >= 0.
func (h Hose) Upstream(q unit.Flow, p2 unit.Abs, a Air) (p1 unit.Abs, choked bool) {
	if q <= 0 {
		return p2, false
	}
	var c1, c2 bool
	if h.End.C > 0 {
		p2, c1 = h.End.Upstream(q, p2, a)
	}
	p1, choked = h.at(q, a).upstream(p2)
	if h.End.C > 0 {
		p1, c2 = h.End.Upstream(q, p1, a)
	}
	return p1, choked || c1 || c2
}

// upstream solves the isothermal equation for the inlet. With w = (p1/p2)^2 and
// g = G^2RT/p2^2 <= 1 it is w = 1 + g (fL/D + ln w).
func (t tube) upstream(p2 unit.Abs) (p1 unit.Abs, choked bool) {
	p := float64(p2)
	if p*p < t.g2rt {
		p, choked = math.Sqrt(t.g2rt), true
	}
	g := t.g2rt / (p * p)
	w := 1 + g*t.fld
	for range 50 {
		step, solved := halley(w-1-g*(t.fld+math.Log(w)), g, w)
		w -= step
		if solved {
			break
		}
	}
	return unit.Abs(p * math.Sqrt(w)), choked
}

// halley is the step of Halley's method for an equation whose residual is f at x, whose
// slope there is 1 - g/x and whose curvature g/x^2, as both of a tube's are. The next
// error is of the order of g step^3/(3 x^3): solved is whether that no longer shows.
func halley(f, g, x float64) (step float64, solved bool) {
	slope := 1 - g/x
	step = f / slope
	step /= 1 - step*g/(2*x*x*slope)
	return step, g*math.Abs(step*step*step) <= tiny*x*x*x*x*slope
}

// Downstream is the pressure at the outlet of the hose when q enters at p1. ok is
// false where the hose chokes: it cannot pass q from that pressure.
func (h Hose) Downstream(q unit.Flow, p1 unit.Abs, a Air) (p2 unit.Abs, ok bool) {
	if q <= 0 {
		return p1, true
	}
	end := h.End.C > 0
	if end {
		if p1, ok = h.End.Downstream(q, p1, a); !ok {
			return 0, false
		}
	}
	if p2, ok = h.at(q, a).downstream(p1); ok && end {
		return h.End.Downstream(q, p2, a)
	}
	return p2, ok
}

// downstream solves the isothermal equation for the outlet.
func (t tube) downstream(p1 unit.Abs) (p2 unit.Abs, ok bool) {
	p := float64(p1)
	g := t.g2rt / (p * p)
	// With z = (p2/p1)^2: z = 1 - g (fL/D - ln z), the root above z = g. The tube
	// chokes where friction leaves no such root: fL/D > 1/g - 1 + ln g.
	if g >= 1 || t.fld > 1/g-1+math.Log(g) {
		return 0, false
	}
	z := 1.0
	for range 60 {
		step, solved := halley(z-1+g*(t.fld-math.Log(z)), g, z)
		z -= step
		if z <= g {
			z = g
			break
		}
		if solved {
			break
		}
	}
	return unit.Abs(p * math.Sqrt(z)), true
}

// OutletMach is the Mach number of q at the outlet of the hose's tube where the
// pressure just inside its outlet is p2.
func (h Hose) OutletMach(q unit.Flow, p2 unit.Abs, a Air) float64 {
	d := float64(h.Bore)
	g := float64(q.Mass()) / (math.Pi / 4 * d * d)
	return math.Min(g*math.Sqrt(a.rt/air.Gamma)/float64(p2), 1/math.Sqrt(air.Gamma))
}
