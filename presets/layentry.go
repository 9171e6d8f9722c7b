package presets

import (
	"reflect"
	"slices"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// ground is what a table inside an entry rests on.
type ground struct {
	Basis  string `toml:"basis"`
	Source string `toml:"source"`
}

func (g *ground) standing() calc.Ground {
	return calc.Ground{Basis: calc.Basis(g.Basis), Source: g.Source}
}

func (g *ground) check(w *words.Words) *said {
	o := origin{Basis: g.Basis, Source: g.Source}
	return o.check("table", w)
}

// claim makes the shop's own a table that its file gives without saying what it rests
// on.
func (g *ground) claim(own *ground, w *words.Words) {
	o := origin{Basis: g.Basis, Source: g.Source}
	o.claim(&origin{Basis: own.Basis, Source: own.Source}, w)
	g.Basis, g.Source = o.Basis, o.Source
}

func (e *coatEntry) claim(own *coatEntry, w *words.Words) {
	if own.Cup != nil {
		e.Cup.claim(&own.Cup.ground, w)
	}
	if own.Thinner != nil {
		e.Thinner.claim(&own.Thinner.ground, w)
	}
	if own.Film != nil {
		e.Film.claim(&own.Film.ground, w)
	}
	if own.Lay != nil {
		e.Lay.claim(&own.Lay.ground, w)
	}
	if own.Mix != nil {
		e.Mix.claim(&own.Mix.ground, w)
	}
}

func (e *gunEntry) claim(own *gunEntry, w *words.Words) {
	if own.Transfer != nil {
		e.Transfer.claim(&own.Transfer.ground, w)
	}
	if own.Cup != nil {
		e.Cup.claim(&own.Cup.ground, w)
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

// filmEntry is the dry film that a coat wants over all coats.
type filmEntry struct {
	ground
	Low     length `toml:"low"`
	Typical length `toml:"typical"`
	High    length `toml:"high"`
	Most    length `toml:"most"`
}

// layEntry is how a coat is laid.
type layEntry struct {
	ground
	CoatLow  length  `toml:"coat-low"`
	CoatHigh length  `toml:"coat-high"`
	Coats    int     `toml:"coats"`
	Overlap  percent `toml:"overlap"`
	Fan      length  `toml:"fan"`
}

// mixEntry is what a ready mix of a coat is.
type mixEntry struct {
	ground
	Solids percent `toml:"solids"`
	Ratio  string  `toml:"ratio"`
}

// transferEntry is what a class of gun transfers, held so.
type transferEntry struct {
	ground
	Part     percent  `toml:"part"`
	Pressure pressure `toml:"pressure"`
	Distance length   `toml:"distance"`
	Choked   percent  `toml:"choked"`
}

// cupEntry is a gun's cup.
type cupEntry struct {
	ground
	Size volume `toml:"size"`
	Loss volume `toml:"loss"`
}

type percent struct{ v float64 }

func (p *percent) UnmarshalText(b []byte) error { return placed(b, p.read(string(b))) }

func (p *percent) read(s string) (err error) {
	p.v, err = unit.ParsePercent(s)
	return err
}

type volume struct{ v unit.Volume }

func (q *volume) UnmarshalText(b []byte) error { return placed(b, q.read(string(b))) }

func (q *volume) read(s string) (err error) {
	q.v, err = unit.ParseVolume(s, 0)
	return err
}

// What is left of a transfer with the inlet valve choked: judgement bounds it so.
const leastChoked, mostChoked = 0.3, 1.0

func (e *filmEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	const least, most = calc.ThinnestFilm, calc.ThickestFilm
	switch {
	case !rising(float64(least), float64(e.Low.v), float64(e.Typical.v), float64(e.High.v), float64(most)):
		return sentence("file-film", bare(figure("least", calc.FigureFilm, least)), figure("most", calc.FigureFilm, most))
	case e.Most.v != 0 && !rising(float64(e.High.v), float64(e.Most.v), float64(most)):
		return sentence("file-film-most")
	}
	return e.ground.check(w)
}

func (e *layEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	switch {
	case !rising(1e-9, float64(e.CoatLow.v), float64(e.CoatHigh.v), float64(calc.ThickestFilm)):
		return sentence("file-lay")
	case e.Coats < 1 || e.Coats > calc.MostCoats:
		return sentence("file-lay-coats", count("most", calc.MostCoats))
	case !(e.Overlap.v >= 0 && e.Overlap.v <= calc.MostOverlap):
		return sentence("file-lay-overlap", figure("most", calc.FigureShare, calc.MostOverlap))
	case !rising(float64(calc.NarrowestFan), float64(e.Fan.v), float64(calc.WidestFan)):
		return sentence("file-lay-fan", bare(figure("least", calc.FigureDistance, calc.NarrowestFan)), figure("most", calc.FigureDistance, calc.WidestFan))
	}
	return e.ground.check(w)
}

func (e *mixEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	if !(e.Solids.v >= calc.LeastSolids && e.Solids.v <= calc.MostSolids) {
		return sentence("file-mix-solids", bare(figure("least", calc.FigureShare, calc.LeastSolids)), figure("most", calc.FigureShare, calc.MostSolids))
	}
	if e.Ratio != "" {
		if _, err := coat.ParseRatio(e.Ratio); err != nil {
			return sentence("file-mix-ratio", text("ratio", e.Ratio))
		}
	}
	return e.ground.check(w)
}

func (e *transferEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	g := coat.GunTransfer{Transfer: e.Part.v, Pressure: e.Pressure.v, Distance: e.Distance.v}
	if _, err := g.At(g.Pressure, g.Distance); err != nil {
		return because("file-transfer", err)
	}
	if !(e.Choked.v >= leastChoked && e.Choked.v <= mostChoked) {
		return sentence("file-transfer-choked", bare(figure("least", calc.FigureShare, leastChoked)), figure("most", calc.FigureShare, mostChoked))
	}
	return e.ground.check(w)
}

func (e *cupEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	if !(e.Size.v >= calc.SmallestCup && e.Size.v <= calc.LargestCup && e.Loss.v >= 0 && e.Loss.v <= e.Size.v) {
		return sentence("file-gun-cup", bare(figure("least", calc.FigureVolume, calc.SmallestCup)), figure("most", calc.FigureVolume, calc.LargestCup))
	}
	return e.ground.check(w)
}

// rising reports whether values are in order; equal ones are.
func rising(values ...float64) bool { return slices.IsSorted(values) }
