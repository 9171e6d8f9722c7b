package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Grounds of thinning.
var (
	slopeGround   = Ground{Basis: Estimate, Source: "source-slope"}
	fittedGround  = Ground{Basis: OwnReadings, Source: "source-two-readings"}
	thinnerGround = Ground{Basis: Estimate, Source: "source-thinner"}
	warmGround    = Ground{Basis: Estimate, Source: "source-same-slope"}
)

// groundOfCup is the ground of a cup's equation, and whether the reading is outside its
// published range.
func groundOfCup(c coat.Cup, about bool) Ground {
	if !about {
		return Ground{Basis: Published, Source: c.Standard}
	}
	return Ground{Basis: Estimate, Source: "source-outside-cup", Figures: &Figures{TextFigure("standard", c.Standard), CountFigure("low", int(c.Low)), CountFigure("high", int(c.High)), CountFigure("off", int(math.Round(100*coat.OutsideSpread)))}}
}

// Sentence is the id of the sentence that says what the mix wants.
func (a *ThinAnswer) Sentence(r *ThinRequest) string {
	switch {
	case a.Remedy == RemedyNone && !a.within(a.Reached):
		return "advice-near-enough"
	case a.Remedy != RemedyWarm:
		return "advice-" + string(a.Remedy)
	case a.Instead.Add > 0 && a.Instead.To > r.Reading.At:
		return "advice-warm-or-less"
	case a.Instead.Add > 0:
		return "advice-warm-or-thin"
	case a.OnlyCold:
		return "advice-warm-only-cold"
	}
	return "advice-warm"
}

// otherCup reports whether the sheet's seconds are of another cup than the reading's.
func (r *ThinRequest) otherCup() bool { return r.Sheet.Value.Cup.ID != r.Reading.Cup.ID }

// Figures is what the sentences of an answer name. Seconds that were worked are whole ones: a
// cup is read no closer.
func (a *ThinAnswer) Figures(r *ThinRequest) Figures {
	c, w, s := &a.Corrected, &a.Wanted, &r.Sheet.Value
	about := func(name string, seconds float64) Figure { return cupSeconds(name, math.Round(seconds)) }
	wanted := about
	if !r.otherCup() {
		wanted = cupSeconds // the sheet's own
	}
	return Figures{
		TextFigure("coat", r.Coat), TextFigure("cup", r.Reading.Cup.Label), TextFigure("sheetCup", s.Cup.Label),
		cupSeconds("seconds", r.Reading.Seconds), temp("paint", r.Reading.At), viscous("nu", a.Nu.Nu), viscous("nuLow", a.Nu.Low), viscous("nuHigh", a.Nu.High),
		temp("sheetTemp", s.At), about("corrected", c.Seconds), about("correctedLow", c.Low), about("correctedHigh", c.High),
		cupSeconds("sheetLow", s.Low), cupSeconds("sheetHigh", s.High), wanted("low", w.Low.Seconds), wanted("aim", w.Aim.Seconds), wanted("high", w.High.Seconds),
		share("change", float64(a.Slope.Typical)), share("changeLow", float64(a.Slope.Low)), share("changeHigh", float64(a.Slope.High)),
		temp("warm", a.To), degrees("warmer", unit.TempDiff(math.Abs(float64(a.To-r.Reading.At)))), about("warmed", a.Warmed.Seconds), BriefFigure("add", FigureShare, a.Add), about("reached", a.Reached.Seconds),
		BriefFigure("insteadAdd", FigureShare, a.Instead.Add), temp("insteadWarm", a.Instead.To), about("insteadReached", a.Instead.Reached.Seconds), about("off", readingError(r.Reading.Seconds)), share("most", r.MostThinner.Value), temp("warmest", r.Warmest.Value),
	}
}

// explain gives the reason of each value, with its own figures.
func (a *ThinAnswer) explain(r *ThinRequest) {
	all := a.Figures(r)
	why := newReasons()
	add := func(about, id string, ground Ground) { why.add(about, id, ground, all...) }
	if a.Nu.About {
		add("reading", "thin-reading-about", groundOfCup(r.Reading.Cup, true))
	} else {
		add("reading", "thin-reading", groundOfCup(r.Reading.Cup, false))
	}
	id := "thin-wanted"
	if r.otherCup() {
		id = "thin-wanted-cup"
	}
	add("wanted", id, r.Sheet.Ground)
	switch {
	case r.Reading.At == r.Sheet.Value.At:
	case a.Slope.Fitted:
		add("corrected", "thin-corrected", fittedGround)
	default:
		add("corrected", "thin-corrected-band", slopeGround)
	}
	if a.To != r.Reading.At {
		ground := warmGround
		if a.Slope.Fitted {
			ground = fittedGround
		}
		if a.To < r.Reading.At {
			add("warm", "thin-cool", ground)
		} else {
			add("warm", "thin-warm", ground)
			add("warm", "thin-warmest", r.Warmest.Ground)
		}
	}
	switch {
	case a.Add > 0:
		add("thinner", "thin-thinner", thinnerGround)
	case a.Instead.Add > 0:
		add("thinner", "thin-instead", thinnerGround)
	}
	if a.Remedy != RemedyCannot && (a.Add > 0 || a.Instead.Add > 0) {
		add("thinner", "thin-halves", thinnerGround)
	}
	if a.Add > 0 || a.Instead.Add > 0 || a.Remedy == RemedyCannot {
		add("thinner", "thin-most", r.MostThinner.Ground)
	}
	r.VOC.explain(a.VOC, a.added(), why)
	a.Reasons = *why
}

// warn gathers the cautions, what stops the job first.
func (a *ThinAnswer) warn(r *ThinRequest) {
	var all cautions
	f := a.Figures(r)
	add := func(l Level, id string) { all.add(l, id, f...) }
	switch a.Remedy {
	case RemedyCannot:
		if a.Add > 0 {
			add(Stop, "thin-cannot")
		} else {
			add(Stop, "thin-cannot-warm")
		}
	case RemedyUnthinned:
		add(Stop, "thin-over")
	}
	if a.Remedy == RemedyNone && a.Corrected.Nu > a.Wanted.High.Nu*(1+sameViscosity) {
		add(Warn, "thin-only-warm")
	}
	r.VOC.warn(a.VOC, &all)
	if r.Waterborne {
		add(Warn, "thin-stirred")
	}
	if a.To > r.Reading.At {
		all.safety(Warn, "thin-warming", Ground{})
	}
	if r.Reading.Cup.Standard == coat.ZahnStandard {
		add(Note, "thin-zahn")
	}
	r.Hardener.protectHandling(r.Coat, &all)
	a.Cautions = all.list
}
