package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// How far a cup's reading may be off: what two people with a stopwatch differ by, which is
// judgement; or, where that is more, two standard deviations of a laboratory's own readings of
// paints (ASTM D4212, 13.1.1, of Zahn cups, seen as an excerpt: 3.7 %).
const (
	ReadingSeconds = 1.0
	readingShare   = 2 * 0.037
)

// readingError is how far a reading of so many seconds may be off.
func readingError(seconds float64) float64 { return max(ReadingSeconds, readingShare*seconds) }

// sameViscosity is one part in a billion, so that a figure that was worked back and forth
// still equals the one it came from.
const sameViscosity = 1e-9

// remedy finds what brings the mix into the sheet's range, to its middle where that can be
// reached, by steps that each change the reading by more than it may be off.
func (a *ThinAnswer) remedy(r *ThinRequest) (err error) {
	w := &a.Wanted
	if a.Course, err = a.course(r, r.Reading.At, 0); err != nil {
		return err
	}
	now := a.Reached
	switch {
	case a.Corrected.High < w.Low.Seconds-readingError(w.Low.Seconds): // even with the slope that says least
		a.Remedy = RemedyUnthinned
	case a.within(now):
		a.Remedy = RemedyNone
	case now.Nu < w.Low.Nu:
		return a.cool(r)
	default:
		return a.thicker(r)
	}
	return nil
}

// course works what a temperature and thinner make of the mix, with the typical slope.
func (a *ThinAnswer) course(r *ThinRequest, to unit.Temp, add float64) (c Course, err error) {
	c = Course{To: to, Add: add}
	if c.Warmed.Nu, err = coat.AtTemperature(a.Nu.Nu, r.Reading.At, to, a.Slope.Typical); err != nil {
		return c, problemAt("paint", err)
	}
	if c.Reached.Nu, err = coat.Thinned(c.Warmed.Nu, r.thinner(), add); err != nil {
		return c, problemAt("sheet-seconds", err)
	}
	if err := a.read(&c.Warmed, r); err != nil {
		return c, err
	}
	return c, a.read(&c.Reached, r)
}

// thinner is the viscosity of what the mix is thinned with.
func (r *ThinRequest) thinner() unit.Kinematic {
	if r.Waterborne {
		return coat.WaterViscosity
	}
	return coat.SolventViscosity
}

// within reports whether a viscosity is in the sheet's range.
func (a *ThinAnswer) within(x Read) bool {
	return x.Nu <= a.Wanted.High.Nu*(1+sameViscosity) && x.Nu >= a.Wanted.Low.Nu*(1-sameViscosity)
}

// tells reports whether two readings are farther apart than either may be off.
func tells(from, to Read) bool {
	return math.Abs(from.Seconds-to.Seconds) >= readingError(min(from.Seconds, to.Seconds))
}

// bearsOut reports whether a course ends in the sheet's range, and each of its steps by
// itself is one that the cup can tell.
func (a *ThinAnswer) bearsOut(r *ThinRequest, c Course) bool {
	warms, thins := c.To != r.Reading.At, c.Add > 0
	now := Read{a.Nu.Nu, r.Reading.Seconds}
	return a.within(c.Reached) && (warms || thins) &&
		(!warms || tells(now, c.Warmed)) && (!thins || tells(c.Warmed, c.Reached))
}

// cool lets a mix that is thin because it is warm cool towards the sheet's temperature, and no
// farther: what is too thin there has too much thinner in it.
func (a *ThinAnswer) cool(r *ThinRequest) error {
	now := a.Reached
	to := max(r.Sheet.Value.At, a.Slope.Typical.Reaches(now.Nu, r.Reading.At, a.Wanted.Aim.Nu))
	c, err := a.course(r, min(to, r.Reading.At), 0)
	switch {
	case err != nil:
		return err
	case a.bearsOut(r, c):
		a.Remedy, a.Course = RemedyCool, c
	case !tells(now, a.Wanted.Low):
		a.Remedy = RemedyNone
	default:
		a.Remedy = RemedyUnthinned
	}
	return nil
}

// thicker brings a mix that is too thick into the range. A cold one is first brought to the
// sheet's temperature, which may be all it wants: thinner for cold is thinner too much once
// it is warm. What is still too thick is warmed as far as it may be, since that costs neither
// film nor solids, and thinned where that is not enough.
func (a *ThinAnswer) thicker(r *ThinRequest) error {
	at, k, aim := r.Reading.At, a.Slope.Typical, a.Wanted.Aim
	now, warmest := a.Reached, max(at, r.Warmest.Value)
	base := max(at, min(r.Sheet.Value.At, r.Warmest.Value))
	onlyWarm, err := a.course(r, base, 0)
	if err != nil {
		return err
	}
	if a.bearsOut(r, onlyWarm) && (!tells(onlyWarm.Reached, aim) || base == warmest) {
		a.Remedy, a.OnlyCold, a.Course = RemedyWarm, base == r.Sheet.Value.At, onlyWarm
		return nil
	}
	// Courses in the order that they are wanted: warmed as far as brings it to the middle or
	// as may be; as far, and thinned; less far, so that the thinner's step can be told; to the
	// sheet's temperature, and thinned; thinned as it is.
	farther := min(warmest, k.Reaches(now.Nu, at, aim.Nu))
	told := Read{Seconds: aim.Seconds + readingError(aim.Seconds)*(1+sameViscosity)}
	thick, err := r.Reading.Cup.Viscosity(told.Seconds)
	if err != nil {
		return problemAt("sheet-seconds", err)
	}
	lesser := max(at, min(warmest, k.Reaches(now.Nu, at, thick.Nu)))
	all := []struct {
		to    unit.Temp
		thins bool
	}{{farther, false}, {warmest, true}, {lesser, true}, {base, true}, {at, true}}
	for _, x := range all {
		c, err := a.toward(r, x.to, x.thins)
		if err != nil {
			return err
		}
		if !a.bearsOut(r, c) {
			continue
		}
		a.Course = c
		switch {
		case c.Add == 0:
			a.Remedy = RemedyWarm
			return a.instead(r, base)
		case c.To > at:
			a.Remedy = RemedyWarmThin
		default:
			a.Remedy = RemedyThin
		}
		return nil
	}
	if !tells(now, a.Wanted.High) {
		a.Remedy = RemedyNone
		return nil
	}
	a.Remedy = RemedyCannot
	a.Course, err = a.toward(r, warmest, true)
	if err == nil && a.within(a.Reached) { // by a step that no cup can tell
		a.Course, err = a.course(r, warmest, 0)
	}
	return err
}

// toward brings the mix to a temperature, and where it is to be thinned to the middle of the
// range, as near as the thinner that it takes comes: in whole percent, or in tenths where the
// range is too narrow for those.
func (a *ThinAnswer) toward(r *ThinRequest, to unit.Temp, thins bool) (c Course, err error) {
	if c, err = a.course(r, to, 0); err != nil || !thins {
		return c, err
	}
	add, err := coat.ThinnerFor(c.Warmed.Nu, a.Wanted.Aim.Nu, r.thinner())
	if err != nil {
		return c, problemAt("sheet-seconds", err)
	}
	const rounding = 1e-9
	for _, parts := range []float64{100, 1000} {
		part := min(math.Round(parts*add), math.Floor(parts*r.MostThinner.Value+rounding)) / parts
		if c, err = a.course(r, to, part); err != nil || a.within(c.Reached) {
			break
		}
	}
	return c, err
}

// instead finds the thinner that does it in place of warming further than a temperature.
func (a *ThinAnswer) instead(r *ThinRequest, base unit.Temp) error {
	c, err := a.toward(r, base, true)
	if err == nil && c.Add > 0 && a.bearsOut(r, c) {
		a.Instead = c
	}
	return err
}
