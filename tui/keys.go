package tui

import (
	"slices"

	"boothset/presets"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// binding is what a key does. The help row and the page of keys are made of it.
type binding struct {
	keys []string // as the terminal library names them
	show string   // the keys as a person calls them
	does string
	act  func(key string) move
	more string // what stands behind does where there is room
}

func always(m move) func(string) move { return func(string) move { return m } }

func quitKey() binding {
	return binding{keys: []string{"q"}, show: "q", does: "quit", act: always(leave)}
}

func unitsKey(s *session) binding {
	return binding{keys: []string{"u"}, show: "u", does: "units", act: func(string) move { s.changeUnits(); return nil }, more: moreUnits}
}

const moreUnits = "US or metric; what was typed keeps its meaning"

// find is the binding of a key.
func find(all []binding, k tea.KeyMsg) (b binding, ok bool) {
	if i := slices.IndexFunc(all, func(b binding) bool { return slices.Contains(b.keys, k.String()) }); i >= 0 {
		return all[i], true
	}
	return b, false
}

// apart is a key message as single keys: two quick presses can come as one message of
// two characters. Pasted text stays whole.
func apart(k tea.KeyMsg) []tea.KeyMsg {
	if k.Type != tea.KeyRunes || k.Paste || len(k.Runes) < 2 {
		return []tea.KeyMsg{k}
	}
	single := make([]tea.KeyMsg, len(k.Runes))
	for i, r := range k.Runes {
		single[i] = tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}, Alt: k.Alt}
	}
	return single
}

// helpRows is as many bindings as fit into a row of w columns, the last one always among
// them. Where more than one would be left out and the window is high, they have two rows.
func helpRows(s *session, all []binding, w, high int) []string {
	const between = "  "
	last := all[len(all)-1]
	width := func(b binding) int { return ansi.StringWidth(b.show) + 1 + ansi.StringWidth(b.does) }
	// rows is how many the first n take with the last.
	rows := func(n int) int {
		count, used := 1, 0
		for i := range n + 1 {
			b := last
			if i < n {
				b = all[i]
			}
			if used > 0 && used+len(between)+width(b) > w {
				count, used = count+1, 0
			}
			if used > 0 {
				used += len(between)
			}
			used += width(b)
		}
		return count
	}
	n, most := len(all)-1, 1
	if high >= tallWindow && rows(n-1) > 1 {
		most = 2
	}
	for n > 0 && rows(n) > most {
		n--
	}
	var parts []string
	for _, b := range append(slices.Clone(all[:n]), last) {
		parts = append(parts, s.theme.Key.Render(b.show)+" "+b.does)
	}
	return flow(parts, between, w)
}

// keysPage lists every key of the page below it.
type keysPage struct {
	s      *session
	below  []binding
	scroll scroll
}

func (p *keysPage) enter() *presets.FieldError { return nil }
func (p *keysPage) skip() bool                 { return false }
func (p *keysPage) heading() (string, string)  { return "the keys here", "" }
func (p *keysPage) press(tea.KeyMsg) move      { return nil }

func (p *keysPage) keys() []binding {
	return append([]binding{{keys: []string{"esc", "enter", " ", "left", "backspace", "?"}, show: "esc", does: "back", act: always(back)}}, p.scroll.keys()...)
}

func (p *keysPage) body(room size) []string {
	wide := 0
	for _, b := range p.below {
		wide = max(wide, ansi.StringWidth(b.show))
	}
	var rows []string
	for _, b := range p.below {
		text := b.does
		if b.more != "" {
			text += ": " + b.more
		}
		rows = append(rows, hang(p.s.theme.Key.Render(pad(b.show, wide))+"  ", text, room.w)...)
	}
	return p.scroll.window(p.s, rows, room)
}
