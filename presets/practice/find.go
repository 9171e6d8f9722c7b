package practice

import (
	"math/rand/v2"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// Find is a badly set booth, whose one fault is to be found.
type Find struct {
	*Job
	Readings []Reading // that can be taken
	Causes   []Cause   // that can be named
	Cause    Cause     // the one that it is
	Signs    []calc.Sign
	Fewest   []Reading // that tell it apart from every other, of as many those that take least time
	truth    fault
	shows    []float64 // by every reading
	sound    []float64 // the same with nothing wrong
	states   []state
}

// state is the booth with one of the faults that it could have, and what every reading shows.
type state struct {
	Cause
	shows []float64
}

// find makes a badly set booth of a job with one fault; nil where nothing shows of that, or
// where no readings tell it from another.
func (j *Job) find(f fault) *Find {
	b, ok := j.with(f)
	if !ok || len(b.signs) == 0 {
		return nil
	}
	found := &Find{Job: j, Readings: j.Readings(), Causes: j.Causes(), Cause: f.Cause, Signs: b.signs, truth: f}
	sound := j.sound()
	found.shows, found.sound = found.values(&b), found.values(&sound)
	for _, c := range found.Causes {
		for step := range steps {
			if x, ok := j.with(fault{c, size(c.Kind, step)}); ok && len(x.signs) > 0 {
				found.states = append(found.states, state{c, found.values(&x)})
			}
		}
	}
	found.Fewest = found.fewest()
	if found.Fewest == nil {
		return nil
	}
	return found
}

// values is what every reading shows in a booth.
func (f *Find) values(b *booth) []float64 {
	all := make([]float64, len(f.Readings))
	for i, r := range f.Readings {
		all[i] = f.value(b, r)
	}
	return all
}

// toldBy is the readings that tell what is there from another state.
func (f *Find) toldBy(s *state) (by readings) {
	for i, r := range f.Readings {
		if told(r, s.shows[i], f.shows[i]) {
			by |= 1 << i
		}
	}
	return by
}

// Shown is what a reading shows, and what it would show were nothing wrong.
func (f *Find) Shown(r Reading) (shows, sound float64) {
	i := slices.Index(f.Readings, r)
	return f.shows[i], f.sound[i]
}

// Left is the causes that some readings leave, the one that it is among them.
func (f *Find) Left(taken []Reading) (left []Cause) {
	set := f.set(taken)
	for _, c := range f.Causes {
		fits := func(s state) bool { return s.Cause == c && f.toldBy(&s)&set == 0 }
		if c == f.Cause || slices.ContainsFunc(f.states, fits) {
			left = append(left, c)
		}
	}
	return left
}

// Named is what naming a cause comes to.
type Named struct {
	Cause                   // as it was named
	Right     bool          // it is the cause
	Taken     []Reading     // in the order in which they were taken
	Took      time.Duration // all of them
	LeastTook time.Duration // the fewest
	Left      []Cause       // that the readings taken leave besides the one that it is
	// Order is readings as one takes them who does not know the cause: each time the one that
	// tells most for its time.
	Order     []Reading
	OrderTook time.Duration
}

// Name names a cause after some readings.
func (f *Find) Name(c Cause, taken []Reading) *Named {
	n := &Named{Cause: c, Right: c == f.Cause, Taken: taken, Took: f.takes(f.set(taken)), LeastTook: f.takes(f.set(f.Fewest))}
	n.Left = slices.DeleteFunc(f.Left(taken), func(x Cause) bool { return x == f.Cause })
	n.Order = f.order()
	n.OrderTook = f.takes(f.set(n.Order))
	return n
}

// FindIdea begins the name of what is due where a fault was not found.
const FindIdea = "find-"

// Idea is what is due where the fault is not found.
func (c Cause) Idea() Idea { return Idea(FindIdea + string(c.Kind)) }

// Find is the next badly set booth; nil where the source has none that can be told. A kind of
// fault that was missed before is likelier.
func (d *Deck) Find() *Find {
	rng := d.next()
	lessons := make([][]Idea, len(kinds))
	for i, k := range kinds {
		lessons[i] = []Idea{Cause{Kind: k}.Idea()}
	}
	const kindsTried, jobsTried = 10, 20
	for range kindsTried {
		kind := kinds[d.Due.lean(rng, lessons)]
		for range jobsTried {
			if f := d.source.find(kind, rng, d.sys); f != nil {
				return f
			}
		}
	}
	return nil
}

// find draws a badly set booth with a fault of a kind; nil where what was drawn will not do.
func (s *Source) find(kind FaultKind, rng *rand.Rand, sys unit.System) *Find {
	j := s.one(rng, sys)
	if j == nil || !Sprays(j.Setup.Verdict) {
		return nil
	}
	causes := slices.DeleteFunc(j.Causes(), func(c Cause) bool { return c.Kind != kind })
	if len(causes) == 0 {
		return nil
	}
	return j.find(fault{pick(rng, causes), size(kind, rng.IntN(steps))})
}
