package calc

import "boothset/calc/coat"

// Grounds of the day.
var (
	waterGround = Ground{Basis: Estimate, Source: "source-drying-water"}
	gradeGround = Ground{Basis: Estimate, Source: "source-grade"}
	potGround   = Ground{Basis: Estimate, Source: "source-pot-life"}
)

func (r *DayRequest) dryGround() Ground {
	if r.Coat.Waterborne {
		return waterGround
	}
	return Ground{Basis: Estimate, Source: "source-drying-solvent", Figures: &Figures{SentenceFigure("solvent", "name-solvent-"+r.Coat.Solvent.ID), SentenceFigure("basis", r.Coat.Solvent.Basis)}}
}

// explain gives the reason of each value, with its own figures.
func (a *DayAnswer) explain(r *DayRequest) {
	why := newReasons()
	a.Judgement.explain(why)
	why.add("air", "day-air", dewGround, temp("dew", a.DewPoint), temp("bulb", a.WetBulb))
	if r.Coat.Dries() {
		a.explainDrying(r, why)
	} else {
		why.add("flash-off", "day-lamp", Ground{Basis: Computed}, TextFigure("coat", r.Coat.Name))
	}
	f := Figures{SentenceFigure("grade", "grade-"+string(a.Grade)), temp("air", r.Air), temp("panel", r.Panel), CountFigure("panels", r.Panels)}
	switch {
	case !r.Coat.Dries():
	case r.Coat.Waterborne:
		why.add("grade", "day-grade-water", gradeGround, f...)
	case r.Coat.Hardener == Isocyanate:
		why.add("grade", "day-grade-hardener", gradeGround, f...)
	default:
		why.add("grade", "day-grade", gradeGround, f...)
	}
	if r.Panels > fewPanels && r.Coat.Dries() {
		why.add("grade", "day-grade-large", gradeGround, CountFigure("panels", r.Panels))
	}
	if p := &a.PotLife; p.Known {
		f := Figures{minutes("sheet", r.PotLife), temp("sheetTemp", r.PotLifeAt), temp("at", p.At), minutes("life", p.Life), minutes("safe", p.Safe), minutes("lastFill", p.LastFill),
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
	length, beside, f := FlashOff(a.Flash)
	f = append(f, SentenceFigure("length", length), SentenceFigure("beside", beside), TextFigure("coat", r.Coat.Name), temp("panel", r.Panel))
	ground := r.dryGround()
	switch {
	case a.Flash >= coat.LongestFlash:
		why.add("flash-off", "day-dries-not", ground, f...)
	case r.Coat.Waterborne:
		why.add("flash-off", "day-dries-water", ground, f...)
	default:
		why.add("flash-off", "day-dries-solvent", ground, append(f, SentenceFigure("solvent", "name-solvent-"+r.Coat.Solvent.ID))...)
	}
	// Where the air itself is to be warmed, the remedy says what that brings.
	if t := (DayRemedy{}); r.Coat.Waterborne && a.Remedy.Least == 0 && a.Drying < slowDrying && r.Air < designAir {
		warm := conditions{r.Day, r.Paint}.reheated(designAir)
		t.lift(r, warm, r.Day)
		if t.Lift > 0 {
			why.add("flash-off", "day-warmer", ground, temp("to", designAir), share("humidity", warm.Humidity), times("lift", t.Lift))
		}
	}
}

// warn gathers the cautions.
func (a *DayAnswer) warn(r *DayRequest) {
	var all cautions
	if r.PotLife != 0 && !a.PotLife.Known {
		all.add(Warn, "pot-life-outside", temp("at", a.PotLife.At))
	}
	r.Coat.Hardener.protectBooth(r.Coat.Name, false, &all)
	a.Cautions = all.list
}
