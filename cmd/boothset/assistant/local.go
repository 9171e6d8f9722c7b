// Package assistant opens the assistant for the command line: on the terminal that the program
// has, or on one of another machine.
package assistant

import (
	"errors"
	"io"
	"os"

	"boothset/calc"
	"boothset/cmd/boothset/command"
	"boothset/presets/last"
	"boothset/tui"

	"github.com/charmbracelet/x/term"
)

// Open opens the assistant on the program's terminal and gives the exit code. It draws on
// standard output, or on standard error where output goes elsewhere; the answer it is left from
// is then printed to standard output.
func Open(a *command.Assistant, std command.Stdio, getenv func(string) string) int {
	run, ok := optionsOf(a, std, getenv)
	if !ok {
		return a.NoLook(tui.EnvColours, tui.Looks())
	}
	run.Kept, run.Practice = last.File(getenv), (*tui.Practice)(a.Practice)
	if a.Practice != nil { // no job of one's own is answered
		run.Kept = ""
	}
	if a.Lines || command.IsTerminal(std.In) && getenv("TERM") == "dumb" {
		return inLines(run, a, std)
	}
	screen, why := screenOf(std)
	switch {
	case screen == nil && a.Practice != nil:
		return inLines(run, a, std)
	case screen == nil:
		return a.NoScreen(why)
	}
	run.Out = screen
	left, err := tui.Run(run)
	return leave(left, err, a, widthOf(std.Out))
}

// optionsOf is what the assistant runs on, wherever it is opened; ok is false for a look that
// there is not.
func optionsOf(a *command.Assistant, std command.Stdio, getenv func(string) string) (run tui.Options, ok bool) {
	look, ok := tui.ColoursOf(a.Colours, getenv)
	return tui.Options{
		Reader: a.Reader, Words: a.Words, System: a.System, Colours: look, NoMouse: a.NoMouse, Shop: a.Shop,
		In: std.In, Getenv: getenv,
	}, ok
}

// inLines is the assistant in lines of text. A script starts from the same place every
// time: its answers are neither kept nor offered.
func inLines(run tui.Options, a *command.Assistant, std command.Stdio) int {
	run.Out = std.Out
	if !command.IsTerminal(std.In) {
		run.Kept = ""
	}
	defer quitInterrupts()()
	left, err := tui.Plain(run)
	var ended *tui.InputError
	if errors.As(err, &ended) {
		a.Warn("plain-ended", calc.Figures{calc.TextFigure("at", ended.At)})
		return command.ExitBadInput
	}
	return leave(left, err, a, widthOf(std.Out))
}

// leave prints the answer that the assistant was left from, for a terminal of a width, 0 where
// there is none, and gives the exit code.
func leave(left tui.Result, err error, a *command.Assistant, width int) int {
	var unkept *last.Error
	if errors.As(left.Unkept, &unkept) {
		a.Warn(unkept.ID, unkept.Figures())
	}
	switch {
	case err != nil:
		return a.Failed("failed-screen", err)
	case left.Stopped:
		return command.ExitStopped
	case left.Plan == nil:
		return command.ExitAnswered
	}
	return a.Leave(left.Plan, left.System, width)
}

// screenOf is where the assistant can draw, nil with the id of the reason where it
// cannot.
func screenOf(std command.Stdio) (screen io.Writer, why string) {
	switch {
	case !command.IsTerminal(std.In):
		return nil, "no-screen-input"
	case command.IsTerminal(std.Out):
		return std.Out, ""
	case command.IsTerminal(std.Err):
		return std.Err, ""
	}
	return nil, "no-screen-output"
}

// widthOf is how wide a terminal is, 0 for what is none.
func widthOf(v any) int {
	if !command.IsTerminal(v) {
		return 0
	}
	width, _, _ := term.GetSize(v.(*os.File).Fd()) // 0 where it does not say
	return width
}
