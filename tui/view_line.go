package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// narrowLine is the width below which the figures of the line stand without their unit.
const narrowLine = 54

// lineView is the pressure as it falls from the wall to the cap.
func (b *bench) lineView(room size) [][]string {
	if !b.tried.ShowsLine() {
		return shareOut([][]string{b.unset(room.w)}, room)
	}
	reasons := b.lineSentences(room.w)
	fall := b.fall()
	if room.w < narrowLine {
		fall.Text = b.s.axis(unit.Pressure).number
	}
	whole := func(rows []string) bool { return len(rows) > len(fall.Parts) } // a row a part, and what is left
	if rows := fall.Rows(room.w, room.h-len(reasons), b.s.glyphs, b.s.ink); whole(rows) {
		return [][]string{append(rows, reasons...)}
	}
	rows := fall.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink)
	if whole(rows) {
		return shareOut([][]string{rows, reasons}, room)
	}
	return shareOut(append([][]string{rows, reasons}, b.lineParts(room.w)...), room)
}

// lineSentences is what costs most, and what all couplings cost.
func (b *bench) lineSentences(w int) (rows []string) {
	for _, r := range b.tried.Setup.Reasons {
		if r.About == "line" {
			rows = append(rows, wrap(b.s.text(r.ID, r.Figures...), w)...)
		}
	}
	return rows
}

// lineInWords is the view without its picture.
func (b *bench) lineInWords(w int) [][]string {
	if !b.tried.ShowsLine() {
		return [][]string{b.unset(w)}
	}
	return [][]string{b.lineSentences(w), slices.Concat(b.lineParts(w)...)}
}

func (b *bench) fall() draw.Fall {
	s, v, pressure := b.s, b.tried.Setup, b.s.axis(unit.Pressure)
	f := draw.Fall{
		Text: pressure.text, Worst: s.say("fall-worst"), Others: s.say("fall-others"), End: s.say("fall-end"),
	}
	for i, p := range v.Line {
		if i == 0 && p.Kind == line.RegulatorKind {
			continue // the fall begins behind it
		}
		part := draw.Segment{Name: plain(p.Name), In: pressure.at(float64(p.In)), Out: pressure.at(float64(p.Out)), Worst: i == v.Bottleneck}
		if p.Kind == line.RegulatorKind {
			part.Note = s.say("fall-sets")
		}
		f.Parts = append(f.Parts, part)
	}
	return f
}

// lineParts is the fall in sentences, one a part.
func (b *bench) lineParts(w int) (blocks [][]string) {
	for i, p := range b.tried.Setup.Line {
		id := "part-loses"
		switch {
		case i == b.tried.Setup.Bottleneck:
			id = "part-loses-most"
		case p.Kind == line.RegulatorKind:
			id = "part-sets"
		}
		text := b.s.text(id, calc.TextFigure("part", plain(p.Name)), calc.FigureOf("in", calc.FigureGauge, p.In), calc.FigureOf("out", calc.FigureGauge, p.Out),
			calc.FigureOf("loss", calc.FigureDrop, max(p.Loss, 0)))
		blocks = append(blocks, hang("- ", text, w))
	}
	return blocks
}
