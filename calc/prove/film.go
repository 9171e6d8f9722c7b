package prove

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Film is the wet film of the first coat beside what its comb is to show.
type Film struct {
	// Low and High are what one coat is to be laid at, wet, and Usual between them.
	Low, High, Usual unit.Length
	// Comb is what the comb showed; zero where it was not read.
	Comb calc.CombReading
	// Times is how many times as fast the hand is to move for the usual film: a film falls as one
	// over the gun's speed. 1 where the comb's reading will do.
	Times float64
	// Staged: the coat is laid in several stages, and what is still to come is not told of one of
	// them. Left and Next are the coats still to come with this one laid, and the film of each. Thin: the
	// film is under what it needs, and any number of usual coats more takes it over.
	Staged bool
	Left   int
	Next   calc.OneCoat
	Thin   bool
}

// film judges a comb's reading; nil where the film cannot be worked.
func film(plan *calc.Request, r *calc.FilmRequest) *Film {
	expected := *r
	expected.Combs = nil
	whole, err := calc.SolveFilm(&expected)
	if err != nil {
		return nil
	}
	solids := unit.Length(r.Solids.Value)
	f := &Film{Low: whole.Each.Wet, High: whole.Each.Wet, Usual: whole.Each.Wet, Times: 1, Staged: len(plan.Stages) > 1}
	switch stage := &plan.Coat.Stage.Film; {
	case stage.Known():
		f.Low, f.High = stage.Low/solids, stage.High/solids
		f.Usual = min(max(f.Usual, f.Low), f.High)
	case r.Usual.Coats > 0:
		f.Low, f.High = min(r.Usual.Low/solids, f.Usual), max(r.Usual.High/solids, f.Usual)
	}
	if len(r.Combs) == 0 {
		return f
	}
	f.Comb = r.Combs[len(r.Combs)-1]
	if laid, err := calc.SolveFilm(r); err == nil {
		f.Left, f.Next, f.Thin = laid.Left, laid.Each, laid.Left == 0 && laid.Running.State == coat.Under
	}
	if f.Off() != 0 {
		f.Times = float64((f.Comb.Wetted + f.Comb.Next) / 2 / f.Usual)
	}
	return f
}

// Off is how far the comb's teeth, the last wet and the next dry one, lie outside of what a coat
// is to be laid at: below 0 where the film is thin.
func (f *Film) Off() unit.Length {
	const rounding = 1e-9
	switch c := &f.Comb; {
	case c.Wetted == 0:
		return 0
	case c.Wetted > f.High*(1+rounding):
		return c.Wetted - f.High
	case c.Next < f.Low*(1-rounding):
		return c.Next - f.Low
	}
	return 0
}
