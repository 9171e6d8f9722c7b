package air_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/air"
	"boothset/calc/unit"
)

var (
	temps      = rapid.Map(rapid.Float64Range(-60, 100), unit.Celsius)
	humidities = rapid.Float64Range(air.DriestHumidity, 1)
	heights    = rapid.Map(rapid.Float64Range(-500, 5000), func(h float64) unit.Length { return unit.Length(h) })
)

func TestDewPointGivesTheHumidityBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry, rh := temps.Draw(t, "dry"), humidities.Draw(t, "rh")
		if air.VapourPressure(dry, rh) < air.SaturationPressure(unit.Celsius(-100)) {
			return // its dew point is colder than the formulas reach
		}
		dewPoint := air.DewPoint(dry, rh)
		require.LessOrEqual(t, dewPoint, dry)
		require.InEpsilon(t, rh, air.RelativeHumidity(dry, air.SaturationPressure(dewPoint)), 1e-8)
		require.InDelta(t, float64(dewPoint), float64(air.VapourDewPoint(air.VapourPressure(dry, rh))), 1e-9)
	})
}

func TestWetBulbLiesBetweenDewPointAndAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry := rapid.Map(rapid.Float64Range(-60, 60), unit.Celsius).Draw(t, "dry")
		rh, p := humidities.Draw(t, "rh"), air.AtAltitude(heights.Draw(t, "height"))
		wetBulb := air.WetBulb(dry, rh, p)
		require.LessOrEqual(t, wetBulb, dry)
		require.GreaterOrEqual(t, wetBulb, air.DewPoint(dry, rh)-1e-9)
		require.InDelta(t, air.HumidityRatio(dry, rh, p), wickBalance(wetBulb.C() < 0, wetBulb.C(), dry.C(), p), 1e-12)
	})
}

func TestMoreWaterNeverLowersAnyOfThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry, p := temps.Draw(t, "dry"), air.AtAltitude(heights.Draw(t, "height"))
		a, b := humidities.Draw(t, "a"), humidities.Draw(t, "b")
		less, more := min(a, b), max(a, b)
		require.LessOrEqual(t, air.DewPoint(dry, less), air.DewPoint(dry, more)+1e-9)
		require.LessOrEqual(t, air.WetBulb(dry, less, p), air.WetBulb(dry, more, p)+1e-9)
		require.LessOrEqual(t, air.HumidityRatio(dry, less, p), air.HumidityRatio(dry, more, p))
		require.GreaterOrEqual(t, air.MoistDensity(dry, less, p), air.MoistDensity(dry, more, p))
	})
}

func TestWarmerAirIsDrierAndBackAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry, rh, t2 := temps.Draw(t, "dry"), rapid.Float64Range(0.05, 1).Draw(t, "rh"), temps.Draw(t, "t2")
		reheated := air.Reheated(dry, rh, t2)
		switch {
		case t2 < air.DewPoint(dry, rh)-1e-6:
			require.Equal(t, 1.0, reheated, "cooled past the dew point")
		case t2 > dry:
			require.LessOrEqual(t, reheated, rh)
		default:
			require.GreaterOrEqual(t, reheated, rh*(1-1e-12))
		}
		if reheated < 1 && reheated > air.DriestHumidity {
			require.InEpsilon(t, rh, air.Reheated(t2, reheated, dry), 1e-9)
		}
	})
}

func TestCompressionRaisesTheDewPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pv := air.VapourPressure(temps.Draw(t, "dry"), humidities.Draw(t, "rh"))
		ambient := air.AtAltitude(heights.Draw(t, "height"))
		line := ambient * unit.Abs(rapid.Float64Range(1, 12).Draw(t, "ratio"))
		require.GreaterOrEqual(t, air.PressureDewPoint(pv, ambient, line), air.VapourDewPoint(pv)-1e-9) // the last bits of a double
	})
}

func TestHigherIsThinnerAndColder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := heights.Draw(t, "a"), heights.Draw(t, "b")
		low, high := min(a, b), max(a, b)
		require.GreaterOrEqual(t, air.AtAltitude(low), air.AtAltitude(high))
		require.GreaterOrEqual(t, air.TempAtAltitude(low), air.TempAtAltitude(high))
	})
}

func TestAnyFiniteArgumentsGiveFiniteResults(t *testing.T) {
	any := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-500, 500), rapid.SampledFrom([]float64{0, 1, -1, math.MaxFloat64}))
	rapid.Check(t, func(t *rapid.T) {
		dry, t2 := unit.Temp(any.Draw(t, "t")), unit.Temp(any.Draw(t, "t2"))
		rh, h := any.Draw(t, "rh"), any.Draw(t, "height")
		p, line, pv := unit.Abs(any.Draw(t, "p")), unit.Abs(any.Draw(t, "line")), unit.Abs(any.Draw(t, "pv"))
		for name, v := range map[string]float64{
			"saturation pressure": float64(air.SaturationPressure(dry)),
			"vapour pressure":     float64(air.VapourPressure(dry, rh)),
			"relative humidity":   air.RelativeHumidity(dry, pv),
			"reheated":            air.Reheated(dry, rh, t2),
			"dew point":           float64(air.DewPoint(dry, rh)),
			"vapour dew point":    float64(air.VapourDewPoint(pv)),
			"pressure dew point":  float64(air.PressureDewPoint(pv, p, line)),
			"humidity ratio":      air.HumidityRatio(dry, rh, p),
			"saturation ratio":    air.SaturationRatio(dry, p),
			"vapour ratio":        air.VapourRatio(pv, p),
			"density":             air.MoistDensity(dry, rh, p),
			"wet bulb":            float64(air.WetBulb(dry, rh, p)),
			"pressure":            float64(air.AtAltitude(unit.Length(h))),
			"temperature":         float64(air.TempAtAltitude(unit.Length(h))),
		} {
			require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%s is %v", name, v)
		}
	})
}

func TestMoistAirAllocatesNothing(t *testing.T) {
	dry := unit.Celsius(22)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		air.DewPoint(dry, 0.45)
		air.WetBulb(dry, 0.45, 1e5)
		air.Reheated(dry, 0.45, dry+5)
	}))
}

func BenchmarkDewPoint(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		air.DewPoint(295.15, 0.45)
	}
}

func BenchmarkWetBulb(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		air.WetBulb(295.15, 0.45, 101325)
	}
}
