package tui

import (
	"fmt"
	"strconv"

	"boothset/presets"
)

// list is a choice of one of several.
type list struct {
	items []presets.Item
	at    int
	top   int // the first entry that shows
}

// point puts the mark on an entry, the first where there is none of that id.
func (l *list) point(id string) {
	l.at = 0
	for i := range l.items {
		if l.items[i].ID == id {
			l.at = i
		}
	}
}

func (l *list) picked() presets.Item { return l.items[l.at] }

// keys moves the mark; a digit picks and goes on.
func (l *list) keys(accept func(string) move) []binding {
	digit := binding{show: "1", does: "pick", act: func(key string) move {
		n, err := strconv.Atoi(key)
		if err != nil {
			return nil
		}
		l.at = n - 1
		return accept(key)
	}}
	for i := range min(len(l.items), 9) {
		digit.keys = append(digit.keys, strconv.Itoa(i+1))
	}
	if n := len(digit.keys); n > 1 {
		digit.show = fmt.Sprintf("1-%d", n)
	}
	choose := binding{keys: []string{"up", "down", "k", "j"}, show: "up/down", does: "choose", act: func(key string) move {
		if key == "up" || key == "k" {
			l.at = max(l.at-1, 0)
		} else {
			l.at = min(l.at+1, len(l.items)-1)
		}
		return nil
	}}
	return []binding{digit, choose}
}

// rows is as many entries as there is room for, the marked one among them. Where more
// lie above or below, the row at that end says so.
func (l *list) rows(s *session, room size) []string {
	l.top = min(max(l.top, l.at-room.h+1), l.at)
	l.top = max(min(l.top, len(l.items)-room.h), 0)
	end := min(l.top+room.h, len(l.items))
	var rows []string
	for i := l.top; i < end; i++ {
		mark, number := " ", " "
		switch {
		case i == l.at:
			mark = ">"
		case i == l.top && i > 0:
			mark = "^"
		case i == end-1 && end < len(l.items):
			mark = "v"
		}
		if i < 9 {
			number = strconv.Itoa(i + 1)
		}
		row := cut(fmt.Sprintf("%s %s  %s", mark, number, plain(l.items[i].Name)), room.w)
		if i == l.at {
			row = s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}
