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
