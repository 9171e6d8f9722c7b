package presets

import (
	"cmp"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/pelletier/go-toml/v2/unstable"
)

// The entries of the catalogue as they stand in TOML. A quantity is text with its
// unit, read as it would be at the bench.

type origin struct {
	Rank   int    `toml:"rank"`
	Name   string `toml:"name"`
	Basis  string `toml:"basis"`
	Source string `toml:"source"`
}

func (o *origin) standing() calc.Ground {
	return calc.Ground{Basis: calc.Basis(o.Basis), Source: o.Source}
}

type coatEntry struct {
	origin
	Waterborne bool            `toml:"waterborne"`
	DriesLike  string          `toml:"dries-like"`
	Isocyanate bool            `toml:"isocyanate"`
	Farther    length          `toml:"farther"`
	Working    map[string]band `toml:"working"` // by gun class, as a file gives it; then bands
	Cup        *secondsEntry   `toml:"cup"`
	Thinner    *thinnerEntry   `toml:"thinner"`
	Film       *filmEntry      `toml:"film"`
	Lay        *layEntry       `toml:"lay"`
	Mix        *mixEntry       `toml:"mix"`
	bands      table[band]     // by gun class
}

// solvent is what the coat dries like, none for a waterborne one.
func (e *coatEntry) solvent() (coat.Solvent, error) {
	if e.Waterborne {
		return coat.Solvent{}, nil
	}
	return coat.FindSolvent(cmp.Or(e.DriesLike, coat.ReferenceSolvent))
}

type band struct {
	Start pressure `toml:"start"`
	Low   pressure `toml:"low"`
	High  pressure `toml:"high"`
}

type gunEntry struct {
	origin
	Class    string         `toml:"class"`
	Inlet    pressure       `toml:"inlet"`
	Flow     flow           `toml:"flow"`
	Cap      pressure       `toml:"cap"`
	CapLimit pressure       `toml:"cap-limit"`
	Nearest  length         `toml:"nearest"`
	Farthest length         `toml:"farthest"`
	Valve    valveEntry     `toml:"valve"`
	Transfer *transferEntry `toml:"transfer"`
	Cup      *cupEntry      `toml:"cup"`
}

// class is the class of a gun with an id.
func (e *gunEntry) class(id string) string { return cmp.Or(e.Class, id) }

// made is the gun that the entry describes.
func (e *gunEntry) made() (gun.Gun, error) {
	v := gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(e.Valve.Conductance), B: e.Valve.Ratio},
		Turns: e.Valve.Turns,
		Shape: make(gun.Shape, len(e.Valve.Shape)),
	}
	for i, k := range e.Valve.Shape {
		v.Shape[i] = gun.Knee{Opening: k[0], Share: k[1]}
	}
	return gun.New(gun.Stamp{Inlet: e.Inlet.v, Flow: e.Flow.v, Cap: e.Cap.v}, e.CapLimit.v, v)
}

type valveEntry struct {
	Conductance float64     `toml:"conductance"`
	Ratio       float64     `toml:"ratio"`
	Turns       float64     `toml:"turns"`
	Shape       [][]float64 `toml:"shape"`
}

// restrictionEntry is what a part passes: its sonic conductance, or the imperial flow
// coefficient Cv that it is then estimated from, and its critical ratio.
type restrictionEntry struct {
	Conductance     float64 `toml:"conductance"` // dm3/(s bar)
	FlowCoefficient float64 `toml:"flow-coefficient"`
	Ratio           float64 `toml:"ratio"`
}

type couplingEntry struct {
	origin
	Bore length `toml:"bore"`
	restrictionEntry
}

type hoseEntry struct {
	origin
	Bore length `toml:"bore"`
	End  length `toml:"end"`
}

type regulatorEntry struct {
	origin
	restrictionEntry
	Droop     pressure `toml:"droop"`
	RatedFlow flow     `toml:"rated-flow"`
}

type filterEntry struct {
	origin
	restrictionEntry
}

// lineEntry is the shop's usual line; its fields are answers, as typed.
type lineEntry struct {
	Hose        []string `toml:"hose"`
	Coupling    string   `toml:"coupling"`
	Filter      string   `toml:"filter"`
	Regulator   string   `toml:"regulator"`
	RegulatorAt string   `toml:"regulator-at"`
	Gauge       string   `toml:"gauge"`
	Supply      string   `toml:"supply"`
	Altitude    string   `toml:"altitude"`
	Mark        string   `toml:"mark"`
	Units       string   `toml:"units"`

	Compressor   string   `toml:"compressor"`
	Receiver     string   `toml:"receiver"`
	CutIn        string   `toml:"cut-in"`
	CutOut       string   `toml:"cut-out"`
	Main         string   `toml:"main"`
	Other        []string `toml:"other"`
	SprayTime    string   `toml:"spray-time"`
	ReceiverTemp string   `toml:"receiver-temp"`
	LineTemp     string   `toml:"line-temp"`
}

// toleranceEntry is how far a kind of value may be off, in percent or in the unit of
// the instrument.
type toleranceEntry struct {
	origin
	Within string `toml:"within"`
}

// The quantities keep their value in a struct: a plain number type would take a bare
// TOML number, without a unit, as SI.

type pressure struct{ v unit.Gauge }

func (p *pressure) UnmarshalText(b []byte) error { return placed(b, p.read(string(b))) }

func (p *pressure) read(s string) (err error) {
	p.v, err = unit.ParseGauge(s, 0)
	return err
}

type length struct{ v unit.Length }

func (l *length) UnmarshalText(b []byte) error { return placed(b, l.read(string(b))) }

func (l *length) read(s string) (err error) {
	l.v, err = unit.ParseLength(s, 0)
	return err
}

type flow struct{ v unit.Flow }

func (q *flow) UnmarshalText(b []byte) error { return placed(b, q.read(string(b))) }

func (q *flow) read(s string) (err error) {
	q.v, err = unit.ParseFlow(s, 0)
	return err
}

// placed gives a fault its place in the file, which the decoder finds itself for text
// but not for a bare number; b is then a piece of the file.
func placed(b []byte, err error) error {
	if err == nil {
		return nil
	}
	return unstable.NewParserError(b, "%s", err)
}
