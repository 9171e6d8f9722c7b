package command

import (
	"flag"
	"strings"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// answerFlags makes a flag of every field of answers.
func answerFlags(f *flag.FlagSet, a *presets.Answers) {
	for _, field := range presets.PlanFields {
		f.Func(field.Name, field.Usage, func(v string) error {
			a.Add(field.Name, v)
			return nil
		})
	}
}

// systemOf reads the units answer; empty is the shop's own.
func systemOf(units string, c *presets.Catalogue) (unit.System, error) {
	switch units {
	case "":
		return c.System(), nil
	case presets.UnitsUS:
		return unit.US, nil
	case presets.UnitsMetric:
		return unit.Metric, nil
	}
	return 0, &presets.FieldError{Field: presets.FieldUnits, Given: units, Want: chooseUnits(c.Words())}
}

func chooseUnits(w *words.Words) string {
	return w.Choose([]string{presets.UnitsUS, presets.UnitsMetric})
}

// opened is what a sub-command answers from, once its flags are read.
type opened struct {
	catalogue     *presets.Catalogue
	words         *words.Words
	sys           unit.System
	asJSON, batch bool
}

// flagBatch is the flag that asks for a batch.
const flagBatch = "batch"

// IsBatch reports whether an argument is the flag that asks for a batch.
func IsBatch(arg string) bool {
	name, _, _ := strings.Cut(strings.TrimLeft(arg, "-"), "=")
	return name == flagBatch && name != arg
}

// begin adds the flags that every sub-command has, reads them all and opens the
// catalogue. done is true where that was the end: help was asked for, or refused.
func begin(f *flag.FlagSet, h help, args []string, std Stdio, getenv func(string) string) (o opened, code int, done bool) {
	var c common
	c.flags(f)
	f.BoolVar(&o.asJSON, "json", false, "usage-json")
	f.BoolVar(&o.batch, flagBatch, false, "usage-batch")
	if code, done := parse(f, args, std, getenv, h, &c); done {
		return o, code, true
	}
	err := c.open(&o, getenv)
	if err == nil && o.batch {
		err = aloneWithBatch(f, o.words)
	}
	if err != nil {
		return o, refuse(std, err), true
	}
	return o, ExitAnswered, false
}

var planHelp = help{
	intro:    "plan-intro",
	examples: []string{"boothset plan --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi"},
	note:     "plan-note",
	schema:   planSchema,
}

// planRoom is room for a plan as JSON: growing into it would copy it several times.
const planRoom = 16 << 10

func runPlan(args []string, std Stdio, getenv func(string) string) int {
	var a presets.Answers
	f := flag.NewFlagSet("plan", flag.ContinueOnError)
	answerFlags(f, &a)
	o, code, done := begin(f, planHelp, args, std, getenv)
	if done {
		return code
	}
	w := o.words
	if o.batch {
		return runBatch(std, w, planLine(o.catalogue, o.sys, w))
	}
	var p Plan
	if err := p.answer(o.catalogue, &a, o.sys); err != nil {
		return refuse(std, err)
	}
	p.sure()
	var out []byte
	if o.asJSON {
		out = append(appendPlan(make([]byte, 0, planRoom), &p, o.sys, w), '\n')
	} else {
		out = cardOf(&p, cardWidth, o.sys, w)
	}
	return writeAnswer(std, w, out, p.Setup.Stopped())
}

// writeAnswer writes an answer and gives the exit code.
func writeAnswer(std Stdio, w *words.Words, out []byte, stopped bool) int {
	if _, err := std.Out.Write(out); err != nil {
		return failed(std, w, "failed-answer", err)
	}
	if stopped {
		return ExitCannot
	}
	return ExitAnswered
}

// Plan is a job and its answer.
type Plan struct {
	Request *calc.Request
	Setup   *calc.Setup
	Spread  *spread.Spread // nil until sure, and where the supply is short
}

// sure works out how sure the answer is.
func (p *Plan) sure() { p.Spread = spread.Of(p.Request, p.Setup) }

// answer resolves and solves.
func (p *Plan) answer(c *presets.Catalogue, a *presets.Answers, sys unit.System) (err error) {
	if p.Request, err = c.Request(*a, sys); err != nil {
		return err
	}
	p.Setup, err = calc.Solve(p.Request)
	return c.Refused(err, sys, a.Field)
}
