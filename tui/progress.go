package tui

import (
	"slices"
	"strings"

	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// progressUnder is how far the job has come under a question's heading, and in a high window
// the answers so far.
func (s *session) progressUnder(now question.Part, window size) []string {
	rows := []string{s.progress(now, window.w)}
	if window.h >= roomyWindow {
		rows = append(rows, s.trail(window.w, 1)...)
	}
	return rows
}

// parts is the parts of the job that are asked for as things stand, in order.
func (s *session) parts() (all []question.Part) {
	for i := range s.steps {
		if st := &s.steps[i]; s.asked(st) && !slices.Contains(all, st.part) {
			all = append(all, st.part)
		}
	}
	return all
}

// sayProgress begins the sentence that names a part in the row of them all.
const sayProgress = "progress-"

// progress is the parts of the job in a row of w columns: those that are done behind a tick,
// the one that is asked for in brackets, those to come behind a dot. Where there is no room
// for all their names, that of the one alone.
func (s *session) progress(now question.Part, w int) string {
	parts := s.parts()
	at := slices.Index(parts, now)
	marks := [...]string{string(s.glyphs.Done), string(s.glyphs.Dot)}
	for _, whole := range []bool{true, false} {
		names, wide := make([]string, len(parts)), -len(betweenParts)
		for i, part := range parts {
			mark, style := marks[1], s.theme.Note
			if i < at {
				mark, style = marks[0], s.theme.Go
			}
			name := s.say(sayProgress + string(part))
			switch {
			case i == at:
				names[i] = s.theme.Tab.Render("[" + name + "]")
			case whole:
				names[i] = style.Render(mark) + " " + name
			default:
				names[i] = style.Render(mark)
			}
			wide += ansi.StringWidth(names[i]) + len(betweenParts)
		}
		if wide <= w || !whole {
			return cut(strings.Join(names, betweenParts), w)
		}
	}
	return ""
}

const betweenParts = "  "
