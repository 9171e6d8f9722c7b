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
		Field{FieldFluidRate, "fluid `rate` of the gun, such as 180mL/min", false},
		Field{FieldCupVolume, "`volume` sprayed into a cup to time the rate, such as 100mL or 3floz", false},
		Field{FieldCupTime, "`time` that took, such as 30s", false},
		Field{FieldTip, "fluid tip's `bore`, such as 1.3mm: with the viscosity the rate is estimated", false},
		Field{FieldViscosity, "`viscosity` of the ready mix, such as 57cSt; or --cup and --seconds", false},
		Field{FieldCup, "`cup` the ready mix was timed in: iso4, din4, ford4, zahn2 ...", false},
		Field{FieldSeconds, "`seconds` it took", false},
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
	if e := c.entries.Coat[r.CoatID]; e != nil && e.Lay != nil {
		r.Fan = calc.Stated[unit.Length]{Value: e.Lay.Fan.v, Standing: e.Lay.standing()}
		r.Overlap = calc.Stated[float64]{Value: e.Lay.Overlap.v, Standing: e.Lay.standing()}
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
				v.fault(missing, "", "needed beside %s%s", field, want)
				return
			}
		}
	}
	if !moving {
		beside(FieldFluidRate, "; time a cup: cup-volume and cup-time", FieldGunSpeed, FieldHeight, FieldFan, FieldOverlap)
	}
	if s[FieldGun] == "" {
		beside(FieldGun, ", for what lands of the coating; choose "+listed(v.c.order.gun), FieldFluidRate, FieldCupVolume, FieldCupTime, FieldTip, FieldTransfer, FieldPressure, FieldDistance)
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
		v.fault(FieldViscosity, "", "needed beside tip, such as 57cSt; or give cup and seconds")
		return 0
	}
	before := len(v.faults)
	cup, seconds := v.cup(FieldCup, s[FieldCup]), v.cupSeconds(FieldSeconds, s[FieldSeconds])
	if len(v.faults) > before {
		return 0
	}
	nu, err := cup.Viscosity(seconds)
	if err != nil {
		v.fault(FieldSeconds, s[FieldSeconds], "%v", err)
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
