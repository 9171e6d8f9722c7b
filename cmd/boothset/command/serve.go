package command

import (
	"fmt"
	"io"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// Serving is the command that gives the assistant to other terminals.
const Serving = "serve"

// The flags of it.
const (
	flagListen = "listen"
	flagKeys   = "keys"
	flagIdle   = "idle"
)

// The usual answers to them, and the bounds of the last.
const (
	ListenUsual            = "127.0.0.1:2222" // this machine alone
	idleUsual              = time.Hour
	idleLeast, idleLongest = time.Minute, 24 * time.Hour
)

// Serve is what the assistant is given to other terminals with.
type Serve struct {
	Words  *words.Words
	Listen string        // the address
	Keys   string        // the file of the keys that may come in; empty is the usual place
	Idle   time.Duration // after so long without a key a session ends
	p      *Program
}

func (p *Program) serve() *cobra.Command {
	s := &Serve{p: p}
	var idle string
	c := &cobra.Command{
		Use: Serving, Short: p.local.Say("brief-serve"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.startServing(s, idle) },
	}
	c.Flags().StringVar(&s.Listen, flagListen, ListenUsual, "usage-listen")
	c.Flags().StringVar(&s.Keys, flagKeys, "", "usage-keys")
	c.Flags().StringVar(&idle, flagIdle, "", "usage-idle")
	c.Flags().SortFlags = false
	return c
}

func (p *Program) startServing(s *Serve, idle string) error {
	o, err := p.open() // what is wrong with the shop's file is told now, and not to who comes in
	if err != nil {
		return err
	}
	s.Words = o.words
	if s.Idle, err = idleOf(idle, s.Words); err != nil {
		return err
	}
	p.code = p.Serve(s)
	return nil
}

// idleOf reads how long a session may be idle; a bare number is minutes.
func idleOf(given string, w *words.Words) (time.Duration, error) {
	if given == "" {
		return idleUsual, nil
	}
	r, err := unit.Minutes.Read(given, unit.US)
	idle := time.Duration(r.SI * float64(time.Second))
	if err != nil || idle < idleLeast || idle > idleLongest {
		return 0, &fieldError{flagIdle, given, w.Say("want-idle")}
	}
	return idle, nil
}

// Args is the arguments that say the same to another program of this tree of commands.
func (s *Serve) Args() []string {
	args := []string{"--" + flagListen, s.Listen, "--" + flagIdle, fmt.Sprintf("%gs", s.Idle.Seconds())}
	if s.Keys != "" {
		args = append(args, "--"+flagKeys, s.Keys)
	}
	return append(args, s.sessionArgs(s.p.common.lang)...)
}

// sessionArgs is the arguments that a session opens with, in a language, where one is named.
func (s *Serve) sessionArgs(lang string) (args []string) {
	c := &s.p.common
	for _, f := range [][2]string{{flagLang, lang}, {flagUnits, c.units}, {flagShop, c.shop}} {
		if f[1] != "" {
			args = append(args, "--"+f[0], f[1])
		}
	}
	return args
}

// Session runs the program for one who came in, and gives the exit code: assistant opens the
// assistant for them. Their environment decides the language where lang is empty.
func (s *Serve) Session(std Stdio, getenv func(string) string, lang string, assistant func(*Assistant) int) int {
	return Run(&Program{Std: std, Getenv: getenv, Version: s.p.Version, Assistant: assistant}, s.sessionArgs(lang))
}

// Lang is the language that was asked for by a flag, empty where none was.
func (s *Serve) Lang() string { return s.p.common.lang }

// Getenv is the environment of the program itself.
func (s *Serve) Getenv(name string) string { return s.p.Getenv(name) }

// Say is a sentence in the language of who serves.
func (s *Serve) Say(id string, f ...calc.Figure) string { return spoken(s.Words, id, f...) }

// Err is where what is no answer is written.
func (s *Serve) Err() io.Writer { return s.p.Std.Err }

// Warn says a sentence on standard error.
func (s *Serve) Warn(id string, f ...calc.Figure) { fmt.Fprintln(s.Err(), name+":", s.Say(id, f...)) }

// Refuse says in a sentence what keeps it from starting, and gives the exit code.
func (s *Serve) Refuse(id string, f ...calc.Figure) int {
	s.Warn(id, f...)
	return ExitBadInput
}
