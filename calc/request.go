package calc

import (
	"fmt"

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

// Standing is a basis with the source that gives it.
type Standing struct {
	Basis  Basis
	Source string
}

// Band is where a coat starts on a class of gun, and how far it may be moved.
type Band struct {
	Start, Low, High unit.Gauge
	Standing
}

// Coat is what the air needs to know of a coating.
type Coat struct {
	ID, Name   string
	Waterborne bool
	Solvent    coat.Solvent // that it dries like, unless waterborne
	Working    Band         // on the gun of the request
	Farther    unit.Length  // how much farther than the jet's reach it is held
	Isocyanate bool         // hardened with isocyanate
}

// Gun is the gun of a request with what its class says of it.
type Gun struct {
	gun.Gun
	ID, Name string
	// Nearest and Farthest bound the distance of the class.
	Nearest, Farthest unit.Length
	Standing                   // of its stamp
	Distance          Standing // of its distances
}

// Day is the air and what is in it.
type Day struct {
	Air      unit.Temp
	Humidity float64 // fraction of saturation, 0..1
	Panel    unit.Temp
	Altitude unit.Length
}

// Place is where in the line something sits.
type Place uint8

// Where a regulator can be: at the wall, at the gun's foot, or nowhere.
const (
	Wall Place = iota
	Foot
	Nowhere
)

// Gauge is where the gun's pressure is read.
type Gauge uint8

// The places of the gauge: behind the inlet valve, before it, or none at the gun.
const (
	InHandle Gauge = iota
	AtFoot
	NoGauge
)

// Request is one job: everything in SI, nothing left out.
type Request struct {
	Coat   Coat
	Gun    Gun
	Day    Day
	Supply unit.Gauge // at the regulator's inlet, with the gun spraying

	RegulatorAt Place
	Regulator   line.Regulator
	// RegulatorID is the catalogue's name of the regulator, RegulatorName its name in
	// the line.
	RegulatorID, RegulatorName string
	// Line is what lies between the wall and the gun's inlet valve, in order.
	Line  []line.Part
	Gauge Gauge
	// Mark is the step of the wall gauge that can be read.
	Mark unit.Drop
	// Now is the wall as it stands, flowing; used where HasNow.
	Now    unit.Gauge
	HasNow bool

	// Shop is the supply behind the regulator, where it is to be checked.
	Shop Shop

	// Swaps are what else could stand in the line.
	Swaps []Swap

	// Tolerances are what Propagate works with; Solve does not need them.
	Tolerances Tolerances
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
)

// MostParts is how many parts a line may have between the wall and the gun.
const MostParts = line.MostParts

// Problem is a request that cannot be worked: which part of it, and why.
type Problem struct{ Field, Why string }

func (p *Problem) Error() string { return p.Field + ": " + p.Why }

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
	need := func(ok bool, field, why string, args ...any) {
		if !ok {
			found.add(field, why, args...)
		}
	}
	within := func(v, low, high float64) bool { return v >= low && v <= high }
	pressures := func(field string, p unit.Gauge) {
		if !within(float64(p), float64(LowestSupply), float64(TopSupply)) {
			need(false, field, "%.4g psi (%.3g bar) is outside %.0f to %.0f psi (%.2f to %.0f bar)", p.PSI(), p.Bar(), LowestSupply.PSI(), TopSupply.PSI(), LowestSupply.Bar(), TopSupply.Bar())
		}
	}
	pressures("supply", r.Supply)
	if r.HasNow {
		pressures("wall", r.Now)
	}
	if !within(r.Mark.PSI(), 0.01, 20) {
		need(false, "mark", "a wall gauge's step of %.3g psi is outside 0.01 to 20 psi", r.Mark.PSI())
	}
	if len(r.Line) > MostParts {
		need(false, "hose", "%d parts between wall and gun; at most %d", len(r.Line), MostParts)
	}
	for i := range r.Line {
		h := &r.Line[i].Hose
		if r.Line[i].Kind != line.HoseKind {
			continue
		}
		if !within(float64(h.Length), float64(ShortestHose), float64(LongestHose)) {
			need(false, "hose", "%.3g ft (%.3g m) long is outside %.1f to %.0f ft (%.2f to %.0f m)", h.Length.Feet(), float64(h.Length), ShortestHose.Feet(), LongestHose.Feet(), float64(ShortestHose), float64(LongestHose))
		}
		if !within(float64(h.Bore), float64(NarrowestHose), float64(WidestHose)) {
			need(false, "hose", "a bore of %.3g in (%.3g mm) is outside %.2f to %.2f in (%.0f to %.0f mm)", h.Bore.Inches(), h.Bore.MM(), NarrowestHose.Inches(), WidestHose.Inches(), NarrowestHose.MM(), WidestHose.MM())
		}
	}
	return found
}

// problems is everything wrong with a day.
func (d *Day) problems() (p problems) {
	p.temp("temp", d.Air)
	p.temp("panel", d.Panel)
	if !(d.Humidity >= 0.01 && d.Humidity <= 1) {
		p.add("humidity", "%.3g %% is outside 1 to 100 %%", d.Humidity*100)
	}
	if !(d.Altitude >= LowestSite && d.Altitude <= HighestSite) {
		p.add("altitude", "%.0f ft (%.0f m) is outside %.0f to %.0f ft (%.0f to %.0f m)", d.Altitude.Feet(), float64(d.Altitude), LowestSite.Feet(), HighestSite.Feet(), float64(LowestSite), float64(HighestSite))
	}
	return p
}

func (p *problems) add(field, why string, args ...any) {
	*p = append(*p, Problem{field, fmt.Sprintf(why, args...)})
}

// temp adds a problem where the air, or what stands in it, is not as warm as a request
// may hold.
func (p *problems) temp(field string, t unit.Temp) {
	if !(t >= ColdestAir && t <= HottestAir) {
		p.add(field, "%.0f C (%.0f F) is outside %.0f to %.0f C (%.0f to %.0f F)", t.C(), t.F(), ColdestAir.C(), HottestAir.C(), ColdestAir.F(), HottestAir.F())
	}
}
