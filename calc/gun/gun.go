package gun

import (
	"fmt"
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
// tube behind them to win pressure back.
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
		return Gun{}, fmt.Errorf("gun stamp: inlet %.3g psi, flow %.3g cfm, cap %.3g psi: each must be above 0", s.Inlet.PSI(), s.Flow.SCFM(), s.Cap.PSI())
	case s.Cap >= s.Inlet:
		return Gun{}, fmt.Errorf("gun stamp: cap %.3g psi is not below inlet %.3g psi", s.Cap.PSI(), s.Inlet.PSI())
	}
	if err := v.Check(); err != nil {
		return Gun{}, err
	}
	g := Gun{Valve: v, CapLimit: capLimit}
	g.Fix(s)
	return g, nil
}

// stampAir is the air a stamp holds in: sea level, 20 C.
var stampAir = line.NewAir(unit.SCFMPressure, unit.ANRTemperature)

// Fix makes passages and cap meet a stamp that New would take.
func (g *Gun) Fix(s Stamp) {
	inlet, cap := s.Inlet.Abs(stampAir.Ambient), s.Cap.Abs(stampAir.Ambient)
	g.Stamp = s
	g.Passages, g.Cap = line.Restriction{B: passagesRatio}, line.Restriction{B: capRatio}
	g.Passages.C, _, _ = g.Passages.Needed(s.Flow, inlet, cap, stampAir)
	g.Cap.C, _, _ = g.Cap.Needed(s.Flow, cap, stampAir.Ambient, stampAir)
}

// Upstream is the working pressure (behind the inlet valve) and the cap pressure at
// which the gun passes q.
func (g *Gun) Upstream(q unit.Flow, a line.Air) (working, cap unit.Abs) {
	cap, _ = g.Cap.Upstream(q, a.Ambient, a)
	working, _ = g.Passages.Upstream(q, cap, a)
	return working, cap
}

// Air is the flow and the cap pressure at a working pressure, both 0 and ambient
// where it is not above ambient.
func (g *Gun) Air(working unit.Abs, a line.Air) (q unit.Flow, cap unit.Abs) {
	if working <= a.Ambient {
		return 0, a.Ambient
	}
	// Where the cap is choked both pressures are in proportion to the flow.
	if q, ok := g.chokedFlow(working, a); ok {
		cap, _ := g.Cap.Upstream(q, a.Ambient, a)
		return q, cap
	}
	k := math.Sqrt(unit.ANRTemperature / float64(a.Temp))
	most := unit.Flow(min(g.Passages.C, g.Cap.C)) * unit.Flow(float64(working)*k)
	q = line.Root(func(q unit.Flow) unit.Abs { w, _ := g.Upstream(q, a); return w }, working, most)
	_, cap = g.Upstream(q, a)
	return q, cap
}

// chokedFlow is the flow where the cap is choked, so that the ratio of working to
// cap pressure is one number whatever the flow; ok is false where it is not choked.
func (g *Gun) chokedFlow(working unit.Abs, a line.Air) (unit.Flow, bool) {
	unitAir := line.NewAir(a.Ambient, unit.ANRTemperature)
	ratio, _ := g.Passages.Upstream(unit.Flow(g.Cap.C), 1, unitAir) // for a cap at 1 Pa
	cap := float64(working) / float64(ratio)
	if float64(a.Ambient) > cap*g.Cap.B {
		return 0, false
	}
	return unit.Flow(float64(g.Cap.C) * cap * math.Sqrt(unit.ANRTemperature/float64(a.Temp))), true
}

// AtCap is the working pressure at which the cap stands at cap.
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
