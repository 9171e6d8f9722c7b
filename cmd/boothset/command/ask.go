package command

import (
	"runtime"
	"slices"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// asked is a question's command: its flags as they were given.
type asked struct {
	p     *Program
	q     *question.Question
	texts question.Texts
	booth string
	of    *shop.Booth // that, once it is read
	jsonAsked
	batchAsked
	learning
}

// ask is the command of a question: its fields are its flags.
func (p *Program) ask(q *question.Question) *cobra.Command {
	a := &asked{p: p, q: q, texts: question.Texts{}}
	c := &cobra.Command{
		Use: q.Name, Short: p.local.Say("brief-" + q.Name), Args: p.noArgs,
		RunE: func(c *cobra.Command, _ []string) error { return a.run(c) },
	}
	p.fieldFlags(c, q, a.texts)
	p.boothFlag(c, &a.booth)
	a.jsonFlags(c)
	a.batchFlags(c)
	if q == question.Learn || q == question.Prove {
		a.learning.flags(c)
	}
	c.Flags().Lookup(flagFields).Usage = "usage-fields" // with an example
	c.Flags().SortFlags = false
	return c
}

// fieldFlags gives a command the fields of a question as flags.
func (p *Program) fieldFlags(c *cobra.Command, q *question.Question, texts question.Texts) {
	for _, row := range q.Fields {
		c.Flags().Var(&fieldFlag{texts, row}, row.Name, row.Usage())
		if row.Listed() || row.Field == question.Line || row.Field == question.Sign || row.Field == question.Found {
			_ = c.RegisterFlagCompletionFunc(row.Name, p.complete(row.Field)) // fails for a flag that is not there
		}
	}
}

// fieldFlag is a field as a flag: its texts are kept as they are given.
type fieldFlag struct {
	texts question.Texts
	row   question.Row
}

func (f *fieldFlag) String() string { return "" }
func (f *fieldFlag) Type() string   { return "text" }

// Set takes another value of a field that repeats, and the last one of another.
func (f *fieldFlag) Set(text string) error {
	if f.row.Repeats {
		f.texts[f.row.Name] = append(f.texts[f.row.Name], text)
	} else {
		f.texts[f.row.Name] = []string{text}
	}
	return nil
}

// run answers the question.
func (a *asked) run(c *cobra.Command) error {
	p := a.p
	o, err := p.open()
	if err != nil {
		return err
	}
	pick, err := pickOf(a.q.Name, a.fields, o.words)
	if err != nil {
		return err
	}
	if a.batch {
		if err := aloneWithBatch(c.Flags(), o.words); err != nil {
			return err
		}
		jobs, err := jobsOf(a.jobs, o.words)
		if err != nil {
			return err
		}
		p.code = p.runBatch(o, a.q, jobs, pick)
		return nil
	}
	switch {
	case a.jobs != "":
		return &fieldError{flagJobs, a.jobs, o.words.Say("want-batch")}
	case pick != nil && !a.asJSON:
		return &fieldError{flagFields, a.fields, o.words.Say("want-json-or-batch")}
	}
	found, _, err := a.answer(&o, p.booths(o.words))
	if err != nil {
		return err
	}
	var out []byte
	if a.asJSON {
		out = append(appendAnswer(nil, a.q, found, false, o.sys, o.words, pick), '\n')
	} else {
		out = answer.Print(append(found.Rows(o.words, o.sys), answer.GeneralRows(o.words, o.sys)...), answer.Width, o.words)
	}
	p.code = p.write(o.words, out, found.Stopped())
	return nil
}

// answer answers the question by what was typed, with how sure a plan is; o then reads with
// the booth and the gun that were named.
func (a *asked) answer(o *opened, shops *booths) (found answer.Answer, typed question.Answers, err error) {
	if typed, err = a.typed(o, shops); err != nil {
		return nil, typed, err
	}
	if (a.q == question.Learn || a.q == question.Prove) && a.booth != "" {
		found, err = a.learnIn(o, shops, typed)
		return found, typed, err
	}
	if a.keep || len(a.replaced) > 0 {
		return nil, typed, &fieldError{flagBooth, "", o.words.Say("want-booth-kept")}
	}
	if found, err = askTyped(o.reader, a.q, typed, o.sys); err != nil {
		return nil, typed, err
	}
	if plan, ok := found.(*answer.Plan); ok {
		plan.Sure()
	}
	return found, typed, nil
}

// typed reads what was typed; o then reads with the booth and the gun that were named.
func (a *asked) typed(o *opened, shops *booths) (typed question.Answers, err error) {
	r, err := shops.reader(*o, a.booth, lastOf(a.texts[question.Gun.Name]))
	if err != nil {
		return typed, err
	}
	o.reader, a.of = r.Reader, r.booth
	for name, texts := range a.texts {
		row, _ := a.q.Field(name)
		for i := range texts {
			texts[i] = o.reader.Expand(row.Field, texts[i])
		}
	}
	return o.reader.ReadAll(a.q, a.texts, o.sys), nil
}

// boothFlag gives a command the flag that names a booth.
func (p *Program) boothFlag(c *cobra.Command, booth *string) {
	c.Flags().StringVar(booth, flagBooth, "", "usage-booth")
	_ = c.RegisterFlagCompletionFunc(flagBooth, p.completeBooth) // fails for a flag that is not there
}

// lastOf is the last of texts, empty where there is none.
func lastOf(texts []string) string {
	if len(texts) == 0 {
		return ""
	}
	return texts[len(texts)-1]
}

// mostJobs is the most lines of a batch that are answered at once.
const mostJobs = 256

// jobsOf reads how many lines are answered at once; where it is not said as many as there are
// cores.
func jobsOf(given string, w *words.Words) (int, error) {
	if given == "" {
		return min(runtime.GOMAXPROCS(0), mostJobs), nil
	}
	n, err := strconv.Atoi(unit.Fold(strings.TrimSpace(given)))
	if err != nil || n < 1 || n > mostJobs {
		return 0, &fieldError{flagJobs, given, spoken(w, "want-jobs", calc.CountFigure("most", mostJobs))}
	}
	return n, nil
}

// askTyped answers a question. What was typed and would not count is a fault, after what
// cannot be read at all.
func askTyped(r *question.Reader, q *question.Question, typed question.Answers, sys unit.System) (answer.Answer, error) {
	found, err := answer.Ask(r, q, typed, sys)
	if err != nil {
		return nil, err
	}
	if f := r.Unused(q, typed, typed, sys); f != nil {
		return nil, f
	}
	return found, nil
}

// write writes an answer and gives the exit code.
func (p *Program) write(w *words.Words, out []byte, stopped bool) int {
	if _, err := p.Std.Out.Write(out); err != nil {
		return p.failed(w, "failed-answer", err)
	}
	if stopped {
		return ExitCannot
	}
	return ExitAnswered
}

// aloneWithBatch refuses the flags that a batch's requests give themselves.
func aloneWithBatch(f *pflag.FlagSet, w *words.Words) (err error) {
	f.Visit(func(x *pflag.Flag) {
		if !slices.Contains(beside, x.Name) {
			err = &fieldError{field: x.Name, want: w.Say("want-no-batch")}
		}
	})
	return err
}
