package command

import (
	"fmt"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/drift"
	"boothset/calc/unit"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// commandDrift is the command that tells how a booth has drifted.
const commandDrift = "drift"

func (p *Program) drift() *cobra.Command {
	var a jsonAsked
	var booth string
	c := &cobra.Command{
		Use: commandDrift, Short: p.local.Say("brief-drift"), Args: p.noArgs,
		RunE: func(*cobra.Command, []string) error { return p.tellDrift(booth, &a) },
	}
	p.boothFlag(c, &booth)
	a.jsonFlags(c)
	return c
}

func (p *Program) tellDrift(booth string, a *jsonAsked) error {
	s, err := p.openShop()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandDrift, s.words); err != nil {
		return err
	}
	ids, err := s.chosen(booth, s.folder.LoggedBooths())
	if err != nil {
		return err
	}
	var all []boothDrift
	var jobs []*shop.Record
	for _, id := range ids {
		b, faults := s.folder.Booth(s.reader, id)
		s.tell(faults...)
		of := s.jobsOf([]string{id})
		jobs = append(jobs, of...)
		all = append(all, boothDrift{id, b, shop.DriftOf(b, of)})
	}
	apart := shop.PaintersApart(jobs)
	text := func() []byte { return s.driftText(all, apart) }
	p.answerShop(&s, a, commandDrift, false, text, func(j *jsonWriter) { driftJSON(j, all, apart) })
	return nil
}

// boothDrift is the drift of a booth; booth is nil where its file cannot be read.
type boothDrift struct {
	id    string
	booth *shop.Booth
	drift shop.Drift
}

// watched is how many of the jobs were watched: those before them settle what a gun reads.
func (b *boothDrift) watched() (n int) {
	for _, p := range b.drift.Watched.Points {
		if p.Watched {
			n++
		}
	}
	return n
}

// driftText is what is told of each booth, and how far apart painters and booths are.
func (s *shopOpened) driftText(all []boothDrift, apart drift.Spreads) []byte {
	var out strings.Builder
	for i := range all {
		s.oneDrift(&out, &all[i])
	}
	if len(all) == 0 {
		fmt.Fprintln(&out, s.words.Say("log-empty"))
	}
	if apart.Told {
		deviation := func(name string, v float64) calc.Figure {
			return calc.FigureOf(name, calc.FigureDrop, v)
		}
		fmt.Fprintln(&out, s.words.Text(s.sys, "drift-apart", calc.Figures{deviation("painters", apart.Painters), deviation("booths", apart.Booths), deviation("within", apart.Within)}))
	}
	return []byte(out.String())
}

// oneDrift is a sentence of how much was watched of a booth, and one a change.
func (s *shopOpened) oneDrift(out *strings.Builder, of *boothDrift) {
	b, d := of.booth, &of.drift
	say := func(id string, f ...calc.Figure) { fmt.Fprintln(out, s.words.Text(s.sys, id, f)) }
	watched := of.watched()
	called := of.id
	if b != nil {
		called = b.Name
	}
	say("drift-watched", calc.TextFigure("booth", called), calc.CountFigure("held", len(d.Jobs)), calc.CountFigure("watched", watched))
	if len(d.Changes) == 0 && watched > 0 {
		say("drift-none")
	}
	for i := range d.Changes {
		c := &d.Changes[i]
		way := "drift-more"
		if c.Shift < 0 {
			way = "drift-less"
		}
		f := []calc.Figure{
			calc.TextFigure("since", dayOf(d.Jobs[c.Since])), calc.TextFigure("at", dayOf(d.Jobs[c.At])), calc.CountFigure("readings", c.At-c.Since+1),
			calc.FigureOf("shift", calc.FigureDrop, max(c.Shift, -c.Shift)), calc.SentenceFigure("cause", "drift-cause-"+string(c.Cause)),
			calc.TextFigure("gun", c.Gun), calc.TextFigure("was", c.Was), calc.TextFigure("is", c.Is), calc.TextFigure("changed", changedOn(b)),
		}
		say(way, f...)
	}
}

func dayOf(r *shop.Record) string { return r.At.Local().Format(time.DateOnly) }

// changedOn is when the filter was last changed, a dash where that is not said.
func changedOn(b *shop.Booth) string {
	if b == nil || b.FilterChanged.IsZero() {
		return "-"
	}
	return b.FilterChanged.Text()
}

func driftJSON(j *jsonWriter, all []boothDrift, apart drift.Spreads) {
	j.array("booths", func() {
		for i := range all {
			j.object("", func() {
				j.text("booth", all[i].id)
				j.count("held", len(all[i].drift.Jobs))
				j.count("watched", all[i].watched())
				appendDrift(j, &all[i].drift)
			})
		}
	})
	if !apart.Told {
		j.null("apart")
		return
	}
	j.object("apart", func() {
		j.drop("painters", unit.Drop(apart.Painters))
		j.drop("booths", unit.Drop(apart.Booths))
		j.drop("within", unit.Drop(apart.Within))
	})
}

func appendDrift(j *jsonWriter, d *shop.Drift) {
	at := func(key string, r *shop.Record) { j.text(key, r.At.UTC().Format(time.RFC3339)) }
	j.array("changes", func() {
		for i := range d.Changes {
			c := &d.Changes[i]
			j.object("", func() {
				at("since", d.Jobs[c.Since])
				at("at", d.Jobs[c.At])
				at("last", d.Jobs[c.Last])
				j.drop("shift", c.Shift)
				j.bool("grows", c.Grows)
				j.text("cause", string(c.Cause))
				j.text("gun", c.Gun)
			})
		}
	})
	j.array("points", func() {
		for i, p := range d.Watched.Points {
			j.object("", func() {
				j.text("id", d.Jobs[i].ID)
				at("at", d.Jobs[i])
				j.text("gun", d.Jobs[i].Gun)
				j.bool("watched", p.Watched)
				if !p.Watched {
					return
				}
				j.drop("value", p.Value)
				j.drop("lower", p.Lower)
				j.drop("upper", p.Upper)
				j.bool("out", p.Out)
				j.number("up", p.Up)
				j.number("down", p.Down)
				j.number("decision", p.Decision)
			})
		}
	})
}
