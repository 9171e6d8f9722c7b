package calc

import (
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// FilmRequest asks for the film of a coat and the gun speed that lays it.
type FilmRequest struct {
	Application
	Fluid    Fluid
	Fan      Stated[unit.Length] // width at the panel, 10 to 600 mm
	Overlap  Stated[float64]     // part of the fan on the pass before, 0 to 0.9
	GunSpeed unit.Speed          // as the hand goes, 0.05 to 3 m/s; 0 where not given
	Height   unit.Length         // of the panel across the passes, to 10 m; 0 where not given
	Combs    []CombReading       // one a coat laid so far
}

// CombReading is a wet-film comb: its last wetted tooth and the next, dry one, which
// is the same where it was not given.
type CombReading struct{ Wetted, Next unit.Length }

// FluidFrom is how the fluid rate is known.
type FluidFrom uint8

// A fluid rate is not known, given, from a timed cup, or estimated from the tip.
const (
	FluidUnknown FluidFrom = iota
	FluidGiven
	FluidTimed
	FluidTip
)

// Fluid is what is known of the gun's fluid rate; From says which fields count.
type Fluid struct {
	From      FluidFrom
	Rate      coat.FluidRate // 5 to 1500 mL/min
	CupVolume unit.Volume    // sprayed in CupTime
	CupTime   unit.Seconds
	Tip       unit.Length
	Viscosity unit.Kinematic
}

// rate is the fluid rate with how far it may be off.
func (f *Fluid) rate(water bool) (coat.Rate, error) {
	switch f.From {
	case FluidTimed:
		return coat.TimedRate(f.CupVolume, time.Duration(float64(f.CupTime)*float64(time.Second)))
	case FluidTip:
		of := solventborne
		if water {
			of = waterborne
		}
		return coat.TipRate(f.Tip, f.Viscosity, of.coating)
	}
	return coat.Rate{Value: f.Rate, Low: f.Rate, High: f.Rate}, nil
}

// FilmAnswer is the answer to a FilmRequest.
type FilmAnswer struct {
	Coats Stated[int] // in all
	Laid  []Comb      // so far
	Left  int         // coats still to come
	Each  OneCoat     // of those still to come, or of all where none is
	// OneMore is where combs were read and no coat is to come: the least that can be laid in
	// another, and what that would make in all. Zero where a coat is to come.
	OneMore OneMore
	Pass    PassAnswer
	// AtSpeed is a coat laid at the speed that was asked for.
	AtSpeed  OneCoat
	Running  coat.Running
	About    bool // rests on estimates
	Reasons  []Reason
	Cautions []Caution
}

// Stopped reports whether the job cannot be done as asked.
func (a *FilmAnswer) Stopped() bool { return stopped(a.Cautions) }

// OneCoat is the film of a coat, zero where it is not known.
type OneCoat struct{ Wet, Dry unit.Length }

// OneMore is another coat's dry film, and the film in all with it.
type OneMore struct{ Dry, Total unit.Length }

// Comb is what a comb's reading dries to.
type Comb struct {
	CombReading
	Low, High unit.Length // dry
}

// Middle is the dry film between the two teeth.
func (c Comb) Middle() unit.Length { return (c.Low + c.High) / 2 }

// PassAnswer is how the gun is moved; Known is false where the fluid rate, the gun or
// its fan is not known.
type PassAnswer struct {
	Known            bool
	Rate             coat.Rate
	Transfer         coat.Transfer
	Speed, Low, High unit.Speed // that lays Each
	Step             unit.Length
	Passes           int // a coat, where the panel's height was given
}

// What a hand does with ease: estimates, about the speeds that are printed for a class
// (Holding.Hand).
const (
	slowHand = unit.Speed(0.15)
	fastHand = unit.Speed(1.0)
)

// Problems is everything wrong with the request.
func (r *FilmRequest) Problems() []Problem {
	p := r.Application.problems()
	switch f := &r.Fluid; f.From {
	case FluidGiven:
		p.within("fluid-rate", float64(f.Rate), &FluidBound)
	case FluidTimed:
		p.within("cup-volume", float64(f.CupVolume), &CupVolumeBound)
		p.within("cup-time", float64(f.CupTime), &CupTimeBound)
		if len(p) == 0 {
			p.within("cup-time", float64(coat.FluidRate(float64(f.CupVolume)/float64(f.CupTime))), &FluidBound)
		}
	case FluidTip:
		p.within("tip", float64(f.Tip), &TipBound)
		p.within("viscosity", float64(f.Viscosity), &ViscosityBound)
	}
	if r.Fluid.From != FluidUnknown {
		p.within("fan", float64(r.Fan.Value), &FanBound)
		p.within("overlap", r.Overlap.Value, &OverlapBound)
	}
	if r.GunSpeed != 0 {
		p.within("gun-speed", float64(r.GunSpeed), &GunSpeedBound)
	}
	if r.Height != 0 {
		p.within("height", float64(r.Height), &HeightBound)
	}
	if len(r.Combs) > MostCoats {
		p.add("wet", "too-many-readings")
	}
	for _, c := range r.Combs {
		p.within("wet", float64(c.Wetted), &CombBound)
		p.within("wet", float64(c.Next), &Bound{"outside", float64(c.Wetted), float64(ThickestFilm), FigureFilm})
	}
	return p
}

// SolveFilm works a request. It fails, with a *Problem, where Problems finds any.
func SolveFilm(r *FilmRequest) (a FilmAnswer, err error) {
	if p := r.Problems(); len(p) > 0 {
		return a, &p[0]
	}
	if a.Coats, err = r.coats(); err != nil {
		return a, err
	}
	var laid unit.Length
	for _, c := range r.Combs {
		comb := Comb{CombReading: c}
		if comb.Low, comb.High, err = coat.CombRange(c.Wetted, c.Next, r.Solids.Value); err != nil {
			return a, err
		}
		a.Laid = append(a.Laid, comb)
		laid += comb.Middle()
	}
	atMetre, err := a.pass(r)
	if err != nil {
		return a, err
	}
	each := a.toCome(r, laid, atMetre)
	if each, err = a.hand(r, each, atMetre); err != nil {
		return a, err
	}
	if err := a.run(r, each); err != nil {
		return a, err
	}
	a.About = r.Solids.rough()
	a.explain(r)
	a.warn(r)
	return a, nil
}

// pass works how the gun is moved but for its speed, and gives the wet film that a coat leaves
// at a metre a second: a film falls as one over the speed, so that one tells them all. It is 0
// where the fluid rate, the gun or its fan is not known.
func (a *FilmAnswer) pass(r *FilmRequest) (wet unit.Length, err error) {
	if r.Fluid.From == FluidUnknown || !r.Held.Known || r.Fan.Value == 0 {
		return 0, nil
	}
	p := &a.Pass
	p.Known = true
	if p.Rate, err = r.Fluid.rate(r.Waterborne); err != nil {
		return 0, err
	}
	if p.Transfer, err = r.Held.at(r.Held.Distance); err != nil {
		return 0, err
	}
	pass := coat.Pass{Rate: p.Rate.Value, Transfer: p.Transfer.Value, Fan: r.Fan.Value, Overlap: r.Overlap.Value}
	if p.Step, err = pass.Step(); err != nil {
		return 0, err
	}
	if r.Height > 0 {
		if p.Passes, err = pass.Passes(r.Height); err != nil {
			return 0, err
		}
	}
	return pass.WetFilm(1)
}

// hand works the gun's speed that lays a coat of a dry film. It gives back the dry film that
// the hand's own speed leaves, where one is given, else each.
func (a *FilmAnswer) hand(r *FilmRequest, each, atMetre unit.Length) (unit.Length, error) {
	solids := unit.Length(r.Solids.Value)
	a.Each = OneCoat{Wet: each / solids, Dry: each}
	p := &a.Pass
	if !p.Known {
		return each, nil
	}
	p.Speed = unit.Speed(atMetre / a.Each.Wet)
	p.Low = p.Speed * unit.Speed(float64(p.Rate.Low/p.Rate.Value)*p.Transfer.Low/p.Transfer.Value)
	p.High = p.Speed * unit.Speed(float64(p.Rate.High/p.Rate.Value)*p.Transfer.High/p.Transfer.Value)
	if r.GunSpeed == 0 {
		return each, nil
	}
	a.AtSpeed.Wet = atMetre / unit.Length(r.GunSpeed)
	a.AtSpeed.Dry = a.AtSpeed.Wet * solids
	if a.AtSpeed.Dry > ThickestFilm {
		return 0, &Problem{"gun-speed", "too-slow", Figures{brief(filmFigure("dry", a.AtSpeed.Dry))}}
	}
	return a.AtSpeed.Dry, nil
}

// run adds up the coats laid and those to come at each.
func (a *FilmAnswer) run(r *FilmRequest, each unit.Length) (err error) {
	var coats []unit.Length
	add := func(dry unit.Length) {
		if dry >= ThinnestFilm/MostCoats { // less is nothing
			coats = append(coats, dry)
		}
	}
	for _, c := range a.Laid {
		add(c.Middle())
	}
	for range a.Left {
		add(each)
	}
	a.Running, err = coat.RunningTotal(coats, r.Before, r.limits())
	return err
}
