package catalogue_test

import (
	"strings"
	"testing"

	"boothset/calc"
	"boothset/presets/catalogue"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// on is a coat's working pressure on a class of gun, which it must have.
func on(t testing.TB, c *catalogue.Catalogue, coat, class string) calc.Band {
	t.Helper()
	b, ok := get(t, c.Coats, coat).On(class)
	require.True(t, ok)
	return b
}

func TestShopOverridesFieldByFieldAndKeepsTheRest(t *testing.T) {
	before := on(t, shipped(t), "clear", "reduced-pressure")
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
			got := on(t, c, "clear", "reduced-pressure")
			assert.InDelta(t, 27, got.Start.PSI(), 1e-9)
			assert.Equal(t, before.Low, got.Low)
			assert.Equal(t, before.High, got.High)
			assert.Equal(t, "clearcoat", choice(c.Choices(catalogue.KindCoat), "clear").Name)
			assert.Equal(t, calc.Isocyanate, get(t, c.Coats, "clear").Hardener)
			assert.InDelta(t, 27, on(t, c, "clear", "high-volume-low-pressure").Start.PSI(), 1e-9, "another class is untouched")
		})
	}
}

// What a shop changes stops resting on the source it was shipped with.
func TestShopValuesAreTheShopsOwn(t *testing.T) {
	ground := func(toml string) calc.Ground {
		return choice(shop(t, toml).Choices(catalogue.KindCoupling), "ordinary").Ground
	}
	require.Equal(t, calc.Estimate, ground("").Basis)
	changed := ground("[coupling.ordinary]\nconductance = 3.5\n")
	assert.Equal(t, calc.OwnReadings, changed.Basis)
	assert.True(t, strings.HasPrefix(changed.Source, "this shop's own file, over: C about 4.0 from a trade article"), changed.Source)
	assert.Equal(t, calc.Ground{Basis: calc.Computed, Source: "from its drawing"},
		ground("[coupling.ordinary]\nconductance = 3.5\nbasis = \"computed\"\nsource = \"from its drawing\"\n"))
}

// A table that the shop changes without saying what it rests on is the shop's own, and
// that one alone.
func TestShopClaimsTheTablesItChanges(t *testing.T) {
	c := shop(t, "[coat.clear.film]\ntypical = \"2.3mil\"\n[gun.reduced-pressure.cup]\nsize = \"1L\"\nsource = \"measured\"\n")
	clear, gun := get(t, c.Coats, "clear"), get(t, c.Guns, "reduced-pressure")
	assert.Equal(t, calc.OwnReadings, clear.Film.Ground().Basis)
	assert.Contains(t, clear.Film.Ground().Source, "this shop's own file, over: trade pages")
	cup, ok := gun.CupOf()
	require.True(t, ok)
	assert.Equal(t, calc.Ground{Basis: calc.OwnReadings, Source: "measured"}, cup.Ground())
	assert.Equal(t, calc.Published, clear.Lay.Ground().Basis)
	transfer, ok := gun.Transfer()
	require.True(t, ok)
	assert.Equal(t, calc.Estimate, transfer.Ground().Basis)
	assert.Equal(t, calc.CommonPractice, on(t, c, "clear", "reduced-pressure").Basis)
	assert.Equal(t, calc.CommonPractice, gun.Ground().Basis)
}

func TestShopsNewBoreGivesANewConductance(t *testing.T) {
	conductance := func(toml string) float64 {
		return get(t, shop(t, toml).Couplings, "ordinary").Restriction().C.DM3PerSBar()
	}
	assert.InDelta(t, 4, conductance(""), 1e-9)
	assert.InDelta(t, 0.125*49, conductance("[coupling.ordinary]\nbore = \"7mm\"\n"), 1e-9)
	assert.InDelta(t, 5, conductance("[coupling.ordinary]\nbore = \"7mm\"\nconductance = 5\n"), 1e-9)
}

// A sheet that gives a flow coefficient serves in place of a conductance:
// C = 4.729 Cv sqrt(1-b), the small-drop limit of ANSI/(NFPA) T3.21.3.
func TestFlowCoefficientServesForConductance(t *testing.T) {
	c := shop(t, "[coupling.ordinary]\nflow-coefficient = 1.0\n[filter.felt]\nflow-coefficient = 2.0\nratio = 0.2\n"+
		"[regulator.\"1/2in\"]\nflow-coefficient = 3.0\nratio = 0.5\n")
	assert.InEpsilon(t, 4.7288*2*0.894427, get(t, c.Filters, "felt").Restriction().C.DM3PerSBar(), 1e-6)
	assert.InEpsilon(t, 4.7288*0.836660, get(t, c.Couplings, "ordinary").Restriction().C.DM3PerSBar(), 1e-6, "over the shipped conductance")
	assert.InEpsilon(t, 4.7288*3*0.707107, get(t, c.Regulators, "1/2in").Regulator().Seat.C.DM3PerSBar(), 1e-6)
}

// A hose of the same bore as a shipped one counts before it, whichever way the table
// falls in memory.
func TestShopsHoseOfAShippedBoreCounts(t *testing.T) {
	for range 20 {
		c := shop(t, "[hose.smooth-ends]\nbore = \"3/8in\"\nend = \"9.5mm\"\n")
		end := c.HoseEnd(get(t, c.Hoses, "3/8in").Bore.V)
		require.InDelta(t, 0.125*9.5*9.5, end.C.DM3PerSBar(), 1e-9)
	}
}

// The end of a bore that no hose of the catalogue has is in the proportion of the nearest's:
// 8.5 mm for 3/8 in.
func TestHoseEndOfAnyBore(t *testing.T) {
	c := shipped(t)
	bore := get(t, c.Hoses, "3/8in").Bore.V
	assert.InDelta(t, 0.125*8.5*8.5, c.HoseEnd(bore).C.DM3PerSBar(), 1e-9)
	assert.InDelta(t, 0.125*8.5*8.5*1.1*1.1, c.HoseEnd(1.1*bore).C.DM3PerSBar(), 1e-9)
}

// A gun of the shop's own transfers what its class does, and has its class's cup, until it
// has its own.
func TestAShopsGunIsOfItsClass(t *testing.T) {
	const gun = "[gun.ours]\nclass = \"reduced-pressure\"\ninlet = \"29psi\"\nflow = \"11cfm\"\ncap = \"18psi\"\nnearest = \"5in\"\nfarthest = \"7in\"\n" +
		"valve = { conductance = 6.5, ratio = 0.3, turns = 2.0, shape = 1.0 }\n"
	e := get(t, shop(t, gun).Guns, "ours")
	assert.Equal(t, "reduced-pressure", e.ClassOf("ours"))
	of, ok := e.Transfer()
	require.True(t, ok)
	assert.InDelta(t, 0.65, of.Part.V, 1e-12)
	cup, ok := e.CupOf()
	require.True(t, ok)
	assert.InDelta(t, 0.6, cup.Size.V.Litres(), 1e-12)
	own := get(t, shop(t, gun+"[gun.ours.transfer]\npart = \"60%\"\npressure = \"26psi\"\ndistance = \"6in\"\nchoked = \"90%\"\n").Guns, "ours")
	of, ok = own.Transfer()
	require.True(t, ok)
	assert.InDelta(t, 0.60, of.Part.V, 1e-12)
	assert.Equal(t, calc.OwnReadings, of.Ground().Basis)
}

// So do the tables of a gun and of a coat's stage that it changes.
func TestShopTablesAreTheShopsOwn(t *testing.T) {
	c := shop(t, "[gun.reduced-pressure.felt]\ndistance = \"5.6in\"\n[coat.metallic-base.then.drop.cap]\nusual = \"6.5psi\"\n")
	assert.Equal(t, calc.OwnReadings, get(t, c.Guns, "reduced-pressure").Felt.Ground().Basis)
	assert.Equal(t, calc.OwnReadings, get(t, c.Coats, "metallic-base").Then["drop"].Cap.Ground().Basis)
	assert.Equal(t, calc.Published, get(t, shop(t, "").Coats, "metallic-base").Then["drop"].Cap.Ground().Basis)
}
