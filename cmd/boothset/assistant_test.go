package main

import (
	"bytes"
	"strings"
	"testing"

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
