package tui

import (
	"strings"

	"boothset/calc"
)

// The smallest window that a page is drawn in.
const (
	leastWidth  = 40
	leastHeight = 12
)

// The largest window that a page is laid out for; in a larger one it stands in the corner. One
// that says it is 65,535 columns wide costs no more.
const (
	mostWidth  = 300
	mostHeight = 100
)

// programName stands at the top where there is room for it.
const programName = "boothset"

// Heights from which there is room for lines between the parts of the window, for two
// rows of help, and for two rows under the heading.
const (
	ruledWindow = 16
	tallWindow  = 20
	roomyWindow = 24
)

// frame is how a window is shared out: the rows under the heading, the room of the page,
// the rows of help.
type frame struct {
	under []string
	room  size
	help  int
	ruled bool
}

func frameOf(p page, window size) frame {
	r, is := p.(ruled)
	own := is && r.ownRules()
	f := frame{under: p.under(window), help: 1, ruled: window.h >= ruledWindow && !own}
	if window.h >= tallWindow && !own {
		f.help = 2
	}
	f.room = size{window.w, window.h - 1 - len(f.under) - f.help}
	if f.ruled {
		f.room.h -= 2
	}
	return f
}

// top is the first row of the page's room in the window.
func (f *frame) top() int {
	if f.ruled {
		return len(f.under) + 2
	}
	return len(f.under) + 1
}

// lastRow is how wide the last row of a window may be. Its last column stays empty: what
// is cleared behind a full row takes that column with it.
func lastRow(window size) int { return window.w - 1 }

func tooSmall(window size) bool { return window.w < leastWidth || window.h < leastHeight }

// lay lays a page out in a window.
func lay(s *session, p page, all []binding, f frame, window size) string {
	if tooSmall(window) {
		rows := wrap(s.text("window-small", calc.CountFigure("wide", window.w), calc.CountFigure("high", window.h), calc.CountFigure("leastWide", leastWidth), calc.CountFigure("leastHigh", leastHeight),
			calc.TextFigure("key", s.say("key-stop"))), max(lastRow(window), 1))
		return strings.Join(rows[:min(len(rows), window.h)], "\n")
	}
	left, right := p.heading()
	rule := strings.Repeat(string(s.glyphs.Rule), window.w)
	lefts := []string{programName + "  " + left, left}
	between := " " + string(s.glyphs.Between) + " "
	for at := strings.LastIndex(left, between); at > 0; at = strings.LastIndex(left, between) { // where it is too long, without its last pieces
		left = left[:at]
		lefts = append(lefts, left)
	}
	rows := append([]string{s.theme.Title.Render(ends(window.w, right, lefts...))}, f.under...)
	if f.ruled {
		rows = append(rows, rule)
	}
	body := p.body(f.room)
	body = body[:min(len(body), f.room.h)]
	rows = append(rows, body...)
	for range f.room.h - len(body) {
		rows = append(rows, "")
	}
	if f.ruled {
		rows = append(rows, rule)
	}
	return strings.Join(append(rows, helpRows(s, all, lastRow(window), f.help)...), "\n")
}
