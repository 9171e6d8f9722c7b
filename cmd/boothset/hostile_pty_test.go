//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// On a terminal too nothing that is given comes back raw: as a flag's value, a command, a key
// of a batch, the folder of the shop's file.
func TestATerminalIsSentNothingRaw(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("command", "testdata", "hostile", "texts.txt"))
	require.NoError(t, err)
	for row := range strings.Lines(string(data)) {
		text, err := strconv.Unquote(strings.TrimSpace(row))
		require.NoError(t, err)
		text = strings.ReplaceAll(text, "\x00", "\x01") // an argument ends there
		home := filepath.Join(t.TempDir(), strings.ReplaceAll(text, "/", "|"))
		require.NoError(t, os.MkdirAll(filepath.Join(home, "boothset", "shop.toml"), 0o700))
		in := filepath.Join(t.TempDir(), "in")
		require.NoError(t, os.WriteFile(in, []byte(`{"`+text+`":1}`+"\n"+text+"\n"), 0o600))
		for _, c := range []struct {
			args   []string
			config string
			batch  bool
		}{
			{args: []string{"plan", "--coat", text}},
			{args: []string{text}},
			{args: []string{"plan", "--" + text}},
			{args: []string{"__complete", "plan", "--" + text, ""}},
			{args: []string{"plan", "--batch"}, batch: true},
			{args: []string{"plan"}, config: home},
		} {
			cmd := exec.Command(program, c.args...)
			cmd.Env = []string{"HOME=" + t.TempDir(), "XDG_CONFIG_HOME=" + c.config}
			s := onTerminal(t, 80, 24, nil, cmd, func(cmd *exec.Cmd) {
				if c.batch {
					f, err := os.Open(in)
					require.NoError(t, err)
					t.Cleanup(func() { f.Close() })
					cmd.Stdin = f
				}
			})
			s.code()
			all := s.allWrote()
			require.NotEmpty(t, all)
			raw := strings.IndexFunc(all, func(r rune) bool { return r != '\r' && r != '\n' && !unicode.IsPrint(r) })
			assert.Negative(t, raw, "%q: %q", c.args, all)
		}
	}
}
