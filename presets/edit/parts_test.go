package edit_test

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// lineText is a line as it is given part by part.
func lineText(a question.Answers) string { return a.Text(question.Line) }

// The usual line, and what was answered of it, become the list of its parts, and it is the same
// line to the last figure.
func TestTheUsualLineBecomesAList(t *testing.T) {
	r := questiontest.Open(t)
	for _, sys := range bothSystems {
		for _, texts := range []question.Texts{questiontest.MildDay("clear", "reduced-pressure"), wholeShop(), questiontest.With(wholeShop(), "regulator-at", "gun")} {
			a := read(r, texts, sys)
			b := edit.WholeLine(r, a, sys)
			require.True(t, question.Whole(b))
			for _, f := range question.LineFields()[1:] {
				assert.False(t, b.Has(f), f.Name)
			}
			was, faults := r.Plan(a, sys)
			require.Empty(t, faults)
			is, faults := r.Plan(b, sys)
			require.Empty(t, faults)
			for i := range is.Line {
				is.Line[i].Entry = was.Line[i].Entry // a hose's, with its units named
			}
			assert.Equal(t, was.Line, is.Line)
			assert.Equal(t, lineText(b), lineText(edit.WholeLine(r, b, sys)), "a list stays as it is")
			usual, _ := r.Plan(edit.UsualLine(b), sys)
			shipped, _ := r.Plan(edit.UsualLine(a), sys)
			assert.Equal(t, shipped.Line, usual.Line)
		}
	}
	mild := edit.WholeLine(r, read(r, questiontest.MildDay("clear", "reduced-pressure"), unit.US), unit.US)
	assert.Equal(t, "regulator=1/2in + coupling=large-bore + hose=25ft, 3/8in + coupling=large-bore", lineText(mild))
}

func TestPartsAreAddedRemovedMovedAndSwapped(t *testing.T) {
	r := questiontest.Open(t)
	part := func(text string) question.Value { return r.Read(question.Line, text, unit.US) }
	a := question.Answers{}.With(question.Line, part("regulator=1/2in"), part("hose=25ft,3/8in"))
	must := func(b question.Answers, ok bool) question.Answers { require.True(t, ok); return b }

	b := must(edit.AddPart(a, 0, part("coupling=slim")))
	assert.Equal(t, "regulator=1/2in + coupling=slim + hose=25ft,3/8in", lineText(b))
	assert.Equal(t, "dryer=desiccant + regulator=1/2in + hose=25ft,3/8in", lineText(must(edit.AddPart(a, -1, part("dryer=desiccant")))))
	assert.Equal(t, "regulator=1/2in + hose=25ft,3/8in + valve=ball", lineText(must(edit.AddPart(a, 1, part("valve=ball")))))
	assert.Equal(t, "coupling=slim + regulator=1/2in + hose=25ft,3/8in", lineText(must(edit.MovePart(b, 1, 0))))
	assert.Equal(t, "coupling=slim + hose=25ft,3/8in + regulator=1/2in", lineText(must(edit.MovePart(b, 0, 2))))
	assert.Equal(t, "regulator=1/2in + hose=25ft,3/8in", lineText(must(edit.RemovePart(b, 1))))
	assert.Equal(t, "regulator=1/2in + filter=clogged + hose=25ft,3/8in", lineText(must(edit.SwapPart(b, 1, part("filter=clogged")))))
	assert.Equal(t, "regulator=1/2in + hose=25ft,3/8in", lineText(a), "what was there is left as it was")

	one := question.Answers{}.With(question.Line, part("valve=ball"))
	for _, refused := range []func() (question.Answers, bool){
		func() (question.Answers, bool) { return edit.AddPart(a, 2, part("valve=ball")) },
		func() (question.Answers, bool) { return edit.AddPart(a, -2, part("valve=ball")) },
		func() (question.Answers, bool) { return edit.AddPart(a, 0, part("valve=huge")) },
		func() (question.Answers, bool) { return edit.MovePart(a, 0, 0) },
		func() (question.Answers, bool) { return edit.MovePart(a, 0, 2) },
		func() (question.Answers, bool) { return edit.MovePart(a, -1, 0) },
		func() (question.Answers, bool) { return edit.RemovePart(a, 2) },
		func() (question.Answers, bool) { return edit.RemovePart(one, 0) },
		func() (question.Answers, bool) { return edit.SwapPart(a, 5, part("valve=ball")) },
		func() (question.Answers, bool) { return edit.SwapPart(a, 0, part("ball")) },
	} {
		_, ok := refused()
		assert.False(t, ok)
	}
}

// A part that is added is one of its kind that will do.
func TestANewPartOfEachKind(t *testing.T) {
	r := questiontest.Open(t)
	for _, sys := range bothSystems {
		for _, kind := range question.PartKinds() {
			v := edit.NewPart(r, question.Answers{}, kind, sys)
			require.Nil(t, v.Fault, kind)
			assert.Equal(t, kind, v.Kind)
			again := question.Answers{}.With(question.Line, v, r.Read(question.Line, "coupling=slim", sys))
			assert.Equal(t, "coupling=slim", edit.NewPart(r, again, "coupling", sys).Text[:13])
		}
	}
	bare := questiontest.Shop(t, "[line]\nhose = []\n")
	assert.Equal(t, "hose=8 m, 10 mm", edit.NewPart(bare, question.Answers{}, "hose", unit.Metric).Text)
	assert.NotNil(t, edit.NewPart(r, question.Answers{}, "pipe", unit.US).Fault)
}

// Whatever is done to a line, it keeps its parts but for those that were changed, and never
// comes to more than there is room for, or to none.
func TestALineKeepsItsParts(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a := edit.WholeLine(r, read(r, questiontest.MildDay("clear", "reduced-pressure"), unit.US), unit.US)
		for range rapid.IntRange(0, 40).Draw(t, "changes") {
			before := a.Texts()["line"]
			at := rapid.IntRange(-2, len(before)+1).Draw(t, "at")
			kind := rapid.SampledFrom(question.PartKinds()).Draw(t, "kind")
			var after question.Answers
			var ok bool
			left := slices.Clone(before)
			switch rapid.IntRange(0, 3).Draw(t, "what") {
			case 0:
				v := edit.NewPart(r, a, kind, unit.US)
				if after, ok = edit.AddPart(a, at, v); ok {
					left = append(left, v.Text)
				}
			case 1:
				if after, ok = edit.RemovePart(a, at); ok {
					left = slices.Delete(left, at, at+1)
				}
			case 2:
				after, _ = edit.MovePart(a, at, rapid.IntRange(-1, len(before)).Draw(t, "to"))
			default:
				v := edit.NewPart(r, a, kind, unit.US)
				if after, ok = edit.SwapPart(a, at, v); ok {
					left[at] = v.Text
				}
			}
			require.Equal(t, before, a.Texts()["line"])
			require.ElementsMatch(t, left, after.Texts()["line"])
			require.True(t, question.Whole(after) && len(left) <= calc.MostParts)
			a = after
		}
	})
}
