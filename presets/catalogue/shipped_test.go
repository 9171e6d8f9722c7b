package catalogue_test

import (
	"testing"

	"boothset/calc"
	"boothset/presets/catalogue"

	"github.com/stretchr/testify/assert"
)

var kinds = []string{catalogue.KindCoat, catalogue.KindGun, catalogue.KindCoupling, catalogue.KindRegulator, catalogue.KindFilter, catalogue.KindDryer, catalogue.KindValve}

func TestShippedCatalogueHoldsTheCoatsAndClassesOfTheTrade(t *testing.T) {
	c := shipped(t)
	assert.Equal(t, []string{"epoxy-primer", "surfacer", "sealer", "solvent-base", "metallic-base", "waterborne-base", "single-stage", "clear", "adhesion-promoter", "ultraviolet-primer", "pearl-mid", "matte-clear", "high-solids-clear"}, ids(c.Choices(catalogue.KindCoat)))
	assert.Equal(t, []string{"high-volume-low-pressure", "reduced-pressure", "high-pressure", "touch-up", "pressure-feed"}, ids(c.Choices(catalogue.KindGun)))
	assert.Equal(t, []string{"large-bore", "ordinary", "slim"}, ids(c.Choices(catalogue.KindCoupling)))
	assert.Equal(t, []string{"1/4in", "3/8in", "1/2in"}, ids(c.Choices(catalogue.KindRegulator)))
	assert.Equal(t, []string{"point-of-use", "clogged"}, ids(c.Choices(catalogue.KindFilter)))
	assert.Equal(t, []string{"refrigerated", "desiccant"}, ids(c.Choices(catalogue.KindDryer)))
	assert.Equal(t, []string{"air-adjusting", "ball"}, ids(c.Choices(catalogue.KindValve)))
	assert.Equal(t, []string{"1/4in", "5/16in", "3/8in", "1/2in"}, c.Hoses.IDs())
	assert.Nil(t, c.Choices(catalogue.KindHose), "a hose is typed")
}

func TestEveryShippedEntryHasANameABasisAndASource(t *testing.T) {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	c := shipped(t)
	for _, kind := range kinds {
		for _, item := range c.Choices(kind) {
			assert.NotEmpty(t, item.Name, "%s %s", kind, item.ID)
			assert.Contains(t, bases, item.Ground.Basis, "%s %s", kind, item.ID)
			assert.NotEmpty(t, item.Ground.Source, "%s %s", kind, item.ID)
		}
	}
}

// What a list shows is what a walk over the kind's ids goes by.
func TestIDsAreThoseOfTheChoices(t *testing.T) {
	c := shipped(t)
	for _, kind := range kinds {
		var all []string
		c.IDs(kind, func(id string, aliases, shared []string) bool {
			all = append(all, id)
			assert.Equal(t, choice(c.Choices(kind), id).Aliases, aliases, id)
			assert.Equal(t, choice(c.Choices(kind), id).Shared, shared, id)
			return true
		})
		assert.Equal(t, ids(c.Choices(kind)), all, kind)
		count := 0
		c.IDs(kind, func(string, []string, []string) bool { count++; return false })
		assert.Equal(t, 1, count, "%s: a walk ends where it is told to", kind)
	}
}

// Every tolerance that a spread works with is given, and says what it rests on.
func TestEveryToleranceIsShipped(t *testing.T) {
	all := &shipped(t).Tolerances
	for _, id := range []string{
		"coupling", "filter", "valve", "hose-bore", "hose-end", "friction", "critical-ratio", "stamp-flow", "stamp-cap", "droop", "gun-gauge", "thermometer", "hygrometer", "felt",
	} {
		to, _ := all.Of(id)
		if assert.NotNil(t, to, id) {
			assert.Greater(t, to.Within, 0.0, id)
			assert.NotEmpty(t, to.Ground.Basis, id)
			assert.NotEmpty(t, to.Ground.Source, id)
		}
	}
}
