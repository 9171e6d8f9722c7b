package presets

import (
	"fmt"
	"reflect"
	"slices"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// ground is what a table inside an entry rests on.
type ground struct {
	Basis  string `toml:"basis"`
	Source string `toml:"source"`
}

func (g ground) standing() calc.Standing {
	return calc.Standing{Basis: calc.Basis(g.Basis), Source: g.Source}
}

func (g *ground) check() string {
	o := origin{Basis: g.Basis, Source: g.Source}
	return o.check("table")
}

// claim makes the shop's own a table that its file gives without saying what it rests
// on.
func (g *ground) claim(own *ground) {
	o := origin{Basis: g.Basis, Source: g.Source}
	o.claim(&origin{Basis: own.Basis, Source: own.Source})
	g.Basis, g.Source = o.Basis, o.Source
}

func (e *coatEntry) claim(own *coatEntry) {
	if own.Cup != nil {
		e.Cup.claim(&own.Cup.ground)
	}
	if own.Thinner != nil {
		e.Thinner.claim(&own.Thinner.ground)
	}
	if own.Film != nil {
		e.Film.claim(&own.Film.ground)
	}
	if own.Lay != nil {
		e.Lay.claim(&own.Lay.ground)
	}
	if own.Mix != nil {
		e.Mix.claim(&own.Mix.ground)
	}
}

func (e *gunEntry) claim(own *gunEntry) {
	if own.Transfer != nil {
		e.Transfer.claim(&own.Transfer.ground)
	}
	if own.Cup != nil {
		e.Cup.claim(&own.Cup.ground)
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

func (p *percent) UnmarshalText(b []byte) (err error) {
	p.v, err = unit.ParsePercent(string(b))
	return placed(b, err)
}

type volume struct{ v unit.Volume }

func (q *volume) UnmarshalText(b []byte) (err error) {
	q.v, err = unit.ParseVolume(string(b), 0)
	return placed(b, err)
}

func (e *filmEntry) check() string {
	if e == nil {
		return ""
	}
	const least, most = calc.ThinnestFilm, calc.ThickestFilm
	switch {
	case !rising(float64(least), float64(e.Low.v), float64(e.Typical.v), float64(e.High.v), float64(most)):
		return `film: give low, typical and high, 2 to 2000 um and in that order, such as low = "2.0mil", typical = "2.2mil", high = "2.5mil"`
	case e.Most.v != 0 && !rising(float64(e.High.v), float64(e.Most.v), float64(most)):
		return "film: most must not be below high; leave it out where none is known"
	}
	return e.ground.check()
}

func (e *layEntry) check() string {
	if e == nil {
		return ""
	}
	switch {
	case !rising(1e-9, float64(e.CoatLow.v), float64(e.CoatHigh.v), float64(calc.ThickestFilm)):
		return `lay: give coat-low and coat-high, in that order, such as coat-low = "1.0mil", coat-high = "1.2mil"`
	case e.Coats < 1 || e.Coats > calc.MostCoats:
		return "lay: give coats, 1 to 20, such as coats = 2"
	case !(e.Overlap.v >= 0 && e.Overlap.v <= 0.9):
		return `lay: overlap must lie in 0 to 90%, such as overlap = "65%"`
	case !rising(10e-3, float64(e.Fan.v), 600e-3):
		return `lay: give fan, 10 to 600 mm, such as fan = "10in"`
	}
	return e.ground.check()
}

func (e *mixEntry) check() string {
	if e == nil {
		return ""
	}
	if !(e.Solids.v >= 0.01 && e.Solids.v <= 1) {
		return `mix: give solids, 1 to 100%, such as solids = "45%"`
	}
	if e.Ratio != "" {
		if _, err := coat.ParseRatio(e.Ratio); err != nil {
			return "mix: " + err.Error()
		}
	}
	return e.ground.check()
}

func (e *transferEntry) check() string {
	if e == nil {
		return ""
	}
	g := coat.GunTransfer{Transfer: e.Part.v, Pressure: e.Pressure.v, Distance: e.Distance.v}
	if _, err := g.At(g.Pressure, g.Distance); err != nil {
		return fmt.Sprintf(`transfer: %v; such as part = "65%%", pressure = "26psi", distance = "5.5in"`, err)
	}
	if !(e.Choked.v >= 0.3 && e.Choked.v <= 1) {
		return `transfer: give choked, 30 to 100%, such as choked = "90%"`
	}
	return e.ground.check()
}

func (e *cupEntry) check() string {
	if e == nil {
		return ""
	}
	if !(e.Size.v >= calc.SmallestCup && e.Size.v <= calc.LargestCup && e.Loss.v >= 0 && e.Loss.v <= e.Size.v) {
		return `cup: give size, 60 mL to 5 L, and loss, no more, such as size = "600mL", loss = "75mL"`
	}
	return e.ground.check()
}

// rising reports whether values are in order; equal ones are.
func rising(values ...float64) bool { return slices.IsSorted(values) }
