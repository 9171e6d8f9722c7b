package line_test

import (
	"math"
	"testing"

	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func smooth(feet, inches float64) line.Hose {
	return line.Hose{Length: unit.Feet(feet), Bore: unit.Inches(inches), Roughness: line.SmoothRubber}
}

// Over 500 points of a fluids library's isothermal gas flow (testdata/make_vectors.py),
// near choking and beyond it among them.
func TestIsothermalAgainstFluidsLibrary(t *testing.T) {
	rows := table(t, "testdata/isothermal.csv")
	require.Greater(t, len(rows), 500)
	choked := 0
	for _, row := range rows {
		h := smooth(row["length_ft"], row["bore_in"])
		a := line.NewAir(unit.SCFMPressure, unit.Celsius(row["celsius"]))
		q := unit.SCFM(row["scfm"])
		p1 := unit.PSIG(row["psig"]).Abs(unit.SCFMPressure)
		p2, ok := h.Downstream(q, p1, a)
		if math.IsNaN(row["p2_pa"]) {
			choked++
			assert.False(t, ok, "the library says choked: %v", row)
			continue
		}
		if !assert.True(t, ok, "%v", row) {
			continue
		}
		// 1e-5 is what the library's own root finder leaves; near choking a hair of flow
		// moves the outlet a long way.
		limit := 1e-5
		if row["share_of_choked"] > 0.99 {
			limit = 1e-4
		}
		assert.InEpsilon(t, row["p2_pa"], float64(p2), limit, "%v", row)
		back, c := h.Upstream(q, p2, a)
		assert.InEpsilon(t, float64(p1), float64(back), 1e-9, "%v", row)
		assert.False(t, c, "%v", row)
	}
	assert.Greater(t, choked, 50)
}

func TestChurchillAgainstFluidsLibrary(t *testing.T) {
	rows := table(t, "testdata/churchill.csv")
	require.Len(t, rows, 50)
	for _, row := range rows {
		assert.InEpsilon(t, row["friction"], line.FrictionFactor(row["re"], row["relative"]), 1e-11)
	}
	// The library's own documented value.
	assert.InEpsilon(t, 0.018462624566280075, line.FrictionFactor(1e5, 1e-4), 1e-12)
}

// Handbook table B-14, compressed air in schedule 40 pipe at 100 psig and 60 F, psi a
// 100 ft, rows whose loss is small beside the pressure, since the table is incompressible.
// The handbook's own values scatter 2 % about Darcy with the inlet density; isothermal flow
// lies within 4 %.
func TestCompressedAirPipeTable(t *testing.T) {
	for _, c := range []struct{ bore, scfm, psi float64 }{
		{0.364, 10, 5.96}, {0.493, 10, 1.26}, {0.493, 15, 2.73}, {0.493, 20, 4.76},
		{0.622, 15, 0.834}, {0.622, 25, 2.21}, {0.824, 25, 0.526},
	} {
		h := line.Hose{Length: unit.Feet(100), Bore: unit.Inches(c.bore), Roughness: line.SteelPipe}
		a := line.NewAir(unit.SCFMPressure, unit.Fahrenheit(60))
		// The table's cubic foot is at 60 F, 1.5 % heavier than ours.
		q := unit.SCFM(c.scfm * 527.67 / 519.67)
		p1 := unit.PSIG(100).Abs(unit.SCFMPressure)
		p2, ok := h.Downstream(q, p1, a)
		require.True(t, ok)
		assert.InEpsilon(t, c.psi, (p1 - p2).PSI(), 0.04, "%g in, %g scfm", c.bore, c.scfm)
	}
}

// A formula for the loss in compressed-air lines and hose, dp = 1.6e12 q^1.85 L/(d^5 p1)
// in kPa, m3/s, m, mm; published, rough: it lies above smooth tube, by a fifth to four
// fifths on these hoses, as handbooks do that count worn and rough ones.
func TestHandbookHoseFormula(t *testing.T) {
	for _, c := range []struct{ feet, bore, scfm, psig float64 }{
		{25, 0.375, 15, 35}, {50, 0.375, 10, 35}, {25, 0.375, 10, 35}, {25, 0.5, 15, 30}, {50, 0.5, 25, 60},
	} {
		p1 := unit.PSIG(c.psig).Abs(unit.SCFMPressure)
		p2, ok := smooth(c.feet, c.bore).Downstream(unit.SCFM(c.scfm), p1, still)
		require.True(t, ok)
		q := c.scfm * 0.028316846592 / 60
		formula := 1.6e12 * math.Pow(q, 1.85) * c.feet * 0.3048 / (math.Pow(c.bore*25.4, 5) * float64(p1) / 1e3) * 1e3
		ratio := formula / float64(p1-p2)
		assert.Greater(t, ratio, 1.2, "%v", c)
		assert.Less(t, ratio, 1.8, "%v", c)
	}
}

// With next to no drop the isothermal law is Darcy and Weisbach's; with next to no
// friction it is the kinetic term alone.
func TestHoseLimits(t *testing.T) {
	h := smooth(25, 0.5)
	q := unit.SCFM(3)
	p1 := unit.PSIG(90).Abs(unit.SCFMPressure)
	p2, ok := h.Downstream(q, p1, still)
	require.True(t, ok)
	area := math.Pi / 4 * math.Pow(float64(h.Bore), 2)
	rho := air.Density(p1, still.Temp)
	v := float64(q.Mass()) / rho / area
	f := line.FrictionFactor(rho*v*float64(h.Bore)/air.Viscosity(still.Temp), float64(h.Roughness)/float64(h.Bore))
	darcy := f * float64(h.Length) / float64(h.Bore) * rho * v * v / 2
	assert.InEpsilon(t, darcy, float64(p1-p2), 1e-3)

	h.Length = 1e-7
	p2, ok = h.Downstream(unit.SCFM(40), p1, still)
	require.True(t, ok)
	assert.InEpsilon(t, float64(p1), float64(p2), 1e-4)
}

// 25 ft of 1/4 in from 30 psig passes 10.8 scfm (14.696 psia, 60 F) at most, by the
// fluids library; asked for more it is choked, by name, and so is a flow whose speed at
// the outlet no pressure behind it can raise.
func TestQuarterInchHoseChokes(t *testing.T) {
	h := smooth(25, 0.25)
	p1 := unit.PSIG(30).Abs(unit.SCFMPressure)
	at60F := func(scfm float64) unit.Flow {
		density := float64(unit.SCFMPressure) / (air.GasConstant * float64(unit.Fahrenheit(60)))
		return unit.MassFlow(scfm * unit.CubicFoot / 60 * density).Flow()
	}
	_, ok := h.Downstream(at60F(10.7), p1, still)
	assert.True(t, ok)
	_, ok = h.Downstream(at60F(11.1), p1, still)
	assert.False(t, ok)
	needed, choked := h.Upstream(at60F(15), unit.SCFMPressure, still)
	assert.False(t, choked)
	assert.Greater(t, needed.Gauge(unit.SCFMPressure).PSI(), 30.0)
	_, choked = h.Upstream(at60F(25), unit.SCFMPressure, still)
	assert.True(t, choked)
}

func hoses() *rapid.Generator[line.Hose] {
	return rapid.Custom(func(t *rapid.T) line.Hose {
		h := smooth(rapid.Float64Range(0.5, 500).Draw(t, "feet"), rapid.Float64Range(0.12, 1.5).Draw(t, "in"))
		if rapid.Bool().Draw(t, "ends") {
			h.End = line.Restriction{C: line.OfBore(h.Bore*0.9, line.FullBore), B: 0.5}
		}
		return h
	})
}

func TestHoseBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := hoses().Draw(t, "hose")
		p2 := bar(rapid.Float64Range(0.6, 12).Draw(t, "p2"))
		q := unit.SCFM(rapid.Float64Range(0.01, 60).Draw(t, "scfm"))
		p1, choked := h.Upstream(q, p2, still)
		require.False(t, math.IsNaN(float64(p1)) || math.IsInf(float64(p1), 0))
		require.GreaterOrEqual(t, float64(p1), float64(p2))
		if choked {
			return
		}
		back, ok := h.Downstream(q, p1, still)
		if !ok {
			// Within rounding of choking.
			_, c := h.Upstream(q*1.0001, p2, still)
			require.True(t, c)
			return
		}
		assert.InEpsilon(t, float64(p2), float64(back), 1e-6)
	})
}

func TestLongerOrThinnerHoseNeedsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := hoses().Draw(t, "hose")
		p2 := bar(rapid.Float64Range(0.6, 12).Draw(t, "p2"))
		q := unit.SCFM(rapid.Float64Range(0.01, 60).Draw(t, "scfm"))
		k := rapid.Float64Range(1, 3).Draw(t, "factor")
		p, _ := h.Upstream(q, p2, still)
		longer, thinner := h, h
		longer.Length *= unit.Length(k)
		thinner.Bore /= unit.Length(k)
		thinner.End.C /= unit.Conductance(k * k)
		more, _ := longer.Upstream(q, p2, still)
		assert.GreaterOrEqual(t, float64(more), float64(p)*(1-1e-12))
		more, _ = thinner.Upstream(q, p2, still)
		assert.GreaterOrEqual(t, float64(more), float64(p)*(1-1e-12))
	})
}

// A line fixed at a flow marches as its parts do one by one.
func TestFlowingIsTheSameMarch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := []line.Part{
			{Kind: line.CouplingKind, Restriction: restrictions().Draw(t, "wall")},
			{Kind: line.HoseKind, Hose: hoses().Draw(t, "hose")},
			{Kind: line.CouplingKind, Restriction: restrictions().Draw(t, "gun")},
		}
		p2 := bar(rapid.Float64Range(0.6, 12).Draw(t, "p2"))
		q := unit.SCFM(rapid.Float64Range(0.01, 60).Draw(t, "scfm"))
		p1, _ := line.Upstream(parts, q, p2, still)
		var f line.Flowing
		f.Prepare(parts, q, still)
		assert.Equal(t, p1, f.Upstream(p2))
		p1 *= unit.Abs(rapid.Float64Range(0.2, 3).Draw(t, "from"))
		want, _, ok := line.Downstream(parts, q, p1, still)
		got, passes := f.Downstream(p1)
		assert.Equal(t, ok, passes)
		assert.Equal(t, want, got)
		f.Prepare(parts, 0, still)
		assert.Equal(t, p2, f.Upstream(p2))
	})
}
