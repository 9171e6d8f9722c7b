package shop_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// readLine is a plan's line of two couplings.
func readLine() *calc.Request {
	coupling := line.Part{Kind: line.CouplingKind, Entry: "slim", Restriction: line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}}
	return &calc.Request{Line: []line.Part{{Kind: line.RegulatorKind}, coupling, coupling}}
}

// What is kept of a booth's gauges comes back as readings; of a part that was replaced since, they
// are of another piece, and those of a line that is described otherwise do not count.
func TestReadingsComeBack(t *testing.T) {
	f, m, r := folder(t), machine(t), questiontest.Open(t)
	plan := readLine()
	typed := []question.Value{r.Read(question.GaugeReading, "still wall=30psi gun=28.5psi", unit.US), r.Read(question.GaugeReading, "wall=2,1bar gun=24psi without=coupling-2", unit.US)}
	require.NoError(t, f.KeepReadings(m, "two", shop.ReadingsOf(plan, "two", "clear-1", typed, aDay, unit.US)))
	require.NoError(t, f.KeepReadings(m, "two", []shop.GaugeReading{{At: aDay.AddDate(0, 0, 1), Gun: "clear-1", Replaced: "coupling-1"}}))
	all, faults := f.Readings("two")
	require.Empty(t, faults)
	require.Len(t, all, 3)
	none := func(string) *learn.OtherGun { return nil }
	taken, others := shop.History(r, plan, "clear-1", all, none)
	require.Len(t, taken, 2)
	assert.Empty(t, others)
	assert.True(t, taken[0].Still)
	assert.InDelta(t, 28.5, taken[0].Shows[1].Pressure.PSI(), 0.01)
	assert.InDelta(t, 2.1, float64(taken[1].Shows[0].Pressure)/unit.PascalPerBar, 0.001)
	assert.Equal(t, []string{"coupling-2"}, taken[1].Without)
	assert.Equal(t, map[string]int{"coupling-1": 1}, taken[0].Was)

	taken, _ = shop.History(r, plan, "clear-2", all, none)
	assert.Empty(t, taken, "the other gun is not known")
	taken, others = shop.History(r, plan, "clear-2", all, func(string) *learn.OtherGun { return &learn.OtherGun{} })
	require.Len(t, taken, 2)
	assert.Len(t, others, 1)
	assert.Equal(t, learn.OfGun(1), taken[0].Shows[1].Gauge)
	other := readLine()
	other.Line[1].Entry = "ordinary"
	taken, _ = shop.History(r, other, "clear-1", all, none)
	assert.Empty(t, taken)

	require.NoError(t, f.KeepReadings(m, "two", []shop.GaugeReading{{At: aDay.AddDate(0, 0, 2), Gun: "clear-1", Replaced: shop.ReplacedGun}}))
	all, _ = f.Readings("two")
	taken, _ = shop.History(r, plan, "clear-1", all, none)
	assert.Empty(t, taken, "the gun's own parts are others now")
}

// A hose is the same however it was written.
func TestALineOfAHoseHoweverWritten(t *testing.T) {
	r := questiontest.Open(t)
	lineOf := func(hose string) []string {
		q, _ := r.Plan(r.AnyJob().With(question.Hose, r.Read(question.Hose, hose, unit.US)), unit.US)
		return shop.LineOf(q)
	}
	assert.Equal(t, lineOf("50ft,5/16in"), lineOf("50 ft, 5/16 in"))
	assert.Equal(t, lineOf("50ft,3/8in"), lineOf("15.24m,9.525mm"))
	assert.NotEqual(t, lineOf("50ft,5/16in"), lineOf("50ft,3/8in"))
}
