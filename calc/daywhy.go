package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Standings of the day.
var (
	waterStanding  = Standing{Basis: Estimate, Source: "source-drying-water"}
	gradeStanding  = Standing{Basis: Estimate, Source: "source-grade"}
	potStanding    = Standing{Basis: Estimate, Source: "source-pot-life"}
	dampStanding   = Standing{Basis: Published, Source: "source-damp"}
	marginStanding = Standing{Basis: Published, Source: "source-dew-margin"}
	coldStanding   = Standing{Basis: Published, Source: "source-cold"}
	hotStanding    = Standing{Basis: Estimate, Source: "source-judgement"}
)

func (r *DayRequest) dryStanding() Standing {
	if r.Waterborne {
		return waterStanding
	}
	return Standing{Basis: Estimate, Source: "source-drying-solvent", Figures: &Figures{named("solvent", "name-solvent-"+r.Solvent.ID), named("basis", r.Solvent.Basis)}}
}

// explain gives the reason of each value, with its own figures.
func (a *DayAnswer) explain(r *DayRequest, h hindrances) {
	why := newReasons()
	a.explainLimits(r, h, why)
	why.add("air", "day-air", dewStanding, temp("dew", a.DewPoint), temp("bulb", a.WetBulb))
	a.explainDrying(r, why)
	f := Figures{named("grade", "grade-"+string(a.Grade)), temp("air", r.Air), temp("panel", r.Panel), count("panels", r.Panels)}
	switch {
	case r.Waterborne:
		why.add("grade", "day-grade-water", gradeStanding, f...)
	case r.Isocyanate:
		why.add("grade", "day-grade-hardener", gradeStanding, f...)
	default:
		why.add("grade", "day-grade", gradeStanding, f...)
	}
	if r.Panels > fewPanels {
		why.add("grade", "day-grade-large", gradeStanding, count("panels", r.Panels))
	}
	if p := &a.PotLife; p.Known {
		f := Figures{minutes("sheet", r.PotLife), temp("sheetTemp", SheetTemp), temp("at", p.At), minutes("life", p.Life), minutes("safe", p.Safe), minutes("lastFill", p.LastFill),
			clock("started", r.Started), clock("ends", p.Ends), clock("fillBy", p.FillBy)}
		id := "pot-life"
		if r.HasStarted {
			id = "pot-life-ends"
		}
		why.add("pot-life", id, potStanding, f...)
	}
	a.Reasons = why.list
}

func (a *DayAnswer) explainDrying(r *DayRequest, why *reasons) {
	f := Figures{text("coat", r.Coat), temp("air", r.Air), share("humidity", r.Humidity), temp("panel", r.Panel), times("drying", a.Drying), times("flash", a.Flash),
		temp("mild", coat.ReferenceTemp), share("mildHumidity", coat.ReferenceHumidity)}
	st := r.dryStanding()
	switch {
	case a.Flash >= coat.LongestFlash:
		why.add("flash-off", "day-dries-not", st, f...)
	case r.Waterborne:
		why.add("flash-off", "day-dries-water", st, f...)
	default:
		why.add("flash-off", "day-dries-solvent", st, append(f, named("solvent", "name-solvent-"+r.Solvent.ID))...)
	}
	// Where the air itself is to be warmed, the turn says what that brings.
	if t := (Turn{}); r.Waterborne && a.Turn.Least == 0 && a.Drying < slowDrying && r.Air < designAir {
		warm := scene{r.Day, r.Paint}.reheated(designAir)
		t.lift(r, warm, a.Drying)
		if t.Lift > 0 {
			why.add("flash-off", "day-warmer", st, temp("to", designAir), share("humidity", warm.Humidity), times("lift", t.Lift))
		}
	}
}

// explainLimits says what each limit that the day runs into rests on.
func (a *DayAnswer) explainLimits(r *DayRequest, h hindrances, why *reasons) {
	if h.nearDew {
		why.add("verdict", "limit-dew", marginStanding, degrees("least", LeastPanelMargin))
	}
	if h.damp {
		why.add("verdict", "limit-damp", dampStanding, share("most", dampest))
	}
	if h.coldAir || h.coldPanel || h.coldPaint {
		st := coldStanding
		if !r.Isocyanate {
			st = Standing{Basis: Estimate, Source: "source-urethanes"}
		}
		why.add("verdict", "limit-cold", st, temp("least", coldBench))
	}
	if h.hotAir || h.hotPanel {
		why.add("verdict", "limit-hot", hotStanding, temp("most", hottest))
	}
	if h.slow {
		why.add("verdict", "limit-slow", hotStanding, times("least", slowest))
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
	if r.Isocyanate {
		all.add(Warn, "isocyanate", text("coat", r.Coat))
	}
	all.add(Note, "safety")
	a.Cautions = all.list
}
