package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// There is a page for each command in each language, and none besides.
func TestAPageForEachCommand(t *testing.T) {
	for _, lang := range words.Languages() {
		dir := t.TempDir()
		require.NoError(t, write(dir, lang))
		pages := map[string]bool{}
		var add func(c *cobra.Command)
		add = func(c *cobra.Command) {
			pages[strings.ReplaceAll(c.CommandPath(), " ", "-")+".1"] = true
			for _, sub := range c.Commands() {
				if !sub.Hidden && sub.Name() != "help" {
					add(sub)
				}
			}
		}
		p := &command.Program{Getenv: func(string) string { return "" }}
		add(p.Root())
		assert.Greater(t, len(pages), 20)
		files, err := os.ReadDir(dir)
		require.NoError(t, err)
		for _, f := range files {
			assert.True(t, pages[f.Name()], "%s is of no command", f.Name())
			delete(pages, f.Name())
			text, err := os.ReadFile(filepath.Join(dir, f.Name()))
			require.NoError(t, err)
			said := strings.ReplaceAll(string(text), `\-`, "-")
			assert.NotRegexp(t, `(?m)(^|\s)(usage|intro|brief|note)-[a-z]+`, said, "an id for its sentence")
		}
		assert.Empty(t, pages, "no page in %s", lang)
	}
}
