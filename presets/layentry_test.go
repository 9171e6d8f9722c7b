package presets_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each fault of a shop's own films, mixes, transfers and cups names the entry and says
// what would do there.
func TestShopFaultsOfFilms(t *testing.T) {
	for _, c := range []struct{ toml, says string }{
		{"[coat.clear.film]\nlow = \"3mil\"\n", "give low, typical and high"},
		{"[coat.clear.film]\nhigh = \"9000um\"\n", "give low, typical and high"},
		{"[coat.clear.film]\nmost = \"1mil\"\n", "most must not be below high"},
		{"[coat.clear.film]\nthick = 1\n", "low, typical, high or most"},
		{"[coat.clear.film]\nlow = 2\n", "in, ft, mm or m"},
		{"[coat.clear.film]\nbasis = \"guess\"\n", "basis \"guess\": use published"},
		{"[coat.clear.lay]\ncoats = 0\n", "give coats, 1 to 20"},
		{"[coat.clear.lay]\ncoats = \"two\"\n", "takes a whole number"},
		{"[coat.clear.lay]\ncoat-low = \"2mil\"\n", "coat-low and coat-high, in that order"},
		{"[coat.clear.lay]\noverlap = \"95%\"\n", "overlap must lie in 0 to 90%"},
		{"[coat.clear.lay]\noverlap = [1]\n", "takes a percentage in quotes"},
		{"[coat.clear.lay]\nfan = \"3m\"\n", "give fan, 0.394 to 23.6 in"},
		{"[coat.clear.mix]\nsolids = \"0\"\n", "give solids, 1 to 100%"},
		{"[coat.clear.mix]\nratio = \"4\"\n", "4:1:1"},
		{"[gun.reduced-pressure.transfer]\npart = \"99%\"\n", "outside 10 to 90 %"},
		{"[gun.reduced-pressure.transfer]\nchoked = \"5%\"\n", "give choked, 30 to 100%"},
		{"[gun.reduced-pressure.cup]\nloss = \"2L\"\n", "give size, 2.03 to 169 fl oz"},
		{"[gun.reduced-pressure.cup]\nsize = [1]\n", "takes a volume in quotes"},
		{"[coat.clear]\nfilm = 3\n", "takes a table"},
	} {
		_, err := presets.Load([]byte(c.toml), "shop.toml")
		var f *presets.FileError
		require.ErrorAs(t, err, &f, c.toml)
		assert.Contains(t, f.Why, c.says, c.toml)
		assert.NotContains(t, f.Why, "presets.", c.toml)
	}
}

// A table that the shop changes without saying what it rests on is the shop's own, and
// that one alone.
func TestShopClaimsTheTablesItChanges(t *testing.T) {
	c, err := presets.Load([]byte("[coat.clear.film]\ntypical = \"2.3mil\"\n[gun.reduced-pressure.cup]\nsize = \"1L\"\nsource = \"measured\"\n"), "shop.toml")
	require.NoError(t, err)
	r, _ := mixOf(t, c, "coat", "clear", "gun", "reduced-pressure", "area", "2m2")
	assert.Equal(t, calc.OwnReadings, r.Wants.Basis)
	assert.Contains(t, r.Wants.Source, "this shop's own file, over: trade pages")
	assert.Equal(t, calc.Ground{Basis: calc.OwnReadings, Source: "measured"}, r.Cup.Ground)
	assert.Equal(t, calc.Published, r.Usual.Basis)
	assert.Equal(t, calc.Estimate, r.Held.Class.Basis)
	plan, err := c.Request(mildDay("clear", "reduced-pressure"), unit.US)
	require.NoError(t, err)
	assert.Equal(t, calc.CommonPractice, plan.Coat.Working.Basis)
	assert.Equal(t, calc.CommonPractice, plan.Gun.Ground.Basis)
}
