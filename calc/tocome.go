package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// leastWet is the thinnest coat, wet, that closes to a film: judgement.
const leastWet = 0.5 * coat.Mil

// layable is the least and the most dry film that is laid in one coat: what the family's
// coats have, or what was asked for in so many coats; and where the gun's pass is known, what
// a hand lays with ease, if it lays any of that. atMetre is the wet film at a metre a second.
func (r *FilmRequest) layable(atMetre unit.Length) (least, most unit.Length) {
	solids := unit.Length(r.Solids.Value)
	least, most = leastWet*solids, ThickestFilm
	if r.Usual.Coats > 0 {
		least, most = r.Usual.Low, r.Usual.High
	}
	if n := r.Coats.Value; n > 0 {
		each := r.Dry.Value / unit.Length(n)
		least, most = max(leastWet*solids, min(least, each)), max(most, each)
	}
	if atMetre > 0 {
		low, high := atMetre*solids/unit.Length(fastHand), atMetre*solids/unit.Length(slowHand)
		if low = max(low, least); low <= min(high, most) {
			least, most = low, min(high, most)
		}
	}
	return least, most
}

// wanted is the dry film in all that will do: the family's, and what was asked for.
func (r *FilmRequest) wanted() coat.Limits {
	l := r.limits()
	return coat.Limits{Low: min(l.Low, r.Dry.Value), High: max(l.High, r.Dry.Value)}
}

// toCome finds how many coats are to come and the dry film of each: before any is laid, the
// film wanted over its coats. After that, coats that can be laid and whose sum comes nearest
// to the film wanted, within what will do; of as near ones the number nearest to what is left
// of all. Where there are none, or what is laid will do and comes nearer than they, none is to
// come, and OneMore says what another would make.
func (a *FilmAnswer) toCome(r *FilmRequest, laid, atMetre unit.Length) (each unit.Length) {
	if len(a.Laid) == 0 {
		a.Left = a.Coats.Value
		return r.Dry.Value / unit.Length(a.Left)
	}
	least, most := r.layable(atMetre)
	will := r.wanted()
	left := a.Coats.Value - len(a.Laid)
	const rounding = 1e-9
	off, each := unit.Length(math.Inf(1)), r.Dry.Value/unit.Length(a.Coats.Value)
	if laid >= will.Low*(1-rounding) {
		off = unit.Length(math.Abs(float64(laid - r.Dry.Value)))
	}
	for n := 1; n <= MostCoats-len(a.Laid); n++ {
		low, high := laid+unit.Length(n)*least, laid+unit.Length(n)*most
		if low > will.High*(1+rounding) {
			break
		}
		total := min(max(r.Dry.Value, low), high)
		if total < will.Low*(1-rounding) {
			continue
		}
		by := unit.Length(math.Abs(float64(total - r.Dry.Value)))
		same := math.Abs(float64(by-off)) <= float64(r.Dry.Value)*rounding
		if !same && by < off || same && a.Left > 0 && absInt(n-left) < absInt(a.Left-left) {
			a.Left, off, each = n, by, (total-laid)/unit.Length(n)
		}
	}
	if a.Left == 0 {
		a.OneMore = OneMore{least, laid + least}
	}
	return each
}

func absInt(n int) int { return max(n, -n) }
