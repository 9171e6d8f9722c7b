package catalogue

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// fault is an entry that will not do.
type fault struct {
	table, id string
	why       *sentence
}

// in is the fault in a language and a system's units.
func (f *fault) in(w *words.Words, sys unit.System) string {
	return f.table + " " + words.Quoted(f.id) + ": " + f.why.in(w, sys)
}

// Bounds of what an entry may hold: wider than any part made, they keep the sums sane.
const (
	leastConductance, mostConductance = 0.01, 1000.0 // dm3/(s bar)
	mostRatio                         = 0.9
	mostTurns                         = 100
	leastStep                         = unit.Gauge(0.1 * unit.PascalPerPSI) // of a stamp's pressures
	leastFlow, mostFlow               = unit.Flow(0.1 * unit.ANRPerSCFM), unit.Flow(1000 * unit.ANRPerSCFM)
)

// check works out what the entries describe, so that a fault shows when the file is
// read and not at the bench. The first fault by table and name is given.
func (c *Catalogue) check(tolerances map[string]*toleranceEntry) *fault {
	classes, served := map[string]bool{}, map[string]bool{}
	for _, g := range c.Guns {
		classes[g.Of.ClassOf(g.ID)] = true
	}
	for _, k := range c.Coats {
		for class := range k.Of.Working {
			served[class] = true
		}
	}
	if f := first("gun", c.Guns, c.words, func(id string, x *Gun) *sentence {
		if class := x.ClassOf(id); !served[class] {
			return newSentence("file-class", calc.GivenFigure("class", class), calc.TextFigure("names", c.words.Listed(sortedKeys(served))))
		}
		return x.check(c.words)
	}); f != nil {
		return f
	}
	if f := first("coat", c.Coats, c.words, func(_ string, x *Coat) *sentence { return x.check(classes, c.words) }); f != nil {
		return f
	}
	if f := first("coupling", c.Couplings, c.words, func(_ string, x *Coupling) *sentence {
		passes := x.passes()
		return passes.check()
	}); f != nil {
		return f
	}
	if f := first("regulator", c.Regulators, c.words, func(_ string, x *Regulator) *sentence { return x.check() }); f != nil {
		return f
	}
	if f := first("filter", c.Filters, c.words, func(_ string, x *Filter) *sentence { return x.restrictionEntry.check() }); f != nil {
		return f
	}
	if f := first(KindDryer, c.Dryers, c.words, func(_ string, x *Dryer) *sentence { return x.check() }); f != nil {
		return f
	}
	if f := first(KindValve, c.Valves, c.words, func(_ string, x *Valve) *sentence { return x.valveEntry.check(c.words) }); f != nil {
		return f
	}
	if f := first("hose", c.Hoses, c.words, func(_ string, x *Hose) *sentence {
		if !(x.Bore.V > 0 && x.End.V > 0 && x.End.V <= x.Bore.V) {
			return newSentence("file-hose")
		}
		return nil
	}); f != nil {
		return f
	}
	if f := first("bore", c.bores, c.words, c.checkBore); f != nil {
		return f
	}
	if f := first("usual", c.usual, c.words, c.checkUsual); f != nil {
		return f
	}
	return first("tolerance", tableOf("tolerance", tolerances, c.words), c.words, func(id string, x *toleranceEntry) *sentence { return x.check(id) })
}

// first is the first entry by name with something wrong in it.
func first[E based](kind string, t Table[E], w *words.Words, wrong func(id string, e E) *sentence) *fault {
	names := namesOf(t)
	for _, r := range t.byID() {
		why := r.Of.base().check(r.ID, names, w)
		if why == nil {
			why = wrong(r.ID, r.Of)
		}
		if why != nil {
			return &fault{kind, r.ID, why}
		}
	}
	return nil
}
