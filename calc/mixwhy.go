package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Standings of mixes.
var (
	mixStanding   = Standing{Computed, "area x dry film/(solids x transfer), and the loss"}
	wrongStanding = Standing{Estimate, "transfer against pressure and distance, directions from finishing guides; no published sizes"}
)

// explain gives the reason of each value, with its own figures.
func (a *MixAnswer) explain(r *MixRequest) {
	add := func(about, id string, st Standing, f ...Figure) {
		a.Reasons = append(a.Reasons, Reason{About: about, ID: id, Figures: f, Standing: st})
	}
	n := &a.Need
	if a.AreaHigh > a.AreaLow {
		add("area", "mix-area-usual", Standing{Estimate, "usual panel areas: " + coat.PanelBasis}, areaFigure("area", a.Area), areaFigure("low", a.AreaLow), areaFigure("high", a.AreaHigh))
	} else {
		add("area", "mix-area", AsTyped, areaFigure("area", a.Area))
	}
	r.Laying.explain(a.Coats, a.Transfer, add)
	add("volume", "mix-volume", mixStanding, volume("volume", n.Volume), volume("panel", n.OnPanel), volume("overspray", n.Overspray), volume("loss", n.Loss))
	if a.High > a.Low*(1+1e-9) {
		add("volume", "mix-between", Standing{Estimate, ""}, volume("low", a.Low), volume("high", a.High))
	}
	add("cups", "mix-cup", r.Cup.Standing, volume("cup", r.Cup.Value), volume("loss", n.Loss))
	if r.Loss.Standing != r.Cup.Standing {
		add("cups", "mix-loss", r.Loss.Standing, volume("loss", n.Loss))
	}
	if len(a.Parts) > 0 {
		add("parts", "mix-ratio", r.Ratio.Standing, text("ratio", r.Ratio.Value.String()))
	}
	if r.PotLife > 0 {
		add("pot-life", "mix-life", Standing{Estimate, "halves for each 10 C warmer, more sharply with some products"}, minutes("sheet", r.PotLife), temp("booth", r.Booth),
			minutes("life", a.PotLife.Life), minutes("safe", a.PotLife.Safe))
	}
	if a.Priced {
		add("cost", "mix-cost", Standing{Computed, "prices as typed"}, money("cost", a.Cost), money("waste", a.WasteCost))
	}
	for i := range a.Wrong {
		w := &a.Wrong[i]
		f := []Figure{near("distance", w.Distance), near("farther", w.Distance-r.Held.Distance), share("transfer", w.Transfer), volume("extra", w.Extra), share("share", w.Share)}
		switch {
		case w.Choked && a.Priced:
			add("wrong", "wrong-choked-cost", wrongStanding, append(f, money("cost", w.ExtraCost))...)
		case w.Choked:
			add("wrong", "wrong-choked", wrongStanding, f...)
		case a.Priced:
			add("wrong", "wrong-farther-cost", wrongStanding, append(f, money("cost", w.ExtraCost))...)
		default:
			add("wrong", "wrong-farther", wrongStanding, f...)
		}
	}
}

// warn gathers the cautions, what stops the job first.
func (a *MixAnswer) warn(r *MixRequest) {
	var all cautions
	add := all.add
	r.warnFilm(&a.Running, r.Dry.Value/unit.Length(a.Coats.Value), add)
	if a.AreaHigh > a.AreaLow {
		add(Warn, "mix-areas-usual")
	}
	life := minutes("life", a.PotLife.Safe)
	switch {
	case a.Batches > 1:
		add(Warn, "mix-past-pot-life", minutes("trigger", a.Trigger), life, count("batches", a.Batches))
	case r.PotLife > 0:
		add(Note, "mix-pot-life-known", life, count("coats", a.Coats.Value))
	default:
		add(Note, "mix-pot-life")
	}
	r.warnAlways(add)
	a.Cautions = all.list()
}
