package command

import (
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"
)

// appendMix appends what is known of it into an open object.
func appendMix(j *jsonWriter, m *answer.Mix, sys unit.System, w *words.Words) {
	r, a := m.Request, m.Found
	appendApplication(j, &r.Application, w)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.ground(w, a.Coats.Ground)
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
		j.volume("past_the_ends", a.Need.Lead)
		j.volume("loss", a.Need.Loss)
		j.volume("waste", a.Need.Waste())
	})
	if len(a.Parts) > 0 {
		j.object("ratio", func() {
			j.text("text", r.Ratio.Value.String())
			j.ground(w, r.Ratio.Ground)
			j.array("parts", func() {
				for i, p := range a.Parts {
					j.object("", func() {
						j.volume("volume", p)
						appendWeight(j, m, i)
					})
				}
			})
		})
	} else {
		j.null("ratio")
	}
	if len(a.Weights) > 0 {
		sum := unit.Mass(0)
		for _, w := range a.Weights {
			sum += w
		}
		j.object("weight", func() {
			j.number("g", unit.Weight.Count(sys, float64(sum)))
			j.ground(w, r.Densities.Ground)
		})
	} else {
		j.null("weight")
	}
	appendVOC(j, &r.VOC, a.VOC, w)
	if r.FromPot {
		j.null("cups")
	} else {
		j.object("cups", func() {
			j.count("fillings", a.Need.Fillings)
			j.volume("size", r.Cup.Value)
			j.ground(w, r.Cup.Ground)
		})
	}
	appendMoney(j, m)
	if r.PotLife > 0 {
		j.object("pot_life", func() {
			j.number("life_s", a.PotLife.Life.Seconds())
			j.number("safe_s", a.PotLife.Safe.Seconds())
			if a.Batches > 0 {
				j.number("trigger_s", a.Trigger.Seconds())
				j.number("elapsed_s", a.Elapsed.Seconds())
				j.count("batches", a.Batches)
				j.count("batch_coats", a.BatchCoats)
				j.volume("batch", a.Batch)
			} else {
				j.null("trigger_s")
				j.null("elapsed_s")
				j.null("batches")
				j.null("batch_coats")
				j.null("batch")
			}
		})
	} else {
		j.null("pot_life")
	}
	appendRunning(j, &a.Running)
	j.bool("about", a.About)
}

// appendWeight appends what a part weighs and its density, null where that is not known.
func appendWeight(j *jsonWriter, m *answer.Mix, part int) {
	if len(m.Found.Weights) == 0 {
		j.null("g")
		j.null("density")
		return
	}
	j.number("g", unit.Weight.Count(unit.Metric, float64(m.Found.Weights[part])))
	j.density("density", m.Request.Densities.Value[part])
}

// appendMoney appends the cost, null where no price was given, and what wrong settings
// add.
func appendMoney(j *jsonWriter, m *answer.Mix) {
	a := m.Found
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
