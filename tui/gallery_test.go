package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/words"
	"boothset/tui/picture"

	"github.com/stretchr/testify/require"
)

// gallerySizes are the windows that every view and page is looked at in.
var gallerySizes = []size{usualSize, {120, 40}, largeWindow}

// TestGallery writes the first frame of every shot into the folder GALLERY as pictures, on a
// light and on a dark ground, in each language, to be looked at: make gallery.
func TestGallery(t *testing.T) {
	dir := os.Getenv("GALLERY")
	if dir == "" {
		t.Skip("GALLERY names no folder")
	}
	require.NoError(t, os.MkdirAll(dir, 0o755))
	for _, f := range shots() {
		for _, lang := range words.Languages() {
			for _, l := range gallerySizes {
				name := fmt.Sprintf("%s-%s-%dx%d", f.name, lang, l.w, l.h)
				r := f.at(t, look{lang: lang, metric: lang != "en", size: l, colour: true})
				svg, err := picture.SVG(r.View(), picture.Text{Title: name, Desc: name})
				require.NoError(t, err, name)
				for ground, scheme := range map[string]string{"light": "not all", "dark": "all"} {
					grounded := strings.Replace(svg, "(prefers-color-scheme: dark)", scheme, 1)
					require.NotEqual(t, svg, grounded)
					require.NoError(t, os.WriteFile(filepath.Join(dir, name+"-"+ground+".svg"), []byte(grounded), 0o644))
				}
			}
		}
	}
}
