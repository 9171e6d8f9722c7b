package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

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

// command is a sub-command.
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

func commands() []command {
	all := []command{{"plan", "wall pressure, distance and inlet valve for one job", runPlan}}
	for _, q := range questions() {
		all = append(all, q.command())
	}
	return all
}

// run is the program: arguments in, exit code out.
func run(args []string, std stdio, getenv func(string) string) int {
	if len(args) == 0 {
		return runAssistant(nil, std, getenv)
	}
	switch args[0] {
	case "-h", "-help", "--help", "help":
		return say(std, usage())
	case "-version", "--version", "version":
		return say(std, "boothset "+version()+"\n")
	}
	if strings.HasPrefix(args[0], "-") {
		return runAssistant(args, std, getenv)
	}
	all := commands()
	if i := slices.IndexFunc(all, func(c command) bool { return c.name == args[0] }); i >= 0 {
		return all[i].run(args[1:], std, getenv)
	}
	names := make([]string, len(all))
	for i, c := range all {
		names[i] = c.name
	}
	return refuse(std, &presets.FieldError{Field: "command", Given: args[0], Want: "use " + strings.Join(names, ", ") + ", or none for the assistant"})
}

// refuse says what was wrong with the input.
func refuse(std stdio, err error) int {
	fmt.Fprintln(std.err, "boothset:", err)
	return exitBadInput
}

// failed says what else went wrong.
func failed(std stdio, err error) int {
	fmt.Fprintln(std.err, "boothset:", err)
	return exitFailed
}

// say prints what was asked for.
func say(std stdio, text string) int {
	if _, err := io.WriteString(std.out, text); err != nil {
		return failed(std, fmt.Errorf("writing: %w", err))
	}
	return exitAnswered
}

func usage() string {
	var b strings.Builder
	b.WriteString(`boothset sets up the spray booth: wall pressure, gun distance, inlet valve.

  boothset              the assistant, step by step, on a terminal
`)
	for _, c := range commands() {
		fmt.Fprintf(&b, "  boothset %-12s %s\n", c.name, c.brief)
	}
	b.WriteString(`  boothset version
  boothset COMMAND --help

Exit: 0 answered, 2 bad input, 3 answered but the job cannot be done as asked.
`)
	return b.String()
}

// version is what the build was made from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(no build information)"
	}
	return info.Main.Version
}

// parse reads flags; done is true where that is all there is to do: help was asked
// for, or a flag will not do. code is then the exit code.
func parse(f *flag.FlagSet, args []string, std stdio, getenv func(string) string, intro string, c *common) (code int, done bool) {
	f.SetOutput(io.Discard)
	err := f.Parse(args)
	w, unknown := c.words(getenv)
	if unknown != nil {
		return refuse(std, unknown), true
	}
	if errors.Is(err, flag.ErrHelp) {
		return say(std, flagHelp(f, w.Say(intro), w)), true
	}
	if err == nil && f.NArg() > 0 {
		err = fmt.Errorf("%q: only flags are expected here", f.Arg(0))
	}
	if err != nil {
		return refuse(std, fmt.Errorf("%w; see boothset %s --help", err, f.Name())), true
	}
	return exitAnswered, false
}

// flagHelp is what a sub-command says of itself; the usage of a flag is a sentence's id.
func flagHelp(f *flag.FlagSet, intro string, w *words.Words) string {
	var b strings.Builder
	b.WriteString(intro + "\n")
	f.VisitAll(func(x *flag.Flag) {
		said := *x
		said.Usage = w.Say(x.Usage)
		name, text := flag.UnquoteUsage(&said)
		if name != "" {
			name = " " + name
		}
		fmt.Fprintf(&b, "  --%-28s %s\n", x.Name+name, text)
	})
	return b.String()
}
