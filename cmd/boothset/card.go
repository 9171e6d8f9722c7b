package main

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/charmbracelet/x/ansi"
)

// cardWidth is how wide a printed answer may be.
const cardWidth = 80

// partWidth is how much of it the name of a part of the line has; the figures need
// the rest.
const partWidth = cardWidth - 3*(1+9) - (1 + 5) - (1 + 4)

// appendCard appends the answer as a person would write it on a card.
func appendCard(dst []byte, p *plan, sys unit.System, w *words.Words) []byte {
	r, s := &p.request, &p.setup
	fine := words.PressureDecimals(sys)
	line := func(format string, args ...any) { dst = append(fmt.Appendf(dst, format, args...), '\n') }
	for _, l := range wrap(fmt.Sprintf("%s, %s gun. Air %s at %s humidity, supply %s.", r.Coat.Name, r.Gun.Name,
		sys.Temp(r.Day.Air, unit.Usual), unit.PercentText(r.Day.Humidity, unit.Usual), sys.Gauge(r.Supply, unit.Usual)), cardWidth) {
		line("%s", l)
	}
	line("")
	set := map[calc.Place]string{calc.Wall: "WALL", calc.Foot: "AT THE FOOT", calc.Nowhere: "WALL"}[r.RegulatorAt]
	line("  %-12s %-10s trigger pulled; %s with no air moving", set, sys.Gauge(s.Wall.Flowing, unit.Usual), sys.Gauge(s.Wall.Static, fine))
	line("  %-12s %-10s between %s and %s", "DISTANCE", sys.Small(s.Distance.Target, unit.Usual), sys.Small(s.Distance.Low, unit.Usual), sys.Small(s.Distance.High, unit.Usual))
	line("  %-12s %-10s %s in hand; not below %s", "INLET VALVE", unit.PercentText(s.Valve.Opening, 0)+" open", sys.Drop(s.Valve.Reserve, unit.Usual), unit.PercentText(s.Valve.Floor, 0))
	line("")
	wants := fmt.Sprintf("%s behind the valve, %s, %s at the cap", sys.Gauge(s.Working.Pressure, fine), sys.Flow(s.Working.Flow, unit.Usual), sys.Gauge(s.Working.Cap, fine))
	if s.Short.Is {
		line("The gun wants %s.", wants)
		line("It gets %s at most.", sys.Gauge(s.Short.Best, fine))
	} else {
		line("At the gun %s.", wants)
	}
	for _, l := range w.Spread(sys, p.spread) {
		dst = hang(dst, "-", l)
	}
	line("")
	dst = appendCautions(dst, s.Cautions, sys, w)
	line("")
	line("%-*s %9s %9s %9s %5s %4s", partWidth, "The line", "in", "out", "loss", "share", "Mach")
	for i, p := range s.Line {
		mark := ""
		if i == s.Bottleneck {
			mark = " <"
		}
		name := ansi.Truncate(p.Name, partWidth-len(mark), "...") + mark
		share := ""
		if p.Share > 0 {
			share = unit.PercentText(p.Share, 0)
		}
		line("%-*s %9s %9s %9s %5s %4.2f", partWidth, name, sys.Gauge(p.In, fine), sys.Gauge(p.Out, fine), sys.Drop(p.Loss, unit.Usual), share, p.Mach)
	}
	line("")
	if len(s.Fixes) > 0 {
		line("What would help")
		for i := range s.Fixes {
			f := &s.Fixes[i]
			dst = hang(dst, "-", w.Text(sys, f.ID(), f.Figures()))
		}
		line("")
	}
	return appendReasons(dst, s.Reasons, sys, w)
}

func appendCautions(dst []byte, cautions []calc.Caution, sys unit.System, w *words.Words) []byte {
	for _, c := range cautions {
		dst = hang(dst, levelMark[c.Level], w.Text(sys, c.ID, c.Figures))
	}
	return dst
}

func appendReasons(dst []byte, reasons []calc.Reason, sys unit.System, w *words.Words) []byte {
	dst = append(dst, "Why\n"...)
	for _, r := range reasons {
		dst = hang(dst, "-", w.Text(sys, r.ID, r.Figures)+" ["+words.Standing(r.Standing)+"]")
	}
	return dst
}

var levelMark = map[calc.Level]string{calc.Stop: "STOP", calc.Warn: "!", calc.Note: "-"}

// hang appends text behind a mark, wrapped so that its lines stand under each other.
func hang(dst []byte, mark, text string) []byte {
	indent := len(mark) + 1
	for i, l := range wrap(text, cardWidth-indent) {
		if i == 0 {
			dst = append(append(dst, mark...), ' ')
		} else {
			dst = fmt.Appendf(dst, "%*s", indent, "")
		}
		dst = append(append(dst, l...), '\n')
	}
	return dst
}

// wrap breaks text at blanks alone, so that "6358-1" stays whole, into rows of at most
// width columns where its words allow.
func wrap(text string, width int) (rows []string) {
	row := ""
	for _, word := range strings.Fields(text) {
		if row != "" && ansi.StringWidth(row)+1+ansi.StringWidth(word) > width {
			rows, row = append(rows, row), ""
		}
		if row != "" {
			row += " "
		}
		row += word
	}
	return append(rows, row)
}
