package presets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// fault is an entry that will not do, or the usual line where id is empty.
type fault struct {
	table, id string
	why       *said
}

// in is the fault in a language and a system's units.
func (f *fault) in(w *words.Words, sys unit.System) string {
	why := f.why.in(w, sys)
	if f.id == "" {
		return f.table + ": " + why
	}
	return fmt.Sprintf("%s %q: %s", f.table, f.id, why)
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
func (c *Catalogue) check() *fault {
	e := c.entries
	classes, served := map[string]bool{}, map[string]bool{}
	for _, g := range e.Gun {
		classes[g.e.class(g.id)] = true
	}
	for _, k := range e.Coat {
		for _, b := range k.e.bands {
			served[b.id] = true
		}
	}
	if f := first("gun", e.Gun, c.words, func(id string, x *gunEntry) *said {
		if class := x.class(id); !served[class] {
			return sentence("file-class", text("class", class), text("names", c.words.Listed(sortedKeys(served))))
		}
		return x.check(c.words)
	}); f != nil {
		return f
	}
	if f := first("coat", e.Coat, c.words, func(_ string, x *coatEntry) *said { return x.check(classes, c.words) }); f != nil {
		return f
	}
	if f := first("coupling", e.Coupling, c.words, func(_ string, x *couplingEntry) *said {
		passes := x.passes()
		return passes.check()
	}); f != nil {
		return f
	}
	if f := first("regulator", e.Regulator, c.words, func(_ string, x *regulatorEntry) *said { return x.check() }); f != nil {
		return f
	}
	if f := first("filter", e.Filter, c.words, func(_ string, x *filterEntry) *said { return x.restrictionEntry.check() }); f != nil {
		return f
	}
	if f := first("hose", e.Hose, c.words, func(_ string, x *hoseEntry) *said {
		if !(x.Bore.v > 0 && x.End.v > 0 && x.End.v <= x.Bore.v) {
			return sentence("file-hose")
		}
		return nil
	}); f != nil {
		return f
	}
	if f := first("bore", e.Bore, c.words, c.checkBore); f != nil {
		return f
	}
	if f := first("usual", e.Usual, c.words, c.checkUsual); f != nil {
		return f
	}
	return first("tolerance", e.Tolerance, c.words, func(id string, x *toleranceEntry) *said { return x.check(id) })
}

// first is the first entry by name with something wrong in it.
func first[E based](kind string, t table[E], w *words.Words, wrong func(id string, e E) *said) *fault {
	for _, r := range t.byID() {
		why := r.e.base().check(r.id, w)
		if why == nil {
			why = wrong(r.id, r.e)
		}
		if why != nil {
			return &fault{kind, r.id, why}
		}
	}
	return nil
}

// name is what an entry of a kind is called. One without a name of its own is called as
// the sentences name the shipped one of its id, a regulator by its size, else by its id.
func (o *origin) name(kind, id string, w *words.Words) string {
	if o.Name != "" {
		return o.Name
	}
	if name := "name-" + kind + "-" + id; w.Has(name) {
		return w.Say(name)
	}
	if size, err := unit.ParseLength(id, 0); err == nil && kind == FieldRegulator {
		return w.Text(unit.US, "name-regulator", calc.Figures{text("size", unit.US.Bore(size))})
	}
	return id
}

// kindOf is what a part of an id is called behind its name in a sentence: the id itself
// unless the language has another word for the shipped one.
func (c *Catalogue) kindOf(field, id string) string {
	if kind := "kind-" + field + "-" + id; c.words.Has(kind) {
		return c.words.Say(kind)
	}
	return id
}

type based interface{ base() *origin }

func (o *origin) base() *origin { return o }

func (o *origin) check(id string, w *words.Words) *said {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	unprintable := func(r rune) bool { return !unicode.IsPrint(r) }
	switch {
	case id == "" || slices.ContainsFunc([]string{id, o.Name, w.Say(o.Source)}, func(s string) bool { return strings.ContainsFunc(s, unprintable) }):
		return sentence("file-plain-text")
	case id == None:
		return sentence("file-none")
	case !slices.Contains(bases, calc.Basis(o.Basis)):
		return sentence("file-basis", text("basis", o.Basis), text("names", w.Listed(texts(bases))))
	}
	return nil
}

func (e *coatEntry) check(classes map[string]bool, w *words.Words) *said {
	if _, err := e.solvent(); err != nil {
		return because("file-dries-like", err)
	}
	if e.Farther.v < 0 {
		return sentence("file-farther")
	}
	if len(e.bands) == 0 {
		return sentence("file-working", text("given", `{ start = "26psi", low = "23psi", high = "30psi" }`))
	}
	for _, r := range e.bands {
		class, b := r.id, r.e
		if !classes[class] {
			return sentence("file-working-class", text("class", class), text("names", w.Listed(sortedKeys(classes))))
		}
		if !(b.Low.v >= calc.LowestSupply && b.Low.v <= b.Start.v && b.Start.v <= b.High.v && b.High.v <= calc.TopSupply) {
			return sentence("file-working-order", text("class", class), bare(figure("low", calc.FigureGauge, calc.LowestSupply)), figure("high", calc.FigureGauge, calc.TopSupply))
		}
	}
	return cmp.Or(e.Cup.check(w), e.Thinner.check(w), e.Film.check(w), e.Lay.check(w), e.Mix.check(w))
}

func (e *gunEntry) check(w *words.Words) *said {
	for i, k := range e.Valve.Shape {
		if len(k) != 2 {
			return sentence("file-valve-knee", count("knee", i+1))
		}
	}
	switch v := e.Valve; {
	case restrictionFault(v.Conductance, v.Ratio) != nil:
		return under("file-valve", restrictionFault(v.Conductance, v.Ratio))
	case !(v.Turns > 0 && v.Turns <= mostTurns):
		return sentence("file-valve-turns")
	case !(e.Cap.v >= leastStep && e.Inlet.v >= e.Cap.v+leastStep && e.Inlet.v <= calc.TopSupply):
		return sentence("file-stamp", figure("most", calc.FigureGauge, calc.TopSupply), figure("least", calc.FigureGauge, leastStep))
	case !(e.Flow.v >= leastFlow && e.Flow.v <= mostFlow):
		return sentence("file-flow", bare(figure("low", calc.FigureFlow, leastFlow)), figure("high", calc.FigureFlow, mostFlow))
	case e.CapLimit.v < 0:
		return sentence("file-cap-limit")
	case !(e.Nearest.v > 0 && e.Farthest.v > e.Nearest.v):
		return sentence("file-nearest")
	}
	if why := cmp.Or(e.Transfer.check(w), e.Cup.check(w)); why != nil {
		return why
	}
	if _, err := e.made(); err != nil {
		return told(err)
	}
	return nil
}

func (e *regulatorEntry) check() *said {
	if why := e.restrictionEntry.check(); why != nil {
		return why
	}
	if !(e.Droop.v >= 0 && e.RatedFlow.v >= leastFlow) {
		return sentence("file-droop")
	}
	return nil
}

// check says what is wrong with what a part passes.
func (e *restrictionEntry) check() *said {
	if e.FlowCoefficient < 0 || e.Ratio > 1 {
		return sentence("file-flow-coefficient", figure("most", calc.FigureRatio, mostRatio))
	}
	return restrictionFault(e.conductance(), e.Ratio)
}

// claim makes room for what a shop's own flow coefficient gives.
func (e *restrictionEntry) claim(own *restrictionEntry) {
	if own.FlowCoefficient > 0 && own.Conductance == 0 {
		e.Conductance = 0
	}
}

func restrictionFault(c, b float64) *said {
	switch {
	case !(c >= leastConductance && c <= mostConductance):
		return sentence("file-conductance", bare(figure("low", calc.FigureRatio, leastConductance)), figure("high", calc.FigureRatio, mostConductance))
	case !(b >= 0 && b <= mostRatio):
		return sentence("file-ratio", figure("most", calc.FigureRatio, mostRatio))
	}
	return nil
}

// claim makes the shop's own what its file changes without saying what it rests on,
// and works out anew what follows from a value it changes.
func (e *entries) claim(own *entries, w *words.Words) {
	claimed(e.Coat, own.Coat, w)
	claimed(e.Gun, own.Gun, w)
	claimed(e.Coupling, own.Coupling, w)
	claimed(e.Hose, own.Hose, w)
	claimed(e.Regulator, own.Regulator, w)
	claimed(e.Filter, own.Filter, w)
	claimed(e.Bore, own.Bore, w)
	claimed(e.Usual, own.Usual, w)
	claimed(e.Tolerance, own.Tolerance, w)
	for id, x := range own.Coat {
		e.Coat[id].claim(x, w)
	}
	for id, x := range own.Gun {
		e.Gun[id].claim(x, w)
	}
	for id, x := range own.Regulator {
		e.Regulator[id].restrictionEntry.claim(&x.restrictionEntry)
	}
	for id, x := range own.Filter {
		e.Filter[id].restrictionEntry.claim(&x.restrictionEntry)
	}
	for id, x := range own.Coupling {
		e.Coupling[id].restrictionEntry.claim(&x.restrictionEntry)
		if x.Bore.v > 0 && x.Conductance == 0 {
			e.Coupling[id].Conductance = 0 // to come from the new bore
		}
	}
}

func claimed[E based](all, own map[string]E, w *words.Words) {
	for id, e := range own {
		if !onlyTables(e) {
			all[id].base().claim(e.base(), w)
		}
	}
}

// claim makes o the shop's own where its file, own, does not say what it rests on.
func (o *origin) claim(own *origin, w *words.Words) {
	if own.Basis == "" {
		o.Basis = string(calc.OwnReadings)
	}
	if own.Source == "" {
		over := o.Source
		if o.Source = w.Say("source-own"); over != "" {
			o.Source = w.Text(unit.US, "source-own-over", calc.Figures{text("over", w.Say(over))})
		}
	}
}
