package tui

import (
	"slices"
	"strings"
	"testing"
	"time"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// againstDay reports whether the answer says that the day's readings are assumed; it is then no
// better than watch.
func againstDay(t test, r *root) bool {
	t.Helper()
	require.Equal(t, "bench", where(r))
	j := r.result().Plan.Setup.Judgement
	at := slices.IndexFunc(j.Against, func(c calc.Cause) bool { return c.ID == "day-assumed" })
	require.Equal(t, at >= 0, r.result().Plan.Request.Day.Assumed)
	require.Equal(t, at >= 0, slices.ContainsFunc(r.result().Plan.Today.Against, func(c calc.Cause) bool { return c.ID == "day-assumed" }), "the day's page says so too")
	if at >= 0 {
		require.GreaterOrEqual(t, j.Verdict, calc.VerdictWatch)
		require.Equal(t, "turn-read", j.Against[at].Turn.ID)
	}
	return at >= 0
}

// assumedOf is the fields that the answer cautions of as assumed.
func assumedOf(r *root) (labels []string) {
	for _, a := range r.result().Plan.Request.Assumed {
		labels = append(labels, a.Name+" "+a.Value)
	}
	return labels
}

// Enter alone takes what is usual; what nobody read is said, and typing, stepping or the key
// for it make a reading of it.
func TestUsualReadingsAreAssumedUntilTheyAreRead(t *testing.T) {
	for _, c := range []struct {
		name    string
		day     []string
		assumed bool
		air     string
	}{
		{"Enter", []string{"enter"}, true, "70 F"},
		{"one read", []string{"75", "enter", "enter"}, true, "75 F"},
		{"as read now", []string{"="}, false, "70 F"},
		{"one typed, the other as read", []string{"75", "="}, false, "75 F"},
		{"typed as usual", []string{"70", "enter", "50", "enter", "enter"}, false, "70 F"},
		{"stepped", []string{"right", "down", "left", "enter", "enter"}, false, "72 F"},
		{"not sure", []string{"75", "enter", "f2", "enter", "enter"}, true, "75 F"},
		{"typed and then not sure", []string{"75", "enter", "50", "enter", "up", "f2", "enter", "enter"}, true, "75 F"},
	} {
		for _, lang := range words.Languages() {
			r := start(t, look{lang: lang})
			press(r, then(then(atTemp, c.day...), "90psi", "enter", "enter", "enter")...)
			require.Equal(t, c.assumed, againstDay(t, r), c.name)
			require.Equal(t, c.air, r.s.answers.Text(question.Temp), c.name)
			require.Empty(t, assumedOf(r), c.name)
			press(r, "=")
			require.False(t, againstDay(t, r), c.name)
			require.Equal(t, c.air, r.s.answers.Text(question.Temp), c.name)
		}
	}
}

// Where something is tried when the readings are confirmed it stays tried.
func TestReadNowLeavesWhatIsTried(t *testing.T) {
	r := open80x24(t)
	press(r, "enter", "8", "2", "enter", "enter", "enter")
	require.True(t, againstDay(t, r))
	press(r, "up", "right", "=")
	require.True(t, r.bench.changed())
	require.False(t, r.bench.tried.Request.Day.Assumed)
	press(r, "esc")
	require.False(t, againstDay(t, r))
}

// Readings of another day are assumed on this one, those of the same day are not; a program
// left open overnight knows that too.
func TestReadingsAreOfTheirDay(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	for _, c := range []struct {
		after   time.Duration
		assumed bool
	}{{3 * time.Hour, false}, {15 * time.Hour, true}, {48 * time.Hour, true}} {
		h.now = testDay.Add(c.after)
		r := h.run(t, look{})
		press(r, "enter", "enter")
		require.Equal(t, c.assumed, againstDay(t, r), c.after)
		press(r, "esc", "esc", "esc")
		require.Equal(t, c.assumed, r.s.dated(r.s.answers).Get(question.Temp)[0].Assumed)
		press(r, "75", "enter", "45", "enter", "enter", "enter", "enter")
		require.False(t, againstDay(t, r), "typed anew, though it says the same")
	}
	h.now = testDay
	r := h.run(t, look{})
	press(r, "enter", "enter")
	require.False(t, againstDay(t, r))
	h.now = testDay.Add(24 * time.Hour)
	press(r, "n", "enter", "enter", "enter", "enter", "enter")
	require.True(t, againstDay(t, r))
}

// What is assumed is kept as such.
func TestWhatIsAssumedIsKept(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	typed(r, "enter", "8", "2", "enter", "enter", "enter")
	require.Equal(t, []string{"short-supply 90 psi"}, assumedOf(r))
	again := h.run(t, look{})
	press(again, "enter", "enter")
	require.True(t, againstDay(t, again))
	require.Equal(t, r.result(), again.result())
}

// Not knowing a value takes what is usual, says how it is measured, and stands in the answer
// until the value is typed; a shop's own usual is known.
func TestNotSure(t *testing.T) {
	for _, lang := range words.Languages() {
		for _, key := range []string{"f2", "!"} {
			r := start(t, look{lang: lang})
			press(r, then(atSupply, key)...)
			require.Equal(t, "unsure", where(r))
			press(r, "esc")
			require.Equal(t, question.Supply.Name, where(r))
			press(r, key, "enter", "enter", "enter")
			require.Equal(t, "bench", where(r))
			require.Equal(t, []string{"short-supply 90 psi"}, assumedOf(r))
			said := slices.ContainsFunc(r.result().Plan.Setup.Cautions, func(c calc.Caution) bool {
				return c.ID == "assumed" && strings.Contains(r.s.text(c.ID, c.Figures...), r.s.say("how-supply"))
			})
			require.True(t, said)
			press(r, "esc", "esc")
			press(r, "up", "90psi", "enter", "enter", "enter")
			require.Empty(t, assumedOf(r))
		}
	}
	r := open80x24(t)
	press(r, then(toLine(question.Hose), "f2", "enter", "enter", "enter", "enter")...)
	require.Equal(t, []string{"short-hose 25ft, 3/8in"}, assumedOf(r))
	r = start(t, look{shop: "[line]\nsupply = \"100psi\"\n"})
	press(r, "enter", "8", "2", "=", "enter", "enter")
	require.Empty(t, assumedOf(r))
	require.InDelta(t, 100, r.result().Plan.Request.Supply.PSI(), 1e-9)
}

// Plain has signs for the same.
func TestPlainKnowsOfReadings(t *testing.T) {
	for _, c := range []struct {
		lines   []string
		assumed bool
		unread  int
	}{
		{[]string{"8", "2", "", "", "", "", "", "1", "", "", ""}, true, 1},
		{[]string{"8", "2", "=", "=", "", "", "90psi", "1", "", "", ""}, false, 0},
		{[]string{"8", "2", "=", "!", "", "", "!", "1", "", "", ""}, true, 1},
		{[]string{"8", "2", "", "", "", "", "90psi", "1", "", "", "", "="}, false, 0},
	} {
		for _, lang := range words.Languages() {
			got := dialogueOf(t, look{lang: lang}, lines(append(c.lines, "")...))
			require.NoError(t, got.err, got.out)
			require.Equal(t, c.assumed, got.left.Plan.Request.Day.Assumed, c.lines)
			require.Len(t, got.left.Plan.Request.Assumed, c.unread, c.lines)
		}
	}
}
