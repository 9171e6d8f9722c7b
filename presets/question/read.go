package question

import (
	"errors"
	"math"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// reading reads the text of a field's value.
type reading func(r *Reader, f *Field, t string, sys unit.System) Value

// refused is a value that could not be read, for what an error says of it.
func (r *Reader) refused(f *Field, t string, sys unit.System, err error) Value {
	id, figures := calc.SentenceOf(err)
	if f.Want != "" {
		id = f.Want
	}
	return Value{Fault: r.Fault(f.Name, t, sys, id, figures...)}
}

// wanted is a value that could not be read, by the sentence of what would do.
func (r *Reader) wanted(f *Field, t string, sys unit.System, id string, figures ...calc.Figure) Value {
	return Value{Fault: r.Fault(f.Name, t, sys, id, figures...)}
}

// amount reads a quantity.
func amount(r *Reader, f *Field, t string, sys unit.System) Value {
	q, err := f.Of[0].Read(t, sys)
	if err != nil {
		return r.refused(f, t, sys, err)
	}
	if fault := r.twoWays(f, 0, t, t, sys, q); fault != nil {
		return Value{Fault: fault}
	}
	return Value{SI: [2]float64{q.SI}, Bare: [2]bool{q.Bare}}
}

// twoWays asks which is meant where the point before three digits may mark thousands as well:
// both readings are what the field's n-th quantity may be. part is what was typed for that in t.
func (r *Reader) twoWays(f *Field, n int, t, part string, sys unit.System, q unit.Reading) *Fault {
	b := f.Bounds[n]
	if q.Grouped == 0 || b != nil && !(b.Holds(q.SI) && b.Holds(q.Grouped)) {
		return nil
	}
	one, other := q.TwoWays(part)
	return r.Fault(f.Name, t, sys, "typed-point-two-ways", calc.GivenFigure("one", one), calc.GivenFigure("other", other))
}

// positive reads a quantity that must be above 0.
func positive(r *Reader, f *Field, t string, sys unit.System) Value {
	v := amount(r, f, t, sys)
	if v.Fault == nil && v.SI[0] <= 0 {
		id := f.Want
		if id == "" {
			id = "want-above-zero"
		}
		return r.wanted(f, t, sys, id)
	}
	return v
}

// pair reads two quantities with a comma between, such as "25ft,3/8in".
func pair(r *Reader, f *Field, t string, sys unit.System) Value {
	if len(f.Options) > 0 {
		if id, ok := r.option(f, t); ok {
			return Value{ID: id}
		}
	}
	one, other, both := Parts(f, t)
	if !both && !f.SecondLeftOut {
		return r.wanted(f, t, sys, f.Want)
	}
	a, err := f.Of[0].Read(one, sys)
	if err != nil {
		return r.wanted(f, t, sys, f.Want)
	}
	if fault := r.twoWays(f, 0, t, one, sys, a); fault != nil {
		return Value{Fault: fault}
	}
	v := Value{SI: [2]float64{a.SI, a.SI}, Bare: [2]bool{a.Bare}}
	if both {
		b, err := f.Of[1].Read(other, sys)
		if err != nil {
			return r.wanted(f, t, sys, f.Want)
		}
		if fault := r.twoWays(f, 1, t, other, sys, b); fault != nil {
			return Value{Fault: fault}
		}
		v.SI[1], v.Bare[1] = b.SI, b.Bare
	}
	return v
}

// Parts is the texts of a pair's two quantities; both is false where it has but one. Of a
// length and a bore the last comma parts them, so that a decimal comma may stand in the
// length; where the second may be left out, the first.
func Parts(f *Field, t string) (one, other string, both bool) {
	at := strings.LastIndexByte(t, ',')
	if f.SecondLeftOut {
		at = strings.IndexByte(t, ',')
	}
	if f.Apart != "" {
		at = strings.Index(t, f.Apart)
	}
	if at < 0 {
		return t, "", false
	}
	return t[:at], t[at+1:], true
}

// user reads "10cfm", "10cfm,50%" or "6cfm,mask": air, and the share of the time it is drawn,
// all of it where that is left out, and of a mask.
func user(r *Reader, f *Field, t string, sys unit.System) Value {
	one, other, both := Parts(f, t)
	if id, ok := r.entry(Gun, one); ok && (!both || !strings.EqualFold(strings.TrimSpace(other), f.SecondWord)) {
		return r.otherGun(f, t, id, other, both, sys)
	}
	word := both && strings.EqualFold(strings.TrimSpace(other), f.SecondWord)
	if word {
		t = one
	}
	v := pair(r, f, t, sys)
	if v.Fault == nil && (!both || word) {
		v.SI[1], v.Bare[1], v.Word = 1, false, word
	}
	if v.Fault == nil && (v.SI[0] < 0 || v.SI[1] < 0 || v.SI[1] > 1) {
		return r.wanted(f, t, sys, f.Want)
	}
	return v
}

// otherGun reads a gun that sprays beside this one: it draws the air of its stamp, all the
// time where no share is given.
func (r *Reader) otherGun(f *Field, t, id, share string, given bool, sys unit.System) Value {
	e, _ := r.Guns.Get(id)
	v := Value{ID: id, SI: [2]float64{float64(e.Flow.V), 1}}
	if given {
		s, err := f.Of[1].Read(share, sys)
		if err != nil || s.SI < 0 || s.SI > 1 {
			return r.wanted(f, t, sys, f.Want)
		}
		v.SI[1] = s.SI
	}
	return v
}

// motor reads free air, or a motor's power, of which the low end of the rule is taken; SI
// is the air and the power, 0 where that was not typed.
func motor(r *Reader, f *Field, t string, sys unit.System) Value {
	if id, ok := r.option(f, t); ok {
		return Value{ID: id}
	}
	if hp, err := unit.Power.Read(t, unit.Named); err == nil {
		q, _, err := supply.FromPower(hp.SI)
		if err != nil {
			return r.wanted(f, t, sys, f.Want)
		}
		return Value{SI: [2]float64{float64(q), hp.SI}}
	}
	return amount(r, f, t, sys)
}

// whole reads a count of things that come by the piece.
func whole(r *Reader, f *Field, t string, sys unit.System) Value {
	n, ok := wholeNumber(t)
	if b := f.Bounds[0]; !ok || float64(n) < b.Low || float64(n) > b.High {
		return r.wanted(f, t, sys, f.Want, calc.CountFigure("least", int(b.Low)), calc.CountFigure("most", int(b.High)))
	}
	return Value{SI: [2]float64{float64(n)}}
}

// number reads a number without a unit.
func number(s string) (float64, bool) {
	v, err := unit.Share.Read(s, unit.US) // in hundredths
	return v.SI * 100, err == nil && v.Bare
}

func wholeNumber(s string) (int, bool) {
	v, ok := number(s)
	n := math.Round(v)
	return int(n), ok && math.Abs(v-n) < 1e-6 // a number typed is below 1e9
}

// cup finds a cup by what was typed; the answer to one that fits several asks which.
func cup(r *Reader, f *Field, t string, sys unit.System) Value {
	found, err := coat.FindCup(t)
	var several *coat.AmbiguousCup
	switch {
	case errors.As(err, &several):
		which := make([]string, len(several.Candidates))
		for i, c := range several.Candidates {
			which[i] = c.ID + " (" + c.Label + ")"
		}
		return r.wanted(f, t, sys, "which-cup", r.names(which))
	case err != nil:
		var ids []string
		for _, c := range coat.Cups() {
			ids = append(ids, c.ID)
		}
		return r.wanted(f, t, sys, "choose", r.names(ids))
	}
	return Value{ID: found.ID}
}

// cupOf is the cup of a value.
func cupOf(v Value) coat.Cup {
	c, _ := coat.FindCup(v.ID) // it was found when it was read
	return c
}
