package tui

import "boothset/calc"

// whyView is every reason with what it rests on, what would help, and whether the
// shop's air lasts.
func (b *bench) whyView(room size) [][]string { return leaves(b.whyBlocks(room.w), room) }

func (b *bench) whyBlocks(w int) (blocks [][]string) {
	s := b.s
	var groups []string
	of := map[string][]calc.Reason{}
	for _, r := range b.tried.setup.Reasons {
		if isNow(r.ID) {
			continue
		}
		if of[r.About] == nil {
			groups = append(groups, r.About)
		}
		of[r.About] = append(of[r.About], r)
	}
	for _, g := range groups {
		title := s.theme.Title.Render(s.say("why-of-" + g))
		for i, r := range of[g] {
			var rows []string
			if i == 0 {
				rows = append(rows, title)
			}
			rows = append(rows, hang("- ", s.text(r.ID, r.Figures), w)...)
			rows = append(rows, each(hang("  ", "["+s.words.Standing(r.Ground)+"]", w), s.theme.Note.Render)...)
			blocks = append(blocks, rows)
		}
	}
	return append(blocks, b.wouldHelp(w))
}

// wouldHelp is what in the line to change, none where nothing wins enough.
func (b *bench) wouldHelp(w int) (rows []string) {
	fixes := b.tried.setup.Fixes
	if len(fixes) == 0 {
		return nil
	}
	rows = append(rows, b.s.theme.Title.Render(b.s.say("would-help")))
	for i := range fixes {
		rows = append(rows, hang("- ", b.s.text(fixes[i].ID(), fixes[i].Figures()), w)...)
	}
	return rows
}
