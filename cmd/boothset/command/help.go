package command

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// examples is how each question is asked on the command line.
var examples = map[string][]string{
	"plan": {"boothset plan --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi"},
	"day": {
		"boothset day --coat clear --temp 75F --humidity 45",
		"boothset day --coat clear --temp 75F --humidity 60 --panel 66F --pot-life 4h --started 14:30",
	},
	"thin": {
		"boothset thin --coat clear --cup din4 --seconds 21 --paint 62F --sheet-seconds 16-18 --max-thinner 5",
		"boothset thin --coat clear --cup ford4 --seconds 26 --paint 68F",
	},
	"film": {
		"boothset film --coat clear --gun reduced-pressure --cup-volume 100mL --cup-time 33s",
		"boothset film --coat clear --solids 42 --wet 4mil,5mil",
	},
	"learn": {
		`boothset learn --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi --reading "still wall=30psi gun=28.5psi" --reading "wall=31psi gun=22psi"`,
		`boothset learn --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi --reading "wall=31psi gun=22psi" --reading "without=coupling-2 wall=31psi gun=26psi"`,
	},
	"prove": {
		"boothset prove --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi",
		`boothset prove --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi --reading "still wall=31psi gun=29.5psi" --reading "wall=31psi gun=24psi"`,
		"boothset prove --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi --felt 7in --pattern split --wet 4mil",
	},
	"trouble": {
		"boothset trouble --sign orange-peel",
		"boothset trouble --sign fading --found valve-open=climbs --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi --wall 80psi",
	},
	commandShop:    {"boothset shop", "boothset shop check"},
	commandAdd:     {"boothset shop add north/booths/two.toml --dry-run"},
	commandPainter: {"boothset shop painter MK"},
	commandAgree: {
		"boothset agree --booth two --gun number-four --coat clear --temp 75F --humidity 45 --set wall=31psi --by MK",
		"boothset agree --booth two --gun number-four --coat clear --band hot-dry --any stage --dry-run",
	},
	commandSettings: {"boothset settings --booth two"},
	commandLog:      {"boothset log --booth two --csv"},
	commandRecord:   {"boothset log record --booth two --gun number-four --coat clear --temp 75F --humidity 45 --read wall=31psi --read gun=26psi"},
	commandOutcome:  {"boothset log outcome --booth two --outcome peel --then polish"},
	commandSheet:    {"boothset sheet --booth two"},
	commandCard: {
		"boothset card --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi",
		"boothset card --booth two --gun number-four --coat clear --temp 75F --humidity 45 --format pdf -o clear.pdf",
	},
	commandDrift:    {"boothset drift --booth two"},
	commandPractice: {"boothset practice", "boothset practice --seed 7 --initials MK"},
	commandDemo:     {"boothset demo", "boothset demo ./demo"},
	Serving:         {"boothset serve --listen :2222"},
	commandCompare: {
		"boothset compare --booth one --booth two --coat clear --gun reduced-pressure --temp 75F --humidity 45",
		"boothset compare --shop ./north --shop ./south --coat clear --gun reduced-pressure --temp 75F --humidity 45",
	},
	"mix": {
		"boothset mix --coat clear --gun reduced-pressure --area 12ft2 --area hood --ratio 4:1:1",
		"boothset mix --coat clear --gun reduced-pressure --area 4m2 --price 60/L --distance 9in",
	},
}

// schema names the shape of a command's answer as JSON; it changes when the shape does.
func schema(of string) string { return name + "." + of + "/1" }

// schemaOf is what names the schema of a command's answers: of what is said of a record, it.
func schemaOf(c *cobra.Command) string {
	if c.Name() == commandOutcome {
		return commandRecord
	}
	return c.Name()
}

// help prints what a command takes and gives the exit code.
func (p *Program) help(c *cobra.Command) int {
	w, err := p.words()
	if err != nil {
		return p.refuse(err)
	}
	if given := c.Flags().Args(); !c.HasParent() && len(given) > 0 {
		return p.refuse(p.unknownCommand(c, given[0]))
	}
	if units := p.common.units; units != "" {
		if _, ok := catalogue.SystemOf(units); !ok {
			return p.refuse(&fieldError{flagUnits, units, chooseUnits(w)})
		}
	}
	r, err := p.helpReader(w)
	switch {
	case err != nil:
		return p.refuse(err)
	case !c.HasParent():
		return p.say(p.usage(c, r))
	}
	return p.say(intro(c.Name(), w) + "\n" + p.flagsHelp(c, r))
}

// intro is what a command is for, with its examples.
func intro(command string, w *words.Words) string {
	b := []byte(w.Say("intro-"+command) + "\n")
	for i, example := range examples[command] {
		if i == 0 {
			b = append(b, '\n')
		}
		b = append(b, "  "+example+"\n"...)
	}
	if note := "note-" + command; w.Has(note) {
		b = append(b, "\n"+w.Say(note)+"\n"...)
	}
	return string(b)
}

// flagsHelp is the flags with what they take.
func (p *Program) flagsHelp(c *cobra.Command, r *question.Reader) string {
	var b []byte
	sys := p.helpSystem()
	each := func(f *pflag.Flag) {
		value, rest := unquote(flagText(c, f, r, sys))
		if value != "" {
			value = " " + value
		}
		b = fmt.Appendf(b, "  --%-28s %s\n", f.Name+value, rest)
	}
	everywhere := c.Root().PersistentFlags()
	c.Flags().VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" && everywhere.Lookup(f.Name) == nil {
			each(f)
		}
	})
	everywhere.VisitAll(each)
	return string(b)
}

// flagText is the sentence of a flag's use, the value's name in back quotes in it.
func flagText(c *cobra.Command, f *pflag.Flag, r *question.Reader, sys unit.System) string {
	var figures calc.Figures
	if field, ok := f.Value.(*fieldFlag); ok {
		figures = r.UsageFigures(field.row, sys)
	} else {
		figures = calc.Figures{calc.TextFigure("schema", schema(schemaOf(c))), calc.TextFigure("languages", strings.Join(words.Languages(), ", "))}
	}
	return r.Words().Text(sys, f.Usage, figures)
}

// helpReader is the catalogue with the shop's file over it; where that file is broken, as
// it is shipped: help is there to be read.
func (p *Program) helpReader(w *words.Words) (*question.Reader, error) {
	if r, err := question.Open(p.Getenv, w); err == nil {
		return r, nil
	}
	c, err := catalogue.LoadIn(w, words.Locale{}, nil, "")
	if err != nil {
		return nil, err
	}
	return question.New(c)
}

// unquote parts a usage at the name of its value, which stands in back quotes in it.
func unquote(usage string) (value, text string) {
	before, rest, ok := strings.Cut(usage, "`")
	if !ok {
		return "", usage
	}
	value, after, _ := strings.Cut(rest, "`")
	return value, before + value + after
}

// helpSystem is the units that help is told in, which needs no shop's file: those asked
// for, else the locale's.
func (p *Program) helpSystem() unit.System {
	if sys, ok := catalogue.SystemOf(p.common.units); ok {
		return sys
	}
	return words.LocaleOf(p.Getenv).System
}

// usage is what the program can do.
func (p *Program) usage(root *cobra.Command, r *question.Reader) string {
	w := r.Words()
	b := fmt.Appendf(nil, "%s\n\n  boothset              %s\n", w.Say("usage-intro"), w.Say("usage-assistant"))
	for _, c := range root.Commands() {
		if c.Name() != "help" && !c.Hidden {
			b = fmt.Appendf(b, "  boothset %-12s %s\n", c.Name(), w.Say("brief-"+c.Name()))
		}
	}
	exits := spoken(w, "usage-exit", calc.CountFigure("answered", ExitAnswered), calc.CountFigure("bad", ExitBadInput), calc.CountFigure("cannot", ExitCannot))
	return string(fmt.Appendf(b, "  boothset COMMAND --help\n\n%s\n%s\n", p.flagsHelp(root, r), exits))
}

// helpCommand is "boothset help", and "boothset help plan".
func (p *Program) helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help", Short: p.local.Say("brief-help"),
		RunE: func(c *cobra.Command, args []string) error {
			of, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return p.unknownCommand(c.Root(), strings.Join(args, " "))
			}
			p.code = p.help(of)
			return nil
		},
	}
}
