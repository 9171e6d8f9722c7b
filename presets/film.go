package presets

import (
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
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
		Field{FieldFluidRate, "fluid `rate` of the gun, such as 180mL/min", false},
		Field{FieldCupVolume, "`volume` sprayed into a cup to time the rate, such as 100mL or 3floz", false},
		Field{FieldCupTime, "`time` that took, such as 30s", false},
		Field{FieldTip, "fluid tip's `bore`, such as 1.3mm: with --viscosity the rate is estimated", false},
		Field{FieldViscosity, "`viscosity` of the ready mix: 57cSt, or a cup's reading as 18s,din4", false},
		Field{FieldFan, "`width` of the fan at the panel, such as 10in", false},
		Field{FieldOverlap, "overlap of the passes in `percent`", false},
		Field{FieldGunSpeed, "`speed` the gun is moved at, such as 1.2ft/s or 0.4m/s: adds what it leaves", false},
		Field{FieldHeight, "`height` of the panel across the passes: counts them", false},
		Field{FieldWet, "wet-comb `reading` of a coat, as the wetted tooth or with the next as 4mil,5mil; once a coat", true},
	)
}

// Film turns what was typed into a request for the film. Bare numbers are read in the
// system's units. Every answer that will not do comes as a *FieldError; the request is
// complete only where there is none.
func (c *Catalogue) Film(s Sheet, sys unit.System) (calc.FilmRequest, []*FieldError) {
	v := resolver{c: c, sys: sys}
	r := calc.FilmRequest{Laying: v.laying(s)}
	v.fluid(s, &r)
	if f := v.c.entries.Coat[r.CoatID]; f != nil && f.Film != nil {
		r.Fan = calc.Stated[unit.Length]{Value: f.Film.Fan.v, Standing: f.Film.standing()}
		r.Overlap = calc.Stated[float64]{Value: f.Film.Overlap.v, Standing: f.Film.standing()}
	}
	moving := r.Fluid.From != calc.FluidUnknown
	if t := s[FieldFan]; t != "" || moving && r.Fan.Value == 0 {
		r.Fan = calc.Stated[unit.Length]{Value: positive(&v, FieldFan, t, unit.ParseLength, v.sys.SmallUnit()), Standing: calc.AsTyped}
	}
	if t := s[FieldOverlap]; t != "" || moving && r.Overlap.Basis == "" {
		r.Overlap = calc.Stated[float64]{Value: read(&v, FieldOverlap, t, "", parsePercent, struct{}{}), Standing: calc.AsTyped}
	}
	if t := s[FieldGunSpeed]; t != "" {
		r.GunSpeed = v.gunSpeed(t)
		if !moving {
			v.fault(FieldFluidRate, "", "needed beside gun-speed; time a cup: cup-volume and cup-time")
		}
	}
	if t := s[FieldHeight]; t != "" {
		r.Height = positive(&v, FieldHeight, t, unit.ParseLength, v.sys.LongUnit())
	}
	for _, t := range s.list(FieldWet) {
		r.Combs = append(r.Combs, v.comb(t))
	}
	if s[FieldGun] == "" && moving {
		v.fault(FieldGun, "", "needed for what lands of the coating; choose %s", listed(v.c.order.gun))
	}
	v.judged(s, r.Problems)
	return r, v.faults
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
		f.Viscosity = v.viscosity(s[FieldViscosity])
	}
}

// cupUnit is the unit of a bare volume of the size of a cup.
func (v *resolver) cupUnit() unit.VolumeUnit {
	if v.sys == unit.Metric {
		return unit.InML
	}
	return unit.InFluidOunces
}

// viscosity reads "57cSt", or seconds in a cup as "18s,din4".
func (v *resolver) viscosity(t Typed) unit.Kinematic {
	const want = "type it as 57cSt, or a cup's seconds with the cup as 18s,din4"
	seconds, name, isCup := strings.Cut(string(t), ",")
	if !isCup {
		nu, err := unit.ParseViscosity(string(t))
		if err != nil {
			v.fault(FieldViscosity, t, want)
		}
		return nu
	}
	time, err := unit.ParseSeconds(seconds, unit.InSeconds)
	if err != nil {
		v.fault(FieldViscosity, t, want)
		return 0
	}
	cup, err := coat.FindCup(name)
	if err != nil {
		v.fault(FieldViscosity, t, "%v", err)
		return 0
	}
	nu, err := cup.Viscosity(float64(time))
	if err != nil {
		v.fault(FieldViscosity, t, "%v", err)
	}
	return nu.Nu
}

// gunSpeed reads a length a second.
func (v *resolver) gunSpeed(t Typed) unit.Speed {
	text := strings.ToLower(strings.TrimSpace(string(t)))
	for _, a := range []string{"/sec", "/s", "per second", "a second"} {
		text = strings.TrimSuffix(text, a)
	}
	l, err := unit.ParseLength(text, v.sys.LongUnit())
	if err != nil || l <= 0 {
		v.fault(FieldGunSpeed, t, "type a length a second, such as 1.2ft/s, 15in/s or 0.4m/s")
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
		v.fault(FieldWet, t, "type the last wetted tooth, such as 4mil or 100um, or it and the next as 4mil,5mil")
	}
	return c
}
