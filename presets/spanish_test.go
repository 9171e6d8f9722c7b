package presets_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spanish(t *testing.T, shop string) (*presets.Catalogue, error) {
	t.Helper()
	w, ok := words.For("es")
	require.True(t, ok)
	return presets.LoadIn(w, words.Locale{Lang: "es", System: unit.Metric, HasSystem: true}, []byte(shop), "shop.toml")
}

// Names, choices, the parts of the line and what will not do are in the catalogue's
// language, what a shop named keeps its name.
func TestACatalogueSpeaksItsLanguage(t *testing.T) {
	c, err := spanish(t, "[coat.clear]\nrank = 1\n[coupling.mine]\nname = \"our coupling\"\nbore = \"7mm\"\nratio = 0.3\nbasis = \"estimate\"\nsource = \"measured\"\n")
	require.NoError(t, err)
	assert.Equal(t, unit.Metric, c.System())
	named := func(field, id string) presets.Item {
		for _, item := range c.Choices(field) {
			if item.ID == id {
				return item
			}
		}
		return presets.Item{}
	}
	assert.Equal(t, "transparente", named(presets.FieldCoat, "clear").Name)
	assert.Equal(t, "el archivo propio de este taller, sobre: práctica común, sin fuente publicada", named(presets.FieldCoat, "clear").Standing.Source)
	assert.Equal(t, "regulador de 1/2 in", named(presets.FieldRegulator, "1/2in").Name)
	assert.Equal(t, "en la pared", named(presets.FieldRegulatorAt, presets.AtWall).Name)
	assert.Equal(t, "our coupling", named(presets.FieldCoupling, "mine").Name)
	assert.Equal(t, "measured", named(presets.FieldCoupling, "mine").Standing.Source)

	a := presets.Answers{Coat: "clear", Gun: "reduced-pressure", Temp: "24 grados C", Humidity: "45 por ciento", Supply: "6 bar", Hose: []presets.Typed{"25 pies,3/8 pulg"}}
	r, err := c.Request(a, unit.Metric)
	require.NoError(t, err)
	us := a
	us.Temp, us.Humidity, us.Hose = "24C", "45%", []presets.Typed{"25ft,3/8in"}
	same, err := c.Request(us, unit.US)
	require.NoError(t, err)
	assert.Equal(t, same.Day, r.Day)
	assert.Equal(t, same.Line[1].Hose, r.Line[1].Hose)
	s, err := calc.Solve(r)
	require.NoError(t, err)
	var parts []string
	for _, p := range s.Line {
		parts = append(parts, p.Name)
	}
	assert.Equal(t, []string{"regulador de pared (1/2in)", "acople de pared (de paso amplio)", "manguera principal", "acople de pistola (de paso amplio)", "válvula de entrada", "conductos", "casquillo de aire"}, parts)

	for typed, want := range map[presets.Typed]string{
		"":    "escriba un número con F o C, como 75F o 24C",
		"99C": "99 C está fuera de -10 a 60 C",
	} {
		a := a
		a.Temp = typed
		_, err := c.Request(a, unit.Metric)
		assert.Equal(t, &presets.FieldError{Field: presets.FieldTemp, Given: string(typed), Want: want}, err)
	}
	a.Coat = "milk"
	_, err = c.Request(a, unit.Metric)
	assert.ErrorContains(t, err, "elija clear, epoxy-primer, ")
	assert.ErrorContains(t, err, " o single-stage")
}

// A value typed in the other system of units is taken as it is.
func TestAValueOfTheOtherSystemIsTaken(t *testing.T) {
	c := shippedCatalogue(t)
	one := presets.Answers{Coat: "clear", Gun: "reduced-pressure", Temp: "24C", Humidity: "45", Supply: "6bar", Hose: []presets.Typed{"8m,10mm"}, Mark: "0.05bar"}
	us, err := c.Request(one, unit.US)
	require.NoError(t, err)
	metric, err := c.Request(one, unit.Metric)
	require.NoError(t, err)
	assert.Equal(t, metric, us)
}

// What is wrong with a shop's file is told in the language.
func TestFaultsOfAShopsFileInSpanish(t *testing.T) {
	for shop, want := range map[string]string{
		"[coat.clear]\nfarther = 3\n":                       `shop.toml:2: largo "3": escriba un número con in, ft, mm o m, como 3/8in, 25ft o 10mm`,
		"[gun.reduced-pressure]\ninlet = [1]\n":             `shop.toml:2: la clave "gun.reduced-pressure.inlet" lleva una presión entre comillas, como "90psi"`,
		"[coat.clear.lay]\ncoats = 40\n":                    `shop.toml:1: coat "clear": lay: dé coats, de 1 a 20, como coats = 2`,
		"[coat.clear]\ncolour = 1\n":                        `shop.toml:2: clave desconocida "coat.clear.colour"; las claves aquí son rank, `,
		"[gun.reduced-pressure]\nvalve.conductance = -1\n":  `gun "reduced-pressure": valve: dé conductance, de 0.01 a 1000 dm3/(s bar)`,
		"[gun.reduced-pressure]\nvalve.shape = [[0.1,0]]\n": `gun "reduced-pressure": válvula de entrada: su forma debe ir de 0,0 a 1,1`,
		"[line]\nunits = \"both\"\n":                        `line: units "both": elija us o metric`,
		"[line]\nsupply = \"900bar\"\n":                     `line: supply "900bar": `,
	} {
		_, err := spanish(t, shop)
		assert.ErrorContains(t, err, want)
	}
}
