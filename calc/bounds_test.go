package calc_test

import (
	"math"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
)

// The ranges of the requests in the units they are documented in, each with its ends inside
// and a millionth beyond outside.
func TestBoundsInTheUnitsOfTheTrade(t *testing.T) {
	celsius := func(v float64) float64 { return float64(unit.Celsius(v)) }
	psi := func(v float64) float64 { return float64(unit.PSIG(v)) }
	feet := func(v float64) float64 { return float64(unit.Feet(v)) }
	inches := func(v float64) float64 { return float64(unit.Inches(v)) }
	for name, c := range map[string]struct {
		b         calc.Bound
		low, high float64
	}{
		"air, -10 to 60 C":          {calc.AirTempBound, celsius(-10), celsius(60)},
		"humidity, 1 to 100 %":      {calc.HumidityBound, 0.01, 1},
		"altitude, -430 to 5000 m":  {calc.AltitudeBound, -430, 5000},
		"panels, 1 to 100":          {calc.PanelsBound, 1, 100},
		"pot life, 1 min to 7 days": {calc.PotLifeBound, 60, 7 * 24 * 3600},
		"supply, 1 to 300 psi":      {calc.SupplyBound, psi(1), psi(300)},
		"mark, 0.01 to 20 psi":      {calc.MarkBound, psi(0.01), psi(20)},
		"hose, 0.5 to 500 ft":       {calc.HoseLengthBound, feet(0.5), feet(500)},
		"hose, 3 to 40 mm":          {calc.HoseBoreBound, 3e-3, 40e-3},
		"solids, 1 to 100 %":        {calc.SolidsBound, 0.01, 1},
		"film, 2 to 2000 um":        {calc.FilmBound, 2e-6, 2000e-6},
		"coats, 1 to 20":            {calc.CoatsBound, 1, 20},
		"film before, 0 to 10 mm":   {calc.BeforeBound, 0, 10e-3},
		"transfer, 10 to 90 %":      {calc.TransferBound, 0.1, 0.9},
		"gun, 1 to 150 psi":         {calc.InletBound, psi(1), psi(150)},
		"distance, 2 to 30 in":      {calc.DistanceBound, inches(2), inches(30)},
		"fluid, 5 to 1500 mL/min":   {calc.FluidBound, 5e-6 / 60, 1500e-6 / 60},
		"sprayed, 1 mL to 5 L":      {calc.CupVolumeBound, 1e-6, 5e-3},
		"timed, 1 s to 1 h":         {calc.CupTimeBound, 1, 3600},
		"tip, 0.5 to 3 mm":          {calc.TipBound, 0.5e-3, 3e-3},
		"viscosity, 5 to 500 mm2/s": {calc.ViscosityBound, 5e-6, 500e-6},
		"fan, 10 to 600 mm":         {calc.FanBound, 10e-3, 600e-3},
		"overlap, 0 to 90 %":        {calc.OverlapBound, 0, 0.9},
		"gun speed, 0.05 to 3 m/s":  {calc.GunSpeedBound, 0.05, 3},
		"height, 1 cm to 10 m":      {calc.HeightBound, 0.01, 10},
		"comb, 1 to 2000 um":        {calc.CombBound, 1e-6, 2000e-6},
		"area, 0.001 to 1000 m2":    {calc.AreaBound, 0.001, 1000},
		"cup, 60 mL to 5 L":         {calc.CupSizeBound, 60e-6, 5e-3},
		"loss, 0 to 5 L":            {calc.LossBound, 0, 5e-3},
		"price, 0 to 100000":        {calc.PriceBound, 0, 1e5},
		"mix, 5 to 40 C":            {calc.MixTempBound, celsius(5), celsius(40)},
		"most thinner, 0 to 100 %":  {calc.MostThinnerBound, 0, 1},
	} {
		span := c.high - c.low
		assert.InDelta(t, c.low, c.b.Low, 1e-9*span, name)
		assert.InDelta(t, c.high, c.b.High, 1e-9*span, name)
		for v, in := range map[float64]bool{
			c.b.Low: true, c.b.High: true, (c.low + c.high) / 2: true,
			c.b.Low - 1e-6*span: false, c.b.High + 1e-6*span: false, math.Inf(1): false,
		} {
			assert.Equal(t, in, c.b.Holds(v), "%s: %v", name, v)
		}
		assert.False(t, c.b.Holds(math.NaN()), name)
		// The rounding of a unit is forgiven, a thousand times as much is not.
		if c.high > 0 {
			assert.True(t, c.b.Holds(c.b.High*(1+5e-13)), name)
			assert.False(t, c.b.Holds(c.b.High*(1+5e-10)), name)
		}
		f := c.b.Figures(c.high * 2)
		assert.Equal(t, []float64{c.high * 2, c.b.Low, c.b.High}, []float64{f[0].Value, f[1].Value, f[2].Value}, name)
		assert.Equal(t, []bool{false, true, false}, []bool{f[0].WithoutUnit, f[1].WithoutUnit, f[2].WithoutUnit}, "the unit is said once: %s", name)
	}
}
