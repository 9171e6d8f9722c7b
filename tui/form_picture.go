package tui

import (
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// pictureWide is the columns of a page's picture where it stands beside the fields and the
// answer; in a wide window it has pictureShare of it.
const (
	pictureWide  = 44
	pictureShare = 2.0 / 5
	pictureGap   = 3 // columns between them, with a rule in the middle
)

// drawing is a page's picture, which the frame and the keys both ask for.
type drawing struct {
	of   drawnOf
	rows []string
}

// drawnOf is all that a page's picture depends on.
type drawnOf struct {
	answer answer.Answer
	room   size
	sys    unit.System
	glyphs draw.Glyphs
	colour bool
}

// picture is the answer drawn in a room, no higher than it is wide; nil where there is none
// or no room for it.
func (f *form) picture(room size) []string {
	if f.err != nil {
		return nil
	}
	room.h = min(room.h, room.w/2) // a row is as high as two columns
	of := drawnOf{f.answer, room, f.s.sys, f.s.glyphs, f.s.theme.colour}
	if f.drawn.of != of {
		f.drawn = drawing{of, f.s.drawn(f.answer, room)}
	}
	return f.drawn.rows
}

// drawn is an answer as a picture.
func (s *session) drawn(a answer.Answer, room size) []string {
	switch a := a.(type) {
	case *answer.Day:
		return s.dayPicture(a, room)
	case *answer.Thin:
		return s.thinCurve(a).Rows(room.w, room.h, s.glyphs, s.ink)
	case *answer.Film:
		return s.filmLayers(a).Rows(room.w, room.h, s.glyphs, s.ink)
	case *answer.Mix:
		return s.mixCup(a).Rows(room.w, room.h, s.glyphs, s.ink)
	}
	return nil
}

// pictureWords is what an answer's picture says that its rows do not.
func (s *session) pictureWords(a answer.Answer) []string {
	if day, ok := a.(*answer.Day); ok {
		return s.dayWords(day)
	}
	return nil
}

// beside is the room of the fields and the answer, and the picture at their right where the
// window is wide enough for both.
func (f *form) beside(room size) (text size, picture []string) {
	if room.w < sideWindow {
		return room, nil
	}
	wide := max(pictureWide, int(pictureShare*float64(room.w)))
	if picture = f.picture(size{wide, room.h}); picture == nil {
		return room, nil
	}
	return size{room.w - wide - pictureGap, room.h}, picture
}

// below is the picture under the rows of the answer, no higher than the room that these
// scroll in.
func (f *form) below(rest size) []string {
	if picture := f.picture(rest); picture != nil {
		return append([]string{""}, picture...)
	}
	return nil
}

// rowOf is the row of an answer about something, empty where it says nothing of it.
func rowOf(rows []answer.Row, about string) (row answer.Row, ok bool) {
	for _, row := range rows {
		if row.About == about && row.Role == answer.Value {
			return row, true
		}
	}
	return answer.Row{}, false
}
