package question_test

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What painters' tables give, as ISO 4 mm seconds at 20 C, from memory or as a habit of the
// trade: none of it is published, and none may say so. In DIN 53211 seconds they are 14 to 35,
// most of them under the 25 that the cup is published from.
func TestShippedSecondsAreUnpublished(t *testing.T) {
	r := questiontest.Open(t)
	want := map[string][3]float64{
		"epoxy-primer": {37, 53, 72}, "surfacer": {53, 76, 100}, "sealer": {33, 41, 53}, "solvent-base": {30, 37, 53},
		"metallic-base": {30, 37, 49}, "waterborne-base": {45, 68, 90}, "single-stage": {37, 45, 61}, "clear": {33, 45, 57},
		"pearl-mid": {30, 37, 49}, "matte-clear": {33, 45, 57}, "high-solids-clear": {33, 45, 57},
	}
	for _, x := range r.Choices(question.Coat) {
		if !slices.Contains(thinned(r), x.ID) {
			continue
		}
		q, _ := thin(t, r, unit.US, questiontest.Texts("coat", x.ID, "cup", "din4", "seconds", "18", "paint", "20C"))
		s := q.Sheet.Value
		assert.Equal(t, want[x.ID], [3]float64{s.Low, s.Aim, s.High}, x.ID)
		assert.Equal(t, "iso4", s.Cup.ID)
		assert.InDelta(t, 20, s.At.C(), 1e-9)
		assert.Contains(t, []calc.Basis{calc.CommonPractice, calc.Estimate}, q.Sheet.Basis, x.ID)
		assert.Equal(t, calc.Estimate, q.MostThinner.Basis, x.ID)
		assert.NotEmpty(t, q.Sheet.Source, x.ID)
		assert.Greater(t, q.MostThinner.Value, 0.0, x.ID)
		delete(want, x.ID)
	}
	assert.Empty(t, want)
}

// Where no cup is named, seconds are of a Zahn 2 or, in metric units, of an ISO 4 mm; every
// shipped coat's range lies in the seconds that each is published for.
func TestTheCupThatIsTaken(t *testing.T) {
	r := questiontest.Open(t)
	for sys, id := range map[unit.System]string{unit.US: "zahn2", unit.Metric: "iso4"} {
		for _, x := range r.Choices(question.Coat) {
			if !slices.Contains(thinned(r), x.ID) {
				continue
			}
			q, a := thin(t, r, sys, questiontest.Texts("coat", x.ID, "seconds", "45", "paint", "20C"))
			assert.Equal(t, id, q.Reading.Cup.ID)
			assert.False(t, a.About, "%s in %s", x.ID, id)
			assert.GreaterOrEqual(t, a.Wanted.Low.Seconds, q.Reading.Cup.Low, x.ID)
			assert.LessOrEqual(t, a.Wanted.High.Seconds, q.Reading.Cup.High, x.ID)
		}
	}
	for _, named := range []string{"din4", "ford4"} {
		q, _ := thin(t, r, unit.US, questiontest.Texts("coat", "clear", "cup", named, "seconds", "20", "paint", "20C"))
		assert.Equal(t, named, q.Reading.Cup.ID)
	}
}

func TestTheSheetAsTypedReplacesTheCatalogues(t *testing.T) {
	r := questiontest.Open(t)
	base := questiontest.Texts("coat", "clear", "cup", "iso4", "seconds", "45", "paint", "75F")
	for text, want := range map[string][2]float64{"40-50": {40, 50}, "40 - 50 s": {40, 50}, "40 to 50": {40, 50}, "40\u201350": {40, 50}, "45": {44, 46}, "45,5s": {44.5, 46.5}} {
		q, _ := thin(t, r, unit.US, questiontest.With(questiontest.With(questiontest.With(base, "sheet-seconds", text), "max-thinner", "5"), "warm-limit", "80"))
		s := q.Sheet.Value
		assert.InDelta(t, want[0], s.Low, 1e-9, text)
		assert.InDelta(t, want[1], s.High, 1e-9, text)
		assert.InDelta(t, (want[0]+want[1])/2, s.Aim, 1e-9, text)
		assert.Equal(t, "iso4", s.Cup.ID, "the cup it was timed in")
		assert.Equal(t, calc.SheetTemp, s.At)
		assert.InDelta(t, .05, q.MostThinner.Value, 1e-12)
		assert.InDelta(t, 80, q.Warmest.Value.F(), 1e-9)
		for _, st := range []calc.Ground{q.Sheet.Ground, q.MostThinner.Ground, q.Warmest.Ground} {
			assert.Equal(t, calc.Sheet, st.Basis)
		}
	}
	q, _ := thin(t, r, unit.Metric, questiontest.With(questiontest.With(questiontest.With(base, "sheet-seconds", "16-18"), "sheet-cup", "DIN 53211"), "sheet-temp", "23"))
	assert.Equal(t, "din4", q.Sheet.Value.Cup.ID)
	assert.InDelta(t, 23, q.Sheet.Value.At.C(), 1e-9)
	q, _ = thin(t, r, unit.Metric, questiontest.Texts("coat", "clear", "cup", "iso4", "seconds", "45", "temp", "24", "second-seconds", "55", "second-temp", "18"))
	assert.InDelta(t, 24, q.Reading.At.C(), 1e-9, "the booth's where the paint's own is left out")
	assert.InDelta(t, 25, q.Warmest.Value.C(), 1e-9)
	assert.True(t, q.HasSecond)
	assert.Equal(t, "iso4", q.Second.Cup.ID)
}

func TestThinFaults(t *testing.T) {
	r := questiontest.Open(t)
	base := questiontest.Texts("coat", "clear", "cup", "din4", "seconds", "18", "paint", "70F", "sheet-seconds", "16-18")
	for _, x := range []struct{ field, typed, says string }{
		{"coat", "varnish", "choose epoxy-primer"},
		{"cup", "4mm", "which one: iso4 (ISO 2431 4 mm) or din4 (DIN 53211 4 mm)?"},
		{"cup", "4 mm cup", "din4"},
		{"cup", "bucket", "choose iso3, iso4"},
		{"seconds", "", "type a number"},
		{"seconds", "fast", "s, min or h"},
		{"seconds", "5", "use the"},
		{"seconds", "0", "1 to 1000"},
		{"paint", "", "give the paint's own temperature"},
		{"paint", "200F", "outside"},
		{"sheet-seconds", "18-16", "lower figure first"},
		{"sheet-seconds", "-5", "lower figure first"},
		{"sheet-seconds", "0", "lower figure first"},
		{"sheet-seconds", "16-0", "lower figure first"},
		{"sheet-seconds", "16-17-18", "lower figure first"},
		{"sheet-seconds", "3", "use the"},
		{"sheet-cup", "4mm", "which one"},
		{"sheet-temp", "hot", "F or C"},
		{"second-temp", "80F", ""},
		{"max-thinner", "150", "outside 0"},
		{"max-thinner", "a drop", "percent"},
		{"warm-limit", "150F", "outside"},
	} {
		_, err := ask(r, question.Thin, questiontest.With(base, x.field, x.typed), unit.US)
		var fault *question.Fault
		require.ErrorAs(t, err, &fault, "%s %q", x.field, x.typed)
		if x.field == "second-temp" {
			assert.Equal(t, "second-seconds", fault.Field, "the one goes with the other")
			continue
		}
		assert.Equal(t, x.field, fault.Field, "%q", x.typed)
		assert.Contains(t, fault.Want(), x.says)
	}
	_, faults := r.Thin(r.ReadAll(question.Thin, questiontest.Texts("coat", "clear", "cup", "din4", "seconds", "18", "paint", "70F", "sheet-temp", "20C"), unit.US), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "sheet-seconds", faults[0].Field)
	assert.Contains(t, faults[0].Want(), "needed beside sheet-temp")
}

// A shop's own coat without seconds or thinner asks for them; one with its own is taken
// at its word.
func TestShopsOwnSecondsAndThinner(t *testing.T) {
	r := questiontest.Shop(t, "[coat.mine]\nname = \"mine\"\nworking.reduced-pressure = { start = \"26psi\", low = \"23psi\", high = \"30psi\" }\n")
	_, faults := r.Thin(r.ReadAll(question.Thin, questiontest.Texts("coat", "mine", "cup", "din4", "seconds", "18", "paint", "70F"), unit.US), unit.US)
	require.Len(t, faults, 2)
	assert.Equal(t, "sheet-seconds", faults[0].Field)
	assert.Equal(t, "max-thinner", faults[1].Field)

	r = questiontest.Shop(t, "[coat.clear.cup]\ncup = \"ford4\"\nlow = \"18s\"\naim = \"19s\"\nhigh = \"20s\"\n[coat.clear.thinner]\nmost = \"3%\"\nsource = \"invented sheet\"\n")
	q, _ := thin(t, r, unit.US, questiontest.Texts("coat", "clear", "cup", "ford4", "seconds", "19", "paint", "70F"))
	assert.Equal(t, "ford4", q.Sheet.Value.Cup.ID)
	assert.Equal(t, calc.OwnReadings, q.Sheet.Basis)
	assert.InDelta(t, .03, q.MostThinner.Value, 1e-12)
	assert.Equal(t, "invented sheet", q.MostThinner.Source)
	assert.Equal(t, calc.CommonPractice, r.Choices(question.Coat)[7].Ground.Basis, "its pressures are still the catalogue's")
}
