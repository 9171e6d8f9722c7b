package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The demo is made, says that it is invented, and what it says to try answers.
func TestTheDemo(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	for _, lang := range words.Languages() {
		for _, args := range [][]string{nil, {filepath.Join(t.TempDir(), "a shop")}} {
			made := boothset("", append([]string{"demo", "--lang", lang}, args...)...)
			require.Equal(t, ExitAnswered, made.code, made.err)
			assert.Contains(t, made.out, map[string]string{"en": "invented", "es": "inventado"}[lang])
			assert.NotContains(t, made.out, "{")
			n := 0
			for _, l := range strings.Split(made.out, "\n") {
				command, ok := strings.CutPrefix(l, "  boothset ")
				if !ok {
					continue
				}
				n++
				if len(args) > 0 {
					assert.Contains(t, command, "--shop '"+args[0]+"'")
					command = strings.Replace(command, "'"+args[0]+"'", "DIR", 1)
				}
				typed := strings.Fields(command)
				for i := range typed {
					if typed[i] == "DIR" {
						typed[i] = args[0]
					}
				}
				r := boothset("", typed...)
				assert.Equal(t, ExitAnswered, r.code, r.err)
				assert.Empty(t, r.err, typed)
			}
			assert.Equal(t, 3, n)
		}
	}
}

func TestADemoThatCannotBe(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "kept.txt"), nil, 0o600))
	full := boothset("", "demo", dir)
	assert.Equal(t, ExitBadInput, full.code)
	assert.Contains(t, full.err, "give an empty or a new folder")
	assert.Equal(t, ExitBadInput, boothset("", "demo", filepath.Join(dir, "a"), "b").code)
	assert.Equal(t, ExitFailed, boothset("", "demo", filepath.Join(dir, "kept.txt")).code)
}
