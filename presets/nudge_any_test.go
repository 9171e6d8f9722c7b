package presets_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/supply"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var bothSystems = []unit.System{unit.US, unit.Metric}

// quantityOf is the text of an input's quantity, empty where it has none.
func quantityOf(a presets.Answers, in presets.Input) string {
	text := a.Field(in.Field)
	switch in.Field {
	case presets.FieldHose, presets.FieldOther:
		text = strings.Split(text, " + ")[in.Part]
	case presets.FieldMain:
	default:
		return text
	}
	first, second, _ := strings.Cut(text, ",")
	return strings.TrimSpace([]string{first, second}[in.Piece])
}

// sizeOf is what text in an input means, in SI, NaN where it is no quantity.
func sizeOf(in presets.Input, text string, sys unit.System) float64 {
	var v float64
	var err error
	switch in.Field {
	case presets.FieldTemp, presets.FieldPanel, presets.FieldReceiverTemp, presets.FieldLineTemp:
		v, err = floated(unit.ParseTemp(text, sys.TempUnit()))
	case presets.FieldHumidity:
		v, err = unit.ParsePercent(text)
	case presets.FieldSupply, presets.FieldWall, presets.FieldMark, presets.FieldCutIn, presets.FieldCutOut:
		v, err = floated(unit.ParseGauge(text, sys.PressureUnit()))
	case presets.FieldAltitude, presets.FieldHose, presets.FieldMain:
		bare := sys.LongUnit()
		if in.Piece == 1 {
			bare = sys.SmallUnit()
		}
		v, err = floated(unit.ParseLength(text, bare))
	case presets.FieldCompressor:
		if hp, ok := strings.CutSuffix(text, " hp"); ok {
			v, err = strconv.ParseFloat(hp, 64)
			break
		}
		v, err = floated(unit.ParseFlow(text, sys.FlowUnit()))
	case presets.FieldReceiver:
		v, err = floated(unit.ParseVolume(text, sys.VolumeUnit()))
	case presets.FieldSprayTime:
		v, err = floated(unit.ParseSeconds(text, unit.InMinutes))
	case presets.FieldOther:
		if in.Piece == 1 {
			v, err = unit.ParsePercent(text)
			break
		}
		v, err = floated(unit.ParseFlow(text, sys.FlowUnit()))
	default:
		return math.NaN()
	}
	if err != nil {
		return math.NaN()
	}
	return v
}

func floated[T ~float64](v T, err error) (float64, error) { return float64(v), err }

// drawNudge draws answers that work, one input of them, and the system in use.
func drawNudge(t *rapid.T, c *presets.Catalogue) (presets.Answers, presets.Input, unit.System) {
	a := drawAnswers(t, c)
	if rapid.Bool().Draw(t, "with the shop's air") {
		drawShop(t, &a)
	}
	return a, rapid.SampledFrom(c.Inputs(a)).Draw(t, "input"), rapid.SampledFrom(bothSystems).Draw(t, "system")
}

// Whatever moves is taken by the catalogue and can be solved, it goes the way of the
// key, and nothing else changes; whatever does not stays as it was.
func TestWhatMovesIsTaken(t *testing.T) {
	c := shippedCatalogue(t)
	rapid.Check(t, func(t *rapid.T) {
		a, in, sys := drawNudge(t, c)
		by := rapid.SampledFrom([]int{-10, -1, 1, 10}).Draw(t, "by")
		was := a.Field(in.Field)
		b, moved := c.Nudge(a, in, by, sys)
		require.Equal(t, was, a.Field(in.Field))
		if !moved {
			require.Equal(t, a, b)
			return
		}
		require.Nil(t, c.Fault(b, in.Field, sys))
		r, err := c.Request(b, sys)
		require.NoError(t, err)
		_, err = calc.Solve(r)
		require.NoError(t, err)
		from, to := sizeOf(in, quantityOf(a, in), sys), sizeOf(in, quantityOf(b, in), sys)
		if c.Choices(in.Field) == nil {
			require.False(t, math.IsNaN(to), b.Field(in.Field))
			if !math.IsNaN(from) {
				require.Equal(t, by > 0, to > from, "%q to %q", was, b.Field(in.Field))
				require.Equal(t, by < 0, to < from, "%q to %q", was, b.Field(in.Field))
			}
		}
		b.Set(in.Field, was)
		require.Equal(t, a, b)
	})
}

// A step up and one down again come back to the multiple of the step at or below, and
// steps from there are each other's opposite; a big step is ten small ones.
func TestStepsAreEachOthersOpposite(t *testing.T) {
	c := shippedCatalogue(t)
	rapid.Check(t, func(t *rapid.T) {
		a, in, sys := drawNudge(t, c)
		by := rapid.SampledFrom([]int{-1, 1}).Draw(t, "by")
		on, moved := c.Nudge(a, in, by, sys)
		if !moved {
			return
		}
		back, moved := c.Nudge(on, in, -by, sys)
		if moved {
			again, moved := c.Nudge(back, in, by, sys)
			require.True(t, moved)
			require.Equal(t, on, again)
			if c.Choices(in.Field) == nil {
				was, snapped := sizeOf(in, quantityOf(a, in), sys), sizeOf(in, quantityOf(back, in), sys)
				near := 1e-6 * math.Abs(was)
				if in.Piece == 1 && in.Field != presets.FieldOther {
					near = 0.02 * was // bores are written to a tenth of a millimetre, and lie farther apart
				}
				require.False(t, by > 0 && snapped > was+near || by < 0 && snapped < was-near, "%q snapped to %q", a.Field(in.Field), back.Field(in.Field))
			}
		}
		far := on
		for range 9 {
			next, moved := c.Nudge(far, in, by, sys)
			if !moved {
				break
			}
			far = next
		}
		leap, moved := c.Nudge(a, in, 10*by, sys)
		require.True(t, moved)
		require.Equal(t, far, leap)
	})
}

// Walked as far as it goes, an answer has come to the last step that the catalogue
// takes, and every step on the way was larger than the one before.
func TestAWalkEndsWhereTheCatalogueEnds(t *testing.T) {
	c := shippedCatalogue(t)
	type end struct {
		highest float64
		step    [2]float64
	}
	degrees, marks := [2]float64{2 / 1.8, 1}, [2]float64{unit.PascalPerPSI, 0.05 * unit.PascalPerBar}
	ends := map[string]end{
		presets.FieldTemp:      {float64(calc.HottestAir), degrees},
		presets.FieldPanel:     {float64(calc.HottestAir), degrees},
		presets.FieldLineTemp:  {float64(calc.HottestAir), degrees},
		presets.FieldHumidity:  {1, [2]float64{0.05, 0.05}},
		presets.FieldAltitude:  {float64(calc.HighestSite), [2]float64{500 * unit.MetrePerFoot, 100}},
		presets.FieldHose:      {float64(calc.LongestHose), [2]float64{5 * unit.MetrePerFoot, 1}},
		presets.FieldWall:      {float64(calc.TopSupply), marks},
		presets.FieldMark:      {float64(unit.PSIG(20)), marks},
		presets.FieldReceiver:  {float64(supply.LargestReceiver), [2]float64{float64(unit.USGallons(10)), float64(unit.Litres(50))}},
		presets.FieldSprayTime: {supply.MaxSpan.Seconds(), [2]float64{60, 60}},
	}
	for _, sys := range bothSystems {
		for _, in := range c.Inputs(wholeShop()) {
			if c.Choices(in.Field) != nil {
				continue
			}
			a := wholeShop()
			last, steps := sizeOf(in, quantityOf(a, in), sys), 0
			for moved := true; moved; {
				if a, moved = c.Nudge(a, in, 10, sys); !moved {
					break
				}
				v := sizeOf(in, quantityOf(a, in), sys)
				require.False(t, v <= last, "%v: %v after %v", in, v, last) // NaN where it was empty
				last = v
				steps++
				require.Less(t, steps, 10000, "%v", in)
			}
			if x, ok := ends[in.Field]; ok && in.Piece == 0 {
				assert.LessOrEqual(t, last, x.highest*(1+1e-9), "%v", in)
				assert.Greater(t, last+x.step[sys], x.highest*(1+1e-9), "%v: there is room for another step", in)
			}
		}
	}
}

// FuzzNudgeText moves anything at all that could stand in a field: nothing panics, and
// what moves is taken by the catalogue unless another part of the text is wrong.
func FuzzNudgeText(f *testing.F) {
	c := shippedCatalogue(f)
	inputs := c.Inputs(wholeShop())
	for i := range inputs {
		a := wholeShop()
		f.Add(i, a.Field(inputs[i].Field), 3, 1, false)
	}
	for _, s := range []string{"25,3/8 + 6,1/4", ",", "+", " + ,", "7,5m,10mm", "é,1 + 2", "\xff", "1e9", "999999999,999999999", "5hp", "-0"} {
		f.Add(10, s, 2, -10, true)
		f.Add(15, s, 0, 1, false)
	}
	f.Add(10, "\xc3+0", 21, 1, true)
	f.Fuzz(func(t *testing.T, field int, text string, cursor, by int, metric bool) {
		name := inputs[int(uint(field)%uint(len(inputs)))].Field
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		in := presets.InputAt(name, text, cursor)
		got, moved := c.NudgeText(wholeShop(), in, text, max(min(by, 20), -20), sys)
		if !moved {
			if got != text {
				t.Fatalf("%q became %q", text, got)
			}
			return
		}
		a := wholeShop()
		a.Set(name, text)
		before := c.Fault(a, name, sys)
		a.Set(name, got)
		if after := c.Fault(a, name, sys); after != nil && (before == nil || c.Choices(name) != nil) {
			t.Fatalf("%s %q became %q: %v", name, text, got, after)
		}
	})
}
