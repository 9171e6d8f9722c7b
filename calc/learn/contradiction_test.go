package learn

import (
	"testing"

	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// With the trigger pulled air loses pressure on its way, and a regulator falls as air flows: a
// gauge that shows more than one before it, by more than both gauges may be off and three
// standard deviations of what a reading scatters, cannot be right beside it. The wall's gauge may
// be off by 4 psi, the gun's by 1.5, each reading scatters by 0.3: 6.8 psi and more.
func TestNoGaugeShowsMoreThanOneBeforeIt(t *testing.T) {
	for name, c := range map[string]struct {
		shows []Shown
		apart float64 // psi; 0 of what may be
		two   [2]Gauge
	}{
		"the gun's above the wall's":                {wallAndGun(31, 38.5), 7.5, [2]Gauge{WallGauge, GunGauge}},
		"as far as both may be off":                 {wallAndGun(31, 37.5), 0, [2]Gauge{}},
		"a fall is what a line does, however large": {wallAndGun(40, 5), 0, [2]Gauge{}},
		"one gauge, off by the same twice": {append(wallAndGun(31, 26), Shown{WallGauge, unit.PSIG(29), true}), 2,
			[2]Gauge{WallGauge, WallGauge}},
		"a wall that falls as the trigger is pulled": {append(wallAndGun(31, 26), Shown{WallGauge, unit.PSIG(34), true}), 0, [2]Gauge{}},
		"the cap's above the gun's inlet": {[]Shown{{Gauge: FootGauge, Pressure: unit.PSIG(20)}, {Gauge: CapGauge, Pressure: unit.PSIG(25)}}, 5,
			[2]Gauge{FootGauge, CapGauge}},
	} {
		t.Run(name, func(t *testing.T) {
			l := learner(t, calctest.MildClear(t), 500)
			require.NoError(t, l.Add(Reading{Opening: 1, Shows: c.shows}))
			found := l.Contradictions()
			if c.apart == 0 {
				require.Empty(t, found)
				return
			}
			require.Len(t, found, 1)
			assert.InDelta(t, c.apart, found[0].Apart.PSI(), 1e-9)
			assert.Equal(t, c.two, found[0].Gauges)
			assert.Equal(t, found[0].First, found[0].Second)
		})
	}
}
