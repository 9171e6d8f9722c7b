package air

import (
	"math"

	"boothset/calc/unit"
)

// bulb is what the wick of a wet bulb is covered with: its heat of evaporation at
// 0 C, kJ/kg, and how that and the heat carried off change with its temperature,
// kJ/(kg K).
type bulb struct {
	latent, wick, vapour float64
}

var (
	wetWick = bulb{2501, 2.326, 4.186}
	icyWick = bulb{2830, 0.24, 2.1}
)

// WetBulb is the temperature of a wetted thermometer in moving air of t, rh and
// p: the coldest that water evaporating into that air can get. ASHRAE equations
// 33 (water) and 35 (ice), solved for it. In air some degrees above freezing and
// dry, a wet wick and an iced one can both be in balance, on either side of 0 C;
// the wet one is returned.
func WetBulb(t unit.Temp, rh float64, p unit.Abs) unit.Temp {
	t, p = holdTemp(t), max(p, lowestPressure)
	pv := holdVapour(VapourPressure(t, rh), p)
	ratio := VapourRatio(pv, p)
	low, high := min(VapourDewPoint(pv), t), t
	wick := icyWick
	if atFreezing, _ := wetWick.excess(freezing, t, ratio, p); t > freezing && atFreezing <= 0 {
		wick, low = wetWick, max(low, freezing)
	} else {
		high = min(high, freezing)
	}
	at := high - (high-low)/3 // close, by a forecaster's rule of thumb
	for range mostSteps {
		excess, slope := wick.excess(at, t, ratio, p)
		if excess > 0 {
			high = at
		} else {
			low = at
		}
		next := at - unit.Temp(excess/slope)
		if !(low <= next && next <= high) {
			next = (low + high) / 2
		}
		if math.Abs(float64(next-at)) < solved {
			return next
		}
		at = next
	}
	return at
}

// excess is by how much a bulb at the temperature at saturates its air beyond the
// humidity ratio that balances it, and its slope with that temperature. It is the
// handbook's equation times (p - pws), which keeps it finite where pws reaches p.
func (b bulb) excess(at, t unit.Temp, ratio float64, p unit.Abs) (value, slope float64) {
	const heatOfAir, heatOfVapour = 1.006, 1.86 // kJ/(kg K)
	ln, lnSlope := lnSaturation(at)
	pws := math.Exp(ln)
	pwsSlope := pws * lnSlope
	dry := float64(p) - pws
	gain := vapourRatio * (b.latent - b.wick*at.C())
	loss := heatOfAir*float64(t-at) + ratio*(b.latent+heatOfVapour*t.C()-b.vapour*at.C())
	value = gain*pws - dry*loss
	slope = gain*pwsSlope - vapourRatio*b.wick*pws + pwsSlope*loss + dry*(heatOfAir+ratio*b.vapour)
	return value, slope
}
