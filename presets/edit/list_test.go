package edit_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A list ends at its ends and passes over what does not go with the rest.
func TestAListIsWalkedOverWhatGoesWithTheRest(t *testing.T) {
	r := questiontest.Shop(t, `
[gun.marsh-mini]
rank = 5
class = "marsh-mini"
inlet = "20psi"
flow = "3cfm"
cap = "14psi"
nearest = "4in"
farthest = "6in"
felt = { distance = "5in", pressure = "16psi", basis = "estimate", source = "invented" }
valve = { conductance = 3.0, ratio = 0.3, turns = 2.0, shape = 1.0 }

[coat.marsh-tint]
rank = 1
name = "tint of the invented Marsh Lane shop"
working.marsh-mini = { start = "16psi", low = "14psi", high = "19psi" }
`)
	walk := func(texts question.Texts, f *question.Field, by int) (all []string) {
		a := read(r, texts, unit.US)
		for {
			b, moved := step(r, a, edit.Input{Field: f}, by, unit.US)
			if !moved {
				require.Equal(t, a, b)
				return all
			}
			a = b
			all = append(all, a.Text(f))
		}
	}
	mild := func(coat, gun string) question.Texts {
		return questiontest.With(questiontest.With(questiontest.MildDay("", ""), "coat", coat), "gun", gun)
	}
	others := []string{"epoxy-primer", "surfacer", "sealer", "solvent-base", "metallic-base", "waterborne-base", "single-stage", "clear", "adhesion-promoter", "ultraviolet-primer", "pearl-mid", "matte-clear", "high-solids-clear"}
	assert.Equal(t, others, walk(mild("", "reduced-pressure"), question.Coat, 1), "the tint is not for this gun")
	assert.Equal(t, others, walk(mild("marsh-tint", "reduced-pressure"), question.Coat, 1))
	assert.Equal(t, append([]string{"marsh-tint"}, others...), walk(mild("", ""), question.Coat, 1), "no gun is chosen yet")
	assert.Empty(t, walk(mild("marsh-tint", "marsh-mini"), question.Coat, 1))
	assert.Empty(t, walk(mild("marsh-tint", "marsh-mini"), question.Gun, -1))
	assert.Equal(t, []string{"marsh-mini", "high-volume-low-pressure", "reduced-pressure", "high-pressure", "touch-up", "pressure-feed"}, walk(mild("", ""), question.Gun, 1))
	assert.Equal(t, []string{"high-volume-low-pressure", "reduced-pressure", "high-pressure", "touch-up", "pressure-feed"}, walk(mild("clear", ""), question.Gun, 1))
	assert.Equal(t, []string{"reduced-pressure", "high-volume-low-pressure"}, walk(mild("clear", "high-pressure"), question.Gun, -1))
	for _, f := range []*question.Field{question.Coupling, question.Regulator, question.Filter, question.RegulatorAt, question.Gauge} {
		all := questiontest.IDs(r.Choices(f))
		assert.Equal(t, all[1:], walk(questiontest.With(mild("clear", "reduced-pressure"), f.Name, all[0]), f, 1), f.Name)
		assert.Len(t, walk(questiontest.With(mild("clear", "reduced-pressure"), f.Name, all[len(all)-1]), f, -1), len(all)-1, f.Name)
	}
}

// A bore that a shop adds is one of those a hose is walked over, however it is written.
func TestAShopsOwnBoresAreWalkedOver(t *testing.T) {
	r := questiontest.Shop(t, "[hose.\"9mm\"]\nbore = \"9mm\"\nend = \"8mm\"\n[bore.main]\nus = [\"2in\", \"3/4in\"]\n")
	var all []string
	a, moved := read(r, questiontest.With(wholeShop(), "hose", "25ft,1/4in"), unit.US), true
	for moved {
		all = append(all, a.Text(question.Hose))
		a, moved = step(r, a, edit.Input{Field: question.Hose, Piece: 1}, 1, unit.US)
	}
	assert.Equal(t, []string{"25ft,1/4in", "25ft, 5/16 in", "25ft, 0.354 in", "25ft, 3/8 in", "25ft, 1/2 in"}, all)
	a, _ = step(r, a, edit.Input{Field: question.Main, Piece: 1}, 1, unit.US)
	assert.Equal(t, "100ft, 2 in", a.Text(question.Main))
}
