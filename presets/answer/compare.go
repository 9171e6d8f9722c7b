package answer

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Side is a job's plan in one of several booths.
type Side struct {
	ID, Shop string // the booth's, and its folder's where there are several
	Name     string // what it is called
	Plan     *Plan
	// Apart is what makes its wall stand above the base's, and Nearer the one change that brings
	// it nearest, nil where none does. Both are empty of the base, and of one that
	// is stopped or short of supply.
	Apart  []calc.Apart
	Nearer *calc.Nearer
}

// set reports whether there is a wall to compare: the job is not stopped and the supply does.
func (s *Side) set() bool { return !s.Plan.Stopped() && !s.Plan.Setup.Short.Is }

// Compared is the same job in several booths, side by side.
type Compared struct {
	Sides []*Side
	Base  *Side // the one with the lowest wall of those that are neither stopped nor short of supply; else nil
}

// Compare works out what makes sides differ. Their plans are solved.
func Compare(sides []*Side) *Compared {
	c := &Compared{Sides: sides}
	wall := func(s *Side) unit.Gauge { return s.Plan.Setup.Wall.Flowing }
	for _, s := range sides {
		if s.set() && (c.Base == nil || wall(s) < wall(c.Base)) {
			c.Base = s
		}
	}
	for _, s := range sides {
		if s == c.Base || !s.set() {
			continue
		}
		s.Apart = s.Plan.Setup.Apart(c.Base.Plan.Setup)
		if n, ok := s.Plan.Request.Nearest(s.Plan.Setup, wall(c.Base)); ok {
			s.Nearer = &n
		}
	}
	return c
}

// Stopped reports whether the job cannot be done as asked in one of the booths.
func (c *Compared) Stopped() bool {
	return slices.ContainsFunc(c.Sides, func(s *Side) bool { return s.Plan.Stopped() })
}

// Cautions is those of all sides, each once.
func (c *Compared) Cautions() (all []calc.Caution) {
	for _, s := range c.Sides {
		for _, of := range s.Plan.Cautions() {
			if !slices.ContainsFunc(all, func(o calc.Caution) bool { return o.ID == of.ID && slices.Equal(o.Figures, of.Figures) }) {
				all = append(all, of)
			}
		}
	}
	return all
}

// Rows is the sides as a table, what makes them differ, and what each part loses in each.
func (c *Compared) Rows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	r := c.Sides[0].Plan.Request
	o.heading(o.say("compare-heading", calc.TextFigure("coat", r.Coat.Name), calc.TextFigure("gun", r.Gun.Name),
		calc.FigureOf("air", calc.FigureTemp, r.Day.Air), calc.FigureOf("humidity", calc.FigureShare, r.Day.Humidity)))
	for _, s := range c.Sides {
		if j := &s.Plan.Setup.Judgement; j.Verdict != calc.VerdictGo {
			o.heading(s.Name)
			o.add(append([]Row{Headline(w, sys, j, PlanGoes)}, AgainstRows(w, sys, j)...)...)
		}
	}
	o.block(c.table(o)...)
	for _, s := range c.Sides {
		if s != c.Base && s.set() {
			o.block(c.differs(o, s)...)
		}
	}
	for _, s := range c.Sides {
		if s.Plan.ShowsLine() {
			rows := s.Plan.line(o)
			rows[0].Cells[0] = s.Name
			o.block(rows...)
		}
	}
	o.cautions(c.Cautions())
	return o.rows
}

// table is what is set in each booth: wall, its likely range, distance, valve; and what is lost
// between wall and gun.
func (c *Compared) table(o *speaker) []Row {
	if c.Base == nil {
		return nil
	}
	rows := []Row{{Role: Head, Cells: []string{o.say("compare-booth"), o.say("compare-wall"), o.say("compare-likely"), o.say("compare-distance"), o.say("compare-valve"), o.say("compare-lost")}}}
	for _, s := range c.Sides {
		p := s.Plan
		if !s.set() {
			continue
		}
		wall, distance := o.sys.Gauge(p.Setup.Wall.Flowing, unit.Usual), o.sys.Small(p.Setup.Distance.Target, unit.Usual)
		lost := o.sys.Drop(unit.Drop(p.Setup.Wall.Flowing-p.Setup.Working.Pressure), unit.Usual)
		likely, valve := "-", "-"
		if of, known := p.LikelyWall(); known {
			number := func(g unit.Gauge) string { return unit.Pressure.Number(o.sys, float64(g), unit.Usual) }
			likely = number(of.Low) + "-" + number(of.High)
		}
		if !p.Setup.Valve.None {
			valve = unit.PercentText(p.Setup.Valve.Opening, 0)
		}
		rows = append(rows, Row{
			Role: Part, About: "booth", Cells: []string{s.Name, wall, likely, distance, valve, lost},
			Text: o.say("compare-row", calc.TextFigure("booth", s.Name), calc.TextFigure("wall", wall), calc.TextFigure("likely", likely), calc.TextFigure("distance", distance), calc.TextFigure("valve", valve), calc.TextFigure("lost", lost)),
		})
	}
	return rows
}

// differs is why a booth's wall is not the base's, and what brings it nearer.
func (c *Compared) differs(o *speaker, s *Side) []Row {
	to := c.Base.Plan.Setup.Wall.Flowing
	by := s.Plan.Setup.Wall.Flowing - to
	names := calc.Figures{calc.TextFigure("booth", s.Name), calc.TextFigure("base", c.Base.Name)}
	if by == 0 {
		return []Row{{Role: Heading, Text: o.say("compare-same", names...)}}
	}
	rows := []Row{{Role: Title, ID: "compare-above", Text: o.say("compare-above", append(names, calc.FigureOf("by", calc.FigureDrop, by))...)}}
	for _, a := range s.Apart {
		if max(a.By, -a.By) < leastSaid {
			continue
		}
		here, there := s.Plan.has(a.Of, o), c.Base.Plan.has(a.Of, o)
		rows = append(rows, Row{Role: Remark, About: "line", ID: "apart-" + a.Of, Text: o.say("compare-by", calc.SentenceFigure("what", "apart-"+a.Of), By(a.By), Way(a.By), calc.TextFigure("here", here), calc.TextFigure("there", there))})
	}
	if here, there := s.Plan.Request.Day.Altitude, c.Base.Plan.Request.Day.Altitude; here != there {
		rows = append(rows, Row{Role: Remark, ID: "compare-altitude", Text: o.say("compare-altitude", calc.FigureOf("here", calc.FigureRun, here), calc.FigureOf("there", calc.FigureRun, there))})
	}
	n := s.Nearer
	if n == nil {
		return append(rows, Row{Role: Heading, ID: "compare-no-change", Text: o.say("compare-no-change", names...)})
	}
	return append(rows, Row{Role: Heading, ID: n.ID(), Text: o.say("compare-change", append(append(names, n.Figures()...), calc.SentenceFigure("swap", n.ID()),
		calc.FigureOf("wall", calc.FigureGauge, n.Wall), calc.FigureOf("was", calc.FigureGauge, s.Plan.Setup.Wall.Flowing), calc.FigureOf("to", calc.FigureGauge, to))...)})
}

// leastSaid is the least that is told to make walls differ: less is printed as nothing.
const leastSaid = unit.Drop(0.05 * unit.PascalPerPSI)

// has is what a plan has of a thing by which walls differ.
func (p *Plan) has(of string, o *speaker) string {
	fine := unit.Pressure.Fine(o.sys)
	switch of {
	case calc.ApartGun:
		return o.sys.Gauge(p.Setup.Working.Pressure, fine)
	case calc.ApartReserve:
		return o.sys.Drop(p.Setup.Reserve(), fine)
	}
	var names []string
	first, _ := p.Request.Regulators()
	for i := range p.Setup.Line {
		s := &p.Setup.Line[i]
		switch {
		case s.Kind.String() != of || i <= first: // what is set does not count what comes before it
		case s.Kind == line.HoseKind:
			names = append(names, s.Name+", "+o.say("compare-hose", calc.FigureOf("length", calc.FigureRun, s.Length), calc.TextFigure("bore", unit.Bore.Text(o.sys, float64(s.Bore), unit.Usual))))
		default:
			names = append(names, s.Name)
		}
	}
	if len(names) == 0 {
		return "-"
	}
	return strings.Join(names, ", ")
}

// By is how much of a difference something makes, without its sign, and Way whether it makes
// it more or less, as sentences name them.
func By(by unit.Drop) calc.Figure { return calc.FigureOf("by", calc.FigureDrop, max(by, -by)) }

// Way is the other of By.
func Way(by unit.Drop) calc.Figure {
	if by < 0 {
		return calc.SentenceFigure("way", "way-less")
	}
	return calc.SentenceFigure("way", "way-more")
}
