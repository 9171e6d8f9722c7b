package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// ThinRequest asks how to bring a mix to its sheet's viscosity.
type ThinRequest struct {
	CoatID, Coat string // as the catalogue and as sentences name it
	Waterborne   bool
	Hardener     Hardener
	Reading      Reading
	// Second is another reading of the same mix in the same cup, used where HasSecond.
	Second    Reading
	HasSecond bool
	Sheet     Stated[SheetSeconds]
	// MostThinner is the most that the coat takes, by volume of the mix as it stands, 0 to 1.
	MostThinner Stated[float64]
	Warmest     Stated[unit.Temp] // that the mix may be made, -10 to 60 C
	VOC         VOC
}

// Reading is a cup's time at a temperature.
type Reading struct {
	Cup     coat.Cup
	Seconds float64   // 1 to 1000
	At      unit.Temp // of the material, -10 to 60 C
}

// SheetSeconds is what a sheet asks for: a range in a cup at a temperature, and what to
// aim at within it.
type SheetSeconds struct {
	Cup            coat.Cup
	Low, Aim, High float64
	At             unit.Temp
}

// Remedy is what a mix wants.
type Remedy string

// The remedies: spray it as it is; let it cool; warm it; add thinner; both, warming first;
// add mix that was not thinned; and none within what is allowed.
const (
	RemedyNone      Remedy = "as-it-is"
	RemedyCool      Remedy = "cool"
	RemedyWarm      Remedy = "warm"
	RemedyThin      Remedy = "thin"
	RemedyWarmThin  Remedy = "warm-and-thin"
	RemedyUnthinned Remedy = "add-unthinned"
	RemedyCannot    Remedy = "cannot"
)

// ThinAnswer is the answer to a ThinRequest. Seconds are all in the reading's cup.
type ThinAnswer struct {
	Remedy Remedy
	Nu     coat.Viscosity // as read
	// Corrected is the reading at the sheet's temperature.
	Corrected coat.Corrected
	Slope     coat.SlopeBand
	Wanted    Wanted
	OnlyCold  bool // the mix is right, and wants nothing but warming
	// Course is the remedy; where there is none, the paint's own temperature and nothing
	// added, and of RemedyCannot the most that is allowed.
	Course
	// Instead is another course that does it as well, warming less and thinning more; its Add
	// is 0 where there is no such choice.
	Instead  Course
	VOC      VOCAnswer // after the thinner of the course; of the other course where only that has any
	About    bool      // rests on an equation outside its published range
	Reasons  []Reason
	Cautions []Caution
}

// Course is what is done to a mix, and what each step by itself brings it to: first it is
// brought to a temperature, the paint's own where that is left, then thinner is added, 0
// where none is.
type Course struct {
	To      unit.Temp
	Warmed  Read    // at To, before thinner
	Add     float64 // by volume of the mix as it stands, in percent or tenths of one
	Reached Read    // at To, after thinner
}

// Wanted is what the sheet asks for.
type Wanted struct{ Low, Aim, High Read }

// Read is a viscosity with what the reading's cup shows for it.
type Read struct {
	Nu      unit.Kinematic
	Seconds float64
}

// MostThinner is the most thinner, by volume of the mix, that a request may allow.
const MostThinner = 1.0

// Problems is everything wrong with the request, but for what only its sums find.
func (r *ThinRequest) Problems() []Problem {
	var p problems
	p.within("paint", float64(r.Reading.At), &AirTempBound)
	if r.HasSecond {
		p.within("second-temp", float64(r.Second.At), &AirTempBound)
	}
	p.within("sheet-temp", float64(r.Sheet.Value.At), &AirTempBound)
	p.within("warm-limit", float64(r.Warmest.Value), &AirTempBound)
	p.within("max-thinner", r.MostThinner.Value, &MostThinnerBound)
	r.VOC.problems(&p)
	if s := &r.Sheet.Value; !(s.Low <= s.Aim && s.Aim <= s.High) {
		p.add("sheet-seconds", "want-lower-first")
	}
	return p
}

// SolveThin works a request. It fails, with a *Problem, where Problems finds any or a cup
// cannot tell the viscosity.
func SolveThin(r *ThinRequest) (a ThinAnswer, err error) {
	if p := r.Problems(); len(p) > 0 {
		return a, &p[0]
	}
	cup := r.Reading.Cup
	if a.Nu, err = cup.Viscosity(r.Reading.Seconds); err != nil {
		return a, problemAt("seconds", err)
	}
	a.About = a.Nu.About
	if err := a.want(r); err != nil {
		return a, err
	}
	if err := a.takeSlope(r); err != nil {
		return a, err
	}
	if a.Corrected, err = coat.CorrectReading(cup, r.Reading.Seconds, r.Reading.At, r.Sheet.Value.At, a.Slope); err != nil {
		return a, problemAt("seconds", err).because("brought-to-sheet", temp("at", r.Sheet.Value.At))
	}
	a.About = a.About || a.Corrected.About
	if err := a.remedy(r); err != nil {
		return a, err
	}
	if a.VOC, err = r.VOC.with(a.added()); err != nil {
		return a, err
	}
	a.explain(r)
	a.warn(r)
	return a, nil
}

// Stopped reports whether the mix cannot be brought to its viscosity within what is
// allowed.
func (a *ThinAnswer) Stopped() bool { return stopped(a.Cautions) }

// ReadAt is what the reading's cup shows for the mix at a temperature, -10 to 60 C, with
// thinner added by a share of its volume, 0 to MostThinner: the reading as the course is
// worked, by the typical slope. It fails, with a *Problem, where the cup cannot tell it.
func (a *ThinAnswer) ReadAt(r *ThinRequest, at unit.Temp, add float64) (Read, error) {
	mix := *a // what is read here marks no figure of the answer
	c, err := mix.course(r, at, add)
	return c.Reached, err
}

// added is the thinner that is advised: the course's, or the other one's.
func (a *ThinAnswer) added() float64 {
	if a.Add > 0 {
		return a.Add
	}
	return a.Instead.Add
}

// want reads the sheet's seconds as viscosities, and these in the reading's cup.
func (a *ThinAnswer) want(r *ThinRequest) error {
	s := &r.Sheet.Value
	for _, w := range []struct {
		to      *Read
		seconds float64
	}{{&a.Wanted.Low, s.Low}, {&a.Wanted.Aim, s.Aim}, {&a.Wanted.High, s.High}} {
		v, err := s.Cup.Viscosity(w.seconds)
		if err != nil {
			return problemAt("sheet-seconds", err)
		}
		w.to.Nu = v.Nu
		if s.Cup.ID == r.Reading.Cup.ID {
			w.to.Seconds = w.seconds // whatever its equation says of them
			continue
		}
		a.About = a.About || v.About
		if err := a.read(w.to, r); err != nil {
			return err
		}
	}
	return nil
}

// read fills in what the reading's cup shows for a viscosity.
func (a *ThinAnswer) read(to *Read, r *ThinRequest) error {
	t, err := r.Reading.Cup.Seconds(to.Nu)
	if err != nil {
		return problemAt("cup", err).because("cup-cannot-tell")
	}
	to.Seconds = t.Seconds
	a.About = a.About || t.About
	return nil
}

// takeSlope takes the slope from two readings, or the estimate where there is one.
func (a *ThinAnswer) takeSlope(r *ThinRequest) error {
	if !r.HasSecond {
		a.Slope = coat.EstimatedSlope()
		return nil
	}
	v, err := r.Second.Cup.Viscosity(r.Second.Seconds)
	if err != nil {
		return problemAt("second-seconds", err)
	}
	k, err := coat.FitSlope(a.Nu.Nu, r.Reading.At, v.Nu, r.Second.At)
	if err != nil {
		return problemAt("second-seconds", err)
	}
	a.Slope = coat.FittedSlope(k)
	return nil
}
