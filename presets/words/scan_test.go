package words

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fileOf is a language's file as it is built into the program.
func fileOf(t testing.TB, code string) string {
	t.Helper()
	text, err := files.ReadFile(code + extension)
	require.NoError(t, err)
	return string(text)
}

// printable reports whether a text is what a scan asks for.
func printable(text string) bool {
	return utf8.ValidString(text) && !strings.ContainsFunc(strings.ReplaceAll(text, "\r\n", "\n"), func(c rune) bool {
		return c != '\n' && !unicode.IsPrint(c)
	})
}

// The scan reads of each file what the TOML library reads.
func TestFilesAreReadAsTOML(t *testing.T) {
	for _, code := range Languages() {
		text := fileOf(t, code)
		assert.True(t, printable(text), code)
		var want map[string]string
		require.NoError(t, toml.Unmarshal([]byte(text), &want), code)
		require.Greater(t, len(want), 1000, code)
		have, err := scan(text)
		require.NoError(t, err, code)
		assert.Equal(t, want, have, code)
	}
}

func TestScan(t *testing.T) {
	for text, want := range map[string]map[string]string{
		"":                                 {},
		"# said = \"of none\"\n\n#\n":      {},
		"one = \"a\"":                      {"one": "a"},
		"one-2 = \"\"\n# x\ntwo = \"b\"\n": {"one-2": "", "two": "b"},
		"one = \"a\"\r\n\r\ntwo = \"b\"":   {"one": "a", "two": "b"},
		`one = "say \"a\\b\""`:             {"one": `say "a\b"`},
		`one = "\\"`:                       {"one": `\`},
		`one = "a = \"b\" # c"`:            {"one": `a = "b" # c`},
	} {
		have, err := scan(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, have, text)
	}
}

func TestScanNamesTheLineThatWillNotDo(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"no quotes":           {`one = 3`, "line 1: want"},
		"not closed":          {"# x\none = \"a", "line 2: want"},
		"one quote":           {`one = "`, "line 1: want"},
		"not opened":          {`one = a"`, "line 1: want"},
		"closed by an escape": {`one = "a\"`, "line 1: want"},
		"a quote inside":      {`one = "a"b"`, "line 1: want"},
		"a quote by a slash":  {`one = "\\"b"`, "line 1: want"},
		"an unknown escape":   {`one = "a\nb"`, "line 1: want"},
		"text behind":         {`one = "a" # b`, "line 1: want"},
		"no blanks":           {`one="a"`, "line 1: want"},
		"no id":               {` = "a"`, "line 1: want"},
		"an id with a point":  {`one.two = "a"`, "line 1: want"},
		"an id in capitals":   {`One = "a"`, "line 1: want"},
		"a table":             {"[one]\n", "line 1: want"},
		"a blank before":      {` one = "a"`, "line 1: want"},
		"twice":               {"one = \"a\"\n\none = \"b\"", "line 3: one is there twice"},
	} {
		_, err := scan(c.text)
		require.Error(t, err, name)
		assert.Contains(t, err.Error(), c.says, name)
	}
}

// What a scan takes is TOML and says the same there.
func FuzzScan(f *testing.F) {
	f.Add("# x\none = \"a \\\"b\\\" \\\\ {c}\"\n\ntwo-2 = \"\"\n")
	f.Add("one = \"a\"\none = \"b\"")
	f.Add("one = \"a\\\"\r\n")
	f.Fuzz(func(t *testing.T, text string) {
		have, err := scan(text)
		if err != nil || !printable(text) {
			return
		}
		want := map[string]string{}
		require.NoError(t, toml.Unmarshal([]byte(text), &want), text)
		require.Equal(t, want, have, text)
	})
}

// BenchmarkLoad is what the first sentence in a language costs.
func BenchmarkLoad(b *testing.B) {
	for _, code := range Languages() {
		b.Run(code, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				load(code)
			}
		})
	}
}

// BenchmarkTOML is the same by the library.
func BenchmarkTOML(b *testing.B) {
	text, err := files.ReadFile(fallback + extension)
	require.NoError(b, err)
	b.ReportAllocs()
	for b.Loop() {
		var sentences map[string]string
		require.NoError(b, toml.Unmarshal(text, &sentences))
	}
}
