package words_test

import (
	"regexp"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// whole is a sentence each of whose braces belongs to a placeholder.
var whole = regexp.MustCompile(`^([^{}]|\{[a-zA-Z]+(:[^{}|]+\|[^{}|]+)?\})*$`)

func TestEveryPlaceholderIsWhole(t *testing.T) {
	assert.Regexp(t, whole, `Set {wall}: {n} {n:pass|passes}.`)
	for _, bad := range []string{`Set {wall.`, `Set {}.`, `Set wall}.`, `{n:pass}`, `{n:|passes}`, `{n:a|b|c}`, `{a{b}}`} {
		assert.NotRegexp(t, whole, bad)
	}
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, id := range w.IDs() {
			assert.Regexp(t, whole, w.Say(id), "%s of %s", id, lang)
		}
	}
}

func TestTheWordBesideACount(t *testing.T) {
	w := read(t, `one = "{n} {n:pass covers|passes cover} it; {rate} {rate:time|times} as fast."`)
	assert.Equal(t, []string{"n", "n", "rate", "rate"}, w.Needs("one"))
	for _, c := range []struct {
		n, rate float64
		want    string
	}{
		{1, 1.04, "1 pass covers it; 1 time as fast."},
		{2, 1.06, "2 passes cover it; 1.1 times as fast."},
		{0, 0.96, "0 passes cover it; 0.96 times as fast."},
		{11, 11, "11 passes cover it; 11 times as fast."},
	} {
		f := calc.Figures{{Name: "n", Kind: calc.FigureCount, Value: c.n}, {Name: "rate", Kind: calc.FigureTimes, Value: c.rate}}
		assert.Equal(t, c.want, w.Text(unit.US, "one", f))
	}
}

func TestASentenceThatBeginsWithANameBeginsWithACapital(t *testing.T) {
	w := read(t, "one = \"{name} it is.\"\ntwo = \"It is {name}.\"")
	for name, want := range map[string]string{
		"clear": "Clear", "área": "Área", "ñu": "Ñu", "ﬁlm": "ﬁlm", "2 mil": "2 mil", "Clear": "Clear", "": "", "ǆ": "ǅ",
	} {
		f := calc.Figures{{Name: "name", Text: name}}
		assert.Equal(t, want+" it is.", w.Text(unit.US, "one", f))
		assert.Equal(t, "It is "+name+".", w.Text(unit.US, "two", f))
		assert.Equal(t, "after "+want+" it is.", string(w.Append([]byte("after "), unit.US, "one", f)))
	}
}

// Whatever stands in a file, a sentence is said without a fault, and text without braces
// comes out as it is.
func TestAnySentenceIsSaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sentence := rapid.StringMatching(`[a-c {}:|]{0,24}`).Draw(t, "sentence")
		w, err := words.Of(none, `one = "`+sentence+`"`)
		if err != nil {
			t.Fatal(err)
		}
		have := w.Text(unit.US, "one", calc.Figures{{Name: "a", Text: "1"}})
		if regexp.MustCompile(`^[^{]*$`).MatchString(sentence) {
			assert.Equal(t, sentence, have)
		}
	})
}
