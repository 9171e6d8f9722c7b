package catalogue_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func loaded(t *testing.T, toml string) *catalogue.Catalogue {
	t.Helper()
	c, err := catalogue.Load([]byte(toml), "shop.toml")
	require.NoError(t, err)
	return c
}

// Class and stamp are enough: the rest of a gun is its class's, its cap in proportion to the
// inlet and its valve to the flow.
func TestAGunHasFromItsClassWhatItLeavesOut(t *testing.T) {
	c := loaded(t, "[gun.own]\nclass = \"reduced-pressure\"\ninlet = \"28psi\"\nflow = \"12cfm\"\n")
	own, _ := c.Guns.Get("own")
	class, _ := c.Guns.Get("reduced-pressure")
	g := own.Gun()
	assert.InDelta(t, 28, g.Stamp.Inlet.PSI(), 1e-9)
	assert.InDelta(t, 12, g.Stamp.Flow.SCFM(), 1e-9)
	assert.InDelta(t, 28*20.0/32, g.Stamp.Cap.PSI(), 1e-9, "the class's 20 of 32 psi")
	assert.InEpsilon(t, 6.5*1.2*(32+14.69595)/(28+14.69595), g.Valve.Full.C.DM3PerSBar(), 1e-6)
	of := class.Gun()
	assert.Equal(t, of.Valve.Shape, g.Valve.Shape)
	assert.Equal(t, of.Valve.Turns, g.Valve.Turns)
	assert.Equal(t, class.Nearest, own.Nearest)
	assert.Equal(t, class.Farthest, own.Farthest)
	assert.Zero(t, g.CapLimit)
	transfer, ok := own.Transfer()
	require.True(t, ok)
	assert.Equal(t, class.Landing, transfer)
	cup, ok := own.CupOf()
	require.True(t, ok)
	assert.Equal(t, class.Cup, cup)
	assert.Equal(t, calc.OwnReadings, own.Ground().Basis)
}

// A class with a limit at the cap has its stamp there, whatever its inlet.
func TestACapOfAClassWithALimitStandsAtIt(t *testing.T) {
	c := loaded(t, "[gun.own]\nclass = \"high-volume-low-pressure\"\ninlet = \"25psi\"\nflow = \"12cfm\"\n")
	own, _ := c.Guns.Get("own")
	g := own.Gun()
	assert.InDelta(t, 10, g.Stamp.Cap.PSI(), 1e-9)
	assert.InDelta(t, 10, g.CapLimit.PSI(), 1e-9)
}

// What a gun's own entry gives stands, and of its valve each value by itself.
func TestAGunKeepsItsOwnValues(t *testing.T) {
	c := loaded(t, `[gun.own]
class = "reduced-pressure"
inlet = "30psi"
flow = "10cfm"
cap = "15psi"
nearest = "4in"
valve = { turns = 3.5, counts-from = "shut" }
cup = { size = "250mL", loss = "30mL" }
`)
	own, _ := c.Guns.Get("own")
	g := own.Gun()
	assert.InDelta(t, 15, g.Stamp.Cap.PSI(), 1e-9)
	assert.InDelta(t, 4, own.Nearest.V.Inches(), 1e-9)
	assert.InDelta(t, 6, own.Farthest.V.Inches(), 1e-9, "the class's")
	assert.Equal(t, 3.5, g.Valve.Turns)
	assert.True(t, g.Valve.FromShut)
	assert.Greater(t, g.Valve.Full.C, unit.DM3PerSBar(6.5), "of the class, for more air an inlet")
	cup, _ := own.CupOf()
	assert.InDelta(t, 250, cup.Size.V.Litres()*1e3, 1e-9)
}

// A gun fed from a pot has no cup, not even its class's.
func TestAPotIsNoCup(t *testing.T) {
	c := loaded(t, "[gun.two]\nclass = \"reduced-pressure\"\npot = { loss = \"300mL\" }\n")
	for _, id := range []string{"pressure-feed", "two"} {
		g, _ := c.Guns.Get(id)
		_, has := g.CupOf()
		assert.False(t, has, id)
	}
}

// A coat that is like another has all of it but what its own entry gives, also through
// another of the shop's, whichever stands first in the file.
func TestACoatLikeAnother(t *testing.T) {
	c := loaded(t, `[coat.quick]
like = "fast"
[coat.quick.film]
most = "2.8mil"
[coat.fast]
like = "clear"
name = "quick clear of the invented Marsh Lane shop"
working.reduced-pressure = { start = "25psi" }
[coat.clear]
farther = "0.2in"
`)
	clear, _ := c.Coats.Get("clear")
	fast, _ := c.Coats.Get("fast")
	quick, _ := c.Coats.Get("quick")
	for _, x := range []*catalogue.Coat{fast, quick} {
		assert.InDelta(t, 25, x.Working["reduced-pressure"].Start.V.PSI(), 1e-9)
		assert.Equal(t, clear.Working["reduced-pressure"].Low, x.Working["reduced-pressure"].Low)
		assert.Equal(t, clear.Working["high-pressure"], x.Working["high-pressure"])
		assert.Equal(t, clear.Hardener, x.Hardener)
		assert.Equal(t, clear.Cup, x.Cup)
		assert.InDelta(t, 0.2, x.Farther.V.Inches(), 1e-9, "as the shop has it")
	}
	assert.Equal(t, "quick", quick.Called(), "a name is not handed on")
	assert.NotEqual(t, clear.Working["reduced-pressure"].Start, fast.Working["reduced-pressure"].Start, "the other is not touched")
	assert.InDelta(t, 2.8, float64(quick.Film.Most.V)/unit.MetrePerMil, 1e-9)
	assert.NotEqual(t, quick.Film.Most, fast.Film.Most)
	assert.Equal(t, calc.OwnReadings, fast.Ground().Basis)
}

// What one of two coats alike changes in a table or a stage is not changed in the other.
func TestACoatLikeAnotherSharesNothingWithIt(t *testing.T) {
	before, _ := loaded(t, "# nothing of our own\n").Coats.Get("metallic-base")
	c := loaded(t, `[coat.tint]
like = "metallic-base"
working.reduced-pressure = { start = "24psi" }
[coat.tint.film]
typical = "0.55mil"
[coat.tint.lay]
coats = 3
`)
	after, _ := c.Coats.Get("metallic-base")
	assert.Equal(t, before.Working, after.Working)
	assert.Equal(t, before.Film, after.Film)
	assert.Equal(t, before.Lay, after.Lay)
	assert.Equal(t, before.Then, after.Then)
	tint, _ := c.Coats.Get("tint")
	assert.Equal(t, len(before.Then), len(tint.Then))
	for id, stage := range tint.Then {
		assert.NotSame(t, after.Then[id], stage)
		assert.Equal(t, after.Then[id], stage)
	}
}
