package tui

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"boothset/tui/golden"
	"boothset/tui/picture"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// readme is the pictures of the README: views of one job, in a window that holds each whole.
var readme = []struct {
	name, title string
	view        int // its digit
}{
	{"answer", "The answer: wall pressure, distance and inlet valve", 1},
	{"line", "The line: the pressure as it falls from the wall to the cap", 3},
	{"weather", "The weather: today among go, wait and stop", 4},
}

var pictureSize = size{120, 40}

// unwrapped is a width that holds any paragraph in one row.
const unwrapped = 1000

// What is said in place of a picture is what the assistant says without pictures.
func TestPictures(t *testing.T) {
	for _, p := range readme {
		t.Run(p.name, func(t *testing.T) {
			r := start(t, look{size: pictureSize, colour: true})
			press(r, toAnswer...)
			openView(r, p.view-1)
			b, ok := r.page().(*bench)
			require.True(t, ok, "the keys lead to the answer, not to %s", where(r))
			require.Equal(t, p.view-1, b.view)
			rows := slices.Concat(views[b.view].inWords(b, unwrapped)...)
			require.NotEmpty(t, rows)
			svg, err := picture.SVG(r.View(), picture.Text{Title: p.title, Desc: ansi.Strip(strings.Join(rows, "\n"))})
			require.NoError(t, err)

			golden.Equal(t, filepath.Join("pictures", p.name+".svg"), svg)
		})
	}
}
