package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Grounds of mixes.
var (
	mixGround   = Ground{Basis: Computed, Source: "source-mix"}
	wrongGround = Ground{Basis: Estimate, Source: "source-wrong"}
	panelGround = Ground{Basis: CommonPractice, Source: coat.PanelSource}
)

// explain gives the reason of each value, with its own figures.
func (a *MixAnswer) explain(r *MixRequest) {
	why := newReasons()
	n := &a.Need
	if a.AreaHigh > a.AreaLow {
		why.add("area", "mix-area-usual", panelGround, areaFigure("area", a.Area), areaFigure("low", a.AreaLow), areaFigure("high", a.AreaHigh))
	} else {
		why.add("area", "mix-area", AsTyped, areaFigure("area", a.Area))
	}
	r.Application.explain(a.Coats, a.Transfer, why)
	spent := "mix-volume"
	if r.FromPot {
		spent = "mix-volume-pot"
	}
	why.add("volume", spent, mixGround, volume("volume", n.Volume), volume("panel", n.OnPanel), volume("overspray", n.Overspray), volume("lead", n.Lead), volume("loss", n.Loss), CountFigure("fillings", n.Fillings))
	if n.Lead > 0 {
		why.add("volume", "mix-lead", r.Lead.Ground, near("lead", r.Lead.Value), volume("volume", n.Lead))
	}
	if a.High > a.Low*(1+1e-9) {
		why.add("volume", "mix-between", Ground{Basis: Estimate}, volume("low", a.Low), volume("high", a.High))
	}
	if r.FromPot {
		why.add("cups", "mix-pot", r.Loss.Ground, volume("loss", n.Loss))
	} else {
		why.add("cups", "mix-cup", r.Cup.Ground, volume("cup", r.Cup.Value), volume("loss", r.Loss.Value))
		if r.Loss.Ground != r.Cup.Ground {
			why.add("cups", "mix-loss", r.Loss.Ground, volume("loss", r.Loss.Value))
		}
	}
	if len(a.Parts) > 0 {
		why.add("parts", "mix-ratio", r.Ratio.Ground, TextFigure("ratio", r.Ratio.Value.String()))
	}
	if len(a.Weights) > 0 {
		why.add("parts", "mix-densities", r.Densities.Ground)
	}
	r.VOC.explain(a.VOC, r.Thinned, why)
	if r.PotLife > 0 {
		why.add("pot-life", "mix-life", Ground{Basis: Estimate, Source: "source-pot-life-halves"}, minutes("sheet", r.PotLife), temp("sheetTemp", r.PotLifeAt), temp("booth", r.Booth),
			minutes("life", a.PotLife.Life), minutes("safe", a.PotLife.Safe))
	}
	if a.Priced {
		why.add("cost", "mix-cost", Ground{Basis: Computed, Source: "source-prices"}, money("cost", a.Cost), money("waste", a.WasteCost))
	}
	for i := range a.Wrong {
		w := &a.Wrong[i]
		f := []Figure{near("distance", w.Distance), near("farther", w.Distance-r.Held.Distance), share("transfer", w.Transfer), volume("extra", w.Extra), share("share", w.Share)}
		switch {
		case w.Choked && a.Priced:
			why.add("wrong", "wrong-choked-cost", wrongGround, append(f, money("cost", w.ExtraCost))...)
		case w.Choked:
			why.add("wrong", "wrong-choked", wrongGround, f...)
		case a.Priced:
			why.add("wrong", "wrong-farther-cost", wrongGround, append(f, money("cost", w.ExtraCost))...)
		default:
			why.add("wrong", "wrong-farther", wrongGround, f...)
		}
	}
	a.Reasons = *why
}

// warn gathers the cautions, what stops the job first.
func (a *MixAnswer) warn(r *MixRequest) {
	var all cautions
	r.warnFilm(&a.Running, r.Dry.Value/unit.Length(a.Coats.Value), &all)
	if a.AreaHigh > a.AreaLow {
		all.add(Warn, "mix-areas-usual")
	}
	r.VOC.warn(a.VOC, &all)
	life := minutes("life", a.PotLife.Safe)
	switch {
	case a.Batches > 1:
		id := "mix-past-pot-life"
		if a.BatchCoats == 0 {
			id = "mix-past-pot-life-coat"
		}
		all.add(Warn, id, minutes("elapsed", a.Elapsed), minutes("wait", BetweenCoats), life, CountFigure("batches", a.Batches), CountFigure("coats", a.BatchCoats))
	case r.PotLife > 0:
		all.add(Note, "mix-pot-life-known", life, CountFigure("coats", a.Coats.Value))
	default:
		all.add(Note, "mix-pot-life")
	}
	r.Hardener.protectHandling(r.Coat, &all)
	a.Cautions = all.list
}
