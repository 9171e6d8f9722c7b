package catalogue_test

import (
	"strings"
	"testing"

	"boothset/presets/catalogue"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The abbreviation of the rules for air quality, 40 CFR 63.11180, and what the older guns
// are called beside it.
func TestShippedAliases(t *testing.T) {
	guns := shipped(t).Choices(catalogue.KindGun)
	assert.Equal(t, []string{"hvlp"}, choice(guns, "high-volume-low-pressure").Aliases)
	assert.Equal(t, []string{"conventional"}, choice(guns, "high-pressure").Aliases)
	assert.Empty(t, choice(guns, "reduced-pressure").Aliases, "no name of the trade is this class's alone")
}

// A name is that of one entry of its kind, whatever the case of its letters.
func TestNamesAreOfOneEntry(t *testing.T) {
	c := shipped(t)
	for _, kind := range kinds {
		whose := map[string]string{}
		for _, x := range c.Choices(kind) {
			for _, name := range append(x.Aliases, x.ID) {
				name = strings.ToLower(name)
				assert.Empty(t, whose[name], "%s %s is one of %s", kind, name, x.ID)
				whose[name] = x.ID
			}
		}
	}
	for toml, says := range map[string]string{
		"[gun.reduced-pressure]\naliases = [\"hvlp\"]":                                         `gun "reduced-pressure": alias "hvlp" is what high-volume-low-pressure is called already`,
		"[gun.reduced-pressure]\naliases = [\"ours\", \"HVLP\"]":                               `alias "HVLP" is what high-volume-low-pressure is called already`,
		"[gun.reduced-pressure]\naliases = [\"High-Pressure\"]":                                `alias "High-Pressure" is what high-pressure is called already`,
		"[gun.reduced-pressure]\naliases = [\"reduced-pressure\"]":                             `is what reduced-pressure is called already`,
		"[gun.reduced-pressure]\naliases = [\"ours\", \"Ours\"]":                               `alias "Ours" is what reduced-pressure is called already`,
		"[coat.clear]\naliases = [\"top\"]\n[coat.surfacer]\naliases = [\"top\"]":              `coat "surfacer": alias "top" is what clear is called already`,
		"[filter.clogged]\naliases = [\"none\"]":                                               "none is the answer",
		"[filter.clogged]\naliases = [\"None\"]":                                               "none is the answer",
		"[filter.clogged]\naliases = [\"\"]":                                                   "plain text on one line",
		"[filter.clogged]\naliases = [\" full\"]":                                              "plain text on one line",
		"[filter.clogged]\naliases = [\"fu\\nll\"]":                                            "plain text on one line",
		"[regulator.\"1/2in\"]\naliases = [\"1/4IN\"]":                                         `alias "1/4IN" is what 1/4in is called already`,
		"[coupling.slim]\naliases = [\"narrow\"]\n[coupling.ordinary]\naliases = [\"narrow\"]": `coupling "slim": alias "narrow" is what ordinary is called already`,
	} {
		f := refused(t, toml)
		assert.Contains(t, f.Why, says, toml)
	}
}

// A shop's aliases replace those that ship, and a name is free for another kind.
func TestAShopsAliases(t *testing.T) {
	c := shop(t, "[gun.high-volume-low-pressure]\naliases = [\"green\"]\n[coat.clear]\naliases = [\"hvlp\", \"2k\"]\n[gun.reduced-pressure]\naliases = [\"2k\"]\n")
	assert.Equal(t, []string{"green"}, choice(c.Choices(catalogue.KindGun), "high-volume-low-pressure").Aliases)
	assert.Equal(t, []string{"hvlp", "2k"}, choice(c.Choices(catalogue.KindCoat), "clear").Aliases)
}

// Sentences have "gun" beside a gun's name: one that is named with the word loses it.
func TestAGunIsNotCalledAGunTwice(t *testing.T) {
	for name, called := range map[string]string{
		"valve gun": "valve", "Gun": "Gun", "number two": "number two", "Touch-up Gun": "Touch-up", "pistola de retoque": "de retoque", "shotgun": "shotgun", "gunmetal": "gunmetal",
	} {
		c, err := catalogue.Load([]byte("[gun.reduced-pressure]\nname = \""+name+"\"\n"), "shop.toml")
		require.NoError(t, err)
		assert.Equal(t, called, get(t, c.Guns, "reduced-pressure").Called())
	}
}
