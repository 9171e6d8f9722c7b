package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// zone is a place, in columns and rows, and what a click on it does.
type zone struct {
	x, y, w, h int
	act        move
}

// zones is what can be clicked. They are worked out by what lays the page out, when it is
// clicked: nothing of them is in the frame.
type zones []zone

// at is what a click does, nil where there is nothing to click.
func (all zones) at(x, y int) move {
	for _, z := range all {
		if x >= z.x && x < z.x+z.w && y >= z.y && y < z.y+z.h {
			return z.act
		}
	}
	return nil
}

// clickable is a page whose room can be clicked: x and y count from its first column and row.
type clickable interface {
	clicked(x, y int, room size) move
}

// zoned is a page that has zones outside its room too, such as its tabs; they count from the
// first column and row of the window, and come before its room.
type zoned interface {
	zones(window size) zones
}

// zones is the entries of a list of so many rows, its first row at a place: a click marks an
// entry, a click on the marked one takes it.
func (l *list) zones(x, y int, room size, take func(string) move) (all zones) {
	top := around(l.at, len(l.items), room.h)
	for i := top; i < min(top+room.h, len(l.items)); i++ {
		act := func(*root) { l.at = i }
		if i == l.at {
			act = func(r *root) {
				if m := take(""); m != nil {
					m(r)
				}
			}
		}
		all = append(all, zone{x, y + i - top, room.w, 1, act})
	}
	return all
}

// point takes what the mouse did: a click, a turn of its wheel.
func (r *root) point(m tea.MouseMsg) {
	if tooSmall(r.size) || m.Action != tea.MouseActionPress {
		return
	}
	switch m.Button {
	case tea.MouseButtonLeft:
		r.bench.notice = ""
		if act := r.clicked(m.X, m.Y); act != nil {
			act(r)
		}
	case tea.MouseButtonWheelUp:
		r.wheel(tea.KeyUp, tea.KeyPgUp)
	case tea.MouseButtonWheelDown:
		r.wheel(tea.KeyDown, tea.KeyPgDown)
	}
}

// clicked is what a click into the window does.
func (r *root) clicked(x, y int) move {
	p := r.page()
	if p, ok := p.(zoned); ok {
		if act := p.zones(r.size).at(x, y); act != nil {
			return act
		}
	}
	f := r.frame()
	if p, ok := p.(clickable); ok && y >= f.top() && y < f.top()+f.room.h {
		return p.clicked(x, y-f.top(), f.room)
	}
	return nil
}

// wheeled is what the keys that a wheel stands for may do: it walks and scrolls, and changes
// nothing.
var wheeled = map[string]bool{"do-choose": true, "do-scroll": true, "do-screenful": true}

// wheel presses the first of some keys that walks or scrolls here.
func (r *root) wheel(keys ...tea.KeyType) {
	for _, k := range keys {
		msg := tea.KeyMsg{Type: k}
		if b, found := find(r.keys(), msg); found && wheeled[b.does] {
			r.press(msg)
			return
		}
	}
}
