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

// appendCard appends the answer as a person would write it on a card.
func appendCard(dst []byte, r *calc.Request, s *calc.Setup, sys unit.System, w *words.Words) []byte {
	fine := words.PressureDecimals(sys)
	line := func(format string, args ...any) { dst = append(fmt.Appendf(dst, format, args...), '\n') }
	line("%s, %s gun. Air %s at %s humidity, supply %s.", r.Coat.Name, r.Gun.Name,
		sys.Temp(r.Day.Air, unit.Usual), unit.PercentText(r.Day.Humidity, unit.Usual), sys.Gauge(r.Supply, unit.Usual))
	line("")
	set := map[calc.Place]string{calc.Wall: "WALL", calc.Foot: "AT THE FOOT", calc.Nowhere: "WALL"}[r.RegulatorAt]
	line("  %-12s %-10s trigger pulled; %s with no air moving", set, sys.Gauge(s.Wall.Flowing, unit.Usual), sys.Gauge(s.Wall.Static, fine))
	line("  %-12s %-10s between %s and %s", "DISTANCE", sys.Small(s.Distance.Target, unit.Usual), sys.Small(s.Distance.Low, unit.Usual), sys.Small(s.Distance.High, unit.Usual))
	line("  %-12s %-10s %s in hand; not below %s", "INLET VALVE", unit.PercentText(s.Valve.Opening, 0)+" open", sys.Drop(s.Valve.Reserve, unit.Usual), unit.PercentText(s.Valve.Floor, 0))
	line("")
	line("At the gun %s behind the valve, %s, %s at the cap.", sys.Gauge(s.Working.Pressure, fine), sys.Flow(s.Working.Flow, unit.Usual), sys.Gauge(s.Working.Cap, fine))
	line("")
	for _, c := range s.Cautions {
		dst = hang(dst, levelMark[c.Level], w.Text(sys, c.ID, c.Figures))
	}
	line("")
	line("%-36s %9s %9s %9s %6s %6s", "The line", "in", "out", "loss", "share", "Mach")
	for i, p := range s.Line {
		name := p.Name
		if i == s.Bottleneck {
			name += " <"
		}
		share := ""
		if p.Share > 0 {
			share = unit.PercentText(p.Share, 0)
		}
		line("%-36s %9s %9s %9s %6s %6.2f", name, sys.Gauge(p.In, fine), sys.Gauge(p.Out, fine), sys.Drop(p.Loss, unit.Usual), share, p.Mach)
	}
	line("")
	line("Why")
	for _, reason := range s.Reasons {
		dst = hang(dst, "-", w.Text(sys, reason.ID, reason.Figures)+" ["+words.Standing(reason.Standing)+"]")
	}
	return dst
}

var levelMark = map[calc.Level]string{calc.Stop: "STOP", calc.Warn: "!", calc.Note: "-"}

// hang appends text behind a mark, wrapped so that its lines stand under each other.
func hang(dst []byte, mark, text string) []byte {
	indent := len(mark) + 1
	for i, l := range strings.Split(ansi.Wordwrap(text, cardWidth-indent, ""), "\n") {
		if i == 0 {
			dst = append(append(dst, mark...), ' ')
		} else {
			dst = fmt.Appendf(dst, "%*s", indent, "")
		}
		dst = append(append(dst, l...), '\n')
	}
	return dst
}
