package command

import (
	"encoding/json"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// JSON has every stage, each as it comes to when it is asked for by itself; the card lists all
// of them and marks the one that is set up.
func TestStagesOfAMetallic(t *testing.T) {
	type staged struct {
		Input  struct{ Stage string }
		Gun    struct{ Working map[string]float64 }
		Wall   struct{ Flowing map[string]float64 }
		Valve  struct{ Turns float64 }
		Stages []struct {
			Stage, Verdict string
			Working, Wall  map[string]float64
			Turns          float64
			Flash          map[string]float64
		}
	}
	ask := func(stage string) (a staged) {
		r := boothset("", append(job("metallic-base", "reduced-pressure", "--stage", stage), "--json")...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		require.NoError(t, json.Unmarshal([]byte(r.out), &a))
		return a
	}
	first := ask("wet")
	require.Len(t, first.Stages, 3)
	for _, st := range first.Stages {
		alone := ask(st.Stage)
		assert.Equal(t, st.Stage, alone.Input.Stage)
		assert.Equal(t, alone.Gun.Working, st.Working, st.Stage)
		assert.Equal(t, alone.Wall.Flowing, st.Wall, st.Stage)
		assert.InDelta(t, alone.Valve.Turns, st.Turns, 1e-12, st.Stage)
		assert.Equal(t, first.Stages, alone.Stages)
	}
	card := boothset("", job("metallic-base", "reduced-pressure", "--stage", "drop")...).out
	assert.Regexp(t, regexp.MustCompile(`(?m)^  STAGE +drop coat +2 of 3$`), card)
	assert.Regexp(t, regexp.MustCompile(`(?m)^drop coat < +\d+ psi +\d+ psi`), card)
	assert.Regexp(t, regexp.MustCompile(`(?m)^wet coats +\d+ psi +\d+ psi`), card)

	r := boothset("", clearJob("--stage", "drop")...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "choose full")
}

// Of a stage that must not be sprayed JSON has nothing to set.
func TestAStoppedStageHasNothingToSet(t *testing.T) {
	r := boothset("", append(job("metallic-base", "reduced-pressure", "--humidity", "95"), "--json")...)
	require.Equal(t, ExitCannot, r.code)
	var a struct {
		Stages []map[string]any
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &a))
	require.Len(t, a.Stages, 3)
	for _, st := range a.Stages {
		assert.Equal(t, "stop", st["verdict"])
		for _, key := range []string{"working", "wall", "turns", "distance"} {
			assert.Nil(t, st[key], key)
		}
	}
}
