package command

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/shop"
	"boothset/presets/words"

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
	var asJSON bool
	c := &cobra.Command{
		Use: commandShop, Short: p.local.Say("brief-shop"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.listShop(asJSON) },
	}
	c.Flags().BoolVar(&asJSON, flagJSON, false, "usage-json")
	c.AddCommand(p.check(), p.add(), p.addPainter())
	return c
}

// shopOpened is a folder with what it is read by.
type shopOpened struct {
	opened
	folder *shop.Folder
}

func (p *Program) openShop() (s shopOpened, err error) {
	if s.opened, err = p.open(); err != nil {
		return s, err
	}
	s.folder, err = p.folder(s.words)
	return s, err
}

func (p *Program) listShop(asJSON bool) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	guns, faults := s.folder.Guns(s.reader)
	booths, more := s.folder.Booths(s.reader)
	faults = append(faults, more...)
	if asJSON {
		p.code = p.write(s.words, appendShop(s, booths, guns, faults), false)
		return nil
	}
	var b strings.Builder
	fmt.Fprintln(&b, spoken(s.words, "shop-of", calc.TextFigure("file", shop.Printable(s.folder.Path, mostPath))))
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
	p.warn(s.words, faults)
	p.code = p.say(b.String())
	return nil
}

// How wide the columns of the list are, and how much of a folder's name is shown.
const widestTitle, widestID, mostPath = 8, 20, 500

func appendShop(s shopOpened, booths []*shop.Booth, guns []*shop.Gun, faults []*shop.Fault) []byte {
	j := jsonWriter{fresh: true}
	j.object("", func() {
		j.text("schema", schema(commandShop))
		j.text("folder", s.folder.Path)
		j.array("booths", func() {
			for _, b := range booths {
				j.object("", func() { appendBooth(&j, b) })
			}
		})
		j.array("guns", func() {
			for _, g := range guns {
				j.object("", func() {
					j.text("schema", "boothset.gun/1")
					j.text("id", g.ID)
					j.text("name", g.Name)
					j.bool("retired", g.Retired)
					j.text("cap_fitted", g.Cap)
					j.text("serviced", g.Serviced.Text())
					j.text("notes", g.Notes)
				})
			}
		})
		appendFaults(&j, s.words, faults)
	})
	return append(j.b, '\n')
}

// appendBooth is a booth as its file describes it; what it answers stands by the fields' names
// in a request.
func appendBooth(j *jsonWriter, b *shop.Booth) {
	j.text("schema", "boothset.booth/1")
	j.text("id", b.ID)
	j.text("name", b.Name)
	j.bool("retired", b.Retired)
	appendTexts(j, "answers", b.Answers.Texts())
	j.text("filter_changed", b.FilterChanged.Text())
	j.text("gauge_checked", b.GaugeChecked.Text())
	j.text("notes", b.Notes)
}

// levels is what the weights of faults are called in JSON.
var levels = [...]string{shop.Told: "told", shop.Mend: "mend", shop.Broken: "broken"}

func appendFaults(j *jsonWriter, w *words.Words, faults []*shop.Fault) {
	j.array("wrong", func() {
		for _, f := range faults {
			j.object("", func() {
				j.text("file", f.File)
				j.count("line", f.Line)
				j.text("level", levels[f.Weight])
				j.text("id", f.ID)
				j.text("text", f.In(w))
			})
		}
	})
}

// check is the command that names all that will not do in the folder.
func (p *Program) check() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use: commandCheck, Short: p.local.Say("brief-check"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.checkShop(asJSON) },
	}
	c.Flags().BoolVar(&asJSON, flagJSON, false, "usage-json")
	return c
}

func (p *Program) checkShop(asJSON bool) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	n, faults := s.folder.Check(s.reader, p.now())
	mend := len(slices.DeleteFunc(slices.Clone(faults), func(f *shop.Fault) bool { return f.Weight == shop.Told }))
	if asJSON {
		j := jsonWriter{fresh: true}
		j.object("", func() {
			j.text("schema", schema(commandCheck))
			j.text("folder", s.folder.Path)
			for _, x := range []struct {
				key string
				n   int
			}{{"booths", n.Booths}, {"guns", n.Guns}, {"settings", n.Settings}, {"records", n.Records}, {"to_mend", mend}} {
				j.count(x.key, x.n)
			}
			appendFaults(&j, s.words, faults)
		})
		p.code = p.write(s.words, append(j.b, '\n'), mend > 0)
		return nil
	}
	var b strings.Builder
	for _, f := range faults {
		fmt.Fprintln(&b, f.In(s.words))
	}
	fmt.Fprintln(&b, spoken(s.words, "shop-checked", calc.CountFigure("booths", n.Booths), calc.CountFigure("guns", n.Guns),
		calc.CountFigure("settings", n.Settings), calc.CountFigure("records", n.Records), calc.CountFigure("mend", mend)))
	p.code = p.write(s.words, []byte(b.String()), mend > 0)
	return nil
}

// now is the time, in which nothing but dates of the future are judged.
func (p *Program) now() time.Time { return time.Now() }

// add is the command that puts another shop's booth or gun into the folder.
func (p *Program) add() *cobra.Command {
	var dry bool
	c := &cobra.Command{
		Use: commandAdd + " FILE", Short: p.local.Say("brief-add"),
		RunE: func(c *cobra.Command, args []string) error { return p.addFile(c, args, dry) },
	}
	c.Flags().BoolVar(&dry, flagDryRun, false, "usage-dry-run")
	return c
}

func (p *Program) addFile(c *cobra.Command, args []string, dry bool) error {
	if len(args) != 1 {
		w, _ := p.words()
		return p.seeHelp(c, w.Say("shop-add-one"))
	}
	s, err := p.openShop()
	if err != nil {
		return err
	}
	a, faults := s.folder.Look(s.reader, args[0])
	if slices.ContainsFunc(faults, func(f *shop.Fault) bool { return f.Weight == shop.Broken }) {
		p.warn(s.words, faults)
		p.code = ExitBadInput
		return nil
	}
	p.warn(s.words, faults)
	id := "shop-would-add"
	if !dry {
		id = "shop-added"
		if err := s.folder.Add(a); err != nil {
			fmt.Fprintln(p.Std.Err, name+":", shopError(s.words, err))
			p.code = ExitFailed
			return nil
		}
	}
	p.code = p.say(spoken(s.words, id, calc.SentenceFigure("kind", "shop-a-"+a.Kind), calc.TextFigure("id", a.ID), calc.TextFigure("file", a.File)) + "\n")
	return nil
}
