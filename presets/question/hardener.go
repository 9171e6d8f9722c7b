package question

import (
	"boothset/calc"
	"boothset/presets/catalogue"
)

// Hardener is what the coat is hardened with; the coat's own where it was not answered, and
// where that has none named, one that is not known.
var Hardener = &Field{Name: "hardener", Read: choice, Options: catalogue.HardenerNames(), Default: OfEntry, Part: PartCoat}

// hardener resolves it for a family of coats.
func (v *resolver) hardener(e *catalogue.Coat) calc.Hardener {
	if !v.has(Hardener) {
		return e.Hardener
	}
	x, _ := v.value(Hardener)
	return calc.Hardener(x.ID)
}

// KnowsHardener reports whether the coat that was answered names its own hardener, so that it
// need not be asked.
func (r *Reader) KnowsHardener(a Answers) bool {
	e, ok := r.Coats.Get(a.ID(Coat))
	return ok && e.Hardener != calc.UnknownHardener
}

// Changed is the answers with a field answered anew by whoever goes on from them: another coat
// does not keep the hardener and the stage that were answered for the one before.
func (a Answers) Changed(f *Field, values ...Value) Answers {
	changed := a.With(f, values...)
	if f == Coat && changed.ID(Coat) != a.ID(Coat) {
		return changed.With(Hardener).With(Stage)
	}
	return changed
}
