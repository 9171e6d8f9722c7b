package command

import (
	"fmt"

	"boothset/calc"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// commandPainter is the command that lets a painter be named.
const commandPainter = "painter"

func (p *Program) addPainter() *cobra.Command {
	var a jsonAsked
	var dry bool
	c := &cobra.Command{
		Use: commandPainter + " [INITIALS]", Short: p.local.Say("brief-painter"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return p.noArgs(c, args[1:])
			}
			return p.keepPainter(args, dry, &a)
		},
	}
	c.Flags().BoolVar(&dry, flagDryRun, false, "usage-dry-run")
	a.jsonFlags(c)
	return c
}

// keepPainter keeps the initials that are given, else tells those that are kept.
func (p *Program) keepPainter(args []string, dry bool, a *jsonAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandPainter, s.words); err != nil {
		return err
	}
	painters, faults := s.folder.Painters()
	s.tell(faults...)
	added := ""
	if len(args) == 1 {
		added = shop.Initials(args[0])
		switch {
		case added == "":
			return &fieldError{commandPainter, args[0], s.words.Say("want-initials")}
		case len(painters.Named(added)) > 0:
			return &fieldError{commandPainter, args[0], s.words.Say("want-other-initials")}
		}
		if !dry {
			if _, err := s.folder.AddPainter(added); err != nil {
				return unkept(s.words, err)
			}
			painters, _ = s.folder.Painters() // as before
		}
	}
	text := func() []byte { return s.painterText(painters, added, dry) }
	p.answerShop(&s, a, commandPainter, false, text, func(j *jsonWriter) {
		j.text("added", added)
		j.bool("kept", added != "" && !dry)
		j.array("painters", func() {
			for _, id := range painters.ByInitials() {
				j.object("", func() {
					j.text("id", id)
					j.text("initials", painters[id])
				})
			}
		})
	})
	return nil
}

func (s *shopOpened) painterText(painters shop.Painters, added string, dry bool) []byte {
	switch {
	case added != "" && dry:
		return []byte(spoken(s.words, "painter-would", calc.TextFigure("who", added)) + "\n")
	case added != "":
		return []byte(spoken(s.words, "painter-added", calc.TextFigure("who", added)) + "\n")
	case len(painters) == 0:
		return []byte(s.words.Say("painter-none") + "\n")
	}
	var b []byte
	for _, id := range painters.ByInitials() {
		b = fmt.Appendf(b, "%-8s %s\n", painters[id], id)
	}
	return b
}
