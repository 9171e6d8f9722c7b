package calc

import "boothset/calc/unit"

// Sign is one thing that shows on the panel or at the gun because a job is not set as advised: by
// the id that signs of bad spray have, its sentence "sprayed-" and that.
type Sign struct {
	ID string
	Figures
}

// From where on a sign shows, beside the advised settings. Judgement; the steps of pressure
// and distance that move them this far are those that finishing guides correct by.
const (
	coarser = 1.05 // drops, times across: some 3 to 4 psi less at the gun
	wetter  = 1.25 // film
	thinner = 0.8
	// pressed is how much more pressure at the gun splits the fan.
	pressed = unit.Drop(3 * unit.PascalPerPSI)
	drier   = worthLevers
)

// Signs is what shows of a job that is sprayed as x in place of the way that the setup advises,
// which comes to advised; the gravest first, none where it comes to the same. opening is that of
// the inlet valve.
func (s *Setup) Signs(r *Request, advised, x *Sprayed, opening float64) (all []Sign) {
	add := func(id string, f ...Figure) { all = append(all, Sign{id, f}) }
	if !x.Known {
		add("spitting", brief(gauge("gets", x.Gun)), brief(gauge("working", advised.Gun)))
		return all
	}
	b, by := x.Beside(advised), unit.Drop(x.Gun-advised.Gun)
	f := Figures{brief(gauge("gets", x.Gun)), brief(gauge("working", advised.Gun)), brief(drop("more", by)), near("held", x.Distance), near("target", advised.Distance),
		share("coarser", b.Drops-1), times("drier", b.Drier), share("film", b.Film-1), share("thinner", 1-b.Film)}
	if b.Drops >= coarser {
		add("orange-peel", f...)
	}
	if by >= pressed {
		add("split", f...)
	}
	if b.Drier >= drier {
		add("dry-spray", f...)
	}
	switch {
	case b.Film >= wetter:
		add("runs", f...)
	case b.Film <= thinner:
		add("poor-hiding", f...)
	}
	if len(r.Stages) > 1 && len(all) > 0 { // a coat with flake: it has a stage that lays it even
		add("mottling", TextFigure("coat", r.Coat.Name))
	}
	// A valve that is as far closed as advised is no more touchy than advised.
	const rounding = 1e-9
	if v := &s.Valve; v.None || opening >= v.Opening-rounding {
		return all
	}
	f = Figures{drop("nudge", x.EighthTurn), brief(gauge("foot", x.Foot)), brief(gauge("gets", x.Gun))}
	switch {
	case x.Choked:
		add("fading", f...)
	case opening < s.Valve.Floor:
		add("touchy", f...)
	}
	return all
}
