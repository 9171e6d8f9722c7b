package gun

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Stamp is what a gun's body or sheet states, at sea level and 20 C with the inlet
// valve open: the highest inlet pressure, the flow there and the pressure at the
// cap there. A high-volume low-pressure gun's cap is at 10 psi by definition of
// its class.
type Stamp struct {
	Inlet unit.Gauge
	Flow  unit.Flow
	Cap   unit.Gauge
}

// Critical back-pressure ratios of the two fixed restrictions.
const (
	// passagesRatio is that of an ordinary fitting with bends, the middle of the
	// published range 0.2 to 0.4 for such parts; an estimate for a gun.
	passagesRatio = 0.3
)

// capRatio is that of an ideal nozzle: the cap's holes end in the open, with no
// tube downstream of them to win pressure back.
var capRatio = air.CriticalRatio

// Gun is a gun with its two fixed restrictions and its inlet valve.
type Gun struct {
	Passages line.Restriction
	Cap      line.Restriction
	Valve    Valve
	Stamp    Stamp
	// CapLimit is the pressure at the cap that the class may not pass, 0 for none.
	CapLimit unit.Gauge
}

// New fixes passages and cap so that the stamp is met. The stamp's three values
// must be above 0, the cap's pressure below the inlet's.
func New(s Stamp, capLimit unit.Gauge, v Valve) (Gun, error) {
	switch {
	case !(s.Inlet > 0) || !(s.Flow > 0) || !(s.Cap > 0):
		return Gun{}, &Fault{ID: "stamp-not-above-zero", Stamp: s}
	case s.Cap >= s.Inlet:
		return Gun{}, &Fault{ID: "stamp-cap-not-below", Stamp: s}
	}
	if err := v.Check(); err != nil {
		return Gun{}, err
	}
	if v.None {
		v = none
	}
	g := Gun{Valve: v, CapLimit: capLimit}
	g.Calibrate(s)
	for _, c := range []unit.Conductance{g.Passages.C, g.Cap.C} {
		if !(c > 0) || math.IsInf(float64(c), 0) {
			return Gun{}, &Fault{ID: "stamp-cap-too-near", Stamp: s}
		}
	}
	return g, nil
}

// StampAir is the air that a stamp holds in: sea level, 20 C.
var StampAir = line.NewAir(unit.SCFMPressure, unit.ANRTemperature)

// Calibrate makes passages and cap meet a stamp that New would take.
func (g *Gun) Calibrate(s Stamp) {
	inlet, cap := s.Inlet.Abs(StampAir.Ambient), s.Cap.Abs(StampAir.Ambient)
	g.Stamp = s
	g.Passages, g.Cap = line.Restriction{B: passagesRatio}, line.Restriction{B: capRatio}
	g.Passages.C, _, _ = g.Passages.Needed(s.Flow, inlet, cap, StampAir)
	g.Cap.C, _, _ = g.Cap.Needed(s.Flow, cap, StampAir.Ambient, StampAir)
}

// Upstream is the working pressure (downstream of the inlet valve) and the cap pressure at
// which the gun passes q.
func (g *Gun) Upstream(q unit.Flow, a line.Air) (working, cap unit.Abs) {
	cap, _ = g.Cap.Upstream(q, a.Ambient, a)
	working, _ = g.Passages.Upstream(q, cap, a)
	return working, cap
}

// Air is the flow and the cap pressure at a working pressure, 0 and ambient where it is
// not above ambient. Both restrictions carry the same flow, and the square of the flow
// of each is a quadratic in the cap's pressure, so there is a closed form whether
// neither, the one or the other is choked.
func (g *Gun) Air(working unit.Abs, a line.Air) (q unit.Flow, cap unit.Abs) {
	if working <= a.Ambient {
		return 0, a.Ambient
	}
	if cap = g.belowChokedCap(working); float64(a.Ambient) <= float64(cap)*g.Cap.B {
		return g.Cap.Flow(cap, a.Ambient, a), cap
	}
	choked := g.Passages.Flow(working, 0, a)
	if cap, _ = g.Cap.Upstream(choked, a.Ambient, a); float64(cap) <= float64(working)*g.Passages.B {
		return choked, cap
	}
	cap = g.between(float64(working), float64(a.Ambient))
	return g.Cap.Flow(cap, a.Ambient, a), cap
}

// belowChokedCap is the cap's pressure at a working pressure if the cap is choked: the
// two are then in proportion whatever the flow and the air.
func (g *Gun) belowChokedCap(working unit.Abs) unit.Abs {
	ratio, _ := g.Passages.Upstream(unit.Flow(g.Cap.C), 1, StampAir) // for a cap at 1 Pa
	return working / ratio
}

// between is the cap's pressure where neither restriction is choked: the root between
// ambient and working of the two flows' squares set equal.
func (g *Gun) between(working, ambient float64) unit.Abs {
	bp, bc := g.Passages.B, g.Cap.B
	cp := float64(g.Passages.C * g.Passages.C)
	cc := float64(g.Cap.C * g.Cap.C)
	kp, kc := cp/((1-bp)*(1-bp)), cc/((1-bc)*(1-bc))
	a := cc - kc*bc*bc + kp
	h := kc*bc*ambient - kp*bp*working // half the linear term
	c := -kc*ambient*ambient - (cp-kp*bp*bp)*working*working
	root := math.Sqrt(math.Max(h*h-a*c, 0))
	if h >= 0 {
		return unit.Abs(-c / (h + root))
	}
	return unit.Abs((root - h) / a)
}

// AtCap is the working pressure at which the cap is at cap.
func (g *Gun) AtCap(cap unit.Gauge, a line.Air) unit.Gauge {
	q := g.Cap.Flow(cap.Abs(a.Ambient), a.Ambient, a)
	w, _ := g.Passages.Upstream(q, cap.Abs(a.Ambient), a)
	return w.Gauge(a.Ambient)
}

// Highest is the highest working pressure the gun may be run at: its stamp, or less
// where the cap reaches its limit first (at altitude it does).
func (g *Gun) Highest(a line.Air) unit.Gauge {
	if g.CapLimit <= 0 {
		return g.Stamp.Inlet
	}
	return min(g.Stamp.Inlet, g.AtCap(g.CapLimit, a))
}
