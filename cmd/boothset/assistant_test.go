package main

import (
	"bytes"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"
	"boothset/presets/words"

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
		{"--lang xx", `lang "xx": ` + words.English().Choose(words.Languages())},
		{"--lang es --help", "--lang idioma"},
	} {
		r := boothset("", strings.Fields(c.args)...)
		require.Contains(t, r.out+r.err, c.says, c.args)
	}
}

// A look that there is not is refused, by the name it was asked for with.
func TestALookThatThereIsNotIsRefused(t *testing.T) {
	r := boothset("", "--colours", "pink")
	require.Equal(t, command.ExitBadInput, r.code)
	require.Empty(t, r.out)
	require.Equal(t, "boothset: colours \"pink\": choose dark, light, contrast or none\n", r.err)

	var out, errs bytes.Buffer
	env := func(name string) string {
		return map[string]string{"BOOTHSET_COLOURS": "pink", "LANG": "es_MX.UTF-8"}[name]
	}
	code := run(nil, command.Stdio{In: strings.NewReader(""), Out: &out, Err: &errs}, env)
	require.Equal(t, command.ExitBadInput, code)
	require.Equal(t, "boothset: BOOTHSET_COLOURS \"pink\": elija dark, light, contrast o none\n", errs.String())

	require.Contains(t, boothset("", "--colours", "light").err, "not a terminal", "that one there is")
}
