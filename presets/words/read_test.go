package words_test

import (
	"os"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The reader takes a part of TOML: what it reads, a TOML decoder reads alike.
func TestTheFilesReadAsTOML(t *testing.T) {
	for _, lang := range words.Languages() {
		w, ok := words.For(lang)
		require.True(t, ok)
		assert.Equal(t, lang, w.Lang())
		data, err := os.ReadFile(lang + ".toml")
		require.NoError(t, err)
		var decoded map[string]string
		require.NoError(t, toml.Unmarshal(data, &decoded))
		require.NotEmpty(t, decoded)
		read := map[string]string{}
		for _, id := range w.IDs() {
			read[id] = w.Say(id)
		}
		assert.Equal(t, decoded, read, lang)
	}
}

func TestWhatAFileOfSentencesMayHold(t *testing.T) {
	w := read(t, "# top\n\n  one=\"a \\\"b\\\" \\\\ c\"  # why\r\ntwo-2 = \"\"")
	assert.Equal(t, []string{"one", "two-2"}, w.IDs())
	assert.Equal(t, `a "b" \ c`, w.Say("one"))
	assert.Empty(t, w.Say("two-2"))
	assert.Equal(t, "three", w.Say("three"))
}

func TestFaultsOfAFileOfSentences(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"no sentence":      {`one = `, `xx.toml:1: one: want a sentence in ""`},
		"no text":          {"# x\none = 3", `xx.toml:2: one: want a sentence in ""`},
		"a table":          {"[one]\ntwo = \"x\"", `xx.toml:1: want id = "sentence"`},
		"no =":             {`one "x"`, `xx.toml:1: want id = "sentence"`},
		"twice":            {"one = \"a\"\n\none = \"b\"", "xx.toml:3: one: given twice"},
		"never closed":     {`one = "Set {wall."`, "xx.toml:1: one: a { without its name and }"},
		"no name":          {`one = "Set {}."`, "xx.toml:1: one: a { without its name and }"},
		"closed elsewhere": {"one = \"Set {wall.\"\ntwo = \"}\"", "xx.toml:1: one: a {"},
		"quote not closed": {`one = "x`, `xx.toml:1: one: want a sentence in ""`},
		"another escape":   {`one = "\n"`, `xx.toml:1: one: want a sentence in ""`},
		"more behind":      {`one = "x" "y"`, "xx.toml:1: one: nothing but a comment"},
		"a tab":            {"one = \"a\tb\"", "xx.toml:1: only printable UTF-8"},
		"a C1 control":     {"one = \"\u0085\"", "xx.toml:1: only printable UTF-8"},
		"no UTF-8":         {"one = \"\xff\"", "xx.toml:1: only printable UTF-8"},
	} {
		_, err := words.Read("xx", c.text)
		assert.ErrorContains(t, err, c.says, name)
		var fault *words.ReadError
		assert.ErrorAs(t, err, &fault, name)
	}
}

// FuzzRead takes anything at all for a file of sentences: it is refused, or a TOML
// decoder reads the same from it and every sentence can be said without a figure to hand.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"", `a = "{b}{c}"`, `a = "}{"`, `a = "{{b}}"`, "a.b = \"c\"", "\xff", "a = \"\\\"\\\\\" # b\r\n1-2=\"\"", "-=\"\"\r", "a=\"\u0085\"", "\ufeffa = \"b\""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		w, err := words.Read("xx", text)
		if err != nil {
			return
		}
		var decoded map[string]string
		require.NoError(t, toml.Unmarshal([]byte(text), &decoded))
		require.Len(t, decoded, len(w.IDs()))
		for _, id := range w.IDs() {
			require.Equal(t, decoded[id], w.Say(id))
			said := w.Text(unit.US, id, nil)
			for _, name := range w.Needs(id) {
				require.NotEmpty(t, name)
				require.Contains(t, said, "{"+name+"}")
			}
		}
	})
}
