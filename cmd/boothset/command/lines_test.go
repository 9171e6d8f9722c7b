package command

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// realLines is testdata/lines.toml.
type realLines struct {
	Shop string
	Job  map[string]string
	Line []realLine
}

// realLine is a line of a real kind with what it must show.
type realLine struct {
	Name, Shows string
	Flags       map[string]string
	Parts       []string
	Between     map[string][2]float64
	Says        map[string]string
	Reasons     []string
	Cautions    []string
	Without     []string
}

func readLines(t testing.TB) (all realLines) {
	data, err := os.ReadFile(filepath.Join("testdata", "lines.toml"))
	require.NoError(t, err)
	d := toml.NewDecoder(strings.NewReader(string(data)))
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&all))
	return all
}

// args are the line's job as a person types it.
func (l *realLine) args(job map[string]string) []string {
	flags := map[string]string{}
	for name, text := range job {
		flags[name] = text
	}
	for name, text := range l.Flags {
		flags[name] = text
	}
	args := append([]string{"plan"}, lineOf(l.Parts...)...)
	for name, text := range flags {
		args = append(args, "--"+name+"="+text)
	}
	return args
}

// answerJSON is an answer by the paths of its values, "wall.flowing.psi", "against.0.id".
type answerJSON map[string]any

func flatten(into answerJSON, path string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			flatten(into, strings.TrimPrefix(path+"."+k, "."), x)
		}
	case []any:
		for i, x := range v {
			flatten(into, path+"."+strconv.Itoa(i), x)
		}
	default:
		into[path] = v
	}
}

// linePaths are where the figures of a line are that go by a name of their own.
var linePaths = map[string]string{
	"gun": "gun.working.psi", "wall": "wall.flowing.psi", "open": "wall.open.psi", "static": "wall.static.psi", "foot": "foot.flowing.psi",
	"cfm": "gun.flow.cfm", "best": "short.best.psi", "needed": "short.supply_needed.psi", "dew-sprayed": "supply.water.dew_point_sprayed.c",
	"demand": "supply.demand.cfm", "delivered": "supply.delivered.cfm",
}

// figure is a figure of a line in an answer: one with a name of its own, all couplings' loss, or
// the loss of a part by its name or its place.
func (a answerJSON) figure(t testing.TB, name string) float64 {
	t.Helper()
	if path, ok := linePaths[name]; ok {
		v, ok := a[path].(float64)
		require.True(t, ok, "%s is %v", path, a[path])
		return v
	}
	if name == "opening" {
		return 100 * a["valve.opening"].(float64)
	}
	sum, found := 0.0, false
	for i := 0; ; i++ {
		at := "line." + strconv.Itoa(i)
		part, ok := a[at+".name"]
		if !ok {
			break
		}
		if part == name || name == "part "+strconv.Itoa(i) || name == "couplings" && a[at+".kind"] == "coupling" {
			sum, found = sum+a[at+".loss.psi"].(float64), true
		}
	}
	require.True(t, found || name == "couplings", "no %s", name)
	return sum
}

// ids are the ids of a list in an answer.
func (a answerJSON) ids(list string) (ids []string) {
	for i := 0; ; i++ {
		id, ok := a[list+"."+strconv.Itoa(i)+".id"].(string)
		if !ok {
			return ids
		}
		ids = append(ids, id)
	}
}

// Twenty lines of real kinds, run through the command line's own reading: each shows what a
// person expects of it, and comes to the figures that a fluids library and scipy come to.
func TestLinesOfRealKinds(t *testing.T) {
	all := readLines(t)
	require.GreaterOrEqual(t, len(all.Line), 20)
	apart := workedApart(t)
	env := shopEnv(t, all.Shop)
	for i := range all.Line {
		l := &all.Line[i]
		t.Run(l.Name, func(t *testing.T) {
			require.NotEmpty(t, l.Shows)
			r := boothsetIn(env, "", append(l.args(all.Job), "--json")...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
			var raw any
			require.NoError(t, json.Unmarshal([]byte(r.out), &raw))
			a := answerJSON{}
			flatten(a, "", raw)

			for name, between := range l.Between {
				got := a.figure(t, name)
				assert.True(t, got >= between[0]-1e-6 && got <= between[1]+1e-6, "%s: %s is %.4g, not %g to %g", l.Shows, name, got, between[0], between[1])
			}
			for path, text := range l.Says {
				assert.Equal(t, text, a[path], "%s: %s", l.Shows, path)
			}
			said := append(a.ids("reasons"), a.ids("cautions")...)
			assert.Subset(t, append(said, a.ids("against")...), append(l.Reasons, l.Cautions...), l.Shows)
			for _, id := range l.Without {
				assert.NotContains(t, append(said, a.ids("against")...), id, l.Shows)
			}
			require.NotEmpty(t, apart[l.Name], "make crosscheck")
			for name, want := range apart[l.Name] {
				assert.InDelta(t, want, a.figure(t, name), 1e-5*want+2e-5, name)
			}
		})
	}
}

// workedApart is calc/testdata/lines.csv: of each line its figures by their names.
func workedApart(t testing.TB) map[string]map[string]float64 {
	f, err := os.Open(filepath.Join("..", "..", "..", "calc", "testdata", "lines.csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	all := map[string]map[string]float64{}
	for _, row := range rows[1:] {
		v, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		if all[row[0]] == nil {
			all[row[0]] = map[string]float64{}
		}
		all[row[0]][row[1]] = v
	}
	return all
}

// The card of each line tells what is set, in either language, or why nothing is.
func TestCardsOfRealLines(t *testing.T) {
	all := readLines(t)
	env := shopEnv(t, all.Shop)
	for i := range all.Line {
		l := &all.Line[i]
		for _, lang := range []string{"en", "es"} {
			r := boothsetIn(env, "", append(l.args(all.Job), "--lang", lang)...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
			assert.NotContains(t, r.out, "NaN", l.Name)
			assert.NotContains(t, r.out, "{", l.Name)
			for row := range strings.SplitSeq(r.out, "\n") {
				assert.LessOrEqual(t, len([]rune(row)), 80, "%s: %s", l.Name, row)
			}
		}
	}
}
