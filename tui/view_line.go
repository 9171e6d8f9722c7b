package tui

import (
	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// lineView is the pressure as it falls from the wall to the cap.
func (b *bench) lineView(room size) [][]string {
	told := b.lineTold(room.w)
	fall := b.fall()
	if room.w < narrowColumns {
		fall.Text = func(v float64) string { return bare(b.s.pressureText(v)) }
	}
	whole := func(rows []string) bool { return len(rows) > len(fall.Parts) } // a row a part, and what is left
	if rows := fall.Rows(room.w, room.h-len(told), b.s.glyphs, b.s.ink); whole(rows) {
		return [][]string{append(rows, told...)}
	}
	rows := fall.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink)
	if whole(rows) {
		return leaves([][]string{rows, told}, room)
	}
	return leaves(append([][]string{rows, told}, b.lineText(room.w)...), room)
}

// lineTold is what costs most, and what all couplings cost.
func (b *bench) lineTold(w int) (rows []string) {
	for _, r := range b.tried.setup.Reasons {
		if r.About == "line" {
			rows = append(rows, wrap(b.s.text(r.ID, r.Figures), w)...)
		}
	}
	return rows
}

func (b *bench) fall() draw.Fall {
	s, v := b.s, b.tried.setup
	f := draw.Fall{
		Text: s.pressureText, Worst: s.say("fall-worst"), Others: s.say("fall-others"), End: s.say("fall-end"),
	}
	for i, p := range v.Line {
		if p.Kind == line.RegulatorKind && b.tried.request.RegulatorAt == calc.Wall {
			continue // the fall begins behind it
		}
		part := draw.Segment{Name: plain(p.Name), In: s.pressure(p.In), Out: s.pressure(p.Out), Worst: i == v.Bottleneck}
		if p.Kind == line.RegulatorKind {
			part.Note = s.say("fall-sets")
		}
		f.Parts = append(f.Parts, part)
	}
	return f
}

// lineText is the fall in sentences, one a part.
func (b *bench) lineText(w int) (blocks [][]string) {
	for i, p := range b.tried.setup.Line {
		id := "part-loses"
		switch {
		case i == b.tried.setup.Bottleneck:
			id = "part-loses-most"
		case p.Kind == line.RegulatorKind:
			id = "part-sets"
		}
		f := calc.Figures{named("part", plain(p.Name)), gaugeFigure("in", p.In), gaugeFigure("out", p.Out), dropFigure("loss", max(p.Loss, unit.Drop(0)))}
		blocks = append(blocks, hang("- ", b.s.text(id, f), w))
	}
	return blocks
}
