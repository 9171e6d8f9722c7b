package calc

import (
	"time"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// When a day is not for spraying.
const (
	// dampest is the humidity from which on a coat is not sprayed: dampGround.
	dampest = 0.85
	// coldBench and hottest bound air, panel and material: benchGround. A little outside, so
	// that the bounds themselves, typed, are inside.
	coldBench = unit.Temp((60-32)/1.8 + unit.ZeroCelsius - 1e-6)
	hottest   = unit.Temp((100-32)/1.8 + unit.ZeroCelsius + 1e-6)
	// slowest is the drying of a waterborne coat, relative to the reference day, below
	// which it is not worth starting: judgement.
	slowest = 0.4
	// dryWatch and dryWait are how many times as dry as on the reference day a coat lands
	// from which on that is to be watched, and to be waited for: judgement.
	dryWatch = 1.7
	dryWait  = 2.5
)

// What the limits rest on.
var (
	dampGround      = Ground{Basis: Published, Source: "source-damp"}
	marginGround    = Ground{Basis: Published, Source: "source-dew-margin"}
	benchGround     = Ground{Basis: Published, Source: "source-bench"}
	judgementGround = Ground{Basis: Estimate, Source: "source-judgement"}
)

// sameTemp is what no thermometer in a booth tells apart.
const sameTemp = unit.TempDiff(0.05)

// level is the verdict that hindrances alone come to.
func (h hindrances) level() Verdict {
	switch {
	case h.nearDew || h.damp:
		return VerdictStop
	case h != hindrances{}:
		return VerdictWait
	}
	return VerdictGo
}

// LandingVerdict is the verdict on how dry a coat lands, relative to the reference day.
func LandingVerdict(drier float64) Verdict {
	switch {
	case drier >= dryWait:
		return VerdictWait
	case drier >= dryWatch:
		return VerdictWatch
	}
	return VerdictGo
}

// judge adds what in the day speaks against spraying: that it was not read, and what it is,
// all turned by one remedy. What lies within an instrument's error of a limit raises go alone.
func (o *outlook) judge(j *Judgement, m *DayRemedy) {
	r, now := o.r, conditions{o.r.Day, o.r.Paint}
	if r.Assumed {
		j.add(VerdictWatch, "day-assumed", "limit-read", judgementGround, Turn{ID: "turn-read"}, temp("air", r.Air), share("humidity", r.Humidity))
	}
	h, landing := o.hindered(now, offBy{}), LandingVerdict(o.inFlight.Drier)
	level := max(h.level(), landing)
	var close hindrances
	if level == VerdictGo {
		close = o.hindered(now, r.error())
	}
	if level == VerdictGo && close == (hindrances{}) {
		return
	}
	*m = o.remedy(now, level)
	turn := Turn{m.Sentence(), m.Figures()}
	o.judgeDamp(j, h, turn)
	o.judgeTemperatures(j, h, turn)
	switch {
	case h.slow:
		drive, err := r.drying(r.Day)
		id := "slow-water"
		if err != nil || drive < 1/coat.LongestFlash {
			id = "still-water"
		}
		j.add(VerdictWait, id, "limit-slow", judgementGround, turn, append(mildDay(), share("drying", drive), share("least", slowest))...)
	case landing == VerdictWait:
		j.add(landing, "lands-dry", "limit-dry", judgementGround, turn, append(mildDay(), times("drier", o.inFlight.Drier), times("most", dryWait))...)
	case landing == VerdictWatch:
		j.add(landing, "lands-drier", "limit-dry", judgementGround, turn, append(mildDay(), times("drier", o.inFlight.Drier), times("most", dryWatch))...)
	}
	if level == VerdictGo {
		id, f := close.limit()
		j.add(VerdictWatch, "close", "limit-error", r.Instruments.Thermometer.Ground, turn, append(f, SentenceFigure("limit", id),
			degrees("degree", unit.TempDiff(r.Instruments.Thermometer.Within)), share("share", r.Instruments.Hygrometer.Within))...)
	}
}

// judgeDamp adds what the water in the air forbids.
func (o *outlook) judgeDamp(j *Judgement, h hindrances, turn Turn) {
	r := o.r
	dew := air.DewPoint(r.Air, r.Humidity)
	if m := unit.TempDiff(r.Panel - dew); h.nearDew {
		id := "dew-near"
		if m < sameTemp {
			id = "dew-on-panel"
		}
		j.add(VerdictStop, id, "limit-dew", marginGround, turn, degrees("margin", m), temp("panel", r.Panel), temp("dew", dew), degrees("least", LeastPanelMargin))
	}
	if h.damp {
		j.add(VerdictStop, "damp", "limit-damp", dampGround, turn, share("humidity", r.Humidity), share("most", dampest))
	}
	if h.wetPaint {
		j.add(VerdictWait, "wet-paint", "limit-wet-paint", judgementGround, turn, temp("paint", r.Paint), temp("dew", dew))
	}
}

// judgeTemperatures adds what is too cold or too hot; of what is as cold as the air, the air
// alone.
func (o *outlook) judgeTemperatures(j *Judgement, h hindrances, turn Turn) {
	r := o.r
	if h.coldAir {
		j.add(VerdictWait, "cold", "limit-cold", benchGround, turn, temp("air", r.Air), temp("least", coldBench))
	}
	if h.coldPanel && (!h.coldAir || r.Panel < r.Air) {
		j.add(VerdictWait, "cold-panel", "limit-cold", benchGround, turn, temp("panel", r.Panel), temp("least", coldBench))
	}
	if h.coldPaint && (!h.coldAir || r.Paint < r.Air) {
		j.add(VerdictWait, "cold-paint", "limit-cold", benchGround, turn, temp("paint", r.Paint), temp("least", coldBench))
	}
	if h.hotAir {
		j.add(VerdictWait, "hot-air", "limit-hot", benchGround, turn, temp("air", r.Air), temp("most", hottest))
	}
	if h.hotPanel && !h.hotAir {
		j.add(VerdictWait, "hot-panel", "limit-hot", benchGround, turn, temp("panel", r.Panel), temp("most", hottest))
	}
}

// limit is the sentence of the first limit that hindrances pass, with its figures.
func (h hindrances) limit() (id string, f Figures) {
	switch {
	case h.nearDew:
		return "limit-dew", Figures{degrees("least", LeastPanelMargin)}
	case h.damp:
		return "limit-damp", Figures{share("most", dampest)}
	case h.coldAir || h.coldPanel || h.coldPaint:
		return "limit-cold", Figures{temp("least", coldBench)}
	case h.hotAir || h.hotPanel:
		return "limit-hot", Figures{temp("most", hottest)}
	case h.slow:
		return "limit-slow", append(mildDay(), share("least", slowest))
	}
	return "limit-wet-paint", nil
}

// What the coats of a job take, where a pot life is to last for all of them.
const (
	panelTime = 3 * time.Minute  // of a coat on a panel
	flashTime = 10 * time.Minute // between two coats on the reference day
)

// coatsGround is what panelTime and flashTime rest on.
var coatsGround = Ground{Basis: Estimate, Source: "source-memory"}

// judgePotLife adds a pot life that is over before the last coat is on; flash is how many
// times as long flash-off takes as on the reference day.
func (j *Judgement) judgePotLife(r *DayRequest, pot *PotLife, flash float64) {
	if !pot.Known || r.Coats == 0 {
		return
	}
	wait := time.Duration(flash * float64(flashTime))
	need := time.Duration(r.Coats*r.Panels)*panelTime + time.Duration(r.Coats-1)*wait
	life := pot.Life
	if life >= need {
		return
	}
	sheet := (time.Duration(float64(r.PotLife)*need.Minutes()/life.Minutes()) + time.Minute).Round(time.Minute)
	j.add(VerdictWait, "pot-life-short", "limit-pot-life", coatsGround, Turn{"turn-portions", Figures{minutes("sheet", sheet), temp("sheetTemp", r.PotLifeAt)}},
		minutes("life", life), CountFigure("coats", r.Coats), CountFigure("panels", r.Panels), minutes("need", need), minutes("wait", wait))
}
