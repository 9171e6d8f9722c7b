package draw_test

import (
	"testing"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

func TestBar(t *testing.T) {
	nan := 0.0
	nan /= nan
	for _, c := range []struct {
		share float64
		want  string
	}{{0, ""}, {-1, ""}, {nan, ""}, {1e-9, "#"}, {0.1, "#"}, {0.5, "####"}, {1, "########"}, {7, "########"}} {
		require.Equal(t, c.want, draw.Bar(c.share, 8, draw.ASCII), "%v", c.share)
	}
	require.Empty(t, draw.Bar(0.5, 0, draw.ASCII))
}

func TestGlyphsAreOneColumnWide(t *testing.T) {
	for name, g := range sets {
		for _, c := range allGlyphs(g) {
			require.Equal(t, 1, ansi.StringWidth(string(c)), "%s %c", name, c)
		}
	}
}
