package command

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/print"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// commandCard is the command that prints the card of a job.
const commandCard = "card"

// The flags of the card beside those of a plan.
const (
	flagFormat = "format"
	flagOutput = "output"
	flagPaper  = "paper"
	flagForce  = "force"
)

// The formats of a card.
const (
	formatText = "text"
	formatHTML = "html"
	formatPDF  = "pdf"
)

var formats = []string{formatText, formatHTML, formatPDF}

// cardAsked is the card's flags as they were given.
type cardAsked struct {
	asked
	format, file, paper string
	force               bool
}

// card is the command of the card: a plan's flags, and how it is put on paper.
func (p *Program) card() *cobra.Command {
	a := &cardAsked{asked: asked{p: p, q: question.Plan, texts: question.Texts{}}}
	c := &cobra.Command{
		Use: commandCard, Short: p.local.Say("brief-card"), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if ran, err := a.runLines(p, c, false, (*Program).card); ran || err != nil {
				return err
			}
			return a.print()
		},
	}
	p.fieldFlags(c, a.q, a.texts)
	p.boothFlag(c, &a.booth)
	c.Flags().StringVar(&a.format, flagFormat, formatText, "usage-format")
	c.Flags().StringVarP(&a.file, flagOutput, "o", "", "usage-output")
	c.Flags().StringVar(&a.paper, flagPaper, "", "usage-paper")
	c.Flags().BoolVar(&a.force, flagForce, false, "usage-force")
	for name, from := range map[string][]string{flagFormat: formats, flagPaper: paperNames()} {
		_ = c.RegisterFlagCompletionFunc(name, cobra.FixedCompletions(from, cobra.ShellCompDirectiveNoFileComp)) // fails for a flag that is not there
	}
	a.jsonFlags(c)
	a.batchFlags(c)
	c.Flags().SortFlags = false
	return c
}

func paperNames() (names []string) {
	for _, p := range print.Papers {
		names = append(names, p.Name)
	}
	return names
}

// print makes the card and writes it where it was asked for.
func (a *cardAsked) print() error {
	o, err := a.p.open()
	if err != nil {
		return err
	}
	paper, err := a.checked(o)
	if err != nil {
		return err
	}
	s := shopOpened{opened: o}
	shops := s.booths(a.p)
	found, typed, err := a.asked.answer(&s.opened, shops)
	if err != nil {
		return err
	}
	plan := found.(*answer.Plan) // the question is a plan's
	span, _ := typed.Or(s.reader.Usual()).One(question.GaugeSpan)
	c := card.Card{Plan: plan, Span: unit.Gauge(span.SI[0]), Printed: a.p.now()}
	if a.booth != "" {
		c.Booth = a.of.Name
		agreed, faults := card.AgreedFor(shops.folder, a.of.ID, plan)
		s.tell(faults...)
		c.Agreed = agreed
	}
	out, err := a.laid(&c, &s, paper)
	if err != nil {
		a.p.code = a.p.failed(s.words, "failed-answer", err)
		return nil
	}
	return a.out(s.words, out, plan.Stopped())
}

// checked is the paper that was asked for, by the units where none was. What else was given
// and will not do is a fault.
func (a *cardAsked) checked(o opened) (paper *print.Paper, err error) {
	if err := a.checkFields(commandCard, o.words); err != nil {
		return nil, err
	}
	a.format, a.paper = strings.ToLower(a.format), strings.ToLower(a.paper)
	if a.paper == "" {
		a.paper = print.Papers[o.sys].Name
	}
	n := slices.Index(paperNames(), a.paper)
	switch {
	case !slices.Contains(formats, a.format):
		return nil, &fieldError{flagFormat, a.format, o.words.Choose(formats)}
	case n < 0:
		return nil, &fieldError{flagPaper, a.paper, o.words.Choose(paperNames())}
	case a.asJSON && a.format != formatText:
		return nil, &fieldError{flagFormat, a.format, o.words.Say("want-not-json")}
	case words.Printable(a.file) != a.file:
		return nil, &fieldError{flagOutput, a.file, o.words.Say("want-file-name")}
	case a.format == formatPDF && a.file == "" && IsTerminal(a.p.Std.Out):
		return nil, &fieldError{flagFormat, a.format, o.words.Say("want-output")}
	}
	if _, err := os.Lstat(a.file); err == nil && a.file != "" && !a.force {
		return nil, a.there(o.words)
	}
	return print.Papers[n], nil
}

// there is the fault of a file that is there already.
func (a *cardAsked) there(w *words.Words) error {
	return &fieldError{flagOutput, a.file, w.Say("want-force")}
}

// laid is the card in its format.
func (a *cardAsked) laid(c *card.Card, s *shopOpened, paper *print.Paper) ([]byte, error) {
	rows := c.Rows(s.words, s.sys)
	if a.asJSON {
		return a.document(commandCard, func(j *jsonWriter) { a.json(j, c, rows, s) }), nil
	}
	a.p.warn(s.words, s.wrong)
	if a.format == formatText {
		return answer.Print(rows, answer.Width, s.words), nil
	}
	page := print.Page{Title: c.Title(s.words), Rows: rows, Pictures: c.Pictures(s.words, s.sys), Words: s.words, Paper: paper, Printed: c.Printed}
	if a.format == formatHTML {
		return page.HTML()
	}
	return page.PDF()
}

// json is the card: its rows as they are put on paper, and the plan that they are of.
func (a *cardAsked) json(j *jsonWriter, c *card.Card, rows []answer.Row, s *shopOpened) {
	j.text("title", c.Title(s.words))
	j.text(flagBooth, c.Booth)
	j.text("printed", c.Printed.UTC().Format(time.RFC3339))
	appendJudgement(j, &c.Plan.Setup.Judgement, s.sys, s.words)
	j.bool("stopped", c.Plan.Stopped())
	j.array("agreed", func() {
		for _, x := range c.Agreed.Settings {
			j.object("", func() { appendSetting(j, x, shop.Painters{x.By: c.Agreed.By}) })
		}
	})
	j.bool("void", c.Agreed.Void)
	j.array("rows", func() {
		for i := range rows {
			j.object("", func() { appendRow(j, &rows[i]) })
		}
	})
	j.object("plan", func() { appendPlan(j, c.Plan, s.sys, s.words) })
	appendFaults(j, s.words, s.wrong)
}

// appendRow is a row as it is put on paper.
func appendRow(j *jsonWriter, r *answer.Row) {
	j.text("role", r.Role.String())
	j.text("level", string(r.Level))
	j.text("about", r.About)
	j.text("id", r.ID)
	j.text("name", r.Name)
	j.text("text", r.Text)
	j.text("more", r.More)
	j.text("basis", r.Ground)
	j.array("cells", func() {
		for _, c := range r.Cells {
			j.text("", c)
		}
	})
	j.bool("marked", r.Marked)
	j.bool("begins", r.Begins)
}

// out writes the card to its file, else to standard output.
func (a *cardAsked) out(w *words.Words, out []byte, stopped bool) error {
	if a.file == "" {
		a.p.code = a.p.write(w, out, stopped)
		return nil
	}
	err := a.keep(out)
	switch {
	case errors.Is(err, fs.ErrExist):
		return a.there(w)
	case err != nil:
		a.p.code = a.p.failed(w, "failed-answer", err)
		return nil
	}
	a.p.code = a.p.write(w, []byte(spoken(w, "card-written", calc.PathFigure("file", a.file))+"\n"), stopped)
	return nil
}

// keep writes the file: a new one, or, where that was asked for, in place of one that is there,
// which stays as it was unless all could be written.
func (a *cardAsked) keep(out []byte) error {
	const mode = 0o644
	if !a.force {
		f, err := os.OpenFile(a.file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
		if err != nil {
			return err
		}
		return written(f, out)
	}
	f, err := os.CreateTemp(filepath.Dir(a.file), ".boothset-card-*")
	if err != nil {
		return err
	}
	if err = errors.Join(f.Chmod(mode), written(f, out)); err == nil {
		err = os.Rename(f.Name(), a.file)
	}
	if err != nil {
		_ = os.Remove(f.Name()) // what went wrong before that is told
	}
	return err
}

// written writes a new file and closes it; where that fails nothing of it is left.
func written(f *os.File, out []byte) error {
	_, err := f.Write(out)
	if err = errors.Join(err, f.Close()); err != nil {
		_ = os.Remove(f.Name()) // the error is told
	}
	return err
}
