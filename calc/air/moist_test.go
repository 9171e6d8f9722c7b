package air_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"boothset/calc/air"
	"boothset/calc/unit"
)

const seaLevel = unit.Abs(101325)

// Vapour as an ideal gas, J/(kg K): 8.314462618/0.018015268 (CODATA; molar mass of
// the ASHRAE handbook), for the rows that count kilograms of water a cubic metre.
const vapourConstant = 461.52

func vapourDensity(pv unit.Abs, t unit.Temp) float64 {
	return float64(pv) / (vapourConstant * float64(t))
}

func TestSaturationPressureASHRAETable3(t *testing.T) {
	// ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3, as quoted in the
	// tests of the psychrolib library.
	for c, pa := range map[float64]float64{25: 3169.7, 5: 872.6, -20: 103.24, 50: 12351.3} {
		assert.InEpsilon(t, pa, float64(air.SaturationPressure(unit.Celsius(c))), 300e-6, "%v C", c)
	}
}

func TestSaturationPressurePsychrolib(t *testing.T) {
	// GetSatVapPres of psychrolib 1.1.1.
	for c, pa := range map[float64]float64{
		-40: 12.845249304105623, -20: 103.26037858050408, 0: 611.1535708907679, 3: 758.0312052007005,
		10: 1227.9952754407796, 20: 2338.8037000739814, 30: 4246.030243592604, 35: 5627.819446540259,
		40: 7383.46000898612,
	} {
		assert.InEpsilon(t, pa, float64(air.SaturationPressure(unit.Celsius(c))), 1e-9, "%v C", c)
	}
}

func TestHandbookExample1(t *testing.T) {
	// ASHRAE Handbook of Fundamentals 2017, chapter 1, example 1: air at 40 C with a
	// wet bulb of 20 C at 101325 Pa. The library's humidity for it is unrounded.
	dry, rh := unit.Celsius(40), 0.13979488584320995
	assert.InDelta(t, 20, air.WetBulb(dry, rh, seaLevel).C(), 1e-6)
	ratio := air.HumidityRatio(dry, rh, seaLevel)
	assert.InEpsilon(t, 0.006400785965030817, ratio, 1e-6, "psychrolib")
	assert.InDelta(t, 7.433611018561275, air.DewPoint(dry, rh).C(), 1e-6, "psychrolib")
	assert.InEpsilon(t, 1032.1699490841206, float64(air.VapourPressure(dry, rh)), 1e-6, "psychrolib")
	assert.InDelta(t, 0.0065, ratio, 1e-4)
	assert.InDelta(t, 7, air.DewPoint(dry, rh).C(), 0.5)
	assert.InEpsilon(t, 0.896, (1+ratio)/air.MoistDensity(dry, rh, seaLevel), 0.01, "m3 a kg of dry air")
}

func TestHumidityRatioASHRAETables(t *testing.T) {
	// ASHRAE table 2 (saturated air at 25 C; the handbook allows for real-gas
	// effects, hence 0.5 %) and equation 20 as worked in psychrolib's tests.
	assert.InEpsilon(t, 0.020173, air.SaturationRatio(unit.Celsius(25), seaLevel), 0.005)
	assert.InEpsilon(t, 0.0213603998047487, air.VapourRatio(3169.7, 95461), 1e-6)
}

func TestPsychrolibAtSeaLevel(t *testing.T) {
	// psychrolib 1.1.1. Its wet bulb comes from a bisection stopped at 0.001 C, so
	// the value here is from an exact root of the same equations (scipy brentq).
	for _, c := range []struct{ t, rh, dewPoint, ratio, wetBulb, density float64 }{
		{35, .15, 4.527880056317121, .005225167229345995, 17.438044106309523, 1.1419285673253876},
		{20, .50, 9.272392288187499, .007261737207462574, 13.78355447005004, 1.1988979666684412},
		{10, .85, 7.59750013256991, .006473632818006872, 8.726863014199749, 1.2418236644111584},
		{25, .50, 13.863973265964844, .009881043690749623, 17.889342251605306, 1.17695818641638},
		{25, .60, 16.701131854221103, .011895048534430516, 19.47125451819852, 1.1755581937134385},
		{15, .70, 9.579352764039271, .0074151354396893455, 11.921578881248255, 1.2195897523794919},
		{30, .80, 26.168593239278714, .02157333991480702, 27.090967473662978, 1.1496726668218415},
		{30, .40, 14.935826949299681, .010602781187021928, 20.064347064215447, 1.1570516103844375},
		{20, .65, 13.227215180228386, .009473441517447515, 15.799427362758266, 1.197321793929956},
		{21, .45, 8.626259464503317, .006948082780770403, 13.875529253991228, 1.1950458226086405},
	} {
		dry, name := unit.Celsius(c.t), fmt.Sprintf("%v C, %v", c.t, c.rh)
		assert.InDelta(t, c.dewPoint, air.DewPoint(dry, c.rh).C(), 1e-6, name)
		assert.InEpsilon(t, c.ratio, air.HumidityRatio(dry, c.rh, seaLevel), 1e-6, name)
		assert.InDelta(t, c.wetBulb, air.WetBulb(dry, c.rh, seaLevel).C(), 1e-8, name)
		// The library's gas constant is 287.042 where this package rounds to 287.05.
		assert.InEpsilon(t, c.density, air.MoistDensity(dry, c.rh, seaLevel), 4e-5, name)
	}
	cold := unit.Celsius(0)
	assert.InDelta(t, -8.163625114028592, air.DewPoint(cold, .5).C(), 1e-6)
	assert.InEpsilon(t, .0018813407142523372, air.HumidityRatio(cold, .5, seaLevel), 1e-6)
	assert.InDelta(t, -2.975159030509322, air.WetBulb(cold, .5, seaLevel).C(), 1e-3, "its bisection's own tolerance")
}

func TestDewPointWMOMagnusForm(t *testing.T) {
	// Magnus form with the constants of the WMO Guide No. 8, 17.62 and 243.12 C,
	// worked to 0.1 C: by temperature, at 40, 50, 60, 70, 80, 85 and 90 %.
	humidities := []float64{.40, .50, .60, .70, .80, .85, .90}
	for c, row := range map[float64][]float64{
		10: {-3.0, 0.0, 2.6, 4.8, 6.7, 7.6, 8.4},
		15: {1.5, 4.7, 7.3, 9.6, 11.6, 12.5, 13.4},
		20: {6.0, 9.3, 12.0, 14.4, 16.4, 17.4, 18.3},
		25: {10.5, 13.9, 16.7, 19.1, 21.3, 22.3, 23.2},
		30: {14.9, 18.4, 21.4, 23.9, 26.2, 27.2, 28.2},
		35: {19.4, 23.0, 26.1, 28.7, 31.0, 32.1, 33.1},
	} {
		for i, rh := range humidities {
			got := air.DewPoint(unit.Celsius(c), rh).C()
			if got < 0 {
				// The table is over water; this is the frost point, which is nearer 0.
				assert.InDelta(t, row[i], got, 0.4)
				assert.Greater(t, got, row[i])
				continue
			}
			assert.InDelta(t, row[i], got, 0.1, "%v C, %v", c, rh)
		}
	}
}

func TestDewPointPaintersCharts(t *testing.T) {
	// Dew point charts of coating inspection, in whole F, which cut off the decimals.
	for _, c := range []struct{ f, rh, chart float64 }{
		{70, .65, 57}, {60, .85, 55}, {80, .50, 59}, {90, .70, 78}, {75, .35, 45}, {50, .90, 47},
	} {
		got := air.DewPoint(unit.Fahrenheit(c.f), c.rh).F()
		assert.GreaterOrEqual(t, got, c.chart, "%v F, %v", c.f, c.rh)
		assert.Less(t, got, c.chart+1, "%v F, %v", c.f, c.rh)
	}
}

func TestWaterInACubicMetre(t *testing.T) {
	// A compressed-air supplier's humidity page: 17.30 and 39.63 g/m3 saturated, and
	// 34.68 g/m3 condensing when air saturated at 35 C is compressed 8 times and
	// brought back to 35 C.
	at := func(c float64) float64 {
		return 1000 * vapourDensity(air.SaturationPressure(unit.Celsius(c)), unit.Celsius(c))
	}
	assert.InEpsilon(t, 17.30, at(20), 0.003)
	assert.InEpsilon(t, 39.63, at(35), 0.003)
	assert.InEpsilon(t, 34.68, at(35)*(1-1.0/8), 0.005)
}

func TestWaterLeftAfterCompression(t *testing.T) {
	// An online engineering handbook's page on water in compressed air, kg a cubic
	// metre of free air (at 20 C and 1 atm), saturated at 40 C once compressed; its
	// figures are rounded hard (8 % in the example, 4 % in the table).
	t20, t40 := unit.Celsius(20), unit.Celsius(40)
	left := func(barg float64) float64 {
		return vapourDensity(air.SaturationPressure(t40), t20) * 1.01325 / (1.01325 + barg)
	}
	in := vapourDensity(air.VapourPressure(t20, 0.7), t20)
	assert.InEpsilon(t, .0126, in, 0.08)
	assert.InEpsilon(t, .0062, left(8), 0.08)
	assert.InEpsilon(t, .0064, in-left(8), 0.08)
	for barg, kg := range map[float64]float64{2: .019, 4: .011, 6: .0079, 8: .0062} {
		assert.InEpsilon(t, kg, left(barg), 0.04, "%v bar(g)", barg)
	}
}

func TestPressureDewPoint(t *testing.T) {
	// A dew-point instrument maker's page: -10 C (2.8 mbar) at 1013.3 mbar is about
	// -1 C at twice the pressure.
	assert.InDelta(t, -1, air.PressureDewPoint(280, 101330, 2*101330).C(), 0.2)

	// psychrolib 1.1.1, GetTDewPointFromVapPres with a dry bulb high enough not to
	// cut the answer off; gauge pressures above 1.01325 bar.
	at := func(barg float64) unit.Abs { return unit.BarG(barg).Abs(seaLevel) }
	down := []struct{ c, barg, want float64 }{
		{3, 7, -20.7735}, {7, 7, -17.8507}, {10, 7, -15.6762}, {-20, 7, -39.8554}, {-40, 7, -56.9519}, {3, 2, -10.2188},
	}
	for _, c := range down {
		pv := air.SaturationPressure(unit.Celsius(c.c))
		assert.InDelta(t, c.want, air.PressureDewPoint(pv, at(c.barg), seaLevel).C(), 1e-4, "%v C at %v bar(g)", c.c, c.barg)
	}
	up := []struct{ c, rh, barg, want float64 }{
		{20, .5, 7, 44.2895}, {25, .6, 7, 54.0252}, {35, .15, 7, 38.1241}, {10, .85, 7, 42.1084}, {20, .7, 8, 53.3615}, {30, .8, 8, 69.2625},
	}
	for _, c := range up {
		pv := air.VapourPressure(unit.Celsius(c.c), c.rh)
		assert.InDelta(t, c.want, air.PressureDewPoint(pv, seaLevel, at(c.barg)).C(), 1e-4, "%v C, %v to %v bar(g)", c.c, c.rh, c.barg)
	}
	// A line saturated at 8.013 bar absolute, let down to 3.081 bar (30 psig).
	for c, want := range map[float64]float64{20: 5.4343, 30: 14.3240, 10: -3.0975} {
		pv := air.SaturationPressure(unit.Celsius(c))
		assert.InDelta(t, want, air.PressureDewPoint(pv, 8.013e5, 3.081e5).C(), 1e-4, "%v C", c)
	}
}

func TestCondensateOfCompression(t *testing.T) {
	// psychrolib 1.1.1: g of water a kg of dry air that drop out when air is
	// compressed to 7 bar(g) and cooled: the fall of the humidity ratio.
	line := unit.BarG(7).Abs(seaLevel)
	for _, c := range []struct{ t, rh, cooled, grams float64 }{
		{20, .5, 25, 4.7922}, {30, .8, 35, 17.1744}, {25, .6, 20, 10.0745}, {35, .15, 25, 2.7556},
	} {
		in := air.HumidityRatio(unit.Celsius(c.t), c.rh, seaLevel)
		left := air.SaturationRatio(unit.Celsius(c.cooled), line)
		assert.InDelta(t, c.grams, 1000*(in-left), 1e-4, "%v C, %v", c.t, c.rh)
	}
}

func TestPsychrometerReading(t *testing.T) {
	// A coating inspection text: dry bulb 21 C, wet bulb 17 C is a dew point of 15 C.
	assert.InDelta(t, 17, air.WetBulb(unit.Celsius(21), air.RelativeHumidity(unit.Celsius(21), air.SaturationPressure(unit.Celsius(15))), seaLevel).C(), 0.2)
}
