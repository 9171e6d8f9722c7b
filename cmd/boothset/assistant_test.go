package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets"
	"boothset/tui"

	"github.com/stretchr/testify/require"
)

func TestWithoutATerminalTheAssistantSaysWhatToDoInstead(t *testing.T) {
	var out, err bytes.Buffer
	code := run(nil, stdio{strings.NewReader("8\n2\n"), &out, &err}, func(string) string { return "" })
	require.Equal(t, exitBadInput, code)
	require.Empty(t, out.String(), "standard output is for answers")
	require.Contains(t, err.String(), "standard input is not a terminal")
	require.Contains(t, err.String(), "boothset plan --coat")
	require.Contains(t, err.String(), "boothset plan --help")
	require.NotContains(t, err.String(), "\x1b")
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
