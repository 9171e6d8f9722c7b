package main

import (
	"fmt"

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

// cardOf is the answer as a person would write it on a card.
func cardOf(p *plan, sys unit.System, w *words.Words) []byte {
	r, s := &p.request, &p.setup
	out := &printer{width: cardWidth, sys: sys, words: w}
	line := out.line
	fine := words.PressureDecimals(sys)
	out.paragraph("%s, %s gun. Air %s at %s humidity, supply %s.", r.Coat.Name, r.Gun.Name,
		sys.Temp(r.Day.Air, unit.Usual), unit.PercentText(r.Day.Humidity, unit.Usual), sys.Gauge(r.Supply, unit.Usual))
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
		out.hang("-", l)
	}
	line("")
	out.cautions(s.Cautions)
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
			out.hang("-", out.sentence(f.ID(), f.Figures()))
		}
		line("")
	}
	out.reasons(s.Reasons)
	return out.b
}
