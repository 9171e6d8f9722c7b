package command

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/clipperhouse/displaywidth"
	"github.com/spf13/cobra"
)

// commandSheet is the command that prints the sheet of a booth.
const commandSheet = "sheet"

// sheetAsked is the flags of the sheet as they were given.
type sheetAsked struct {
	jsonAsked
	batchAsked
	booth       string
	guns, coats []string
}

func (p *Program) sheet() *cobra.Command {
	a := &sheetAsked{}
	c := &cobra.Command{
		Use: commandSheet, Short: p.local.Say("brief-sheet"), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if ran, err := a.runLines(p, c, false, (*Program).sheet); ran || err != nil {
				return err
			}
			if a.booth == "" && !p.line {
				return p.printSheets(c, a)
			}
			return p.printSheet(a)
		},
	}
	p.boothFlag(c, &a.booth)
	c.Flags().StringArrayVar(&a.guns, question.Gun.Name, nil, "usage-sheet-gun")
	c.Flags().StringArrayVar(&a.coats, question.Coat.Name, nil, "usage-sheet-coat")
	for _, f := range []*question.Field{question.Gun, question.Coat} {
		_ = c.RegisterFlagCompletionFunc(f.Name, p.complete(f)) // fails for a flag that is not there
	}
	a.jsonFlags(c)
	a.batchFlags(c)
	return c
}

// printSheets prints the sheet of each booth that is not retired, in their order, several at once.
func (p *Program) printSheets(c *cobra.Command, a *sheetAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandSheet, s.words); err != nil {
		return err
	}
	var in strings.Builder
	for _, id := range s.folder.BoothIDs() {
		if b, _ := s.folder.Booth(s.reader, id); b == nil || !b.Retired { // what is wrong with it, its sheet says
			fmt.Fprintf(&in, "{%q:%q}\n", keyBooth, id)
		}
	}
	if in.Len() == 0 {
		return s.noBooth("")
	}
	jobs, err := jobsOf("", s.words)
	if err != nil {
		return err
	}
	l := &commandLines{p: p, words: s.words, again: (*Program).sheet, fixed: c.Flags(), text: !a.asJSON, named: flagBooth}
	p.code = p.runLines(s.opened, strings.NewReader(in.String()), jobs, oneLine, l.answer)
	return nil
}

func (p *Program) printSheet(a *sheetAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandSheet, s.words); err != nil {
		return err
	}
	b, faults := s.folder.Booth(s.reader, a.booth)
	if b == nil {
		return s.noBooth(a.booth, faults...)
	}
	s.tell(faults...)
	own, err := s.withGuns()
	if err != nil {
		return err
	}
	guns, coats, err := a.chosen(s.reader, own)
	if err != nil {
		return err
	}
	r := s.reader.Over(b.Answers)
	r = r.WithLearnt(s.booths(p).learntOf(s.opened, a.booth, r))
	found, faults, err := s.folder.SheetOf(r, b, guns, coats, a.asJSON)
	if err != nil {
		return err
	}
	s.tell(faults...)
	l := &sheetOut{s, p, found, map[string]bool{}}
	p.answerShop(&l.shopOpened, &a.jsonAsked, commandSheet, false, l.text, l.json)
	return nil
}

// chosen is the ids of the guns and coats that were asked for: the shop's own guns where none
// was, those of the catalogue where it has none of its own, and every coat.
func (a *sheetAsked) chosen(r *question.Reader, own []*shop.Gun) (guns, coats []string, err error) {
	pick := func(f *question.Field, given []string) (ids []string, err error) {
		for _, g := range given {
			v := r.Read(f, r.Expand(f, g), unit.US)
			if v.Fault != nil {
				return nil, v.Fault
			}
			ids = append(ids, v.ID)
		}
		return ids, nil
	}
	if guns, err = pick(question.Gun, a.guns); err != nil {
		return nil, nil, err
	}
	if coats, err = pick(question.Coat, a.coats); err != nil {
		return nil, nil, err
	}
	for _, g := range own {
		if len(a.guns) == 0 && !g.Retired {
			guns = append(guns, g.ID)
		}
	}
	if len(guns) == 0 {
		guns = r.Guns.IDs()
	}
	if len(coats) == 0 {
		coats = r.Coats.IDs()
	}
	return guns, coats, nil
}

// sheetOut is a sheet on its way out.
type sheetOut struct {
	shopOpened
	p     *Program
	sheet *shop.Sheet
	// marked is the marks that are in the sheet.
	marked map[string]bool
}

// text is the sheet as a table a gun: wall, distance and opening on each band's day. What was
// agreed has a mark that the foot explains.
func (l *sheetOut) text() []byte {
	var b strings.Builder
	if l.p.said { // of another booth
		fmt.Fprintln(&b)
	}
	say := func(id string, f ...calc.Figure) { fmt.Fprintln(&b, l.words.Text(l.sys, id, f)) }
	say("sheet-of", calc.TextFigure("booth", l.sheet.Booth.Name))
	say("sheet-cells", calc.TextFigure("pressure", unit.Pressure.Unit(l.sys)), calc.TextFigure("distance", unit.Distance.Unit(l.sys)))
	for i := range l.sheet.Guns {
		if g := &l.sheet.Guns[i]; len(g.Rows) > 0 {
			fmt.Fprintln(&b)
			table(&b, l.rows(g))
		}
	}
	fmt.Fprintln(&b)
	for _, m := range marks {
		if l.marked[m.mark] {
			fmt.Fprintln(&b, m.mark, l.words.Say(m.id))
		}
	}
	b.Write(answer.Print(answer.CautionRows(l.words, l.sys, l.p.general()), answer.Width, l.words))
	return []byte(b.String())
}

// rows is the cells of a gun's table, its head the first row.
func (l *sheetOut) rows(g *shop.SheetGun) [][]string {
	head := []string{g.Name}
	for i := range l.sheet.Bands {
		head = append(head, l.sheet.Bands[i].Called(l.words))
	}
	rows := [][]string{head}
	for n := range g.Rows {
		row := &g.Rows[n]
		name := row.CoatName
		if len(l.reader.StagesOf(row.Coat)) > 1 {
			if n == 0 || g.Rows[n-1].Coat != row.Coat {
				rows = append(rows, []string{name})
			}
			name = "  " + l.reader.Called(question.Stage, question.Value{ID: row.Stage, Text: row.Stage})
		}
		cells := []string{name}
		for i := range row.Cells {
			cells = append(cells, l.cell(&row.Cells[i]))
		}
		rows = append(rows, cells)
	}
	return rows
}

// table prints rows in columns as wide as what is in them, two blanks apart where that has room.
func table(b *strings.Builder, rows [][]string) {
	var widths []int
	total := 0
	for _, row := range rows {
		for i, c := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			total += max(displaywidth.String(c)-widths[i], 0)
			widths[i] = max(widths[i], displaywidth.String(c))
		}
	}
	gap := 2
	if total+gap*(len(widths)-1) > answer.Width {
		gap = 1
	}
	for _, row := range rows {
		line := ""
		for i, c := range row {
			line += c + strings.Repeat(" ", widths[i]-displaywidth.String(c)+gap)
		}
		fmt.Fprintln(b, strings.TrimRight(line, " "))
	}
}

// marks is what a cell's mark says, in the order that the foot has them.
var marks = []struct{ mark, id string }{
	{markAgreed, "sheet-agreed"}, {markVoid, "sheet-void"}, {markTwins, "sheet-twins"}, {markNothing, "sheet-nothing"},
}

const markAgreed, markVoid, markTwins, markNothing = "*", "!", "?", "-"

// cell is what is set on a day, with the mark of what it rests on.
func (l *sheetOut) cell(c *shop.SheetCell) string {
	v, agreed := c.Set()
	mark := ""
	switch {
	case agreed:
		mark = markAgreed
	case len(c.Agreed) > 1:
		mark = markTwins
	case c.Void:
		mark = markVoid
	}
	l.marked[mark] = true
	if c.Stopped && !agreed {
		l.marked[markNothing] = true
		return markNothing + mark
	}
	number := func(q *unit.Quantity, si float64) string { return q.Number(l.sys, si, unit.Usual) }
	return number(unit.Pressure, float64(v.Wall)) + "/" + number(unit.Distance, float64(v.Distance)) + "/" + number(unit.Share, v.Opening) + mark
}

func (l *sheetOut) json(j *jsonWriter) {
	j.text("booth", l.sheet.Booth.ID)
	j.text("name", l.sheet.Booth.Name)
	j.array("guns", func() {
		for _, g := range l.sheet.Guns {
			j.object("", func() {
				j.text("gun", g.ID)
				j.text("name", g.Name)
				j.array("rows", func() {
					for _, row := range g.Rows {
						j.object("", func() { l.row(j, &row) })
					}
				})
			})
		}
	})
	appendWords(j, nil, l.p.general(), l.sys, l.words)
}

func (l *sheetOut) row(j *jsonWriter, row *shop.SheetRow) {
	j.text("coat", row.Coat)
	j.text("stage", row.Stage)
	j.array("cells", func() {
		for i := range row.Cells {
			c := &row.Cells[i]
			j.object("", func() {
				v, agreed := c.Set()
				j.text("band", l.sheet.Bands[i].ID)
				j.bool("stopped", c.Stopped)
				j.bool("agreed", agreed)
				j.bool("void", c.Void)
				j.bool("twins", len(c.Agreed) > 1)
				if c.Stopped && !agreed {
					return
				}
				j.gauge("wall", v.Wall)
				j.near("distance", v.Distance)
				j.number("opening", v.Opening)
				if c.Spread != nil {
					j.gauge("wall_low", c.Spread.Wall.Low)
					j.gauge("wall_high", c.Spread.Wall.High)
				}
			})
		}
	})
}
