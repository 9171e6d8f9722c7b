// Package command is the sub-commands: arguments in, an answer as text or JSON out. It draws
// no screen and knows nothing of what does, so that an answer does not wait for it.
package command

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets"
	"boothset/presets/words"
)

// Exit codes.
const (
	ExitAnswered = 0
	ExitFailed   = 1 // something other than the input went wrong: a pipe, a terminal
	ExitBadInput = 2
	ExitCannot   = 3   // answered, but the job cannot be done as asked
	ExitStopped  = 130 // interrupted
)

// Stdio is where a run reads and writes.
type Stdio struct {
	In       io.Reader
	Out, Err io.Writer
}

// command is a sub-command; brief is the id of what it is for.
type command struct {
	name, brief string
	run         func(args []string, std Stdio, getenv func(string) string) int
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

// Answers reports whether arguments are for a sub-command, and not for the assistant or
// about the program.
func Answers(args []string) bool {
	return len(args) > 0 && (!strings.HasPrefix(args[0], "-") || slices.Contains(askHelp, args[0])) && !AsksVersion(args)
}

// AsksVersion reports whether arguments ask for the program's version.
func AsksVersion(args []string) bool {
	return len(args) > 0 && slices.Contains(askVersion, args[0])
}

// Run runs a sub-command, by arguments that it Answers, and gives the exit code.
func Run(args []string, std Stdio, getenv func(string) string) int {
	local, _ := words.For(words.LocaleOf(getenv).Lang)
	if slices.Contains(askHelp, args[0]) {
		return Say(std, local, usage(local))
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
func refuse(std Stdio, err error) int {
	fmt.Fprintln(std.Err, "boothset:", err)
	return ExitBadInput
}

// failed says what else went wrong, in the sentence of an id.
func failed(std Stdio, w *words.Words, id string, err error, f ...calc.Figure) int {
	fmt.Fprintln(std.Err, "boothset:", spoken(w, id, append(f, said("error", err.Error()))...))
	return ExitFailed
}

// Say prints what was asked for and gives the exit code.
func Say(std Stdio, w *words.Words, text string) int {
	if _, err := io.WriteString(std.Out, text); err != nil {
		return failed(std, w, "failed-writing", err)
	}
	return ExitAnswered
}

func usage(w *words.Words) string {
	b := fmt.Appendf(nil, "%s\n\n  boothset              %s\n", w.Say("usage-intro"), w.Say("usage-assistant"))
	for _, c := range commands() {
		b = fmt.Appendf(b, "  boothset %-12s %s\n", c.name, w.Say(c.brief))
	}
	exits := spoken(w, "usage-exit", calc.FigureOf("answered", calc.FigureCount, ExitAnswered), calc.FigureOf("bad", calc.FigureCount, ExitBadInput), calc.FigureOf("cannot", calc.FigureCount, ExitCannot))
	return string(fmt.Appendf(b, "  boothset version\n  boothset COMMAND --help\n\n%s\n", exits))
}
