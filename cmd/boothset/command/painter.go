package command

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// commandPainter is the command that lets a painter be named.
const commandPainter = "painter"

func (p *Program) addPainter() *cobra.Command {
	var asJSON, dry bool
	c := &cobra.Command{
		Use: commandPainter + " [INITIALS]", Short: p.local.Say("brief-painter"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return p.noArgs(c, args[1:])
			}
			return p.keepPainter(args, dry, asJSON)
		},
	}
	c.Flags().BoolVar(&dry, flagDryRun, false, "usage-dry-run")
	c.Flags().BoolVar(&asJSON, flagJSON, false, "usage-json")
	return c
}

// keepPainter keeps the initials that are given, else tells those that are kept.
func (p *Program) keepPainter(args []string, dry, asJSON bool) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	painters, faults := s.folder.Painters()
	p.warn(s.words, faults)
	added := ""
	if len(args) == 1 {
		initials := shop.Initials(args[0])
		switch {
		case initials == "":
			return &fieldError{commandPainter, args[0], s.words.Say("want-initials")}
		case len(painters.Named(initials)) > 0:
			return &fieldError{commandPainter, args[0], s.words.Say("want-other-initials")}
		}
		added = initials
		if !dry {
			if _, err := s.folder.AddPainter(initials); err != nil {
				return p.unkept(s.opened, err)
			}
			painters, _ = s.folder.Painters() // as before
		}
	}
	out := s.painterText(painters, added, dry)
	if asJSON {
		out = painterJSON(painters, added, dry)
	}
	p.code = p.write(s.words, out, false)
	return nil
}

func (s *shopOpened) painterText(painters shop.Painters, added string, dry bool) []byte {
	var b strings.Builder
	switch {
	case added != "" && dry:
		fmt.Fprintln(&b, spoken(s.words, "painter-would", calc.TextFigure("who", added)))
	case added != "":
		fmt.Fprintln(&b, spoken(s.words, "painter-added", calc.TextFigure("who", added)))
	case len(painters) == 0:
		fmt.Fprintln(&b, s.words.Say("painter-none"))
	default:
		for _, id := range painters.ByInitials() {
			fmt.Fprintf(&b, "%-8s %s\n", painters[id], id)
		}
	}
	return []byte(b.String())
}

func painterJSON(painters shop.Painters, added string, dry bool) []byte {
	j := jsonWriter{fresh: true}
	j.object("", func() {
		j.text("schema", schema(commandPainter))
		j.text("added", added)
		j.bool("kept", added != "" && !dry)
		j.array("painters", func() {
			for _, id := range slices.Sorted(maps.Keys(painters)) {
				j.object("", func() {
					j.text("id", id)
					j.text("initials", painters[id])
				})
			}
		})
	})
	return append(j.b, '\n')
}
