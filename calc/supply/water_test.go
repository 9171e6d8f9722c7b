package supply_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/air"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

const seaLevel = unit.Abs(unit.SCFMPressure)

// damp is air of so many C and % swallowed at sea level, compressed to bar gauge and cooled
// to receiver C, with pipe and hose as warm, sprayed at the same pressure.
func damp(celsius, percent, bar, receiver float64) supply.Damp {
	warm := unit.Celsius(60)
	return supply.Damp{
		Inlet: at(seaLevel, celsius), Humidity: percent / 100,
		Receiver: unit.BarG(bar), ReceiverTemp: unit.Celsius(receiver),
		Main: warm, Hose: warm, Spraying: unit.BarG(bar), Flow: unit.SCFM(10),
	}
}

func follow(t require.TestingT, d supply.Damp) supply.Water {
	w, err := d.Follow()
	require.NoError(t, err)
	return w
}

// gramsPerKg is the liquid for each kg of dry air, and gramsPerM3 for each cubic metre
// swallowed, whose dry air fills it at its own partial pressure.
func gramsPerKg(liquid unit.MassFlow, d supply.Damp) float64 {
	return float64(liquid/d.Flow.Mass()) * 1e3
}

func gramsPerM3(liquid unit.MassFlow, d supply.Damp) float64 {
	dry := d.Inlet.Ambient - air.VapourPressure(d.Inlet.Temp, d.Humidity)
	return gramsPerKg(liquid, d) * air.Density(dry, d.Inlet.Temp)
}

// psychrolib 1.1.1: the vapour pressure times the pressure ratio, then its dew point.
func TestCompressedDewPointPsychrolib(t *testing.T) {
	for _, c := range []struct{ celsius, percent, bar, want float64 }{
		{20, 50, 7, 44.2895}, {25, 60, 7, 54.0252}, {35, 15, 7, 38.1241}, {10, 85, 7, 42.1084},
		{20, 70, 8, 53.3615}, {30, 80, 8, 69.2625},
	} {
		w := follow(t, damp(c.celsius, c.percent, c.bar, 100))
		assert.InDelta(t, c.want, w.Compressed.C(), 1e-4, "%v", c)
		assert.Equal(t, w.Compressed, w.Leaving, "a receiver at 100 C drops nothing out")
	}
}

// A dew-point instrument maker's example: vapour of 2.8 mbar at 1013.3 mbar (a dew point
// near -10 C over supercooled water), the pressure doubled: 5.6 mbar, about -1 C.
func TestDewPointOfDoubledPressure(t *testing.T) {
	of20C := float64(280 / air.SaturationPressure(unit.Celsius(20)))
	w := follow(t, damp(20, of20C*100, 1.01325, 100))
	assert.InDelta(t, -1, w.Compressed.C(), 0.2)
}

// psychrolib 1.1.1: saturated at a pressure dew point, let down to a lower pressure.
func TestExpandedDewPointPsychrolib(t *testing.T) {
	const psi30 = 2.068 // bar; with the 1.013 bar of these cases
	for _, c := range []struct{ pdp, bar, to, want float64 }{
		{3, 7, 0, -20.7735}, {7, 7, 0, -17.8507}, {10, 7, 0, -15.6762}, {-20, 7, 0, -39.8554},
		{-40, 7, 0, -56.9519}, {3, 2, 0, -10.2188},
		{20, 7, psi30, 5.4343}, {30, 7, psi30, 14.3240}, {10, 7, psi30, -3.0975},
	} {
		d := damp(30, 100, c.bar, c.pdp)
		d.Spraying = unit.BarG(c.to)
		if c.to > 0 {
			d.Inlet.Ambient = 101300
		}
		w := follow(t, d)
		assert.InDelta(t, c.pdp, w.Leaving.C(), 1e-6)
		assert.InDelta(t, c.want, w.Sprayed.C(), 1e-4, "%v", c)
	}
}

// psychrolib 1.1.1: W of the intake less W of saturation at line pressure.
func TestCondensatePsychrolib(t *testing.T) {
	for _, c := range []struct{ celsius, percent, line, perKg, perM3 float64 }{
		{20, 50, 25, 4.7922, 5.7039}, {30, 80, 35, 17.1744, 19.3280},
		{25, 60, 20, 10.0745, 11.7039}, {35, 15, 25, 2.7556, 3.1304},
	} {
		d := damp(c.celsius, c.percent, 7, c.line)
		w := follow(t, d)
		assert.InDelta(t, c.perKg, gramsPerKg(w.InReceiver, d), 1e-3, "%v", c)
		assert.InEpsilon(t, c.perM3, gramsPerM3(w.InReceiver, d), 5e-4, "%v", c)
		assert.Equal(t, supply.AtReceiver, w.Last)
	}
}

// A compressor maker's humidity table: air holds 17.30 g/m3 at 20 C and 39.63 at 35 C; at
// 35 C saturated, compressed to an eighth and cooled back, 34.68 g of each m3 drop out.
// The table lets the vapour take no room, which costs 0.5 %.
func TestCondensateOfMakersHumidityTable(t *testing.T) {
	d := damp(35, 100, 7*float64(seaLevel)/unit.PascalPerBar, 35)
	assert.InEpsilon(t, 34.68, gramsPerM3(follow(t, d).InReceiver, d), 0.007)

	// all of the water, frozen out at -40 C but for 0.03 %
	for _, c := range []struct{ celsius, grams float64 }{{20, 17.30}, {35, 39.63}} {
		d := damp(c.celsius, 100, 20, -40)
		assert.InEpsilon(t, c.grams, gramsPerM3(follow(t, d).InReceiver, d), 0.003, "%v C", c.celsius)
	}
}

// An online engineering handbook's table of water in compressed air, kg for each m3 of free air. Its tables are rounded to
// two figures: 8 % on a difference, 4 % on the water left.
func TestCondensateOfHandbookTable(t *testing.T) {
	d := damp(20, 70, 8, 40)
	assert.InEpsilon(t, 6.4, gramsPerM3(follow(t, d).InReceiver, d), 0.08)

	// what 40 C saturated air keeps at 2, 4, 6 and 8 bar, per m3 of dry air at 20 C, 1 atm
	for _, c := range []struct{ bar, grams float64 }{{2, 19}, {4, 11}, {6, 7.9}, {8, 6.2}} {
		d := damp(40, 100, c.bar, 40)
		in := air.SaturationRatio(unit.Celsius(40), seaLevel) * 1e3
		kept := (in - gramsPerKg(follow(t, d).InReceiver, d)) * air.Density(seaLevel, unit.Celsius(20))
		assert.InEpsilon(t, c.grams, kept, 0.04, "%v bar", c.bar)
	}
}

func TestWhereTheWaterDropsOut(t *testing.T) {
	base := damp(25, 60, 7, 35)
	base.Spraying, base.Main, base.Hose = unit.PSIG(30), unit.Celsius(20), unit.Celsius(20)
	cases := []struct {
		name  string
		alter func(*supply.Damp)
		last  supply.Place
		class supply.Class
	}{
		// the dew point past the receiver is its 35 C: 5.0 g/kg at 35 C less 2.1 at 20 C
		{"a main cooler than the receiver", func(*supply.Damp) {}, supply.AtMain, 8},
		{"a dryer that leaves 3 C", func(d *supply.Damp) { d.ReceiverTemp = unit.Celsius(3) }, supply.AtReceiver, 4},
		{"a hose left in the frost", func(d *supply.Damp) { d.Hose = unit.Celsius(0) }, supply.AtHose, 8},
		// let down from 8.0 to 3.1 bar absolute, what a dew point of 35 C holds has one of 18 C
		{"a warm main", func(d *supply.Damp) { d.Main = unit.Celsius(36) }, supply.AtReceiver, 7},
		{"a warm main and a cold hose", func(d *supply.Damp) { d.Main, d.Hose = unit.Celsius(36), unit.Celsius(15) }, supply.AtHose, 7},
		// 2 % of 3170 Pa, 7.9 times over, is the vapour of frost at -2.4 C
		{"desert air", func(d *supply.Damp) { d.Humidity = 0.02 }, supply.StaysVapour, 4},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := base
			c.alter(&d)
			w := follow(t, d)
			assert.Equal(t, c.last, w.Last)
			assert.Equal(t, c.class, w.Class, "dew point at the wall %.1f C", w.AtWall.C())
		})
	}
	d := base
	d.Flow = 0
	assert.Equal(t, supply.AtMain, follow(t, d).Last, "the place does not hang on the flow")

	// 10 scfm for an hour, by psychrolib's saturation pressures at 8.01325 bar:
	// 0.621945 x (5627.82/(801325-5627.82) - 2338.80/(801325-2338.80)) = 2.5783 g/kg
	perHour := float64(follow(t, base).InMain) * 3600 * 1e3
	assert.InEpsilon(t, 2.5783*float64(unit.SCFM(10).Mass())*3600, perHour, 1e-3)
}

// ISO 8573-1:2010, the tables of water as suppliers of filters reprint them.
func TestWaterClassISO8573(t *testing.T) {
	for _, c := range []struct {
		celsius float64
		class   supply.Class
		name    string
	}{
		{-80, 1, "1"}, {-70, 1, "1"}, {-69.9, 2, "2"}, {-40, 2, "2"}, {-39.9, 3, "3"}, {-20, 3, "3"}, {-19.9, 4, "4"},
		{3, 4, "4"}, {3.1, 5, "5"}, {7, 5, "5"}, {7.1, 6, "6"}, {10, 6, "6"}, {10.1, 7, "7"},
	} {
		got := supply.ClassOf(unit.Celsius(c.celsius), 0)
		assert.Equal(t, c.class, got, "%v C", c.celsius)
		assert.Equal(t, c.name, got.String())
	}
	for _, c := range []struct {
		grams float64
		name  string
	}{{0.1, "7"}, {0.5, "7"}, {0.6, "8"}, {5, "8"}, {5.1, "9"}, {10, "9"}, {10.1, "X"}, {math.Inf(1), "X"}} {
		assert.Equal(t, c.name, supply.ClassOf(unit.Celsius(-80), c.grams).String(), "%v g/m3", c.grams)
	}
}

func drawDamp(t *rapid.T) supply.Damp {
	draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	d := damp(draw("C", -40, 60), draw("rh", 1, 100), draw("bar", 0, 30), draw("receiver", -40, 100))
	d.Inlet.Ambient = unit.Abs(draw("ambient", 50e3, 115e3))
	d.Main, d.Hose = unit.Celsius(draw("main", -40, 60)), unit.Celsius(draw("hose", -40, 60))
	d.Spraying *= unit.Gauge(draw("let down", 0, 1))
	return d
}

func TestWaterNeverAppearsOrVanishes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDamp(t)
		w := follow(t, d)
		in := float64(d.Flow.Mass()) * air.HumidityRatio(d.Inlet.Temp, d.Humidity, d.Inlet.Ambient)
		out := float64(w.InReceiver + w.InMain + w.InHose)
		left := float64(d.Flow.Mass()) * air.VapourRatio(
			air.SaturationPressure(min(w.Sprayed, d.Hose)), d.Spraying.Abs(d.Inlet.Ambient))
		require.InEpsilon(t, in, out+left, 1e-6)
		for _, liquid := range []unit.MassFlow{w.InReceiver, w.InMain, w.InHose} {
			require.GreaterOrEqual(t, liquid, unit.MassFlow(0))
		}
		require.LessOrEqual(t, w.Leaving.C(), min(w.Compressed, d.ReceiverTemp).C()+1e-6)
		require.LessOrEqual(t, w.AtWall.C(), min(w.Leaving, d.Main).C()+1e-6)
		require.LessOrEqual(t, w.Sprayed.C(), w.AtWall.C()+1e-6, "letting the pressure down dries")
	})
}

func TestDamperAirOrColderPipesNeverDryTheSpray(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDamp(t)
		w := follow(t, d)
		damper := d
		damper.Humidity += (1 - d.Humidity) * rapid.Float64Range(0, 1).Draw(t, "damper")
		wet := follow(t, damper)
		require.GreaterOrEqual(t, wet.Sprayed.C(), w.Sprayed.C()-1e-6)
		require.GreaterOrEqual(t, float64(wet.InMain), float64(w.InMain)*(1-1e-9))

		colder := d
		colder.Main -= unit.Temp(rapid.Float64Range(0, d.Main.C()+40).Draw(t, "colder"))
		cold := follow(t, colder)
		require.GreaterOrEqual(t, float64(cold.InMain), float64(w.InMain)*(1-1e-9))
	})
}

func TestFollowNamesWhatIsOutOfRange(t *testing.T) {
	for field, alter := range map[string]func(*supply.Damp){
		supply.FieldHumidity:         func(d *supply.Damp) { d.Humidity = 50 },
		supply.FieldReceiverPressure: func(d *supply.Damp) { d.Receiver = -1 },
		supply.FieldReceiverTemp:     func(d *supply.Damp) { d.ReceiverTemp = 0 },
		supply.FieldMainTemp:         func(d *supply.Damp) { d.Main = unit.Temp(math.NaN()) },
		supply.FieldHoseTemp:         func(d *supply.Damp) { d.Hose = unit.Celsius(90) },
		supply.FieldSprayingPressure: func(d *supply.Damp) { d.Spraying = d.Receiver + unit.PSIG(1) },
		supply.FieldInlet:            func(d *supply.Damp) { d.Inlet.Ambient = 0 },
	} {
		d := damp(20, 50, 7, 30)
		alter(&d)
		w, err := d.Follow()
		var input *supply.InputError
		require.ErrorAs(t, err, &input, field)
		assert.Equal(t, field, input.Field)
		assert.Zero(t, w)
	}
}

func TestFollowAllocatesNothing(t *testing.T) {
	d := damp(20, 50, 7, 30)
	var w supply.Water
	assert.Zero(t, testing.AllocsPerRun(100, func() { w, _ = d.Follow() }))
	assert.Equal(t, supply.AtReceiver, w.Last)
}

// A dryer brings the air to its pressure dew point. By psychrolib 1.1.1, as above: saturated
// at 3 C at 7 bar and let down to ambient, air has a dew point of -20.7735 C; ISO 8573-1:2010
// calls 3 C class 4 and -40 C class 2.
func TestADryerAtItsDewPoint(t *testing.T) {
	d := damp(30, 80, 7, 35)
	d.Spraying = 0
	wet := follow(t, d)
	d.Dryer = supply.Dryer{Is: true, DewPoint: unit.Celsius(3), At: unit.BarG(7)}
	dry := follow(t, d)
	assert.InDelta(t, -20.7735, dry.Sprayed.C(), 1e-3)
	assert.Equal(t, supply.Class(4), dry.Class)
	assert.Equal(t, supply.AtDryer, dry.Last)
	assert.Positive(t, dry.InDryer)
	assert.Equal(t, wet.AtWall, dry.AtWall, "what comes to it is the same")
	d.Dryer.DewPoint = unit.Celsius(-40)
	assert.Equal(t, supply.Class(2), follow(t, d).Class)

	// At a lower pressure the same dew point is more water, by the ratio of the pressures.
	d.Dryer = supply.Dryer{Is: true, DewPoint: unit.Celsius(3), At: unit.BarG(2)}
	low := follow(t, d)
	vapour := func(dew unit.Temp) float64 { return float64(air.SaturationPressure(dew)) }
	assert.InEpsilon(t, 8.01325/3.01325, vapour(low.Sprayed)/vapour(dry.Sprayed), 1e-4)

	// Air drier than its dew point passes a dryer as it is.
	d = damp(20, 5, 7, 35)
	d.Dryer = supply.Dryer{Is: true, DewPoint: unit.Celsius(40), At: unit.BarG(7)}
	assert.Zero(t, follow(t, d).InDryer)
}

// What condenses in a cold hose comes to a dryer at its end as water; one before the hose
// keeps the hose dry.
func TestADryerBeforeOrPastTheHose(t *testing.T) {
	d := damp(30, 80, 7, 35)
	d.Hose = unit.Celsius(10)
	d.Dryer = supply.Dryer{Is: true, DewPoint: unit.Celsius(-40), At: unit.BarG(7)}
	before := follow(t, d)
	assert.Zero(t, before.InHose)
	assert.Equal(t, supply.AtDryer, before.Last)
	d.Dryer.PastHose = true
	past := follow(t, d)
	assert.Positive(t, past.InHose)
	assert.Equal(t, supply.AtHose, past.Last)
	assert.Equal(t, before.Sprayed, past.Sprayed)
}

func TestADryersBounds(t *testing.T) {
	for _, dryer := range []supply.Dryer{
		{Is: true, DewPoint: unit.Celsius(3), At: unit.BarG(9)}, {Is: true, DewPoint: unit.Celsius(3), At: unit.BarG(-1)},
		{Is: true, DewPoint: unit.Celsius(-101), At: unit.BarG(7)}, {Is: true, DewPoint: unit.Celsius(61), At: unit.BarG(7)},
	} {
		d := damp(30, 80, 7, 35)
		d.Dryer = dryer
		_, err := d.Follow()
		assert.Error(t, err)
	}
}
