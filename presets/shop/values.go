package shop

import (
	"math"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// Values are what a gun is set to, or what its gauges show. 0 is what was not said.
type Values struct {
	Supply   unit.Gauge  // at the regulator, trigger pulled
	Wall     unit.Gauge  // the regulator at the wall, trigger pulled
	Gun      unit.Gauge  // the gun's own gauge, trigger pulled
	Flow     unit.Flow   // that the gun takes
	Distance unit.Length // from the panel
	Opening  float64     // of the inlet valve, 0 shut to 1 open
	Tip      unit.Length
}

// wireValues are values as files hold them: text with its unit.
type wireValues struct {
	Supply   string `json:"supply,omitempty" toml:"supply,omitempty"`
	Wall     string `json:"wall,omitempty" toml:"wall,omitempty"`
	Gun      string `json:"gun,omitempty" toml:"gun,omitempty"`
	Flow     string `json:"flow,omitempty" toml:"flow,omitempty"`
	Distance string `json:"distance,omitempty" toml:"distance,omitempty"`
	Opening  string `json:"opening,omitempty" toml:"opening,omitempty"`
	Tip      string `json:"tip,omitempty" toml:"tip,omitempty"`
}

// valueField is one of the values: what it is asked for as, with its quantity and the bounds
// that physics or the questions set it, and its places in both forms.
type valueField struct {
	*question.Field
	si   func(*Values) float64
	set  func(*Values, float64)
	text func(*wireValues) *string
}

func (f *valueField) of() *unit.Quantity { return f.Of[0] }

// valueFields is every value, in the order that files and tables hold them.
var valueFields = [...]valueField{
	gauge("supply", func(v *Values) *unit.Gauge { return &v.Supply }, func(w *wireValues) *string { return &w.Supply }),
	gauge("wall", func(v *Values) *unit.Gauge { return &v.Wall }, func(w *wireValues) *string { return &w.Wall }),
	gauge("gun", func(v *Values) *unit.Gauge { return &v.Gun }, func(w *wireValues) *string { return &w.Gun }),
	value("flow", unit.AirFlow, calc.FigureFlow, float64(mostFlow), func(v *Values) *unit.Flow { return &v.Flow }, func(w *wireValues) *string { return &w.Flow }),
	value("distance", unit.Distance, calc.FigureDistance, float64(farthest), func(v *Values) *unit.Length { return &v.Distance }, func(w *wireValues) *string { return &w.Distance }),
	value("opening", unit.Share, calc.FigureShare, 1, func(v *Values) *float64 { return &v.Opening }, func(w *wireValues) *string { return &w.Opening }),
	value("tip", unit.Tip, calc.FigureTip, float64(widestTip), func(v *Values) *unit.Length { return &v.Tip }, func(w *wireValues) *string { return &w.Tip }),
}

// Far above what any gun takes, is held at or is fitted with: what lies beyond was mistyped.
const (
	mostFlow  = unit.Flow(100 * unit.ANRPerSCFM)
	farthest  = unit.Length(1)
	widestTip = unit.Length(5e-3)
)

func gauge(key string, of func(*Values) *unit.Gauge, text func(*wireValues) *string) valueField {
	return value(key, unit.Pressure, calc.FigureGauge, float64(calc.TopSupply), of, text)
}

func value[T ~float64](key string, q *unit.Quantity, kind calc.FigureKind, most float64, of func(*Values) *T, text func(*wireValues) *string) valueField {
	return valueField{
		question.Amount(key, q, calc.Bound{ID: "outside", High: most, Kind: kind}),
		func(v *Values) float64 { return float64(*of(v)) },
		func(v *Values, si float64) { *of(v) = T(si) }, text,
	}
}

// ValueKeys is the keys of the values, in the order that files hold them.
func ValueKeys() (keys []string) {
	for i := range valueFields {
		keys = append(keys, valueFields[i].Name)
	}
	return keys
}

// Say reads one of the values by its key, a bare number in a system's unit. What will not do
// is a fault, and changes nothing.
func (v *Values) Say(r *question.Reader, key, text string, sys unit.System) *question.Fault {
	n := slices.IndexFunc(valueFields[:], func(f valueField) bool { return f.Name == key })
	if n < 0 {
		return r.Fault("", key, sys, "choose", calc.TextFigure("names", r.Words().Listed(ValueKeys())))
	}
	f := &valueFields[n]
	got := r.Read(f.Field, text, sys)
	if fault := r.Check(f.Field, []question.Value{got}, sys); fault != nil {
		return fault
	}
	f.set(v, got.SI[0])
	return nil
}

// Or is the values, and others where they say nothing.
func (v Values) Or(others Values) Values {
	for i := range valueFields {
		if f := &valueFields[i]; f.si(&v) == 0 {
			f.set(&v, f.si(&others))
		}
	}
	return v
}

// valuesOf reads values from a file; key is the first that will not do, with what it holds.
func valuesOf(w *wireValues) (v Values, key, given string) {
	for i := range valueFields {
		f := &valueFields[i]
		t := *f.text(w)
		if t == "" {
			continue
		}
		si, err := read(t, f.of())
		if err != nil || math.IsNaN(si) || !f.Bounds[0].Holds(si) {
			return v, f.Name, t
		}
		f.set(&v, si)
	}
	return v, "", ""
}

// wire is the values as files hold them, in a system's units, to what can be set and read.
func (v *Values) wire(sys unit.System) (w wireValues) {
	for i := range valueFields {
		f := &valueFields[i]
		si := f.si(v)
		if si == 0 {
			continue
		}
		decimals := unit.Usual
		if f.of() == unit.Pressure {
			decimals = f.of().Fine(sys)
		}
		*f.text(&w) = f.of().Text(sys, si, decimals)
	}
	return w
}

// Each goes over the values that were said, in the order that files hold them.
func (v *Values) Each(do func(key string, q *unit.Quantity, si float64)) {
	for i := range valueFields {
		f := &valueFields[i]
		if si := f.si(v); si != 0 {
			do(f.Name, f.of(), si)
		}
	}
}

// Texts is the values that were said in words, in the order that files hold them.
func (v *Values) Texts(w *words.Words, sys unit.System) (all []string) {
	for i := range valueFields {
		f := &valueFields[i]
		if si := f.si(v); si != 0 {
			figure := calc.FigureOf("value", f.Bounds[0].Kind, si)
			all = append(all, w.Text(sys, "value-"+f.Name, calc.Figures{figure}))
		}
	}
	return all
}

// Heads is the heads of the values' columns in a table: what they are of, the value, its unit
// in a system.
func Heads(of string, sys unit.System) (heads []string) {
	for i := range valueFields {
		f := &valueFields[i]
		us, _, metric, _ := f.of().Pair(0)
		name := of + "_" + f.Name
		if f.of() != unit.Share {
			name += "_" + [...]string{unit.US: us, unit.Metric: metric}[sys]
		}
		heads = append(heads, name)
	}
	return heads
}

// Cells is the values as numbers in a system's units, to six digits, for the columns that Heads
// names, a share as a fraction of 1; empty for what was not said.
func (v *Values) Cells(sys unit.System) (cells []string) {
	for i := range valueFields {
		f := &valueFields[i]
		cell := ""
		if si := f.si(v); si != 0 {
			count := si
			if _, us, _, metric := f.of().Pair(si); f.of() != unit.Share {
				count = [...]float64{unit.US: us, unit.Metric: metric}[sys]
			}
			cell = strconv.FormatFloat(count, 'g', 6, 64)
		}
		cells = append(cells, cell)
	}
	return cells
}
