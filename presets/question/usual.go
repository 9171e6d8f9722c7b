package question

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// shopRows is every field that the shop's usual line may answer, of whichever question.
var shopRows = func() (rows []Row) {
	for _, q := range Questions() {
		for _, row := range q.Fields {
			known := slices.ContainsFunc(rows, func(r Row) bool { return r.Field == row.Field })
			if row.OfShop() && !known {
				rows = append(rows, row)
			}
		}
	}
	return rows
}()

// Usual is the shop's usual answers.
func (r *Reader) Usual() Answers { return r.usual }

// UsualFor is the shop's usual answer to a field as text, with its units named.
func (r *Reader) UsualFor(f *Field) string { return TextOf(r.Completed(f, r.usual.Get(f), r.System())) }

// readUsual reads the shop's usual line. What ships will do, as tests check; of a shop's own
// file a fault comes as *catalogue.FileError.
func (r *Reader) readUsual() error {
	own := r.HasShop()
	if own {
		if err := r.checkKeys(); err != nil {
			return err
		}
	}
	for _, row := range shopRows {
		texts, ok := r.Catalogue.Usual(row.ShopKey(), row.Repeats)
		if !ok {
			return r.lineTakes(row.ShopKey(), row.Repeats)
		}
		for _, t := range texts {
			v := r.Read(row.Field, t, r.System())
			if v.Fault != nil {
				return r.lineFault(v.Fault)
			}
			r.usual.add(row.Name, v)
		}
	}
	if own {
		return r.checkUsual()
	}
	return nil
}

// lineFault is a fault of the shop's usual line.
func (r *Reader) lineFault(f *Fault) error {
	key := f.Field
	if key == Line.Name {
		key = Line.ShopKey()
	}
	return r.Catalogue.LineFault(key, f.Called("line: "+key))
}

// lineTakes is the fault of a key of the line that holds something else than text, or than
// a list of texts.
func (r *Reader) lineTakes(name string, list bool) error {
	takes := "takes-text"
	if list {
		takes = "takes-texts"
	}
	f := r.Fault(name, "", unit.US, "file-key-takes", calc.GivenFigure("key", "line."+name), calc.SentenceFigure("what", takes))
	return r.Catalogue.LineFault(name, f.Want())
}

// checkKeys refuses what the line has no place for, and units that are none.
func (r *Reader) checkKeys() error {
	known := []string{catalogue.UnitsKey}
	for _, row := range shopRows {
		known = append(known, row.ShopKey())
	}
	for _, key := range r.LineKeys() {
		if !slices.Contains(known, key) {
			f := r.Fault(key, "", unit.US, "file-unknown-key", calc.GivenFigure("key", "line."+key), r.names(known))
			return r.Catalogue.LineFault(key, f.Want())
		}
	}
	if own := r.OwnLineKeys(); slices.Contains(own, Line.ShopKey()) {
		for _, f := range usualLine {
			if slices.Contains(own, f.ShopKey()) {
				twice := r.Fault(f.ShopKey(), "", unit.US, "line-said-twice", calc.TextFigure("field", f.ShopKey()), calc.TextFigure("line", Line.ShopKey()))
				return r.lineFault(twice)
			}
		}
	}
	units, ok := r.Catalogue.Usual(catalogue.UnitsKey, false)
	switch systems := catalogue.SystemNames(); {
	case !ok:
		return r.lineTakes(catalogue.UnitsKey, false)
	case len(units) > 0 && !slices.Contains(systems, units[0]):
		return r.lineFault(r.Fault(catalogue.UnitsKey, units[0], unit.US, "choose", r.names(systems)))
	}
	return nil
}

// checkUsual resolves the line with a coat, a gun and a day, so that a fault in it shows at
// once, and refuses numbers that mean one thing in one system and another in the other.
func (r *Reader) checkUsual() error {
	sys := r.System()
	if _, faults := r.Plan(r.AnyJob(), sys); len(faults) > 0 {
		return r.lineFault(faults[0])
	}
	for _, row := range shopRows {
		if r.usual.Has(row.Field) {
			if f := r.Check(row.Field, r.usual.Get(row.Field), sys); f != nil {
				return r.lineFault(f)
			}
		}
		for _, v := range r.usual.Get(row.Field) {
			us, metric := r.Read(row.Field, v.Text, unit.US), r.Read(row.Field, v.Text, unit.Metric)
			if us.SI != metric.SI {
				return r.lineFault(r.Fault(row.Name, v.Text, sys, "file-units"))
			}
		}
	}
	return nil
}
