package tui

import "boothset/presets/answer"

// whyView is every reason with what it rests on, what would help, and whether the
// shop's air lasts.
func (b *bench) whyView(room size) [][]string { return shareOut(b.whyInWords(room.w), room) }

func (b *bench) whyInWords(w int) (blocks [][]string) {
	s := b.s
	var groups []string
	of := map[string][]answer.Row{}
	for _, r := range answer.ReasonRows(s.words, s.sys, b.tried.Setup.Reasons) {
		if of[r.About] == nil {
			groups = append(groups, r.About)
		}
		of[r.About] = append(of[r.About], r)
	}
	for _, g := range groups {
		for i, r := range of[g] {
			var rows []string
			if i == 0 {
				rows = append(rows, s.theme.Title.Render(s.say("why-of-"+g)))
			}
			rows = append(rows, hang("- ", r.Text, w)...)
			rows = append(rows, each(hang("  ", "["+r.Ground+"]", w), s.theme.Note.Render)...)
			blocks = append(blocks, rows)
		}
	}
	return append(blocks, b.wouldHelp(w))
}

// wouldHelp is what in the line to change, none where nothing wins enough.
func (b *bench) wouldHelp(w int) (rows []string) {
	s := b.s
	if !b.tried.ShowsLine() {
		return nil
	}
	for i, r := range answer.FixRows(s.words, s.sys, b.tried.Setup.Fixes) {
		if i == 0 {
			rows = append(rows, s.theme.Title.Render(s.say("would-help")))
		}
		rows = append(rows, hang("- ", r.Text, w)...)
	}
	return rows
}
