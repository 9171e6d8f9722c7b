package coat

import (
	"math"

	"boothset/calc/unit"
)

// GunTransfer is what a class of gun transfers (0.1 to 0.9 of the coating) when it is
// held at Distance with Pressure at its inlet.
type GunTransfer struct {
	Transfer float64
	Pressure unit.Gauge
	Distance unit.Length
}

// Transfer is an estimated transfer efficiency with how far it may be off.
type Transfer struct{ Value, Low, High float64 }

// How transfer falls with pressure and distance: no published law was found, only the
// directions (finishing guides: the lowest pressure that gives a good pattern, and no
// farther than need be), so the sizes are judgement. Doubling the pressure costs about
// a sixth and doubling the distance about a quarter of what lands. Going below or
// closer than the reference wins at most a tenth.
const (
	pressurePower  = 0.25
	distancePower  = 0.40
	mostGain       = 1.10
	leastTransfer  = 0.10
	mostTransfer   = 0.90
	transferSpread = 0.25
)

// At estimates the transfer efficiency at an inlet pressure (1 to 150 psi) and a
// distance (2 to 30 in): Transfer (p0/p)^0.25 (d0/d)^0.4 within the bounds above. It
// never rises with pressure or distance. Low and High are 25 % less and more, within
// 0.1 and 0.9. Only its changes are of use: parts' shape and the hand decide the rest.
func (g GunTransfer) At(p unit.Gauge, d unit.Length) (Transfer, error) {
	pressure := func(quantity string, p unit.Gauge) error { return within(quantity, p.PSI(), 1, 150, "psi") }
	distance := func(quantity string, d unit.Length) error { return within(quantity, d.Inches(), 2, 30, "in") }
	if err := first(
		share("class-transfer", g.Transfer, leastTransfer, mostTransfer),
		pressure("reference-pressure", g.Pressure), distance("reference-distance", g.Distance),
		pressure("pressure", p), distance("distance", d),
	); err != nil {
		return Transfer{}, err
	}
	change := math.Pow(float64(g.Pressure/p), pressurePower) * math.Pow(float64(g.Distance/d), distancePower)
	bound := func(v float64) float64 { return min(max(v, leastTransfer), mostTransfer) }
	te := g.Transfer * min(change, mostGain)
	return Transfer{bound(te), bound(te * (1 - transferSpread)), bound(te * (1 + transferSpread))}, nil
}
