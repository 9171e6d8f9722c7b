package command

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// spoken is a sentence whose figures have no units.
func spoken(w *words.Words, id string, f ...calc.Figure) string { return w.Text(unit.US, id, f) }

// fieldError is a fault of what is no field of a question: a flag, a request as a whole.
type fieldError struct{ field, given, want string }

func (e *fieldError) Error() string {
	field := words.Short(e.field)
	if e.given == "" {
		return field + ": " + e.want
	}
	return field + " " + words.Quoted(e.given) + ": " + e.want
}

// fields is the parts of a fault; ok is false where an error has none.
func fields(err error) (field, given, want string, ok bool) {
	var own *fieldError
	var answer *question.Fault
	switch {
	case errors.As(err, &own):
		return own.field, own.given, own.want, true
	case errors.As(err, &answer):
		return answer.Field, answer.Given, answer.Want(), true
	}
	return "", "", "", false
}

// failure is what went wrong that is no fault of the input.
type failure struct{ text string }

func (f *failure) Error() string { return f.text }

// refuse says on standard error what was wrong, and gives its exit code.
func (p *Program) refuse(err error) int {
	fmt.Fprintln(p.Std.Err, name+":", words.Printable(err.Error()))
	return codeOf(err)
}

// codeOf is the exit code of an error: that of bad input, unless it is a failure.
func codeOf(err error) int {
	if errors.As(err, new(*failure)) {
		return ExitFailed
	}
	return ExitBadInput
}

// failed says what else went wrong, in the sentence of an id.
func (p *Program) failed(w *words.Words, id string, err error, f ...calc.Figure) int {
	fmt.Fprintln(p.Std.Err, name+":", spoken(w, id, append(f, calc.GivenFigure("error", err.Error()))...))
	return ExitFailed
}

// say prints what was asked for and gives the exit code.
func (p *Program) say(text string) int {
	if _, err := io.WriteString(p.Std.Out, text); err != nil {
		return p.failed(p.local, "failed-writing", err)
	}
	return ExitAnswered
}

// unknownCommand refuses a command that there is not.
func (p *Program) unknownCommand(root *cobra.Command, given string) error {
	var names []string
	for _, c := range root.Commands() {
		if !c.Hidden {
			names = append(names, c.Name())
		}
	}
	w, _ := p.words()
	return &fieldError{"command", given, spoken(w, "want-command", calc.TextFigure("names", strings.Join(names, ", ")))}
}

// flagFault says in a language what was wrong with the flags.
func (p *Program) flagFault(c *cobra.Command, err error) error {
	w, unknown := p.words()
	if unknown != nil {
		return unknown
	}
	var missing *pflag.NotExistError
	var needs *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	var syntax *pflag.InvalidSyntaxError
	text := words.Short(err.Error())
	switch {
	case errors.As(err, &missing):
		text = spoken(w, "flag-unknown", calc.GivenFigure("flag", "--"+missing.GetSpecifiedName()))
	case errors.As(err, &needs):
		text = spoken(w, "flag-needs", calc.GivenFigure("flag", "--"+needs.GetSpecifiedName()))
	case errors.As(err, &syntax):
		text = spoken(w, "flag-syntax", calc.GivenFigure("flag", syntax.GetSpecifiedFlag()))
	case errors.As(err, &invalid):
		text = spoken(w, "flag-truth", calc.TextFigure("given", words.Quoted(invalid.GetValue())), calc.GivenFigure("flag", "--"+invalid.GetFlag().Name))
	}
	return p.seeHelp(c, text)
}

// seeHelp is a fault of a flag, and where to read more.
func (p *Program) seeHelp(c *cobra.Command, fault string) error {
	w, _ := p.words()
	return errors.New(fault + "; " + spoken(w, "flag-see", calc.TextFigure("command", c.CommandPath()+" --help")))
}
