package presets_test

import (
	"errors"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shop is the catalogue with an invented shop's file over it.
func shop(t *testing.T, toml string) *presets.Catalogue {
	t.Helper()
	c, err := presets.Load([]byte(toml), "shop.toml")
	require.NoError(t, err)
	return c
}

func request(t *testing.T, c *presets.Catalogue, a presets.Answers) *calc.Request {
	t.Helper()
	r, err := c.Request(a, c.System())
	require.NoError(t, err)
	return r
}

func TestShopOverridesFieldByFieldAndKeepsTheRest(t *testing.T) {
	shippedClear := request(t, shippedCatalogue(t), mildDay("clear", "reduced-pressure")).Coat
	for name, toml := range map[string]string{
		"table of the class":     "[coat.clear.working.reduced-pressure]\nstart = \"27psi\"\n",
		"dotted key":             "[coat.clear]\nworking.reduced-pressure.start = \"27psi\"\n",
		"inline table":           "[coat.clear]\nworking.reduced-pressure = { start = \"27psi\" }\n",
		"inline table of tables": "[coat.clear]\nworking = { reduced-pressure = { start = \"27psi\" } }\n",
		"all inline":             "coat = { clear = { working = { reduced-pressure = { start = \"27psi\" } } } }\n",
		"windows line ends":      "[coat.clear]\r\nworking.reduced-pressure.start = \"27psi\"\r\n",
		"byte order mark":        "\ufeff[coat.clear]\nworking.reduced-pressure.start = \"27psi\"\n",
	} {
		t.Run(name, func(t *testing.T) {
			c := shop(t, toml)
			got := request(t, c, mildDay("clear", "reduced-pressure")).Coat
			assert.InDelta(t, 27, got.Working.Start.PSI(), 1e-9)
			assert.Equal(t, shippedClear.Working.Low, got.Working.Low)
			assert.Equal(t, shippedClear.Working.High, got.Working.High)
			assert.Equal(t, shippedClear.Name, got.Name)
			assert.True(t, got.Isocyanate)
			assert.InDelta(t, 28, request(t, c, mildDay("clear", "high-volume-low-pressure")).Coat.Working.Start.PSI(), 1e-9, "another class is untouched")
		})
	}
}

func TestShopAddsEntriesOfEveryKind(t *testing.T) {
	c := shop(t, `
[coat.marsh-clear]
name = "clear of the invented Marsh Lane shop"
isocyanate = true
working.reduced-pressure = { start = "25psi", low = "22psi", high = "30psi" }

[gun.bench-two]
class = "reduced-pressure"
inlet = "30psi"
flow = "11cfm"
cap = "18psi"
nearest = "5in"
farthest = "7in"
valve = { conductance = 7, ratio = 0.3, turns = 2.5, shape = [[0, 0], [0.5, 0.4], [1, 1]] }

[coupling.wide]
bore = "10mm"
ratio = 0.4

[regulator.old]
conductance = 5.0
ratio = 0.3
droop = "8psi"
rated-flow = "60cfm"

[filter.fine]
conductance = 3.0
ratio = 0.3
`)
	a := mildDay("marsh-clear", "bench-two")
	a.Coupling, a.Regulator, a.Filter = "wide", "old", "fine"
	r := request(t, c, a)
	assert.Equal(t, calc.Ground{Basis: calc.OwnReadings, Source: "this shop's own file"}, r.Coat.Working.Ground)
	assert.Equal(t, "bench-two", r.Gun.Name, "an entry without a name goes by its key")
	assert.InDelta(t, 12.5, r.Line[1].Restriction.C.DM3PerSBar(), 1e-9, "0.125 times 10 mm squared")
	_, err := calc.Solve(r)
	require.NoError(t, err)

	a.Gun = "high-pressure"
	_, faults := c.Resolve(a, unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, &presets.FieldError{Field: "gun", Given: "high-pressure", Want: "for this class of gun marsh-clear has no working pressure; it has one for reduced-pressure"}, faults[0])
}

// What a shop changes stops resting on the source it was shipped with.
func TestShopValuesAreTheShopsOwn(t *testing.T) {
	standing := func(toml string) calc.Ground {
		for _, item := range shop(t, toml).Choices(presets.FieldCoupling) {
			if item.ID == "ordinary" {
				return item.Standing
			}
		}
		return calc.Ground{}
	}
	require.Equal(t, calc.Published, standing("").Basis)
	changed := standing("[coupling.ordinary]\nconductance = 3.5\n")
	assert.Equal(t, calc.OwnReadings, changed.Basis)
	assert.True(t, strings.HasPrefix(changed.Source, "this shop's own file, over: trade article"), changed.Source)
	assert.Equal(t, calc.Ground{Basis: calc.Computed, Source: "from its drawing"},
		standing("[coupling.ordinary]\nconductance = 3.5\nbasis = \"computed\"\nsource = \"from its drawing\"\n"))
}

func TestShopsNewBoreGivesANewConductance(t *testing.T) {
	a := mildDay("clear", "reduced-pressure")
	a.Coupling = "ordinary"
	conductance := func(toml string) float64 {
		return request(t, shop(t, toml), a).Line[0].Restriction.C.DM3PerSBar()
	}
	assert.InDelta(t, 4, conductance(""), 1e-9)
	assert.InDelta(t, 0.125*49, conductance("[coupling.ordinary]\nbore = \"7mm\"\n"), 1e-9)
	assert.InDelta(t, 5, conductance("[coupling.ordinary]\nbore = \"7mm\"\nconductance = 5\n"), 1e-9)
}

// A hose of the same bore as a shipped one counts before it, whichever way the table
// falls in memory.
func TestShopsHoseOfAShippedBoreCounts(t *testing.T) {
	for range 20 {
		c := shop(t, "[hose.smooth-ends]\nbore = \"3/8in\"\nend = \"9.5mm\"\n")
		end := request(t, c, mildDay("clear", "reduced-pressure")).Line[1].Hose.End.C.DM3PerSBar()
		require.InDelta(t, 0.125*9.5*9.5, end, 1e-9)
	}
}

func TestShopsUsualLineChangesTheAnswer(t *testing.T) {
	solve := func(c *presets.Catalogue) *calc.Setup {
		a := mildDay("clear", "reduced-pressure")
		a.Supply = ""
		if c.Usual(presets.FieldSupply) == "" {
			a.Supply = "90psi"
		}
		r := request(t, c, a)
		s, err := calc.Solve(r)
		require.NoError(t, err)
		return s
	}
	usual := solve(shippedCatalogue(t))
	long := solve(shop(t, "[line]\nhose = [\"50ft,5/16in\", \"6ft,1/4in\"]\ncoupling = \"slim\"\nfilter = \"clogged\"\nsupply = \"110psi\"\naltitude = \"1500ft\"\nmark = \"2psi\"\n"))
	assert.Greater(t, long.Wall.Open, usual.Wall.Open+unit.PSIG(10))
	assert.InDelta(t, 110, long.Line[0].In.PSI(), 1e-9, "the usual supply")
	assert.Less(t, long.Weather.Ambient, usual.Weather.Ambient)
	assert.InDelta(t, 0, remainder(long.Wall.Flowing.PSI(), 2), 1e-9, "on a mark of the usual gauge")
	var hoses int
	for _, step := range long.Line {
		if strings.HasSuffix(step.Name, "hose") {
			hoses++
		}
	}
	assert.Equal(t, 2, hoses)
}

func remainder(v, step float64) float64 { return v - step*float64(int(v/step+0.5)) }

func TestMetricShopReadsBareAnswersAsMetric(t *testing.T) {
	c := shop(t, "[line]\nunits = \"metric\"\nhose = [\"8m,10mm\"]\nsupply = \"6bar\"\nmark = \"0.1bar\"\naltitude = \"300m\"\n")
	require.Equal(t, unit.Metric, c.System())
	a := mildDay("clear", "reduced-pressure")
	a.Temp, a.Supply, a.Wall = "22", "", "4"
	r := request(t, c, a)
	assert.InDelta(t, 22, r.Day.Air.C(), 1e-9)
	assert.InDelta(t, 6, r.Supply.Bar(), 1e-9)
	assert.InDelta(t, 4, r.Now.Bar(), 1e-9)
	assert.InDelta(t, 0.1, r.Mark.Bar(), 1e-9)
	assert.InDelta(t, 300, float64(r.Day.Altitude), 1e-9)
	assert.InDelta(t, 8, float64(r.Line[1].Hose.Length), 1e-9)
	assert.InDelta(t, 10, r.Line[1].Hose.Bore.MM(), 1e-9)
}

// A shop's coat for one class of gun stands first in the list; fields are still
// checked one at a time, and the usual line still reads.
func TestCoatForOneClassOnlyDoesNotDisturbOtherFields(t *testing.T) {
	c := shop(t, "[coat.only-old]\nworking.high-pressure = { start = \"44psi\", low = \"40psi\", high = \"48psi\" }\n")
	require.Equal(t, "only-old", c.Choices(presets.FieldCoat)[0].ID)
	assert.Nil(t, c.Fault(presets.Answers{Temp: "20C"}, presets.FieldTemp, unit.US))
	f := c.Fault(presets.Answers{Temp: "200C"}, presets.FieldTemp, unit.US)
	require.NotNil(t, f, "a range is checked though coat and gun are not answered")
	assert.Contains(t, f.Want, "outside 14 to 140 F")
}

func TestFileErrorSaysWhere(t *testing.T) {
	assert.Equal(t, "shop.toml:3: why", (&presets.FileError{File: "shop.toml", Line: 3, Why: "why"}).Error())
	assert.Equal(t, "shop.toml: why", (&presets.FileError{File: "shop.toml", Why: "why"}).Error())
	_, err := presets.Load([]byte("[line]\nunits = \"furlongs\"\n"), "shop.toml")
	var f *presets.FileError
	require.True(t, errors.As(err, &f))
	assert.Equal(t, "shop.toml", f.File)
}
