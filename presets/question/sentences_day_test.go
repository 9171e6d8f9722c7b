package question_test

import (
	"fmt"
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestEverySentenceOfADayIsWhole(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		_, a := day(t, r, unit.US, questiontest.Drawer{T: t}.Day(r))
		against(t, w, &a.Judgement, whole(t, w, a.Reasons, a.Cautions))
		if id := a.Remedy.Sentence(); id != "" {
			sounds(t, w, id, a.Remedy.Figures())
		}
	})
}

// The answers that bring up each sentence of a day at least once.
func TestWhatBringsUpEachSentenceOfADay(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	of := func(coat, temp, humidity string, more ...string) []string {
		return append([]string{"coat", coat, "temp", temp, "humidity", humidity}, more...)
	}
	for _, x := range []struct {
		pairs []string
		has   []string
	}{
		{of("clear", "75F", "45"), []string{"day-air", "day-dries-solvent", "day-grade-hardener", "isocyanate", "booth-air"}},
		{of("solvent-base", "75F", "45", "panels", "5", "pot-life", "4h"), []string{"day-grade", "day-grade-large", "pot-life"}},
		{of("clear", "75F", "45", "pot-life", "4h", "started", "14:30"), []string{"pot-life-ends"}},
		{of("waterborne-base", "15C", "85"), []string{"day-dries-water", "day-grade-water", "turn-warm-air-water", "dew-near", "damp", "cold", "slow-water"}},
		{of("waterborne-base", "18C", "70"), []string{"day-warmer"}},
		{of("waterborne-base", "20C", "100"), []string{"day-dries-not", "turn-warm-air", "dew-on-panel", "still-water"}},
		{of("waterborne-base", "24C", "99", "panel", "40C"), []string{"turn-drier"}},
		{of("clear", "40C", "12"), []string{"turn-cool-air", "hot-air", "lands-dry"}},
		{of("clear", "38C", "90"), []string{"turn-cooler-drier"}},
		{of("clear", "22C", "30", "panel", "14C"), []string{"turn-warm-panel", "cold-panel"}},
		{of("clear", "24C", "50", "panel", "16C"), []string{"close"}},
		{of("clear", "93F", "30"), []string{"lands-drier"}},
		{of("clear", "75F", "45", "pot-life", "10min"), []string{"pot-life-short", "turn-portions"}},
		{of("clear", "22C", "30", "panel", "45C"), []string{"turn-cool-panel", "hot-panel"}},
		{of("clear", "22C", "50", "paint", "5C"), []string{"turn-warm-paint", "cold-paint", "wet-paint"}},
		{of("clear", "22C", "30", "paint", "12C", "panel", "12C"), []string{"turn-warm-both"}},
		{of("clear", "2C", "50", "pot-life", "4h"), []string{"pot-life-outside"}},
	} {
		_, a := day(t, r, unit.US, questiontest.Texts(x.pairs...))
		seen := against(t, w, &a.Judgement, whole(t, w, a.Reasons, a.Cautions))
		seen[a.Remedy.Sentence()] = true
		for _, id := range x.has {
			assert.True(t, seen[id], "%s for %v, which brings %v", id, x.pairs, seen)
		}
	}
}

// thinned is the coats whose seconds the catalogue knows.
func thinned(r *question.Reader) (ids []string) {
	for _, k := range r.Coats {
		if k.Of.Cup != nil && k.Of.Thinner != nil {
			ids = append(ids, k.ID)
		}
	}
	return ids
}

// A coat that is sprayed as it comes has no seconds of its own: the sheet's are asked for.
func TestACoatWithoutSecondsAsksForTheSheets(t *testing.T) {
	r := questiontest.Open(t)
	for _, id := range []string{"adhesion-promoter", "ultraviolet-primer"} {
		_, faults := r.Thin(r.ReadAll(question.Thin, questiontest.Texts("coat", id, "cup", "iso4", "seconds", "40", "paint", "20C"), unit.US), unit.US)
		require.NotEmpty(t, faults, id)
		assert.Equal(t, "sheet-seconds", faults[0].Field, id)
	}
}

func TestEverySentenceOfThinningIsWhole(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		d := questiontest.Drawer{T: t}
		cup := rapid.SampledFrom(coat.Cups())
		texts := questiontest.Texts(
			"coat", rapid.SampledFrom(thinned(r)).Draw(t, "coat"),
			"cup", cup.Draw(t, "cup").ID, "seconds", d.Number("seconds", "%.1f", 15, 100), "paint", d.Number("paint", "%.1fC", 5, 38),
			"max-thinner", d.Maybe("thinner", "%.1f", 0, 30), "warm-limit", d.Maybe("limit", "%.1fC", 10, 40),
		)
		if rapid.Bool().Draw(t, "with a sheet") {
			low := rapid.Float64Range(15, 60).Draw(t, "low")
			texts["sheet-seconds"] = []string{fmt.Sprintf("%.1f-%.1f", low, 1.2*low)}
			if rapid.Bool().Draw(t, "in its own cup") {
				texts["sheet-cup"] = []string{cup.Draw(t, "sheet's cup").ID}
			}
		}
		answers := r.ReadAll(question.Thin, texts, unit.US)
		q, faults := r.Thin(answers, unit.US)
		require.Empty(t, faults)
		a, err := calc.SolveThin(&q)
		if err != nil {
			var fault *question.Fault
			require.ErrorAs(t, r.Refused(err, answers, unit.US), &fault)
			return
		}
		whole(t, w, a.Reasons, a.Cautions)
		sounds(t, w, a.Sentence(&q), a.Figures(&q))
	})
}

// The answers that bring up each sentence of the thinning at least once.
func TestWhatBringsUpEachSentenceOfThinning(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	of := func(cup, seconds, paint string, more ...string) []string {
		return append([]string{"coat", "clear", "cup", cup, "seconds", seconds, "paint", paint, "sheet-seconds", "16-18", "sheet-cup", "din4"}, more...)
	}
	for _, x := range []struct {
		pairs []string
		has   []string
	}{
		{of("din4", "17", "20C"), []string{"advice-as-it-is", "thin-reading-about", "thin-wanted", "isocyanate", "skin"}},
		{of("zahn2", "28", "20C"), []string{"advice-as-it-is", "thin-reading", "thin-wanted-cup", "thin-zahn"}},
		{of("din4", "23", "10C"), []string{"advice-warm-only-cold", "thin-corrected-band", "thin-warm", "thin-warmest", "thin-warming"}},
		{of("din4", "19", "20C"), []string{"advice-warm-or-thin", "thin-instead", "thin-halves", "thin-most"}},
		{of("din4", "19", "20C", "max-thinner", "1"), []string{"advice-warm"}},
		{of("din4", "21", "62F"), []string{"advice-warm-or-less"}},
		{of("din4", "22", "20C"), []string{"advice-warm-and-thin", "thin-thinner"}},
		{of("din4", "19", "80F"), []string{"advice-thin"}},
		{of("din4", "45", "20C"), []string{"advice-cannot", "thin-cannot"}},
		{of("din4", "14", "18C"), []string{"advice-add-unthinned", "thin-over"}},
		{of("din4", "14", "32C"), []string{"advice-cool", "thin-cool"}},
		{[]string{"coat", "clear", "cup", "din4", "seconds", "18.4", "paint", "20C", "sheet-seconds", "17.5-18"}, []string{"advice-near-enough"}},
		{of("din4", "40", "20C", "max-thinner", "0"), []string{"thin-cannot-warm"}},
		{of("din4", "17", "32C"), []string{"thin-only-warm"}},
		{of("din4", "21", "60F", "second-seconds", "17", "second-temp", "75F"), []string{"thin-corrected"}},
		{[]string{"coat", "waterborne-base", "cup", "iso4", "seconds", "70", "paint", "20C"}, []string{"thin-stirred"}},
	} {
		q, a := thin(t, r, unit.US, questiontest.Texts(x.pairs...))
		seen := whole(t, w, a.Reasons, a.Cautions)
		seen[a.Sentence(&q)] = true
		for _, id := range x.has {
			assert.True(t, seen[id], "%s for %v, which brings %v", id, x.pairs, seen)
		}
	}
}
