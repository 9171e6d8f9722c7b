package tui

import (
	"strings"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// The columns of the line's table. The name takes what is left.
const (
	endColumn  = 8 // in, out
	lossColumn = 9
	markColumn = len(costsMost)
	barColumn  = 9
	leastName  = 16
	// wideTable is the width from which the pressures at the ends of each part show.
	wideTable   = 78
	widestTable = 88
)

// costsMost marks the bottleneck, and setsIt the regulator.
const (
	costsMost = "< costs most"
	setsIt    = "< sets it"
)

// line is each part of the line with what it takes, and a bar of its share.
func (a *answer) line(v *calc.Setup, w int) []string {
	sys := a.s.sys
	w = min(w, widestTable)
	name := w - lossColumn - 2 - markColumn
	ends, bars := w >= wideTable, name-barColumn >= leastName
	if ends {
		name -= 2 * endColumn
	}
	if bars {
		name -= barColumn
	}
	row := func(what, in, out, loss, bar, mark string) string {
		text := pad(what, name)
		if ends {
			text += toRight(in, endColumn) + toRight(out, endColumn)
		}
		text += toRight(loss, lossColumn) + "  "
		if bars {
			text += pad(bar, barColumn)
		}
		return strings.TrimRight(cut(text+mark, w), " ")
	}
	rows := []string{a.s.theme.Title.Render(row("the line", "in", "out", "loss", "", ""))}
	for i, p := range v.Line {
		mark := ""
		switch {
		case i == v.Bottleneck:
			mark = costsMost
		case p.Kind == line.RegulatorKind:
			mark = setsIt
		}
		rows = append(rows, row(plain(p.Name), sys.Gauge(p.In, unit.Usual), sys.Gauge(p.Out, unit.Usual), sys.Drop(p.Loss, unit.Usual),
			draw.Bar(p.Share, barColumn-1, a.s.glyphs), mark))
	}
	return rows
}
