package question_test

import (
	"testing"

	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lineRefused is the fault of a shop's file whose usual line will not do.
func lineRefused(t testing.TB, toml string) *catalogue.FileError {
	t.Helper()
	c, err := catalogue.Load([]byte(toml), "shop.toml")
	require.NoError(t, err, "the line is the reader's to check")
	_, err = question.New(c)
	var f *catalogue.FileError
	require.ErrorAs(t, err, &f, toml)
	assert.Equal(t, "shop.toml", f.File)
	assert.NotContains(t, f.Why, "question.", "no name of a type of this program")
	return f
}

// Each fault of a shop's usual line names its key's place and says what would do there.
func TestFaultsOfAShopsUsualLine(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		name, toml   string
		line, column int
		says         []string
	}{
		{"unknown key", "[line]\nhoses = []\n", 2, 1, []string{`"line.hoses"`, "keys here are units, altitude, supply, regulator, regulator-at, filter, hose, coupling, parts, hose-temp, gauge, gauge-span, gauge-class, mark, compressor"}},
		{"unknown key by its whole name", "# ours\n  line.hoses = []\n", 2, 8, []string{`"line.hoses"`}},
		{"text for a list of hoses", "[line]\nhose = \"25ft,3/8in\"\n", 2, 1, []string{`"line.hose" takes a list of texts, such as ["25ft,3/8in"]`}},
		{"numbers for hoses", "[line]\nhose = [25]\n", 2, 1, []string{`"line.hose" takes a list of texts`}},
		{"list for a coupling", "[line]\n  coupling = [\"slim\"]\n", 2, 3, []string{`"line.coupling" takes text in quotes`}},
		{"number for a supply", "[line]\nsupply = 90\n", 2, 1, []string{`"line.supply" takes text in quotes`}},
		{"number for units", "[line]\n\nunits = 3\n", 3, 1, []string{`key "line.units" takes text in quotes`}},
		{"usual coupling unknown", "[line]\ncoupling = \"huge\"\n", 2, 1, []string{`line: coupling "huge": ` + questiontest.Choose(r, question.Coupling, question.None)}},
		{"usual hose", "[line]\nhose = [\"25ft\"]\n", 2, 1, []string{`hose "25ft"`, "25ft,3/8in"}},
		{"usual hose too long", "[line]\nhose = [\"900ft,3/8in\"]\n", 2, 1, []string{"900 ft", "outside 0.5 to 500 ft"}},
		{"usual supply in the shop's units", "[line]\nsupply = \"90\"\nunits = \"metric\"\n", 2, 1, []string{"90 bar", "0.0689 to 20.7 bar"}},
		{"usual altitude", "[line]\naltitude = \"high\"\n", 2, 1, []string{`altitude "high"`}},
		{"usual mark", "[line]\nmark = \"50psi\"\n", 2, 1, []string{"mark", "0.01 to 20 psi"}},
		{"usual place of the regulator", "[line]\nregulator-at = \"roof\"\n", 2, 1, []string{"choose wall or gun"}},
		{"usual gauge", "[line]\ngauge = \"hose\"\n", 2, 1, []string{"choose handle, foot or none"}},
		{"usual units", "[line]\nunits = \"imperial\"\n", 2, 1, []string{`line: units "imperial": choose us or metric`}},
		{"a compressor without its receiver", "[coat.clear]\nrank = 1\n[line]\n# the small one\ncompressor = \"18cfm\"\n", 3, 1, []string{"receiver: give the air tank's volume beside the compressor"}},
		{"in one table of a row", "line = { gauge = \"hose\" }\n", 1, 10, []string{"choose handle, foot or none"}},
		{"a key of another table before it", "[filter.clogged]\nratio = 0.2\n[line]\n\t\"gauge\" = \"hose\"\n", 4, 2, []string{"choose handle, foot or none"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := lineRefused(t, c.toml)
			assert.Equal(t, [2]int{c.line, c.column}, [2]int{f.Line, f.Column}, f.Error())
			for _, says := range c.says {
				assert.Contains(t, f.Why, says)
			}
		})
	}
}

// A bare number in the shop's line would mean one thing to a reader of psi and another
// to one of bar: each is refused by name, at its key.
func TestUsualLineNeedsUnits(t *testing.T) {
	const compressor = "compressor = \"20cfm\"\nreceiver = \"60gal\"\n"
	for field, x := range map[string]struct {
		line string
		at   int
	}{
		"supply": {`supply = "90"`, 3}, "altitude": {`altitude = "500"`, 3}, "mark": {`mark = "2"`, 3}, "hose": {`hose = ["25,3/8in"]`, 3},
		"compressor": {"compressor = \"20\"\nreceiver = \"60gal\"", 3}, "receiver": {"compressor = \"20cfm\"\nreceiver = \"60\"", 4},
		"cut-in": {compressor + `cut-in = "90"`, 5}, "cut-out": {compressor + "cut-in = \"6bar\"\ncut-out = \"120\"", 6},
		"main": {compressor + `main = "100,3/4in"`, 5}, "other": {compressor + `other = ["10"]`, 5},
		"receiver-temp": {compressor + `receiver-temp = "30"`, 5}, "line-temp": {compressor + `line-temp = "15"`, 5},
	} {
		f := lineRefused(t, "\n[line]\n"+x.line+"\n")
		assert.Equal(t, x.at, f.Line, field)
		assert.Contains(t, f.Error(), field, field)
		assert.Contains(t, f.Error(), "give its unit", field)
	}
	questiontest.Shop(t, "[line]\nsupply = \"90psi\"\naltitude = \"500m\"\nmark = \"2psi\"\n"+compressor+"main = \"100ft,3/4in\"\nother = [\"10cfm,50%\"]\n")
}

// What reads as the same in either system needs no unit: a fraction of an inch, sea level,
// a share, minutes.
func TestUsualLineThatIsTheSameInEitherSystem(t *testing.T) {
	r := questiontest.Shop(t, "[line]\nhose = [\"25ft,3/8\"]\naltitude = \"0\"\ncompressor = \"20cfm\"\nreceiver = \"60gal\"\nother = [\"10cfm,50\"]\nspray-time = \"4\"\n")
	assert.Equal(t, "25ft, 3/8", r.UsualFor(question.Hose))
	assert.Equal(t, "0", r.UsualFor(question.Altitude))
	assert.Equal(t, "10cfm, 50%", r.UsualFor(question.Other))
	assert.Equal(t, "4 min", r.UsualFor(question.SprayTime))
}

// A shop that has no hose on its line says so by an empty list, and is not asked for one;
// an empty text is none.
func TestAnEmptyUsualAnswer(t *testing.T) {
	r := questiontest.Shop(t, "[line]\nhose = []\nsupply = \"\"\nunits = \"\"\n")
	assert.Nil(t, r.Check(question.Hose, nil, r.System()))
	assert.NotNil(t, r.Check(question.Supply, nil, r.System()))
	q := plan(t, r, questiontest.MildDay("clear", "reduced-pressure"), r.System())
	assert.Len(t, q.Line, 3, "the regulator, a coupling at the wall and one at the gun")
	assert.Contains(t, lineRefused(t, "[line]\ngauge = \"\"\n").Why, "choose handle, foot or none", "a line has one, or none of them")
}

// Whatever the shop's line may answer can stand in it.
func TestTheShopsLineTakesEveryFieldItMayAnswer(t *testing.T) {
	given := map[string]string{
		"altitude": "500m", "supply": "6.5bar", "regulator": "3/8in", "regulator-at": "gun", "filter": "point-of-use", "hose": "8m,10mm", "coupling": "slim", "gauge": "foot", "hose-temp": "45C",
		"line": "hose=8m,10mm",
		"mark": "2psi", "gauge-span": "100psi", "gauge-class": "1.6%", "compressor": "18cfm", "receiver": "60gal", "cut-in": "95psi", "cut-out": "125psi", "main": "30m,20mm", "other": "10cfm,50%",
		"spray-time": "4min", "receiver-temp": "30C", "line-temp": "18C",
	}
	for _, row := range question.Plan.Fields {
		text, known := given[row.Name]
		require.Equal(t, row.OfShop(), known, row.Name)
		if !known {
			lineRefused(t, "[line]\n"+row.Name+" = \"1\"\n")
			continue
		}
		value := `"` + text + `"`
		if row.Repeats {
			value = "[" + value + "]"
		}
		toml := "[line]\n" + row.ShopKey() + " = " + value + "\n"
		if row.Field == question.Compressor {
			toml += "receiver = \"60gal\"\n"
		}
		r := questiontest.Shop(t, toml)
		assert.Equal(t, text, r.Usual().Text(row.Field), row.Name)
		assert.Nil(t, r.Check(row.Field, nil, r.System()), "%s: nothing need be answered", row.Name)
	}
	// Besides the plan's the shop's limit of VOC, which thin and mix ask for.
	for _, q := range question.Questions() {
		for _, row := range q.Fields {
			assert.True(t, !row.OfShop() || question.Plan.Has(row.Field) || row.Field == question.VOCLimit, "%s of %s", row.Name, q.Name)
		}
	}
	r := questiontest.Shop(t, "[line]\nvoc-limit = \"3.5lb/gal\"\n")
	assert.Equal(t, "3.5lb/gal", r.Usual().Text(question.VOCLimit))
	for _, limit := range []string{"3.5", "3000g/L", "much"} {
		lineRefused(t, "[line]\nvoc-limit = \""+limit+"\"\n")
	}
}
