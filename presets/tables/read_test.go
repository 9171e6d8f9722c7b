package tables_test

import (
	"strings"
	"testing"

	"boothset/presets/tables"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// plain is a table as the library gives it.
func plain(v any) any {
	switch v := v.(type) {
	case *tables.Table:
		all := map[string]any{}
		for _, name := range v.Names {
			all[name] = plain(v.Get(name).Of)
		}
		return all
	case tables.List:
		all := []any{}
		for _, one := range v {
			all = append(all, plain(one.Of))
		}
		return all
	}
	return v
}

func TestKeysAndValuesKnowWhereTheyStand(t *testing.T) {
	root, f := tables.Read([]byte("# ours\n\t[coat.clear]\r\n  rank = 0x10\nworking.trade = { start = \"27psi\" }\naliases = [ \"a\",\n \"b\" ]\n"))
	require.Nil(t, f)
	coat := root.Table("coat").Table("clear")
	assert.Equal(t, tables.Place{2, 2}, coat.At)
	rank := coat.Get("rank")
	assert.Equal(t, tables.Place{3, 3}, rank.Key)
	assert.Equal(t, tables.Place{3, 10}, rank.At)
	assert.Equal(t, int64(16), rank.Of)
	assert.Equal(t, "0x10", rank.Text, "as it is spelled")
	assert.Equal(t, tables.Place{4, 1}, coat.Table("working").At)
	start := coat.Table("working").Table("trade").Get("start")
	assert.Equal(t, tables.Place{4, 19}, start.Key)
	assert.Equal(t, tables.Place{4, 27}, start.At)
	list := coat.Get("aliases")
	assert.Equal(t, tables.Place{5, 11}, list.At)
	assert.Equal(t, tables.Place{6, 2}, list.Of.(tables.List)[1].At)
	assert.Nil(t, root.Table("gun").Get("trade"))
}

// What may be said twice, by the rules of TOML 1.0 on keys and tables.
func TestNothingIsSaidTwice(t *testing.T) {
	for text, at := range map[string]tables.Place{
		"a = 1\na = 2\n":                       {2, 1},
		"a.b = 1\na.b = 2\n":                   {2, 3},
		"a = 1\na.b = 2\n":                     {2, 1},
		"[a]\nb = 1\n[a]\n":                    {3, 1},
		"[a]\nb = 1\n[a.b]\n":                  {3, 1},
		"a.b = 1\n[a]\n":                       {2, 1},
		"a = { b = 1 }\na.c = 2\n":             {2, 1},
		"a = { b = 1 }\n[a.c]\n":               {2, 1},
		"a = { b = 1, b = 2 }\n":               {1, 14},
		"[a.b]\n[a]\nb.c = 1\n":                {3, 1},
		"\"a\" = 1\n'a' = 2\n":                 {2, 1},
		"[a]\n[ a . b ]\nc = 1\n [a . 'b' ]\n": {4, 2},
	} {
		_, f := tables.Read([]byte(text))
		require.NotNil(t, f, text)
		assert.Equal(t, "file-twice", f.ID, text)
		assert.Equal(t, at, f.At, text)
		assert.Error(t, toml.Unmarshal([]byte(text), &map[string]any{}), "the library refuses it too: %s", text)
	}
	for _, text := range []string{"[a.b]\n[a]\nc = 1\n", "a.b = 1\na.c = 2\n", "[a]\nb.c = 1\n[a.b.d]\n", "[a]\n[b]\n[a.c]\n"} {
		_, f := tables.Read([]byte(text))
		assert.Nil(t, f, text)
		assert.NoError(t, toml.Unmarshal([]byte(text), &map[string]any{}), text)
	}
}

// rows draws rows that are TOML, or nearly: the same few keys, so that they meet.
func rows(t *rapid.T) string {
	key := rapid.SampledFrom([]string{"a", "b", "a.b", "a.b.c", `"a"`, "'b'.c", "d . a"})
	value := rapid.SampledFrom([]string{"1", "-3", "0x1F", "1_000", "2.5", "1e3", "true", `"t"`, `'t'`, `""`, "[]", `["x", 1]`, "[[1], [2]]", "{}", "{ a = 1 }", "{ a.b = 1, c = [{ d = 2 }] }", `"""long"""`, "99999999999999999999", "tru", ""})
	row := rapid.Custom(func(t *rapid.T) string {
		if rapid.IntRange(0, 2).Draw(t, "header") == 0 {
			return "[" + key.Draw(t, "key") + "]"
		}
		return key.Draw(t, "key") + " = " + value.Draw(t, "value") + rapid.SampledFrom([]string{"", " # a remark"}).Draw(t, "end")
	})
	return strings.Join(rapid.SliceOfN(row, 0, 8).Draw(t, "rows"), "\n")
}

// What is read is what the library reads, and what is refused it refuses.
func TestReadsAsTheLibraryDoes(t *testing.T) {
	met := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		text := rows(t)
		want := map[string]any{}
		err := toml.Unmarshal([]byte(text), &want)
		root, f := tables.Read([]byte(text))
		met[err == nil]++
		if err != nil {
			if f == nil {
				t.Fatalf("the library says %v", err)
			}
			return
		}
		if f != nil {
			t.Fatalf("%+v", f)
		}
		assert.Equal(t, want, plain(root))
	})
	assert.Greater(t, min(met[true], met[false]), 10)
}

// Nothing makes reading fail otherwise than by a fault with its place and its sentence.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"", "[a]\nb = 1\n", "[[a]]\n", "a.b = 1", "a = nan\n", "a = 12345678901234567890123\n", "a = \"\\q\"\n", "a = \"", "\x00", "a = 1\r", "a = [1,\n", "a = {",
		"\xef\xbb\xbfa = 1", "a = \"\xff\"", "[", "[a", "[a]]", "= 1", "a", "a =", "#\x7f", "a = '''", "a=1979-05-27T07:32:00Z", "a = \"\"\"\\", "[ [ a ] ]", "a = .5",
		"a = " + strings.Repeat("[", 100), "a" + strings.Repeat(".a", 100) + "=1", "a = \r\n1", "a=[\"b\r\"]",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		root, fault := tables.Read([]byte(text))
		if fault == nil {
			assert.NotNil(t, root)
			return
		}
		assert.Positive(t, fault.At.Line)
		assert.Positive(t, fault.At.Column)
		assert.LessOrEqual(t, fault.At.Line, strings.Count(text, "\n")+1)
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			assert.True(t, w.Has(fault.ID), fault.ID)
		}
	})
}
