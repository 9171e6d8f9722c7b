package words_test

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestWhatIsQuotedIsPrintableAndShort(t *testing.T) {
	for given, want := range map[string]string{
		"":                                 `""`,
		"24 psi":                           `"24 psi"`,
		"24 °C, año":                       `"24 °C, año"`,
		"\x1b[31mred":                      `"\x1b[31mred"`,
		"a\nb\tc\r":                        `"a\nb\tc\r"`,
		"\x00\x07\x7f\u0085\u009b2J":       `"\x00\a\x7f\u0085\u009b2J"`,
		"\u202eisp\u2066\u200b\ufeff":      `"\u202eisp\u2066\u200b\ufeff"`,
		"\xff\xc3":                         `"\xff\xc3"`,
		"\U000e0041\U0010ffff":             `"\U000e0041\U0010ffff"`,
		`say "no" \`:                       `"say \"no\" \\"`,
		strings.Repeat("x", 60):            `"` + strings.Repeat("x", 60) + `"`,
		strings.Repeat("x", 1<<20):         `"` + strings.Repeat("x", 60) + `..."`,
		strings.Repeat("\u202e", 1<<10):    `"` + strings.Repeat(`\u202e`, 10) + `..."`,
		strings.Repeat("é", 59) + "\x1bxx": `"` + strings.Repeat("é", 59) + `..."`,
	} {
		assert.Equal(t, want, words.Quoted(given))
	}
	assert.Equal(t, `say "no" \`, words.Short(`say "no" \`))
	assert.Equal(t, strings.Repeat("é", 60)+"...", words.Cut(strings.Repeat("é", 61)))
}

// Of a long path the end is said.
func TestAPathKeepsItsEnd(t *testing.T) {
	assert.Equal(t, `/home/\x1b[2J/shop.toml`, words.Path("/home/\x1b[2J/shop.toml"))
	long := words.Path("/" + strings.Repeat("folder/", 500) + "shop.toml")
	assert.True(t, strings.HasPrefix(long, "...") && strings.HasSuffix(long, "/folder/shop.toml"), long)
	assert.Less(t, utf8.RuneCountInString(long), 210)
}

// Whatever is quoted, by itself, in a sentence or in a list, can be printed on one row and is
// short.
func TestNothingQuotedIsRaw(t *testing.T) {
	w := words.English()
	rapid.Check(t, func(t *rapid.T) {
		given := string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")) + rapid.String().Draw(t, "text") + rapid.SampledFrom([]string{"", "\u202e", "\x1b]0;x\x07", "\u009b2J", strings.Repeat("z", 500)}).Draw(t, "end")
		sentence := w.Text(unit.US, "want-solvent", calc.Figures{calc.GivenFigure("given", given), calc.TextFigure("names", w.Listed([]string{given, given}))})
		for text, most := range map[string]int{words.Quoted(given): 70, words.Short(given): 70, words.Path(given): 210, sentence: 300} {
			if strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsPrint(c) }) || !utf8.ValidString(text) {
				t.Fatalf("%q", text)
			}
			if n := utf8.RuneCountInString(text); n > most {
				t.Fatalf("%d characters: %q", n, text)
			}
		}
		if strings.ContainsFunc(words.Printable(given), func(c rune) bool { return !unicode.IsPrint(c) }) {
			t.Fatalf("%q", words.Printable(given))
		}
	})
}

// A shop may have thousands of entries: the first are listed, and how many more there are.
func TestAListIsNotEndless(t *testing.T) {
	names := make([]string, 16_000)
	for i := range names {
		names[i] = "coat"
	}
	got := words.English().Listed(names)
	assert.Equal(t, 100, strings.Count(got, "coat"))
	assert.True(t, strings.HasSuffix(got, "coat or one of 15900 more"), got[len(got)-40:])
}

func TestWhatStandsInAFileIsShownOnOneLine(t *testing.T) {
	assert.Equal(t, `one two three \x1b[31m \xff`, words.OneLine("one\ntwo\r\nthree\t\x1b[31m \xff", 60))
	assert.Equal(t, "ab...", words.OneLine("abc", 2))
	assert.Equal(t, "abc", words.OneLine("abc", 3))
}
