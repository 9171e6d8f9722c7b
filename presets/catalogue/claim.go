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

// rests is what a table inside an entry rests on.
func (g *ground) rests() *ground { return g }

// claimTable makes a table inside an entry the shop's own where its file, own, has it.
func claimTable[T any, P interface {
	*T
	rests() *ground
}](all, own P, w *words.Words) {
	if own != nil {
		all.rests().claim(*own.rests(), w)
	}
}

func (e *Coat) claim(own *Coat, w *words.Words) {
	claimTable(e.Cup, own.Cup, w)
	claimTable(e.Thinner, own.Thinner, w)
	claimTable(e.Film, own.Film, w)
	claimTable(e.Lay, own.Lay, w)
	claimTable(e.Mix, own.Mix, w)
	claimTable(e.VOC, own.VOC, w)
	claimTable(e.Tip, own.Tip, w)
	claimTable(e.Overlap, own.Overlap, w)
	claimTable(e.Flash, own.Flash, w)
	claimTable(e.Held, own.Held, w)
	claimTable(e.Fan, own.Fan, w)
	for id, x := range own.Then {
		e.Then[id].claim(x, w)
	}
}

func (s *Stage) claim(own *Stage, w *words.Words) {
	s.ground.claim(own.ground, w)
	claimTable(s.Cap, own.Cap, w)
	claimTable(s.Tip, own.Tip, w)
	claimTable(s.Overlap, own.Overlap, w)
	claimTable(s.Flash, own.Flash, w)
	claimTable(s.Held, own.Held, w)
}

func (e *Gun) claim(own *Gun, w *words.Words) {
	claimTable(e.Felt, own.Felt, w)
	claimTable(e.Landing, own.Landing, w)
	claimTable(e.Hand, own.Hand, w)
	claimTable(e.Cup, own.Cup, w)
	claimTable(e.Pot, own.Pot, w)
}

// claim makes room for what a shop's own flow coefficient gives.
func (e *restrictionEntry) claim(own *restrictionEntry) {
	if own.FlowCoefficient > 0 && own.Conductance == 0 {
		e.Conductance = 0
	}
}
