package tui

import (
	"fmt"
	"strings"
)

// The smallest window that a page is drawn in.
const (
	leastWidth  = 40
	leastHeight = 12
)

// programName stands at the top where there is room for it.
const programName = "boothset"

// Heights from which there is room for lines between the parts of the window, for two
// rows of help, and for two rows of answers.
const (
	ruledWindow = 16
	tallWindow  = 20
	roomyWindow = 24
)

func (r *root) tooSmall() bool { return r.size.w < leastWidth || r.size.h < leastHeight }

// draw lays the page out in the window.
func (r *root) draw() string {
	if r.tooSmall() {
		text := fmt.Sprintf("Window %d x %d: too small. %s stops. Make it %d x %d or larger.", r.size.w, r.size.h, stopKey, leastWidth, leastHeight)
		rows := wrap(text, r.size.w)
		return strings.Join(rows[:min(len(rows), r.size.h)], "\n")
	}
	s, p, w := r.s, r.page(), r.size.w
	left, right := p.heading()
	rule := strings.Repeat(string(s.glyphs.Rule), w)
	trail := 1
	if r.size.h >= roomyWindow {
		trail = 2
	}
	top := append([]string{s.theme.Title.Render(ends(w, right, programName+"  "+left, left))}, s.trail(w, trail)...)
	if r.size.h >= ruledWindow {
		top = append(top, rule)
	}
	help := helpRows(s, r.keys(), w, r.size.h)
	room := r.room(len(top), len(help))
	body := p.body(room)
	// What scrolls is known once it is laid out, and help speaks of it.
	if now := helpRows(s, r.keys(), w, r.size.h); len(now) != len(help) {
		help = now
		room = r.room(len(top), len(help))
		body = p.body(room)
	} else {
		help = now
	}
	body = body[:min(len(body), room.h)]
	rows := append(top, body...)
	for range room.h - len(body) {
		rows = append(rows, "")
	}
	if r.size.h >= ruledWindow {
		rows = append(rows, rule)
	}
	return strings.Join(append(rows, help...), "\n")
}

// room is what rows at the top and of help leave for the page.
func (r *root) room(top, help int) size {
	if r.size.h >= ruledWindow {
		help++ // its rule
	}
	return size{r.size.w, r.size.h - top - help}
}
