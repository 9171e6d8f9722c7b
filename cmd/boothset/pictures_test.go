package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// The README's pictures show the pages that the assistant opens from its answer.
func TestPicturesNameEveryPage(t *testing.T) {
	w, ok := words.For("en")
	require.True(t, ok)
	for _, picture := range []string{"answer", "line", "weather"} {
		svg, err := os.ReadFile(filepath.Join("..", "..", "tui", "testdata", "pictures", picture+".svg"))
		require.NoError(t, err, "make pictures writes it")
		for _, q := range question.Questions() {
			if q == question.Plan {
				continue
			}
			name := w.Say("page-" + q.Name)
			require.Regexp(t, `>\s*`+regexp.QuoteMeta(name)+`\s*</text>`, string(svg), picture)
		}
	}
}
