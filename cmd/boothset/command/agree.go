package command

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// commandAgree is the command that keeps a setting that was agreed on.
const commandAgree = "agree"

// The flags of the command beside those of whatever is kept.
const (
	flagAny  = "any"
	flagBand = "band"
)

// agreeing is the command's flags as they were given, and what they come to.
type agreeing struct {
	keeping
	set, any         []string
	band, why, knobs string
	setting          *shop.Setting // nil where nothing is set today
	replaced         []*shop.Setting
}

func (p *Program) agree() *cobra.Command {
	a := &agreeing{keeping: keeping{asked: asked{p: p, q: question.Plan, texts: question.Texts{}}}}
	c := &cobra.Command{
		Use: commandAgree, Short: p.local.Say("brief-agree"), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if ran, err := a.runLines(p, c, true, (*Program).agree); ran || err != nil {
				return err
			}
			return a.run()
		},
	}
	c.Flags().StringArrayVar(&a.set, flagSet, nil, "usage-agree-set")
	c.Flags().StringArrayVar(&a.any, flagAny, nil, "usage-any")
	c.Flags().StringVar(&a.band, flagBand, "", "usage-band")
	c.Flags().StringVar(&a.knobs, "knobs", "", "usage-knobs")
	c.Flags().StringVar(&a.why, "why", "", "usage-why")
	p.fieldFlags(c, a.q, a.texts)
	p.boothFlag(c, &a.booth)
	a.keepFlags(p, c)
	a.jsonFlags(c)
	a.batchFlags(c)
	_ = c.RegisterFlagCompletionFunc(flagSet, completeValues) // these fail for a flag that is not there
	_ = c.RegisterFlagCompletionFunc(flagBand, p.completeOf((*shopOpened).bandIDs))
	_ = c.RegisterFlagCompletionFunc(flagAny, cobra.FixedCompletions(anyParts, cobra.ShellCompDirectiveNoFileComp))
	c.Flags().SortFlags = false
	return c
}

// anyParts is what of a subject may be any.
var anyParts = []string{question.Stage.Name, question.Gun.Name, flagBand}

func (a *agreeing) run() error {
	if err := a.work(commandAgree, a.day); err != nil {
		return err
	}
	if a.plan.Stopped() {
		a.answer()
		return nil
	}
	if err := a.made(); err != nil {
		return err
	}
	all, faults := a.folder.Settings(a.booth)
	a.tell(faults...)
	a.replaced = shop.Replaced(all, a.setting.Subject)
	if !a.dry {
		kept, err := a.folder.Agree(*a.setting, a.sys)
		if err != nil {
			return unkept(a.words, err)
		}
		a.setting = kept
	}
	a.answer()
	return nil
}

func (a *agreeing) answer() {
	text := func() []byte {
		return answer.Print(append(a.rows(), answer.GeneralRows(a.words, a.sys)...), answer.Width, a.words)
	}
	a.p.answerShop(&a.shopOpened, &a.jsonAsked, commandAgree, a.plan.Stopped(), text, a.json)
}

// day is the day of the band that was named, where no other is; the wall as it was set, so that
// what it does to the gun is worked out.
func (a *agreeing) day() (more question.Answers, err error) {
	hand, err := valuesSaid(flagSet, a.set, a.reader, a.sys)
	if err != nil {
		return more, err
	}
	if hand.Wall > 0 {
		more = more.With(question.Wall, question.Value{SI: [2]float64{float64(hand.Wall)}, Text: a.sys.Gauge(hand.Wall, unit.Usual)})
	}
	if a.band == "" || a.band == shop.Any {
		return more, nil
	}
	band := shop.BandNamed(a.bands, strings.ToLower(a.band))
	if !slices.ContainsFunc(a.bands, func(b shop.Band) bool { return b.ID == band.ID }) {
		return more, a.noBand()
	}
	return more.Or(band.Day()), nil
}

// noBand is the fault of a band that there is not.
func (a *agreeing) noBand() error {
	var ids []string
	for _, b := range a.bands {
		ids = append(ids, b.ID)
	}
	return &fieldError{flagBand, a.band, a.words.Choose(ids)}
}

// made makes the setting of the answer and of what was said.
func (a *agreeing) made() (err error) {
	q, setup := a.plan.Request, a.plan.Setup
	s := shop.SettingOf(a.booth, q, setup, a.bands)
	hand, err := valuesSaid(flagSet, a.set, a.reader, a.sys)
	if err != nil {
		return err
	}
	s.Lay(hand)
	if s.By, err = a.painter(a.by); err != nil {
		return err
	}
	for _, part := range a.any {
		switch strings.ToLower(part) {
		case question.Stage.Name:
			s.Stage = shop.Any
		case question.Gun.Name:
			s.Gun = shop.Any
		case flagBand:
			s.Band = shop.Any
		default:
			return &fieldError{flagAny, part, a.words.Choose(anyParts)}
		}
	}
	switch {
	case a.band != "" && s.Band != shop.Any && s.Band != strings.ToLower(a.band):
		return &fieldError{flagBand, a.band, a.words.Say("want-day-of-band")}
	case s.Band == "":
		return a.noBand()
	}
	s.Why, s.Knobs, s.Agreed = shop.Note(a.why), shop.Note(a.knobs), a.p.now()
	a.setting = &s
	return nil
}

// rows is what was agreed, what it replaces, and what is to be known of it.
func (a *agreeing) rows() []answer.Row {
	if a.setting == nil {
		return a.plan.Rows(a.words, a.sys)
	}
	id := "agree-kept"
	if a.dry {
		id = "agree-would"
	}
	s := a.setting
	of := append(s.Called(a.reader, a.bands), calc.TextFigure("booth", a.booth), calc.TextFigure("id", s.ID))
	rows := []answer.Row{{Role: answer.Heading, ID: id, Text: a.words.Text(a.sys, id, of)}}
	values, _ := card.SettingRows(a.words, a.sys, a.plan, s)
	values[0].Begins = true
	rows = append(rows, values...)
	said := func(r answer.Row) bool { // of the wall as it is set
		return slices.ContainsFunc(values, func(v answer.Row) bool { return v.Role == answer.Caution && v.ID == r.ID })
	}
	for i, r := range a.replaced {
		text := spoken(a.words, "agree-replaces", calc.TextFigure("id", r.ID), calc.TextFigure("date", dateOf(r.Agreed)),
			calc.TextFigure("values", strings.Join(r.Values.Texts(a.words, a.sys), "; ")))
		rows = append(rows, answer.Row{Role: answer.Remark, ID: "agree-replaces", Text: text, Begins: i == 0})
	}
	cautions := slices.DeleteFunc(answer.CautionRows(a.words, a.sys, a.plan.Cautions()), said)
	if len(cautions) > 0 {
		cautions[0].Begins = true
	}
	return append(rows, cautions...)
}

// json is the setting as it is kept, or would be, and those that it replaces; no setting where
// the job is stopped.
func (a *agreeing) json(j *jsonWriter) {
	painters, _ := a.folder.Painters() // what is wrong with them was told
	appendJudgement(j, &a.plan.Setup.Judgement, a.sys, a.words)
	j.bool("stopped", a.plan.Stopped())
	j.bool("kept", a.setting != nil && !a.dry)
	if a.setting == nil {
		j.null("setting")
	} else {
		j.object("setting", func() { appendSetting(j, a.setting, painters) })
	}
	j.array("replaced", func() {
		for _, s := range a.replaced {
			j.object("", func() { appendSetting(j, s, painters) })
		}
	})
	appendWords(j, nil, append(slices.Clone(a.plan.Cautions()), a.p.general()...), a.sys, a.words)
}
