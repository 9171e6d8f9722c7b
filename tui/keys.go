package tui

import (
	"slices"
	"strings"

	"boothset/presets/answer"
	"boothset/presets/question"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// binding is what a key of the key map does on a page. The help rows, the page of keys
// and the README's table are made of it.
type binding struct {
	key.Binding
	does string // the id of what it does here
	more string // the id of what stands behind that where there is room; empty where nothing does
	act  func(pressed string) move
}

// bindKey is a binding without more to say.
func bindKey(k key.Binding, does string, act func(string) move) binding {
	return binding{k, does, "", act}
}

// bindExplained is a binding with more to say, under the same id as what it does.
func bindExplained(k key.Binding, does string, act func(string) move) binding {
	return binding{k, does, "more-" + does, act}
}

func always(m move) func(string) move { return func(string) move { return m } }

func quitKey() binding { return bindKey(quitKeys, "do-quit", always(leave)) }

func unitsKey(s *session) binding {
	return bindExplained(unitsKeys, "do-units", func(string) move { s.changeUnits(); return nil })
}

// keyName is what a person calls the keys of a binding.
func (s *session) keyName(b binding) string {
	if id := b.Help().Key; s.words.Has(id) {
		return s.say(id)
	}
	return b.Help().Key // a digit
}

// find is the binding of a key.
func find(all []binding, k tea.KeyMsg) (b binding, ok bool) {
	if i := slices.IndexFunc(all, func(b binding) bool { return key.Matches(k, b.Binding) }); i >= 0 {
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

// helpRows is as many bindings as fit into rows of w columns, the last one always among
// them.
func helpRows(s *session, all []binding, w, most int) []string {
	const between = "  "
	parts := make([]string, len(all))
	wide := make([]int, len(all))
	for i, b := range all {
		name, does := s.keyName(b), s.say(b.does)
		parts[i] = s.theme.Key.Render(name) + " " + does
		wide[i] = ansi.StringWidth(name) + 1 + ansi.StringWidth(does)
	}
	last := len(all) - 1
	// rows is how many the first n take with the last.
	rows := func(n int) int {
		count, used := 1, 0
		for i := range n + 1 {
			if i == n {
				i = last
			}
			if used > 0 && used+len(between)+wide[i] > w {
				count, used = count+1, 0
			}
			if used > 0 {
				used += len(between)
			}
			used += wide[i]
		}
		return count
	}
	n := last
	for n > 0 && rows(n) > most {
		n--
	}
	return flow(append(parts[:n:n], parts[last]), between, w)
}

// explained is a page that is read with words of the trade: what they are listed under, and the
// answer that they come to something in.
type explained interface {
	terms() (view string, of *answer.Plan)
}

// keysPage explains the words of the page below it, and lists its keys.
type keysPage struct {
	s      *session
	of     page
	below  []binding
	scroll scroll
}

func (p *keysPage) enter() *question.Fault    { return nil }
func (p *keysPage) skip() bool                { return false }
func (p *keysPage) heading() (string, string) { return p.s.say("help-title"), "" }
func (p *keysPage) under(size) []string       { return nil }
func (p *keysPage) press(tea.KeyMsg) move     { return nil }

func (p *keysPage) keys(room size) []binding {
	return append([]binding{bindKey(closeKeys, "do-back", always(back))}, p.scroll.keys(len(p.rows(room.w)), room)...)
}

func (p *keysPage) rows(w int) (rows []string) {
	if words := p.s.termRows(p.of, w); len(words) > 0 {
		rows = append(words, "")
	}
	rows = append(rows, p.s.theme.Title.Render(p.s.ruled(p.s.say("keys-title"), w)))
	wide := 0
	for _, b := range p.below {
		wide = max(wide, ansi.StringWidth(p.s.keyName(b)))
	}
	for _, b := range p.below {
		text := p.s.say(b.does)
		if more := p.s.say(b.more); more != "" {
			text += ": " + more
		}
		rows = append(rows, hang(p.s.theme.Key.Render(pad(p.s.keyName(b), wide))+"  ", text, w)...)
	}
	return rows
}

// termRows is what the words of a page mean, each with what it comes to there; none where it has
// no words of its own.
func (s *session) termRows(of page, w int) (rows []string) {
	p, ok := of.(explained)
	if !ok {
		return nil
	}
	view, plan := p.terms()
	for _, term := range answer.Terms(view) {
		title, meaning := answer.Explain(s.words, term)
		if plan != nil {
			meaning = strings.TrimSpace(meaning + " " + plan.Here(s.words, s.sys, term))
		}
		rows = append(rows, each(wrap(title, w), s.theme.Title.Render)...)
		rows = append(rows, hang("  ", meaning, w)...)
	}
	return rows
}

func (p *keysPage) body(room size) []string { return p.scroll.window(p.s, p.rows(room.w), room) }
