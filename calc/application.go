package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Stated is a value with what it rests on.
type Stated[T any] struct {
	Value T
	Ground
}

// rough reports whether figures that follow from it are given as "about".
func (s Ground) rough() bool { return s.Basis == Estimate || s.Basis == CommonPractice }

// Application is how a coat is applied: what its film and its mix both start from.
type Application struct {
	CoatID, Coat string // as the catalogue and as sentences name it
	GunID, Gun   string // empty where no gun was given
	Waterborne   bool
	Hardener     Hardener

	Solids Stated[float64]     // by volume, of the ready mix, 0.01 to 1
	Dry    Stated[unit.Length] // over all coats, 2 to 2000 um
	Coats  Stated[int]         // 1 to 20; 0 is the family's own, or as many as the film takes
	Before unit.Length         // dry film already there, 0 to 10 mm
	Wants  FilmWants
	Usual  UsualCoats
	Held   Holding
}

// FilmWants is the dry film that a family of coats wants.
type FilmWants struct {
	Known     bool
	Low, High unit.Length // over all coats
	Most      unit.Length // past which it fails; 0 where no figure is known
	Ground
}

// UsualCoats is how a family is laid; Coats is 0 where that is not known.
type UsualCoats struct {
	Coats     int
	Low, High unit.Length // dry, of one
	Ground
}

// Holding is how much of the coating lands, by the gun and how it is held.
type Holding struct {
	Known    bool
	Class    Stated[coat.GunTransfer] // what the gun's class transfers, and where
	Typed    bool                     // Class is this very gun, as typed
	Pressure unit.Gauge               // as set, 1 to 150 psi
	Distance unit.Length              // as held, 2 to 30 in
	// Hand is how fast a gun of the class is usually moved; 0 where that is not known.
	Hand Stated[unit.Speed]
	// Choked is what is left of the transfer with the inlet valve choked, 0.3 to 1.
	Choked float64
}

// at is what lands with the gun held at a distance.
func (h *Holding) at(d unit.Length) (coat.Transfer, error) {
	t, err := h.Class.Value.At(h.Pressure, d)
	if h.Typed && d == h.Distance {
		t.Low, t.High = t.Value, t.Value
	}
	return t, err
}

// coats is how many coats are laid: as asked for, else the family's own number, else
// the fewest that keep each under what a coat may have.
func (l *Application) coats() (Stated[int], error) {
	u := &l.Usual
	if l.Coats.Value > 0 {
		return l.Coats, nil
	}
	const rounding = 1e-9
	each := l.Dry.Value / unit.Length(u.Coats)
	if each >= u.Low*(1-rounding) && each <= u.High*(1+rounding) {
		return Stated[int]{u.Coats, u.Ground}, nil
	}
	n, _, err := coat.CoatsFor(l.Dry.Value, u.High)
	return Stated[int]{n, Ground{Basis: Computed, Source: "source-coats-for"}}, err
}

// limits is the least and the most dry film in all; without any known they are as wide
// as films are.
func (l *Application) limits() coat.Limits {
	if !l.Wants.Known {
		return coat.Limits{Low: ThinnestFilm, High: ThickestFilm}
	}
	return coat.Limits{Low: l.Wants.Low, High: l.Wants.High}
}

// Bounds of what an application may hold. Wider than any job; they keep the sums sane.
const (
	ThinnestFilm = 2 * coat.Micrometre // dry, over all coats
	ThickestFilm = 2000 * coat.Micrometre
	MostCoats    = 20
	LeastSolids  = 0.01
	MostSolids   = 1.0
	NarrowestFan = unit.Length(10e-3)
	WidestFan    = unit.Length(600e-3)
	MostOverlap  = 0.9
	farthestHold = unit.Length(30 * unit.MetrePerInch)
)

func (l *Application) problems() (p problems) {
	p.within("solids", l.Solids.Value, &SolidsBound)
	p.within("film", float64(l.Dry.Value), &FilmBound)
	if l.Coats.Value != 0 || l.Usual.Coats == 0 {
		p.within("coats", float64(l.Coats.Value), &CoatsBound)
	}
	p.within("before", float64(l.Before), &BeforeBound)
	if most := l.Wants.Most; most != 0 {
		p.within("film-limit", float64(most), &FilmBound)
	}
	if h := &l.Held; h.Known {
		p.within("transfer", h.Class.Value.Transfer, &TransferBound)
		p.within("pressure", float64(h.Pressure), &InletBound)
		p.within("distance", float64(h.Distance), &DistanceBound)
	}
	return p
}

// explain gives the reasons that film and mix share: the film and its coats, the solids
// and what lands.
func (l *Application) explain(coats Stated[int], landed coat.Transfer, why *reasons) {
	w := &l.Wants
	each := l.Dry.Value / unit.Length(coats.Value)
	if w.Known {
		why.add("film", "film-wants", w.Ground, TextFigure("coat", l.Coat), filmFigure("low", w.Low), filmFigure("high", w.High))
	}
	if l.Dry.Ground != w.Ground {
		why.add("film", "film-typed", l.Dry.Ground, filmFigure("dry", l.Dry.Value))
	}
	if coats.Value > 1 {
		why.add("film", "film-coats", coats.Ground, CountFigure("coats", coats.Value), filmFigure("each", each))
	}
	why.add("solids", "film-solids", l.Solids.Ground, share("solids", l.Solids.Value), filmFigure("dry", each), filmFigure("wet", each/unit.Length(l.Solids.Value)))
	switch h := &l.Held; {
	case landed.Value == 0:
	case h.Typed:
		why.add("transfer", "transfer-typed", h.Class.Ground, share("transfer", landed.Value))
	case h.asClass():
		why.add("transfer", "transfer-usual", h.Class.Ground, TextFigure("gun", l.Gun), share("transfer", landed.Value), share("low", landed.Low), share("high", landed.High))
	default:
		c := &h.Class
		why.add("transfer", "transfer-class", c.Ground, TextFigure("gun", l.Gun), share("class", c.Value.Transfer), gauge("classPressure", c.Value.Pressure),
			near("classDistance", c.Value.Distance), gauge("pressure", h.Pressure), near("distance", h.Distance),
			share("transfer", landed.Value), share("low", landed.Low), share("high", landed.High))
	}
}

// asClass reports whether the gun is held as its class's share was measured, as near as
// settings are shown: half of 0.1 psi or 0.01 bar, half of 0.1 in or 1 mm.
func (h *Holding) asClass() bool {
	c := &h.Class.Value
	return math.Abs(float64(h.Pressure-c.Pressure)) <= 500*(1+1e-9) && math.Abs(float64(h.Distance-c.Distance)) <= 0.05*unit.MetrePerInch*(1+1e-9)
}

// warnFilm gives the cautions of a film against its limits, the gravest first.
func (l *Application) warnFilm(run *coat.Running, each unit.Length, to *cautions) {
	w := &l.Wants
	const rounding = 1e-9
	switch {
	case w.Most > 0 && run.Total > w.Most*(1+rounding):
		to.add(Stop, "film-past-most", filmFigure("total", run.Total), filmFigure("most", w.Most), filmFigure("high", w.High))
	case run.State == coat.Over:
		to.add(Warn, "film-over", TextFigure("coat", l.Coat), filmFigure("total", run.Total), filmFigure("high", w.High))
	case run.State == coat.Under && run.Total > 0:
		to.add(Warn, "film-under", TextFigure("coat", l.Coat), filmFigure("total", run.Total), filmFigure("low", w.Low))
	}
	switch {
	case run.WholeOver:
		to.add(Stop, "film-whole-over", filmFigure("whole", run.Whole), filmFigure("before", l.Before), filmFigure("most", coat.WholeFilm))
	case run.Near:
		to.add(Warn, "film-whole-near", filmFigure("whole", run.Whole), filmFigure("before", l.Before), filmFigure("most", coat.WholeFilm))
	}
	if u := &l.Usual; u.Coats > 0 && each > u.High*(1+rounding) {
		n, _, err := coat.CoatsFor(l.Dry.Value, u.High)
		if err == nil {
			to.add(Warn, "film-heavy-coat", filmFigure("each", each), filmFigure("most", u.High), CountFigure("coats", n))
		}
	}
}
