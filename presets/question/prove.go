package question

import (
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/prove"
	"boothset/calc/unit"
	"boothset/presets/signs"
)

// What is seen at the gun besides the readings of its gauges.
var (
	// FirstGun and FirstWall are what two gauges showed as the trigger was pulled, and HeldSupply
	// what the one before the wall's regulator showed ten seconds later.
	FirstGun   = ShownPressure("first-gun")
	FirstWall  = ShownPressure("first-wall")
	HeldSupply = ShownPressure("held-supply")
	// Felt is where the push of the air alone was felt.
	Felt = &Field{Name: "felt", Read: amount, Of: [2]*unit.Quantity{unit.Distance}, Bounds: [2]*calc.Bound{&calc.DistanceBound}, Default: LeftOut}
	// Pattern and Flood are what a short pull left on paper, and one that was held until it ran.
	Pattern = &Field{Name: "pattern", Read: onPaper, Options: []string{prove.Even, "split", "heavy-centre", "end-heavy", "side-heavy", "crescent", "narrow", "wide-wet", "coarse", "spitting"}, Default: LeftOut, SayOption: signName}
	Flood   = &Field{Name: "flood", Read: onPaper, Options: []string{prove.Even, "split", "heavy-centre", "end-heavy"}, Default: LeftOut}
)

// SeenFields is what is seen at the gun besides its gauges, in the order it is looked at.
var SeenFields = []*Field{FirstGun, FirstWall, HeldSupply, Felt, Pattern, Flood, Wet}

// OfHeld reports whether one of SeenFields is read while the trigger is held.
func OfHeld(f *Field) bool { return f == FirstGun || f == FirstWall || f == HeldSupply }

// Prove asks for what there is to do at the gun with a plan, and judges what was read and seen
// there.
var Prove = &Question{Name: "prove", Fields: slices.Concat([]Row{{Field: GaugeReading}, {Field: FirstGun}, {Field: FirstWall}, {Field: HeldSupply}, {Field: Felt}, {Field: Pattern}, {Field: Flood},
	{Wet, "usage-prove-wet"}, {Solids, "usage-prove-solids"}}, Plan.Fields)}

// signName is what a pattern is called: an even one by a sentence of its own.
func signName(id string) string {
	if id == prove.Even {
		return "choice-pattern-even"
	}
	return signs.Name(id)
}

// onPaper reads what a pattern looks like: one of the options, by its id or by what it is called in
// any language.
func onPaper(r *Reader, f *Field, t string, sys unit.System) Value {
	if _, is := r.option(f, t); !is && strings.TrimSpace(t) != "" {
		for _, c := range r.Choices(f) {
			if strings.EqualFold(c.Name, strings.TrimSpace(t)) {
				return Value{ID: c.ID}
			}
		}
		may := slices.DeleteFunc(signs.Search(t), func(id string) bool { return !slices.Contains(f.Options, id) })
		if len(may) == 1 {
			return Value{ID: may[0]}
		}
	}
	return choice(r, f, t, sys)
}

// Seen is what was seen at the gun with readings that were taken there. The film is known where
// the coat's own is.
func (r *Reader) Seen(a Answers, taken []learn.Taken, sys unit.System) (s prove.Seen, faults []*Fault) {
	v := &resolver{Reader: r, a: a, sys: sys}
	gauge := func(f *Field) (p unit.Gauge) {
		if v.has(f) {
			p = bounded[unit.Gauge](v, f)
		}
		return p
	}
	s.First, s.FirstWall, s.Supply = gauge(FirstGun), gauge(FirstWall), gauge(HeldSupply)
	if v.has(FirstGun) && !prove.Held(taken) {
		v.fault(FirstGun, "needed-held-reading")
	}
	if v.has(Felt) {
		s.Felt = bounded[unit.Length](v, Felt)
	}
	pattern := func(f *Field) string {
		if !v.has(f) {
			return ""
		}
		x, _ := v.value(f)
		return x.ID
	}
	s.Pattern, s.Flood = pattern(Pattern), pattern(Flood)
	film, wrong := r.Film(a.only(ofFilm), sys)
	switch {
	case len(wrong) == 0:
		s.Film = &film
	case v.has(Wet) || v.has(Solids):
		v.faults = append(v.faults, wrong...)
	}
	return s, v.faults
}

// SeenBefore is what was seen of a field at the gun before, as a person reads it.
type SeenBefore struct {
	*Field
	Text string
	At   time.Time
}
