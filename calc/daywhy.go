package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Grounds of the day.
var (
	waterGround  = Ground{Basis: Estimate, Source: "source-drying-water"}
	gradeGround  = Ground{Basis: Estimate, Source: "source-grade"}
	potGround    = Ground{Basis: Estimate, Source: "source-pot-life"}
	dampGround   = Ground{Basis: Published, Source: "source-damp"}
	marginGround = Ground{Basis: Published, Source: "source-dew-margin"}
	coldGround   = Ground{Basis: Published, Source: "source-cold"}
	hotGround    = Ground{Basis: Estimate, Source: "source-judgement"}
)

func (r *DayRequest) dryGround() Ground {
	if r.Waterborne {
		return waterGround
	}
	return Ground{Basis: Estimate, Source: "source-drying-solvent", Figures: &Figures{SentenceFigure("solvent", "name-solvent-"+r.Solvent.ID), SentenceFigure("basis", r.Solvent.Basis)}}
}

// explain gives the reason of each value, with its own figures.
func (a *DayAnswer) explain(r *DayRequest, h hindrances) {
	why := newReasons()
	a.explainLimits(r, h, why)
	why.add("air", "day-air", dewGround, temp("dew", a.DewPoint), temp("bulb", a.WetBulb))
	a.explainDrying(r, why)
	f := Figures{SentenceFigure("grade", "grade-"+string(a.Grade)), temp("air", r.Air), temp("panel", r.Panel), CountFigure("panels", r.Panels)}
	switch {
	case r.Waterborne:
		why.add("grade", "day-grade-water", gradeGround, f...)
	case r.Hardener == Isocyanate:
		why.add("grade", "day-grade-hardener", gradeGround, f...)
	default:
		why.add("grade", "day-grade", gradeGround, f...)
	}
	if r.Panels > fewPanels {
		why.add("grade", "day-grade-large", gradeGround, CountFigure("panels", r.Panels))
	}
	if p := &a.PotLife; p.Known {
		f := Figures{minutes("sheet", r.PotLife), temp("sheetTemp", SheetTemp), temp("at", p.At), minutes("life", p.Life), minutes("safe", p.Safe), minutes("lastFill", p.LastFill),
			clock("started", r.Started), clock("ends", p.Ends), clock("fillBy", p.FillBy)}
		id := "pot-life"
		if r.HasStarted {
			id = "pot-life-ends"
		}
		why.add("pot-life", id, potGround, f...)
	}
	a.Reasons = *why
}

func (a *DayAnswer) explainDrying(r *DayRequest, why *reasons) {
	f := Figures{TextFigure("coat", r.Coat), temp("air", r.Air), share("humidity", r.Humidity), temp("panel", r.Panel), times("drying", a.Drying), times("flash", a.Flash),
		temp("mild", coat.ReferenceTemp), share("mildHumidity", coat.ReferenceHumidity)}
	ground := r.dryGround()
	switch {
	case a.Flash >= coat.LongestFlash:
		why.add("flash-off", "day-dries-not", ground, f...)
	case r.Waterborne:
		why.add("flash-off", "day-dries-water", ground, f...)
	default:
		why.add("flash-off", "day-dries-solvent", ground, append(f, SentenceFigure("solvent", "name-solvent-"+r.Solvent.ID))...)
	}
	// Where the air itself is to be warmed, the remedy says what that brings.
	if t := (DayRemedy{}); r.Waterborne && a.Remedy.Least == 0 && a.Drying < slowDrying && r.Air < designAir {
		warm := conditions{r.Day, r.Paint}.reheated(designAir)
		t.lift(r, warm, a.Drying)
		if t.Lift > 0 {
			why.add("flash-off", "day-warmer", ground, temp("to", designAir), share("humidity", warm.Humidity), times("lift", t.Lift))
		}
	}
}

// explainLimits says what each limit that the day runs into rests on.
func (a *DayAnswer) explainLimits(r *DayRequest, h hindrances, why *reasons) {
	if h.nearDew {
		why.add("verdict", "limit-dew", marginGround, degrees("least", LeastPanelMargin))
	}
	if h.damp {
		why.add("verdict", "limit-damp", dampGround, share("most", dampest))
	}
	if h.coldAir || h.coldPanel || h.coldPaint {
		ground := coldGround
		if r.Hardener != Isocyanate {
			ground = Ground{Basis: Estimate, Source: "source-urethanes"}
		}
		why.add("verdict", "limit-cold", ground, temp("least", coldBench))
	}
	if h.hotAir || h.hotPanel {
		why.add("verdict", "limit-hot", hotGround, temp("most", hottest))
	}
	if h.slow {
		why.add("verdict", "limit-slow", hotGround, times("least", slowest))
	}
}

// sameTemp is what no thermometer in a booth tells apart.
const sameTemp = unit.TempDiff(0.05)

// warn gathers the cautions, what stops the job first.
func (a *DayAnswer) warn(r *DayRequest, h hindrances) {
	var all cautions
	if m := a.PanelMargin; h.nearDew {
		id := "dew-near"
		if m < sameTemp {
			id = "dew-on-panel"
		}
		all.add(Stop, id, degrees("margin", m), temp("panel", r.Panel), temp("dew", a.DewPoint), degrees("least", LeastPanelMargin))
	}
	watchPanel(a.PanelMargin, &all)
	if h.coldAir {
		all.add(Warn, "cold", temp("air", r.Air), temp("least", coldBench))
	}
	if h.coldPanel && (!h.coldAir || r.Panel < r.Air) {
		all.add(Warn, "cold-panel", temp("panel", r.Panel))
	}
	if h.coldPaint && (!h.coldAir || r.Paint < r.Air) {
		all.add(Warn, "cold-paint", temp("paint", r.Paint))
	}
	if h.wetPaint {
		all.add(Warn, "wet-paint", temp("paint", r.Paint), temp("dew", a.DewPoint))
	}
	if h.damp {
		all.add(Warn, "damp", share("humidity", r.Humidity))
	}
	switch {
	case h.slow && a.Drying < 1/coat.LongestFlash:
		all.add(Warn, "still-water")
	case h.slow:
		all.add(Warn, "slow-water", times("drying", a.Drying))
	}
	if h.hotAir {
		all.add(Warn, "hot-air", temp("air", r.Air))
	}
	if h.hotPanel && !h.hotAir {
		all.add(Warn, "hot-panel", temp("panel", r.Panel))
	}
	if r.PotLife != 0 && !a.PotLife.Known {
		all.add(Warn, "pot-life-outside", temp("at", a.PotLife.At))
	}
	r.Hardener.protectBooth(r.Coat, false, &all)
	a.Cautions = all.list
}
