package command

import (
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// Assistant is what the assistant is opened with, and how it answers when it is left.
type Assistant struct {
	Reader  *question.Reader
	Words   *words.Words
	System  unit.System
	Lines   bool   // wanted as lines of text
	Colours string // the look that is wanted, by its name; empty where none is
	Whole   bool   // the whole card is wanted when it is left
	NoMouse bool   // the mouse is left to the terminal
	Shop    string // the shop's folder, which need not be there; empty where none is known
	// Practice is what is practised with in place of asking for a job, nil where it is not.
	Practice *Practice
	p        *Program
}

// openAssistant opens the assistant, or tells the version where that was asked for.
func (p *Program) openAssistant() error {
	if p.common.version {
		return p.sayVersion()
	}
	o, err := p.open()
	if err != nil {
		return err
	}
	p.code = p.Assistant(p.assistant(o))
	return nil
}

// assistant is the assistant as its flags ask for it.
func (p *Program) assistant(o opened) *Assistant {
	c := &p.common
	return &Assistant{Reader: o.reader, Words: o.words, System: o.sys, Lines: c.plain, Colours: c.colours, Whole: c.card, NoMouse: c.noMouse, Shop: shop.Where(p.Getenv, c.shop), p: p}
}

// NoScreen says why there is no screen to draw on, by the id of the reason, and what
// answers without one.
func (a *Assistant) NoScreen(why string) int {
	w := a.Words
	fmt.Fprintf(a.p.Std.Err, "boothset: %s, %s\n\n%s\nboothset plan --help %s\n", w.Say(why), w.Say("assistant-no-screen"), intro("plan", w), w.Say("assistant-see"))
	return ExitBadInput
}

// NoLook refuses a look that there is not: what was asked for, by the flag or by a variable of the
// environment, and those that there are.
func (a *Assistant) NoLook(variable string, looks []string) int {
	fault := &fieldError{flagColours, a.Colours, a.Words.Choose(looks)}
	if a.Colours == "" {
		fault = &fieldError{variable, a.p.Getenv(variable), a.Words.Choose(looks)}
	}
	return a.p.refuse(fault)
}

// Warn says, in the sentence of an id, what does not keep the assistant from answering.
func (a *Assistant) Warn(id string, f calc.Figures) {
	fmt.Fprintln(a.p.Std.Err, name+":", a.Words.Text(a.System, id, f))
}

// Failed says what went wrong, in the sentence of an id.
func (a *Assistant) Failed(id string, err error) int { return a.p.failed(a.Words, id, err) }

// Leave prints the answer that the assistant was left from, in the units it then had and no
// wider than what it is printed on, where that has a width above 0: the settings in a few lines,
// or the whole card.
func (a *Assistant) Leave(plan *answer.Plan, sys unit.System, width int) int {
	if width <= 0 || width > answer.Width {
		width = answer.Width
	}
	rows := plan.Brief(a.Words, sys)
	if a.Whole {
		rows = plan.Card(a.Words, sys)
	}
	return a.p.write(a.Words, answer.Print(rows, width, a.Words), plan.Stopped())
}
