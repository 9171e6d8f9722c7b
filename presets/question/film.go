package question

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// What film asks besides the application.
var (
	CupVolume = &Field{Name: "cup-volume", Read: amount, Of: [2]*unit.Quantity{unit.CupVolume}, Bounds: [2]*calc.Bound{&calc.CupVolumeBound}, Default: LeftOut}
	CupTime   = &Field{Name: "cup-time", Read: amount, Of: [2]*unit.Quantity{unit.CupTime}, Bounds: [2]*calc.Bound{&calc.CupTimeBound}, Default: LeftOut}
	Tip       = &Field{Name: "tip", Read: amount, Of: [2]*unit.Quantity{unit.Tip}, Bounds: [2]*calc.Bound{&calc.TipBound}, Default: LeftOut, Part: PartSheet, Begin: [2]string{"1.3 mm", "1.3 mm"}}
	Viscosity = &Field{Name: "viscosity", Read: amount, Of: [2]*unit.Quantity{unit.Viscosity}, Bounds: [2]*calc.Bound{&calc.ViscosityBound}, Default: LeftOut}
	Fan       = &Field{Name: "fan", Read: positive, Of: [2]*unit.Quantity{unit.Distance}, Bounds: [2]*calc.Bound{&calc.FanBound}, Default: OfEntry}
	Overlap   = &Field{Name: "overlap", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Bounds: [2]*calc.Bound{&calc.OverlapBound}, Default: OfEntry}
	GunSpeed  = &Field{Name: "gun-speed", Read: positive, Of: [2]*unit.Quantity{unit.Velocity}, Bounds: [2]*calc.Bound{&calc.GunSpeedBound}, Want: "want-gun-speed", Default: LeftOut}
	Height    = &Field{Name: "height", Read: positive, Of: [2]*unit.Quantity{unit.Run}, Bounds: [2]*calc.Bound{&calc.HeightBound}, Default: LeftOut}
	// Wet is the combs' readings: the last wetted tooth, and the next where it was looked at.
	Wet = &Field{
		Name: "wet", Read: pair, Of: [2]*unit.Quantity{unit.Film, unit.Film}, SecondLeftOut: true, Repeats: true,
		Bounds: [2]*calc.Bound{&calc.CombBound, &nextBound}, Want: "want-comb", Default: LeftOut,
	}
)

// nextBound is what the next tooth may be; a request says it may not be below the wetted one.
var nextBound = calc.Bound{Low: calc.CombBound.Low, High: calc.CombBound.High}

// Film asks for the film of a coat and the gun's speed that lays it.
var Film = &Question{Name: "film", Fields: append(applicationRows[:len(applicationRows):len(applicationRows)],
	Row{Field: FluidRate}, Row{Field: CupVolume}, Row{Field: CupTime}, Row{Field: Tip}, Row{Field: Viscosity},
	Row{Cup, "usage-film-cup"}, Row{Field: Seconds}, Row{Field: Fan}, Row{Field: Overlap}, Row{Field: GunSpeed}, Row{Field: Height}, Row{Field: Wet},
)}

// Film turns answers into a complete request, as Plan does.
func (r *Reader) Film(a Answers, sys unit.System) (calc.FilmRequest, []*Fault) {
	v := &resolver{Reader: r, a: a, sys: sys}
	q := calc.FilmRequest{Application: v.application()}
	v.fluid(&q.Fluid)
	if e, ok := r.Coats.Get(q.CoatID); ok {
		if f := e.Fan; f != nil {
			q.Fan = calc.Stated[unit.Length]{Value: f.Usual.V, Ground: f.Ground()}
		}
		if o := e.Overlap; o != nil {
			q.Overlap = calc.Stated[float64]{Value: o.Usual.V, Ground: o.Ground()}
		}
	}
	moving := q.Fluid.From != calc.FluidUnknown
	if v.has(Fan) || moving && q.Fan.Value == 0 {
		q.Fan = calc.Stated[unit.Length]{Value: si[unit.Length](v, Fan), Ground: calc.AsTyped}
	}
	if v.has(Overlap) || moving && q.Overlap.Basis == "" {
		q.Overlap = calc.Stated[float64]{Value: si[float64](v, Overlap), Ground: calc.AsTyped}
	}
	q.GunSpeed = or(v, GunSpeed, unit.Speed(0))
	q.Height = or(v, Height, unit.Length(0))
	for _, c := range a.Get(Wet) {
		if c.Fault != nil {
			v.faults = append(v.faults, c.Fault)
		}
		q.Combs = append(q.Combs, calc.CombReading{Wetted: unit.Length(c.SI[0]), Next: unit.Length(c.SI[1])})
	}
	v.needed(moving)
	if len(v.faults) == 0 {
		v.judge(q.Problems())
	}
	return q, v.faults
}

// needed says what is missing beside what was answered, so that nothing answered is left
// unread.
func (v *resolver) needed(moving bool) {
	beside := func(missing *Field, want string, fields ...*Field) {
		for _, f := range fields {
			if v.has(f) {
				v.fault(missing, want, calc.TextFigure("field", f.Name), v.names(v.Guns.IDs()))
				return
			}
		}
	}
	if !moving {
		beside(FluidRate, "needed-fluid-rate", GunSpeed, Height, Fan, Overlap)
	}
	if !v.has(Gun) {
		beside(Gun, "needed-gun-beside", FluidRate, CupVolume, CupTime, Tip, Transfer, Pressure, Distance)
	}
}

// fluid resolves how the fluid rate is known: given before timed, timed before estimated.
func (v *resolver) fluid(f *calc.Fluid) {
	switch {
	case v.has(FluidRate):
		f.From = calc.FluidGiven
		f.Rate = v.fluidRate()
	case v.has(CupVolume) || v.has(CupTime):
		f.From = calc.FluidTimed
		f.CupVolume = si[unit.Volume](v, CupVolume)
		f.CupTime = si[unit.Seconds](v, CupTime)
	case v.has(Tip):
		f.From = calc.FluidTip
		f.Tip = si[unit.Length](v, Tip)
		f.Viscosity = v.viscosity()
	}
}

// viscosity resolves the ready mix's, or what a cup's seconds say of it.
func (v *resolver) viscosity() unit.Kinematic {
	if v.has(Viscosity) {
		return si[unit.Kinematic](v, Viscosity)
	}
	if !v.has(Cup) && !v.has(Seconds) {
		v.fault(Viscosity, "needed-viscosity")
		return 0
	}
	c := v.cup()
	s, ok := v.value(Seconds)
	if !ok || c.ID == "" {
		return 0
	}
	nu, err := c.Viscosity(s.SI[0])
	if err != nil {
		id, figures := calc.SentenceOf(err)
		v.fault(Seconds, id, figures...)
	}
	return nu.Nu
}
