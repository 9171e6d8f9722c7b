package command

import (
	"time"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/prove"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
)

// appendSteps appends what there is to do at the gun, and what of it was read and seen.
func appendSteps(j *jsonWriter, p *answer.Prove, sys unit.System, w *words.Words) {
	appendRows(j, "steps", p.StepRows(w, sys))
	if t := &p.Found.Turning; *t == (learn.Turning{}) {
		j.null("valve")
	} else {
		j.object("valve", func() { appendTurning(j, t) })
	}
	j.array("judged", func() {
		for i := range p.Request.Readings {
			low, high, shown, ok := p.Showed(i)
			if !ok {
				continue
			}
			j.object("", func() {
				j.count("reading", i+1)
				j.gauge("shown", shown)
				j.gauge("expected_low", low)
				j.gauge("expected_high", high)
				j.bool("within", shown >= low && shown <= high)
				appendTurned(j, p, i)
			})
		}
	})
	j.object("seen", func() {
		appendFall(j, p.Judged.Fall)
		appendPush(j, p.Judged.Push)
		appendPattern(j, question.Pattern, p.Seen.Pattern)
		appendPattern(j, question.Flood, p.Seen.Flood)
		appendComb(j, p.Judged.Film)
		appendRows(j, "text", p.SeenRows(w, sys))
	})
	j.array("seen_before", func() {
		for _, b := range p.Before {
			j.object("", func() {
				j.text("field", b.Name)
				j.text("value", b.Text)
				j.text("day", b.At.Format(time.DateOnly))
			})
		}
	})
	if p.Trouble == nil {
		j.null("trouble")
		return
	}
	j.object("trouble", func() { appendTrouble(j, p.Trouble, sys, w) })
}

// appendTurning appends how far open the inlet valve is to be.
func appendTurning(j *jsonWriter, t *learn.Turning) {
	j.gauge("wall", t.Wall)
	j.number("opening_low", t.Opening.Low)
	j.number("opening_high", t.Opening.High)
}

// appendTurned appends the valve as it was set in a reading, null where it was not.
func appendTurned(j *jsonWriter, p *answer.Prove, reading int) {
	t := &p.Found.Turned[reading]
	if *t == (learn.Turning{}) {
		j.null("valve")
		return
	}
	opening := p.Request.Readings[reading].Opening
	j.object("valve", func() {
		j.number("opening", opening)
		appendTurning(j, t)
		j.number("turns_further_open", t.Off(opening, p.Found.Setup.Valve.TurnsOf))
	})
}

func appendFall(j *jsonWriter, f *prove.Fall) {
	if f == nil {
		j.null("held")
		return
	}
	j.object("held", func() {
		j.gauge("first", f.First)
		j.gauge("after", f.After)
		j.drop("fell", f.By)
		j.text("falls", f.Of.String())
		if f.Is {
			j.gauge("supply_needed", f.Needed)
		} else {
			j.null("supply_needed")
		}
	})
}

func appendPattern(j *jsonWriter, of *question.Field, seen string) {
	if seen == "" {
		j.null(of.Name)
		return
	}
	j.text(of.Name, seen)
}

func appendPush(j *jsonWriter, p *prove.Push) {
	if p == nil {
		j.null("felt")
		return
	}
	j.object("felt", func() {
		j.near("felt", p.Felt)
		if p.Known {
			j.near("expected_low", p.Low)
			j.near("expected_high", p.High)
		} else {
			j.null("expected_low")
			j.null("expected_high")
		}
		j.near("off", p.Off())
		j.near("hold", p.Hold.Target)
		if p.Hold.Held == calc.NotHeld {
			j.null("held")
		} else {
			j.text("held", string(p.Hold.Held))
		}
	})
}

func appendComb(j *jsonWriter, f *prove.Film) {
	if f == nil {
		j.null("comb")
		return
	}
	j.object("comb", func() {
		j.film("expected_low", f.Low)
		j.film("expected_high", f.High)
		if f.Comb.Wetted == 0 {
			j.null("read")
			return
		}
		j.object("read", func() {
			j.film("wet", f.Comb.Wetted)
			j.film("next_tooth", f.Comb.Next)
			j.film("off", f.Off())
			j.number("speed_times", f.Times)
			j.count("coats_left", f.Left)
			j.film("next_coat_wet", f.Next.Wet)
		})
	})
}
