package coat_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// expanded is air of 20 C that leaves a cap at the given gauge pressure and expands
// isentropically to one atmosphere: its speed and density.
func expanded(cap unit.Gauge) (unit.Speed, float64) {
	const ambient = unit.Abs(101325)
	const power = (air.Gamma - 1) / air.Gamma
	fall := math.Pow(float64(ambient/cap.Abs(ambient)), power)
	jet := unit.Temp(293.15 * fall)
	v := math.Sqrt(2 * air.GasConstant * air.Gamma / (air.Gamma - 1) * (293.15 - float64(jet)))
	return unit.Speed(v), air.Density(ambient, jet)
}

// atomizing is a clear of 950 kg/m3 and 27 mN/m on a tip of 2.2 mm outside, at a cap
// pressure, an air flow and a fluid rate. Invented, of the usual sizes.
func atomizing(cap unit.Gauge, flow unit.Flow, rate coat.FluidRate, viscosity float64) coat.Atomizing {
	v, rho := expanded(cap)
	return coat.Atomizing{
		AirSpeed: v, AirDensity: rho, AirLiquid: float64(flow.Mass()) / (float64(rate) * 950),
		Density: 950, Tension: 0.027, Viscosity: viscosity, Prefilmer: unit.MM(2.2), Duct: unit.MM(2.2),
	}
}

func size(t require.TestingT, a coat.Atomizing) unit.Length {
	d, err := coat.DropSize(a)
	require.NoError(t, err)
	return d
}

// The correlation worked by hand: sigma/(rho U2 Dp) = 0.03/(1.2 x 1e4 x 0.01) = 2.5e-4,
// ^0.6 = 6.9e-3 (e^(0.6 ln 2.5e-4) = 0.0068986); (1000/1.2)^0.1 = 1.95904;
// mu2/(rL s Dp) = 1e-6/(1000 x 0.03 x 0.01) = 3.3333e-6, root 1.82574e-3.
// (1 + 1/2)(0.33 x 0.0068986 x 1.95904 + 0.068 x 1.82574e-3) = 6.8760e-3, of 10 mm.
func TestDropSizeByHand(t *testing.T) {
	d := size(t, coat.Atomizing{
		AirSpeed: 100, AirDensity: 1.2, AirLiquid: 2, Density: 1000, Tension: 0.03, Viscosity: 1e-3,
		Prefilmer: unit.MM(10), Duct: unit.MM(10),
	})
	assert.InEpsilon(t, 68.76e-6, float64(d), 2e-4)
}

// A prototype of the same form gave 3.1 % of drop size for 26 to 24 psi on the
// reduced-pressure gun and 3.2 % for 25 to 23 on the HVLP, and 45 to 55 um; its tip was
// not kept, so the order is checked: between 2 and 4 % each, and under the 4 % that a
// correction for weather may cost.
func TestWhatTwoPSILessCosts(t *testing.T) {
	const clear, base = 0.035, 0.035 // Pa s at the gun
	rp := size(t, atomizing(unit.PSIG(14.0), unit.SCFM(8.3), coat.MLPerMin(180), clear)) /
		size(t, atomizing(unit.PSIG(15.6), unit.SCFM(8.7), coat.MLPerMin(180), clear))
	hvlp := size(t, atomizing(unit.PSIG(7.0), unit.SCFM(12.9), coat.MLPerMin(180), base)) /
		size(t, atomizing(unit.PSIG(8.0), unit.SCFM(13.6), coat.MLPerMin(180), base))
	t.Logf("reduced-pressure %+.2f %%, HVLP %+.2f %%", 100*(rp-1), 100*(hvlp-1))
	assert.InDelta(t, 3.1, 100*float64(rp-1), 0.8)
	assert.InDelta(t, 3.2, 100*float64(hvlp-1), 0.8)
	d := float64(size(t, atomizing(unit.PSIG(15.6), unit.SCFM(8.7), coat.MLPerMin(180), clear))) * 1e6
	assert.InDelta(t, 45, d, 15)
}

func TestDropSizeNamesWhatIsOutOfRange(t *testing.T) {
	a := atomizing(unit.PSIG(10), unit.SCFM(10), coat.MLPerMin(180), 0.03)
	a.AirSpeed = 0
	_, err := coat.DropSize(a)
	assert.EqualError(t, err, "air-speed 0 m/s: give 10 to 600 m/s")
}

// flight is the flight of a drop of butyl acetate from a reduced-pressure gun, 5.5 in
// away, paint and air at the reference temperature.
func flight(t require.TestingT) coat.Flight {
	s := solvent(t, "butyl-acetate")
	return coat.Flight{
		Vapour: s.Vapour(coat.ReferenceTemp, coat.ReferenceTemp, 0, coat.ReferencePressure),
		Drop:   um(50), Exit: 300, Core: unit.MM(25), Distance: unit.Inches(5.5), Density: 880, Volatile: 0.55,
	}
}

// A drop at rest in still air is the textbook case: K = 8 rho D ln(1+B)/rhoL. Slowing
// the jet until the wind hardly counts, and integrating the d-squared law in small
// steps, gives the same as the closed form.
func TestFlightLossAgainstStepping(t *testing.T) {
	for _, exit := range []float64{5, 100, 300} {
		f := flight(t)
		f.Exit = unit.Speed(exit)
		rho := air.Density(f.Pressure, f.Air)
		nu := air.Viscosity(f.Air) / rho
		x := float64(f.Surface / f.Pressure)
		y := x * f.MolarMass / (x*f.MolarMass + (1-x)*0.02896)
		k := 8 * rho * f.Diffusivity / f.Density * math.Log(1+y/(1-y))
		const n = 20000
		d2, dx := float64(f.Drop*f.Drop), float64(f.Distance)/n
		for i := range n {
			u := exit * math.Min(1, float64(f.Core)/((float64(i)+0.5)*dx))
			re := 0.5 * u * float64(f.Drop) / nu
			d2 -= k * (1 + 0.3*math.Sqrt(re)*math.Cbrt(nu/f.Diffusivity)) * dx / (0.5 * u)
		}
		lost := math.Min(1, (1-math.Pow(d2/float64(f.Drop*f.Drop), 1.5))/f.Volatile)
		assert.Greater(t, lost, 0.01)
		assert.InEpsilon(t, lost, coat.FlightLoss(f), 1e-5, "%v m/s", exit)
	}
}

func TestHotDayLandsDrierByAboutTheVapourPressure(t *testing.T) {
	mild := coat.FlightLoss(flight(t))
	f := flight(t)
	hot := unit.Celsius(40)
	f.Vapour = solvent(t, "butyl-acetate").Vapour(hot, hot, 0, coat.ReferencePressure)
	assert.InDelta(t, 3.1, coat.FlightLoss(f)/mild, 0.4)
	assert.Greater(t, mild, 0.005)
	assert.Less(t, mild, 0.3)
	// Two psi less and an inch closer together do not win the day back.
	f.Drop *= 1.031
	f.Distance -= unit.Inches(1)
	assert.Greater(t, coat.FlightLoss(f), 1.3*mild)
}

func TestFlightLossOutsideItsRange(t *testing.T) {
	change := func(set func(*coat.Flight)) float64 {
		f := flight(t)
		set(&f)
		return coat.FlightLoss(f)
	}
	assert.Zero(t, change(func(f *coat.Flight) { f.Distance = 0 }))
	assert.Zero(t, change(func(f *coat.Flight) { f.Far = f.Surface }))
	assert.Zero(t, change(func(f *coat.Flight) { f.Volatile = 0 }))
	assert.Equal(t, 1.0, change(func(f *coat.Flight) { f.Drop = 0 }))
	assert.Equal(t, 1.0, change(func(f *coat.Flight) { f.Drop = um(1) }))
	assert.Equal(t, 1.0, change(func(f *coat.Flight) { f.Exit = -1 }))
	assert.Equal(t, 1.0, change(func(f *coat.Flight) { f.Drop = 1e-200 }))
}

func TestFlightLossIsAFractionForAnyFiniteInput(t *testing.T) {
	any := rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 1000), rapid.Float64Range(0, 1e-3))
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) float64 { return any.Draw(t, name) }
		loss := coat.FlightLoss(coat.Flight{
			Vapour: coat.Vapour{
				Surface: unit.Abs(draw("surface")), Far: unit.Abs(draw("far")), MolarMass: draw("mass"),
				Diffusivity: draw("d"), Air: unit.Temp(draw("air")), Pressure: unit.Abs(draw("p")),
			},
			Drop: unit.Length(draw("drop")), Exit: unit.Speed(draw("exit")), Core: unit.Length(draw("core")),
			Distance: unit.Length(draw("distance")), Density: draw("density"), Volatile: draw("volatile"),
		})
		require.True(t, loss >= 0 && loss <= 1, "%v", loss)
	})
}

// anyFlight is a flight of any solvent that a booth sees.
func anyFlight(t *rapid.T) (f coat.Flight, s coat.Solvent, temp float64) {
	s = rapid.SampledFrom(coat.Solvents()).Draw(t, "solvent")
	temp = rapid.Float64Range(5, 45).Draw(t, "temp")
	f = coat.Flight{
		Vapour: s.Vapour(unit.Celsius(temp), unit.Celsius(temp), 0, coat.ReferencePressure),
		Drop:   um(rapid.Float64Range(10, 100).Draw(t, "drop")), Exit: unit.Speed(rapid.Float64Range(100, 350).Draw(t, "exit")),
		Core: unit.MM(rapid.Float64Range(10, 50).Draw(t, "core")), Distance: unit.Inches(rapid.Float64Range(3, 12).Draw(t, "distance")),
		Density: 880, Volatile: rapid.Float64Range(0.2, 0.9).Draw(t, "volatile"),
	}
	return f, s, temp
}

func TestCloserCoolerOrSlowerNeverLandsDrier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, s, temp := anyFlight(t)
		here := coat.FlightLoss(f)

		closer := f
		closer.Distance -= unit.Inches(rapid.Float64Range(0, 2).Draw(t, "closer"))
		assert.LessOrEqual(t, coat.FlightLoss(closer), here, "closer")

		cooler := f
		less := unit.Celsius(temp - rapid.Float64Range(0, 10).Draw(t, "cooler"))
		cooler.Vapour = s.Vapour(less, less, 0, coat.ReferencePressure)
		assert.LessOrEqual(t, coat.FlightLoss(cooler), here, "cooler")

		damper := f
		damper.Far = f.Surface * unit.Abs(rapid.Float64Range(0, 1).Draw(t, "damper"))
		assert.LessOrEqual(t, coat.FlightLoss(damper), here, "air with more of the vapour")

		bigger := f
		bigger.Drop *= unit.Length(rapid.Float64Range(1, 2).Draw(t, "bigger"))
		assert.LessOrEqual(t, coat.FlightLoss(bigger), here, "bigger drops")
	})
}

// The thinners of one shop from fast to slow.
func TestSlowerSolventNeverLandsDrier(t *testing.T) {
	order := []string{"acetone", "mek", "toluene", "mibk", "butyl-acetate", "xylene"}
	rapid.Check(t, func(t *rapid.T) {
		f, _, temp := anyFlight(t)
		at := unit.Celsius(temp)
		last := 1.0
		for _, id := range order {
			f.Vapour = solvent(t, id).Vapour(at, at, 0, coat.ReferencePressure)
			loss := coat.FlightLoss(f)
			assert.LessOrEqual(t, loss, last, id)
			last = loss
		}
	})
}

// Less pressure makes bigger drops and a slower jet, which pull opposite ways: the
// drops win for the viscosities that are sprayed, 15 to 60 mPa s, from 24 psi at a
// reduced-pressure cap down to 5.
func TestLowerPressureNeverLandsDrier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cap := rapid.Float64Range(5, 24).Draw(t, "cap")
		lower := cap - rapid.Float64Range(0.1, 2).Draw(t, "less")
		rate := coat.MLPerMin(rapid.Float64Range(120, 300).Draw(t, "rate"))
		viscosity := rapid.Float64Range(0.015, 0.06).Draw(t, "viscosity")
		full := rapid.Float64Range(8, 14).Draw(t, "scfm")
		f, _, _ := anyFlight(t)
		at := func(psi float64) float64 {
			// The cap is a fixed hole: its flow goes about as the root of its pressure
			// below choking, and as the absolute pressure above.
			flow := full * math.Sqrt(psi/cap)
			a := atomizing(unit.PSIG(psi), unit.SCFM(flow), rate, viscosity)
			f.Drop, f.Exit = size(t, a), a.AirSpeed
			return coat.FlightLoss(f)
		}
		assert.LessOrEqual(t, at(lower), at(cap), "from %.1f to %.1f psi", cap, lower)
	})
}

func TestFlightLossAllocatesNothing(t *testing.T) {
	f := flight(t)
	var sum float64
	assert.Zero(t, testing.AllocsPerRun(100, func() { sum += coat.FlightLoss(f) }))
	assert.Positive(t, sum)
}

func BenchmarkFlightLoss(b *testing.B) {
	f := flight(b)
	var sum float64
	for b.Loop() {
		sum += coat.FlightLoss(f)
	}
	if !(sum > 0) {
		b.Fatal("no loss")
	}
}
