package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// Widths and heights of the body from which the bench shows more.
const (
	sideWindow = 110 // columns with room for the list of inputs beside the view
	sideHigh   = 16  // rows of it
	sideWide   = 40
	lowBench   = 10 // rows from which the hazard line stands in full, and what a trial moved
	tilesWide  = 156
	tilesHigh  = 28 // rows from which several views stand together
)

// shares is how the room of the bench is shared out.
type shares struct {
	foot  []string
	view  size // of each view that shows
	side  bool
	tiles []int // the views that show together, none where one shows by itself
}

// tilesAcross is how many views stand side by side.
const tilesAcross = 2

func (b *bench) share(room size) shares {
	v := shares{side: room.w >= sideWindow && room.h >= sideHigh}
	v.foot = b.foot(room, v.side)
	v.view = size{room.w, max(room.h-len(v.foot), 1)}
	if v.side {
		v.view.w -= sideWide + 2
	}
	if room.w >= tilesWide && room.h >= tilesHigh {
		v.tiles = b.together()
		v.view = size{v.view.w/tilesAcross - draw.FrameAcross, v.view.h/(len(v.tiles)/tilesAcross) - draw.FrameDown}
	}
	return v
}

// together is the views that show with the one that is looked at: the first four, or the last.
func (b *bench) together() []int {
	const n = 2 * tilesAcross
	first := 0
	if b.view >= n {
		first = len(b.views) - n
	}
	all := make([]int, n)
	for i := range all {
		all[i] = first + i
	}
	return all
}

// under is what is pinned, and the tabs.
func (b *bench) under(window size) []string {
	if b.err != nil {
		return nil
	}
	return append(b.glance(window), b.tabs(window.w, b.looksAt))
}

// looksAt reports whether a destination is the view that shows.
func (b *bench) looksAt(d destination) bool { return d.page == nil && d.view == b.view }

func (b *bench) ownRules() bool { return true }

// tabs is where keys lead from the answer, the one that shows inverted, in a rule.
func (b *bench) tabs(w int, shows func(destination) bool) string {
	s, row := b.s, ""
	for _, t := range b.tabPlaces(w, shows) {
		if shows(t.to) {
			row += s.tab(t.name)
		} else {
			row += pad(" "+s.theme.Key.Render(t.to.key)+strings.TrimPrefix(t.name, t.to.key), t.wide)
		}
	}
	row = cut(row, w)
	return row + s.theme.Caption.Render(strings.Repeat(string(s.glyphs.Rule), max(w-ansi.StringWidth(row), 0)))
}

// tabPlace is a tab: where it leads, how it is named, and how many columns it takes.
type tabPlace struct {
	to   destination
	name string
	wide int
}

// tabPlaces is the tabs in so many columns: with all names, if need be with one blank between them
// for two; then those of the coat's pages as their keys, then of every page, and then all but that
// of the one that shows.
func (b *bench) tabPlaces(w int, shows func(destination) bool) (places []tabPlace) {
	all := b.destinations()
	ofCoat := func(d destination) bool { _, is := d.page.(*form); return is }
	named := [...]func(destination) bool{
		func(destination) bool { return true },
		func(d destination) bool { return !ofCoat(d) },
		func(d destination) bool { return d.page == nil },
		func(destination) bool { return false },
	}
	for _, as := range [...]struct{ named, blanks int }{{0, 2}, {0, 1}, {1, 2}, {1, 1}, {2, 2}, {3, 2}, {3, 1}} {
		places = nil
		sum := 0
		for _, d := range all {
			t := tabPlace{to: d, name: d.key, wide: as.blanks}
			if named[as.named](d) || shows(d) {
				t.name += " " + d.name
			}
			if shows(d) {
				t.wide = 2
			}
			t.wide += ansi.StringWidth(t.name)
			sum += t.wide
			places = append(places, t)
		}
		if sum <= w {
			break
		}
	}
	return places
}

// tab is the one that shows: inverted, and in brackets where nothing can be.
func (s *session) tab(text string) string {
	if s.theme.colour {
		return s.theme.Tab.Render(" " + text + " ")
	}
	return "[" + text + "]"
}

// body is the view that shows, or several, with the inputs and the hazard line.
func (b *bench) body(room size) []string {
	s := b.s
	if b.err != nil {
		return hang("! ", b.err.Error(), room.w)
	}
	v := b.share(room)
	shown := b.shown(v)
	if !v.side {
		return append(shown, v.foot...)
	}
	wide := room.w - sideWide - 2
	side := b.side(size{sideWide, len(shown)})
	for y := range shown {
		right := ""
		if y < len(side) {
			right = side[y]
		}
		shown[y] = strings.TrimRight(pad(shown[y], wide)+" "+string(s.glyphs.Upright)+right, " ")
	}
	return append(shown, v.foot...)
}

// shown is the view that is looked at, or the tiles.
func (b *bench) shown(v shares) (rows []string) {
	if v.tiles == nil {
		return b.viewRows(b.view, v.view)
	}
	framed := size{v.view.w + draw.FrameAcross, v.view.h + draw.FrameDown}
	for at := 0; at < len(v.tiles); at += tilesAcross {
		var beside []string
		for x, n := range v.tiles[at : at+tilesAcross] {
			beside = joined(beside, b.tile(n, v.view, framed), x*framed.w)
		}
		rows = append(rows, beside...)
	}
	return rows
}

// tile is a view in its frame.
func (b *bench) tile(n int, inside, framed size) []string {
	d := b.destinations()[n]
	title := d.key + " " + d.name
	switch {
	case n != b.view:
	case b.s.theme.colour:
		title = " " + title + " "
	default:
		title = "[" + title + "]"
	}
	return draw.Frame{Title: title, Marked: n == b.view, Inside: b.viewRows(n, inside)}.Rows(framed.w, framed.h, b.s.glyphs, b.s.ink)
}

// viewRows is the screenful of a view that shows, filled up to its height.
func (b *bench) viewRows(n int, view size) []string {
	all, at := b.screenfuls(n, view), 0
	if n == b.view {
		at = min(b.screenful, len(all)-1)
	}
	rows := make([]string, view.h)
	copy(rows, all[at])
	if len(all) > 1 {
		rows[view.h-1] = toRight(b.s.theme.Note.Render(cut(b.cue(n, all, at, view), view.w)), view.w)
	}
	return rows
}

// cue says that a view has more, and where.
func (b *bench) cue(n int, all [][]string, at int, view size) string {
	id := "cue-more"
	switch {
	case n != b.view:
		id = "cue-tile"
	case at == len(all)-1:
		id = "cue-top"
	default:
		warns := append(b.against(view.w), b.cautions(calc.Warn, view.w)...)
		if b.views[n].settings && len(warns) > 0 && !slices.Contains(all[at], warns[0]) {
			id = "cue-cautions"
		}
	}
	return b.s.text(id, calc.TextFigure("key", b.destinations()[n].key))
}

// verdictRows is whether to spray, in words, and what turns it.
func (b *bench) verdictRows(w int) []string {
	head := answer.Headline(b.s.words, b.s.sys, &b.tried.Setup.Judgement, answer.PlanGoes)
	text := head.Name + ": " + head.Text
	if b.changed() {
		text = b.s.say("tried") + " " + text
	}
	return wrap(text, w)
}

// foot is the input that is moved and what it moved, and the hazard line.
func (b *bench) foot(room size, side bool) (rows []string) {
	s := b.s
	if !side {
		rows = b.strip(room)
	}
	hazard := wrap(s.say(b.hazard()), room.w)
	if room.h < lowBench {
		hazard = []string{more(hazard, room.w)}
	}
	return append(rows, each(hazard, s.theme.Caption.Render)...)
}

// hazard is the id of the sentence of what harms in the coat.
func (b *bench) hazard() string { return answer.Hazard(b.tried.Setup.Cautions) }
