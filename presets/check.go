package presets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
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

// check builds what the entries describe, so that a fault shows when the file is
// read and not at the bench. The first fault by table and name is given.
func (c *Catalogue) check() *fault {
	e := &c.entries
	classes, served := map[string]bool{}, map[string]bool{}
	for id, x := range e.Gun {
		if x.Class == "" {
			x.Class = id
		}
		classes[x.Class] = true
	}
	for _, x := range e.Coat {
		for class := range x.Working {
			served[class] = true
		}
	}
	if f := first("gun", e.Gun, c.words, func(id string, x *gunEntry) *said {
		if !served[x.Class] {
			return sentence("file-class", text("class", x.Class), text("names", c.words.Listed(sortedKeys(served))))
		}
		g, why := x.build(c.words)
		c.guns[id] = g
		return why
	}); f != nil {
		return f
	}
	if f := first("coat", e.Coat, c.words, func(_ string, x *coatEntry) *said { return x.check(classes, c.words) }); f != nil {
		return f
	}
	if f := first("coupling", e.Coupling, c.words, func(_ string, x *couplingEntry) *said {
		if x.Conductance == 0 && x.FlowCoefficient == 0 && x.Bore.v > 0 {
			x.Conductance = line.OfBore(x.Bore.v, line.FullBore).DM3PerSBar()
		}
		return x.restrictionEntry.check()
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
	if f := first("tolerance", e.Tolerance, c.words, func(id string, x *toleranceEntry) *said {
		return c.tolerate(id, x)
	}); f != nil {
		return f
	}
	o := &c.order
	o.coat, o.gun, o.coupling = ordered(e.Coat), ordered(e.Gun), ordered(e.Coupling)
	o.hose, o.regulator, o.filter = ordered(e.Hose), ordered(e.Regulator), ordered(e.Filter)
	return nil
}

// first is the first entry by name with something wrong in it.
func first[E based](table string, m map[string]E, w *words.Words, wrong func(id string, e E) *said) *fault {
	for _, id := range sortedKeys(m) {
		if b := m[id].base(); b.Name == "" {
			b.Name = nameOf(table, id, w)
		}
		why := m[id].base().check(id, w)
		if why == nil {
			why = wrong(id, m[id])
		}
		if why != nil {
			return &fault{table, id, why}
		}
	}
	return nil
}

// nameOf is what an entry without a name of its own is called: as the sentences name the
// shipped one of its id, a regulator by its size, else by its id.
func nameOf(table, id string, w *words.Words) string {
	if name := "name-" + table + "-" + id; w.Has(name) {
		return w.Say(name)
	}
	if size, err := unit.ParseLength(id, 0); err == nil && table == "regulator" {
		return w.Text(unit.US, "name-regulator", calc.Figures{text("size", unit.US.Bore(size))})
	}
	return id
}

type based interface{ base() *origin }

func (o *origin) base() *origin { return o }

func (o *origin) check(id string, w *words.Words) *said {
	o.Source = w.Say(o.Source)
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	unprintable := func(r rune) bool { return !unicode.IsPrint(r) }
	switch {
	case id == "" || slices.ContainsFunc([]string{id, o.Name, o.Source}, func(s string) bool { return strings.ContainsFunc(s, unprintable) }):
		return sentence("file-plain-text")
	case id == None:
		return sentence("file-none")
	case !slices.Contains(bases, calc.Basis(o.Basis)):
		return sentence("file-basis", text("basis", o.Basis), text("names", w.Listed(texts(bases))))
	}
	return nil
}

func (e *coatEntry) check(classes map[string]bool, w *words.Words) *said {
	if !e.Waterborne {
		if e.DriesLike == "" {
			e.DriesLike = coat.ReferenceSolvent
		}
		var err error
		if e.solvent, err = coat.FindSolvent(e.DriesLike); err != nil {
			return because("file-dries-like", err)
		}
	}
	if e.Farther.v < 0 {
		return sentence("file-farther")
	}
	if len(e.Working) == 0 {
		return sentence("file-working", text("given", `{ start = "26psi", low = "23psi", high = "30psi" }`))
	}
	for _, class := range sortedKeys(e.Working) {
		b := e.Working[class]
		if !classes[class] {
			return sentence("file-working-class", text("class", class), text("names", w.Listed(sortedKeys(classes))))
		}
		if !(b.Low.v >= calc.LowestSupply && b.Low.v <= b.Start.v && b.Start.v <= b.High.v && b.High.v <= calc.TopSupply) {
			return sentence("file-working-order", text("class", class), bare(figure("low", calc.FigureGauge, calc.LowestSupply)), figure("high", calc.FigureGauge, calc.TopSupply))
		}
	}
	return cmp.Or(e.Cup.check(w), e.Thinner.check(w), e.Film.check(w), e.Lay.check(w), e.Mix.check(w))
}

func (e *gunEntry) build(w *words.Words) (gun.Gun, *said) {
	for i, k := range e.Valve.Shape {
		if len(k) != 2 {
			return gun.Gun{}, sentence("file-valve-knee", count("knee", i+1))
		}
	}
	switch v := e.Valve; {
	case restrictionFault(v.Conductance, v.Ratio) != nil:
		return gun.Gun{}, under("file-valve", restrictionFault(v.Conductance, v.Ratio))
	case !(v.Turns > 0 && v.Turns <= mostTurns):
		return gun.Gun{}, sentence("file-valve-turns")
	case !(e.Cap.v >= leastStep && e.Inlet.v >= e.Cap.v+leastStep && e.Inlet.v <= calc.TopSupply):
		return gun.Gun{}, sentence("file-stamp", figure("most", calc.FigureGauge, calc.TopSupply), figure("least", calc.FigureGauge, leastStep))
	case !(e.Flow.v >= leastFlow && e.Flow.v <= mostFlow):
		return gun.Gun{}, sentence("file-flow", bare(figure("low", calc.FigureFlow, leastFlow)), figure("high", calc.FigureFlow, mostFlow))
	case e.CapLimit.v < 0:
		return gun.Gun{}, sentence("file-cap-limit")
	case !(e.Nearest.v > 0 && e.Farthest.v > e.Nearest.v):
		return gun.Gun{}, sentence("file-nearest")
	}
	v := gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(e.Valve.Conductance), B: e.Valve.Ratio},
		Turns: e.Valve.Turns,
	}
	for _, k := range e.Valve.Shape {
		v.Shape = append(v.Shape, gun.Knee{Opening: k[0], Share: k[1]})
	}
	if why := cmp.Or(e.Transfer.check(w), e.Cup.check(w)); why != nil {
		return gun.Gun{}, why
	}
	g, err := gun.New(gun.Stamp{Inlet: e.Inlet.v, Flow: e.Flow.v, Cap: e.Cap.v}, e.CapLimit.v, v)
	if err != nil {
		return g, told(err)
	}
	return g, nil
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

// check works the conductance out from the flow coefficient where it is not given, and
// says what is wrong with it.
func (e *restrictionEntry) check() *said {
	if e.FlowCoefficient < 0 || e.Ratio > 1 {
		return sentence("file-flow-coefficient", figure("most", calc.FigureRatio, mostRatio))
	}
	if e.Conductance == 0 && e.FlowCoefficient > 0 {
		e.Conductance = line.FromValveFlow(e.FlowCoefficient, e.Ratio).DM3PerSBar()
	}
	return restrictionFault(e.Conductance, e.Ratio)
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
func (c *Catalogue) claim(own *entries) {
	claimed(c.entries.Coat, own.Coat, c.words)
	claimed(c.entries.Gun, own.Gun, c.words)
	claimed(c.entries.Coupling, own.Coupling, c.words)
	claimed(c.entries.Hose, own.Hose, c.words)
	claimed(c.entries.Regulator, own.Regulator, c.words)
	claimed(c.entries.Filter, own.Filter, c.words)
	claimed(c.entries.Bore, own.Bore, c.words)
	claimed(c.entries.Usual, own.Usual, c.words)
	claimed(c.entries.Tolerance, own.Tolerance, c.words)
	for id, e := range own.Coat {
		c.entries.Coat[id].claim(e, c.words)
	}
	for id, e := range own.Gun {
		c.entries.Gun[id].claim(e, c.words)
	}
	for id, e := range own.Regulator {
		c.entries.Regulator[id].restrictionEntry.claim(&e.restrictionEntry)
	}
	for id, e := range own.Filter {
		c.entries.Filter[id].restrictionEntry.claim(&e.restrictionEntry)
	}
	for id, e := range own.Coupling {
		c.entries.Coupling[id].restrictionEntry.claim(&e.restrictionEntry)
		if e.Bore.v > 0 && e.Conductance == 0 {
			c.entries.Coupling[id].Conductance = 0 // to come from the new bore
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
