package tui

import (
	"boothset/presets"

	tea "github.com/charmbracelet/bubbletea"
)

// safety is the first page of every start.
type safety struct {
	s      *session
	scroll scroll
}

func (p *safety) enter() *presets.FieldError { return nil }
func (p *safety) skip() bool                 { return false }
func (p *safety) heading() (string, string)  { return "before you spray", p.s.unitsName() }
func (p *safety) press(tea.KeyMsg) move      { return nil }

func (p *safety) keys() []binding {
	goOn := binding{keys: []string{"enter", " "}, show: "enter", does: "understood, go on", act: always(forward)}
	all := append([]binding{goOn}, p.scroll.keys()...)
	return append(all, unitsKey(p.s), quitKey())
}

func (p *safety) body(room size) []string {
	const mark = "- "
	var rows []string
	for _, id := range []string{"safety-breathing", "safety-vapour", "safety-air", "safety-order"} {
		if room.h > 16 {
			rows = append(rows, "")
		}
		for _, row := range hang(mark, p.s.say(id), room.w-2*len(margin)) {
			rows = append(rows, margin+row)
		}
	}
	return p.scroll.window(p.s, rows, room)
}
