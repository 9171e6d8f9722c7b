package tui

import (
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// toMetallic is the keys to the answer for a one-part metallic base.
var toMetallic = []string{"enter", "5", "4", "2", "75F", "enter", "45", "enter", "enter", "90psi", "enter", "enter", "enter"}

// One key goes to the coat's next stage, and from the last to the first: heading, settings and
// what is kept follow, and what is tried stays tried.
func TestOneKeyGoesToTheNextStage(t *testing.T) {
	r := open80x24(t)
	press(r, toMetallic...)
	require.NotNil(t, r.result().Plan)
	wet := r.bench.kept.Setup.Wall.Flowing
	for _, c := range []struct{ id, name string }{{"drop", "drop coat"}, {"mist", "or a mist coat"}, {"wet", "wet coats"}, {"drop", "drop coat"}} {
		press(r, "s")
		require.Equal(t, c.id, r.bench.kept.Request.Coat.Stage.ID)
		require.Contains(t, r.View(), "metallic basecoat ("+c.name+")")
		require.Equal(t, c.id, r.s.answers.ID(question.Stage))
	}
	require.Less(t, r.bench.kept.Setup.Wall.Flowing, wet, "the drop coat's wall is lower")

	press(r, "up", "right") // the gauge's class
	require.True(t, r.bench.changed())
	press(r, "s")
	require.True(t, r.bench.changed(), "what is tried is still tried")
	require.Equal(t, "mist", r.bench.tried.Request.Coat.Stage.ID)
}

// A coat of one stage has no such key.
func TestACoatOfOneStageHasNoStageKey(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.View()
	require.NotContains(t, before, "s stage")
	press(r, "s")
	require.Equal(t, before, r.View())
}
