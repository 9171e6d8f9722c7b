package presets

import (
	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// None is the answer for a part that is not there.
const None = "none"

// The answers for where a regulator and a gauge are.
const (
	AtWall   = "wall"
	AtGun    = "gun"
	InHandle = "handle"
	AtFoot   = "foot"
)

// Request turns answers into a complete request. Bare numbers are read in the
// system's units. The first answer that will not do comes as a *FieldError.
func (c *Catalogue) Request(a Answers, sys unit.System) (*calc.Request, error) {
	r, faults := c.Resolve(a, sys)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	return r, nil
}

// Resolve is Request with every answer that will not do, in the order of the fields.
// The request is complete only where there is none.
func (c *Catalogue) Resolve(a Answers, sys unit.System) (*calc.Request, []*FieldError) {
	// With room for its lists, in one piece of memory: a program that answers once pays for
	// each piece of its own.
	room := new(struct {
		calc.Request
		line  [6]line.Part
		swaps [20]calc.Swap
	})
	room.Line, room.Swaps = room.line[:0], room.swaps[:0]
	v := resolver{c: c, sys: sys, r: &room.Request}
	v.all(&a)
	return v.r, v.faults
}

// all resolves every answer. Requests and answers are large: copies of them on the way
// down would make the stack grow.
func (v *resolver) all(a *Answers) {
	c := v.c
	v.coatAndGun(a)
	v.day(a)
	v.air(a)
	v.supply(a)
	v.r.Parts = calc.GunParts{Valve: c.words.Say("part-valve"), Passages: c.words.Say("part-passages"), Cap: c.words.Say("part-cap")}
	if len(v.faults) == 0 {
		v.r.Tolerances = c.entries.tolerances
		v.r.Swaps = c.swaps(v.r)
		for _, p := range v.r.Problems() {
			if p.Field == FieldPanel && a.Panel == "" {
				continue // it is the air's, and told there
			}
			v.refuse(p.Field, Typed(a.Field(p.Field)), &p)
		}
	}
}

// Fault is what is wrong with one field of answers, nil where nothing is: the other
// fields may still be empty or wrong.
func (c *Catalogue) Fault(a Answers, field string, sys unit.System) *FieldError {
	_, faults := c.Resolve(c.only(a, field), sys)
	for _, f := range faults {
		if f.Field == field {
			return f
		}
	}
	return nil
}

// only is answers with nothing but one field, the rest filled so that they resolve.
func (c *Catalogue) only(a Answers, field string) Answers {
	o := Answers{
		Temp: "20C", Humidity: "50", Supply: "100psi",
	}
	o.Coat, o.Gun = c.pair("", "")
	if field == FieldGun || field == FieldCoat {
		o.Coat, o.Gun = a.Coat, a.Gun
	}
	o.Set(field, a.Field(field))
	switch field {
	case FieldReceiver, FieldCutIn, FieldCutOut, FieldMain, FieldOther, FieldSprayTime, FieldReceiverTemp, FieldLineTemp:
		o.Compressor = "10cfm" // without one the others are not read
	}
	if field != FieldReceiver {
		o.Receiver = "60gal"
	}
	return o
}

// pair is a coat and a gun that go together, with the one given where the catalogue has
// it; check sees to it that every coat and every gun has one.
func (c *Catalogue) pair(coat, gun Typed) (Typed, Typed) {
	_, knownCoat := c.entries.Coat.get(string(coat))
	_, knownGun := c.entries.Gun.get(string(gun))
	for _, k := range c.entries.Coat {
		if knownCoat && k.id != string(coat) {
			continue
		}
		for _, g := range c.entries.Gun {
			if knownGun && g.id != string(gun) {
				continue
			}
			if _, ok := k.e.bands.get(g.e.class(g.id)); ok {
				return Typed(k.id), Typed(g.id)
			}
		}
	}
	return "", ""
}

// resolver gathers a request and the answers that will not do.
type resolver struct {
	c      *Catalogue
	sys    unit.System
	r      *calc.Request
	faults []*FieldError
}

func newResolver(c *Catalogue, sys unit.System) resolver {
	return resolver{c: c, sys: sys, r: new(calc.Request)}
}

// fault adds an answer that will not do, with the sentence that says what would.
func (v *resolver) fault(field string, given Typed, want string, f ...calc.Figure) {
	v.faults = append(v.faults, &FieldError{field, string(given), v.c.words.Text(v.sys, want, f)})
}

// refuse adds an answer that will not do, for what an error says of it.
func (v *resolver) refuse(field string, given Typed, err error) {
	id, f := calc.SentenceOf(err)
	v.fault(field, given, id, f...)
}

// names is the figure of answers to choose from.
func (v *resolver) names(ids []string) calc.Figure { return text("names", v.c.words.Listed(ids)) }

// part is what a part of the line is called.
func (v *resolver) part(id, entry string) string {
	return v.c.words.Text(v.sys, id, calc.Figures{text("name", entry)})
}

// read parses a typed answer; without one it takes fallback, and without that it
// says that the field must be given.
func read[T any, U any](v *resolver, field string, typed, fallback Typed, parse func(string, U) (T, error), bare U) (q T) {
	if typed == "" {
		typed = fallback
	}
	q, err := parse(string(typed), bare)
	if err != nil {
		v.refuse(field, typed, err)
	}
	return q
}

func (v *resolver) coatAndGun(a *Answers) {
	w := v.c.words
	coat, okCoat := pick(v, FieldCoat, a.Coat, v.c.entries.Coat)
	g, okGun := pick(v, FieldGun, a.Gun, v.c.entries.Gun)
	if okGun {
		to := &v.r.Gun
		to.Gun, _ = g.made() // check has made it
		to.ID, to.Name = string(a.Gun), g.name(FieldGun, string(a.Gun), w)
		to.Nearest, to.Farthest = g.Nearest.v, g.Farthest.v
		to.Ground, to.Distance = g.standing(), g.standing()
	}
	if !okCoat || !okGun {
		return
	}
	b, ok := coat.bands.get(g.class(string(a.Gun)))
	if !ok {
		v.fault(FieldGun, a.Gun, "no-working-pressure", text("coat", string(a.Coat)), v.names(coat.bands.ids()))
		return
	}
	to := &v.r.Coat
	to.ID, to.Name = string(a.Coat), coat.name(FieldCoat, string(a.Coat), w)
	to.Waterborne, to.Isocyanate, to.Farther = coat.Waterborne, coat.Isocyanate, coat.Farther.v
	to.Solvent, _ = coat.solvent() // check has found it
	to.Working = calc.Band{Start: b.Start.v, Low: b.Low.v, High: b.High.v, Ground: coat.standing()}
}

func (v *resolver) day(a *Answers) {
	d := &v.r.Day
	d.Air = read(v, FieldTemp, a.Temp, "", unit.ParseTemp, v.sys.TempUnit())
	d.Humidity = read(v, FieldHumidity, a.Humidity, "", func(s string, _ struct{}) (float64, error) { return unit.ParsePercent(s) }, struct{}{})
	d.Panel = d.Air
	if a.Panel != "" {
		d.Panel = read(v, FieldPanel, a.Panel, "", unit.ParseTemp, v.sys.TempUnit())
	}
	if alt := a.Altitude.or(v.c.entries.Line.Altitude); alt != "" {
		d.Altitude = read(v, FieldAltitude, alt, "", unit.ParseLength, v.sys.LongUnit())
	}
}

func (v *resolver) air(a *Answers) {
	l := &v.c.entries.Line
	v.r.Supply = read(v, FieldSupply, a.Supply, Typed(l.Supply), unit.ParseGauge, v.sys.PressureUnit())
	v.regulator(a.Regulator.or(l.Regulator), a.RegulatorAt.or(l.RegulatorAt))
	hoses := a.Hose
	if len(hoses) == 0 {
		hoses = typed(l.Hose)
	}
	v.filter(a.Filter.or(l.Filter))
	v.hoses(hoses, a.Coupling.or(l.Coupling))
	switch g := a.Gauge.or(l.Gauge); string(g) {
	case InHandle:
		v.r.Gauge = calc.InHandle
	case AtFoot:
		v.r.Gauge = calc.AtFoot
	case None:
		v.r.Gauge = calc.NoGauge
	default:
		v.fault(FieldGauge, g, "choose", v.names([]string{InHandle, AtFoot, None}))
	}
	v.r.Mark = usualMark(v.sys)
	if mark := a.Mark.or(l.Mark); mark != "" {
		v.r.Mark = unit.Drop(read(v, FieldMark, mark, "", unit.ParseGauge, v.sys.PressureUnit()))
	}
	if a.Wall != "" {
		v.r.HasNow = true
		v.r.Now = read(v, FieldWall, a.Wall, "", unit.ParseGauge, v.sys.PressureUnit())
	}
}

func (t Typed) or(fallback string) Typed {
	if t == "" {
		return Typed(fallback)
	}
	return t
}

// pick finds an entry by id; more are answers that are allowed besides.
func pick[E any](v *resolver, field string, id Typed, t table[E], more ...string) (e E, ok bool) {
	if e, ok = t.get(string(id)); !ok {
		v.fault(field, id, "choose", v.names(append(t.ids(), more...)))
	}
	return e, ok
}
