package calc

import (
	"cmp"
	"math"
	"slices"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// The coating and the tip that drop sizes are worked with. Estimates of the usual size:
// they set how large the drops are, of which only the change is used.
const (
	tipOutside  = unit.Length(2.2e-3) // edge the air takes the coating from
	fluidRate   = 180e-6 / 60         // m3/s
	viscosity   = 0.035               // Pa s at the gun
	tension     = 0.027               // N/m
	coreLengths = 6                   // a jet keeps its speed for about so many diameters of its exit
)

// carrier is what leaves the drops of a coat on their way, and the coat around it.
type carrier struct {
	coating  float64 // kg/m3
	liquid   float64 // of what leaves, kg/m3
	volatile float64 // its part of the drop's volume
}

// Densities of butyl acetate and water from handbooks; the rest estimates.
var (
	solventborne = carrier{coating: 950, liquid: 880, volatile: 0.55}
	waterborne   = carrier{coating: 1030, liquid: 1000, volatile: 0.75}
)

// evaporation works out how dry a coat lands on a day: its drops, from the air that makes
// them, and what they lose on their way. An estimate for comparing days and settings.
type evaporation struct {
	coat    *Coat
	gun     *Gun
	day     Day
	ambient unit.Abs
	of      carrier
}

func newEvaporation(c *Coat, g *Gun, d Day, ambient unit.Abs) evaporation {
	e := evaporation{coat: c, gun: g, day: d, ambient: ambient, of: solventborne}
	if c.Waterborne {
		e.of = waterborne
	}
	return e
}

// flightCase is a setting on a day.
type flightCase struct {
	pressure unit.Gauge  // at the gun
	nearer   unit.Length // than where the gun is held at that pressure
	day      Day
	slower   unit.TempDiff // the thinner is made for a booth this much warmer
}

// drop is the size of the drops and the jet that makes them at a pressure.
func (e *evaporation) drop(pressure unit.Gauge, t unit.Temp) (d unit.Length, jet gun.Jet, speed unit.Speed, err error) {
	a := line.NewAir(e.ambient, t)
	q, cap := e.gun.Air(pressure.Abs(e.ambient), a)
	jet = gun.JetOf(q, cap, a)
	// The speed that the jet comes to once its pressure has fallen to ambient.
	mass := float64(q.Mass())
	speed = unit.Speed(jet.Thrust / mass)
	const cp = air.GasConstant * air.Gamma / (air.Gamma - 1)
	cold := t - unit.Temp(float64(speed)*float64(speed)/(2*cp))
	d, err = coat.DropSize(coat.Atomizing{
		AirSpeed: speed, AirDensity: air.Density(e.ambient, cold), AirLiquid: mass / (fluidRate * e.of.coating),
		Density: e.of.coating, Tension: tension, Viscosity: viscosity, Prefilmer: tipOutside, Duct: tipOutside,
	})
	return d, jet, speed, err
}

// loss is the part of what can evaporate that is gone when the coat lands, and the size
// of its drops.
func (e *evaporation) loss(f flightCase) (lost float64, size unit.Length, err error) {
	return e.lossFrom(f, 0)
}

// lossFrom is loss with the gun held at a distance, 0 for where it is held at that pressure.
func (e *evaporation) lossFrom(f flightCase, at unit.Length) (lost float64, size unit.Length, err error) {
	size, jet, speed, err := e.drop(f.pressure, f.day.Air)
	if err != nil {
		return 0, 0, err
	}
	if at == 0 {
		at = distance(e.coat, e.gun, jet.Reach(e.gun.Felt)).Target - f.nearer
	}
	paint := f.day.Air - unit.Temp(f.slower)
	v := e.coat.Solvent.Vapour(paint, f.day.Air, 0, e.ambient)
	if e.coat.Waterborne {
		far := unit.Abs(f.day.Humidity) * air.SaturationPressure(f.day.Air)
		v = coat.Water().Vapour(paint, f.day.Air, far, e.ambient)
	}
	return coat.FlightLoss(coat.Flight{
		Vapour: v, Drop: size, Exit: speed, Core: coreLengths * tipOutside,
		Distance: at, Density: e.of.liquid, Volatile: e.of.volatile,
	}), size, nil
}

// referenceDay is the day that drying and evaporation in flight are relative to.
var referenceDay = Day{Air: coat.ReferenceTemp, Humidity: coat.ReferenceHumidity}

// InFlight is how dry the coat lands.
type InFlight struct {
	Known   bool    // false where the gun or the day is outside the models' range
	Drier   float64 // what is lost on the way, relative to the reference day at the coat's own start
	Growth  float64 // of the drops by the correction: 0.03 is 3 %
	Levers  []Lever // what would make it land wetter, the strongest first
	most    unit.Drop
	changes float64 // ln Drier at the coat's start, before any correction
	// At the coat's start: what is lost on the reference day and on this one, and the
	// size of the drops on this one.
	before, now float64
	size        unit.Length
}

// Lever is one thing that makes the coat land wetter, and by how much.
type Lever struct {
	ID   string
	Size Figure  // how much of it
	Less float64 // share of the loss on the way that it wins back
}

// Limits of the correction. The bounds are the plan's own: a pressure lowered further
// costs more in atomisation than it saves.
const (
	mostCorrection = 0.08 // of the coat's starting pressure
	mostGrowth     = 0.04 // of the drops
	// fullDrier is how much drier the coat must land for all of the correction to be
	// given: an estimate, chosen so that common practice for a very hot, very dry day
	// (40 C, 12 %) comes out.
	fullDrier      = 2.5
	correctionStep = unit.Drop(0.5 * unit.PascalPerPSI) // given in whole steps of this
)

// The levers' sizes.
const (
	leverPressure = unit.Drop(2 * unit.PascalPerPSI)
	leverNearer   = unit.Length(1 * unit.MetrePerInch)
	// leverGrade is how much warmer a booth the next slower thinner is made for: the
	// width of the standard grade's band on a published sealer sheet, 18 to 25 C.
	leverGrade  = unit.TempDiff(7)
	leverCooler = unit.TempDiff(5)
)

// atStart works out how dry the coat lands at its start on the day, and how far the
// pressure may be lowered for it.
func (e *evaporation) atStart() (a InFlight) {
	start := e.coat.Working.Start
	if start <= 0 {
		return a // nothing is said of a gun
	}
	var size unit.Length
	var err1, err2 error
	a.before, size, err1 = e.loss(flightCase{pressure: start, day: referenceDay})
	a.now, a.size, err2 = e.loss(flightCase{pressure: start, day: e.day})
	if err1 != nil || err2 != nil || a.before <= 0 {
		return a
	}
	a.Known = true
	a.Drier = a.now / a.before
	a.changes = logDrier(a.Drier)
	a.most = min(unit.Drop(float64(start)*mostCorrection), e.growing(start, size))
	return a
}

// logDrier is the logarithm that the correction goes by.
func logDrier(drier float64) float64 { return math.Log(math.Max(drier, 1e-3)) }

// growing is how far the pressure may be lowered from start until the drops have grown
// by mostGrowth, at most by mostCorrection: a straight line does over so short a way.
func (e *evaporation) growing(start unit.Gauge, size unit.Length) unit.Drop {
	way := unit.Drop(float64(start) * mostCorrection)
	coarser, _, _, err := e.drop(start-unit.Gauge(way), referenceDay.Air)
	if err != nil {
		return 0
	}
	growth := float64(coarser/size) - 1
	if growth <= mostGrowth {
		return way
	}
	return unit.Drop(float64(way) * mostGrowth / growth)
}

// correction lowers the pressure as the coat lands drier, in proportion to the logarithm
// of how much: bigger drops and a nearer hold land wetter. It does nothing on a slow day,
// where thick paint is warmed instead.
func (a *InFlight) correction(changes float64) unit.Drop {
	share := math.Min(math.Max(changes/math.Log(fullDrier), 0), 1)
	steps := math.Floor(float64(a.most)*share/float64(correctionStep) + 1e-9)
	return -unit.Drop(steps) * correctionStep
}

// drierOn is how dry the coat lands on another day at the setting advised for that, as
// atWorking says it of the request's own; 0 where it is not known.
func (e *evaporation) drierOn(a *InFlight, d Day) float64 {
	if !a.Known {
		return 0
	}
	start := e.coat.Working.Start
	lost, _, err := e.loss(flightCase{pressure: start, day: d})
	if err != nil {
		return 0
	}
	drier := lost / a.before
	working := workingFor(e.coat, e.gun, a.correction(logDrier(drier)), line.NewAir(e.ambient, d.Air))
	if working == start {
		return drier
	}
	if lost, _, err = e.loss(flightCase{pressure: working, day: d}); err != nil {
		return 0
	}
	return lost / a.before
}

// atWorking works out what the correction came to and what the levers would add, once the
// working pressure is known.
func (e *evaporation) atWorking(a *InFlight, working unit.Gauge, target unit.Length) {
	if !a.Known {
		return
	}
	base := flightCase{pressure: working, day: e.day}
	lost := a.now
	if working != e.coat.Working.Start {
		var size unit.Length
		var err error
		if lost, size, err = e.loss(base); err != nil {
			a.Known = false
			return
		}
		a.Drier = lost / a.before
		a.Growth = float64(size/a.size) - 1
	}
	if lost <= 0 {
		return
	}
	try := func(id string, size Figure, change func(*flightCase)) {
		f := base
		change(&f)
		after, _, err := e.loss(f)
		if less := 1 - after/lost; err == nil && less > 0.005 {
			a.Levers = append(a.Levers, Lever{ID: id, Size: size, Less: less})
		}
	}
	if lower := unit.Drop(working - e.coat.Working.Low); lower > 0 {
		lower = min(lower, leverPressure)
		try("lever-pressure", drop("size", lower), func(f *flightCase) { f.pressure -= unit.Gauge(lower) })
	}
	nearest, _ := held(e.coat, e.gun)
	if nearer := min(target-nearest, leverNearer); nearer > 0 {
		try("lever-nearer", near("size", nearer), func(f *flightCase) { f.nearer = nearer })
	}
	if !e.coat.Waterborne {
		try("lever-thinner", degrees("size", leverGrade), func(f *flightCase) { f.slower = leverGrade })
	}
	try("lever-cooler", degrees("size", leverCooler), func(f *flightCase) {
		f.day.Humidity = math.Min(air.Reheated(f.day.Air, f.day.Humidity, f.day.Air-unit.Temp(leverCooler)), 1)
		f.day.Air -= unit.Temp(leverCooler)
	})
	slices.SortStableFunc(a.Levers, func(x, y Lever) int { return cmp.Compare(y.Less, x.Less) })
}
