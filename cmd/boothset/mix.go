package main

import (
	"fmt"
	"math"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func mixQuestion() question {
	return question{
		name: "mix", brief: "how much to mix, by which parts, at what cost",
		intro: `boothset mix: how much ready mix a job takes, and where it goes.

  boothset mix --coat clear --gun reduced-pressure --area 12ft2 --area hood --ratio 4:1:1
  boothset mix --coat clear --gun reduced-pressure --area 4m2 --price 60/L --distance 9in
`,
		schema: "boothset.mix/1", fields: presets.MixFields(),
		ask: asks((*presets.Catalogue).Mix, calc.SolveMix, func(r *calc.MixRequest, a *calc.MixAnswer) reply { return &mixReply{r, a} }),
	}
}

type mixReply struct {
	r *calc.MixRequest
	a *calc.MixAnswer
}

func (m *mixReply) stopped() bool { return m.a.Stopped() }

func (m *mixReply) print(p *printer) {
	r, a := m.r, m.a
	sys := p.sys
	usual := about(a.AreaHigh > a.AreaLow)
	heading(p, &r.Laying, usual+sys.Area(a.Area, unit.Usual), fmt.Sprintf("%s dry in %s", filmText(sys, r.Dry.Value), many(a.Coats.Value, "coat")))
	mix := poured(sys, a.Need.Volume)
	between := ""
	if a.High > a.Low*(1+1e-9) {
		between = fmt.Sprintf("%s to %s", sys.Volume(a.Low, unit.Usual), sys.Volume(a.High, unit.Usual))
	}
	p.row("MIX", about(a.About)+sys.Volume(mix, unit.Usual), between)
	m.pour(mix, p)
	p.row("FILLINGS", fmt.Sprint(m.fillings(mix)), "of a "+sys.Volume(r.Cup.Value, unit.Usual)+" cup")
	p.row("WASTE", about(true)+sys.Volume(a.Need.Waste(), unit.Usual), fmt.Sprintf("%s past the panel, %s in the gun", sys.Volume(a.Need.Overspray, unit.Usual), sys.Volume(a.Need.Loss, unit.Usual)))
	if a.Priced {
		p.row("COST", about(a.About)+fmt.Sprintf("%.2f", a.Cost), fmt.Sprintf("%.2f of it waste", a.WasteCost))
	}
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.line("What a wrong setting costs")
	var why []calc.Reason
	for _, x := range a.Reasons {
		if x.About == "wrong" {
			p.hang("-", p.sentence(x.ID, x.Figures))
		} else {
			why = append(why, x)
		}
	}
	p.line("")
	p.reasons(why)
}

// pour writes the parts of the mix, with the mark that each is poured up to.
func (m *mixReply) pour(mix unit.Volume, p *printer) {
	parts := m.r.Ratio.Value.Parts
	sum := 0.0
	for _, part := range parts {
		sum += part
	}
	name, mark := "POUR", m.r.Ratio.Value.String()
	upTo := unit.Volume(0)
	for i, part := range parts {
		share := mix * unit.Volume(part/sum)
		upTo += share
		if i > 0 {
			name, mark = "", "up to "+p.sys.Volume(upTo, unit.Usual)
		}
		p.row(name, p.sys.Volume(share, unit.Usual), mark)
	}
}

// fillings is how often the cup is filled for what was poured.
func (m *mixReply) fillings(mix unit.Volume) int {
	n, err := coat.CupsFor(mix, m.r.Cup.Value)
	if err != nil { // rounded up past what is counted
		return m.a.Cups
	}
	return n
}

// many is a count with its word.
func many(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// poured is a volume rounded up to what a person measures: 10 mL, 50 mL from a litre and
// half a litre from ten on; half a fluid ounce, a whole one from ten on, and a tenth of a
// gallon from one on.
func poured(sys unit.System, v unit.Volume) unit.Volume {
	step := unit.Volume(10e-6)
	switch {
	case sys == unit.US && v.USGallons() > 1:
		step = unit.USGallons(0.1)
	case sys == unit.US && v.USGallons() > 10/unit.OuncePerUSGal:
		step = unit.USGallons(1 / unit.OuncePerUSGal)
	case sys == unit.US:
		step = unit.USGallons(0.5 / unit.OuncePerUSGal)
	case v.Litres() > 10:
		step = unit.Litres(0.5)
	case v.Litres() > 1:
		step = unit.Litres(0.05)
	}
	const rounding = 1e-9
	return unit.Volume(math.Ceil(float64(v/step)-rounding)) * step
}

func (m *mixReply) appendJSON(j *jsonWriter, sys unit.System, w *words.Words) {
	r, a := m.r, m.a
	appendLaying(j, &r.Laying)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.standing(w, a.Coats.Standing)
	})
	j.object("area", func() {
		j.area("value", a.Area)
		j.area("low", a.AreaLow)
		j.area("high", a.AreaHigh)
		j.array("panels", func() {
			for _, p := range r.Panels {
				j.object("", func() {
					j.text("name", p.Name)
					j.area("low", p.Low)
					j.area("high", p.High)
					j.bool("usual_size", p.Usual)
				})
			}
		})
	})
	appendTransfer(j, a.Transfer)
	j.object("volume", func() {
		j.volume("mix", a.Need.Volume)
		j.volume("low", a.Low)
		j.volume("high", a.High)
		j.volume("on_panel", a.Need.OnPanel)
		j.volume("overspray", a.Need.Overspray)
		j.volume("loss", a.Need.Loss)
		j.volume("waste", a.Need.Waste())
	})
	if len(a.Parts) > 0 {
		j.object("ratio", func() {
			j.text("text", r.Ratio.Value.String())
			j.standing(w, r.Ratio.Standing)
			j.array("parts", func() {
				for _, p := range a.Parts {
					j.object("", func() { j.volume("volume", p) })
				}
			})
		})
	} else {
		j.null("ratio")
	}
	j.object("cups", func() {
		j.count("fillings", a.Cups)
		j.volume("size", r.Cup.Value)
		j.standing(w, r.Cup.Standing)
	})
	m.appendMoney(j)
	if r.PotLife > 0 {
		j.object("pot_life", func() {
			j.number("life_s", a.PotLife.Life.Seconds())
			j.number("safe_s", a.PotLife.Safe.Seconds())
			if a.Batches > 0 {
				j.number("trigger_s", a.Trigger.Seconds())
				j.count("batches", a.Batches)
			} else {
				j.null("trigger_s")
				j.null("batches")
			}
		})
	} else {
		j.null("pot_life")
	}
	appendRunning(j, &a.Running)
	j.bool("about", a.About)
	appendWords(j, a.Reasons, a.Cautions, sys, w)
}

// appendMoney appends the cost, null where no price was given, and what wrong settings
// add.
func (m *mixReply) appendMoney(j *jsonWriter) {
	a := m.a
	if a.Priced {
		j.object("cost", func() {
			j.number("mix", a.Cost)
			j.number("waste", a.WasteCost)
		})
	} else {
		j.null("cost")
	}
	j.array("wrong", func() {
		for i := range a.Wrong {
			x := &a.Wrong[i]
			j.object("", func() {
				j.near("distance", x.Distance)
				j.bool("valve_choked", x.Choked)
				j.number("transfer", x.Transfer)
				j.volume("extra", x.Extra)
				j.number("share", x.Share)
				if a.Priced {
					j.number("cost", x.ExtraCost)
				} else {
					j.null("cost")
				}
			})
		}
	})
}
