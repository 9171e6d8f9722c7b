package tui

import (
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// safety is the first page of every start.
type safety struct {
	s      *session
	scroll scroll
}

func (p *safety) enter() *question.Fault    { return nil }
func (p *safety) skip() bool                { return false }
func (p *safety) heading() (string, string) { return p.s.say("safety-title"), p.s.unitsName() }
func (p *safety) under(size) []string       { return nil }
func (p *safety) press(tea.KeyMsg) move     { return nil }

func (p *safety) keys(room size) []binding {
	all := []binding{bindKey(onKeys, "do-understood", always(forward))}
	all = append(all, p.scroll.keys(len(p.rows(room)), room)...)
	return append(all, unitsKey(p.s), quitKey())
}

// safetySentences are what is said before anything else.
var safetySentences = []string{"safety-breathing", "safety-vapour", "safety-air", "safety-order"}

func (p *safety) rows(room size) (rows []string) {
	for _, id := range safetySentences {
		if room.h > 16 {
			rows = append(rows, "")
		}
		for _, row := range hang("- ", p.s.say(id), room.w-2*len(margin)) {
			rows = append(rows, margin+row)
		}
	}
	if p.s.notice != "" {
		rows = append(rows, each(hang(margin+"! ", p.s.notice, room.w-len(margin)), p.s.theme.Note.Render)...)
	}
	return rows
}

func (p *safety) body(room size) []string { return p.scroll.window(p.s, p.rows(room), room) }
