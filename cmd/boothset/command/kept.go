package command

import (
	"maps"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// The flags of the commands that keep something in the shop's folder.
const (
	flagDryRun = "dry-run"
	flagSet    = "set"
	flagRead   = "read"
	flagBy     = "by"
)

// keeping is a plan in a booth that something of is to be kept.
type keeping struct {
	asked
	shopOpened
	keepAsked
	bands []shop.Band
	plan  *answer.Plan
	typed question.Answers
}

// keepAsked is the flags of whatever is kept.
type keepAsked struct {
	by  string
	dry bool
}

// keepFlags gives a command the flags of whatever is kept.
func (a *keepAsked) keepFlags(p *Program, c *cobra.Command) {
	c.Flags().StringVar(&a.by, flagBy, "", "usage-by")
	_ = c.RegisterFlagCompletionFunc(flagBy, p.completeOf((*shopOpened).initials)) // fails for a flag that is not there
	c.Flags().BoolVar(&a.dry, flagDryRun, false, "usage-dry-run")
}

// work opens the folder and answers what was typed; more gives answers for what that leaves out.
func (k *keeping) work(of string, more func() (question.Answers, error)) (err error) {
	if k.shopOpened, err = k.p.openShop(); err != nil {
		return err
	}
	if err := k.checkFields(of, k.words); err != nil {
		return err
	}
	if k.booth == "" {
		return k.noBooth("")
	}
	var faults []*shop.Fault
	k.bands, faults = k.folder.Bands()
	k.tell(faults...)
	if k.typed, err = k.asked.typed(&k.opened, k.booths(k.p)); err != nil {
		return err
	}
	rest, err := more()
	if err != nil {
		return err
	}
	k.typed = k.typed.Or(rest)
	found, err := askTyped(k.reader, k.q, k.typed, k.sys)
	if err != nil {
		return err
	}
	k.plan = found.(*answer.Plan) // the question is a plan's
	return nil
}

// painter is the id of a painter by initials, or by the id itself; empty where none is named.
func (s *shopOpened) painter(given string) (id string, err error) {
	if given == "" {
		return "", nil
	}
	painters, faults := s.folder.Painters()
	s.tell(faults...)
	if _, ok := painters[given]; ok {
		return given, nil
	}
	switch ids := painters.Named(given); {
	case len(ids) == 1:
		return ids[0], nil
	case len(ids) > 1:
		return "", &fieldError{flagBy, given, s.words.Choose(ids)}
	case len(painters) == 0:
		return "", &fieldError{flagBy, given, s.words.Say("want-painter")}
	}
	known := slices.Compact(slices.Sorted(maps.Values(painters)))
	return "", &fieldError{flagBy, given, s.words.Say("want-painter") + "; " + s.words.Choose(known)}
}

// valuesSaid reads values that were given as "wall=31psi", one of a key.
func valuesSaid(flag string, given []string, r *question.Reader, sys unit.System) (v shop.Values, err error) {
	for _, text := range given {
		key, value, parted := strings.Cut(text, "=")
		if !parted {
			return v, &fieldError{flag, text, spoken(r.Words(), "want-value", calc.TextFigure("names", r.Words().Listed(shop.ValueKeys())))}
		}
		if fault := v.Say(r, strings.ToLower(strings.TrimSpace(key)), strings.TrimSpace(value), sys); fault != nil {
			return v, &fieldError{flag, text, fault.Want()}
		}
	}
	return v, nil
}

// completeValues completes the keys of values.
func completeValues(*cobra.Command, []string, string) (all []string, _ cobra.ShellCompDirective) {
	for _, key := range shop.ValueKeys() {
		all = append(all, key+"=")
	}
	return all, cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveNoSpace
}
