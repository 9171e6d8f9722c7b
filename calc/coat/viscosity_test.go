package coat_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

func cup(t require.TestingT, id string) coat.Cup {
	c, err := coat.FindCup(id)
	require.NoError(t, err)
	return c
}

// What the equations give, worked apart from this package. A negative entry marks
// seconds outside the published range; "no" marks those that make no sense.
func TestSecondsToViscosityAsTheStandardsEquationsGiveIt(t *testing.T) {
	ids := []string{"iso3", "iso4", "iso5", "iso6", "din4", "ford2", "ford3", "ford4", "zahn2", "zahn3"}
	type entry struct {
		nu  float64
		how byte // ' ' published, '~' about, 'x' refused
	}
	table := map[float64][]entry{
		20:  {{-1.1, 'x'}, {17.4, '~'}, {54.6, '~'}, {109.5, '~'}, {68.8, '~'}, {2.9, 'x'}, {31.0, ' '}, {59.7, ' '}, {21.0, ' '}, {146.2, ' '}},
		25:  {{3.1, '~'}, {26.2, '~'}, {73.2, '~'}, {149.7, '~'}, {96.2, ' '}, {10.1, '~'}, {42.6, ' '}, {79.0, ' '}, {38.5, ' '}, {204.8, ' '}},
		30:  {{6.6, ' '}, {34.4, ' '}, {91.1, ' '}, {188.0, ' '}, {122.0, ' '}, {17.3, '~'}, {54.1, ' '}, {98.2, ' '}, {56.0, ' '}, {263.2, ' '}},
		35:  {{9.8, ' '}, {42.2, ' '}, {108.5, ' '}, {225.2, ' '}, {147.0, ' '}, {24.5, '~'}, {65.7, ' '}, {117.5, ' '}, {73.5, ' '}, {321.8, ' '}},
		40:  {{12.7, ' '}, {49.8, ' '}, {125.7, ' '}, {261.8, ' '}, {171.5, ' '}, {31.7, ' '}, {77.2, ' '}, {136.7, ' '}, {91.0, ' '}, {380.2, ' '}},
		50:  {{18.1, ' '}, {64.5, ' '}, {159.6, ' '}, {333.6, ' '}, {219.5, ' '}, {46.1, ' '}, {100.3, ' '}, {175.2, ' '}, {126.0, ' '}, {497.2, ' '}},
		60:  {{23.2, ' '}, {78.9, ' '}, {193.1, ' '}, {404.5, ' '}, {266.7, ' '}, {60.5, ' '}, {123.4, ' '}, {213.7, ' '}, {161.0, ' '}, {614.2, ' '}},
		80:  {{32.9, ' '}, {107.1, ' '}, {259.6, ' '}, {544.9, ' '}, {360.0, ' '}, {89.3, ' '}, {169.6, ' '}, {290.7, ' '}, {231.0, ' '}, {848.2, ' '}},
		100: {{42.3, ' '}, {135.0, ' '}, {325.8, ' '}, {684.3, ' '}, {452.5, ' '}, {118.1, ' '}, {215.8, ' '}, {367.7, ' '}, {301.0, '~'}, {1082, '~'}},
	}
	for seconds, row := range table {
		for i, want := range row {
			v, err := cup(t, ids[i]).Viscosity(seconds)
			if want.how == 'x' {
				var out *coat.CupRange
				require.ErrorAs(t, err, &out, "%s %v s", ids[i], seconds)
				assert.InDelta(t, want.nu, out.Nu.MM2PerS(), 0.06)
				continue
			}
			require.NoError(t, err, "%s %v s", ids[i], seconds)
			assert.InDelta(t, want.nu, v.Nu.MM2PerS(), math.Max(0.051, want.nu*3e-4), "%s %v s", ids[i], seconds)
			assert.Equal(t, want.how == '~', v.About, "%s %v s", ids[i], seconds)
			if v.About {
				assert.InEpsilon(t, 0.7, float64(v.Low/v.Nu), 1e-12)
				assert.InEpsilon(t, 1.3, float64(v.High/v.Nu), 1e-12)
			} else {
				assert.Equal(t, [2]unit.Kinematic{v.Nu, v.Nu}, [2]unit.Kinematic{v.Low, v.High})
			}
		}
	}
}

// Calibration oils: a viscosity laboratory's published drain seconds, whole seconds,
// so a second of slack; the one for Ford 5 at 850 mm2/s is 70 where the published
// equation gives 72.2.
func TestPublishedOilDrainTimes(t *testing.T) {
	for _, c := range []struct {
		nu        float64
		cup       string
		published float64
		slack     float64
	}{
		{34, "zahn1", 60, 0.6}, {34, "ford2", 42, 0.6},
		{66, "zahn2", 33, 0.6}, {66, "ford2", 64, 0.6}, {66, "ford3", 35, 0.6},
		{120, "zahn2", 48, 0.6}, {120, "ford3", 58, 0.6}, {120, "ford4", 36, 0.6},
		{230, "zahn3", 27, 0.6}, {230, "zahn4", 21, 0.6}, {230, "ford4", 64, 0.6},
		{460, "zahn3", 47, 0.6}, {460, "zahn4", 36, 0.6}, {460, "ford5", 40, 0.6},
		{850, "zahn4", 62, 0.6}, {850, "zahn5", 37, 0.6}, {850, "ford5", 70, 2.3},
	} {
		e, err := cup(t, c.cup).Seconds(unit.MM2PerS(c.nu))
		require.NoError(t, err)
		assert.InDelta(t, c.published, e.Seconds, c.slack, "%v mm2/s in %s", c.nu, c.cup)
		assert.False(t, e.About)
	}
	// The offset 3.7 that some code has for Ford 3 would give 32.3 s for 66 mm2/s.
	e, err := cup(t, "ford3").Seconds(unit.MM2PerS(66))
	require.NoError(t, err)
	assert.InDelta(t, 35.2, e.Seconds, 0.06)
	five, err := cup(t, "ford5").Seconds(unit.MM2PerS(850))
	require.NoError(t, err)
	assert.InDelta(t, 72.2, five.Seconds, 0.06)
}

// Refinish working range, worked apart from this package; DIN below 25 s is "about".
func TestRefinishRangeFromDINToTheOtherCups(t *testing.T) {
	for _, c := range []struct{ din, nu, iso4, ford4, ford3, zahn2 float64 }{
		{14, 31.7, 28.3, 12.7, 20.3, 23.1},
		{16, 44.9, 36.7, 16.1, 26.0, 26.8},
		{18, 57.1, 45.0, 19.3, 31.3, 30.3},
		{20, 68.8, 53.0, 22.4, 36.4, 33.7},
		{22, 80.0, 60.8, 25.3, 41.2, 36.9},
		{25, 96.2, 72.2, 29.5, 48.2, 41.5},
		{30, 122.0, 90.7, 36.2, 59.4, 48.9},
	} {
		v, err := cup(t, "din4").Viscosity(c.din)
		require.NoError(t, err)
		assert.InDelta(t, c.nu, v.Nu.MM2PerS(), 0.06)
		assert.Equal(t, c.din < 25, v.About, "%v s", c.din)
		for id, want := range map[string]float64{"iso4": c.iso4, "ford4": c.ford4, "ford3": c.ford3, "zahn2": c.zahn2} {
			e, err := cup(t, id).Seconds(v.Nu)
			require.NoError(t, err)
			assert.InDelta(t, want, e.Seconds, 0.06, "%s for %v s DIN", id, c.din)
			assert.Equal(t, want < cup(t, id).Low, e.About, "%s for %v s DIN", id, c.din)
		}
	}
}

func TestEighteenSecondsInThe4mmCupDependsOnWhichCup(t *testing.T) {
	din, err := cup(t, "din4").Viscosity(18)
	require.NoError(t, err)
	iso, err := cup(t, "iso4").Viscosity(18)
	require.NoError(t, err)
	assert.InDelta(t, 57, din.Nu.MM2PerS(), 0.5)
	assert.InDelta(t, 13.5, iso.Nu.MM2PerS(), 0.1)
	assert.True(t, iso.About, "18 s is below the ISO cup's range")
	e, err := cup(t, "iso4").Seconds(din.Nu)
	require.NoError(t, err)
	assert.InDelta(t, 2.5, e.Seconds/18, 0.05)
}

// A published comparison table (C grade) gives DIN4 20 s as 50 cP, 16 s as 40 cP and
// Ford4 18 s as 40 cP; with a density near 1 the equations give 69, 45 and 52 mm2/s.
// The spread stated outside the published range has to cover that.
func TestStatedSpreadCoversThePublishedDisagreement(t *testing.T) {
	for _, c := range []struct {
		cup           string
		seconds, told float64
	}{{"din4", 20, 50}, {"din4", 16, 40}, {"ford4", 18, 40}} {
		v, err := cup(t, c.cup).Viscosity(c.seconds)
		require.NoError(t, err)
		assert.True(t, v.About)
		assert.LessOrEqual(t, v.Low.MM2PerS(), c.told)
		assert.GreaterOrEqual(t, v.High.MM2PerS(), c.told)
	}
}

func TestReadingPastSenseNamesABetterCup(t *testing.T) {
	for _, c := range []struct {
		cup     string
		seconds float64
		better  string
	}{
		{"ford3", 5, "iso3"}, {"din4", 8, "ford1"}, {"ford4", 300, "ford5"}, {"zahn2", 200, "zahn4"}, {"iso6", 10, "iso4"},
	} {
		_, err := cup(t, c.cup).Viscosity(c.seconds)
		var out *coat.CupRange
		require.ErrorAs(t, err, &out, c.cup)
		require.NotEmpty(t, out.Better, c.cup)
		assert.Equal(t, c.better, out.Better[0].ID, "%s %v s", c.cup, c.seconds)
		assert.Contains(t, err.Error(), out.Better[0].Label)
		if c.seconds > 100 {
			e, err := out.Better[0].Seconds(out.Nu)
			require.NoError(t, err)
			assert.False(t, e.About, "the better cup has it in its published range")
		}
	}
	_, err := cup(t, "iso3").Viscosity(20)
	assert.EqualError(t, err, "20 s in the ISO 2431 3 mm cup: too short to tell a viscosity, it is for 30 to 100 s; no cup measures that")
	_, err = cup(t, "din4").Seconds(unit.MM2PerS(3000))
	assert.ErrorContains(t, err, "too long to tell a viscosity")
	for _, bad := range []float64{0, -3, 2000, math.NaN(), math.Inf(1)} {
		_, err := cup(t, "din4").Viscosity(bad)
		var out *coat.OutOfRange
		assert.ErrorAs(t, err, &out)
	}
	_, err = cup(t, "din4").Viscosity(0)
	assert.EqualError(t, err, "cup-time 0 s: give 1 to 1000 s")
}

func anyCup() *rapid.Generator[coat.Cup] { return rapid.SampledFrom(coat.Cups()) }

func TestCupToViscosityToCupComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCup().Draw(t, "cup")
		s := rapid.Float64Range(c.Low, c.High).Draw(t, "seconds")
		v, err := c.Viscosity(s)
		require.NoError(t, err)
		require.False(t, v.About)
		e, err := c.Seconds(v.Nu)
		require.NoError(t, err)
		assert.InEpsilon(t, s, e.Seconds, 1e-9)
		assert.False(t, e.About)
	})
}

func TestLongerIsThickerAndABetterCupHoldsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCup().Draw(t, "cup")
		s := rapid.Float64Range(1, 500).Draw(t, "seconds")
		v, err := c.Viscosity(s)
		var out *coat.CupRange
		if errors.As(err, &out) {
			for _, b := range out.Better {
				assert.NotEqual(t, c.ID, b.ID)
				if s > c.High {
					e, err := b.Seconds(out.Nu)
					require.NoError(t, err)
					assert.False(t, e.About)
				}
			}
			return
		}
		require.NoError(t, err)
		longer, err := c.Viscosity(s * 1.01)
		if err == nil {
			assert.Greater(t, longer.Nu, v.Nu)
		}
		assert.LessOrEqual(t, v.Low, v.Nu)
		assert.GreaterOrEqual(t, v.High, v.Nu)
	})
}
