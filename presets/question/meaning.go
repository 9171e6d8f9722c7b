package question

import (
	"boothset/calc"
	"boothset/calc/gun"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// Meaning is what an entry of a field's list comes to beside the other answers, in a system's
// units: of a coat the gun pressure that it starts at, of a gun its stamp, of a coupling its
// bore, of a filter and a regulator what they take of the gun's air. Empty where an entry's
// name says it all.
func (r *Reader) Meaning(f *Field, id string, a Answers, sys unit.System) string {
	say := func(id string, figures ...calc.Figure) string { return r.Words().Text(sys, id, figures) }
	pressure := func(name string, p unit.Gauge) calc.Figure {
		return calc.TextFigure(name, unit.Pressure.Text(sys, float64(p), unit.Usual))
	}
	switch f.Entries {
	case catalogue.KindCoat:
		if low, high, ok := r.starts(id, a.ID(Gun)); ok && low == high {
			return say("meaning-start", pressure("start", low))
		} else if ok {
			return say("meaning-starts", calc.TextFigure("low", unit.Pressure.Number(sys, float64(low), unit.Usual)), pressure("high", high))
		}
	case catalogue.KindGun:
		if e, ok := r.Guns.Get(id); ok {
			return say("meaning-gun", pressure("inlet", e.Inlet.V), pressure("cap", e.Gun().Stamp.Cap), calc.BriefFigure("air", calc.FigureFlow, e.Gun().Stamp.Flow))
		}
	case catalogue.KindCoupling:
		if e, ok := r.Couplings.Get(id); ok {
			bore := e.Bore.V
			if bore == 0 {
				bore = e.Restriction().Bore()
			}
			return say("meaning-bore", calc.TextFigure("bore", unit.Bore.Text(sys, float64(bore), unit.Usual)))
		}
	case catalogue.KindFilter:
		e, ok := r.Filters.Get(id)
		if s, air := r.stampOf(a); ok {
			return say("meaning-takes", calc.FigureOf("loss", calc.FigureDrop, calc.TakenBy(e.Restriction(), s)), air)
		}
	case catalogue.KindRegulator:
		e, ok := r.Regulators.Get(id)
		if s, air := r.stampOf(a); ok {
			return say("meaning-falls", calc.FigureOf("fall", calc.FigureDrop, calc.FallenBy(e.Regulator(), s)), air)
		}
	}
	return ""
}

// starts is the pressures that a coat starts at on a gun, or over all the classes that it goes
// through where that gun is none of them.
func (r *Reader) starts(coat, gun string) (low, high unit.Gauge, ok bool) {
	e, ok := r.Coats.Get(coat)
	if !ok {
		return 0, 0, false
	}
	classes := e.Classes()
	if g, known := r.Guns.Get(gun); known && r.GoTogether(coat, gun) {
		classes = []string{g.ClassOf(gun)}
	}
	for i, class := range classes {
		b, _ := e.On(class)
		if i == 0 {
			low, high = b.Start, b.Start
		}
		low, high = min(low, b.Start), max(high, b.Start)
	}
	return low, high, len(classes) > 0
}

// stampOf is the stamp of the gun that was answered, of one that goes with the coat where none
// was, and its air.
func (r *Reader) stampOf(a Answers) (gun.Stamp, calc.Figure) {
	id := a.ID(Gun)
	if _, ok := r.Guns.Get(id); !ok {
		_, id = r.goTogether(a.ID(Coat), "")
	}
	e, _ := r.Guns.Get(id)
	s := e.Gun().Stamp
	return s, calc.BriefFigure("air", calc.FigureFlow, s.Flow)
}
