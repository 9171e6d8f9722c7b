package command

import (
	"slices"
	"strings"

	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/signs"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// shells is the shells that there is completion for, with what makes it.
var shells = map[string]func(root *cobra.Command, p *Program) error{
	"bash":       func(root *cobra.Command, p *Program) error { return root.GenBashCompletionV2(p.Std.Out, true) },
	"fish":       func(root *cobra.Command, p *Program) error { return root.GenFishCompletion(p.Std.Out, true) },
	"powershell": func(root *cobra.Command, p *Program) error { return root.GenPowerShellCompletionWithDesc(p.Std.Out) },
	"zsh":        func(root *cobra.Command, p *Program) error { return root.GenZshCompletion(p.Std.Out) },
}

// completion is the command that prints what a shell completes our arguments by.
func (p *Program) completion() *cobra.Command {
	var names []string
	for n := range shells {
		names = append(names, n)
	}
	slices.Sort(names)
	return &cobra.Command{
		Use: "completion", Short: p.local.Say("brief-completion"), ValidArgs: names,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 || shells[args[0]] == nil {
				w, err := p.words()
				if err != nil {
					return err
				}
				return &fieldError{"completion", strings.Join(args, " "), w.Choose(names)}
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			if err := shells[args[0]](c.Root(), p); err != nil {
				p.code = p.failed(p.local, "failed-writing", err)
			}
			return nil
		},
	}
}

// complete completes the value of a flag from what the catalogue has for it.
func (p *Program) complete(f *question.Field) func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		o, err := p.open()
		if err != nil {
			return nil, cobra.ShellCompDirectiveError
		}
		switch f {
		case question.Line:
			return lineParts(o.reader), cobra.ShellCompDirectiveNoFileComp
		case question.Sign:
			return signNames(o.words), cobra.ShellCompDirectiveNoFileComp
		case question.Found:
			return findings(o.words), cobra.ShellCompDirectiveNoFileComp
		}
		var all []string
		for _, c := range o.reader.Choices(f) {
			all = append(all, c.ID+"\t"+c.Name)
		}
		if f == question.Gun {
			all = append(all, p.ownGuns(o)...)
		}
		return all, cobra.ShellCompDirectiveNoFileComp
	}
}

// lineParts is every part that a line may have, of a hose the beginning.
func lineParts(r *question.Reader) (all []string) {
	for _, kind := range question.PartKinds() {
		f := question.PartField(kind)
		if !f.Listed() {
			all = append(all, kind+"=")
		}
		for _, c := range r.Choices(f) {
			all = append(all, kind+"="+c.ID+"\t"+c.Name)
		}
	}
	return all
}

// signNames is every sign with its name.
func signNames(w *words.Words) (all []string) {
	for _, s := range signs.Book().Signs {
		all = append(all, s.ID+"\t"+w.Say(signs.Name(s.ID)))
	}
	return all
}

// findings is every finding of every check.
func findings(w *words.Words) (all []string) {
	for _, c := range signs.Book().Checks {
		for _, f := range c.Findings {
			all = append(all, c.ID+"="+f.ID+"\t"+w.Say(answer.FindingName(c.ID, f.ID)))
		}
	}
	return all
}

// completeOf completes what the shop's folder has, by what is listed of it.
func (p *Program) completeOf(list func(s *shopOpened) []string) func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		s, err := p.openShop()
		if err != nil {
			return nil, cobra.ShellCompDirectiveError
		}
		return list(&s), cobra.ShellCompDirectiveNoFileComp
	}
}

// bandIDs is the shop's weather bands.
func (s *shopOpened) bandIDs() (all []string) {
	bands, _ := s.folder.Bands()
	for i := range bands {
		all = append(all, bands[i].ID+"\t"+bands[i].Called(s.words))
	}
	return all
}

// initials is those of the shop's painters.
func (s *shopOpened) initials() (all []string) {
	painters, _ := s.folder.Painters()
	for _, id := range painters.ByInitials() {
		all = append(all, painters[id])
	}
	return all
}

// unsaid is the jobs that nobody spoke of, the last first.
func (s *shopOpened) unsaid() (all []string) {
	jobs := shop.Unsaid(s.jobsOf(s.folder.LoggedBooths()))
	slices.SortStableFunc(jobs, func(a, b *shop.Record) int { return b.At.Compare(a.At) })
	for _, r := range jobs {
		all = append(all, r.ID+"\t"+strings.Join([]string{dateOf(r.At), r.Booth, r.Coat, r.Gun}, " "))
	}
	return all
}
