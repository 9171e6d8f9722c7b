package calc

import (
	"time"

	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Basis is what a number rests on.
type Basis string

// The kinds of ground a number can have.
const (
	Published      Basis = "published"
	CommonPractice Basis = "common practice"
	Computed       Basis = "computed"
	Estimate       Basis = "estimate"
	OwnReadings    Basis = "this booth's readings"
	Sheet          Basis = "the product's sheet, as typed"
)

// Ground is a basis with the source that gives it: the id of a sentence with its
// figures, or the source's own words.
type Ground struct {
	Basis   Basis
	Source  string
	Figures *Figures
}

// Band is where a coat starts on a class of gun, and how far it may be moved.
type Band struct {
	Start, Low, High unit.Gauge
	Fixed            bool // as the product's sheet says: the weather does not correct it
	Ground
}

// Coat is what the air needs to know of a coating.
type Coat struct {
	ID, Name   string
	Waterborne bool
	// Solvent is what it dries like, unless waterborne; one without either does not dry: a
	// lamp cures it.
	Solvent  coat.Solvent
	Working  Band // on the gun of the request, in the stage
	Stage    Stage
	Farther  unit.Length // how much farther than the jet's reach it is held
	Hardener Hardener
}

// Gun is the gun of a request with what its class says of it.
type Gun struct {
	gun.Gun
	ID, Name string
	// ValveOfLine is the part that its line ends in where that is its inlet valve: it has none
	// of its own. Its Name is empty elsewhere.
	ValveOfLine line.Part
	// Nearest and Farthest bound the distance of the class, Felt is where its push is met
	// with FeltAt at the gun.
	Nearest, Farthest unit.Length
	Felt              gun.Felt
	FeltAt            unit.Gauge
	Ground                   // of its stamp
	Distance          Ground // of its distances
}

// Day is the air and what is in it.
type Day struct {
	Air      unit.Temp
	Humidity float64 // fraction of saturation, 0..1
	Panel    unit.Temp
	Altitude unit.Length
	// Assumed: Air or Humidity was not read today, but taken to be usual or as on another day.
	Assumed bool
}

// Assumption is an input other than the day's readings that was not known and is taken to be
// usual: its name, what it is taken to be, and how it is measured, by its sentences.
type Assumption struct {
	Name, Value, Measure string
}

// GaugePlace is where the gun's pressure is read.
type GaugePlace uint8

// The places of the gauge: downstream of the inlet valve, upstream of it, or none at the gun.
const (
	InHandle GaugePlace = iota
	AtFoot
	NoGauge
)

// GunParts is the names of the gun's own parts.
type GunParts struct{ Valve, Passages, Cap string }

// Request is one job: everything in SI, nothing left out.
type Request struct {
	Coat Coat
	// PotLife is the sheet's at PotLifeAt, 0 where not given.
	PotLife   time.Duration
	PotLifeAt unit.Temp
	// Stages is the coat in each of its stages, in order; Coat is one of them.
	Stages []Coat
	Gun    Gun
	Day    Day
	Supply unit.Gauge // before the first part of the line, with the gun spraying

	// Line is every part from the supply to the gun, in order; see lineparts.go.
	Line []line.Part
	// HoseAir is the temperature of the air in the line and the gun; 0 is the booth's.
	HoseAir unit.Temp
	// Parts is what the gun's own parts are called in the line.
	Parts GunParts
	Gauge GaugePlace
	// Mark is the step of the wall gauge that can be read.
	Mark unit.Drop
	// Now is the wall as it stands, flowing; used where HasNow.
	Now    unit.Gauge
	HasNow bool

	// Shop is the supply upstream of the regulator, where it is to be checked.
	Shop Shop

	// Assumed is what was not known and is taken to be usual.
	Assumed []Assumption

	// Swaps are what else could be in the line.
	Swaps []Swap

	// Tolerances are what package spread works with; Solve does not need them.
	Tolerances Tolerances
	// Learnt is what the line's own readings left of it, nil where none count: Line, Gun and what
	// their gauges show are then as it has them.
	Learnt *Learnt
}

// Limits of what a request may hold. Wider than any booth; they keep the sums sane.
const (
	ColdestAir    = unit.Temp(unit.ZeroCelsius - 10)
	HottestAir    = unit.Temp(unit.ZeroCelsius + 60)
	LowestSite    = unit.Length(-430) // the lowest land
	HighestSite   = unit.Length(5000)
	LowestSupply  = unit.Gauge(1 * unit.PascalPerPSI)
	TopSupply     = unit.Gauge(300 * unit.PascalPerPSI)
	ShortestHose  = unit.Length(0.5 * unit.MetrePerFoot)
	LongestHose   = unit.Length(500 * unit.MetrePerFoot)
	NarrowestHose = unit.Length(3e-3)
	WidestHose    = unit.Length(40e-3)
	FinestMark    = unit.Drop(0.01 * unit.PascalPerPSI)
	CoarsestMark  = unit.Drop(20 * unit.PascalPerPSI)
)

// Check is nil where the request can be solved, else the first thing wrong with it,
// as a *Problem.
func (r *Request) Check() error {
	if p := r.Problems(); len(p) > 0 {
		return &p[0]
	}
	return nil
}

// Problems is everything wrong with the request.
func (r *Request) Problems() []Problem {
	found := r.Day.problems()
	found.within("supply", float64(r.Supply), &SupplyBound)
	if r.HasNow {
		found.within("wall", float64(r.Now), &SupplyBound)
	}
	found.potLife(r.PotLife, r.PotLifeAt)
	found.within("mark", float64(r.Mark), &MarkBound)
	if cutOut := r.Shop.System.CutOut; r.Shop.Known && r.Supply > cutOut && r.Shop.System.CutIn <= cutOut {
		found.add("cut-out", "above-cut-out", gauge("supply", r.Supply), gauge("cutOut", cutOut))
	}
	if r.HoseAir != 0 {
		found.within("hose-temp", float64(r.HoseAir), &AirTempBound)
	}
	r.lineProblems(&found)
	return found
}

// problems is everything wrong with a day.
func (d *Day) problems() (p problems) {
	p.within("temp", float64(d.Air), &AirTempBound)
	p.within("panel", float64(d.Panel), &AirTempBound)
	p.within("humidity", d.Humidity, &HumidityBound)
	p.within("altitude", float64(d.Altitude), &AltitudeBound)
	return p
}
