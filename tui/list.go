package tui

import (
	"fmt"
	"strconv"

	"boothset/presets/catalogue"

	"github.com/charmbracelet/x/ansi"
)

// list is a choice of one of several.
type list struct {
	items []catalogue.Choice
	at    int
	means func(id string) string // what an entry comes to; nil where the names say it all
}

// meaning is what the entry at a place comes to.
func (l *list) meaning(at int) string {
	if l.means == nil {
		return ""
	}
	return plain(l.means(l.items[at].ID))
}

// meanings is how wide the names are where what every entry comes to fits behind them in w
// columns, 0 where it does not.
func (l *list) meanings(w int) (names int) {
	wide := 0
	for i := range l.items {
		names = max(names, ansi.StringWidth(plain(l.items[i].Name)))
		wide = max(wide, ansi.StringWidth(l.meaning(i)))
	}
	if wide == 0 || len(listPrefix)+names+len(listGap)+wide > w {
		return 0
	}
	return names
}

// What stands before an entry's name, as wide as it is, and behind it.
const (
	listPrefix = "> 1  "
	listGap    = "   "
)

// listOf is a list of what can be done, each said under a prefix and its id.
func (s *session) listOf(prefix string, ids ...string) list {
	var l list
	for _, id := range ids {
		l.items = append(l.items, s.choice(id, prefix+id))
	}
	return l
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

func (l *list) picked() catalogue.Choice { return l.items[l.at] }

// id is that of the marked entry, empty where there is none.
func (l *list) id() string {
	if len(l.items) == 0 {
		return ""
	}
	return l.picked().ID
}

// keys moves the mark; a digit picks and goes on.
func (l *list) keys(accept func(string) move) []binding {
	pick := bindExplained(digits(len(l.items)), "do-pick", func(pressed string) move {
		n, err := strconv.Atoi(pressed)
		if err != nil {
			return nil
		}
		l.at = n - 1
		return accept(pressed)
	})
	choose := bindKey(chooseKeys, "do-choose", func(pressed string) move {
		if pressed == "up" || pressed == "k" {
			l.at = max(l.at-1, 0)
		} else {
			l.at = min(l.at+1, len(l.items)-1)
		}
		return nil
	})
	return []binding{pick, choose}
}

// rows is as many entries as there is room for, the marked one among them. Where more
// lie above or below, the row at that end says so.
func (l *list) rows(s *session, room size) []string {
	top := around(l.at, len(l.items), room.h)
	end := min(top+room.h, len(l.items))
	var rows []string
	names := l.meanings(room.w)
	for i := top; i < end; i++ {
		number := " "
		if i < 9 {
			number = strconv.Itoa(i + 1)
		}
		row := cut(fmt.Sprintf("%s %s  %s", listMark(i, l.at, top, end, len(l.items)), number, plain(l.items[i].Name)), room.w)
		means := ""
		if names > 0 && l.meaning(i) != "" {
			row = pad(row, len(listPrefix)+names)
			means = listGap + s.theme.Note.Render(l.meaning(i))
		}
		if i == l.at {
			row = s.theme.Focus.Render(row)
		}
		rows = append(rows, row+means)
	}
	return rows
}

// around is the first of n entries that shows so that the one at stands in the middle of
// the high that do, as far as the ends allow.
func around(at, n, high int) int { return max(min(at-high/2, n-high), 0) }

// listMark stands before an entry: the one at, and the first and the last that show
// where more lie above or below.
func listMark(i, at, top, end, n int) string {
	switch {
	case i == at:
		return ">"
	case i == top && i > 0:
		return "^"
	case i == end-1 && end < n:
		return "v"
	}
	return " "
}
