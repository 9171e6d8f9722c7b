package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"boothset/cmd/boothset/command"
	"boothset/presets"

	"github.com/stretchr/testify/require"
)

// The README's pictures show the pages that the assistant opens from its answer.
func TestPicturesNameEveryPage(t *testing.T) {
	c, err := presets.Load(nil, "")
	require.NoError(t, err)
	w := c.Words()
	for _, picture := range []string{"answer", "line", "weather"} {
		svg, err := os.ReadFile(filepath.Join("..", "..", "tui", "testdata", "pictures", picture+".svg"))
		require.NoError(t, err, "make pictures writes it")
		for _, p := range command.Pages(c) {
			name := p.Name
			if w.Has("page-" + name) {
				name = w.Say("page-" + name)
			}
			require.Regexp(t, `>\d `+regexp.QuoteMeta(name)+`</text>`, string(svg), picture)
		}
	}
}
