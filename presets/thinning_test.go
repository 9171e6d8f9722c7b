package presets_test

import (
	"errors"
	"fmt"
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

func thinOf(t testing.TB, c *presets.Catalogue, sys unit.System, pairs ...string) (calc.ThinRequest, calc.ThinAnswer) {
	t.Helper()
	r, faults := c.Thin(sheetOf(pairs...), sys)
	require.Empty(t, faults)
	a, err := calc.SolveThin(&r)
	require.NoError(t, err)
	return r, a
}

// What painters' tables give in DIN 53211 seconds at 20 C, from memory or as a habit of
// the trade: none of it is published, and none may say so.
func TestShippedSecondsAreUnpublished(t *testing.T) {
	c := shippedCatalogue(t)
	want := map[string][3]float64{
		"epoxy-primer": {16, 20, 25}, "surfacer": {20, 26, 35}, "sealer": {15, 17, 20}, "solvent-base": {14, 16, 20},
		"metallic-base": {14, 16, 19}, "waterborne-base": {18, 24, 30}, "single-stage": {16, 18, 22}, "clear": {15, 18, 21},
	}
	for _, x := range c.Choices(presets.FieldCoat) {
		r, _ := thinOf(t, c, unit.US, "coat", x.ID, "cup", "din4", "seconds", "18", "paint", "20C")
		s := r.Sheet.Value
		assert.Equal(t, want[x.ID], [3]float64{s.Low, s.Aim, s.High}, x.ID)
		assert.Equal(t, "din4", s.Cup.ID)
		assert.InDelta(t, 20, s.At.C(), 1e-9)
		assert.Contains(t, []calc.Basis{calc.CommonPractice, calc.Estimate}, r.Sheet.Basis, x.ID)
		assert.Equal(t, calc.Estimate, r.MostThinner.Basis, x.ID)
		assert.NotEmpty(t, r.Sheet.Source, x.ID)
		assert.Greater(t, r.MostThinner.Value, 0.0, x.ID)
		delete(want, x.ID)
	}
	assert.Empty(t, want)
}

func TestTheSheetAsTypedReplacesTheCatalogues(t *testing.T) {
	c := shippedCatalogue(t)
	base := []string{"coat", "clear", "cup", "iso4", "seconds", "45", "paint", "75F"}
	for text, want := range map[string][2]float64{"40-50": {40, 50}, "40 - 50 s": {40, 50}, "40 to 50": {40, 50}, "40\u201350": {40, 50}, "45": {44, 46}, "45,5s": {44.5, 46.5}} {
		r, _ := thinOf(t, c, unit.US, append(base, "sheet-seconds", text, "max-thinner", "5", "warm-limit", "80")...)
		s := r.Sheet.Value
		assert.InDelta(t, want[0], s.Low, 1e-9, text)
		assert.InDelta(t, want[1], s.High, 1e-9, text)
		assert.InDelta(t, (want[0]+want[1])/2, s.Aim, 1e-9, text)
		assert.Equal(t, "iso4", s.Cup.ID, "the cup it was timed in")
		assert.Equal(t, calc.SheetTemp, s.At)
		assert.InDelta(t, .05, r.MostThinner.Value, 1e-12)
		assert.InDelta(t, 80, r.Warmest.Value.F(), 1e-9)
		for _, st := range []calc.Ground{r.Sheet.Ground, r.MostThinner.Ground, r.Warmest.Ground} {
			assert.Equal(t, calc.Sheet, st.Basis)
		}
	}
	r, _ := thinOf(t, c, unit.Metric, append(base, "sheet-seconds", "16-18", "sheet-cup", "DIN 53211", "sheet-temp", "23")...)
	assert.Equal(t, "din4", r.Sheet.Value.Cup.ID)
	assert.InDelta(t, 23, r.Sheet.Value.At.C(), 1e-9)
	r, _ = thinOf(t, c, unit.Metric, "coat", "clear", "cup", "iso4", "seconds", "45", "temp", "24", "second-seconds", "55", "second-temp", "18")
	assert.InDelta(t, 24, r.Reading.At.C(), 1e-9, "the booth's where the paint's own is left out")
	assert.InDelta(t, 25, r.Warmest.Value.C(), 1e-9)
	assert.True(t, r.HasSecond)
	assert.Equal(t, "iso4", r.Second.Cup.ID)
}

func TestThinFaults(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct{ field, typed, says string }{
		{"coat", "varnish", "choose epoxy-primer"},
		{"cup", "4mm", "which one: iso4 (ISO 2431 4 mm) or din4 (DIN 53211 4 mm)?"},
		{"cup", "4 mm cup", "din4"},
		{"cup", "bucket", "choose iso3, iso4"},
		{"cup", "", "choose iso3, iso4"},
		{"seconds", "", "type a number"},
		{"seconds", "fast", "s, min or h"},
		{"seconds", "5", "use the"},
		{"seconds", "0", "1 to 1000"},
		{"paint", "", "give the paint's own temperature"},
		{"paint", "200F", "outside"},
		{"sheet-seconds", "18-16", "lower figure first"},
		{"sheet-seconds", "-5", "lower figure first"},
		{"sheet-seconds", "0", "lower figure first"},
		{"sheet-seconds", "16-17-18", "lower figure first"},
		{"sheet-seconds", "3", "use the"},
		{"sheet-cup", "4mm", "which one"},
		{"sheet-temp", "hot", "F or C"},
		{"second-temp", "80F", ""},
		{"max-thinner", "150", "outside 0"},
		{"max-thinner", "a drop", "percent"},
		{"warm-limit", "150F", "outside"},
	} {
		s := sheetOf("coat", "clear", "cup", "din4", "seconds", "18", "paint", "70F", "sheet-seconds", "16-18")
		s[x.field] = presets.Typed(x.typed)
		r, faults := c.Thin(s, unit.US)
		var fault *presets.FieldError
		if len(faults) > 0 {
			fault = faults[0]
		} else {
			_, err := calc.SolveThin(&r)
			require.ErrorAs(t, c.Refused(err, unit.US, s.Field), &fault, "%s %q", x.field, x.typed)
		}
		if x.field == "second-temp" {
			assert.Equal(t, "second-seconds", fault.Field, "the one goes with the other")
			continue
		}
		assert.Equal(t, x.field, fault.Field, "%q", x.typed)
		assert.Contains(t, fault.Want, x.says)
	}
	_, faults := c.Thin(sheetOf("coat", "clear", "cup", "din4", "seconds", "18", "paint", "70F", "sheet-temp", "20C"), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "sheet-seconds", faults[0].Field)
	assert.Contains(t, faults[0].Want, "needed beside sheet-temp")
}

// A shop's own coat without seconds or thinner asks for them; one with its own is taken
// at its word.
func TestShopsOwnSecondsAndThinner(t *testing.T) {
	const own = "[coat.mine]\nname = \"mine\"\nworking.reduced-pressure = { start = \"26psi\", low = \"23psi\", high = \"30psi\" }\n"
	c, err := presets.Load([]byte(own), "shop.toml")
	require.NoError(t, err)
	_, faults := c.Thin(sheetOf("coat", "mine", "cup", "din4", "seconds", "18", "paint", "70F"), unit.US)
	require.Len(t, faults, 2)
	assert.Equal(t, "sheet-seconds", faults[0].Field)
	assert.Equal(t, "max-thinner", faults[1].Field)

	c, err = presets.Load([]byte("[coat.clear.cup]\ncup = \"ford4\"\nlow = \"18s\"\naim = \"19s\"\nhigh = \"20s\"\n[coat.clear.thinner]\nmost = \"3%\"\nsource = \"invented sheet\"\n"), "shop.toml")
	require.NoError(t, err)
	r, _ := thinOf(t, c, unit.US, "coat", "clear", "cup", "ford4", "seconds", "19", "paint", "70F")
	assert.Equal(t, "ford4", r.Sheet.Value.Cup.ID)
	assert.Equal(t, calc.OwnReadings, r.Sheet.Basis)
	assert.InDelta(t, .03, r.MostThinner.Value, 1e-12)
	assert.Equal(t, "invented sheet", r.MostThinner.Source)
	assert.Equal(t, calc.CommonPractice, c.Choices(presets.FieldCoat)[7].Standing.Basis, "its pressures are still the catalogue's")
}

func TestShopFaultsOfCupAndThinner(t *testing.T) {
	for name, x := range map[string]struct {
		toml string
		line int
		says string
	}{
		"which cup":       {"[coat.clear.cup]\ncup = \"4mm\"\n", 1, "iso4 or din4"},
		"no such cup":     {"[coat.clear.cup]\ncup = \"mug\"\n", 1, "give one of iso3"},
		"out of order":    {"[coat.clear.cup]\nlow = \"30s\"\n", 1, "in that order"},
		"past sense":      {"[coat.clear.cup]\nlow = \"2s\"\n", 1, "use the"},
		"bare seconds":    {"[coat.clear.cup]\nlow = 16\n", 2, "time \"16\""},
		"list of seconds": {"[coat.clear.cup]\nlow = [16]\n", 2, "a time in quotes"},
		"too hot":         {"[coat.clear.cup]\ntemperature = \"90C\"\n", 1, "14 to 140 F"},
		"no temperature":  {"[coat.clear.cup]\ntemperature = [20]\n", 2, "a temperature in quotes"},
		"too much":        {"[coat.clear.thinner]\nmost = \"120%\"\n", 1, "0 to 100%"},
		"unknown key":     {"[coat.clear.thinner]\nleast = \"1%\"\n", 2, "keys here are basis, source or most"},
		"unknown basis":   {"[coat.clear.thinner]\nbasis = \"hunch\"\n", 1, "basis \"hunch\""},
	} {
		_, err := presets.Load([]byte(x.toml), "shop.toml")
		var f *presets.FileError
		require.True(t, errors.As(err, &f), "%s: %v", name, err)
		assert.Equal(t, x.line, f.Line, name)
		assert.Contains(t, f.Why, x.says, name)
	}
}

func TestEverySentenceOfThinningIsWhole(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		d := drawer{t}
		cup := rapid.SampledFrom(coat.Cups())
		s := presets.Sheet{
			"coat": presets.Typed(rapid.SampledFrom(ids(c.Choices(presets.FieldCoat))).Draw(t, "coat")),
			"cup":  presets.Typed(cup.Draw(t, "cup").ID), "seconds": d.number("seconds", "%.1f", 15, 100), "paint": d.number("paint", "%.1fC", 5, 38),
			"max-thinner": d.maybe("thinner", "%.1f", 0, 30), "warm-limit": d.maybe("limit", "%.1fC", 10, 40),
		}
		if rapid.Bool().Draw(t, "with a sheet") {
			low := rapid.Float64Range(15, 60).Draw(t, "low")
			s["sheet-seconds"] = presets.Typed(fmt.Sprintf("%.1f-%.1f", low, 1.2*low))
			if rapid.Bool().Draw(t, "in its own cup") {
				s["sheet-cup"] = presets.Typed(cup.Draw(t, "sheet's cup").ID)
			}
		}
		r, faults := c.Thin(s, unit.US)
		require.Empty(t, faults)
		a, err := calc.SolveThin(&r)
		if err != nil {
			var fault *presets.FieldError
			require.ErrorAs(t, c.Refused(err, unit.US, s.Field), &fault)
			return
		}
		whole(t, w, map[string]bool{}, a.Reasons, a.Cautions)
		sounds(t, w, a.Sentence(&r), a.Figures(&r))
	})
}

// The answers that bring up each sentence of the thinning at least once.
func TestWhatBringsUpEachSentenceOfThinning(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	mix := func(cup, seconds, paint string, more ...string) []string {
		return append([]string{"coat", "clear", "cup", cup, "seconds", seconds, "paint", paint, "sheet-seconds", "16-18", "sheet-cup", "din4"}, more...)
	}
	for _, x := range []struct {
		pairs []string
		has   []string
	}{
		{mix("din4", "17", "20C"), []string{"advice-as-it-is", "thin-reading-about", "thin-wanted", "isocyanate", "safety"}},
		{mix("zahn2", "28", "20C"), []string{"advice-as-it-is", "thin-reading", "thin-wanted-cup", "thin-zahn"}},
		{mix("din4", "23", "10C"), []string{"advice-warm-only-cold", "thin-corrected-band", "thin-warm", "thin-warmest", "thin-warming"}},
		{mix("din4", "19", "20C"), []string{"advice-warm-or-thin", "thin-thinner", "thin-most"}},
		{mix("din4", "19", "20C", "max-thinner", "1"), []string{"advice-warm"}},
		{mix("din4", "21", "62F"), []string{"advice-warm-or-less"}},
		{mix("din4", "22", "20C"), []string{"advice-warm-and-thin"}},
		{mix("din4", "19", "80F"), []string{"advice-thin"}},
		{mix("din4", "45", "20C"), []string{"advice-cannot", "thin-cannot"}},
		{mix("din4", "14", "18C"), []string{"advice-add-unthinned", "thin-over"}},
		{mix("din4", "14", "32C"), []string{"thin-runny"}},
		{mix("din4", "17", "32C"), []string{"thin-only-warm"}},
		{mix("din4", "21", "60F", "second-seconds", "17", "second-temp", "75F"), []string{"thin-corrected"}},
		{[]string{"coat", "waterborne-base", "cup", "iso4", "seconds", "70", "paint", "20C"}, []string{"thin-stirred"}},
	} {
		r, a := thinOf(t, c, unit.US, x.pairs...)
		seen := map[string]bool{a.Sentence(&r): true}
		whole(t, w, seen, a.Reasons, a.Cautions)
		for _, id := range x.has {
			assert.True(t, seen[id], "%s for %v, which brings %v", id, x.pairs, seen)
		}
	}
}

// FuzzThin types anything at all into a field of the thinning: it is refused by name, or
// answered in finite figures.
func FuzzThin(f *testing.F) {
	for _, s := range []string{"", "18", "18s", "4mm", "din4", "iso 4", "16-18", "17", "1e9", "-1", "nan", "999999999", "0", "10%", "0,5", "70F", "24C", "\x00", "½", "clear", "waterborne-base"} {
		for i := range len(presets.ThinFields()) {
			f.Add(i, s, i%2 == 0)
		}
	}
	fuzzSheet(f, presets.ThinFields(), sheetOf("coat", "clear", "cup", "din4", "seconds", "20", "paint", "62F", "sheet-seconds", "16-18", "second-seconds", "17", "second-temp", "75F"),
		func(c *presets.Catalogue, s presets.Sheet, sys unit.System) (any, error) {
			r, faults := c.Thin(s, sys)
			if len(faults) > 0 {
				return nil, faults[0]
			}
			a, err := calc.SolveThin(&r)
			return a, c.Refused(err, unit.US, s.Field)
		})
}
