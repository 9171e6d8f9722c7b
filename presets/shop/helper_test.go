package shop_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// The booths and guns of Quarry Lane Refinish, which is invented.
const (
	boothTwo = `# Booth two of Quarry Lane Refinish (invented)
format = "boothset.booth/1"
name = "Booth two"
altitude = "900ft"
line = ["regulator=1/2in", "filter=point-of-use", "coupling=large-bore", "hose=35ft,3/8in", "coupling=large-bore"]
supply = "95psi"
gauge = "handle"
gauge-span = "160psi"
gauge-class = "2.5%"
gauge-checked = 2031-02-10
filter-changed = 2031-01-20
compressor = "18cfm"
receiver = "80gal"
draught = "0.4m/s"
notes = "The far corner is warmer."
`
	gunFour = `format = "boothset.gun/1"
name = "number four"
class = "reduced-pressure"
inlet = "30psi"
flow = "9.5cfm"
valve = { turns = 1.5, counts-from = "shut" }
tip = "1.3mm"
cap-fitted = "R4"
serviced = 2031-02-01
`
)

// aDay is a day after all dates of the invented shop.
var aDay = time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC)

// put puts files into a folder, by name and contents in turn.
func put(t testing.TB, dir string, files ...string) {
	t.Helper()
	for i := 0; i < len(files); i += 2 {
		name := filepath.Join(dir, filepath.FromSlash(files[i]))
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(files[i+1]), 0o644))
	}
}

// folder is a shop's folder with files in it.
func folder(t testing.TB, files ...string) *shop.Folder {
	t.Helper()
	dir := t.TempDir()
	put(t, dir, files...)
	return at(t, dir)
}

func at(t testing.TB, dir string) *shop.Folder {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	t.Cleanup(func() { f.Close() })
	return f
}

// ids is the sentences of faults.
func ids(faults []*shop.Fault) (all []string) {
	for _, f := range faults {
		all = append(all, f.ID)
	}
	return all
}

// machine is a machine with a state folder of its own.
func machine(t testing.TB) *shop.Machine {
	t.Helper()
	return machineAt(t, t.TempDir())
}

func machineAt(t testing.TB, state string) *shop.Machine {
	t.Helper()
	m, err := shop.MachineOf(func(name string) string {
		if name == "XDG_STATE_HOME" {
			return state
		}
		return ""
	})
	require.NoError(t, err)
	return m
}

// clear is a clear on a mild day with the gun of an id.
func clearOn(r *question.Reader, gun string) question.Answers {
	return r.ReadAll(question.Plan, questiontest.MildDay("clear", gun), unit.US).With(question.Supply)
}

// planned is a job's request and its answer.
func planned(t testing.TB, r *question.Reader, a question.Answers) (*calc.Request, *calc.Setup) {
	t.Helper()
	q, faults := r.Plan(a, unit.US)
	require.Empty(t, faults)
	s, err := calc.Solve(q)
	require.NoError(t, err)
	return q, s
}

// catalogueOf is the catalogue with a shop's file over it.
func catalogueOf(t testing.TB, own string) *catalogue.Catalogue {
	t.Helper()
	c, err := catalogue.Load([]byte(own), "shop.toml")
	require.NoError(t, err)
	return c
}
