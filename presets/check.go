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
)

// fault is an entry that will not do, or the usual line where id is empty.
type fault struct{ table, id, why string }

func (f *fault) Error() string {
	if f.id == "" {
		return f.table + ": " + f.why
	}
	return fmt.Sprintf("%s %q: %s", f.table, f.id, f.why)
}

// Bounds of what an entry may hold: wider than any part made, they keep the sums sane.
const (
	leastConductance, mostConductance = 0.01, 1000.0 // dm3/(s bar)
	mostRatio                         = 0.9
	mostTurns                         = 100
	leastStep                         = unit.Gauge(0.1 * unit.PascalPerPSI) // of a stamp's pressures
)

var leastFlow, mostFlow = unit.SCFM(0.1), unit.SCFM(1000)

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
	if f := first("gun", e.Gun, func(id string, x *gunEntry) string {
		if !served[x.Class] {
			return fmt.Sprintf("no coat has a working pressure for class %q; set class to %s, or give coats one", x.Class, listed(sortedKeys(served)))
		}
		g, why := x.build()
		c.guns[id] = g
		return why
	}); f != nil {
		return f
	}
	if f := first("coat", e.Coat, func(_ string, x *coatEntry) string { return x.check(classes) }); f != nil {
		return f
	}
	if f := first("coupling", e.Coupling, func(_ string, x *couplingEntry) string {
		if x.Conductance == 0 && x.FlowCoefficient == 0 && x.Bore.v > 0 {
			x.Conductance = line.OfBore(x.Bore.v, line.FullBore).DM3PerSBar()
		}
		return x.restrictionEntry.check()
	}); f != nil {
		return f
	}
	if f := first("regulator", e.Regulator, func(_ string, x *regulatorEntry) string { return x.check() }); f != nil {
		return f
	}
	if f := first("filter", e.Filter, func(_ string, x *filterEntry) string { return x.restrictionEntry.check() }); f != nil {
		return f
	}
	if f := first("hose", e.Hose, func(_ string, x *hoseEntry) string {
		if !(x.Bore.v > 0 && x.End.v > 0 && x.End.v <= x.Bore.v) {
			return `give bore and end, end no wider than bore, such as bore = "3/8in", end = "8.5mm"`
		}
		return ""
	}); f != nil {
		return f
	}
	if f := first("bore", e.Bore, c.checkBore); f != nil {
		return f
	}
	if f := first("tolerance", e.Tolerance, func(id string, x *toleranceEntry) string {
		if err := c.tolerate(id, x); err != nil {
			return err.Error()
		}
		return ""
	}); f != nil {
		return f
	}
	o := &c.order
	o.coat, o.gun, o.coupling = ordered(e.Coat), ordered(e.Gun), ordered(e.Coupling)
	o.hose, o.regulator, o.filter = ordered(e.Hose), ordered(e.Regulator), ordered(e.Filter)
	if err := c.checkLine(); err != nil {
		return &fault{"line", "", err.Error()}
	}
	return nil
}

// first is the first entry by name with something wrong in it.
func first[E based](table string, m map[string]E, wrong func(id string, e E) string) *fault {
	for _, id := range sortedKeys(m) {
		why := m[id].base().check(id)
		if why == "" {
			why = wrong(id, m[id])
		}
		if why != "" {
			return &fault{table, id, why}
		}
	}
	return nil
}

type based interface{ base() *origin }

func (o *origin) base() *origin { return o }

func (o *origin) check(id string) string {
	if o.Name == "" {
		o.Name = id
	}
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	unprintable := func(r rune) bool { return !unicode.IsPrint(r) }
	switch {
	case id == "" || strings.ContainsFunc(id+o.Name+o.Source, unprintable):
		return "its own name, name and source must be plain text on one line, such as [coat.my-clear]"
	case id == None:
		return "none is the answer for a part that is not there; use another name"
	case !slices.Contains(bases, calc.Basis(o.Basis)):
		return fmt.Sprintf("basis %q: use %s", o.Basis, listed(texts(bases)))
	}
	return ""
}

func (e *coatEntry) check(classes map[string]bool) string {
	if !e.Waterborne {
		if e.DriesLike == "" {
			e.DriesLike = coat.ReferenceSolvent
		}
		var err error
		if e.solvent, err = coat.FindSolvent(e.DriesLike); err != nil {
			return "dries-like: " + err.Error()
		}
	}
	if e.Farther.v < 0 {
		return `farther must not be below 0, such as farther = "0.5in"`
	}
	if len(e.Working) == 0 {
		return `give a working pressure for at least one class of gun, such as working.reduced-pressure = { start = "26psi", low = "23psi", high = "30psi" }`
	}
	for _, class := range sortedKeys(e.Working) {
		b := e.Working[class]
		if !classes[class] {
			return fmt.Sprintf("working.%s: no gun is of this class; classes are %s", class, listed(sortedKeys(classes)))
		}
		if !(b.Low.v >= calc.LowestSupply && b.Low.v <= b.Start.v && b.Start.v <= b.High.v && b.High.v <= calc.TopSupply) {
			return fmt.Sprintf("working.%s: low, start and high must lie in %.0f to %.0f psi and in that order", class, calc.LowestSupply.PSI(), calc.TopSupply.PSI())
		}
	}
	return cmp.Or(e.Cup.check(), e.Thinner.check(), e.Film.check(), e.Lay.check(), e.Mix.check())
}

func (e *gunEntry) build() (gun.Gun, string) {
	for i, k := range e.Valve.Shape {
		if len(k) != 2 {
			return gun.Gun{}, fmt.Sprintf("valve.shape: knee %d must be a pair of opening and share, such as [0.8, 0.6]", i+1)
		}
	}
	switch v := e.Valve; {
	case restrictionFault(v.Conductance, v.Ratio) != "":
		return gun.Gun{}, "valve: " + restrictionFault(v.Conductance, v.Ratio)
	case !(v.Turns > 0 && v.Turns <= mostTurns):
		return gun.Gun{}, "valve: give turns from shut to open, such as turns = 2.0"
	case !(e.Cap.v >= leastStep && e.Inlet.v >= e.Cap.v+leastStep && e.Inlet.v <= calc.TopSupply):
		return gun.Gun{}, fmt.Sprintf(`give inlet, at most %.0f psi, and below it cap, at least 0.1 psi, such as inlet = "32psi", cap = "20psi"`, calc.TopSupply.PSI())
	case !(e.Flow.v >= leastFlow && e.Flow.v <= mostFlow):
		return gun.Gun{}, fmt.Sprintf(`give flow, %.1f to %.0f cfm, such as flow = "10cfm"`, leastFlow.SCFM(), mostFlow.SCFM())
	case e.CapLimit.v < 0:
		return gun.Gun{}, `cap-limit must be above 0; leave it out where the class has none`
	case !(e.Nearest.v > 0 && e.Farthest.v > e.Nearest.v):
		return gun.Gun{}, `nearest must be above 0 and farthest beyond it, such as nearest = "5in", farthest = "7in"`
	}
	v := gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(e.Valve.Conductance), B: e.Valve.Ratio},
		Turns: e.Valve.Turns,
	}
	for _, k := range e.Valve.Shape {
		v.Shape = append(v.Shape, gun.Knee{Opening: k[0], Share: k[1]})
	}
	if why := cmp.Or(e.Transfer.check(), e.Cup.check()); why != "" {
		return gun.Gun{}, why
	}
	g, err := gun.New(gun.Stamp{Inlet: e.Inlet.v, Flow: e.Flow.v, Cap: e.Cap.v}, e.CapLimit.v, v)
	if err != nil {
		return g, err.Error()
	}
	return g, ""
}

func (e *regulatorEntry) check() string {
	if why := e.restrictionEntry.check(); why != "" {
		return why
	}
	if !(e.Droop.v >= 0 && e.RatedFlow.v >= leastFlow) {
		return `give droop and the rated-flow it is measured at, such as droop = "5psi", rated-flow = "100cfm"`
	}
	return ""
}

// check works the conductance out from the flow coefficient where it is not given, and
// says what is wrong with it.
func (e *restrictionEntry) check() string {
	if e.FlowCoefficient < 0 || e.Ratio > 1 {
		return "flow-coefficient must be above 0, and ratio at most " + fmt.Sprint(mostRatio)
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

func restrictionFault(c, b float64) string {
	switch {
	case !(c >= leastConductance && c <= mostConductance):
		return fmt.Sprintf("give conductance, %g to %g dm3/(s bar), such as conductance = 4.0", leastConductance, mostConductance)
	case !(b >= 0 && b <= mostRatio):
		return fmt.Sprintf("ratio must lie in 0 to %g, such as ratio = 0.3", mostRatio)
	}
	return ""
}

// ownSource is the source of what a shop's file says without one.
const ownSource = "this shop's own file"

// claim makes the shop's own what its file changes without saying what it rests on,
// and works out anew what follows from a value it changes.
func (c *Catalogue) claim(own *entries) {
	claimed(c.entries.Coat, own.Coat)
	claimed(c.entries.Gun, own.Gun)
	claimed(c.entries.Coupling, own.Coupling)
	claimed(c.entries.Hose, own.Hose)
	claimed(c.entries.Regulator, own.Regulator)
	claimed(c.entries.Filter, own.Filter)
	claimed(c.entries.Bore, own.Bore)
	claimed(c.entries.Tolerance, own.Tolerance)
	for id, e := range own.Coat {
		c.entries.Coat[id].claim(e)
	}
	for id, e := range own.Gun {
		c.entries.Gun[id].claim(e)
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

func claimed[E based](all, own map[string]E) {
	for id, e := range own {
		if !onlyTables(e) {
			all[id].base().claim(e.base())
		}
	}
}

// claim makes o the shop's own where its file, own, does not say what it rests on.
func (o *origin) claim(own *origin) {
	if own.Basis == "" {
		o.Basis = string(calc.OwnReadings)
	}
	if own.Source == "" {
		source := ownSource
		if o.Source != "" {
			source += ", over: " + o.Source
		}
		o.Source = source
	}
}
