package command

import (
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
)

// cardWidth is how wide a printed answer may be.
const cardWidth = 80

// cardOf is the answer as a person would write it on a card.
func cardOf(p *Plan, width int, sys unit.System, w *words.Words) []byte {
	s := p.Setup
	out := &printer{width: width, sys: sys, words: w}
	out.settings(p.Request, s)
	out.line("")
	out.atTheGun(s)
	for _, l := range w.Spread(sys, p.Spread) {
		out.hang("-", l)
	}
	out.line("")
	out.cautions(s.Cautions)
	out.line("")
	out.airLine(s)
	out.line("")
	if len(s.Fixes) > 0 {
		out.line("%s", out.say("card-help"))
		for i := range s.Fixes {
			f := &s.Fixes[i]
			out.hang("-", out.say(f.ID(), f.Figures()...))
		}
		out.line("")
	}
	out.reasons(s.Reasons)
	return out.b
}

// settings writes the job, and the three values to set for it.
func (p *printer) settings(r *calc.Request, s *calc.Setup) {
	const values = 10
	p.paragraph(p.say("card-heading", said("coat", r.Coat.Name), said("gun", r.Gun.Name),
		calc.FigureOf("air", calc.FigureTemp, r.Day.Air), calc.FigureOf("humidity", calc.FigureShare, r.Day.Humidity), said("supply", p.sys.Gauge(r.Supply, unit.Usual))))
	p.line("")
	wall := "label-wall"
	if r.RegulatorAt == calc.Foot {
		wall = "label-foot"
	}
	p.rows(values,
		row{p.say(wall), p.sys.Gauge(s.Wall.Flowing, unit.Usual), p.say("card-static", calc.FigureOf("static", calc.FigureGauge, s.Wall.Static))},
		row{p.say("label-distance"), p.sys.Small(s.Distance.Target, unit.Usual),
			p.say("card-between", calc.FigureOf("low", calc.FigureDistance, s.Distance.Low), calc.FigureOf("high", calc.FigureDistance, s.Distance.High))},
		row{p.say("label-valve"), p.say("card-opening", calc.FigureOf("opening", calc.FigureShare, s.Valve.Opening)),
			p.say("card-reserve", calc.FigureOf("reserve", calc.FigureDrop, s.Valve.Reserve), calc.FigureOf("floor", calc.FigureShare, s.Valve.Floor))},
	)
}

// atTheGun writes what the gun gets, and where it gets too little, what it wants.
func (p *printer) atTheGun(s *calc.Setup) {
	id := "card-gun"
	if s.Short.Is {
		id = "card-gun-wants"
	}
	p.paragraph(p.say(id, calc.FigureOf("working", calc.FigureGauge, s.Working.Pressure), calc.FigureOf("flow", calc.FigureFlow, s.Working.Flow), calc.FigureOf("cap", calc.FigureGauge, s.Working.Cap)))
	if s.Short.Is {
		p.paragraph(p.say("card-gun-gets", calc.FigureOf("best", calc.FigureGauge, s.Short.Best)))
	}
}

// leastPart is the room that the name of a part must have beside its figures.
const leastPart = 20

// airLine writes the parts of the line as a table, or, where the width is too small for
// one, in sentences. What costs most is marked.
func (p *printer) airLine(s *calc.Setup) {
	const columns = 6
	widths := [columns]int{0, 9, 9, 9, 5, 4}
	table := [][columns]string{{p.say("card-parts"), p.say("card-in"), p.say("card-out"), p.say("card-loss"), p.say("card-share"), p.say("card-mach")}}
	fine := words.PressureDecimals(p.sys)
	for i := range s.Line {
		part := &s.Line[i]
		share := ""
		if part.Share > 0 {
			share = unit.PercentText(part.Share, 0)
		}
		table = append(table, [columns]string{part.Name, p.sys.Gauge(part.In, fine), p.sys.Gauge(part.Out, fine), p.sys.Drop(part.Loss, unit.Usual), share, machText(part.Mach)})
	}
	figures := 0
	for column := 1; column < columns; column++ {
		for _, cells := range table {
			widths[column] = max(widths[column], displaywidth.String(cells[column]))
		}
		figures += 1 + widths[column]
	}
	widths[0] = min(p.width, cardWidth) - figures
	if widths[0] < leastPart {
		p.partsInWords(s)
		return
	}
	for i, cells := range table {
		mark := ""
		if i > 0 && i-1 == s.Bottleneck {
			mark = " <"
		}
		text := pad(displaywidth.TruncateString(cells[0], widths[0]-len(mark), "...")+mark, widths[0])
		for column := 1; column < columns; column++ {
			text += " " + strings.Repeat(" ", widths[column]-displaywidth.String(cells[column])) + cells[column]
		}
		p.line("%s", text)
	}
}

// machText is a Mach number to two decimals.
func machText(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

// partsInWords writes the parts of the line a sentence each.
func (p *printer) partsInWords(s *calc.Setup) {
	p.line("%s", p.say("card-parts"))
	for i := range s.Line {
		part := &s.Line[i]
		mark, id := "-", "card-part-figures"
		if i == s.Bottleneck {
			mark = "<"
		}
		if part.Share > 0 {
			id = "card-part-shared"
		}
		p.hang(mark, p.say(id, said("part", part.Name), calc.FigureOf("in", calc.FigureGauge, part.In), calc.FigureOf("out", calc.FigureGauge, part.Out),
			calc.FigureOf("loss", calc.FigureDrop, part.Loss), calc.FigureOf("share", calc.FigureShare, part.Share), said("mach", machText(part.Mach))))
	}
}
