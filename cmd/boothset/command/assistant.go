package command

import (
	"flag"
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// Assistant is what the assistant is opened with, and how it answers when it is left.
type Assistant struct {
	Catalogue *presets.Catalogue
	Words     *words.Words
	System    unit.System
	Lines     bool // wanted as lines of text
}

// OpenAssistant reads the assistant's flags. done is true where that was the end, with
// its exit code: help was asked for, or something refused.
func OpenAssistant(args []string, std Stdio, getenv func(string) string) (a Assistant, code int, done bool) {
	var flags common
	f := flag.NewFlagSet("boothset", flag.ContinueOnError)
	flags.flags(f)
	f.BoolVar(&a.Lines, "plain", false, "usage-plain")
	if code, done := parse(f, args, std, getenv, help{intro: "assistant-intro"}, &flags); done {
		return a, code, true
	}
	var o opened
	if err := flags.open(&o, getenv); err != nil {
		return a, refuse(std, err), true
	}
	a.Catalogue, a.Words, a.System = o.catalogue, o.words, o.sys
	return a, ExitAnswered, false
}

// NoScreen says why there is no screen to draw on, by the id of the reason, and what
// answers without one.
func (a *Assistant) NoScreen(std Stdio, why string) int {
	w := a.Words
	fmt.Fprintf(std.Err, "boothset: %s, %s\n\n%s\nboothset plan --help %s\n", w.Say(why), w.Say("assistant-no-screen"), planHelp.text(w), w.Say("assistant-see"))
	return ExitBadInput
}

// Warn says, in the sentence of an id, what does not keep the assistant from answering.
func (a *Assistant) Warn(std Stdio, id string, f calc.Figures) {
	fmt.Fprintln(std.Err, "boothset:", a.Words.Text(a.System, id, f))
}

// Failed says what went wrong, in the sentence of an id.
func (a *Assistant) Failed(std Stdio, id string, err error) int {
	return failed(std, a.Words, id, err)
}

// Card prints the answer that the assistant was left from, in the units it then had and no
// wider than what it is printed on, where that has a width above 0.
func (a *Assistant) Card(std Stdio, p *Plan, sys unit.System, width int) int {
	if width <= 0 || width > cardWidth {
		width = cardWidth
	}
	return writeAnswer(std, a.Words, cardOf(p, width, sys, a.Words), p.Setup.Stopped())
}

// Page is one of the coat's own questions as the assistant asks it. Ask reads fields in a
// system of units and answers in another, as text of a width.
type Page struct {
	Name, Title string
	Fields      []presets.Field
	Ask         func(s presets.Sheet, read, show unit.System) (text func(width int) string, stopped bool, err error)
}

// Pages is all of them, in the order they come up at the bench.
func Pages(c *presets.Catalogue) []Page {
	var all []Page
	for _, q := range questions() {
		all = append(all, Page{Name: q.name, Title: c.Words().Say(q.brief), Fields: q.fields,
			Ask: func(s presets.Sheet, read, show unit.System) (text func(width int) string, stopped bool, err error) {
				r, err := q.ask(c, s, read)
				if err != nil {
					return nil, false, err
				}
				return func(width int) string { return string(printed(r, width, show, c.Words())) }, r.stopped(), nil
			},
		})
	}
	return all
}
