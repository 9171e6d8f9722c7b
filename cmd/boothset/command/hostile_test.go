package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"boothset/presets/question"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile is the texts of a file in testdata/hostile, one a row as Go writes it.
func hostile(t testing.TB, file string) (texts []string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "hostile", file))
	require.NoError(t, err)
	for row := range strings.Lines(string(data)) {
		text, err := strconv.Unquote(strings.TrimSpace(row))
		require.NoError(t, err, row)
		texts = append(texts, text)
	}
	require.Greater(t, len(texts), 10)
	return texts
}

// isPlain checks that nothing that a run printed is raw, and that a message is short.
func isPlain(t *testing.T, got ran, what ...any) {
	t.Helper()
	for _, text := range []string{got.out, got.err} {
		raw := strings.IndexFunc(text, func(c rune) bool { return c != '\n' && !unicode.IsPrint(c) })
		assert.True(t, utf8.ValidString(text), "%q", what)
		if raw >= 0 {
			assert.Fail(t, "raw", "%q: %q", what, text[raw:min(len(text), raw+20)])
		}
	}
	assert.Less(t, len(got.err), 3000, "%q", what)
}

// commands is every command with the flags that it has.
func commands(t *testing.T) (all []*cobra.Command) {
	root := (&Program{Getenv: noEnv}).Root()
	all = append(all, root)
	all = append(all, root.Commands()...)
	require.Greater(t, len(all), 5)
	return all
}

// Whatever is given to a command, as an argument, a flag, a flag's value or a path, is quoted
// printable and short.
func TestNothingGivenIsPrintedRaw(t *testing.T) {
	texts := append(hostile(t, "texts.txt"), strings.Repeat("x", 1<<20))
	t.Chdir(t.TempDir()) // one command makes a folder
	t.Setenv("TMPDIR", t.TempDir())
	for at, c := range commands(t) {
		path := strings.Fields(c.CommandPath())[1:]
		var flags []string
		add := func(f *pflag.Flag) { flags = append(flags, f.Name) }
		c.Flags().VisitAll(add)
		c.Root().PersistentFlags().VisitAll(add)
		for i, f := range flags { // each with a few of the texts, each text with many flags
			for n := range 2 {
				args := append(append([]string{}, path...), "--"+f+"="+texts[(i+5*n)%len(texts)])
				isPlain(t, boothset("", args...), args)
			}
		}
		for i, text := range texts {
			if (i+at)%3 != 0 { // each command has its share of them
				continue
			}
			for _, lang := range []string{"en", "es"}[:1+i%2] {
				with := func(more ...string) []string {
					return append(append(append([]string{}, path...), "--lang", lang), more...)
				}
				runs := [][]string{with(text), with("--", text), with("--" + text), with("--" + text + "=1"), with("-" + text), with("--json=" + text), with("--lang", text), with("help", text), append([]string{text}, path...), {"help", text}, with("--help", text)}
				for _, args := range runs {
					isPlain(t, boothset("", args...), args[:min(len(args), 5)])
				}
			}
			isPlain(t, boothset("", append([]string{cobra.ShellCompRequestCmd}, append(path, text)...)...), "completion of", text)
		}
	}
}

// The same of the values that a job is answered with: beside good ones, a bad one.
func TestNoFieldIsPrintedRaw(t *testing.T) {
	for _, q := range question.Commands() {
		texts := hostile(t, "texts.txt")
		for i, row := range q.Fields {
			for n := range 2 {
				text := texts[(i+7*n)%len(texts)]
				isPlain(t, boothset("", q.Name, "--coat", "clear", "--"+row.Name, text, "--"+row.Name, "clear"+text), q.Name, row.Name, text)
			}
		}
	}
}

// The same of a batch: keys, values, whole lines. Its answers are JSON, one a line.
func TestNoBatchIsAnsweredRaw(t *testing.T) {
	quoted := func(text string) string {
		b, err := json.Marshal(text)
		require.NoError(t, err)
		return string(b)
	}
	long := strings.Repeat("k", 1<<16)
	for _, q := range question.Commands() {
		var lines []string
		for _, text := range append(hostile(t, "texts.txt"), long) {
			lines = append(lines, strings.NewReplacer("\n", " ", "\r", " ").Replace(text), `{`+quoted(text)+`:1}`, `{"coat":`+quoted(text)+`}`, `{"coat":`+quoted(strings.TrimSpace(text))+`,"units":`+quoted(text)+`}`, `{"coat":"clear"}`+strings.ReplaceAll(text, "\n", " "))
			for _, row := range q.Fields {
				lines = append(lines, `{"coat":"clear","`+strings.ReplaceAll(row.Name, "-", "_")+`":`+quoted(text)+`}`)
			}
		}
		got := boothset(strings.Join(lines, "\n"), q.Name, "--batch")
		assert.Equal(t, len(lines), strings.Count(got.out, "\n"), q.Name)
		isPlain(t, got, q.Name)
		for line := range strings.Lines(got.out) {
			assert.True(t, json.Valid([]byte(line)), "%.200q", line)
			if strings.HasPrefix(line, `{"schema":"`+errorSchema) {
				assert.Less(t, len(line), 2500, "%.200q", line)
			}
		}
	}
}

// The same of a shop's file, and of the folder that it lies in.
func TestNoShopFileIsPrintedRaw(t *testing.T) {
	for _, toml := range append(hostile(t, "shops.txt"), "[coat.clear]\nname = \""+strings.Repeat("x", 1<<19)+"\"\n", strings.Repeat("x", 1<<19)+" = 1\n", "[line]\nhose = [\""+strings.Repeat("x", 1<<19)+"\"]\n") {
		for _, lang := range []string{"en", "es"} {
			got := boothsetIn(shopEnv(t, toml), "", clearJob("--lang", lang)...)
			assert.Equal(t, ExitBadInput, got.code, "%.80q", toml)
			isPlain(t, got, toml[:min(len(toml), 80)])
		}
	}
	for _, name := range []string{"\x1b[2J", "\u202e\u009b", strings.Repeat("folder/", 30)} {
		dir := filepath.Join(t.TempDir(), name)
		require.NoError(t, os.MkdirAll(filepath.Join(dir, "boothset", "shop.toml"), 0o700))
		got := boothsetIn(func(name string) string { return map[string]string{"XDG_CONFIG_HOME": dir}[name] }, "", "plan")
		assert.Contains(t, got.err, "it is a folder")
		isPlain(t, got, name)
	}
}
