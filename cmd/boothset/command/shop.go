package command

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// The commands of the shop's folder.
const (
	commandShop  = "shop"
	commandCheck = "check"
	commandAdd   = "add"
	commandLog   = "log"
)

// shop is the command that lists what is in the shop's folder, with those that check it and
// add to it.
func (p *Program) shop() *cobra.Command {
	var a jsonAsked
	c := &cobra.Command{
		Use: commandShop, Short: p.local.Say("brief-shop"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.listShop(&a) },
	}
	a.jsonFlags(c)
	c.AddCommand(p.check(), p.add(), p.addPainter())
	return c
}

func (p *Program) listShop(a *jsonAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandShop, s.words); err != nil {
		return err
	}
	guns, faults := s.folder.Guns(s.reader)
	s.tell(faults...)
	booths, faults := s.folder.Booths(s.reader)
	s.tell(faults...)
	p.answerShop(&s, a, commandShop, false, func() []byte { return s.list(booths, guns) }, func(j *jsonWriter) { s.appendShop(j, booths, guns) })
	return nil
}

// list is a row a booth and a gun.
func (s *shopOpened) list(booths []*shop.Booth, guns []*shop.Gun) []byte {
	var b strings.Builder
	fmt.Fprintln(&b, spoken(s.words, "shop-of", calc.PathFigure("file", s.folder.Path)))
	list := func(id, title string, called string, retired bool) {
		if retired {
			called += " (" + s.words.Say("shop-retired") + ")"
		}
		fmt.Fprintf(&b, "  %-*s %-*s %s\n", widestTitle, s.words.Say(title), widestID, id, called)
	}
	for _, x := range booths {
		list(x.ID, "label-booth", x.Name, x.Retired)
	}
	for _, x := range guns {
		list(x.ID, "label-own-gun", x.Name, x.Retired)
	}
	if len(booths)+len(guns) == 0 {
		fmt.Fprintln(&b, s.words.Say("shop-empty"))
	}
	return []byte(b.String())
}

// How wide the columns of the list are.
const widestTitle, widestID = 8, 20

func (s *shopOpened) appendShop(j *jsonWriter, booths []*shop.Booth, guns []*shop.Gun) {
	j.text("folder", s.folder.Path)
	j.array("booths", func() {
		for _, b := range booths {
			j.object("", func() { appendOwnBooth(j, b) })
		}
	})
	j.array("guns", func() {
		for _, g := range guns {
			j.object("", func() { appendOwnGun(j, g) })
		}
	})
}

// appendOwnBooth is a booth as its file describes it; what it answers stands by the fields' names
// in a request.
func appendOwnBooth(j *jsonWriter, b *shop.Booth) {
	j.text("schema", "boothset.booth/1")
	j.text("id", b.ID)
	j.text("name", b.Name)
	j.bool("retired", b.Retired)
	appendTexts(j, "answers", b.Answers.Texts())
	j.text("filter_changed", b.FilterChanged.Text())
	j.text("gauge_checked", b.GaugeChecked.Text())
	j.text("notes", b.Notes)
}

// appendOwnGun is a gun as its file describes it; what of it is no field of a question stands as
// its file has it.
func appendOwnGun(j *jsonWriter, g *shop.Gun) {
	j.text("schema", "boothset.gun/1")
	j.text("id", g.ID)
	j.text("name", g.Name)
	j.bool("retired", g.Retired)
	appendTexts(j, "answers", g.Answers.Texts())
	j.text("cap_fitted", g.Cap)
	j.text("serviced", g.Serviced.Text())
	j.text("notes", g.Notes)
}

// check is the command that names all that will not do in the folder.
func (p *Program) check() *cobra.Command {
	var a jsonAsked
	c := &cobra.Command{
		Use: commandCheck, Short: p.local.Say("brief-check"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.checkShop(&a) },
	}
	a.jsonFlags(c)
	return c
}

func (p *Program) checkShop(a *jsonAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandCheck, s.words); err != nil {
		return err
	}
	n, faults := s.folder.Check(s.reader, p.now())
	mend := len(slices.DeleteFunc(slices.Clone(faults), func(f *shop.Fault) bool { return f.Weight == shop.Told }))
	if a.asJSON {
		s.tell(faults...) // in words they are the answer
	}
	text := func() []byte {
		var b strings.Builder
		for _, f := range faults {
			fmt.Fprintln(&b, f.In(s.words))
		}
		fmt.Fprintln(&b, spoken(s.words, "shop-checked", calc.CountFigure("booths", n.Booths), calc.CountFigure("guns", n.Guns),
			calc.CountFigure("settings", n.Settings), calc.CountFigure("records", n.Records), calc.CountFigure("mend", mend)))
		return []byte(b.String())
	}
	p.answerShop(&s, a, commandCheck, mend > 0, text, func(j *jsonWriter) {
		j.text("folder", s.folder.Path)
		for _, x := range []struct {
			key string
			n   int
		}{{"booths", n.Booths}, {"guns", n.Guns}, {"settings", n.Settings}, {"records", n.Records}, {"to_mend", mend}} {
			j.count(x.key, x.n)
		}
	})
	return nil
}

// now is the time, in which nothing but dates of the future are judged.
func (p *Program) now() time.Time { return time.Now() }

// add is the command that puts another shop's booth or gun into the folder.
func (p *Program) add() *cobra.Command {
	var a jsonAsked
	var dry bool
	c := &cobra.Command{
		Use: commandAdd + " FILE", Short: p.local.Say("brief-add"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				w, _ := p.words()
				return p.seeHelp(c, w.Say("shop-add-one"))
			}
			return p.addFile(args[0], dry, &a)
		},
	}
	c.Flags().BoolVar(&dry, flagDryRun, false, "usage-dry-run")
	a.jsonFlags(c)
	return c
}

func (p *Program) addFile(file string, dry bool, a *jsonAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandAdd, s.words); err != nil {
		return err
	}
	added, faults := s.folder.Look(s.reader, file)
	if at := slices.IndexFunc(faults, func(f *shop.Fault) bool { return f.Weight == shop.Broken }); at >= 0 {
		p.warn(s.words, slices.Delete(slices.Clone(faults), at, at+1))
		return errors.New(faults[at].In(s.words))
	}
	s.tell(faults...)
	id := "shop-would-add"
	if !dry {
		id = "shop-added"
		if err := s.folder.Add(added); err != nil {
			return unkept(s.words, err)
		}
	}
	text := func() []byte {
		return []byte(spoken(s.words, id, calc.SentenceFigure("kind", "shop-a-"+added.Kind), calc.TextFigure("id", added.ID), calc.TextFigure("file", added.File)) + "\n")
	}
	p.answerShop(&s, a, commandAdd, false, text, func(j *jsonWriter) {
		j.bool("kept", !dry)
		j.text("kind", added.Kind)
		j.text("id", added.ID)
		j.text("file", added.File)
	})
	return nil
}
