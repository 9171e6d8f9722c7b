package command

import (
	"encoding/json"
	"strings"
	"testing"

	"boothset/presets/signs"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// choked is a gun whose wall stands high with its valve nearly shut.
func choked(more ...string) []string {
	return append([]string{"trouble", "--sign", "fading", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi", "--wall", "80psi"}, more...)
}

// What is seen alone is enough to begin with: the first check is asked for, and how to answer it.
func TestTroubleAsksForACheck(t *testing.T) {
	got := boothset("", "trouble", "--sign", "orange peel")
	require.Equal(t, ExitAnswered, got.code, got.err)
	for _, part := range []string{"Orange peel:", "LOOK Hold the trigger ten seconds", "gauge-trigger=falls", "Causes, the likeliest first", "none of these", "The panel as it is now", "wall to zero", "respirator with supplied air", "Heckerman, Breese and Rommelse 1995"} {
		assert.Contains(t, got.out, part)
	}
	assert.NotContains(t, got.out, "What to do")
}

// The wall that is high and the valve that is shut are found by the setup and one check, and the
// settings are worked out again: those of the plan.
func TestTroubleIsTracedToItsCause(t *testing.T) {
	got := boothset("", choked("--found", "valve-open=climbs")...)
	require.Equal(t, ExitAnswered, got.code, got.err)
	for _, part := range []string{"LIKELY The inlet valve is nearly shut against a high wall", "What to do", "Worked out again with that done", "WALL         31 psi", "Before: wall 80.0 psi", "With the wall at 80.0 psi the inlet valve must be closed"} {
		assert.Contains(t, got.out, part)
	}
	plan := boothset("", clearJob("--json")...)
	again := boothset("", choked("--found", "valve-open=climbs", "--json")...)
	var of struct {
		Wall struct{ Flowing struct{ PSI float64 } }
	}
	var after struct {
		Schema, End string
		Move        struct {
			Cause string
			Still []any
			After struct {
				Wall struct{ PSI float64 }
			}
		}
	}
	require.NoError(t, json.Unmarshal([]byte(plan.out), &of))
	require.NoError(t, json.Unmarshal([]byte(again.out), &after))
	assert.Equal(t, "boothset.trouble/1", after.Schema)
	assert.Equal(t, "told", after.End)
	assert.Equal(t, "valve-choked", after.Move.Cause)
	assert.InDelta(t, of.Wall.Flowing.PSI, after.Move.After.Wall.PSI, 1e-9)
	assert.Empty(t, after.Move.Still)
}

// A job that must not be sprayed stays one, and exits so; bad input is refused in one line.
func TestTroubleKeepsToTheExitCodes(t *testing.T) {
	damp := boothset("", "trouble", "--sign", "blushing", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "90", "--supply", "90psi")
	assert.Equal(t, ExitCannot, damp.code)
	assert.True(t, strings.HasPrefix(damp.out, "STOP"), damp.out)
	for _, bad := range [][]string{
		{"trouble"}, {"trouble", "--sign", "purple"}, {"trouble", "--sign", "heavy"}, {"trouble", "--sign", "runs", "--found", "listen=loud"},
		{"trouble", "--sign", "runs", "--wall", "30psi"}, {"trouble", "--sign", "runs", "--grade", "faster", "--coat", "clear"},
		{"trouble", "--sign", "runs", "--seconds", "29", "--coat", "clear"}, choked("--distance", "90in"),
	} {
		got := boothset("", bad...)
		assert.Equal(t, ExitBadInput, got.code, bad)
		assert.Empty(t, got.out, bad)
		assert.Equal(t, 1, strings.Count(got.err, "\n"), bad)
	}
	for _, field := range []string{"--wall", "--distance", "--wet", "--seconds"} {
		assert.Contains(t, boothset("", "trouble", "--sign", "runs", field, "9").err, "give the job as well", field)
	}
}

// A batch answers as the command does, line by line, and a bad line by an error.
func TestTroubleByTheBatch(t *testing.T) {
	got := boothset(`{"sign":"runs"}`+"\n"+`{"sign":"purple"}`+"\n"+`{"sign":["split","stripes"],"found":["gauge-trigger=high"]}`+"\n", "trouble", "--batch")
	assert.Equal(t, ExitBadInput, got.code)
	lines := strings.Split(strings.TrimSpace(got.out), "\n")
	require.Len(t, lines, 3)
	one := boothset("", "trouble", "--sign", "runs", "--json")
	assert.Contains(t, lines[0], `"schema":"boothset.trouble/1"`)
	assert.True(t, strings.HasPrefix(one.out, lines[0][:200]))
	assert.Contains(t, lines[1], errorSchema)
	assert.Contains(t, lines[2], `"cause":"air-high"`)
}

// Spanish asks and answers in Spanish, by the words of either language.
func TestTroubleInSpanish(t *testing.T) {
	got := boothset("", "trouble", "--sign", "cáscara de naranja", "--lang", "es")
	require.Equal(t, ExitAnswered, got.code, got.err)
	assert.Contains(t, got.out, "REVISE Apriete el gatillo diez segundos")
	assert.Equal(t, got, boothset("", "trouble", "--sign", "orange-peel", "--lang", "es"))
}

func TestTroubleCompletesSignsAndFindings(t *testing.T) {
	got := boothset("", cobra.ShellCompRequestCmd, "trouble", "--sign", "")
	for _, s := range signs.Book().Signs {
		assert.Contains(t, got.out, s.ID+"\t")
	}
	assert.Contains(t, boothset("", cobra.ShellCompRequestCmd, "trouble", "--found", "").out, "gauge-trigger=falls\t")
}

// Readings that the line starves the gun make that the likeliest cause before any check.
func TestTroubleTakesReadingsOfTheLine(t *testing.T) {
	args := []string{"trouble", "--sign", "orange-peel", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi"}
	first := func(more ...string) (cause string, probability float64) {
		got := boothset("", append(append(args[:len(args):len(args)], more...), "--json")...)
		require.Equal(t, ExitAnswered, got.code, got.err)
		var of struct {
			Causes []struct {
				Cause       string
				Probability float64
			}
		}
		require.NoError(t, json.Unmarshal([]byte(got.out), &of))
		return of.Causes[0].Cause, of.Causes[0].Probability
	}
	cause, _ := first()
	assert.NotEqual(t, "starved", cause)
	cause, p := first("--reading", "still wall=30psi gun=30psi", "--reading", "wall=31psi gun=19psi")
	assert.Equal(t, "starved", cause)
	assert.Greater(t, p, 0.3)
	assert.Contains(t, boothset("", append(args[:len(args):len(args)], "--reading", "still wall=30psi gun=30psi", "--reading", "wall=31psi gun=19psi")...).out, "By its readings")
	assert.Equal(t, ExitBadInput, boothset("", "trouble", "--sign", "runs", "--reading", "wall=31psi gun=19psi").code)
}
