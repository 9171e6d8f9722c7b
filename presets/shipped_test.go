package presets_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shippedCatalogue is the catalogue without a shop's file.
func shippedCatalogue(t testing.TB) *presets.Catalogue {
	t.Helper()
	c, err := presets.Load(nil, "")
	require.NoError(t, err)
	return c
}

// mildDay is a complete set of answers on the shop's usual line.
func mildDay(coat, gun string) presets.Answers {
	return presets.Answers{
		Coat: presets.Typed(coat), Gun: presets.Typed(gun),
		Temp: "72F", Humidity: "45", Supply: "90psi",
	}
}

func ids(items []presets.Item) (out []string) {
	for _, i := range items {
		out = append(out, i.ID)
	}
	return out
}

func TestShippedCatalogueHoldsTheCoatsAndClassesOfTheTrade(t *testing.T) {
	c := shippedCatalogue(t)
	assert.Equal(t, []string{"epoxy-primer", "surfacer", "sealer", "solvent-base", "metallic-base", "waterborne-base", "single-stage", "clear"}, ids(c.Choices(presets.FieldCoat)))
	assert.Equal(t, []string{"high-volume-low-pressure", "reduced-pressure", "high-pressure"}, ids(c.Choices(presets.FieldGun)))
	assert.Equal(t, []string{"large-bore", "ordinary", "slim", "none"}, ids(c.Choices(presets.FieldCoupling)))
	assert.Equal(t, []string{"1/4in", "3/8in", "1/2in", "none"}, ids(c.Choices(presets.FieldRegulator)))
	assert.Equal(t, []string{"none", "point-of-use", "clogged"}, ids(c.Choices(presets.FieldFilter)))
	assert.Equal(t, []string{"wall", "gun"}, ids(c.Choices(presets.FieldRegulatorAt)))
	assert.Equal(t, []string{"handle", "foot", "none"}, ids(c.Choices(presets.FieldGauge)))
	assert.Nil(t, c.Choices(presets.FieldTemp), "a temperature is typed")
}

func TestEveryShippedEntryHasANameABasisAndASource(t *testing.T) {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	c := shippedCatalogue(t)
	for _, field := range []string{presets.FieldCoat, presets.FieldGun, presets.FieldCoupling, presets.FieldRegulator, presets.FieldFilter} {
		for _, item := range c.Choices(field) {
			assert.NotEmpty(t, item.Name, "%s %s", field, item.ID)
			if item.ID == presets.None {
				continue // not an entry: the part is left out
			}
			assert.Contains(t, bases, item.Standing.Basis, "%s %s", field, item.ID)
			assert.NotEmpty(t, item.Standing.Source, "%s %s", field, item.ID)
		}
	}
}

// Every choice of every list can be answered with, alone and with every coat and gun.
func TestEveryChoiceResolvesAndSolves(t *testing.T) {
	c := shippedCatalogue(t)
	solve := func(a presets.Answers, what ...string) {
		r, faults := c.Resolve(a, unit.US)
		require.Empty(t, faults, what)
		_, err := calc.Solve(r)
		require.NoError(t, err, what)
	}
	for _, coat := range c.Choices(presets.FieldCoat) {
		for _, gun := range c.Choices(presets.FieldGun) {
			a := mildDay(coat.ID, gun.ID)
			solve(a, coat.ID, gun.ID)
			for _, field := range []string{presets.FieldCoupling, presets.FieldRegulator, presets.FieldFilter, presets.FieldRegulatorAt, presets.FieldGauge} {
				for _, choice := range c.Choices(field) {
					b := a
					b.Set(field, choice.ID)
					solve(b, coat.ID, gun.ID, field, choice.ID)
				}
			}
		}
	}
}

// The usual line as shipped: 25 ft of 3/8 in hose between large-bore couplings, a
// 1/2 in regulator at the wall, the gauge in the handle; no supply and no altitude.
func TestShippedUsualLine(t *testing.T) {
	c := shippedCatalogue(t)
	for field, want := range map[string]string{
		presets.FieldHose: "25ft,3/8in", presets.FieldCoupling: "large-bore", presets.FieldFilter: "none",
		presets.FieldRegulator: "1/2in", presets.FieldRegulatorAt: "wall", presets.FieldGauge: "handle",
		presets.FieldSupply: "", presets.FieldAltitude: "", presets.FieldMark: "", presets.FieldCoat: "",
	} {
		assert.Equal(t, want, c.Usual(field), field)
	}
	assert.Equal(t, unit.US, c.System())

	r, err := c.Request(mildDay("clear", "reduced-pressure"), unit.US)
	require.NoError(t, err)
	var names []string
	for _, p := range r.Line {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"wall coupling (large-bore)", "main hose", "gun coupling (large-bore)"}, names)
	assert.Equal(t, "wall regulator (1/2in)", r.RegulatorName)
	assert.Equal(t, calc.Wall, r.RegulatorAt)
	assert.Equal(t, calc.InHandle, r.Gauge)
	assert.InDelta(t, 25, r.Line[1].Hose.Length.Feet(), 1e-9)
	assert.InDelta(t, 0.375, r.Line[1].Hose.Bore.Inches(), 1e-9)
	assert.InDelta(t, 1, r.Mark.PSI(), 1e-9)
	assert.Equal(t, r.Day.Air, r.Day.Panel, "a panel is at the air's temperature unless told")
}
