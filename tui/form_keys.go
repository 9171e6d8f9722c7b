package tui

import (
	"slices"

	"boothset/presets/catalogue"
	"boothset/presets/edit"

	tea "github.com/charmbracelet/bubbletea"
)

// choose picks the next choice of a box, or the one before.
func (f *form) choose(pressed string) move {
	b := &f.all[f.at]
	at := -1
	if now := f.values(b); len(now) > 0 {
		at = b.choice(now[0].ID)
	}
	b.picked = neighbour(pressed, at, len(b.choices))
	f.solve()
	return nil
}

// neighbour is the place to the left or to the right of another of n, as far as there is one.
func neighbour(pressed string, at, n int) int {
	if pressed == "left" {
		return max(at-1, 0)
	}
	return min(at+1, n-1)
}

// suggested is what may be picked in a field that is typed, as it stands.
func (f *form) suggested(b *box) []catalogue.Choice {
	return edit.Suggestions(f.s.reader, b.Field, b.own(), f.read)
}

// suggest puts the next suggestion into the field, or the one before.
func (f *form) suggest(pressed string) move {
	b := &f.all[f.at]
	all := f.suggested(b)
	at := slices.IndexFunc(all, func(c catalogue.Choice) bool { return c.ID == b.own() })
	b.typed.set(all[neighbour(pressed, at, len(all))].ID)
	f.solve()
	return nil
}

func (f *form) changeUnits(pressed string) move {
	f.from.changeUnits(pressed)
	f.solve()
	return nil
}

func (f *form) keys(room size) []binding {
	if f.onAnswer() {
		all := []binding{bindExplained(backKeys, "do-back-answer", always(back)), bindKey(firstKeys, "do-fields", f.next), bindKey(lastKeys, "do-last-field", f.last)}
		all = append(all, bindExplained(unitsKeys, "do-units", f.changeUnits), quitKey())
		text, _ := f.beside(room)
		rows, rest := f.answerRows(text)
		return append(all, f.scroll.keys(len(rows), rest)...)
	}
	all := []binding{bindExplained(nextKeys, "do-next", f.next), bindExplained(escKeys, "do-back-answer", always(back)), bindExplained(answerKeys, "do-answer", f.toAnswer)}
	if f.at > 0 {
		all = slices.Insert(all, 2, bindExplained(beforeKeys, "do-before", f.last))
	}
	b := &f.all[f.at]
	switch {
	case b.choices != nil:
		all = append(all, bindKey(nudgeKeys, "do-choose", f.choose))
	case f.suggested(b) != nil:
		all = append(all, bindExplained(nudgeKeys, "do-suggest", f.suggest))
	}
	if b.own() != "" {
		all = append(all, bindExplained(clearKeys, "do-clear", func(string) move {
			b.clear()
			f.solve()
			return nil
		}))
	}
	return all
}

func (f *form) press(k tea.KeyMsg) move {
	f.fault = ""
	if f.onAnswer() || f.all[f.at].choices != nil {
		return nil
	}
	b := &f.all[f.at]
	if !f.s.typeInto(&b.typed, b.Field, k) {
		f.fault = f.s.say("field-runes")
	}
	return nil
}
