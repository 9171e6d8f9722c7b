package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// help is what a sub-command says of itself before its flags: ids of sentences, with
// examples between them.
type help struct {
	intro    string
	examples []string
	note     string // empty where there is none
	schema   string // of its answer as JSON
}

// text is the help without the flags.
func (h help) text(w *words.Words) string {
	b := []byte(w.Say(h.intro) + "\n")
	for i, example := range h.examples {
		if i == 0 {
			b = append(b, '\n')
		}
		b = append(b, "  "+example+"\n"...)
	}
	if h.note != "" {
		b = append(b, "\n"+w.Say(h.note)+"\n"...)
	}
	return string(b)
}

// withFlags is the help with the flags; the usage of a flag is a sentence's id.
func (h help) withFlags(f *flag.FlagSet, w *words.Words, sys unit.System) string {
	figures := append(presets.Assumed(sys), said("schema", h.schema), said("languages", w.Listed(words.Languages())), calc.Figure{Name: "repeatable", Kind: calc.FigureNamed, Text: "usage-repeatable"})
	b := []byte(h.text(w) + "\n")
	f.VisitAll(func(x *flag.Flag) {
		spelt := *x
		spelt.Usage = w.Text(sys, x.Usage, figures)
		name, text := flag.UnquoteUsage(&spelt)
		if name != "" {
			name = " " + name
		}
		b = fmt.Appendf(b, "  --%-28s %s\n", x.Name+name, text)
	})
	return string(b)
}

// parse reads flags; done is true where that is all there is to do: help was asked
// for, or a flag will not do. code is then the exit code.
func parse(f *flag.FlagSet, args []string, std Stdio, getenv func(string) string, h help, c *common) (code int, done bool) {
	f.SetOutput(io.Discard)
	err := f.Parse(args)
	w, unknown := c.words(getenv)
	if unknown != nil {
		return refuse(std, unknown), true
	}
	switch {
	case errors.Is(err, flag.ErrHelp):
		return Say(std, w, h.withFlags(f, w, c.system(getenv))), true
	case err != nil:
		return refuse(std, seeHelp(w, f, flagFault(w, err))), true
	case f.NArg() > 0:
		return refuse(std, seeHelp(w, f, spoken(w, "flag-argument", said("given", strconv.Quote(f.Arg(0)))))), true
	}
	return ExitAnswered, false
}

// seeHelp is a fault of a flag, and where to read more.
func seeHelp(w *words.Words, f *flag.FlagSet, fault string) error {
	command := f.Name() + " --help"
	if f.Name() != "boothset" {
		command = "boothset " + command
	}
	return errors.New(fault + "; " + spoken(w, "flag-see", said("command", command)))
}

// flagFault says in a language what the flag package says in English. Its errors are
// texts alone.
func flagFault(w *words.Words, err error) string {
	text := err.Error()
	for start, id := range map[string]string{
		"flag provided but not defined: ": "flag-unknown",
		"flag needs an argument: ":        "flag-needs",
		"bad flag syntax: ":               "flag-syntax",
	} {
		if rest, found := strings.CutPrefix(text, start); found {
			return spoken(w, id, said("flag", rest))
		}
	}
	if rest, found := strings.CutPrefix(text, "invalid boolean value "); found {
		if given, flag, found := strings.Cut(strings.TrimSuffix(rest, ": parse error"), " for "); found {
			return spoken(w, "flag-truth", said("given", given), said("flag", flag))
		}
	}
	return text
}
