package main

import (
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets"
	"boothset/presets/words"
)

// Exit codes.
const (
	exitAnswered = 0
	exitFailed   = 1 // something other than the input went wrong: a pipe, a terminal
	exitBadInput = 2
	exitCannot   = 3   // answered, but the job cannot be done as asked
	exitStopped  = 130 // interrupted
)

// stdio is where a run reads and writes.
type stdio struct {
	in       io.Reader
	out, err io.Writer
}

// command is a sub-command; brief is the id of what it is for.
type command struct {
	name, brief string
	run         func(args []string, std stdio, getenv func(string) string) int
}

// questions is the coat's own questions, in the order they come up at the bench: each is
// a sub-command, and a page of the assistant.
func questions() []question {
	return []question{
		dayQuestion(),
		thinQuestion(),
		filmQuestion(),
		mixQuestion(),
	}
}

var planCommand = command{"plan", "brief-plan", runPlan}

func commands() []command {
	all := []command{planCommand}
	for _, q := range questions() {
		all = append(all, q.command())
	}
	return all
}

// run is the program: arguments in, exit code out.
func run(args []string, std stdio, getenv func(string) string) int {
	if len(args) == 0 || strings.HasPrefix(args[0], "-") && !slices.Contains(askHelp, args[0]) && !slices.Contains(askVersion, args[0]) {
		return runAssistant(args, std, getenv)
	}
	local, _ := words.For(words.LocaleOf(getenv).Lang)
	switch {
	case slices.Contains(askHelp, args[0]):
		return say(std, local, usage(local))
	case slices.Contains(askVersion, args[0]):
		return say(std, local, "boothset "+version(local)+"\n")
	}
	if args[0] == planCommand.name { // which needs none of the others made
		return runPlan(args[1:], std, getenv)
	}
	all := commands()
	if i := slices.IndexFunc(all, func(c command) bool { return c.name == args[0] }); i >= 0 {
		return all[i].run(args[1:], std, getenv)
	}
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = c.name
	}
	return refuse(std, &presets.FieldError{Field: "command", Given: args[0], Want: spoken(local, "want-command", said("names", strings.Join(names, ", ")))})
}

// askHelp and askVersion are what asks for help and for the version in a command's place.
var (
	askHelp    = []string{"-h", "-help", "--help", "help"}
	askVersion = []string{"-version", "--version", "version"}
)

// refuse says what was wrong with the input.
func refuse(std stdio, err error) int {
	fmt.Fprintln(std.err, "boothset:", err)
	return exitBadInput
}

// failed says what else went wrong, in the sentence of an id.
func failed(std stdio, w *words.Words, id string, err error, f ...calc.Figure) int {
	fmt.Fprintln(std.err, "boothset:", spoken(w, id, append(f, said("error", err.Error()))...))
	return exitFailed
}

// say prints what was asked for.
func say(std stdio, w *words.Words, text string) int {
	if _, err := io.WriteString(std.out, text); err != nil {
		return failed(std, w, "failed-writing", err)
	}
	return exitAnswered
}

func usage(w *words.Words) string {
	b := fmt.Appendf(nil, "%s\n\n  boothset              %s\n", w.Say("usage-intro"), w.Say("usage-assistant"))
	for _, c := range commands() {
		b = fmt.Appendf(b, "  boothset %-12s %s\n", c.name, w.Say(c.brief))
	}
	exits := spoken(w, "usage-exit", calc.FigureOf("answered", calc.FigureCount, exitAnswered), calc.FigureOf("bad", calc.FigureCount, exitBadInput), calc.FigureOf("cannot", calc.FigureCount, exitCannot))
	return string(fmt.Appendf(b, "  boothset version\n  boothset COMMAND --help\n\n%s\n", exits))
}

// version is what the build was made from.
func version(w *words.Words) string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(" + w.Say("no-version") + ")"
	}
	return info.Main.Version
}
