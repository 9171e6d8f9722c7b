package coat

import (
	"math"

	"boothset/calc/unit"
)

// Mil is a thousandth of an inch, and Micrometre a millionth of a metre: the units of
// films.
const (
	Mil        = unit.Length(unit.MetrePerInch / 1000)
	Micrometre = unit.Length(1e-6)
)

func film(quantity string, l unit.Length) error {
	return within(quantity, float64(l/Micrometre), 0.1, 5000, "um")
}

func solids(s float64) error { return share("volume-solids", s, 0.01, 1) }

func transfer(te float64) error { return share("transfer-efficiency", te, 0.01, 1) }

// Part is a component of a mix: how much of it, in any one unit of volume, and its
// own volume solids.
type Part struct{ Amount, Solids float64 }

// ReadySolids is the volume solids of the ready mix: base, hardener and thinner
// together (a thinner has none). Films must be worked from this, not from the tin's.
// Amounts from 0 to 1e6 with a sum above 0, solids from 0 to 1; else an error.
func ReadySolids(parts []Part) (float64, error) {
	var sum, solid float64
	for _, p := range parts {
		if err := first(within("part-amount", p.Amount, 0, 1e6, "parts"), share("part-solids", p.Solids, 0, 1)); err != nil {
			return 0, err
		}
		sum += p.Amount
		solid += p.Amount * p.Solids
	}
	if err := within("mix-amount", sum, 1e-3, 1e7, "parts"); err != nil {
		return 0, err
	}
	return min(solid/sum, 1), nil
}

// WetFromDry is the wet film that dries to dry: dry (1 + thinner)/solids, with solids
// the volume solids before thinning (0.01 to 1) and thinner the volume added to one
// volume of it (0 to 2).
func WetFromDry(dry unit.Length, vs, thinner float64) (unit.Length, error) {
	if err := first(film("dry-film", dry), solids(vs), share("thinner", thinner, 0, 2)); err != nil {
		return 0, err
	}
	return dry * unit.Length((1+thinner)/vs), nil
}

// DryFromWet is the dry film that a wet one leaves, the inverse of WetFromDry. A
// comb's tooth gives the wet film: see CombRange.
func DryFromWet(wet unit.Length, vs, thinner float64) (unit.Length, error) {
	if err := first(film("wet-film", wet), solids(vs), share("thinner", thinner, 0, 2)); err != nil {
		return 0, err
	}
	return wet * unit.Length(vs/(1+thinner)), nil
}

// CombRange is the dry film to expect from a wet-film comb: between its last wetted
// tooth and the next, dry one, with the volume solids of the ready mix. On fast and
// waterborne coats a comb reads low within seconds.
func CombRange(wetted, next unit.Length, ready float64) (low, high unit.Length, err error) {
	if err := within("next-tooth", float64(next/Micrometre), float64(wetted/Micrometre), 5000, "um"); err != nil {
		return 0, 0, err
	}
	if low, err = DryFromWet(wetted, ready, 0); err != nil {
		return 0, 0, err
	}
	high, err = DryFromWet(next, ready, 0)
	return low, high, err
}

// Coverage is the area that a volume of ready mix gives the dry film on: volume x
// solids x transfer / film. One US gallon of solids covers 1604.17 ft2 at a mil, a
// litre a square metre at 1000 um.
func Coverage(v unit.Volume, dry unit.Length, ready, te float64) (unit.Area, error) {
	if err := first(within("volume", v.Litres(), 0, 1e4, "L"), film("dry-film", dry), solids(ready), transfer(te)); err != nil {
		return 0, err
	}
	return unit.Area(float64(v) * ready * te / float64(dry)), nil
}

// FilmState is where a film is against its limits.
type FilmState uint8

// The states, from the thinnest on.
const (
	Under FilmState = iota
	Inside
	Over
)

// The most that old and new coats together should come to. Source: trade pages on
// film thickness for the 12 mil; the warning at 10 mil is judgement.
const (
	WholeFilm  = 12 * Mil
	WholeWarns = 10 * Mil
)

// Limits are the dry film that a family of coats wants in all.
type Limits struct{ Low, High unit.Length }

// Running is the dry film so far: Total of the coats, its State against the
// limits, and Room to the upper one (below zero where it is passed). Whole adds what
// was there before: Near says that it is past WholeWarns, WholeOver past WholeFilm, and
// never both.
type Running struct {
	Total, Room, Whole unit.Length
	State              FilmState
	Near, WholeOver    bool
}

// RunningTotal adds up coats, each a dry film, over what was there before (0 for bare).
func RunningTotal(coats []unit.Length, before unit.Length, limits Limits) (Running, error) {
	if err := first(
		within("film-before", float64(before/Micrometre), 0, 1e4, "um"),
		film("lower-film-limit", limits.Low),
		within("upper-film-limit", float64(limits.High/Micrometre), float64(limits.Low/Micrometre), 5000, "um"),
	); err != nil {
		return Running{}, err
	}
	var r Running
	for _, c := range coats {
		if err := film("coat-film", c); err != nil {
			return Running{}, err
		}
		r.Total += c
	}
	r.Room, r.Whole = limits.High-r.Total, before+r.Total
	// A film summed coat by coat may pass its limit by rounding alone.
	const rounding = 1e-9
	switch {
	case r.Total < limits.Low*(1-rounding):
		r.State = Under
	case r.Total > limits.High*(1+rounding):
		r.State = Over
	default:
		r.State = Inside
	}
	r.WholeOver = r.Whole > WholeFilm*(1+rounding)
	r.Near = !r.WholeOver && r.Whole > WholeWarns*(1+rounding)
	return r, nil
}

// CoatsFor is how many coats a total dry film takes, none over most a coat, and the
// film of each.
func CoatsFor(total, most unit.Length) (n int, each unit.Length, err error) {
	if err := first(film("dry-film", total), film("most-a-coat", most)); err != nil {
		return 0, 0, err
	}
	const rounding = 1e-9
	n = max(1, int(math.Ceil(float64(total/most)*(1-rounding))))
	return n, total / unit.Length(n), nil
}
