package draw_test

import (
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

func TestGlyphsAreOneColumnWide(t *testing.T) {
	for name, g := range sets {
		for _, c := range allGlyphs(g) {
			require.Equal(t, 1, ansi.StringWidth(string(c)), "%s %c", name, c)
		}
	}
}
