package presets_test

import (
	"fmt"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// page is one of the coat's own questions, with answers that do, around any one field.
type page struct {
	fields []presets.Field
	base   func(field string) presets.Sheet
	ask    func(c *presets.Catalogue, s presets.Sheet, sys unit.System) error
}

// answered is the first fault of a request, or what solving it says.
func answered[R, A any](r R, faults []*presets.FieldError, solve func(*R) (A, error)) error {
	if len(faults) > 0 {
		return faults[0]
	}
	_, err := solve(&r)
	return err
}

func pages() map[string]page {
	return map[string]page{
		"day": {presets.DayFields(), func(string) presets.Sheet {
			return sheetOf("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
		}, func(c *presets.Catalogue, s presets.Sheet, sys unit.System) error {
			r, faults := c.Day(s, sys)
			return answered(r, faults, calc.SolveDay)
		}},
		"thin": {presets.ThinFields(), func(field string) presets.Sheet {
			s := sheetOf("coat", "clear", "cup", "iso4", "seconds", "60", "paint", "20C", "sheet-seconds", "50")
			if field == "second-seconds" || field == "second-temp" {
				s["second-seconds"], s["second-temp"] = "50", "25C"
			}
			return s
		}, func(c *presets.Catalogue, s presets.Sheet, sys unit.System) error {
			r, faults := c.Thin(s, sys)
			return answered(r, faults, calc.SolveThin)
		}},
		"film": {presets.FilmFields(), func(field string) presets.Sheet {
			s := sheetOf("coat", "clear", "gun", "reduced-pressure", "fluid-rate", "180", "solids", "45")
			switch field {
			case "cup-volume", "cup-time":
				delete(s, "fluid-rate")
				s["cup-volume"], s["cup-time"] = "100mL", "30s"
			case "tip", "viscosity", "cup", "seconds":
				delete(s, "fluid-rate")
				s["tip"], s["cup"], s["seconds"] = "1.3mm", "iso4", "60"
			case "ratio":
				s["solids"] = "50 + 40"
			}
			return s
		}, func(c *presets.Catalogue, s presets.Sheet, sys unit.System) error {
			r, faults := c.Film(s, sys)
			return answered(r, faults, calc.SolveFilm)
		}},
		"mix": {presets.MixFields(), func(field string) presets.Sheet {
			s := sheetOf("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "solids", "45", "pot-life", "2h")
			if field == "ratio" {
				s["solids"] = "50 + 40"
			}
			return s
		}, func(c *presets.Catalogue, s presets.Sheet, sys unit.System) error {
			r, faults := c.Mix(s, sys)
			return answered(r, faults, calc.SolveMix)
		}},
	}
}

// with is what a page says to text in one of its fields. Of a cup the seconds, timed and
// of the sheet, are the fewest that it has an equation for.
func (p page) with(c *presets.Catalogue, sys unit.System, field, text string) error {
	s := p.base(field)
	if cup, err := coat.FindCup(text); err == nil && (field == presets.FieldCup || field == presets.FieldSheetCup) {
		s["cup"], s["seconds"] = presets.Typed(cup.ID), presets.Typed(fmt.Sprint(cup.Low))
		if s["sheet-seconds"] != "" {
			s["sheet-seconds"] = s["seconds"]
		}
	}
	s[field] = presets.Typed(text)
	return p.ask(c, s, sys)
}

// What can be picked is taken by every page that has its field, in either system.
func TestEverySuggestionIsTaken(t *testing.T) {
	c := shippedCatalogue(t)
	for name, p := range pages() {
		for _, sys := range bothSystems {
			for _, f := range p.fields {
				texts := []string{"", "2", "4", "60", "930", "1430", "0.5"}
				switch f.Name {
				case presets.FieldArea:
					texts = append(texts, "door + ", "12 + 3")
				case presets.FieldRatio:
					texts = append(texts, "2:1+", "4:1")
				}
				for _, text := range texts {
					for _, i := range c.Suggestions(f.Name, text, sys) {
						assert.NoError(t, p.with(c, sys, f.Name, i.ID), "%s %s %q", name, f.Name, i.ID)
					}
				}
			}
		}
	}
}

// Digits and a point, or an arrow, answer every field of every page; these are the ones
// that need the arrow.
func TestAKeypadAnswersEveryField(t *testing.T) {
	c := shippedCatalogue(t)
	keypad := []string{"1", "2", "4", "10", "20", "25", "45", "60", "100", "180", "1430", ".5", "1.3", "0.4"}
	var picked []string
	for name, p := range pages() {
		for _, sys := range bothSystems {
			for _, f := range p.fields {
				if c.Choices(f.Name) != nil {
					continue
				}
				takes := func(text string) bool { return p.with(c, sys, f.Name, text) == nil }
				if slices.ContainsFunc(keypad, takes) {
					continue
				}
				picked = append(picked, f.Name)
				items := append(c.Suggestions(f.Name, "", sys), c.Suggestions(f.Name, "60", sys)...)
				assert.True(t, slices.ContainsFunc(ids(items), takes), "%s: %s takes no digits and has nothing to pick", name, f.Name)
			}
		}
	}
	slices.Sort(picked)
	assert.Equal(t, []string{"cup", "price", "ratio", "sheet-cup"}, slices.Compact(picked))
}

// An arrow walks from any suggestion over all that stand beside it, and an item says what
// it is and what it rests on.
func walkable(t require.TestingT, c *presets.Catalogue, field, text string, sys unit.System) {
	for _, i := range c.Suggestions(field, text, sys) {
		all := c.Suggestions(field, i.ID, sys)
		list := ids(all)
		require.Contains(t, list, i.ID, "%s %q", field, text)
		require.Len(t, slices.Compact(slices.Sorted(slices.Values(list))), len(list), "%s %q has one twice", field, i.ID)
		for _, next := range all {
			require.Equal(t, list, ids(c.Suggestions(field, next.ID, sys)), "%s from %q to %q", field, i.ID, next.ID)
			require.NotEmpty(t, next.Name)
			require.NotEmpty(t, next.Standing.Basis)
		}
	}
}

func TestArrowsWalkOverEverySuggestion(t *testing.T) {
	c := shippedCatalogue(t)
	var fields []string
	for _, p := range pages() {
		for _, f := range p.fields {
			fields = append(fields, f.Name)
		}
	}
	slices.Sort(fields)
	fields = slices.Compact(fields)
	rapid.Check(t, func(t *rapid.T) {
		field := rapid.SampledFrom(fields).Draw(t, "field")
		text := rapid.StringMatching(`((hood|[1-9]{1,2} door|12|60/L) ?\+ ?)?([0-9]{0,4}|[0-9]{1,3}[.:/][0-9]{0,2}|[a-z]{1,3}[0-9]?|[0-9]{1,2} ?[a-z]{1,3})`).Draw(t, "text")
		walkable(t, c, field, text, rapid.SampledFrom(bothSystems).Draw(t, "system"))
	})
}

func TestWhatIsSuggested(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		field, text string
		sys         unit.System
		want        []string
	}{
		{"cup", "4", unit.US, []string{"ford4", "din4", "iso4", "zahn4"}},
		{"cup", "4", unit.Metric, []string{"din4", "iso4", "ford4", "zahn4"}},
		{"cup", "4 mm", unit.Metric, []string{"din4", "iso4"}},
		{"sheet-cup", "din", unit.US, []string{"din4"}},
		{"cup", "teacup", unit.US, nil},
		{"ratio", "3", unit.US, []string{"3:1", "3:1:1", "30%"}},
		{"ratio", "7:3", unit.US, nil},
		{"tip", "1.4mm", unit.US, []string{"1.4 mm"}},
		{"cup-size", "", unit.Metric, []string{"600 mL", "125 mL", "250 mL", "1 L"}},
		{"fan", "", unit.US, []string{"10 in"}},
		{"fan", "", unit.Metric, []string{"254 mm"}},
		{"overlap", "", unit.US, []string{"50%", "55%", "65%", "70%"}},
		{"area", "2", unit.US, []string{"2 hood", "2 door", "2 fender", "2 bumper", "2 roof", "2 whole"}},
		{"area", "hood + 2 d", unit.US, []string{"hood + 2 door"}},
		{"area", "+ ro", unit.US, []string{"roof"}},
		{"area", "51", unit.US, nil},
		{"area", "0", unit.US, nil},
		{"area", "1.2", unit.US, nil},
		{"area", "12ft2", unit.US, nil},
		{"price", "", unit.US, nil},
		{"price", "60", unit.US, []string{"60/gal", "60/qt", "60/L"}},
		{"price", "60", unit.Metric, []string{"60/L", "60/qt", "60/gal"}},
		{"price", "60/gal + $9.5", unit.Metric, []string{"60/gal + $9.5/L", "60/gal + $9.5/qt", "60/gal + $9.5/gal"}},
		{"price", "60/m", unit.US, nil},
		{"price", "-1", unit.US, nil},
		{"price", "cheap", unit.US, nil},
		{"started", "", unit.US, nil},
		{"started", "230", unit.US, []string{"2:30", "14:30"}},
		{"started", "1205", unit.Metric, []string{"0:05", "12:05"}},
		{"started", "noon", unit.US, nil},
		{"temp", "", unit.US, nil},
		{"pot-life", "", unit.US, nil},
	} {
		assert.Equal(t, x.want, ids(c.Suggestions(x.field, x.text, x.sys)), "%s %q", x.field, x.text)
	}
}

// Every cup that calc knows can be picked, the usual ones first.
func TestEveryCupCanBePicked(t *testing.T) {
	c := shippedCatalogue(t)
	for _, sys := range bothSystems {
		list := ids(c.Suggestions("cup", "", sys))
		var known []string
		for _, k := range coat.Cups() {
			known = append(known, k.ID)
		}
		assert.ElementsMatch(t, known, list)
		assert.Equal(t, []string{"ford4", "din4"}[sys], list[0])
	}
}

// The field keeps what any language reads; the person reads their own.
func TestSuggestionsAreNamedInTheLanguage(t *testing.T) {
	spanish, ok := words.For("es")
	require.True(t, ok)
	es, err := presets.LoadIn(spanish, words.Locale{}, nil, "")
	require.NoError(t, err)
	for _, x := range []struct {
		c                     *presets.Catalogue
		field, text, id, name string
		sys                   unit.System
	}{
		{shippedCatalogue(t), "area", "2", "2 door", "2 x door", unit.US},
		{es, "area", "2", "2 door", "2 x puerta", unit.US},
		{es, "area", "hood + ", "hood + fender", "salpicadera", unit.US},
		{es, "cup", "din", "din4", "DIN 53211 4 mm", unit.Metric},
		{es, "started", "230", "14:30", "2:30 pm", unit.US},
		{es, "started", "230", "14:30", "14:30", unit.Metric},
	} {
		items := x.c.Suggestions(x.field, x.text, x.sys)
		at := slices.Index(ids(items), x.id)
		require.GreaterOrEqual(t, at, 0, "%s %q: %v", x.field, x.text, items)
		assert.Equal(t, x.name, items[at].Name)
	}
	for _, p := range coat.Panels() {
		for _, w := range []*words.Words{words.English(), spanish} {
			assert.True(t, w.Has("area-"+p.ID), "%s has no name in %s", p.ID, w.Lang())
		}
	}
}

// A ratio typed without colons is what it is with them, or is refused.
func TestRatioWithoutColons(t *testing.T) {
	c := shippedCatalogue(t)
	parts := func(text string) []float64 {
		r, faults := c.Mix(sheetOf("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "ratio", text), unit.US)
		if len(faults) > 0 {
			require.Equal(t, "ratio", faults[0].Field)
			require.Equal(t, text, faults[0].Given)
			return nil
		}
		return r.Ratio.Value.Parts
	}
	for text, want := range map[string]string{
		"4 1 1": "4:1:1", "4/1/1": "4:1:1", "4.1.1": "4:1:1", " 2  1 ": "2:1", "4 / 1": "4:1", "2 1+10%": "2:1+10%", "2/1 + 10%": "2:1+10%", "100.50.30": "100:50:30", "2.5 1": "2.5:1",
	} {
		require.NotNil(t, parts(want))
		assert.Equal(t, parts(want), parts(text), text)
	}
	for _, text := range []string{"4.1", "411", "4", "10", "1 1/2", "4..1", "4.1.1.", "4 1:1", "10 5%", "/", "4//1"} {
		assert.Nil(t, parts(text), text)
	}
}

func TestAShopsOwnUsualAnswers(t *testing.T) {
	c, err := presets.Load([]byte("[usual.tip]\nvalues = [\"1.0 mm\", \"2.5mm\", \"1.0 mm\"]\n[coat.clear.mix]\nratio = \"5: 2\"\n[coat.sealer.lay]\noverlap = \"62.5%\"\n"), "shop.toml")
	require.NoError(t, err)
	tips := c.Suggestions("tip", "", unit.US)
	assert.Equal(t, []string{"1.0 mm", "2.5mm"}, ids(tips))
	assert.Equal(t, calc.OwnReadings, tips[0].Standing.Basis)
	assert.Equal(t, "5:2", ids(c.Suggestions("ratio", "", unit.US))[0])
	assert.Equal(t, []string{"50%", "55%", "62.5%", "65%", "70%"}, ids(c.Suggestions("overlap", "", unit.US)))
	for toml, says := range map[string]string{
		"[usual.film]\nvalues = [\"1 mil\"]\nbasis = \"estimate\"": "usual answers are of cup, cup-size, ratio or tip",
		"[usual.tip]\nvalues = []":                                 "give values",
		"[usual.tip]\nvalues = [\"1.3\"]":                          "type a number with in",
		"[usual.tip]\nvalues = [\"0 mm\"]":                         "must be above 0",
		"[usual.tip]\nvalues = [\" 1.3 mm\"]":                      "plain text",
		"[usual.ratio]\nvalues = [\"4:\\n1\"]":                     "plain text",
		"[usual.ratio]\nvalues = [\"4\"]":                          "give parts as",
		"[usual.cup]\nvalues = [\"4\"]":                            "give one of iso3",
		"[usual.cup]\nmetric = [\"Ford 4\"]":                       "give one of iso3",
		"[usual.cup-size]\nmetric = [\"6 L\"]":                     "60 mL to 5 L",
		"[usual.cup-size]\nvalues = [\"600\"]":                     "type a number with L",
		"[usual.cup-size]\nvalues = [\"600\", \"\"]":               "type a number with L",
	} {
		_, err := presets.Load([]byte(toml), "shop.toml")
		var fault *presets.FileError
		require.ErrorAs(t, err, &fault, toml)
		assert.Contains(t, fault.Why, says, toml)
		assert.Equal(t, 1, fault.Line)
	}
}

// FuzzSuggestions asks with anything at all in a field: what it gives can be walked over,
// and the pages that have the field take it where the values before it are good.
func FuzzSuggestions(f *testing.F) {
	for _, s := range []string{"", "4", "4 mm", "din", "zahn#2", "3:", "2", "2 d", "50", "1.3", "60", "$60/q", "60/L + 5", "hood +", "+", "930", "2:30pm", "12am", "\x00", "½", "00000000000000000000000000000001", "1e9"} {
		for i := range 10 {
			f.Add(i, s, i%2 == 0)
		}
	}
	c, err := presets.Load(nil, "")
	if err != nil {
		f.Fatal(err)
	}
	fields := []string{"cup", "sheet-cup", "ratio", "tip", "cup-size", "fan", "overlap", "area", "price", "started"}
	all := pages()
	f.Fuzz(func(t *testing.T, n int, text string, metric bool) {
		field := fields[(n%len(fields)+len(fields))%len(fields)]
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		walkable(t, c, field, text, sys)
		for _, i := range c.Suggestions(field, text, sys) {
			for name, p := range all {
				if !slices.ContainsFunc(p.fields, func(f presets.Field) bool { return f.Name == field }) {
					continue
				}
				// A price may be any number; a litre's has a bound.
				if err := p.with(c, sys, field, i.ID); err != nil && field != presets.FieldPrice && !slices.Contains([]byte(text), '+') {
					t.Fatalf("%s %s %q: %v", name, field, i.ID, err)
				}
			}
		}
	})
}
