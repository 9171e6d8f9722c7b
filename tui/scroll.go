package tui

// scroll is where a window stands on rows longer than it.
type scroll struct{ top int }

// at is the first row that shows of so many.
func (c scroll) at(rows int, room size) int { return min(max(c.top, 0), lowestTop(rows, room)) }

// window is the rows that show. Where more follow, the last row says so.
func (c scroll) window(s *session, rows []string, room size) []string {
	rows = rows[c.at(len(rows), room):]
	if len(rows) <= room.h {
		return rows
	}
	shown := append([]string(nil), rows[:room.h-1]...)
	return append(shown, s.theme.Note.Render(cut(s.say("more-below"), room.w)))
}

// lowestTop is the top from which the last of some rows just show.
func lowestTop(rows int, room size) int { return max(rows-room.h, 0) }

// keys scrolls so many rows, where they are more than show.
func (c *scroll) keys(rows int, room size) []binding {
	most := lowestTop(rows, room)
	if most == 0 {
		return nil
	}
	page := max(room.h-1, 1)
	move := func(pressed string) move {
		by := map[string]int{"down": 1, "j": 1, "up": -1, "k": -1, "pgdown": page, " ": page, "pgup": -page, "home": -most, "end": most}[pressed]
		c.top = min(max(c.at(rows, room)+by, 0), most)
		return nil
	}
	return []binding{bindKey(scrollKeys, "do-scroll", move), bindKey(pageKeys, "do-scroll-page", move), bindKey(homeKeys, "do-scroll-ends", move)}
}

// lead is rows that stand over a list. Where the list gives them its room they are all to be
// read, and scroll by screenfuls; else those that have no room are left out.
type lead struct {
	least  int // the entries of the list that show whatever stands over it; 0 is all
	scroll scroll
	rows   int  // as it was laid out last, 0 where nothing scrolls
	room   size // the same
}

// entries is how many entries of the list show, of most that have room, under so many rows in so
// high a room.
func (l *lead) entries(most, over, high int) int {
	if l.least == 0 {
		return most
	}
	return max(min(most, high-over), min(most, l.least))
}

// window is the rows that show in a room.
func (l *lead) window(s *session, rows []string, room size) []string {
	if l.least == 0 || room.h < 2 {
		l.rows, l.room = 0, size{}
		return rows[:max(min(len(rows), room.h), 0)]
	}
	l.rows, l.room = len(rows), room
	return l.scroll.window(s, rows, room)
}

// keys is the keys that scroll, none where all rows show.
func (l *lead) keys() []binding {
	if l.rows == 0 || lowestTop(l.rows, l.room) == 0 {
		return nil
	}
	return []binding{bindKey(screenfulKeys, "do-screenful", func(pressed string) move {
		by := max(l.room.h-1, 1)
		if pressed == "pgup" {
			by = -by
		}
		l.scroll.top = min(max(l.scroll.at(l.rows, l.room)+by, 0), lowestTop(l.rows, l.room))
		return nil
	})}
}
