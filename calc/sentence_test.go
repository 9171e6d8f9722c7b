package calc_test

import (
	"errors"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/supply"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// why is a problem in English and US units.
func why(p *calc.Problem) string { return words.English().Text(unit.US, p.ID, p.Figures) }

// Every error of the packages below that a person can meet has its sentence, in every
// language, with all its figures.
func TestWhatErrorsBelowSay(t *testing.T) {
	_, typed := unit.Pressure.Read("1,500", unit.US)
	_, long := unit.Pressure.Read("123456789012345678901234567890123", unit.US)
	_, cold := unit.Temperature.Read("-500F", unit.Named)
	din, err := coat.FindCup("din4")
	require.NoError(t, err)
	_, short := din.Viscosity(2)
	_, outside := din.Viscosity(2000)
	_, near := coat.FitSlope(60e-6, 293, 55e-6, 294)
	_, slope := coat.FitSlope(60e-6, 293, 60e-6, 303)
	_, solvent := coat.FindSolvent("milk")
	_, cup := coat.FindCup("tea")
	_, fall := supply.ReceiverFor(1, 0, time.Second, 0, 293)
	_, main := supply.Main{Length: 300, Bore: 6e-3}.Drop(0.05, 8e5)
	_, stamp := gun.New(gun.Stamp{Inlet: 1e5, Flow: 1e-3, Cap: 2e5}, 0, gun.Valve{})
	_, valve := gun.New(gun.Stamp{Inlet: 2e5, Flow: 1e-3, Cap: 1e5}, 0, gun.Valve{})
	for name, c := range map[string]struct {
		err  error
		says string
	}{
		"two ways":      {typed, "the comma can be read two ways: write 1500 or 1.5"},
		"too long":      {long, "that is too long: type a number with psi, bar or kPa, such as 90psi"},
		"absolute zero": {cold, "type a temperature above -460 F"},
		"cup":           {short, "2 s in the DIN 53211 4 mm cup: too short to tell a viscosity"},
		"seconds":       {outside, "2000 s is outside 1 to 1000 s"},
		"readings":      {near, "two readings: 1.8 F apart: take them 5.4 F or more apart"},
		"slope":         {slope, "they change by 0% a kelvin, 0.5% to 15% is possible"},
		"solvent":       {solvent, `solvent "milk": give one of acetone, `},
		"no cup":        {cup, `cup "tea": give one of `},
		"no fall":       {fall, "a fall of 0 psi leaves an air tank nothing to give; it must be above 0"},
		"narrow main":   {main, "a bore of 6 mm cannot carry that much air so far"},
		"stamp":         {stamp, "gun rating: cap 29 psi is not below inlet 14.5 psi"},
		"valve":         {valve, "inlet valve: its conductance must be above 0"},
		"another":       {errors.New("a pipe broke"), "a pipe broke"},
	} {
		require.Error(t, c.err, name)
		id, f := calc.SentenceOf(c.err)
		assert.Contains(t, words.English().Text(unit.US, id, f), c.says, name)
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			assert.NotContains(t, w.Text(unit.Metric, id, f), "{", "%s in %s", name, lang)
			assert.True(t, w.Has(id) || name == "another", "%s in %s", name, lang)
		}
	}
}

// A problem whose cause is another one says both.
func TestAProblemSaysItsCause(t *testing.T) {
	r := calc.ThinRequest{
		Reading: calc.Reading{Seconds: 40, At: unit.Celsius(20)}, MostThinner: calc.Stated[float64]{Value: 0.1},
		Warmest: calc.Stated[unit.Temp]{Value: unit.Celsius(25)},
	}
	var err error
	r.Reading.Cup, err = coat.FindCup("iso3")
	require.NoError(t, err)
	thick, err := coat.FindCup("zahn5")
	require.NoError(t, err)
	r.Sheet.Value = calc.SheetSeconds{Cup: thick, Low: 60, Aim: 65, High: 70, At: unit.Celsius(20)}
	_, err = calc.SolveThin(&r)
	var p *calc.Problem
	require.ErrorAs(t, err, &p)
	assert.Equal(t, "cup", p.Field)
	assert.Regexp(t, "^it cannot tell what the sheet asks for: .* s in the ISO 2431 3 mm cup: too long to tell a viscosity", why(p))
}
