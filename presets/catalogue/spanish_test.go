package catalogue_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spanish(t *testing.T, shop string) (*catalogue.Catalogue, error) {
	t.Helper()
	w, ok := words.For("es")
	require.True(t, ok)
	return catalogue.LoadIn(w, words.Locale{Lang: "es", System: unit.Metric, HasSystem: true}, []byte(shop), "shop.toml")
}

// Names are in the catalogue's language, what a shop named keeps its name.
func TestACatalogueSpeaksItsLanguage(t *testing.T) {
	c, err := spanish(t, "[coat.clear]\nrank = 1\n[coupling.mine]\nname = \"our coupling\"\nbore = \"7mm\"\nratio = 0.3\nbasis = \"estimate\"\nsource = \"measured\"\n")
	require.NoError(t, err)
	assert.Equal(t, unit.Metric, c.System())
	named := func(kind, id string) catalogue.Choice { return choice(c.Choices(kind), id) }
	assert.Equal(t, "transparente", named(catalogue.KindCoat, "clear").Name)
	assert.Equal(t, "el archivo propio de este taller, sobre: práctica común, sin fuente publicada", named(catalogue.KindCoat, "clear").Ground.Source)
	assert.Equal(t, "regulador de 1/2 in", named(catalogue.KindRegulator, "1/2in").Name)
	assert.Equal(t, "our coupling", named(catalogue.KindCoupling, "mine").Name)
	assert.Equal(t, "measured", named(catalogue.KindCoupling, "mine").Ground.Source)
	assert.Equal(t, "de paso amplio", get(t, c.Couplings, "large-bore").Variety())
	assert.Equal(t, "mine", get(t, c.Couplings, "mine").Variety())
}

// What is wrong with a shop's file is told in the language.
func TestFaultsOfAShopsFileInSpanish(t *testing.T) {
	for shop, want := range map[string]string{
		"[coat.clear]\nfarther = 3\n":                      `shop.toml:2:11: largo "3": escriba un número con in, ft, mm o m, como 3/8in, 25ft o 10mm`,
		"[gun.reduced-pressure]\ninlet = [1]\n":            `shop.toml:2:9: la clave "gun.reduced-pressure.inlet" lleva una presión entre comillas, como "90psi"`,
		"[coat.clear.lay]\ncoats = 40\n":                   `shop.toml:1:1: coat "clear": lay: dé coats, de 1 a 20, como coats = 2`,
		"[coat.clear]\ncolour = 1\n":                       `shop.toml:2:1: clave desconocida "coat.clear.colour"; las claves aquí son rank, `,
		"[gun.reduced-pressure]\nvalve.conductance = -1\n": `gun "reduced-pressure": valve: dé conductance, de 0.01 a 1000 dm3/(s bar)`,
		"[gun.reduced-pressure]\nvalve.shape = 0.0\n":      `gun "reduced-pressure": valve: dé shape de 0.1 a 10`,
		"[coat.clear]\naliases = [\"sealer\"]\n":           `shop.toml:1:1: coat "clear": el alias "sealer" ya es un nombre de sealer; use otro`,
	} {
		_, err := spanish(t, shop)
		assert.ErrorContains(t, err, want)
	}
}
