package presets_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawAnswers draws anything that the catalogue and the limits of a request allow.
func drawAnswers(t *rapid.T, c *presets.Catalogue) presets.Answers {
	d := drawer{t}
	choice := func(field string, more ...string) presets.Typed {
		return presets.Typed(rapid.SampledFrom(append(ids(c.Choices(field)), more...)).Draw(t, field))
	}
	a := presets.Answers{
		Coat: choice(presets.FieldCoat), Gun: choice(presets.FieldGun),
		Temp: d.number("temp", "%.2fC", -10, 60), Humidity: d.number("humidity", "%.2f", 1, 100),
		Panel:    d.maybe("panel", "%.2fC", -10, 60),
		Altitude: d.maybe("altitude", "%.1fm", -430, 5000),
		Supply:   d.number("supply", "%.3fpsi", 1, 300),
		Coupling: choice(presets.FieldCoupling, presets.None), Filter: choice(presets.FieldFilter),
		Regulator: choice(presets.FieldRegulator), RegulatorAt: choice(presets.FieldRegulatorAt), Gauge: choice(presets.FieldGauge),
		Wall: d.maybe("wall", "%.3fpsi", 1, 300),
		Mark: d.maybe("mark", "%.3fpsi", 0.01, 20),
	}
	for i := range rapid.IntRange(1, 3).Draw(t, "hoses") {
		a.Hose = append(a.Hose, drawHose(t, fmt.Sprintf("hose %d", i+1)))
	}
	return a
}

// drawer draws typed numbers.
type drawer struct{ t *rapid.T }

func (d drawer) number(label, format string, low, high float64) presets.Typed {
	return presets.Typed(fmt.Sprintf(format, rapid.Float64Range(low, high).Draw(d.t, label)))
}

// maybe is a number or nothing.
func (d drawer) maybe(label, format string, low, high float64) presets.Typed {
	if rapid.Bool().Draw(d.t, "with "+label) {
		return d.number(label, format, low, high)
	}
	return ""
}

// drawShop draws the air behind the regulator, over answers on a line that a shop
// could have.
func drawShop(t *rapid.T, a *presets.Answers) {
	d := drawer{t}
	a.Supply = d.number("supply", "%.2fpsi", 2, 200)
	a.Hose = []presets.Typed{d.number("hose ft", "%.1fft", 1, 300) + d.number("hose mm", ",%.2fmm", 3, 15)}
	a.Compressor, a.Receiver = d.number("compressor", "%.2fcfm", 1, 200), d.number("receiver", "%.1fL", 10, 3000)
	cutIn := rapid.Float64Range(40, 200).Draw(t, "cut-in")
	a.CutIn = presets.Typed(fmt.Sprintf("%.2fpsi", cutIn))
	a.CutOut = d.maybe("cut-out", "%.2fpsi", cutIn+5, cutIn+100)
	if rapid.Bool().Draw(t, "with a main") {
		a.Main = d.number("main ft", "%.1fft", 10, 500) + d.number("main mm", ",%.1fmm", 10, 50)
	}
	if rapid.Bool().Draw(t, "with another user") {
		a.Other = []presets.Typed{d.number("other", "%.1fcfm", 0, 50) + d.number("duty", ",%.0f%%", 0, 100)}
	}
	a.SprayTime = d.maybe("spray time", "%.2fmin", 0.1, 60)
}

func drawHose(t *rapid.T, label string) presets.Typed {
	feet := rapid.Float64Range(0.5, 200).Draw(t, label+" ft")
	mm := rapid.Float64Range(3, 20).Draw(t, label+" mm")
	return presets.Typed(fmt.Sprintf("%.3fft,%.3fmm", feet, mm))
}

// solved is the answer to answers that must be accepted.
func solved(t require.TestingT, c *presets.Catalogue, a presets.Answers) (*calc.Request, *calc.Setup) {
	r, err := c.Request(a, unit.US)
	require.NoError(t, err)
	s, err := calc.Solve(r)
	require.NoError(t, err)
	return r, s
}

// unsound is the path of the first number below v that is not finite, empty where
// there is none.
func unsound(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Sprintf("%s is %v", path, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if bad := unsound(v.Field(i), path+"."+v.Type().Field(i).Name); bad != "" {
				return bad
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if bad := unsound(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); bad != "" {
				return bad
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return unsound(v.Elem(), path)
		}
	}
	return ""
}

func TestUnsoundFindsWhatIsNotFinite(t *testing.T) {
	s := &calc.Setup{Line: make([]calc.Step, 2)}
	require.Empty(t, unsound(reflect.ValueOf(s), "setup"))
	s.Line[1].Mach = math.NaN()
	require.Equal(t, "setup.Line[1].Mach is NaN", unsound(reflect.ValueOf(s), "setup"))
	s.Line[1].Mach = math.Inf(1)
	require.Equal(t, "setup.Line[1].Mach is +Inf", unsound(reflect.ValueOf(s), "setup"))
}
