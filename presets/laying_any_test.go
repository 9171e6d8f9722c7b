package presets_test

import (
	"errors"
	"reflect"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is just inside each range is taken and worked.
func TestEdgesOfWhatCanBeTyped(t *testing.T) {
	c := shippedCatalogue(t)
	for field, edges := range map[string][]string{
		"solids": {"1", "100"}, "film": {"2um", "2000um"}, "coats": {"1", "20"}, "before": {"0", "10000um"}, "thinner": {"0", "200"},
		"transfer": {"10", "90"}, "pressure": {"1psi", "150psi"}, "distance": {"2in", "30in"}, "fluid-rate": {"5", "1500"}, "fan": {"10mm", "600mm"},
		"overlap": {"0", "90"}, "gun-speed": {"0.05m/s", "3m/s"}, "height": {"0.01m", "10m"}, "wet": {"1um", "2000um,2000um"},
	} {
		for _, e := range edges {
			s := sheetOf("coat", "clear", "gun", "reduced-pressure", "fluid-rate", "180", "solids", "45")
			s[field] = presets.Typed(e)
			r, faults := c.Film(s, unit.US)
			require.Empty(t, faults, "%s %s", field, e)
			_, err := calc.SolveFilm(&r)
			assert.NoError(t, err, "%s %s", field, e)
		}
	}
	for field, edges := range map[string][]string{
		"area": {"0.001m2", "1000m2"}, "cup-size": {"60mL", "5L"}, "loss": {"0", "5L"}, "temp": {"5C", "40C"}, "pot-life": {"60s", "168h"}, "price": {"0/L", "100000/L"},
		"distance": {"2in", "30in"}, "transfer": {"10", "90"},
	} {
		for _, e := range edges {
			s := sheetOf("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "pot-life", "2h", "fluid-rate", "180")
			s[field] = presets.Typed(e)
			r, faults := c.Mix(s, unit.US)
			require.Empty(t, faults, "%s %s", field, e)
			_, err := calc.SolveMix(&r)
			assert.NoError(t, err, "%s %s", field, e)
		}
	}
}

// Whatever sensible is typed, each reason and caution is a whole sentence that says
// what it rests on, in both systems of units.
func TestEverySentenceOfFilmAndMixIsWhole(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	var coats, guns []string
	for _, x := range c.Choices(presets.FieldCoat) {
		coats = append(coats, x.ID)
	}
	for _, x := range c.Choices(presets.FieldGun) {
		guns = append(guns, x.ID)
	}
	optional := map[string][]string{
		"film": {"1.5mil", "2.4mil", "4mil"}, "coats": {"1", "4"}, "solids": {"40"}, "before": {"4mil", "9mil", "14mil"}, "film-limit": {"3mil"},
		"transfer": {"50"}, "pressure": {"22psi"}, "distance": {"9in", "30in"}, "fan": {"8in"}, "overlap": {"40"}, "gun-speed": {"0.5ft/s", "3ft/s"},
		"height": {"3ft"}, "wet": {"3mil", "3mil,4mil + 2mil"}, "fluid-rate": {"20", "180", "1400"}, "ratio": {"4:1:1"}, "price": {"60/L"},
		"cup-size": {"1L"}, "loss": {"100mL"}, "pot-life": {"5min", "4h"}, "area": {"4m2", "hood", "900ft2 + 2 door"},
	}
	seen := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		s := sheetOf("coat", rapid.SampledFrom(coats).Draw(t, "coat"), "gun", rapid.SampledFrom(guns).Draw(t, "gun"), "area", "2 hood", "fluid-rate", "180")
		for _, f := range append(presets.FilmFields(), presets.MixFields()...) {
			if choices := optional[f.Name]; choices != nil && rapid.Bool().Draw(t, "with "+f.Name) {
				s[f.Name] = presets.Typed(rapid.SampledFrom(choices).Draw(t, f.Name))
			}
		}
		var reasons []calc.Reason
		var cautions []calc.Caution
		r, faults := c.Film(s, unit.US)
		require.Empty(t, faults)
		film, err := calc.SolveFilm(&r)
		require.NoError(t, err)
		m, faults := c.Mix(s, unit.US)
		require.Empty(t, faults)
		mix, err := calc.SolveMix(&m)
		require.NoError(t, err)
		reasons = append(film.Reasons, mix.Reasons...)
		cautions = append(film.Cautions, mix.Cautions...)
		for _, x := range reasons {
			seen[x.ID] = true
			sounds(t, w, x.ID, x.Figures)
			assert.NotEmpty(t, x.About, x.ID)
			assert.NotEmpty(t, w.Standing(x.Ground), x.ID)
		}
		for _, x := range cautions {
			seen[x.ID] = true
			sounds(t, w, x.ID, x.Figures)
		}
		for _, all := range [][]calc.Caution{film.Cautions, mix.Cautions} {
			require.NotEmpty(t, all)
			assert.Equal(t, "safety", all[len(all)-1].ID)
		}
	})
	for _, id := range []string{"film-wants", "film-coats", "transfer-class", "transfer-typed", "film-speed", "film-speed-between", "film-passes", "film-comb", "mix-volume", "wrong-choked-cost", "film-whole-over"} {
		assert.True(t, seen[id], "%s never came up", id)
	}
}

// FuzzLaying types anything at all into a field of film and mix: it is refused by name,
// or answered in finite figures.
func FuzzLaying(f *testing.F) {
	for _, s := range []string{"", "2.2mil", "1e9", "-1", "999999999", "nan", "3/8", "2 door", "4:1:1", "2:1+10%", "60/L", "$", "+", "4mil,5mil", "1.2ft/s", "18", "12,5", "\x00", "½", "4 1 1", "4/1/1", "4.1.1", "1 1/2", "2 1+10%", "2 x door", "60/qt"} {
		for i := range 24 {
			f.Add(i, s, i%2 == 0)
		}
	}
	c, err := presets.Load(nil, "")
	if err != nil {
		f.Fatal(err)
	}
	fields := append(presets.FilmFields(), presets.MixFields()...)
	f.Fuzz(func(t *testing.T, n int, text string, metric bool) {
		field := fields[(n%len(fields)+len(fields))%len(fields)].Name
		s := sheetOf("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "solids", "45", "ratio", "4:1", "fluid-rate", "180", "pot-life", "2h")
		switch field { // these give way to a rate
		case "cup-volume", "cup-time", "tip", "viscosity", "cup", "seconds":
			delete(s, "fluid-rate")
			s["cup-volume"], s["cup-time"] = "100mL", "30s"
			if field[0] != 'c' || field == "cup" {
				delete(s, "cup-volume")
				delete(s, "cup-time")
				s["tip"], s["cup"], s["seconds"] = "1.3", "din4", "20"
			}
		}
		s[field] = presets.Typed(text)
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		refused := func(err error) {
			var fault *presets.FieldError
			if !errors.As(err, &fault) || fault.Field == "" || fault.Want == "" {
				t.Fatalf("%s %q: %v", field, text, err)
			}
		}
		if r, faults := c.Film(s, sys); len(faults) > 0 {
			refused(faults[0])
		} else if a, err := calc.SolveFilm(&r); err != nil {
			refused(c.Refused(err, unit.US, s.Field))
		} else if bad := unsound(reflect.ValueOf(a), "film"); bad != "" {
			t.Fatalf("%s %q: %s", field, text, bad)
		}
		if r, faults := c.Mix(s, sys); len(faults) > 0 {
			refused(faults[0])
		} else if a, err := calc.SolveMix(&r); err != nil {
			refused(c.Refused(err, unit.US, s.Field))
		} else if bad := unsound(reflect.ValueOf(a), "mix"); bad != "" {
			t.Fatalf("%s %q: %s", field, text, bad)
		}
	})
}
