package tui

import (
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
)

func TestGlyphsFollowTheLocale(t *testing.T) {
	for _, c := range []struct {
		all, ctype, lang string
		want             draw.Glyphs
	}{
		{"", "", "en_US.UTF-8", draw.Blocks},
		{"", "", "de_DE.utf8", draw.Blocks},
		{"C", "", "en_US.UTF-8", draw.ASCII},
		{"C.UTF-8", "", "C", draw.Blocks},
		{"", "POSIX", "en_US.UTF-8", draw.ASCII},
		{"", "", "en_US.ISO-8859-1", draw.ASCII},
		{"", "", "", draw.ASCII},
		{"", "", "ja_JP.UTF-8", draw.ASCII},
	} {
		env := map[string]string{"LC_ALL": c.all, "LC_CTYPE": c.ctype, "LANG": c.lang}
		require.Equal(t, c.want, glyphs(func(n string) string { return env[n] }), "%+v", c)
	}
}

func TestNoColorIsHonoured(t *testing.T) {
	require.True(t, coloured(func(string) string { return "" }))
	require.False(t, coloured(func(n string) string { return map[string]string{"NO_COLOR": "1"}[n] }))
}
