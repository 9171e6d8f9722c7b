package command

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"

	"boothset/calc/unit"
	"boothset/presets/practice"

	"github.com/spf13/cobra"
)

// commandPractice is the command that the assistant practises with.
const commandPractice = "practice"

// The flags of it.
const (
	flagSeed     = "seed"
	flagInitials = "initials"
)

// Practice is what the assistant practises with, in place of asking for a job.
type Practice struct {
	Deck *practice.Deck
	Seed uint64
	Kept string // the file that what was missed is kept in; empty keeps nothing
}

// practise is the command's flags as they were given.
type practise struct {
	p                     *Program
	booth, seed, initials string
}

func (p *Program) practice() *cobra.Command {
	a := &practise{p: p}
	c := &cobra.Command{
		Use: commandPractice, Short: p.local.Say("brief-practice"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return a.open() },
	}
	p.boothFlag(c, &a.booth)
	c.Flags().StringVar(&a.seed, flagSeed, "", "usage-seed")
	c.Flags().StringVar(&a.initials, flagInitials, "", "usage-initials")
	p.screenFlags(c.Flags())
	c.Flags().SortFlags = false
	return c
}

// open opens the assistant with a deck of the booths that are meant.
func (a *practise) open() error {
	p := a.p
	s, err := p.openShop()
	if err != nil {
		return err
	}
	defer s.folder.Close()
	seed, err := a.seedOf(s.opened)
	if err != nil {
		return err
	}
	file, of, err := a.record(s.opened)
	if err != nil {
		return err
	}
	source, faults, err := practice.Of(s.reader, s.folder)
	if err != nil {
		return err
	}
	p.warn(s.words, faults)
	if ids := source.Booths(); a.booth != "" && !source.Only(a.booth) {
		return &fieldError{flagBooth, a.booth, s.words.Choose(ids)}
	}
	with := p.assistant(s.opened)
	with.Practice = &Practice{practice.NewDeck(source, s.sys, seed, of), seed, file}
	p.code = p.Assistant(with)
	return nil
}

// mostSeed is the largest seed that is drawn where none is given: short, to be typed again.
const mostSeed = 10_000

// seedOf is the seed that is given, else one that is drawn.
func (a *practise) seedOf(o opened) (uint64, error) {
	if a.seed == "" {
		return rand.Uint64N(mostSeed), nil
	}
	seed, err := strconv.ParseUint(unit.Fold(strings.TrimSpace(a.seed)), 10, 32)
	if err != nil {
		return 0, &fieldError{flagSeed, a.seed, o.words.Say("want-seed")}
	}
	return seed, nil
}

// record is the file of who practises, and what it holds. One that will not do is told, and
// nothing is kept of this run.
func (a *practise) record(o opened) (file string, of practice.Record, err error) {
	if a.initials == "" {
		return "", practice.NewRecord(), nil
	}
	var wrong *practice.Error
	file, err = practice.File(a.p.Getenv, a.initials)
	if errors.As(err, &wrong) {
		return "", of, &fieldError{flagInitials, a.initials, spoken(o.words, wrong.ID, wrong.Figures()...)}
	}
	of, err = practice.Load(file)
	if errors.As(err, &wrong) {
		fmt.Fprintln(a.p.Std.Err, name+":", spoken(o.words, wrong.ID, wrong.Figures()...))
		return "", practice.NewRecord(), nil
	}
	return file, of, err
}
