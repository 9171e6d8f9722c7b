package spread_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/spread"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of lines that are drawn from the tolerances, as a line that was never read is, the spread is that
// of the tolerances: its bounds, how often it falls short, and the share of what no reading tells.
func TestLinesFromTheTolerancesHaveTheirSpread(t *testing.T) {
	r := calctest.MildClear(t)
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	want := spread.Of(&r, s)

	random := rand.New(rand.NewPCG(7, 7))
	ids := calc.ToleranceIDs()
	x := calc.Learnt{Lines: make([]calc.LineOff, 40_000)}
	for _, id := range []string{"thermometer", "hygrometer", "felt"} {
		x.Unread = append(x.Unread, slices.Index(ids[:], id))
	}
	as := calc.Off{Valve: 1, Flow: 1}
	for i := range as.Parts {
		as.Parts[i] = calc.PartOff{Passes: 1, End: 1}
	}
	x.Middle.Off = as
	for i := range x.Lines {
		x.Lines[i].Off = as
		for d := range ids {
			x.Lines[i].Deviations[d] = random.NormFloat64()
		}
	}
	got := spread.Of(x.Of(&r), s)
	near := 0.02 * (want.Wall.High - want.Wall.Low).PSI()
	assert.InDelta(t, want.Wall.Low.PSI(), got.Wall.Low.PSI(), near)
	assert.InDelta(t, want.Wall.High.PSI(), got.Wall.High.PSI(), near)
	assert.InDelta(t, want.Middle.PSI(), got.Middle.PSI(), near)
	assert.InDelta(t, want.Opening.Low, got.Opening.Low, 0.01)
	assert.InDelta(t, float64(want.Distance.Low), float64(got.Distance.Low), 0.02*float64(want.Distance.High-want.Distance.Low))
	assert.InDelta(t, want.Short, got.Short, 0.015)
	of := func(s *spread.Spread, id string) (c spread.Cause) {
		if at := slices.IndexFunc(s.Causes, func(c spread.Cause) bool { return c.ID == id }); at >= 0 {
			c = s.Causes[at]
		}
		return c
	}
	for _, id := range []string{"thermometer", "felt"} {
		assert.InDelta(t, of(want, id).Wall, of(got, id).Wall, 0.01, id)
		assert.InDelta(t, of(want, id).Distance, of(got, id).Distance, 0.03, id)
	}
	assert.Equal(t, spread.CauseReadings, got.Causes[0].ID)
	sum := 0.0
	for _, c := range got.Causes {
		sum += c.Wall
	}
	assert.InDelta(t, 1, sum, 1e-3, "but for what is left out")
}
