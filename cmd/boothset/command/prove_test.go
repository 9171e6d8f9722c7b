package command

import (
	"encoding/json"
	"strings"
	"testing"

	"boothset/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// proved is the command on the catalogue's own line, with what was read and seen.
func proved(flags ...string) []string {
	return append([]string{"prove", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi"}, flags...)
}

// text is what a command prints, in one line.
func text(out string) string { return strings.Join(strings.Fields(out), " ") }

// Each thing that is done at the gun stands in the list with what it should show, before anything
// was seen.
func TestTheListSaysWhatToExpect(t *testing.T) {
	told := boothset("", proved()...)
	require.Equal(t, ExitAnswered, told.code)
	for _, want := range []string{
		"the gun's gauge should show 31.2 psi to 36.8 psi", "two readings differ by 1.3 psi at most", "close the inlet valve until the gun's gauge shows 26.0 psi", "Expected: wide open to closed",
		"The firm push should begin at 4.8 in to 6.3 in", "Pattern on paper", "Flood test", "2.2 mil to 2.7 mil wet",
	} {
		assert.Contains(t, text(told.out), want)
	}
	assert.NotContains(t, told.out, "gauge before the wall regulator", "it is asked for where the gun's gauge fell")
}

// A day on which nothing is sprayed says so before anything at the gun, and a pattern on paper is
// sprayed with what the paint asks for.
func TestProvingSaysTheDayAndWhatProtects(t *testing.T) {
	told := boothset("", proved()...)
	assert.True(t, strings.HasPrefix(told.out, "At the gun"), "a day to go says nothing")
	assert.Contains(t, text(told.out), "Clearcoat contains isocyanate hardener")
	told = boothset("", proved("--temp", "40F", "--humidity", "99")...)
	assert.Equal(t, ExitCannot, told.code)
	assert.True(t, strings.HasPrefix(told.out, "STOP"), told.out)
	var got struct {
		Verdict string
		Stopped bool
	}
	told = boothset("", proved("--temp", "40F", "--humidity", "99", "--json")...)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "stop", got.Verdict)
	assert.True(t, got.Stopped)
}

// A stage among others is held to its own film, and what other stages are still to lay is not told.
func TestTheCombOfOneStage(t *testing.T) {
	told := boothset("", "prove", "--coat", "metallic-base", "--stage", "drop", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi", "--wet", "1mil")
	require.Equal(t, ExitAnswered, told.code, told.err)
	assert.Contains(t, text(told.out), "Comb: 1.0 mil, expected 0.83 mil to 1.7 mil wet: as expected.")
	assert.NotContains(t, told.out, "Still to come")
}

// What was seen is judged, with what to set or to do, in words and as JSON.
func TestWhatIsSeenIsJudged(t *testing.T) {
	calctest.WithoutRace(t)
	for name, c := range map[string]struct {
		flags []string
		want  string
	}{
		"it holds":           {[]string{"--reading", "wall=34psi gun=30psi", "--first-gun", "31"}, "31.0 psi at first, then 30.0 psi: it holds."},
		"the supply":         {[]string{"--reading", "wall=30psi gun=26psi", "--first-gun", "30", "--held-supply", "31"}, "the supply falls. 31.0 psi is left before the regulator"},
		"the regulator":      {[]string{"--reading", "wall=30psi gun=26psi", "--first-gun", "30", "--held-supply", "85"}, "the wall regulator does not hold. It has 85.0 psi"},
		"after the wall":     {[]string{"--reading", "wall=34psi gun=26psi", "--first-gun", "30", "--first-wall", "34"}, "the wall holds: the air is lost after it"},
		"felt far":           {[]string{"--felt", "8in"}, "farther. More air comes out than expected"},
		"felt near":          {[]string{"--felt", "3in"}, "hold the gun 5.0 in, the nearest that it is held"},
		"felt as expected":   {[]string{"--felt", "5.2in"}, "as expected. Hold the gun 5.2 in."},
		"the sheet's":        {[]string{"--felt", "5.2in", "--sheet-distance", "7in"}, "The sheet's 7.0 in is what the gun is held at."},
		"a sign":             {[]string{"--pattern", "banana"}, "Pattern on paper: crescent."},
		"where it leads":     {[]string{"--pattern", "banana"}, "boothset trouble --sign crescent"},
		"uneven runs":        {[]string{"--flood", "split"}, "Flood test: uneven runs, as of this pattern: split pattern."},
		"a thick film":       {[]string{"--wet", "4mil"}, "4.0 mil, expected 2.2 mil to 2.7 mil wet: 1.3 mil over. Move the gun about 65% faster. - As it is the film stays thin"},
		"a thin film":        {[]string{"--wet", "1mil,1.5mil"}, "0.72 mil under. Move the gun about 50% slower. - As it is the film stays thin"},
		"another's solids":   {[]string{"--wet", "4mil", "--solids", "30"}, "3.3 mil to 4.0 mil wet: as expected. - Still to come: 1 coat of"},
		"a valve as it is":   {[]string{"--reading", "wall=31psi gun=26psi turns=3/8"}, "valve closed 3/8 turn, expected wide open to closed 1 turn: as expected."},
		"a valve too closed": {[]string{"--reading", "wall=31psi gun=26psi turns=1.5"}, "closed further. More air comes than expected"},
	} {
		t.Run(name, func(t *testing.T) {
			told := boothset("", proved(c.flags...)...)
			require.Equal(t, ExitAnswered, told.code, told.err)
			assert.Contains(t, text(told.out), c.want)
		})
	}
	var got struct {
		Seen struct {
			Held struct{ Falls string }
			Felt struct {
				Hold struct{ In float64 }
				Held string
			}
			Pattern string
			Comb    struct {
				Read struct {
					SpeedTimes float64 `json:"speed_times"`
				}
			}
			Text []string
		}
		Trouble struct{ End string }
	}
	told := boothset("", proved("--reading", "wall=30psi gun=26psi", "--first-gun", "30", "--held-supply", "85", "--felt", "8in", "--pattern", "split", "--wet", "4mil", "--json")...)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "regulator", got.Seen.Held.Falls)
	assert.InDelta(t, 6, got.Seen.Felt.Hold.In, 1e-6)
	assert.Equal(t, "farthest", got.Seen.Felt.Held)
	assert.Equal(t, "split", got.Seen.Pattern)
	assert.InDelta(t, 1.64, got.Seen.Comb.Read.SpeedTimes, 0.05)
	assert.NotEmpty(t, got.Trouble.End)
	assert.Len(t, got.Seen.Text, 6)
}

// What was read and seen with a booth is kept there, and told beside what is seen later: with its
// own gun and coat alone, in any language.
func TestWhatIsSeenIsKeptWithTheBooth(t *testing.T) {
	calctest.WithoutRace(t)
	_, env := quarryLane(t)
	in := func(more ...string) ran {
		return boothsetIn(env, "", append([]string{"prove", "--booth", "two", "--gun", "number-four", "--temp", "72F", "--humidity", "45"}, more...)...)
	}
	told := in("--coat", "clear", "--reading", "still wall=30psi gun=29psi", "--felt", "5.5", "--pattern", "banana", "--keep")
	require.Equal(t, ExitAnswered, told.code, told.err)
	assert.NotContains(t, told.out, "Before:")
	told = in("--coat", "clear")
	require.Equal(t, ExitAnswered, told.code, told.err)
	assert.Contains(t, text(told.out), "Before: push felt at 5.5 in, on 2")
	assert.Contains(t, text(told.out), "Before: pattern on paper crescent, on 2")
	assert.Contains(t, text(told.out), "reads 1.0 psi lower than the wall's", "the kept reading counts")
	assert.Contains(t, text(in("--coat", "clear", "--lang", "es").out), "Antes: abanico en papel")
	assert.NotContains(t, in("--coat", "single-stage").out, "Before:")

	told = boothsetIn(env, "", "plan", "--booth", "two", "--gun", "number-four", "--coat", "clear", "--temp", "72F", "--humidity", "45")
	require.Equal(t, ExitAnswered, told.code, told.err)
	assert.Contains(t, text(told.out), "Worked with 1 of this line's own reading")
	told = in("--coat", "clear", "--replaced", "gun", "--keep")
	require.Equal(t, ExitAnswered, told.code, told.err)
	assert.NotContains(t, in("--coat", "clear").out, "Before:")
}

// What cannot have been seen is refused by its name, with what would do.
func TestWhatCannotHaveBeenSeen(t *testing.T) {
	for want, flags := range map[string][]string{
		"a reading of the trigger held ten seconds": {"--first-gun", "30"},
		"first-gun":          {"--reading", "wall=30psi gun=26psi", "--held-supply", "80"},
		"in, ft, mm or m":    {"--felt", "far"},
		"outside 2 to 30 in": {"--felt", "90in"},
		"choose even":        {"--pattern", "ugly"},
		"end-heavy":          {"--flood", "crescent"},
		"last wet tooth":     {"--wet", "wet"},
		"--booth":            {"--reading", "wall=30psi gun=26psi", "--keep"},
		"psi, bar or kPa":    {"--reading", "wall=30psi gun=26psi", "--first-gun", "high"},
		"no gauge":           {"--gauge", "none", "--reading", "wall=30psi gun=26psi"},
		"a reading is":       {"--reading", "wall=30psi gun=26psi turns=half"},
		"such as 45%":        {"--wet", "4mil", "--solids", "x"},
	} {
		told := boothset("", proved(flags...)...)
		assert.Equal(t, ExitBadInput, told.code, flags)
		assert.Contains(t, text(told.err), want, flags)
	}
}
