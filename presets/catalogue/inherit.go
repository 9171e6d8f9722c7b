package catalogue

import (
	"cmp"
	"reflect"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/tables"
	"boothset/presets/words"
)

// A gun has from the gun that stands for its class what its own entry leaves out, a coat what
// the coat has that it is like.

// inherit gives each gun what its entry leaves out.
func (e *entries) inherit() {
	done := map[string]bool{}
	var fill func(id string)
	fill = func(id string) {
		x := e.Gun[id]
		class := x.ClassOf(id)
		if done[id] || class == id || e.Gun[class] == nil {
			return
		}
		done[id] = true
		fill(class)
		x.fill(e.Gun[class])
	}
	for _, id := range sortedKeys(e.Gun) {
		fill(id)
	}
}

// fill takes from the class what the entry leaves out. The cap's pressure goes with the
// inlet's, but stands at the class's limit where there is one; the valve's conductance with
// the flow at the inlet, so that it takes the same share of the pressure.
func (e *Gun) fill(class *Gun) {
	e.Inlet.V, e.Flow.V = cmp.Or(e.Inlet.V, class.Inlet.V), cmp.Or(e.Flow.V, class.Flow.V)
	e.CapLimit.V = cmp.Or(e.CapLimit.V, class.CapLimit.V)
	if e.Cap.V == 0 {
		e.Cap.V = cmp.Or(e.CapLimit.V, class.Cap.V*e.Inlet.V/class.Inlet.V)
	}
	e.Nearest.V, e.Farthest.V = cmp.Or(e.Nearest.V, class.Nearest.V), cmp.Or(e.Farthest.V, class.Farthest.V)
	if e.NoValve {
		return
	}
	v, of := &e.Valve, &class.Valve
	if v.Conductance == 0 {
		inlets := float64(class.Inlet.V.Abs(unit.SCFMPressure)) / float64(e.Inlet.V.Abs(unit.SCFMPressure))
		v.Conductance = of.Conductance * float64(e.Flow.V/class.Flow.V) * inlets
	}
	v.Ratio, v.Shape, v.Turns = cmp.Or(v.Ratio, of.Ratio), cmp.Or(v.Shape, of.Shape), cmp.Or(v.Turns, of.Turns)
	v.CountsFrom = cmp.Or(v.CountsFrom, of.CountsFrom)
}

// liken makes each coat of a shop's file that is like another a copy of it, with the file's
// own values laid over. The file, own, stands laid over all already.
func (e *entries) liken(own *entries, shop *tables.Table, w *words.Words) *fault {
	const under, done = 1, 2 // way
	state := map[string]int{}
	var visit func(id string) *fault
	visit = func(id string) *fault {
		x := own.Coat[id]
		switch {
		case x == nil || x.Like == "" || state[id] == done:
			return nil
		case state[id] == under:
			return &fault{"coat", id, newSentence("file-like-cycle", calc.GivenFigure("like", x.Like))}
		case e.Coat[x.Like] == nil:
			return &fault{"coat", id, newSentence("file-like", calc.GivenFigure("like", x.Like), calc.TextFigure("names", w.Listed(sortedKeys(e.Coat))))}
		}
		state[id] = under
		if f := visit(x.Like); f != nil {
			return f
		}
		state[id] = done
		e.Coat[id] = e.Coat[x.Like].copied()
		layTable(reflect.ValueOf(e.Coat[id]).Elem(), shop.Table("coat").Table(id), nil, w) // it was laid before
		return nil
	}
	for _, id := range sortedKeys(own.Coat) {
		if f := visit(id); f != nil {
			return f
		}
	}
	return nil
}

// copied is a coat of the same values that shares none with it, and has no names yet.
func (e *Coat) copied() *Coat {
	c := *e
	detach(reflect.ValueOf(&c).Elem())
	c.Name, c.Aliases = "", nil
	return &c
}

// detach makes what a value's pointers and maps hold its own.
func detach(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanSet() {
				detach(f)
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			own := reflect.New(v.Type().Elem())
			own.Elem().Set(v.Elem())
			detach(own.Elem())
			v.Set(own)
		}
	case reflect.Map:
		if !v.IsNil() {
			own := reflect.MakeMap(v.Type())
			for _, key := range v.MapKeys() {
				entry := reflect.New(v.Type().Elem()).Elem()
				entry.Set(v.MapIndex(key))
				detach(entry)
				own.SetMapIndex(key, entry)
			}
			v.Set(own)
		}
	}
}
