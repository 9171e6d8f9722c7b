package coat_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Seconds that the standards give each cup. ASTM D1200, 11.2 (seen as an excerpt): 20 to
// 100 s for Ford 3, 4 and 5, 55 to 100 for 1, 40 to 100 for 2. ISO 2431: 30 to 100 s. DIN
// 53211: 25 to 150 s. ASTM D4212: 20 to 80 s for Zahn 2 to 5 and 35 to 80 for 1. Orifices,
// mm, are the cup's own name in ISO and DIN, the rest from memory, not verified.
func TestEveryCupsSecondsAndOrifice(t *testing.T) {
	table := map[string][3]float64{
		"iso3": {30, 100, 3}, "iso4": {30, 100, 4}, "iso5": {30, 100, 5}, "iso6": {30, 100, 6}, "din4": {25, 150, 4},
		"ford1": {55, 100, 1.9}, "ford2": {40, 100, 2.53}, "ford3": {20, 100, 3.4}, "ford4": {20, 100, 4.12}, "ford5": {20, 100, 5.2},
		"zahn1": {35, 80, 2.0}, "zahn2": {20, 80, 2.7}, "zahn3": {20, 80, 3.8}, "zahn4": {20, 80, 4.3}, "zahn5": {20, 80, 5.3},
	}
	all := coat.Cups()
	require.Len(t, all, len(table))
	for _, c := range all {
		want := table[c.ID]
		assert.Equal(t, want[0], c.Low, c.ID)
		assert.Equal(t, want[1], c.High, c.ID)
		assert.InEpsilon(t, want[2], c.Orifice.MM(), 1e-9, c.ID)
		for _, s := range []float64{c.Low, c.High} {
			v, err := c.Viscosity(s)
			require.NoError(t, err)
			assert.False(t, v.About, "%s at %v s is published", c.ID, s)
			e, err := c.Seconds(v.Nu)
			require.NoError(t, err)
			assert.InEpsilon(t, s, e.Seconds, 1e-9)
			assert.False(t, e.About, "%s at %v s is published", c.ID, s)
		}
		for _, s := range []float64{c.Low - 1e-3, c.High + 1e-3} {
			v, err := c.Viscosity(s)
			require.NoError(t, err)
			assert.True(t, v.About, "%s at %v s", c.ID, s)
			e, err := c.Seconds(v.Nu)
			require.NoError(t, err)
			assert.True(t, e.About)
			low, err := c.Viscosity(e.Low)
			if err == nil {
				assert.InEpsilon(t, 0.7, float64(low.Nu/v.Nu), 1e-9, "30 % less, back through the cup")
			}
			high, err := c.Viscosity(e.High)
			if err == nil {
				assert.InEpsilon(t, 1.3, float64(high.Nu/v.Nu), 1e-9, "30 % more")
			}
		}
	}
}

// The standards' equations by hand, one reading each, mm2/s: ISO 2431 and DIN 53211 as
// A t - B/t, ASTM D1200 and D4212 as A (t - offset).
func TestEveryCupsEquationByHand(t *testing.T) {
	for id, c := range map[string][2]float64{
		"iso3": {50, 0.443*50 - 200.0/50}, "iso4": {50, 1.37*50 - 200.0/50}, "iso5": {50, 3.28*50 - 220.0/50}, "iso6": {50, 6.90*50 - 570.0/50},
		"din4": {50, 4.57*50 - 452.0/50}, "ford1": {60, 0.49 * 25}, "ford2": {50, 1.44 * 32}, "ford3": {50, 2.31 * 43.42},
		"ford4": {50, 3.85 * 45.51}, "ford5": {50, 12.1 * 48}, "zahn1": {50, 1.1 * 21}, "zahn2": {50, 3.5 * 36},
		"zahn3": {50, 11.7 * 42.5}, "zahn4": {50, 14.8 * 45}, "zahn5": {50, 23 * 50},
	} {
		v, err := cup(t, id).Viscosity(c[0])
		require.NoError(t, err)
		assert.InEpsilon(t, c[1], v.Nu.MM2PerS(), 1e-12, id)
	}
}

// A cup tells something down to a quarter of the viscosity at its shortest published time
// and up to twice its longest: by hand for Ford 4, 3.85 (20 - 4.49)/4 = 14.928 mm2/s is
// 8.3675 s, and 200 s.
func TestWhereACupTellsTooLittle(t *testing.T) {
	ford := cup(t, "ford4")
	for s, ok := range map[float64]bool{8.367: false, 8.368: true, 199.99: true, 200.01: false} {
		_, err := ford.Viscosity(s)
		assert.Equal(t, ok, err == nil, "%v s", s)
	}
	for nu, ok := range map[float64]bool{14.9: false, 14.95: true, 752: true, 753: false} {
		_, err := ford.Seconds(unit.MM2PerS(nu)) // 3.85 x 195.51 = 752.7
		assert.Equal(t, ok, err == nil, "%v mm2/s", nu)
	}
}

// Panel areas in square feet, the program's own usual sizes: common practice, no published
// source.
func TestPanelAreas(t *testing.T) {
	want := map[string][2]float64{
		"hood": {15, 20}, "door": {10, 13}, "fender": {6, 10}, "bumper": {8, 12}, "roof": {18, 22}, "whole": {90, 110}, "whole-suv": {120, 160},
	}
	panels := coat.Panels()
	require.Len(t, panels, len(want))
	for _, p := range panels {
		assert.InEpsilon(t, want[p.ID][0], float64(p.Low)/squareFoot, 1e-9, p.ID)
		assert.InEpsilon(t, want[p.ID][1], float64(p.High)/squareFoot, 1e-9, p.ID)
	}
}

// The rates that no source here gives, from memory, not verified, as their basis says.
func TestRatesFromMemory(t *testing.T) {
	for id, rate := range map[string]float64{"ethyl-acetate": 4.1, "toluene": 1.9, "butanol": 0.44} {
		s := solvent(t, id)
		assert.Equal(t, rate, s.Rate, id)
		assert.Equal(t, "source-memory", s.RateBasis, id)
	}
	assert.Zero(t, solvent(t, "ethylbenzene").Rate)
}

// Two epoxy primer sheets: 24 h at 20 C are 8 h at 30 C on the one, a third; 2 days at 10 C
// are twice on the other, of which 1.7 times is taken to be safe.
func TestSafePotLifeByHand(t *testing.T) {
	for c, hours := range map[float64]float64{30: 8, 40: 24.0 / 9, 20: 24, 10: 40.8} {
		p, err := coat.PotLifeAt(24*time.Hour, unit.Celsius(20), unit.Celsius(c))
		require.NoError(t, err)
		assert.InDelta(t, hours, p.Safe.Hours(), 1.0/3600, "%v C", c)
	}
	// The rule reckons from the sheet's own temperature: 2 h at 25 C are 1 h at 35 C.
	p, err := coat.PotLifeAt(2*time.Hour, unit.Celsius(25), unit.Celsius(35))
	require.NoError(t, err)
	assert.Equal(t, time.Hour, p.Life)
}

// Typing is looked at up to 64 characters for a cup and 80 for a ratio, of at most six parts.
func TestHowMuchTypingIsRead(t *testing.T) {
	c, err := coat.FindCup("din4" + strings.Repeat(" ", 60))
	require.NoError(t, err)
	assert.Equal(t, "din4", c.ID)
	_, err = coat.FindCup("din4" + strings.Repeat(" ", 61))
	var unknown *coat.UnknownCup
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "din4"+strings.Repeat(" ", 60)+"...", unknown.Given)

	r, err := coat.ParseRatio("4:1" + strings.Repeat(" ", 77))
	require.NoError(t, err)
	assert.Equal(t, []float64{4, 1}, r.Parts)
	_, err = coat.ParseRatio("4:1" + strings.Repeat(" ", 78))
	var bad *coat.RatioError
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, "4:1"+strings.Repeat(" ", 77)+"...", bad.Given)

	for text, parts := range map[string]int{
		"1:1:1:1:1:1": 6, "1:1:1:1:1:1:1": 0, "1:1:1:1:1+10%": 6, "1:1:1:1:1:1+10%": 0, "10000:1": 2, "10001:1": 0, "1:10001": 0,
		"0.001:1": 2, "0.0009:1": 0, "1": 0, "1+200%": 2, "1+200.1%": 0, "2:1+10%": 3, "1,5:1": 2, "1,,5:1": 0, "1.5,5:1": 0, "100+10000%": 0,
	} {
		r, err := coat.ParseRatio(text)
		assert.Equal(t, parts > 0, err == nil, text)
		assert.Len(t, r.Parts, parts, text)
	}
}

// What is at a limit is inside it: 12 mil in all is the most, from above 10 it is near.
func TestFilmsAtTheirLimits(t *testing.T) {
	limits := coat.Limits{Low: mils(2), High: mils(2.5)}
	for _, c := range []struct {
		coat, before float64
		state        coat.FilmState
		near, over   bool
	}{
		{2, 0, coat.Inside, false, false}, {1.9999, 0, coat.Under, false, false},
		{2.5, 0, coat.Inside, false, false}, {2.5001, 0, coat.Over, false, false},
		{2, 8, coat.Inside, false, false}, {2, 8.0001, coat.Inside, true, false},
		{2, 10, coat.Inside, true, false}, {2, 10.0001, coat.Inside, false, true},
	} {
		r, err := coat.RunningTotal([]unit.Length{mils(c.coat)}, mils(c.before), limits)
		require.NoError(t, err)
		assert.Equal(t, []any{c.state, c.near, c.over}, []any{r.State, r.Near, r.WholeOver}, "%v", c)
		assert.InEpsilon(t, c.coat+c.before, float64(r.Whole/coat.Mil), 1e-9)
		assert.InDelta(t, 2.5-c.coat, float64(r.Room/coat.Mil), 1e-9)
	}
}

// Water's own 1.004 mm2/s at 20 C, by steam tables; a mix as thin as is wanted needs
// nothing, and none added changes nothing.
func TestThinningAtItsLimits(t *testing.T) {
	assert.InEpsilon(t, 1.004, coat.WaterViscosity.MM2PerS(), 1e-12)
	assert.InEpsilon(t, 0.83, coat.SolventViscosity.MM2PerS(), 1e-12)
	for _, nu := range []float64{40, 57} {
		add, err := coat.ThinnerFor(unit.MM2PerS(nu), unit.MM2PerS(57), coat.SolventViscosity)
		require.NoError(t, err)
		assert.Zero(t, add)
		left, err := coat.Thinned(unit.MM2PerS(nu), coat.SolventViscosity, 0)
		require.NoError(t, err)
		assert.Equal(t, unit.MM2PerS(nu), left)
	}
}
