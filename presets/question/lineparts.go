package question

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// Line is every part of the line in order, from the supply to the gun, each as its kind and
// what of that kind it is: "coupling=slim", "hose=25ft,3/8in". It stands in place of the
// answers to the usual line.
var Line = &Field{
	Name: "line", InShop: "parts", Read: linePart, Repeats: true, Options: []string{None}, Want: "want-line", Default: ShopOrOut,
}

// HoseTemp is the temperature of the air in the hoses.
var HoseTemp = &Field{
	Name: "hose-temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound}, Default: ShopOrOut,
	Counts: func(q *calc.Request) float64 { return float64(q.HoseTemp()) },
}

// usualLine is the fields that say the usual line, in short.
var usualLine = []*Field{Regulator, RegulatorAt, Filter, Hose, Coupling}

// partFields is what reads a part of each kind, by the kind's name, in the order that air
// usually meets them.
var partFields = []*Field{
	{Name: catalogue.KindRegulator, Read: choice, Entries: catalogue.KindRegulator},
	{Name: catalogue.KindFilter, Read: choice, Entries: catalogue.KindFilter},
	{Name: catalogue.KindDryer, Read: choice, Entries: catalogue.KindDryer},
	{Name: catalogue.KindCoupling, Read: choice, Entries: catalogue.KindCoupling},
	{Name: catalogue.KindHose, Read: pair, Of: Hose.Of, Bounds: Hose.Bounds, Want: Hose.Want},
	{Name: catalogue.KindValve, Read: choice, Entries: catalogue.KindValve},
}

// PartKinds is the names of the kinds of parts of a line.
func PartKinds() []string {
	kinds := make([]string, len(partFields))
	for i, f := range partFields {
		kinds[i] = f.Name
	}
	return kinds
}

// PartField is the field that reads a part of a kind, nil where there is no such kind.
func PartField(kind string) *Field {
	for _, f := range partFields {
		if f.Name == kind {
			return f
		}
	}
	return nil
}

// LineFields is every field that says something of the line: the list of its parts, and what the
// usual line is said by.
func LineFields() []*Field { return append([]*Field{Line}, usualLine...) }

// Whole reports whether answers say the line as a list of parts.
func Whole(a Answers) bool {
	all := a.Get(Line)
	return len(all) > 1 || len(all) == 1 && all[0].ID != None
}

// ofUsualLine reports whether the field of a name says something of the usual line.
func ofUsualLine(name string) bool {
	return slices.ContainsFunc(usualLine, func(f *Field) bool { return f.Name == name })
}

// regulated reports whether the line has a regulator.
func regulated(a Answers) bool {
	if !Whole(a) {
		return a.ID(Regulator) != None
	}
	return slices.ContainsFunc(a.Get(Line), func(v Value) bool { return v.Kind == catalogue.KindRegulator })
}

// linePart reads one part of a line: its Kind, and the rest as the kind's field has it.
func linePart(r *Reader, f *Field, t string, sys unit.System) Value {
	if id, ok := r.option(f, t); ok {
		return Value{ID: id}
	}
	kind, entry, ok := cutPart(t)
	of := PartField(kind)
	if !ok || of == nil {
		return r.wanted(f, t, sys, f.Want, r.names(PartKinds()))
	}
	v := of.Read(r, of, entry, sys)
	if v.Fault != nil {
		v.Fault = r.Fault(f.Name, t, sys, v.Fault.ID, v.Fault.Figures...)
	}
	v.Kind = kind
	return v
}

// cutPart is the kind and the entry of a part's text; false where it has no "=".
func cutPart(t string) (kind, entry string, ok bool) {
	kind, entry, ok = strings.Cut(t, "=")
	return strings.ToLower(strings.TrimSpace(kind)), strings.TrimSpace(entry), ok
}

// Part is a part of a line as an answer of its own kind: its field, and its value with the
// text of that alone. The field is nil for a value that is none.
func (v Value) Part() (*Field, Value) {
	of := PartField(v.Kind)
	_, entry, _ := cutPart(v.Text)
	v.Kind, v.Text = "", entry
	return of, v
}

// PartOf is the value of a part of a line, of one of its own kind.
func PartOf(kind string, v Value) Value {
	v.Kind, v.Text = kind, kind+"="+v.Text
	return v
}

// lineParts is the line, from the list of its parts or from the answers to the usual one.
func (v *resolver) lineParts() []line.Part {
	if Whole(v.a) {
		return v.wholeLine()
	}
	return v.usualParts()
}

// wholeLine is the line as a list gives it. What else says something of the line is refused.
func (v *resolver) wholeLine() []line.Part {
	twice := "line-said-twice"
	if v.lineOfShop {
		twice = "line-of-shop"
	}
	for _, f := range usualLine {
		if v.has(f) {
			v.fault(f, twice, calc.TextFigure("field", f.Name), calc.TextFigure("line", Line.Name))
		}
	}
	var l laid
	for _, x := range v.a.Get(Line) {
		switch {
		case x.Fault != nil:
			v.faults = append(v.faults, x.Fault)
		case x.Kind == "":
			v.fault(Line, Line.Want, v.names(PartKinds()))
		default:
			_, entry := x.Part()
			l.add(v, x.Kind, entry)
		}
	}
	return l.named(v)
}

// usualParts is the usual line: the regulator at one of its ends, the filter, the hoses with a
// coupling at either end and between two.
func (v *resolver) usualParts() []line.Part {
	regulator, okRegulator := v.value(Regulator)
	at, okAt := v.value(RegulatorAt)
	filter, okFilter := v.value(Filter)
	coupling, okCoupling := v.value(Coupling)
	var l laid
	add := func(f *Field, x Value, ok bool) {
		if ok && x.ID != None {
			l.add(v, f.Name, x)
		}
	}
	add(Regulator, regulator, okRegulator && okAt && at.ID == AtWall)
	add(Filter, filter, okFilter)
	add(Coupling, coupling, okCoupling)
	for i, h := range v.a.Get(Hose) {
		if h.Fault != nil {
			v.faults = append(v.faults, h.Fault)
			continue
		}
		add(Coupling, coupling, okCoupling && i > 0)
		l.add(v, Hose.Name, h)
	}
	add(Coupling, coupling, okCoupling)
	add(Regulator, regulator, okRegulator && okAt && at.ID == AtGun)
	return l.named(v)
}

// valveOfLine makes the valve that a line ends in the inlet valve of a gun that has none of its
// own.
func (v *resolver) valveOfLine(q *calc.Request) {
	last := len(q.Line) - 1
	if !q.Gun.Valve.None || last < 0 || q.Line[last].Kind != line.ValveKind {
		return
	}
	e, _ := v.Valves.Get(q.Line[last].Entry)
	q.Gun.Valve, q.Gun.ValveOfLine = e.Valve(), q.Line[last]
	q.Parts.Valve, q.Line = q.Line[last].Name, q.Line[:last]
}

// laid is the parts of a line as they are laid, with what each is called behind its kind.
type laid struct {
	parts     []line.Part
	varieties []string
}

// add lays a part of a kind.
func (l *laid) add(v *resolver, kind string, x Value) {
	p := line.Part{Entry: x.ID}
	variety := x.ID
	switch kind {
	case catalogue.KindRegulator:
		e, _ := v.Regulators.Get(x.ID)
		p.Kind = line.RegulatorKind
		p.Regulate(e.Regulator())
	case catalogue.KindFilter:
		e, _ := v.Filters.Get(x.ID)
		p.Kind, p.Restriction, variety = line.FilterKind, e.Restriction(), e.Variety()
	case catalogue.KindDryer:
		e, _ := v.Dryers.Get(x.ID)
		p.Kind, p.Restriction, p.DewPoint, variety = line.DryerKind, e.Restriction(), e.DewPoint.V, e.Variety()
	case catalogue.KindCoupling:
		e, _ := v.Couplings.Get(x.ID)
		p.Kind, p.Restriction, variety = line.CouplingKind, e.Restriction(), e.Variety()
	case catalogue.KindValve:
		e, _ := v.Valves.Get(x.ID)
		p.Kind, p.Restriction, variety = line.ValveKind, e.Valve().Full, e.Variety()
	case catalogue.KindHose:
		bore := unit.Length(x.SI[1])
		p.Kind, p.Entry = line.HoseKind, x.Text
		p.Hose = line.Hose{Length: unit.Length(x.SI[0]), Bore: bore, Roughness: line.SmoothRubber, End: v.HoseEnd(bore)}
	}
	l.parts, l.varieties = append(l.parts, p), append(l.varieties, variety)
}

// named is the parts with their names, each unlike the others: by its place in the line and
// its variety.
func (l *laid) named(v *resolver) []line.Part {
	hoses, couplings := 0, 0
	for _, p := range l.parts {
		switch p.Kind {
		case line.HoseKind:
			hoses++
		case line.CouplingKind:
			couplings++
		}
	}
	before, coupled := 0, 0 // hoses and couplings so far
	for i := range l.parts {
		p := &l.parts[i]
		id := ""
		number := calc.CountFigure("number", before+1)
		switch p.Kind {
		case line.RegulatorKind:
			id = regulatorName(l.parts, i)
		case line.FilterKind:
			id = "part-filter"
		case line.DryerKind:
			id = "part-dryer"
		case line.ValveKind:
			id = "part-valve-in-line"
		case line.CouplingKind:
			coupled++
			switch {
			case before == hoses && (hoses > 0 || coupled > 1 && coupled == couplings):
				id = "part-coupling-gun"
			case before == 0:
				id = "part-coupling-wall"
			case before == 1:
				id = "part-coupling-whip"
			default:
				id = "part-coupling-hose"
			}
		case line.HoseKind:
			id = [...]string{"part-hose-main", "part-hose-whip", "part-hose"}[min(before, 2)]
			before++
		}
		p.Name = v.Words().Text(v.sys, id, calc.Figures{number, calc.TextFigure("name", l.varieties[i])})
	}
	l.tellApart(v)
	return l.parts
}

// regulatorName is the sentence that names the regulator of a line at a place.
func regulatorName(parts []line.Part, at int) string {
	switch {
	case calc.PlaceOf(parts, at) == calc.Foot:
		return "part-regulator-foot"
	case slices.ContainsFunc(parts[:at], func(p line.Part) bool { return p.Kind == line.RegulatorKind }):
		return "part-regulator-second"
	}
	return "part-regulator-wall"
}

// tellApart numbers the parts that would have the same name.
func (l *laid) tellApart(v *resolver) {
	seen := map[string]int{}
	for i := range l.parts {
		name := l.parts[i].Name
		if seen[name]++; seen[name] > 1 {
			l.parts[i].Name += " " + v.Words().Text(v.sys, "part-again", calc.Figures{calc.CountFigure("number", seen[name])})
		}
	}
}
