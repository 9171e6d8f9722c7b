package calc

import (
	"fmt"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Stated is a value with what it rests on.
type Stated[T any] struct {
	Value T
	Standing
}

// rough reports whether figures that follow from it are to be told as "about".
func (s Standing) rough() bool { return s.Basis == Estimate || s.Basis == CommonPractice }

// Laying is a coat to be laid: what its film and its mix both start from.
type Laying struct {
	CoatID, Coat string // as the catalogue and as sentences name it
	GunID, Gun   string // empty where no gun was named
	Waterborne   bool
	Isocyanate   bool

	Solids Stated[float64]     // by volume, of the ready mix, 0.01 to 1
	Dry    Stated[unit.Length] // over all coats, 2 to 2000 um
	Coats  Stated[int]         // 1 to 20; 0 is the family's own, or as many as the film takes
	Before unit.Length         // dry film already there, 0 to 10 mm
	Wants  FilmWants
	Held   Holding
}

// FilmWants is the dry film that a family of coats wants.
type FilmWants struct {
	Known             bool
	Low, High         unit.Length // over all coats
	Most              unit.Length // past which it fails; 0 where no figure is known
	CoatLow, CoatHigh unit.Length // of one coat
	Coats             int         // usual
	Standing
}

// Holding is how much of the coating lands, by the gun and how it is held.
type Holding struct {
	Known    bool
	Class    Stated[coat.GunTransfer] // what the gun's class transfers, and where
	Typed    bool                     // Class is this very gun, as typed
	Pressure unit.Gauge               // as set, 1 to 150 psi
	Distance unit.Length              // as held, 2 to 30 in
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
func (l *Laying) coats() (Stated[int], error) {
	w := &l.Wants
	if l.Coats.Value > 0 {
		return l.Coats, nil
	}
	const rounding = 1e-9
	each := l.Dry.Value / unit.Length(w.Coats)
	if each >= w.CoatLow*(1-rounding) && each <= w.CoatHigh*(1+rounding) {
		return Stated[int]{w.Coats, w.Standing}, nil
	}
	n, _, err := coat.CoatsFor(l.Dry.Value, w.CoatHigh)
	return Stated[int]{n, Standing{Computed, "the film over the most that one coat may have; " + w.Source}}, err
}

// limits is the least and the most dry film in all; without any known they are as wide
// as films are.
func (l *Laying) limits() coat.Limits {
	if !l.Wants.Known {
		return coat.Limits{Low: thinnestFilm, High: thickestFilm}
	}
	return coat.Limits{Low: l.Wants.Low, High: l.Wants.High}
}

// Bounds of what a laying may hold. Wider than any job; they keep the sums sane.
const (
	thinnestFilm = 2 * coat.Micrometre
	thickestFilm = 2000 * coat.Micrometre
	thickestOld  = 10000 * coat.Micrometre
	mostCoats    = 20
)

// problems gathers what is wrong with a request.
type problems []Problem

// within adds a problem where v is not within low and high, all printed by show.
func (p *problems) within(field string, v, low, high float64, show func(float64) string) {
	if !(v >= low && v <= high) {
		*p = append(*p, Problem{field, fmt.Sprintf("%s is outside %s to %s", show(v), show(low), show(high))})
	}
}

func showFilm(v float64) string {
	return fmt.Sprintf("%.3g mil (%.3g um)", v/unit.MetrePerMil, v*1e6)
}
func showShare(v float64) string { return fmt.Sprintf("%.3g %%", v*100) }
func showCount(v float64) string { return fmt.Sprintf("%.0f", v) }
func showInches(v float64) string {
	return fmt.Sprintf("%.3g in (%.3g mm)", unit.Length(v).Inches(), v*1e3)
}
func showFeet(v float64) string   { return fmt.Sprintf("%.3g ft (%.3g m)", unit.Length(v).Feet(), v) }
func showGauge(v float64) string  { return fmt.Sprintf("%.3g psi (%.3g bar)", unit.Gauge(v).PSI(), unit.Gauge(v).Bar()) }
func showFluid(v float64) string  { return fmt.Sprintf("%.3g mL/min", coat.FluidRate(v).MLPerMin()) }
func showLitres(v float64) string { return fmt.Sprintf("%.3g L (%.3g fl oz)", unit.Volume(v).Litres(), unit.Volume(v).USGallons()*unit.OuncePerUSGal) }
func showSpan(v float64) string   { return fmt.Sprintf("%.3g s", v) }

func (l *Laying) problems() (p problems) {
	p.within("solids", l.Solids.Value, 0.01, 1, showShare)
	p.within("film", float64(l.Dry.Value), float64(thinnestFilm), float64(thickestFilm), showFilm)
	if l.Coats.Value != 0 || l.Wants.Coats == 0 {
		p.within("coats", float64(l.Coats.Value), 1, mostCoats, showCount)
	}
	p.within("before", float64(l.Before), 0, float64(thickestOld), showFilm)
	if most := l.Wants.Most; most != 0 {
		p.within("film-limit", float64(most), float64(thinnestFilm), float64(thickestFilm), showFilm)
	}
	if h := &l.Held; h.Known {
		p.within("transfer", h.Class.Value.Transfer, 0.1, 0.9, showShare)
		p.within("pressure", float64(h.Pressure), 1*unit.PascalPerPSI, 150*unit.PascalPerPSI, showGauge)
		p.within("distance", float64(h.Distance), 2*unit.MetrePerInch, 30*unit.MetrePerInch, showInches)
	}
	return p
}
