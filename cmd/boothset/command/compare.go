package command

import (
	"slices"

	"boothset/presets/answer"
	"boothset/presets/card"
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
	jsonAsked
	batchAsked
}

func (p *Program) compare() *cobra.Command {
	a := &compareAsked{texts: question.Texts{}}
	c := &cobra.Command{
		Use: commandCompare, Short: p.local.Say("brief-compare"), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if ran, err := a.runLines(p, c, false, (*Program).compare); ran || err != nil {
				return err
			}
			return p.printCompared(a)
		},
	}
	p.fieldFlags(c, question.Plan, a.texts)
	c.Flags().StringArrayVar(&a.booths, flagBooth, nil, "usage-compare-booth")
	_ = c.RegisterFlagCompletionFunc(flagBooth, p.completeBooth) // fails for a flag that is not there
	c.Flags().StringArrayVar(&a.shops, flagShop, nil, "usage-shop")
	a.jsonFlags(c)
	a.batchFlags(c)
	c.Flags().SortFlags = false
	return c
}

// comparing is a run of the command.
type comparing struct {
	p *Program
	a *compareAsked
	shopOpened
	folders []*booths
	all     []*answer.Compared
	agreed  *card.Today // of a booth alone
}

func (p *Program) printCompared(a *compareAsked) error {
	c := comparing{p: p, a: a}
	var err error
	if c.opened, err = p.open(); err != nil {
		return err
	}
	if err := a.checkFields(commandCompare, c.words); err != nil {
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
		c.folders = append(c.folders, &booths{p: p, folder: f, tell: c.tell})
	}
	c.folder = c.folders[0].folder
	ids, err := c.ids()
	if err != nil {
		return err
	}
	if err := c.work(ids); err != nil {
		return err
	}
	stopped := false
	for _, of := range c.all {
		for _, s := range of.Sides {
			s.Plan.Sure()
		}
		stopped = stopped || of.Stopped()
	}
	p.answerShop(&c.shopOpened, &a.jsonAsked, commandCompare, stopped, c.text, c.json)
	return nil
}

func (c *comparing) text() []byte {
	var rows []answer.Row
	for _, of := range c.all {
		rows = append(rows, of.Rows(c.words, c.sys)...)
	}
	rows = append(append(rows, c.agreed.Rows(c.words, c.sys)...), answer.GeneralRows(c.words, c.sys)...)
	return answer.Print(rows, answer.Width, c.words)
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
		return nil, c.noBooth("")
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
		var faults []*shop.Fault
		c.agreed, faults = card.TodayOf(c.folders[0].folder, ids[0], groups[0][0].Plan)
		c.tell(faults...)
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
		s.Name += " (" + words.Path(s.Shop) + ")"
	}
	return s, nil
}
