package edit_test

import (
	"fmt"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// pages is the coat's own questions.
var pages = []*question.Question{question.Day, question.Thin, question.Film, question.Mix}

// around is answers that do, around any one field of a page.
func around(q *question.Question, field string) question.Texts {
	switch q {
	case question.Day:
		return questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
	case question.Thin:
		texts := questiontest.Texts("coat", "clear", "cup", "iso4", "seconds", "60", "paint", "20C", "sheet-seconds", "50")
		if field == "second-seconds" || field == "second-temp" {
			texts["second-seconds"], texts["second-temp"] = []string{"50"}, []string{"25C"}
		}
		return texts
	}
	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "solids", "45")
	switch {
	case field == "ratio":
		texts["solids"] = []string{"50 + 40"}
	case q == question.Film && (field == "cup-volume" || field == "cup-time"):
		texts["cup-volume"], texts["cup-time"] = []string{"100mL"}, []string{"30s"}
	case q == question.Film && slices.Contains([]string{"tip", "viscosity", "cup", "seconds"}, field):
		texts["tip"], texts["cup"], texts["seconds"] = []string{"1.3mm"}, []string{"iso4"}, []string{"60"}
	case q == question.Film:
		texts["fluid-rate"] = []string{"180"}
	}
	if q == question.Mix {
		texts["area"], texts["pot-life"] = []string{"2m2"}, []string{"2h"}
	}
	return texts
}

// asked is what a page says to text in one of its fields, nil where it has no such field. Of
// a cup the seconds, timed and of the sheet, are the fewest that it has an equation for.
func asked(r *question.Reader, q *question.Question, f *question.Field, text string, sys unit.System) error {
	row, ok := q.Field(f.Name)
	if !ok {
		return nil
	}
	texts := around(q, row.Name)
	if cup, err := coat.FindCup(text); err == nil && (f == question.Cup || f == question.SheetCup) {
		texts["cup"], texts["seconds"] = []string{cup.ID}, []string{fmt.Sprint(cup.Low)}
		if texts["sheet-seconds"] != nil {
			texts["sheet-seconds"] = texts["seconds"]
		}
	}
	texts[row.Name] = []string{text}
	_, err := answer.Ask(r, q, r.ReadAll(q, texts, sys), sys)
	return err
}

// What can be picked is taken by every page that has its field, in either system.
func TestEverySuggestionIsTaken(t *testing.T) {
	r := questiontest.Open(t)
	for _, q := range pages {
		for _, sys := range bothSystems {
			for _, f := range q.Fields {
				texts := []string{"", "2", "4", "60", "930", "1430", "0.5"}
				switch f.Field {
				case question.Area:
					texts = append(texts, "door + ", "12 + 3")
				case question.Ratio:
					texts = append(texts, "2:1+", "4:1")
				}
				for _, text := range texts {
					for _, i := range edit.Suggestions(r, f.Field, text, sys) {
						assert.NoError(t, asked(r, q, f.Field, i.ID, sys), "%s %s %q", q.Name, f.Name, i.ID)
					}
				}
			}
		}
	}
}

// Digits and a point, or an arrow, answer every field of every page; these are the ones
// that need the arrow.
func TestAKeypadAnswersEveryField(t *testing.T) {
	r := questiontest.Open(t)
	keypad := []string{"1", "2", "4", "10", "20", "25", "45", "60", "100", "180", "1430", ".5", "1.3", "0.4"}
	var picked []string
	for _, q := range pages {
		for _, sys := range bothSystems {
			for _, f := range q.Fields {
				if f.Listed() {
					continue
				}
				takes := func(text string) bool { return asked(r, q, f.Field, text, sys) == nil }
				if slices.ContainsFunc(keypad, takes) {
					continue
				}
				picked = append(picked, f.Name)
				items := append(edit.Suggestions(r, f.Field, "", sys), edit.Suggestions(r, f.Field, "60", sys)...)
				assert.True(t, slices.ContainsFunc(questiontest.IDs(items), takes), "%s: %s takes no digits and has nothing to pick", q.Name, f.Name)
			}
		}
	}
	slices.Sort(picked)
	assert.Equal(t, []string{"cup", "price", "ratio", "sheet-cup"}, slices.Compact(picked))
}

// An arrow walks from any suggestion over all that stand beside it, and an item says what
// it is and what it rests on.
func walkable(t require.TestingT, r *question.Reader, f *question.Field, text string, sys unit.System) {
	for _, i := range edit.Suggestions(r, f, text, sys) {
		all := edit.Suggestions(r, f, i.ID, sys)
		list := questiontest.IDs(all)
		require.Contains(t, list, i.ID, "%s %q", f.Name, text)
		require.Len(t, slices.Compact(slices.Sorted(slices.Values(list))), len(list), "%s %q has one twice", f.Name, i.ID)
		for _, next := range all {
			require.Equal(t, list, questiontest.IDs(edit.Suggestions(r, f, next.ID, sys)), "%s from %q to %q", f.Name, i.ID, next.ID)
			require.NotEmpty(t, next.Name)
			require.NotEmpty(t, next.Ground.Basis)
		}
	}
}

func TestArrowsWalkOverEverySuggestion(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		q := pages[rapid.IntRange(0, len(pages)-1).Draw(t, "page")]
		f := q.Fields[rapid.IntRange(0, len(q.Fields)-1).Draw(t, "field")].Field
		text := rapid.StringMatching(`((hood|[1-9]{1,2} door|12|60/L) ?\+ ?)?([0-9]{0,4}|[0-9]{1,3}[.:/][0-9]{0,2}|[a-z]{1,3}[0-9]?|[0-9]{1,2} ?[a-z]{1,3})`).Draw(t, "text")
		walkable(t, r, f, text, rapid.SampledFrom(bothSystems).Draw(t, "system"))
	})
}

func TestWhatIsSuggested(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		field *question.Field
		text  string
		sys   unit.System
		want  []string
	}{
		{question.Cup, "4", unit.US, []string{"ford4", "iso4", "din4", "zahn4"}},
		{question.Cup, "4", unit.Metric, []string{"iso4", "din4", "ford4", "zahn4"}},
		{question.Cup, "4 mm", unit.Metric, []string{"iso4", "din4"}},
		{question.SheetCup, "din", unit.US, []string{"din4"}},
		{question.Cup, "teacup", unit.US, nil},
		{question.Ratio, "3", unit.US, []string{"3:1", "3:1:1", "30%"}},
		{question.Ratio, "7:3", unit.US, nil},
		{question.Tip, "1.4mm", unit.US, []string{"1.4 mm"}},
		{question.CupSize, "", unit.Metric, []string{"600 mL", "125 mL", "250 mL", "1 L"}},
		{question.Fan, "", unit.US, []string{"10 in"}},
		{question.Fan, "", unit.Metric, []string{"254 mm"}},
		{question.Overlap, "", unit.US, []string{"50%", "55%", "65%", "70%"}},
		{question.Area, "2", unit.US, []string{"2 hood", "2 door", "2 fender", "2 bumper", "2 roof", "2 whole", "2 whole-suv"}},
		{question.Area, "hood + 2 d", unit.US, []string{"hood + 2 door"}},
		{question.Area, "+ ro", unit.US, []string{"roof"}},
		{question.Area, "51", unit.US, nil},
		{question.Area, "0", unit.US, nil},
		{question.Area, "1.2", unit.US, nil},
		{question.Area, "12ft2", unit.US, nil},
		{question.Price, "", unit.US, nil},
		{question.Price, "60", unit.US, []string{"60/gal", "60/qt", "60/L"}},
		{question.Price, "60", unit.Metric, []string{"60/L", "60/qt", "60/gal"}},
		{question.Price, "60/gal + $9.5", unit.Metric, []string{"60/gal + $9.5/L", "60/gal + $9.5/qt", "60/gal + $9.5/gal"}},
		{question.Price, "60/m", unit.US, nil},
		{question.Price, "-1", unit.US, nil},
		{question.Price, "cheap", unit.US, nil},
		{question.Started, "", unit.US, nil},
		{question.Started, "230", unit.US, []string{"2:30", "14:30"}},
		{question.Started, "1205", unit.Metric, []string{"0:05", "12:05"}},
		{question.Started, "noon", unit.US, nil},
		{question.Temp, "", unit.US, nil},
		{question.PotLife, "", unit.US, nil},
	} {
		assert.Equal(t, x.want, questiontest.IDs(edit.Suggestions(r, x.field, x.text, x.sys)), "%s %q", x.field.Name, x.text)
	}
}

// Every cup that calc knows can be picked, the usual ones first.
func TestEveryCupCanBePicked(t *testing.T) {
	r := questiontest.Open(t)
	for _, sys := range bothSystems {
		list := questiontest.IDs(edit.Suggestions(r, question.Cup, "", sys))
		var known []string
		for _, k := range coat.Cups() {
			known = append(known, k.ID)
		}
		assert.ElementsMatch(t, known, list)
		assert.Equal(t, []string{"zahn2", "iso4"}[sys], list[0])
	}
}

// The field keeps what any language reads; the person reads their own.
func TestSuggestionsAreNamedInTheLanguage(t *testing.T) {
	spanish, ok := words.For("es")
	require.True(t, ok)
	c, err := catalogue.LoadIn(spanish, words.Locale{}, nil, "")
	require.NoError(t, err)
	es, err := question.New(c)
	require.NoError(t, err)
	for _, x := range []struct {
		r        *question.Reader
		field    *question.Field
		text     string
		id, name string
		sys      unit.System
	}{
		{questiontest.Open(t), question.Area, "2", "2 door", "2 x door", unit.US},
		{es, question.Area, "2", "2 door", "2 x puerta", unit.US},
		{es, question.Area, "hood + ", "hood + fender", "salpicadera", unit.US},
		{es, question.Cup, "din", "din4", "DIN 53211 4 mm", unit.Metric},
		{es, question.Started, "230", "14:30", "2:30 pm", unit.US},
		{es, question.Started, "230", "14:30", "14:30", unit.Metric},
	} {
		items := edit.Suggestions(x.r, x.field, x.text, x.sys)
		at := slices.Index(questiontest.IDs(items), x.id)
		require.GreaterOrEqual(t, at, 0, "%s %q: %v", x.field.Name, x.text, items)
		assert.Equal(t, x.name, items[at].Name)
	}
	for _, p := range coat.Panels() {
		for _, w := range []*words.Words{words.English(), spanish} {
			assert.True(t, w.Has("area-"+p.ID), "%s has no name in %s", p.ID, w.Lang())
		}
	}
}

func TestAShopsOwnUsualAnswers(t *testing.T) {
	r := questiontest.Shop(t, "[usual.tip]\nvalues = [\"1.0 mm\", \"2.5mm\", \"1.0 mm\"]\n[coat.clear.mix]\nratio = \"5: 2\"\n[coat.sealer.overlap]\nusual = \"62.5%\"\nhigh = \"65%\"\n")
	tips := edit.Suggestions(r, question.Tip, "", unit.US)
	assert.Equal(t, []string{"1.0 mm", "2.5mm"}, questiontest.IDs(tips))
	assert.Equal(t, calc.OwnReadings, tips[0].Ground.Basis)
	assert.Equal(t, "5:2", questiontest.IDs(edit.Suggestions(r, question.Ratio, "", unit.US))[0])
	assert.Equal(t, []string{"50%", "55%", "62.5%", "65%", "70%"}, questiontest.IDs(edit.Suggestions(r, question.Overlap, "", unit.US)))
}
