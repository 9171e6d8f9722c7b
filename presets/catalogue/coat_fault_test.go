package catalogue_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
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
		{"[coat.clear.overlap]\nhigh = \"95%\"\n", "overlap: it may be 90% at the most"},
		{"[coat.clear.overlap]\nusual = [1]\n", "takes a percentage in quotes"},
		{"[coat.clear.overlap]\nusual = \"40%\"\n", "give low, usual and high of overlap, in that order"},
		{"[coat.clear.flash]\nusual = \"ten\"\n", "type a number"},
		{"[coat.metallic-base.then.drop]\ncoats = 0\n", "stage drop: give coats"},
		{"[coat.metallic-base.then.mist]\ntimes = 9.0\n", "stage mist: times must be 0.5 to 3"},
		{"[coat.metallic-base.then.drop.working]\nno-such = { start = \"20psi\", low = \"18psi\", high = \"22psi\" }\n", "no-such"},
		{"[coat.metallic-base.then.drop.cap]\nlow = \"9psi\"\n", "give low, usual and high of cap"},
		{"[coat.clear.fan]\nusual = \"3m\"\n", "fan: give usual, 0.394 to 23.6 in"},
		{"[coat.clear.mix]\nsolids = \"0\"\n", "give solids, 1 to 100%"},
		{"[coat.clear.mix]\nratio = \"4\"\n", "4:1:1"},
		{"[gun.reduced-pressure.transfer]\npart = \"99%\"\n", "outside 10 to 90 %"},
		{"[gun.reduced-pressure.transfer]\nchoked = \"5%\"\n", "give choked, 30 to 100%"},
		{"[gun.reduced-pressure.cup]\nloss = \"2L\"\n", "give size, 2.03 to 169 fl oz"},
		{"[gun.reduced-pressure.cup]\nsize = [1]\n", "takes a volume in quotes"},
		{"[coat.clear]\nfilm = 3\n", "takes a table"},
	} {
		assert.Contains(t, refused(t, c.toml).Why, c.says, c.toml)
	}
}

func TestShopFaultsOfCupAndThinner(t *testing.T) {
	for name, x := range map[string]struct {
		toml string
		line int
		says string
	}{
		"which cup":       {"[coat.clear.cup]\ncup = \"4mm\"\n", 1, "iso4 or din4"},
		"no such cup":     {"[coat.clear.cup]\ncup = \"mug\"\n", 1, "give one of iso3"},
		"out of order":    {"[coat.clear.cup]\nlow = \"60s\"\n", 1, "in that order"},
		"past sense":      {"[coat.clear.cup]\nlow = \"2s\"\n", 1, "use the"},
		"bare seconds":    {"[coat.clear.cup]\nlow = 16\n", 2, "time \"16\""},
		"list of seconds": {"[coat.clear.cup]\nlow = [16]\n", 2, "a time in quotes"},
		"too hot":         {"[coat.clear.cup]\ntemperature = \"90C\"\n", 1, "14 to 140 F"},
		"no temperature":  {"[coat.clear.cup]\ntemperature = [20]\n", 2, "a temperature in quotes"},
		"too much":        {"[coat.clear.thinner]\nmost = \"120%\"\n", 1, "0 to 100%"},
		"unknown key":     {"[coat.clear.thinner]\nleast = \"1%\"\n", 2, "keys here are basis, source or most"},
		"unknown basis":   {"[coat.clear.thinner]\nbasis = \"hunch\"\n", 1, "basis \"hunch\""},
	} {
		f := refused(t, x.toml)
		assert.Equal(t, x.line, f.Line, name)
		assert.Contains(t, f.Why, x.says, name)
	}
}

func TestFaultsOfUsualAnswers(t *testing.T) {
	for toml, says := range map[string]string{
		"[usual.film]\nvalues = [\"1 mil\"]\nbasis = \"estimate\"": "usual answers are of cup, cup-size, ratio or tip",
		"[usual.tip]\nvalues = []":                                 "give values",
		"[usual.tip]\nvalues = [\"1.3\"]":                          "type a number with in",
		"[usual.tip]\nvalues = [\"0 mm\"]":                         "must be above 0",
		"[usual.tip]\nvalues = [\" 1.3 mm\"]":                      "plain text",
		"[usual.ratio]\nvalues = [\"4:\\n1\"]":                     "plain text",
		"[usual.ratio]\nvalues = [\"4\"]":                          "give parts as",
		"[usual.cup]\nvalues = [\"4\"]":                            "give one of iso3",
		"[usual.cup]\nmetric = [\"Ford 4\"]":                       "give one of iso3",
		"[usual.cup-size]\nmetric = [\"6 L\"]":                     "60 mL to 5 L",
		"[usual.cup-size]\nvalues = [\"600\"]":                     "type a number with L",
		"[usual.cup-size]\nvalues = [\"600\", \"\"]":               "type a number with L",
	} {
		f := refused(t, toml)
		assert.Contains(t, f.Why, says, toml)
		assert.Equal(t, 1, f.Line)
	}
}
