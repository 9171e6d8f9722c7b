package calc

import (
	"math"
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Grounds of films.
var (
	passGround = Ground{Basis: Computed, Source: "source-pass"}
	combGround = Ground{Basis: Computed, Source: "source-comb"}
	tipGround  = Ground{Basis: Estimate, Source: "source-tip"}
	cupGround  = Ground{Basis: OwnReadings, Source: "source-timed-cup"}
)

// timedFor is how long a cup is sprayed into to time the rate: long enough to read, by
// common practice.
const timedFor = 30 * time.Second

// AsTyped is the ground of what a painter measured or set at this booth.
var AsTyped = Ground{Basis: OwnReadings, Source: "source-typed"}

// explain gives the reason of each value, with its own figures.
func (a *FilmAnswer) explain(r *FilmRequest) {
	why := newReasons()
	r.Application.explain(a.Coats, a.Pass.Transfer, why)
	for _, c := range a.Laid {
		id := "film-comb"
		if c.Next > c.Wetted {
			id = "film-comb-between"
		}
		why.add("comb", id, combGround, filmFigure("wetted", c.Wetted), filmFigure("next", c.Next), filmFigure("low", c.Low), filmFigure("high", c.High))
	}
	a.explainRate(r, why)
	if p := &a.Pass; p.Known {
		id := "film-speed"
		if p.High > p.Low {
			id = "film-speed-between"
		}
		if a.OneMore.Dry == 0 {
			why.add("speed", id, passGround, filmFigure("wet", a.Each.Wet), speedFigure("speed", p.Speed), speedFigure("low", p.Low), speedFigure("high", p.High), near("step", p.Step))
		}
		if hand := r.Held.Hand; hand.Value > 0 {
			why.add("speed", "film-hand", hand.Ground, TextFigure("gun", r.Gun), brief(speedFigure("hand", hand.Value)))
		}
		if r.Fan.Ground == r.Overlap.Ground {
			why.add("speed", "film-fan-overlap", r.Fan.Ground, near("fan", r.Fan.Value), share("overlap", r.Overlap.Value))
		} else {
			why.add("speed", "film-fan", r.Fan.Ground, near("fan", r.Fan.Value))
			why.add("speed", "film-overlap", r.Overlap.Ground, share("overlap", r.Overlap.Value))
		}
		if r.Height > 0 {
			why.add("speed", "film-passes", passGround, CountFigure("passes", p.Passes), Figure{Name: "height", Kind: FigureRun, Value: float64(r.Height)})
		}
		if r.GunSpeed > 0 {
			why.add("speed", "film-at-speed", passGround, brief(speedFigure("speed", r.GunSpeed)), filmFigure("wet", a.AtSpeed.Wet), filmFigure("dry", a.AtSpeed.Dry))
		}
	}
	if r.Before > 0 {
		why.add("total", "film-whole", Ground{Basis: Published, Source: "source-whole-film"}, filmFigure("before", r.Before), filmFigure("total", a.Running.Total),
			filmFigure("whole", a.Running.Whole), filmFigure("most", coat.WholeFilm))
	}
	a.Reasons = *why
}

func (a *FilmAnswer) explainRate(r *FilmRequest, why *reasons) {
	q := a.Pass.Rate
	switch r.Fluid.From {
	case FluidGiven:
		why.add("rate", "rate-given", AsTyped, fluidFigure("rate", r.Fluid.Rate))
	case FluidTimed:
		why.add("rate", "rate-timed", cupGround, fluidFigure("rate", q.Value))
	case FluidTip:
		why.add("rate", "rate-tip", tipGround, fluidFigure("rate", twoFigures(q.Value)), fluidFigure("low", twoFigures(q.Low)), fluidFigure("high", twoFigures(q.High)))
	case FluidUnknown:
		why.add("rate", "rate-unknown", Ground{Basis: CommonPractice}, minutes("time", timedFor))
	}
}

// twoFigures is a rate to two figures in mL/min, as near as a tip tells it.
func twoFigures(q coat.FluidRate) coat.FluidRate {
	ml := q.MLPerMin()
	ten := math.Pow10(int(math.Floor(math.Log10(ml))) - 1)
	return coat.MLPerMin(math.Round(ml/ten) * ten)
}

// warn gathers the cautions, what stops the job first.
func (a *FilmAnswer) warn(r *FilmRequest) {
	var all cautions
	r.warnFilm(&a.Running, a.Each.Dry, &all)
	if most := r.Usual.High; r.Usual.Coats > 0 && a.AtSpeed.Dry > most {
		all.add(Warn, "film-heavy-speed", filmFigure("each", a.AtSpeed.Dry), filmFigure("most", most), speedFigure("speed", a.Pass.Speed))
	}
	if p := &a.Pass; p.Known && a.OneMore.Dry == 0 {
		a.warnHand(p, &all)
	}
	if a.OneMore.Dry > 0 {
		w := r.wanted()
		all.add(Note, "film-stop-here", filmFigure("least", a.OneMore.Dry), filmFigure("total", a.OneMore.Total), filmFigure("low", w.Low), filmFigure("high", w.High))
	}
	if len(a.Laid) > 0 {
		all.add(Note, "film-comb-low")
	}
	r.Hardener.protectSpraying(r.Coat, &all)
	a.Cautions = all.list
}

// warnHand says where the gun would have to go faster or slower than a hand does.
func (a *FilmAnswer) warnHand(p *PassAnswer, to *cautions) {
	f := []Figure{speedFigure("speed", p.Speed), speedFigure("slow", slowHand), speedFigure("fast", fastHand), filmFigure("wet", a.Each.Wet)}
	switch {
	case p.Speed < slowestHand:
		to.add(Stop, "film-no-hand-slow", f...)
	case p.Speed > fastestHand:
		to.add(Stop, "film-no-hand-fast", f...)
	case p.Speed < slowHand:
		to.add(Warn, "film-hand-slow", f...)
	case p.Speed > fastHand:
		to.add(Warn, "film-hand-fast", f...)
	}
}

// What no hand goes beyond: an estimate, and what a gun's speed may be given as.
const (
	slowestHand = unit.Speed(0.05)
	fastestHand = unit.Speed(3)
)
