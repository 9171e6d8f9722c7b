package command

import (
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// The commands that add to the log, and the schema of what they answer.
const (
	commandRecord  = "record"
	commandOutcome = "outcome"
)

// The flags of what is said of a job.
const (
	flagOutcome = "outcome"
	flagThen    = "then"
	flagNote    = "note"
	flagAt      = "at"
)

// jobSaid is what is said of a job: how it was set, read and came out, as it was given.
type jobSaid struct {
	set, read, outcome []string
	then, note         string
}

func (a *jobSaid) flags(c *cobra.Command) {
	c.Flags().StringArrayVar(&a.set, flagSet, nil, "usage-record-set")
	c.Flags().StringArrayVar(&a.read, flagRead, nil, "usage-record-read")
	c.Flags().StringArrayVar(&a.outcome, flagOutcome, nil, "usage-outcome")
	c.Flags().StringVar(&a.then, flagThen, "", "usage-then")
	c.Flags().StringVar(&a.note, flagNote, "", "usage-note")
	for _, name := range []string{flagSet, flagRead} {
		_ = c.RegisterFlagCompletionFunc(name, completeValues) // these fail for a flag that is not there
	}
	_ = c.RegisterFlagCompletionFunc(flagOutcome, cobra.FixedCompletions(texts(shop.Outcomes()), cobra.ShellCompDirectiveNoFileComp))
	_ = c.RegisterFlagCompletionFunc(flagThen, cobra.FixedCompletions(texts(shop.Thens()), cobra.ShellCompDirectiveNoFileComp))
}

func texts[T ~string](all []T) (names []string) {
	for _, x := range all {
		names = append(names, string(x))
	}
	return names
}

// nothing reports whether nothing was said.
func (a *jobSaid) nothing() bool {
	return len(a.set)+len(a.read)+len(a.outcome) == 0 && a.then == "" && a.note == ""
}

// lay lays what was said over a record.
func (a *jobSaid) lay(r *shop.Record, o opened) (err error) {
	if r.Set, err = valuesSaid(flagSet, a.set, o.reader, o.sys); err != nil {
		return err
	}
	if r.Read, err = valuesSaid(flagRead, a.read, o.reader, o.sys); err != nil {
		return err
	}
	for _, given := range a.outcome {
		said, ok := shop.OutcomeNamed(o.words, given)
		if !ok {
			return &fieldError{flagOutcome, given, o.words.Choose(texts(shop.Outcomes()))}
		}
		if !slices.Contains(r.Outcome, said) {
			r.Outcome = append(r.Outcome, said)
		}
	}
	if a.then != "" {
		then, ok := shop.ThenNamed(o.words, a.then)
		if !ok {
			return &fieldError{flagThen, a.then, o.words.Choose(texts(shop.Thens()))}
		}
		if len(r.Outcome) == 0 {
			return &fieldError{flagThen, a.then, o.words.Say("want-outcome")}
		}
		r.Then = then
	}
	r.Note = shop.Note(a.note)
	return nil
}

// recording is the command that logs a job: a plan's flags, and what is said of the job.
type recording struct {
	keeping
	jobSaid
	at string
}

func (p *Program) record() *cobra.Command {
	a := &recording{keeping: keeping{asked: asked{p: p, q: question.Plan, texts: question.Texts{}}}}
	c := &cobra.Command{
		Use: commandRecord, Short: p.local.Say("brief-record"), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if ran, err := a.runLines(p, c, true, (*Program).record); ran || err != nil {
				return err
			}
			return a.run()
		},
	}
	a.jobSaid.flags(c)
	c.Flags().StringVar(&a.at, flagAt, "", "usage-at")
	p.fieldFlags(c, a.q, a.texts)
	p.boothFlag(c, &a.booth)
	a.keepFlags(p, c)
	a.jsonFlags(c)
	a.batchFlags(c)
	c.Flags().SortFlags = false
	return c
}

func (a *recording) run() error {
	nothing := func() (question.Answers, error) { return question.Answers{}, nil }
	if err := a.work(commandRecord, nothing); err != nil {
		return err
	}
	r := shop.JobOf(a.booth, a.reader, a.typed, a.plan.Request, a.plan.Setup, a.bands, a.sys)
	var err error
	if r.At, err = timeOf(a.at, a.p.now(), a.words); err != nil {
		return err
	}
	k := recordKept{&a.shopOpened, &a.keepAsked, &a.jsonAsked, &a.jobSaid, nil}
	return a.p.keepRecord(&k, &r)
}

// timeOf reads when a job was, here: now where it is not said.
func timeOf(given string, now time.Time, w *words.Words) (time.Time, error) {
	if given == "" {
		return now, nil
	}
	for _, form := range []string{"2006-01-02 15:04", "2006-01-02T15:04", time.DateOnly, time.RFC3339} {
		at, err := time.ParseInLocation(form, strings.TrimSpace(given), now.Location())
		switch {
		case err != nil:
		case at.After(now):
			return at, &fieldError{flagAt, given, w.Say("want-past")}
		default:
			return at, nil
		}
	}
	return now, &fieldError{flagAt, given, w.Say("want-when")}
}

// saying is the command that says how a job of the log came out.
type saying struct {
	jobSaid
	keepAsked
	jsonAsked
	batchAsked
	booth string
}

func (p *Program) outcome() *cobra.Command {
	a := &saying{}
	c := &cobra.Command{
		Use: commandOutcome + " [ID]", Short: p.local.Say("brief-outcome"), ValidArgsFunction: p.completeOf((*shopOpened).unsaid),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return p.noArgs(c, args[1:])
			}
			if ran, err := a.runLines(p, c, true, (*Program).outcome); ran || err != nil {
				return err
			}
			return p.sayOutcome(a, strings.Join(args, ""))
		},
	}
	a.jobSaid.flags(c)
	p.boothFlag(c, &a.booth)
	a.keepFlags(p, c)
	a.jsonFlags(c)
	a.batchFlags(c)
	c.Flags().SortFlags = false
	return c
}

// sayOutcome says more of the job whose id begins as is given, else of the last one that nobody
// spoke of.
func (p *Program) sayOutcome(a *saying, id string) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandRecord, s.words); err != nil {
		return err
	}
	if a.nothing() {
		return &fieldError{flagOutcome, "", s.words.Choose(texts(shop.Outcomes()))}
	}
	ids, err := s.chosen(a.booth, s.folder.LoggedBooths())
	if err != nil {
		return err
	}
	job, err := s.meant(s.jobsOf(ids), id)
	if err != nil {
		return err
	}
	r := shop.LaterOf(job)
	r.At = p.now()
	return p.keepRecord(&recordKept{&s, &a.keepAsked, &a.jsonAsked, &a.jobSaid, job}, &r)
}

// meant is the job that is meant by the beginning of its id, else the last that nobody spoke of.
func (s *shopOpened) meant(jobs []*shop.Record, id string) (*shop.Record, error) {
	found := shop.Begun(jobs, id)
	if id == "" {
		slices.SortStableFunc(found, func(a, b *shop.Record) int { return a.At.Compare(b.At) })
		if found = shop.Unsaid(found); len(found) == 0 {
			return nil, &fieldError{"id", "", s.words.Say("want-job-none")}
		}
		return found[len(found)-1], nil
	}
	switch {
	case len(found) == 0:
		return nil, &fieldError{"id", id, s.words.Say("want-job")}
	case len(found) > 1:
		const most = 5
		var ids []string
		for _, r := range found[:min(len(found), most)] {
			ids = append(ids, r.ID)
		}
		return nil, &fieldError{"id", id, s.words.Choose(ids)}
	}
	return found[0], nil
}

// recordKept is a record on its way into the log: by which flags, and what was said.
type recordKept struct {
	*shopOpened
	*keepAsked
	*jsonAsked
	said *jobSaid
	of   *shop.Record // the job that the record says more of, nil where it is one
}

// keepRecord completes a record by what was said, keeps it where it is not only to be shown, and
// says the job as it then is.
func (p *Program) keepRecord(k *recordKept, r *shop.Record) (err error) {
	if err := k.said.lay(r, k.opened); err != nil {
		return err
	}
	if r.Painter, err = k.painter(k.by); err != nil {
		return err
	}
	if !k.dry {
		m, err := shop.MachineOf(p.Getenv)
		if err != nil {
			return unkept(k.words, err)
		}
		if r, err = k.folder.Keep(m, *r, k.sys); err != nil {
			return unkept(k.words, err)
		}
	}
	job := r
	if k.of != nil {
		job = shop.Jobs([]*shop.Record{k.of, r})[0]
	}
	painters, _ := k.folder.Painters() // what is wrong with them was told
	l := logList{*k.shopOpened, []*shop.Record{job}, painters}
	id := "record-kept"
	if k.dry {
		id = "record-would"
	}
	text := func() []byte {
		return append([]byte(spoken(k.words, id, calc.TextFigure("booth", r.Booth))+"\n"), l.text()...)
	}
	p.answerShop(k.shopOpened, k.jsonAsked, commandRecord, false, text, func(j *jsonWriter) {
		j.bool("kept", !k.dry)
		j.text("record", r.ID)
		j.object("job", func() { l.job(j, job) })
	})
	return nil
}
