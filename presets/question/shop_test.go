package question_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestShopAddsEntriesOfEveryKind(t *testing.T) {
	r := questiontest.Shop(t, `
[coat.marsh-clear]
name = "clear of the invented Marsh Lane shop"
hardener = "isocyanate"
working.reduced-pressure = { start = "25psi", low = "22psi", high = "30psi" }

[gun.bench-two]
class = "reduced-pressure"
inlet = "30psi"
flow = "11cfm"
cap = "18psi"
nearest = "5in"
farthest = "7in"
valve = { conductance = 7, ratio = 0.3, turns = 2.5, shape = 0.7 }

[coupling.wide]
bore = "10mm"
ratio = 0.4

[regulator.old]
conductance = 5.0
ratio = 0.3
droop = "8psi"
rated-flow = "60cfm"

[filter.fine]
conductance = 3.0
ratio = 0.3
`)
	texts := questiontest.MildDay("marsh-clear", "bench-two")
	texts["coupling"], texts["regulator"], texts["filter"] = []string{"wide"}, []string{"old"}, []string{"fine"}
	q, _ := solved(t, r, texts)
	assert.Equal(t, calc.Ground{Basis: calc.OwnReadings, Source: "this shop's own file"}, q.Coat.Working.Ground)
	assert.Equal(t, "bench-two", q.Gun.Name, "an entry without a name goes by its key")
	assert.InDelta(t, 12.5, q.Line[2].Restriction.C.DM3PerSBar(), 1e-9, "0.125 times 10 mm squared")

	texts["gun"] = []string{"high-pressure"}
	faults := planFaults(r, texts, unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "gun", faults[0].Field)
	assert.Equal(t, "high-pressure", faults[0].Given)
	assert.Equal(t, "for this class of gun marsh-clear has no working pressure; it has one for reduced-pressure", faults[0].Want())
	assert.False(t, r.GoTogether("marsh-clear", "high-pressure"))
	assert.True(t, r.GoTogether("marsh-clear", "bench-two"))
}

func TestShopsUsualLineChangesTheAnswer(t *testing.T) {
	solve := func(r *question.Reader) *calc.Setup {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		if r.Usual().Has(question.Supply) {
			delete(texts, "supply")
		}
		_, s := solved(t, r, texts)
		return s
	}
	usual := solve(questiontest.Open(t))
	long := solve(questiontest.Shop(t, "[line]\nhose = [\"50ft,5/16in\", \"6ft,1/4in\"]\ncoupling = \"slim\"\nfilter = \"clogged\"\nsupply = \"110psi\"\naltitude = \"1500ft\"\nmark = \"2psi\"\n"))
	assert.Greater(t, long.Wall.Open, usual.Wall.Open+unit.PSIG(10))
	assert.InDelta(t, 110, long.Line[0].In.PSI(), 1e-9, "the usual supply")
	assert.Less(t, long.Weather.Ambient, usual.Weather.Ambient)
	assert.InDelta(t, 0, remainder(long.Wall.Flowing.PSI(), 2), 1e-9, "on a mark of the usual gauge")
	var hoses int
	for _, step := range long.Line {
		if strings.HasSuffix(step.Name, "hose") {
			hoses++
		}
	}
	assert.Equal(t, 2, hoses)
}

func remainder(v, step float64) float64 { return v - step*float64(int(v/step+0.5)) }

func TestMetricShopReadsBareAnswersAsMetric(t *testing.T) {
	r := questiontest.Shop(t, "[line]\nunits = \"metric\"\nhose = [\"8m,10mm\"]\nsupply = \"6bar\"\nmark = \"0.1bar\"\naltitude = \"300m\"\n")
	require.Equal(t, unit.Metric, r.System())
	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "humidity", "45", "temp", "22", "wall", "4")
	q := plan(t, r, texts, r.System())
	assert.InDelta(t, 22, q.Day.Air.C(), 1e-9)
	assert.InDelta(t, 6, q.Supply.Bar(), 1e-9)
	assert.InDelta(t, 4, q.Now.Bar(), 1e-9)
	assert.InDelta(t, 0.1, q.Mark.Bar(), 1e-9)
	assert.InDelta(t, 300, float64(q.Day.Altitude), 1e-9)
	assert.InDelta(t, 8, float64(q.Line[2].Hose.Length), 1e-9)
	assert.InDelta(t, 10, q.Line[2].Hose.Bore.MM(), 1e-9)
}

// A shop's coat for one class of gun stands first in the list; fields are still
// checked one at a time, and the usual line still reads.
func TestCoatForOneClassOnlyDoesNotDisturbOtherFields(t *testing.T) {
	r := questiontest.Shop(t, "[coat.only-old]\nworking.high-pressure = { start = \"44psi\", low = \"40psi\", high = \"48psi\" }\n")
	require.Equal(t, "only-old", r.Choices(question.Coat)[0].ID)
	check := func(typed string) *question.Fault {
		return r.Check(question.Temp, r.ReadText(question.Temp, typed, unit.US), unit.US)
	}
	assert.Nil(t, check("20C"))
	f := check("200C")
	require.NotNil(t, f, "a range is checked though coat and gun are not answered")
	assert.Contains(t, f.Want(), "outside 14 to 140 F")
}

// The file is read where it stands, and its faults are the reader's to tell.
func TestOpenNamesTheFileThatIsWrong(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "boothset", "shop.toml")
	require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
	vars := func(name string) string { return map[string]string{"XDG_CONFIG_HOME": dir}[name] }
	for toml, want := range map[string]string{
		"[line]\n\nunits = 3\n":           `:3:1: key "line.units" takes text in quotes`,
		"[coat.clear]\nname = 3\n":        `:2:8: key "coat.clear.name" takes text in quotes`,
		"[line]\ngauge = \"in the hand\"": `:2:1: line: gauge "in the hand": choose handle, foot or none`,
	} {
		require.NoError(t, os.WriteFile(file, []byte(toml), 0o644))
		_, err := question.Open(vars, words.English())
		assert.EqualError(t, err, file+want)
		var f *catalogue.FileError
		assert.ErrorAs(t, err, &f)
	}
	require.NoError(t, os.WriteFile(file, []byte("[line]\nsupply = \"110psi\"\n"), 0o644))
	r, err := question.Open(vars, words.English())
	require.NoError(t, err)
	assert.Equal(t, "110psi", r.UsualFor(question.Supply))
}
