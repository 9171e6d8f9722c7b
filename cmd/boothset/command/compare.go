package command

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// commandCompare is the command that sets booths side by side.
const commandCompare = "compare"

// compareAsked is the flags of the command as they were given.
type compareAsked struct {
	texts         question.Texts // of a plan's fields
	booths, shops []string
	asJSON        bool
}

func (p *Program) compare() *cobra.Command {
	a := &compareAsked{texts: question.Texts{}}
	c := &cobra.Command{
		Use: commandCompare, Short: p.local.Say("brief-compare"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.printCompared(a) },
	}
	p.fieldFlags(c, question.Plan, a.texts)
	c.Flags().StringArrayVar(&a.booths, flagBooth, nil, "usage-compare-booth")
	_ = c.RegisterFlagCompletionFunc(flagBooth, p.completeBooth) // fails for a flag that is not there
	c.Flags().StringArrayVar(&a.shops, flagShop, nil, "usage-shop")
	c.Flags().BoolVar(&a.asJSON, flagJSON, false, "usage-json")
	c.Flags().SortFlags = false
	return c
}

// comparing is a run of the command.
type comparing struct {
	p *Program
	a *compareAsked
	opened
	folders []*booths
	all     []*answer.Compared
	agreed  *agreedToday // of a booth alone
}

func (p *Program) printCompared(a *compareAsked) error {
	c := comparing{p: p, a: a}
	var err error
	if c.opened, err = p.open(); err != nil {
		return err
	}
	shops := a.shops
	if len(shops) == 0 {
		shops = []string{""}
	}
	for _, at := range shops {
		f, err := shop.At(shop.Where(p.Getenv, at))
		if err != nil {
			return shopError(c.words, err)
		}
		c.folders = append(c.folders, &booths{p: p, folder: f})
	}
	ids, err := c.ids()
	if err != nil {
		return err
	}
	if err := c.work(ids); err != nil {
		return err
	}
	var rows []answer.Row
	stopped := false
	for _, of := range c.all {
		for _, s := range of.Sides {
			s.Plan.Sure()
		}
		rows = append(rows, of.Rows(c.words, c.sys)...)
		stopped = stopped || of.Stopped()
	}
	rows = append(append(rows, c.agreed.rows(c.words, c.sys)...), answer.GeneralRows(c.words, c.sys)...)
	out := answer.Print(rows, answer.Width, c.words)
	if a.asJSON {
		out = c.json()
	}
	p.code = p.write(c.words, out, stopped)
	return nil
}

// ids is the booths that were named, else all that are in each of the folders.
func (c *comparing) ids() (ids []string, err error) {
	if ids = slices.Compact(slices.Clone(c.a.booths)); len(ids) > 0 {
		return ids, nil
	}
	for _, id := range c.folders[0].folder.BoothIDs() {
		if !slices.ContainsFunc(c.folders[1:], func(b *booths) bool { return !slices.Contains(b.folder.BoothIDs(), id) }) {
			ids = append(ids, id)
		}
	}
	if len(ids) == 0 {
		return nil, c.folders[0].noBooth(c.words, "", nil)
	}
	return ids, nil
}

// work works out the booths of one folder side by side, and of several each booth with its
// namesakes.
func (c *comparing) work(ids []string) error {
	var groups [][]*answer.Side
	for n, id := range ids {
		for i := range c.folders {
			s, err := c.side(i, id)
			if err != nil {
				return err
			}
			at := 0
			if len(c.folders) > 1 {
				at = n
			}
			if at == len(groups) {
				groups = append(groups, nil)
			}
			groups[at] = append(groups[at], s)
		}
	}
	for _, sides := range groups {
		c.all = append(c.all, answer.Compare(sides))
	}
	if len(ids) == 1 && len(c.folders) == 1 {
		c.agreed = c.agreedOf(ids[0], groups[0][0].Plan)
	}
	return nil
}

// side is the job in a booth of a folder.
func (c *comparing) side(at int, id string) (*answer.Side, error) {
	b := c.folders[at]
	r, err := b.reader(c.opened, id, lastOf(c.a.texts[question.Gun.Name]))
	if err != nil {
		return nil, err
	}
	texts := question.Texts{}
	for field, given := range c.a.texts {
		row, _ := question.Plan.Field(field)
		for _, t := range given {
			texts[field] = append(texts[field], r.Expand(row.Field, t))
		}
	}
	found, err := askTyped(r, question.Plan, r.ReadAll(question.Plan, texts, c.sys), c.sys)
	if err != nil {
		return nil, err
	}
	s := &answer.Side{ID: id, Name: id, Plan: found.(*answer.Plan)}
	if of, _ := b.folder.Booth(c.reader, id); of != nil { // its faults are told by now
		s.Name = of.Name
	}
	if len(c.folders) > 1 {
		s.Shop = c.a.shops[at]
		s.Name += " (" + shop.Printable(s.Shop, mostPath) + ")"
	}
	return s, nil
}

// agreedToday is what was agreed on for a job, against what it comes to today.
type agreedToday struct {
	standing []*shop.Setting // several are twins, none: nothing was agreed on
	band     string          // of the first, as it is called
	plan     *answer.Plan
	changes  []shop.Change
	apart    []calc.Apart
	known    bool // what makes them differ
}

func (c *comparing) agreedOf(id string, p *answer.Plan) *agreedToday {
	f := c.folders[0].folder
	bands, faults := f.Bands()
	settings, more := f.Settings(id)
	c.p.warn(c.words, append(faults, more...))
	q := p.Request
	job := shop.Subject{Coat: q.Coat.ID, Stage: q.Coat.Stage.ID, Gun: q.Gun.ID}
	if band, ok := shop.BandOf(bands, q.Day.Air, q.Day.Humidity); ok {
		job.Band = band.ID
	}
	a := &agreedToday{standing: shop.AgreedFor(shop.Standing(settings), job, bands), plan: p}
	if len(a.standing) == 0 {
		return a
	}
	s := a.standing[0]
	a.band = c.words.Say("agreed-any")
	for i := range bands {
		if bands[i].ID == s.Band {
			a.band = bands[i].Called(c.words)
		}
	}
	a.changes = s.Since(q)
	if !p.Stopped() && !p.Setup.Short.Is {
		a.apart, a.known = s.Today(q, p.Setup)
	}
	return a
}

// rows is what was agreed and today's answer, and why they differ.
func (a *agreedToday) rows(w *words.Words, sys unit.System) []answer.Row {
	if a == nil {
		return nil
	}
	say := func(role answer.Role, id string, f ...calc.Figure) answer.Row {
		return answer.Row{Role: role, About: answer.AboutWall, ID: id, Text: w.Text(sys, id, f)}
	}
	var rows []answer.Row
	switch {
	case len(a.standing) == 0:
		rows = append(rows, say(answer.Heading, "agreed-none"))
	case len(a.standing) > 1:
		rows = append(rows, say(answer.Heading, "agreed-twins"))
	case a.plan.Stopped():
		rows = append(rows, say(answer.Heading, "agreed-stopped", a.agreedFigures()...))
	default:
		rows = append(rows, say(answer.Title, "agreed-today", a.agreedFigures()...))
		for _, x := range a.apart {
			rows = append(rows, say(answer.Remark, "agreed-by-"+x.Of, append(a.agreedFigures(), answer.By(x.By), answer.Way(x.By))...))
		}
		if len(a.apart) == 0 {
			id := "agreed-unknown"
			if a.known {
				id = "agreed-same"
			}
			rows = append(rows, say(answer.Remark, id))
		}
		for _, x := range a.changes {
			id := "agreed-void"
			if x.Values {
				id = "agreed-older"
			}
			rows = append(rows, say(answer.Remark, id, calc.TextFigure("was", x.Was.Text()), calc.TextFigure("is", x.Is.Text())))
		}
	}
	rows[0].Begins = true
	return rows
}

func (a *agreedToday) agreedFigures() []calc.Figure {
	s, day := a.standing[0], &a.plan.Request.Day
	return []calc.Figure{
		calc.FigureOf("wall", calc.FigureGauge, s.Values.Wall), calc.FigureOf("today", calc.FigureGauge, a.plan.Setup.Wall.Flowing), calc.TextFigure("band", a.band),
		calc.FigureOf("airThen", calc.FigureTemp, s.Worked.Air), calc.FigureOf("humidityThen", calc.FigureShare, s.Worked.Humidity),
		calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("humidity", calc.FigureShare, day.Humidity),
	}
}
