package command

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// learnt is the command on the catalogue's own line, with readings.
func learnt(readings ...string) []string {
	args := []string{"learn", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi"}
	for _, r := range readings {
		args = append(args, "--reading", r)
	}
	return args
}

// A gun that is starved by the plug at its inlet: two readings know only what takes the air
// together, a third with that coupling bypassed tells it, with the hole that it is like.
func TestAStarvingCouplingIsFound(t *testing.T) {
	var got struct {
		Schema, End string
		Pieces      []struct {
			Piece string
			Odd   float64
			Bore  *struct{ MM float64 }
		}
		Untold []struct{ Why string }
		Next   []struct{ Reading, Piece string }
		Wall   struct{ Flowing, Was struct{ PSI float64 } }
	}
	starved := []string{"still wall=30psi gun=30psi", "wall=31psi gun=16psi"}
	told := boothset("", append(learnt(starved...), "--json")...)
	assert.Equal(t, ExitAnswered, told.code)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "boothset.learn/1", got.Schema)
	assert.Equal(t, "untold", got.End)
	require.NotEmpty(t, got.Untold)
	assert.Equal(t, "together", got.Untold[0].Why)
	require.NotEmpty(t, got.Next)
	assert.Greater(t, got.Wall.Flowing.PSI, got.Wall.Was.PSI+10)

	told = boothset("", append(learnt(append(starved, "without=coupling-2 wall=31psi gun=26psi")...), "--json")...)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "odd", got.End)
	for _, p := range got.Pieces {
		if p.Piece == "coupling-2" {
			assert.Greater(t, p.Odd, 0.9)
			require.NotNil(t, p.Bore)
			assert.InDelta(t, 3.5, p.Bore.MM, 1)
		}
	}
}

// Readings that cannot be right are named, and the answer says by its code that it cannot be
// used; a reading that says nothing is refused with what would do.
func TestReadingsThatWillNotDo(t *testing.T) {
	told := boothset("", learnt("still wall=38psi gun=28psi")...)
	assert.Equal(t, ExitCannot, told.code)
	assert.Contains(t, told.out, "CONTRADICTION")
	told = boothset("", learnt("wall=30psi gun=38psi")...)
	assert.Equal(t, ExitCannot, told.code)
	assert.Contains(t, strings.Join(strings.Fields(told.out), " "), "the gun's gauge shows 8.0 psi more than the wall gauge with the trigger pulled, where it can show no more")
	told = boothset("", learnt("before=30psi wall=32psi gun=25psi")...)
	assert.Contains(t, strings.Join(strings.Fields(told.out), " "), "the wall gauge shows 2.0 psi more with the trigger pulled than before")
	for reading, want := range map[string]string{
		"wall=30psi":                             "two gauges",
		"wall=30psi wall=31psi":                  "two gauges",
		"soon wall=30psi gun=20psi":              "a reading is such as",
		"wall=30psi gun=20psi hose=3":            "a reading is such as",
		"wall=3000psi gun=20psi":                 "a gauge shows 0 to",
		"wall=thirty gun=20psi":                  "a reading is such as",
		"without=pump wall=30psi gun=20psi":      "choose coupling-1, hose or coupling-2",
		"turns=9 wall=30psi gun=20psi":           "turns",
		"still turns=1 wall=30psi gun=20psi":     "two gauges",
		"still before=30psi gun=20psi wall=9psi": "two gauges",
	} {
		told = boothset("", learnt(reading)...)
		assert.Equal(t, ExitBadInput, told.code, reading)
		assert.Contains(t, told.err, want, reading)
	}
	for flag, want := range map[string]string{"--gauge": "no gauge", "--regulator": "regulator"} {
		told = boothset("", append(learnt("wall=30psi gun=20psi"), flag, "none")...)
		assert.Equal(t, ExitBadInput, told.code, flag)
		assert.Contains(t, told.err, want, flag)
	}
}
