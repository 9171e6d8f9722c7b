package catalogue_test

import (
	"errors"
	"strings"
	"testing"

	"boothset/presets/catalogue"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// refused is the fault of a shop's file that will not do.
func refused(t testing.TB, toml string) *catalogue.FileError {
	t.Helper()
	_, err := catalogue.Load([]byte(toml), "shop.toml")
	var f *catalogue.FileError
	require.True(t, errors.As(err, &f), "got %v for %s", err, toml)
	assert.Equal(t, "shop.toml", f.File)
	assert.Equal(t, f.Line > 0, f.Column > 0, "%s: a line has its column", f)
	assert.NotContains(t, f.Why, "catalogue.", "no name of a type of this program")
	return f
}

// Each fault of a shop's file names its line and says what would do there.
func TestShopFaults(t *testing.T) {
	const band = `{ start = "26psi", low = "23psi", high = "30psi" }`
	for _, c := range []struct {
		name, toml string
		line       int
		says       []string
	}{
		// Not TOML.
		{"open bracket", "[line\n", 1, []string{"the table's name is not closed", "[coat.my-clear]"}},
		{"twice the same key", "[coat.clear]\nname = \"a\"\nname = \"b\"\n", 3, []string{`"coat.clear.name" is in line 2 already`}},
		{"twice the same table", "[coat.clear]\nrank = 1\n[coat.clear]\nrank = 2\n", 3, []string{`"coat.clear" is in line 1 already`}},
		{"number too large", "\ncoat.clear.rank = 99999999999999999999\n", 2, []string{`"99999999999999999999" is too long for a number`}},
		{"binary", "\x00\x01", 1, []string{"cannot be printed", "plain text (UTF-8)"}},

		{"number of 23 digits", "[coat.clear]\n\nrank = 12345678901234567890123\n", 3, []string{`"12345678901234567890123" is too long for a number`, "18 digits"}},
		{"exponent past all", "[coupling.ordinary]\nconductance = 1e999\n", 2, []string{`"1e999" is too long for a number`}},
		{"hexadecimal pressure", "[gun.reduced-pressure]\ninlet = 0x10\n", 2, []string{`pressure "0x10"`, "psi, bar or kPa"}},
		{"list of tables", "\n[[gun]]\ninlet = \"29psi\"\n", 2, []string{"[[gun]] begins a list of tables", "one pair of brackets"}},
		{"nan below its header", "[coupling.ordinary]\nratio = 0.3\nconductance = -nan\n", 3, []string{`"-nan" is no number`, "such as 0.3"}},
		{"text without quotes", "[coat.clear]\nname = ours\n", 2, []string{"text stands in quotes"}},
		{"half a keyword", "[coat.clear]\nwaterborne = tru\n", 2, []string{"text stands in quotes"}},
		{"number with an end", "[coat.clear]\nrank = 12psi\n", 2, []string{"text stands in quotes", "rank = 3"}},
		{"no equals", "[coat.clear]\nname\n", 2, []string{"key = value"}},
		{"quotes not closed", "[coat.clear]\nname = \"ours\n", 2, []string{"quotes are not closed"}},
		{"single quotes not closed", "[coat.clear]\nname = 'ours", 2, []string{"quotes are not closed"}},
		{"escape that is none", "[coat.clear]\nname = \"our\\q\"\n", 2, []string{"backslash", "single quotes"}},
		{"escape of half a character", "[coat.clear]\nname = \"\\u12\"\n", 2, []string{"backslash"}},
		{"bytes of another encoding", "[coat.clear]\nname = \"gr\xfcn\"\n", 2, []string{"plain text (UTF-8)"}},
		{"tables in tables", "line = " + strings.Repeat("{a = ", 40) + "1" + strings.Repeat("}", 40) + "\n", 1, []string{"too deep"}},
		{"a long way down", "[a" + strings.Repeat(".a", 40) + "]\n", 1, []string{"too deep"}},
		{"a date", "[coat.clear]\nrank = 2031-03-04\n", 2, []string{`"coat.clear.rank" takes a whole number`}},

		// Unknown keys.
		{"unknown table by a dotted key", "a.b = 1\n", 1, []string{`unknown key "a"`, "tables are coat, gun, coupling, hose"}},
		{"unknown table", "\n[booth]\nx = 1\n", 2, []string{`"booth"`, "tables are coat, gun, coupling, hose"}},
		{"unknown key of a coat", "[coat.clear]\nglossy = true\n", 2, []string{`"coat.clear.glossy"`, "hardener, farther, working, cup, thinner, film, lay, mix, voc, first, tip, overlap, flash, held, fan or then"}},
		{"unknown key of a gun", "[gun.reduced-pressure]\n\nstamp = \"29psi\"\n", 3, []string{`"gun.reduced-pressure.stamp"`, "inlet, flow, cap, cap-limit, nearest, farthest, no-valve, valve, felt, transfer, hand, cup or pot"}},
		{"unknown key of a valve", "[gun.reduced-pressure.valve]\nturn = 3\n", 2, []string{"conductance, ratio, shape, turns or counts-from"}},
		{"unknown key of a band", "[coat.clear.working.reduced-pressure]\nstrt = \"27psi\"\n", 2, []string{"start, low or high"}},
		{"unknown key inside an inline table", "[coat.clear]\nrank = 1\nworking.reduced-pressure = { strt = \"27psi\" }\n", 3,
			[]string{`"coat.clear.working.reduced-pressure.strt"`, "start, low or high"}},

		// Units and types.
		{"bad unit", "[gun.reduced-pressure]\n\ninlet = \"29 furlongs\"\n", 3, []string{"29 furlongs", "psi, bar or kPa"}},
		{"no unit", "[gun.reduced-pressure]\n\ninlet = \"29\"\n", 3, []string{`pressure "29"`, "psi, bar or kPa"}},
		{"bare whole number", "[gun.reduced-pressure]\n\ninlet = 29\n", 3, []string{`pressure "29"`, "psi, bar or kPa"}},
		{"bare number", "[gun.reduced-pressure]\nrank = 1\nnearest = 5.5\n", 3, []string{`length "5.5"`, "in, ft, mm or m"}},
		{"bare flow", "[regulator.\"1/2in\"]\nrated-flow = 150\n", 2, []string{`air flow "150"`, "cfm or L/min"}},
		{"truth for a pressure", "[coat.clear]\nworking.reduced-pressure = { start = true }\n", 2, []string{"psi, bar or kPa"}},
		{"list for a pressure", "[gun.reduced-pressure]\ninlet = [29]\n", 2, []string{`"gun.reduced-pressure.inlet" takes a pressure in quotes`}},
		{"list for a length", "[coat.clear]\nfarther = [1]\n", 2, []string{`takes a length in quotes`}},
		{"list for a flow", "[gun.reduced-pressure]\nflow = [1]\n", 2, []string{`takes an air flow in quotes`}},
		{"text for a rank", "[coat.clear]\nrank = \"first\"\n", 2, []string{`"coat.clear.rank" takes a whole number`}},
		{"text for yes or no", "[coat.clear]\nwaterborne = \"yes\"\n", 2, []string{"takes true or false"}},
		{"a hardener that there is not", "[coat.clear]\nhardener = \"epoxy\"\n", 1, []string{`hardener "epoxy"`, "isocyanate, amine, acrylate or none", "leave it out"}},
		{"text for a number", "[coupling.ordinary]\nconductance = \"4\"\n", 2, []string{"takes a number"}},
		{"number for a name", "[coat.clear]\nname = 3\n", 2, []string{"takes text in quotes"}},
		{"text for a list of names", "[gun.reduced-pressure]\naliases = \"ours\"\n", 2, []string{`"gun.reduced-pressure.aliases" takes a list of texts`}},
		{"pairs for a shape", "[gun.reduced-pressure.valve]\nshape = [[0, 0], [1, 1]]\n", 2, []string{"takes a number"}},
		{"number for a valve", "[gun.reduced-pressure]\nvalve = 3\n", 2, []string{"takes a table"}},
		{"number for an entry", "[coat]\nclear = 1\n", 2, []string{"takes a table"}},
		{"number for a table", "coat = 1\n", 1, []string{"takes a table"}},
		{"number for the line", "line = 1\n", 1, []string{"takes a table"}},

		// What the values mean.
		{"coat without a working pressure", "\n[coat.new]\nname = \"new\"\n", 2, []string{`coat "new"`, "working.reduced-pressure = {"}},
		{"working pressure out of order", "[coat.clear]\n[coat.clear.working.reduced-pressure]\nlow = \"40psi\"\n", 1, []string{"working.reduced-pressure: low, start and high"}},
		{"working pressure of an unknown class", "[coat.clear]\nworking.reduced-presure = " + band + "\n", 1, []string{"no gun is of this class", "high-pressure, high-volume-low-pressure or reduced-pressure"}},
		{"unknown solvent", "[coat.clear]\ndries-like = \"treacle\"\n", 1, []string{"dries-like", "treacle"}},
		{"held closer", "[coat.clear]\nfarther = \"-1in\"\n", 1, []string{"farther must not be below 0"}},
		{"unknown basis", "[coat.clear]\nbasis = \"guess\"\n", 1, []string{`basis "guess": use published, common practice, computed, estimate or this booth's readings`}},
		{"escape codes in a name", "[coat.clear]\nname = \"\\u001b[31mclear\"\n", 1, []string{"plain text on one line"}},
		{"two lines in a source", "[coat.clear]\nsource = \"a\\nb\"\n", 1, []string{"plain text on one line"}},
		{"two lines in a table's source", "[coat.clear.film]\nsource = \"a\\nb\"\n", 1, []string{"plain text on one line"}},
		{"entry called none", "[filter.none]\nconductance = 3.0\nratio = 0.3\n", 1, []string{"none is the answer"}},
		{"gun without a class", "[coat.clear]\nrank = 1\n[gun.new]\ninlet = \"29psi\"\n", 3, []string{`gun "new"`, `class "new"`, "set class to high-pressure"}},
		{"gun's inlet below its class's cap limit", "[gun.new]\nclass = \"high-volume-low-pressure\"\ninlet = \"9psi\"\n", 1, []string{`gun "new"`, "inlet", "cap"}},
		{"pot that keeps too much", "[gun.pressure-feed.pot]\nloss = \"6L\"\n", 1, []string{"pot: give loss in 0 to"}},
		{"coat like none", "[coat.new]\nlike = \"gloss\"\n", 1, []string{`coat "new"`, `like "gloss": no such coat`, "clear"}},
		{"coat like itself", "[coat.clear]\nlike = \"clear\"\n", 1, []string{`coat "clear"`, "leads back to this coat"}},
		{"coats like each other", "[coat.a]\nlike = \"b\"\n[coat.b]\nlike = \"c\"\n[coat.c]\nlike = \"a\"\n", 1, []string{`coat "a"`, "leads back to this coat"}},
		{"like of no text", "[coat.new]\nlike = 3\n", 2, []string{"takes text in quotes"}},
		{"gun's cap above its inlet", "[gun.reduced-pressure]\ncap = \"40psi\"\n", 1, []string{"inlet", "cap"}},
		{"gun of a class no coat knows", "[gun.reduced-pressure]\nclass = \"trade\"\n", 1, []string{`class "trade"`, "set class to high-pressure, high-volume-low-pressure or reduced-pressure"}},
		{"gun without flow", "[gun.reduced-pressure]\nflow = \"0cfm\"\n", 1, []string{"give flow"}},
		{"gun held nowhere", "[gun.reduced-pressure]\nfarthest = \"3in\"\n", 1, []string{"nearest must be above 0 and farthest beyond it"}},
		{"push met past the farthest", "[gun.reduced-pressure.felt]\ndistance = \"7in\"\n", 1, []string{"felt: give the distance", "from nearest to farthest"}},
		{"push met above the stamp", "[gun.reduced-pressure.felt]\npressure = \"33psi\"\n", 1, []string{"felt: give the distance", "no more than inlet"}},
		{"own class without a push", "[coat.clear.working.new]\nstart = \"20psi\"\nlow = \"18psi\"\nhigh = \"25psi\"\n[gun.new]\nclass = \"new\"\ninlet = \"29psi\"\nflow = \"9cfm\"\ncap = \"18psi\"\nnearest = \"5in\"\nfarthest = \"7in\"\n" +
			"valve = { conductance = 3.0, ratio = 0.3, turns = 2.0, shape = 1.0 }\n", 5, []string{`gun "new"`, "stands for its own class"}},
		{"gun's cap limit below 0", "[gun.reduced-pressure]\ncap-limit = \"-5psi\"\n", 1, []string{"cap-limit must be above 0"}},
		{"valve without end", "[gun.reduced-pressure.valve]\nconductance = inf\n", 2, []string{`"inf" is no number`}},
		{"valve ratio that is no number", "[gun.reduced-pressure.valve]\nratio = nan\n", 2, []string{`"nan" is no number`}},
		{"valve that cannot turn", "[gun.reduced-pressure.valve]\nturns = 0\n", 1, []string{"give turns"}},
		{"valve shape of nothing", "[gun.reduced-pressure.valve]\nshape = 0\n", 1, []string{"valve: give shape in 0.1 to 10"}},
		{"valve shape past all", "[gun.reduced-pressure.valve]\nshape = 10.1\n", 1, []string{"valve: give shape in 0.1 to 10"}},
		{"valve shape that is no number", "[gun.reduced-pressure.valve]\nshape = nan\n", 2, []string{`"nan" is no number`}},
		{"valve counted from nowhere", "[gun.reduced-pressure.valve]\ncounts-from = \"full\"\n", 1, []string{`valve: counts-from "full": choose open or shut`}},
		{"shape within no factor", "[tolerance.valve-shape]\nwithin = \"30%\"\n", 1, []string{"within must be a factor from 1 to 10"}},
		{"shape within less than nothing", "[tolerance.valve-shape]\nwithin = \"0.5\"\n", 1, []string{"within must be a factor from 1 to 10"}},
		{"coupling that passes nothing", "[coupling.slim]\nconductance = -1\n", 1, []string{`coupling "slim"`, "give conductance"}},
		{"coupling ratio", "[coupling.slim]\nratio = 1\n", 1, []string{"ratio must lie in"}},
		{"quoted header", "[ regulator . '1/2in' ]\nrated-flow = \"0cfm\"\n", 1, []string{`regulator "1/2in"`, "give droop"}},
		{"filter", "\n\n[filter.clogged]\nconductance = 0\n", 3, []string{`filter "clogged"`}},
		{"hose end wider than the hose", "[hose.\"3/8in\"]\nend = \"12mm\"\n", 1, []string{"end no wider than bore"}},
		{"bores of something else", "[bore.gun]\nus = [\"1in\"]\nmetric = [\"25mm\"]\n", 1, []string{`bore "gun"`, "hose or main"}},
		{"no bores", "\n[bore.main]\nmetric = []\n", 2, []string{`bore "main"`, "give bores above 0"}},
		{"bore of nothing", "[bore.hose]\nmetric = [\"6mm\", \"0mm\"]\n", 1, []string{`bore "hose"`, "give bores above 0"}},
		{"bores that are not a list", "[bore.main]\nus = 3\n", 2, []string{`"bore.main.us" takes a list of lengths in quotes`}},
		{"bores without units", "[bore.main]\nus = [\"3/4\"]\n", 2, []string{`length "3/4"`, "in, ft, mm or m"}},
		{"unknown tolerance", "[tolerance.paint]\nwithin = \"3%\"\n", 1, []string{`tolerance "paint"`, "no such tolerance"}},
		{"tolerance of the wall gauge", "[tolerance.wall-gauge]\nwithin = \"3psi\"\n", 1, []string{"give gauge-span and gauge-class"}},
		{"tolerance without a unit", "[tolerance.gun-gauge]\nwithin = \"3\"\n", 1, []string{"within: type a number with psi, bar or kPa"}},
		{"tolerance below 0", "[tolerance.valve]\nwithin = \"-3%\"\n", 1, []string{"within must be 0 or more"}},
		{"tolerance past all", "[tolerance.valve]\nwithin = \"101%\"\n", 1, []string{"within must be 100% or less"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := refused(t, c.toml)
			assert.Equal(t, c.line, f.Line, f.Error())
			for _, says := range c.says {
				assert.Contains(t, f.Why, says)
			}
		})
	}
}

// With several faults it is always the same one that is named.
func TestTheFirstFaultByNameIsGiven(t *testing.T) {
	toml := []byte("[filter.b]\n[filter.a]\n[filter.c]\n")
	for range 20 {
		_, err := catalogue.Load(toml, "shop.toml")
		require.ErrorContains(t, err, `shop.toml:2:1: filter "a"`)
	}
}

func TestFileErrorSaysWhere(t *testing.T) {
	assert.Equal(t, "shop.toml:3:12: why", (&catalogue.FileError{File: "shop.toml", Line: 3, Column: 12, Why: "why"}).Error())
	assert.Equal(t, "shop.toml: why", (&catalogue.FileError{File: "shop.toml", Why: "why"}).Error())
}

// The column is that of the key, of the value that is none, or of the header of the entry
// that will not do.
func TestAFaultHasItsColumn(t *testing.T) {
	for toml, want := range map[string][2]int{
		"[coat.clear]\n  glossy = true\n":                                 {2, 3},
		"[gun.reduced-pressure]\n\n   inlet = \"29 furlongs\"\n":          {3, 12},
		"[gun.reduced-pressure]\ninlet = 29\n":                            {2, 9},
		"[coat.clear]\nworking.reduced-pressure = { start = \"27in\" }\n": {2, 38},
		"# ours\n\t[filter.clogged]\n\tconductance = 0\n":                 {2, 2},
		"[coat.clear]\nname = \"a\"\n name = \"b\"\n":                     {3, 2},
		"coat = { clear = { farther = \"-1in\" } }\n":                     {1, 18}, // an entry without a header
	} {
		f := refused(t, toml)
		assert.Equal(t, want, [2]int{f.Line, f.Column}, f.Error())
	}
}
