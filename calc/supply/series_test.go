package supply_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/supply"
	"boothset/calc/unit"
)

func series(t require.TestingT, s supply.System, scfm, psi float64, spray, pause time.Duration, panels int) supply.Series {
	got, err := supply.InSeries(s, unit.SCFM(scfm), unit.PSIG(psi), spray, pause, panels)
	require.NoError(t, err)
	return got
}

// By hand, 60 gal, 15 scfm out and 10 in: a minute takes 5/(8.0208/14.696) = 9.161 psi, a
// minute's pause gives back 18.323. From 90 to 60 psig there is room for 30.
func TestPanelsOneAfterAnother(t *testing.T) {
	s := shop()
	s.Main = supply.Main{}
	even := series(t, s, 15, 60, 2*time.Minute, time.Minute, 6)
	assert.InDelta(t, 18.32, even.Fall.PSI(), 0.01)
	assert.InDelta(t, 18.32, even.Regained.PSI(), 0.01)
	assert.True(t, even.Recovers)
	assert.Equal(t, 6, even.Held)
	assert.InDelta(t, 1, even.Enough.Time.Minutes(), 1e-6)
	// Half the pause gives back half: 90 to 71.7, 80.8 to 62.5, 71.7 to 53.3, which is too low.
	short := series(t, s, 15, 60, 2*time.Minute, 30*time.Second, 6)
	assert.False(t, short.Recovers)
	assert.Equal(t, 2, short.Held)
	// A sander that draws all that is made leaves nothing to recover by.
	s.Others = []supply.User{{Flow: unit.SCFM(10), Duty: 1}}
	sander := series(t, s, 5, 60, 2*time.Minute, time.Hour, 6)
	assert.True(t, sander.Enough.Endless)
	assert.Equal(t, 1, sander.Held)
}

func TestACompressorThatKeepsUpNeedsNoPause(t *testing.T) {
	got := series(t, shop(), 9, 60, time.Hour, 0, supply.MostPanels)
	assert.True(t, got.Recovers)
	assert.Zero(t, got.Fall)
	assert.Zero(t, got.Enough.Time)
	assert.Equal(t, supply.MostPanels, got.Held)
}

// The first of a series is the panel that Check speaks of, and a longer pause never holds for
// fewer.
func TestASeriesBeginsWithThePanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := shop()
		s.Rated = unit.SCFM(rapid.Float64Range(1, 20).Draw(t, "compressor"))
		s.Receiver.Volume = unit.USGallons(rapid.Float64Range(5, 200).Draw(t, "receiver"))
		gun := rapid.Float64Range(5, 25).Draw(t, "gun")
		spray := time.Duration(rapid.IntRange(10, 600).Draw(t, "spray")) * time.Second
		pause := time.Duration(rapid.IntRange(0, 600).Draw(t, "pause")) * time.Second
		v := check(t, s, gun, 60, spray)
		one := series(t, s, gun, 60, spray, pause, 1)
		require.Equal(t, v.OK, one.Held == 1)
		many := series(t, s, gun, 60, spray, pause, 20)
		require.GreaterOrEqual(t, many.Held, one.Held)
		if many.Recovers && v.OK {
			require.Equal(t, 20, many.Held)
		}
		longer := series(t, s, gun, 60, spray, pause+time.Minute, 20)
		require.GreaterOrEqual(t, longer.Held, many.Held)
		if !many.Enough.Endless {
			require.True(t, series(t, s, gun, 60, spray, many.Enough.Time+time.Millisecond, 2).Recovers)
		}
	})
}

func TestASeriesRefusesWhatNoShopSprays(t *testing.T) {
	for _, c := range []struct {
		panels int
		pause  time.Duration
		field  string
	}{{0, 0, supply.FieldPanels}, {101, 0, supply.FieldPanels}, {2, -time.Second, supply.FieldPause}, {2, 25 * time.Hour, supply.FieldPause}} {
		_, err := supply.InSeries(shop(), unit.SCFM(9), unit.PSIG(60), time.Minute, c.pause, c.panels)
		var in *supply.InputError
		require.ErrorAs(t, err, &in)
		assert.Equal(t, c.field, in.Field)
	}
}
