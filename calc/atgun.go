package calc

import (
	"boothset/calc/line"
	"boothset/calc/unit"
)

// DistanceFelt is how far the cap is held where the push of the air was felt at a distance, above
// 0: as the stage is held beside it, inside what the gun's class or the product's sheet allows.
func (r *Request) DistanceFelt(felt unit.Length) Distance { return distance(&r.Coat, &r.Gun, felt) }

// PushFor is where the push is felt that has the cap held at a distance: DistanceFelt the other way, its
// bounds left out.
func (r *Request) PushFor(held unit.Length) unit.Length {
	return (held - r.Coat.Farther) / unit.Length(r.Coat.Stage.times())
}

// SupplyFor is what must be left before the wall's regulator, wide open, for the wall to flow at
// its gauge's pressure while the gun's gauge shows what it does, the inlet valve wide open.
// Without a gun's gauge that is the working pressure.
func (r *Request) SupplyFor(s *Setup, wall, shown unit.Gauge) unit.Gauge {
	a := line.NewAir(s.Weather.Ambient, r.HoseTemp())
	at := (shown - r.GunReads()).Abs(a.Ambient)
	working := at
	if r.Gauge == AtFoot {
		const within = 1e-9
		working = unit.Abs(line.FalsePosition(func(x float64) float64 {
			q, _ := r.Gun.Air(unit.Abs(x), a)
			into, _ := r.Gun.Valve.Full.Upstream(q, unit.Abs(x), a)
			return float64(into/at) - 1
		}, float64(a.Ambient), float64(at), within))
	}
	q, _ := r.Gun.Air(working, a)
	first, _ := r.Regulators()
	p, _ := line.Upstream(r.Line[:first+1], q, (wall - unit.Gauge(s.Wall.Reads)).Abs(a.Ambient), a)
	return p.Gauge(a.Ambient)
}
