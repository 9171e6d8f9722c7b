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
	c.most = 0
	if len(rows) > room.h {
		c.most = len(rows) - c.page
	}
	c.top = min(max(c.top, 0), c.most)
	rows = rows[c.top:]
	if len(rows) <= room.h {
		return rows
	}
	shown := append([]string(nil), rows[:room.h-1]...)
	return append(shown, s.theme.Note.Render(cut("v more below", room.w)))
}

// keys scrolls, where there is more than shows.
func (c *scroll) keys() []binding {
	if c.most == 0 {
		return nil
	}
	by := func(rows func() int) func(string) move {
		return func(string) move { c.top = min(max(c.top+rows(), 0), c.most); return nil }
	}
	return []binding{
		{keys: []string{"down", "j"}, show: "down", does: "scroll", act: by(func() int { return 1 })},
		{keys: []string{"up", "k"}, show: "up", does: "scroll back", act: by(func() int { return -1 })},
		{keys: []string{"pgdown"}, show: "page down", does: "scroll on by a window", act: by(func() int { return c.page })},
		{keys: []string{"pgup"}, show: "page up", does: "scroll back by a window", act: by(func() int { return -c.page })},
		{keys: []string{"home"}, show: "home", does: "the top", act: by(func() int { return -c.top })},
		{keys: []string{"end"}, show: "end", does: "the end", act: by(func() int { return c.most })},
	}
}
