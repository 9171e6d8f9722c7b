package command

import (
	"math"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func mixQuestion() question {
	return question{
		name: "mix", brief: "brief-mix",
		help: help{intro: "mix-intro", schema: "boothset.mix/1", examples: []string{
			"boothset mix --coat clear --gun reduced-pressure --area 12ft2 --area hood --ratio 4:1:1",
			"boothset mix --coat clear --gun reduced-pressure --area 4m2 --price 60/L --distance 9in",
		}},
		fields: presets.MixFields(),
		ask:    asks((*presets.Catalogue).Mix, calc.SolveMix, func(r *calc.MixRequest, a *calc.MixAnswer) reply { return &mixReply{r, a} }),
	}
}

type mixReply struct {
	r *calc.MixRequest
	a *calc.MixAnswer
}

func (m *mixReply) stopped() bool { return m.a.Stopped() }

func (m *mixReply) print(p *printer) {
	r, a := m.r, m.a
	heading(p, "mix-heading-gun", "mix-heading", &r.Application, said("area", p.about(a.AreaHigh > a.AreaLow, p.sys.Area(a.Area, unit.Usual))),
		calc.FigureOf("dry", calc.FigureFilm, r.Dry.Value), said("coats", coatsText(p, a.Coats.Value)))
	p.rows(leastValue, slices.Concat(m.pour(p), m.spent(p))...)
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.line("%s", p.say("mix-wrong"))
	var why []calc.Reason
	for _, x := range a.Reasons {
		if x.About == "wrong" {
			p.hang("-", p.say(x.ID, x.Figures...))
		} else {
			why = append(why, x)
		}
	}
	p.line("")
	p.reasons(why)
}

// pour is the rows of the mix and its parts, with the mark that each is poured up to, and
// of how often the cup is filled.
func (m *mixReply) pour(p *printer) []row {
	r, a := m.r, m.a
	mix := poured(p.sys, a.Need.Volume)
	between := ""
	if a.High > a.Low*(1+1e-9) {
		between = p.span(p.sys.Volume(a.Low, unit.Usual), p.sys.Volume(a.High, unit.Usual))
	}
	all := []row{{p.say("label-mix"), p.about(a.About, p.sys.Volume(mix, unit.Usual)), between}}
	parts := r.Ratio.Value.Parts
	sum := 0.0
	for _, part := range parts {
		sum += part
	}
	name, mark := p.say("label-pour"), r.Ratio.Value.String()
	upTo := unit.Volume(0)
	for i, part := range parts {
		share := mix * unit.Volume(part/sum)
		upTo += share
		if i > 0 {
			name, mark = "", p.say("mix-up-to", calc.FigureOf("mark", calc.FigureVolume, upTo))
		}
		all = append(all, row{name, p.sys.Volume(share, unit.Usual), mark})
	}
	return append(all, row{p.say("label-fillings"), strconv.Itoa(m.fillings(mix)), p.say("mix-of-cup", calc.FigureOf("cup", calc.FigureVolume, r.Cup.Value))})
}

// spent is the rows of what does not end on the panel and of what the mix costs.
func (m *mixReply) spent(p *printer) []row {
	a := m.a
	all := []row{{p.say("label-waste"), p.about(true, p.sys.Volume(a.Need.Waste(), unit.Usual)),
		p.say("mix-waste", calc.FigureOf("overspray", calc.FigureVolume, a.Need.Overspray), calc.FigureOf("loss", calc.FigureVolume, a.Need.Loss))}}
	if !a.Priced {
		return all
	}
	return append(all, row{p.say("label-cost"), p.about(a.About, strconv.FormatFloat(a.Cost, 'f', 2, 64)),
		p.say("mix-money-waste", calc.FigureOf("waste", calc.FigureMoney, a.WasteCost))})
}

// fillings is how often the cup is filled for what was poured.
func (m *mixReply) fillings(mix unit.Volume) int {
	n, err := coat.CupsFor(mix, m.r.Cup.Value)
	if err != nil { // rounded up past what is counted
		return m.a.Cups
	}
	return n
}

// coatsText is how many coats.
func coatsText(p *printer, n int) string {
	id := "mix-coats"
	if n == 1 {
		id = "mix-coat"
	}
	return p.say(id, calc.FigureOf("coats", calc.FigureCount, n))
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
	appendLaying(j, &r.Application, w)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.standing(w, a.Coats.Ground)
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
			j.standing(w, r.Ratio.Ground)
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
		j.standing(w, r.Cup.Ground)
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
