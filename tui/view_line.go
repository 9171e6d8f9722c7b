package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// lineView is the line as a pipe under its pressure, as it falls from the wall to the cap.
func (b *bench) lineView(room size) [][]string {
	if !b.tried.ShowsLine() {
		return shareOut([][]string{b.unset(room.w)}, room)
	}
	reasons := b.lineSentences(room.w)
	pipe := b.pipe()
	if rows := pipe.Rows(room.w, room.h-len(reasons), b.s.glyphs, b.s.ink); rows != nil {
		return [][]string{append(rows, reasons...)}
	}
	return shareOut(append([][]string{reasons}, b.lineParts(room.w)...), room)
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

// pipeTicks is the most ticks of the pressure over the line.
const pipeTicks = 6

func (b *bench) pipe() draw.Pipe {
	s, v, pressure := b.s, b.tried.Setup, b.s.axis(unit.Pressure)
	pressure.decimals = 0
	p := draw.Pipe{Title: unit.Pressure.Unit(s.sys)}
	top := 0.0
	for i := range v.Line {
		step := &v.Line[i]
		if i == 0 && step.Kind == line.RegulatorKind {
			continue // the fall begins after it
		}
		part := draw.PipePart{
			Name: plain(step.Name), In: pressure.at(float64(step.In)), Out: pressure.at(float64(step.Out)), Bore: step.Bore.MM(), Length: float64(step.Length),
			Own: step.Kind == line.PassagesKind || step.Kind == line.CapKind, Worst: i == v.Bottleneck,
		}
		if part.Worst {
			p.Worst = s.text("pipe-worst", calc.FigureOf("loss", calc.FigureDrop, max(step.Loss, 0)))
		}
		top = max(top, part.In, part.Out)
		p.Parts = append(p.Parts, part)
	}
	p.Pressure = draw.NewScale(0, top, pipeTicks, pressure.number)
	return p
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
