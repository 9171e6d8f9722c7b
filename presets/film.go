package presets

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// The fields of film alone.
const (
	FieldCupVolume = "cup-volume"
	FieldCupTime   = "cup-time"
	FieldTip       = "tip"
	FieldViscosity = "viscosity"
	FieldFan       = "fan"
	FieldOverlap   = "overlap"
	FieldGunSpeed  = "gun-speed"
	FieldHeight    = "height"
	FieldWet       = "wet"
)

// FilmFields is what the film's question takes.
func FilmFields() []Field {
	return append(layingFields(),
		Field{FieldFluidRate, "usage-fluid-rate", false},
		Field{FieldCupVolume, "usage-cup-volume", false},
		Field{FieldCupTime, "usage-cup-time", false},
		Field{FieldTip, "usage-tip", false},
		Field{FieldViscosity, "usage-viscosity", false},
		Field{FieldCup, "usage-film-cup", false},
		Field{FieldSeconds, "usage-seconds", false},
		Field{FieldFan, "usage-fan", false},
		Field{FieldOverlap, "usage-overlap", false},
		Field{FieldGunSpeed, "usage-gun-speed", false},
		Field{FieldHeight, "usage-height", false},
		Field{FieldWet, "usage-wet", true},
	)
}

// Film turns what was typed into a request for the film. Bare numbers are read in the
// system's units. Every answer that will not do comes as a *FieldError; the request is
// complete only where there is none.
func (c *Catalogue) Film(s Sheet, sys unit.System) (calc.FilmRequest, []*FieldError) {
	v := newResolver(c, sys)
	r := calc.FilmRequest{Application: v.laying(s)}
	v.fluid(s, &r)
	if e, ok := c.entries.Coat.get(r.CoatID); ok && e.Lay != nil {
		r.Fan = calc.Stated[unit.Length]{Value: e.Lay.Fan.v, Ground: e.Lay.standing()}
		r.Overlap = calc.Stated[float64]{Value: e.Lay.Overlap.v, Ground: e.Lay.standing()}
	}
	moving := r.Fluid.From != calc.FluidUnknown
	if t := s[FieldFan]; t != "" || moving && r.Fan.Value == 0 {
		r.Fan = calc.Stated[unit.Length]{Value: positive(&v, FieldFan, t, unit.ParseLength, v.sys.SmallUnit()), Ground: calc.AsTyped}
	}
	if t := s[FieldOverlap]; t != "" || moving && r.Overlap.Basis == "" {
		r.Overlap = calc.Stated[float64]{Value: read(&v, FieldOverlap, t, "", parsePercent, struct{}{}), Ground: calc.AsTyped}
	}
	if t := s[FieldGunSpeed]; t != "" {
		r.GunSpeed = v.gunSpeed(t)
	}
	if t := s[FieldHeight]; t != "" {
		r.Height = positive(&v, FieldHeight, t, unit.ParseLength, v.sys.LongUnit())
	}
	for _, t := range s.list(FieldWet) {
		r.Combs = append(r.Combs, v.comb(t))
	}
	v.needed(s, moving)
	v.judged(s, r.Problems)
	return r, v.faults
}

// needed says what is missing beside what was typed, so that nothing typed is left
// unread.
func (v *resolver) needed(s Sheet, moving bool) {
	beside := func(missing, want string, fields ...string) {
		for _, field := range fields {
			if s[field] != "" {
				v.fault(missing, "", want, text("field", field), v.names(v.c.entries.Gun.ids()))
				return
			}
		}
	}
	if !moving {
		beside(FieldFluidRate, "needed-fluid-rate", FieldGunSpeed, FieldHeight, FieldFan, FieldOverlap)
	}
	if s[FieldGun] == "" {
		beside(FieldGun, "needed-gun-beside", FieldFluidRate, FieldCupVolume, FieldCupTime, FieldTip, FieldTransfer, FieldPressure, FieldDistance)
	}
}

// fluid reads how the fluid rate is known: given before timed, timed before estimated.
func (v *resolver) fluid(s Sheet, r *calc.FilmRequest) {
	f := &r.Fluid
	has := func(field string) bool { return s[field] != "" }
	switch {
	case has(FieldFluidRate):
		f.From = calc.FluidGiven
		f.Rate = v.fluidRate(s[FieldFluidRate])
	case has(FieldCupVolume) || has(FieldCupTime):
		f.From = calc.FluidTimed
		f.CupVolume = read(v, FieldCupVolume, s[FieldCupVolume], "", unit.ParseVolume, v.cupUnit())
		f.CupTime = read(v, FieldCupTime, s[FieldCupTime], "", unit.ParseSeconds, unit.InSeconds)
	case has(FieldTip):
		f.From = calc.FluidTip
		f.Tip = read(v, FieldTip, s[FieldTip], "", unit.ParseLength, unit.InMM)
		f.Viscosity = v.viscosity(s)
	}
}

// cupUnit is the unit of a bare volume of the size of a cup.
func (v *resolver) cupUnit() unit.VolumeUnit {
	if v.sys == unit.Metric {
		return unit.InML
	}
	return unit.InFluidOunces
}

// viscosity reads the ready mix's, or what a cup's seconds say of it.
func (v *resolver) viscosity(s Sheet) unit.Kinematic {
	if t := s[FieldViscosity]; t != "" {
		return read(v, FieldViscosity, t, "", func(s string, _ struct{}) (unit.Kinematic, error) { return unit.ParseViscosity(s) }, struct{}{})
	}
	if s[FieldCup] == "" && s[FieldSeconds] == "" {
		v.fault(FieldViscosity, "", "needed-viscosity")
		return 0
	}
	before := len(v.faults)
	cup, seconds := v.cup(FieldCup, s[FieldCup]), v.cupSeconds(FieldSeconds, s[FieldSeconds])
	if len(v.faults) > before {
		return 0
	}
	nu, err := cup.Viscosity(seconds)
	if err != nil {
		v.refuse(FieldSeconds, s[FieldSeconds], err)
	}
	return nu.Nu
}

// gunSpeed reads a length a second.
func (v *resolver) gunSpeed(t Typed) unit.Speed {
	text := strings.ToLower(strings.TrimSpace(string(t)))
	for _, a := range []string{"/sec", "/seg", "/s", "per second", "a second", "por segundo"} {
		text = strings.TrimSuffix(text, a)
	}
	l, err := unit.ParseLength(text, v.sys.LongUnit())
	if err != nil || l <= 0 {
		v.fault(FieldGunSpeed, t, "want-gun-speed")
	}
	return unit.Speed(l)
}

// comb reads "4mil" or "4mil,5mil".
func (v *resolver) comb(t Typed) (c calc.CombReading) {
	wetted, next, both := strings.Cut(string(t), ",")
	if !both {
		next = wetted
	}
	var err1, err2 error
	c.Wetted, err1 = unit.ParseLength(wetted, v.sys.FilmUnit())
	c.Next, err2 = unit.ParseLength(next, v.sys.FilmUnit())
	if err1 != nil || err2 != nil {
		v.fault(FieldWet, t, "want-comb")
	}
	return c
}
