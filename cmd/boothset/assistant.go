package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/last"
	"boothset/tui"

	"github.com/charmbracelet/x/term"
)

// runAssistant opens the assistant on a terminal. It draws on standard output, or on
// standard error where output goes elsewhere; the answer it is left from is then
// printed to standard output.
func runAssistant(args []string, std stdio, getenv func(string) string) int {
	var flags common
	f := flag.NewFlagSet("boothset", flag.ContinueOnError)
	flags.flags(f)
	var lines bool
	f.BoolVar(&lines, "plain", false, "usage-plain")
	if code, done := parse(f, args, std, getenv, help{intro: "assistant-intro"}, &flags); done {
		return code
	}
	var o opened
	if err := flags.open(&o, getenv); err != nil {
		return refuse(std, err)
	}
	run := tui.Options{Catalogue: o.catalogue, Words: o.words, System: o.sys, In: std.in, Getenv: getenv, Kept: last.File(getenv), Questions: pages(o.catalogue)}
	if lines || isTerminal(std.in) && getenv("TERM") == "dumb" {
		return inLines(run, &o, std)
	}
	screen, why := screenOf(std)
	if screen == nil {
		w := o.words
		fmt.Fprintf(std.err, "boothset: %s, %s\n\n%s\nboothset plan --help %s\n", w.Say(why), w.Say("assistant-no-screen"), planHelp.text(w), w.Say("assistant-see"))
		return exitBadInput
	}
	run.Out = screen
	left, err := tui.Run(run)
	return leave(left, err, &o, std)
}

// inLines is the assistant in lines of text. A script starts from the same place every
// time: its answers are neither kept nor offered.
func inLines(run tui.Options, o *opened, std stdio) int {
	run.Out = std.out
	if !isTerminal(std.in) {
		run.Kept = ""
	}
	left, err := tui.Plain(run)
	var ended *tui.InputError
	if errors.As(err, &ended) {
		fmt.Fprintln(std.err, "boothset:", o.words.Text(o.sys, "plain-ended", calc.Figures{{Name: "at", Text: ended.At}}))
		return exitBadInput
	}
	return leave(left, err, o, std)
}

// leave prints the answer that the assistant was left from and gives the exit code.
func leave(left tui.Result, err error, o *opened, std stdio) int {
	var unkept *last.Error
	if errors.As(left.Unkept, &unkept) {
		fmt.Fprintln(std.err, "boothset:", o.words.Text(o.sys, unkept.ID, unkept.Figures()))
	}
	switch {
	case err != nil:
		return failed(std, o.words, "failed-screen", err)
	case left.Stopped:
		return exitStopped
	case !left.Answered:
		return exitAnswered
	}
	p := plan{request: left.Request, setup: left.Setup, spread: left.Spread}
	card := cardOf(&p, cardWidth, left.System, o.words)
	if _, err := std.out.Write(card); err != nil {
		return failed(std, o.words, "failed-answer", err)
	}
	if left.Setup.Stopped() {
		return exitCannot
	}
	return exitAnswered
}

// pages is the coat's own questions as the assistant asks them.
func pages(c *presets.Catalogue) []tui.Question {
	var all []tui.Question
	for _, q := range questions() {
		all = append(all, tui.Question{Name: q.name, Title: c.Words().Say(q.brief), Fields: q.fields,
			Ask: func(s presets.Sheet, read, show unit.System) (tui.Answer, error) {
				r, err := q.ask(c, s, read)
				if err != nil {
					return tui.Answer{}, err
				}
				text := func(width int) string { return string(printed(r, width, show, c.Words())) }
				return tui.Answer{Text: text, Stopped: r.stopped()}, nil
			},
		})
	}
	return all
}

// screenOf is where the assistant can draw, nil with the id of the reason where it
// cannot.
func screenOf(std stdio) (screen io.Writer, why string) {
	switch {
	case !isTerminal(std.in):
		return nil, "no-screen-input"
	case isTerminal(std.out):
		return std.out, ""
	case isTerminal(std.err):
		return std.err, ""
	}
	return nil, "no-screen-output"
}

func isTerminal(v any) bool {
	f, ok := v.(*os.File)
	return ok && term.IsTerminal(f.Fd())
}
