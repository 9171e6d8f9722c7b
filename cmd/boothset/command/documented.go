package command

import (
	"strings"

	"boothset/presets/question"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// Documented is the tree of commands with the sentences of the locale's language in place
// of their ids, for what makes pages of it, and for shells.
func (p *Program) Documented() (*cobra.Command, error) {
	root := p.Root()
	r, err := p.helpReader(p.local)
	if err != nil {
		return nil, err
	}
	p.document(root, r)
	return root, nil
}

func (p *Program) document(c *cobra.Command, r *question.Reader) {
	c.DisableAutoGenTag = true
	w := p.local
	c.Long = w.Say("intro-" + c.Name())
	if note := "note-" + c.Name(); w.Has(note) {
		c.Long += "\n\n" + w.Say(note)
	}
	if !c.HasParent() {
		c.Long = w.Say("usage-intro")
	}
	c.Example = strings.Join(examples[c.Name()], "\n")
	sys := p.helpSystem()
	c.InitDefaultHelpFlag()
	c.Flags().Lookup("help").Usage = "brief-help"
	spell := func(f *pflag.Flag) { _, f.Usage = unquote(flagText(c, f, r, sys)) }
	c.LocalNonPersistentFlags().VisitAll(spell)
	if !c.HasParent() {
		c.PersistentFlags().VisitAll(spell)
	}
	for _, sub := range c.Commands() {
		p.document(sub, r)
	}
}
