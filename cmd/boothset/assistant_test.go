package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"
	"boothset/presets"
	"boothset/tui"

	"github.com/stretchr/testify/require"
)

func TestWithoutATerminalTheAssistantSaysWhatToDoInstead(t *testing.T) {
	r := boothset("8\n2\n")
	require.Equal(t, command.ExitBadInput, r.code)
	require.Empty(t, r.out, "standard output is for answers")
	require.Contains(t, r.err, "standard input is not a terminal")
	require.Contains(t, r.err, "boothset plan --coat")
	require.Contains(t, r.err, "boothset plan --help")
	require.NotContains(t, r.err, "\x1b")
}

// The assistant takes flags too; here it has no terminal to open on.
func TestTheAssistantTakesFlags(t *testing.T) {
	for _, c := range []struct{ args, says string }{
		{"--lang es --wrong", "-wrong"},
		{"--units metric", "terminal"},
		{"--lang xx", `lang "xx": choose en or es`},
		{"--lang es --help", "--lang idioma"},
	} {
		r := boothset("", strings.Fields(c.args)...)
		require.Contains(t, r.out+r.err, c.says, c.args)
	}
}

// The table of keys that the reader sees is the one that the program goes by.
// UPDATE_GOLDEN=1 writes it.
func TestTheTableOfKeysIsTheProgramsOwn(t *testing.T) {
	file := filepath.Join("..", "..", "README.md")
	readme, err := os.ReadFile(file)
	require.NoError(t, err)
	const start, end = "<!-- keys -->\n", "<!-- /keys -->"
	before, rest, ok := strings.Cut(string(readme), start)
	require.True(t, ok)
	table, after, ok := strings.Cut(rest, end)
	require.True(t, ok)
	c, err := presets.Load(nil, "")
	require.NoError(t, err)
	want := tui.KeyTable(c, pages(c))
	if os.Getenv("UPDATE_GOLDEN") != "" {
		table = want
		require.NoError(t, os.WriteFile(file, []byte(before+start+want+end+after), 0o644))
	}
	require.Equal(t, want, table, "UPDATE_GOLDEN=1 go test ./cmd/boothset -run Table")
}
