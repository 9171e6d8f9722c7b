package tui

import (
	"fmt"
	"path/filepath"
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

var pictureSize = size{100, 30}

// unwrapped is a width that holds any paragraph in one row.
const unwrapped = 1000

// pictured are the coat's own questions by their ids, as the program has them.
var pictured = []string{"day", "thin", "film", "mix"}

// What is told in place of a picture is what the assistant says without pictures.
func TestPictures(t *testing.T) {
	for _, p := range readme {
		t.Run(p.name, func(t *testing.T) {
			r := start(t, look{size: pictureSize, colour: true})
			r.bench.forms = nil
			for _, name := range pictured {
				r.bench.forms = append(r.bench.forms, newForm(r.s, r.bench, Question{Name: name}))
			}
			press(r, toAnswer...)
			press(r, fmt.Sprint(p.view))
			b, ok := r.page().(*bench)
			require.True(t, ok, "the keys lead to the answer, not to %s", where(r))
			require.Equal(t, p.view-1, b.view)
			var told []string
			for _, block := range b.inWords(views[b.view].id, unwrapped) {
				told = append(told, block...)
			}
			require.NotEmpty(t, told)
			svg, err := picture.SVG(r.View(), picture.Text{Title: p.title, Desc: ansi.Strip(strings.Join(told, "\n"))})
			require.NoError(t, err)

			golden.Equal(t, filepath.Join("pictures", p.name+".svg"), svg)
		})
	}
}
