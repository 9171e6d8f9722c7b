package tui

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A terminal of the window's size shows a frame as it is: nothing scrolls off, nothing
// wraps, and every character takes the one cell that it was laid out for.
func TestATerminalShowsEveryFrameAsItIs(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, anyStart(t)...)
		screen := vt.NewEmulator(r.size.w, r.size.h)
		for _, m := range rapid.SliceOfN(anyKey(), 1, 6).Draw(t, "keys") {
			r.Update(m)
			if r.done {
				return
			}
			frame := r.View()
			screen.Resize(r.size.w, r.size.h)
			_, err := screen.Write([]byte("\x1b[0m\x1b[2J\x1b[H" + strings.ReplaceAll(frame, "\n", "\r\n")))
			require.NoError(t, err)
			require.Equal(t, cells(ansi.Strip(frame), r.size), onScreen(t, screen, r.size))
		}
	})
}

// cells is a frame's characters, a row of the window each.
func cells(frame string, l size) []string {
	rows := make([]string, l.h)
	for i, row := range strings.Split(frame, "\n") {
		rows[i] = strings.TrimRight(row, " ")
	}
	return rows
}

// onScreen is what the cells of a terminal hold, row by row.
func onScreen(t test, screen *vt.Emulator, l size) []string {
	t.Helper()
	rows := make([]string, l.h)
	for y := range l.h {
		var row strings.Builder
		for x := range l.w {
			cell := screen.CellAt(x, y)
			if cell == nil || cell.Content == "" {
				row.WriteByte(' ')
				continue
			}
			require.Equal(t, 1, cell.Width, "%q", cell.Content)
			row.WriteString(cell.Content)
		}
		rows[y] = strings.TrimRight(row.String(), " ")
	}
	return rows
}
