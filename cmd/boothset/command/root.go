// Package command is the command line: arguments in, an answer as text or JSON out. The
// sub-commands, their flags and the keys of their batches come from the table of fields in
// presets/question. It draws no screen and knows nothing of what does.
package command

import (
	"io"
	"runtime/debug"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
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

// Program is what the command line is made for.
type Program struct {
	Std    Stdio
	Getenv func(string) string
	// Version is what the build was made from, empty where that is not known.
	Version func() string
	// Assistant opens the assistant, in a language and units, as lines of text where
	// wanted, and gives the exit code.
	Assistant func(a *Assistant) int
	// Serve gives the assistant to other terminals until it is stopped, and gives the exit code.
	Serve func(s *Serve) int

	code   int
	common common
	local  *words.Words // of the locale
	said   bool         // the general caution was said before
	line   bool         // a line of a batch is answered: by one document
}

// general is the general caution, none where it was said before.
func (p *Program) general() []calc.Caution {
	if p.said {
		return nil
	}
	return []calc.Caution{answer.General}
}

// Run runs the program on arguments and gives the exit code.
func Run(p *Program, args []string) int {
	root := p.Root()
	if len(args) > 0 && strings.HasPrefix(args[0], cobra.ShellCompRequestCmd) {
		r, err := p.helpReader(p.local)
		if err != nil {
			return p.refuse(err)
		}
		p.document(root, r)
		for i := range args { // the library prints those that it cannot complete as they are
			args[i] = words.Short(args[i])
		}
	} else {
		args = doubleDashed(root, args)
		p.common.lang = langIn(args)
	}
	root.SetArgs(args)
	if err := root.Execute(); err != nil {
		return p.refuse(err)
	}
	return p.code
}

// The commands are told in our order. It is said once: many trees can be made at a time.
func init() { cobra.EnableCommandSorting = false }

// Root is the tree of commands.
func (p *Program) Root() *cobra.Command {
	locale := words.LocaleOf(p.Getenv)
	p.local, _ = words.For(locale.Lang)
	p.local = p.local.WithComma(locale.Comma)
	root := &cobra.Command{
		Use: name, Short: p.local.Say("usage-intro"), SilenceErrors: true, SilenceUsage: true,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return p.unknownCommand(c.Root(), args[0])
			}
			return nil
		},
		RunE: func(*cobra.Command, []string) error { return p.openAssistant() },
	}
	root.SetIn(p.Std.In)
	root.SetOut(p.Std.Out)
	root.SetErr(p.Std.Err)
	p.common.flags(root.PersistentFlags())
	root.InitDefaultHelpFlag() // so that it takes no value where commands are looked for
	p.screenFlags(root.Flags())
	root.Flags().BoolVar(&p.common.card, "card", false, "usage-card")
	root.Flags().BoolVar(&p.common.version, "version", false, "usage-version")
	root.SetFlagErrorFunc(p.flagFault)
	root.SetHelpFunc(func(c *cobra.Command, _ []string) { p.code = p.help(c) })
	for _, q := range question.Commands() {
		root.AddCommand(p.ask(q))
	}
	root.AddCommand(p.shop(), p.agree(), p.settings(), p.logs(), p.sheet(), p.card(), p.compare(), p.drift(), p.practice(), p.demo(), p.serve(), p.version(), p.completion())
	root.SetHelpCommand(p.helpCommand())
	root.CompletionOptions.DisableDefaultCmd = true
	return root
}

// screenFlags gives a command that opens the assistant the flags of how that shows.
func (p *Program) screenFlags(f *pflag.FlagSet) {
	f.BoolVar(&p.common.plain, "plain", false, "usage-plain")
	f.StringVar(&p.common.colours, flagColours, "", "usage-colours")
	f.BoolVar(&p.common.noMouse, "no-mouse", false, "usage-no-mouse")
}

// name is the program's.
const name = "boothset"

// version is the command that tells the program's version.
func (p *Program) version() *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: p.local.Say("brief-version"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.sayVersion() },
	}
}

// BuildVersion is what the build was made from, empty where it does not say.
func BuildVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	return info.Main.Version
}

func (p *Program) sayVersion() error {
	v := p.Version()
	if v == "" {
		v = "(" + p.local.Say("no-version") + ")"
	}
	p.code = p.say(name + " " + v + "\n")
	return nil
}

// noArgs refuses what is no flag.
func (p *Program) noArgs(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		w, _ := p.words()
		return p.seeHelp(c, spoken(w, "flag-argument", calc.TextFigure("given", words.Quoted(args[0]))))
	}
	return nil
}

// langIn is the language that arguments ask for, so that what is wrong with a flag before that
// one is told in it too; empty where they ask for none.
func langIn(args []string) (lang string) {
	const flag = "--" + flagLang
	for i, a := range args {
		switch value, joined := strings.CutPrefix(a, flag+"="); {
		case joined:
			lang = value
		case a == flag && i+1 < len(args):
			lang = args[i+1]
		}
	}
	return lang
}

// doubleDashed is arguments with two dashes before the long name of each flag: one does
// too.
func doubleDashed(root *cobra.Command, args []string) []string {
	c, _, err := root.Find(args)
	if err != nil {
		c = root
	}
	flags := c.Flags()
	flags.AddFlagSet(root.PersistentFlags())
	out := make([]string, len(args))
	for i, a := range args {
		out[i] = a
		long, _, _ := strings.Cut(strings.TrimPrefix(a, "-"), "=")
		if len(long) > 1 && strings.HasPrefix(a, "-") && (flags.Lookup(long) != nil || long == "help") {
			out[i] = "-" + a
		}
	}
	return out
}

// common is the flags that the assistant and every sub-command have.
type common struct {
	units, lang, colours          string
	shop                          string // the shop's folder
	plain, card, noMouse, version bool
}

// The names of the flags that every command has, and of those of sub-commands.
const (
	flagUnits  = "units"
	flagLang   = "lang"
	flagShop   = "shop"
	flagBooth  = "booth"
	flagJSON   = "json"
	flagBatch  = "batch"
	flagFields = "fields"
	flagJobs   = "jobs"

	flagColours = "colours"
)

func (c *common) flags(f *pflag.FlagSet) {
	f.StringVar(&c.units, flagUnits, "", "usage-units")
	f.StringVar(&c.lang, flagLang, "", "usage-lang")
	f.StringVar(&c.shop, flagShop, "", "usage-shop")
}

// words is the sentences asked for, else the locale's. Where there is no such language
// the error is told in the locale's.
func (p *Program) words() (*words.Words, error) {
	if p.common.lang == "" {
		return p.local, nil
	}
	if strings.EqualFold(p.common.lang, p.local.Lang()) { // as it is spoken here
		return p.local, nil
	}
	if w, ok := words.At(p.common.lang); ok {
		return w, nil
	}
	return p.local, &fieldError{flagLang, p.common.lang, p.local.Choose(words.Languages())}
}

// opened is what a command answers from, once its flags are read.
type opened struct {
	reader *question.Reader
	words  *words.Words
	sys    unit.System
}

// open opens the catalogue in the language and the units asked for.
func (p *Program) open() (o opened, err error) {
	if o.words, err = p.words(); err != nil {
		return o, err
	}
	if o.reader, err = question.Open(p.Getenv, o.words); err != nil {
		return o, err
	}
	o.sys, err = systemOf(p.common.units, o.reader)
	return o, err
}

// systemOf reads the units answer; empty is the shop's own.
func systemOf(units string, r *question.Reader) (unit.System, error) {
	if units == "" {
		return r.System(), nil
	}
	sys, ok := catalogue.SystemOf(units)
	if !ok {
		return 0, &fieldError{flagUnits, units, chooseUnits(r.Words())}
	}
	return sys, nil
}

func chooseUnits(w *words.Words) string { return w.Choose(catalogue.SystemNames()) }
