package catalogue

import (
	"reflect"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// claim makes the shop's own what its file changes without saying what it rests on,
// and works out anew what follows from a value it changes.
func (e *entries) claim(own *entries, w *words.Words) {
	claimed(e.Coat, own.Coat, w)
	claimed(e.Gun, own.Gun, w)
	claimed(e.Coupling, own.Coupling, w)
	claimed(e.Hose, own.Hose, w)
	claimed(e.Regulator, own.Regulator, w)
	claimed(e.Filter, own.Filter, w)
	claimed(e.Dryer, own.Dryer, w)
	claimed(e.Valve, own.Valve, w)
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
	for id, x := range own.Dryer {
		e.Dryer[id].restrictionEntry.claim(&x.restrictionEntry)
	}
	for id, x := range own.Coupling {
		e.Coupling[id].restrictionEntry.claim(&x.restrictionEntry)
		if x.Bore.V > 0 && x.Conductance == 0 {
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

// onlyTables reports whether a shop's entry gives nothing but tables that rest on
// something of their own.
func onlyTables(e any) bool {
	v := reflect.ValueOf(e).Elem()
	tables := false
	for i := range v.NumField() {
		f := v.Field(i)
		switch {
		case f.IsZero():
		case f.Kind() == reflect.Pointer:
			tables = true
		default:
			return false
		}
	}
	return tables
}

// claim makes o the shop's own where its file, own, does not say what it rests on.
func (o *origin) claim(own *origin, w *words.Words) {
	g := ground{o.Basis, o.Source}
	g.claim(ground{own.Basis, own.Source}, w)
	o.Basis, o.Source = g.Basis, g.Source
}

func (g *ground) claim(own ground, w *words.Words) {
	if own.Basis == "" {
		g.Basis = string(calc.OwnReadings)
	}
	if own.Source == "" {
		over := g.Source
		if g.Source = w.Say("source-own"); over != "" {
			g.Source = w.Text(unit.US, "source-own-over", calc.Figures{calc.TextFigure("over", w.Say(over))})
		}
	}
}

func (e *Coat) claim(own *Coat, w *words.Words) {
	if own.Cup != nil {
		e.Cup.claim(own.Cup.ground, w)
	}
	if own.Thinner != nil {
		e.Thinner.claim(own.Thinner.ground, w)
	}
	if own.Film != nil {
		e.Film.claim(own.Film.ground, w)
	}
	if own.Lay != nil {
		e.Lay.claim(own.Lay.ground, w)
	}
	if own.Mix != nil {
		e.Mix.claim(own.Mix.ground, w)
	}
	if own.VOC != nil {
		e.VOC.claim(own.VOC.ground, w)
	}
	if own.Tip != nil {
		e.Tip.claim(own.Tip.ground, w)
	}
	if own.Overlap != nil {
		e.Overlap.claim(own.Overlap.ground, w)
	}
	if own.Flash != nil {
		e.Flash.claim(own.Flash.ground, w)
	}
	if own.Held != nil {
		e.Held.claim(own.Held.ground, w)
	}
	if own.Fan != nil {
		e.Fan.claim(own.Fan.ground, w)
	}
	for id, x := range own.Then {
		e.Then[id].claim(x.ground, w)
	}
}

func (e *Gun) claim(own *Gun, w *words.Words) {
	if own.Landing != nil {
		e.Landing.claim(own.Landing.ground, w)
	}
	if own.Cup != nil {
		e.Cup.claim(own.Cup.ground, w)
	}
	if own.Pot != nil {
		e.Pot.claim(own.Pot.ground, w)
	}
}

// claim makes room for what a shop's own flow coefficient gives.
func (e *restrictionEntry) claim(own *restrictionEntry) {
	if own.FlowCoefficient > 0 && own.Conductance == 0 {
		e.Conductance = 0
	}
}
