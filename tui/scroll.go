package tui

// scroll is a window that moves over rows longer than it.
type scroll struct {
	top  int
	most int // the lowest top that shows anything new, as last drawn
	page int // rows last shown
}

// window is the rows that show. Where more follow, the last row says so.
func (c *scroll) window(s *session, rows []string, room size) []string {
	c.page = max(room.h-1, 1)
	c.most = lowestTop(len(rows), room)
	c.top = min(max(c.top, 0), c.most)
	rows = rows[c.top:]
	if len(rows) <= room.h {
		return rows
	}
	shown := append([]string(nil), rows[:room.h-1]...)
	return append(shown, s.theme.Note.Render(cut("v more below", room.w)))
}

// lowestTop is the top from which the last of some rows just show.
func lowestTop(rows int, room size) int { return max(rows-room.h, 0) }

// keys scrolls, where there is more than shows.
func (c *scroll) keys() []binding {
	if c.most == 0 {
		return nil
	}
	scrolls := func(show, does string, keys ...string) binding {
		return binding{keys: keys, show: show, does: does, act: func(key string) move {
			by := map[string]int{"down": 1, "j": 1, "up": -1, "k": -1, "pgdown": c.page, " ": c.page, "pgup": -c.page, "home": -c.top, "end": c.most}[key]
			c.top = min(max(c.top+by, 0), c.most)
			return nil
		}}
	}
	return []binding{
		scrolls("up/down", "scroll", "up", "down", "k", "j"),
		scrolls("page up/down", "scroll a window", "pgup", "pgdown", " "),
		scrolls("home/end", "top or end", "home", "end"),
	}
}
