package command

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// boothAnswers is an answer of a booth to each field that it may answer.
var boothAnswers = map[string]string{
	"altitude": `"900ft"`, "supply": `"95psi"`, "regulator": `"1/2in"`, "regulator-at": `"wall"`, "filter": `"point-of-use"`, "hose": `["25ft,3/8in"]`,
	"coupling": `"slim"`, "line": `["regulator=1/2in", "hose=25ft,3/8in"]`, "hose-temp": `"80F"`, "gauge": `"handle"`, "gauge-span": `"160psi"`, "gauge-class": `"2.5%"`,
	"mark": `"1psi"`, "compressor": `"18cfm"`, "receiver": `"80gal"`, "cut-in": `"100psi"`, "cut-out": `"130psi"`, "main": `"100ft,3/4in"`, "other": `["6cfm,mask"]`,
	"spray-time": `"3min"`, "receiver-temp": `"90F"`, "line-temp": `"60F"`, "voc-limit": `"3.5lb/gal"`,
}

// fullShop is the folder of the invented shop, with what else a document can tell of.
func fullShop(t testing.TB) (dir string, env func(string) string) {
	t.Helper()
	dir = filepath.Join(t.TempDir(), "shop")
	require.Equal(t, ExitAnswered, boothset("", "demo", dir).code)
	state := t.TempDir()
	env = func(name string) string {
		return map[string]string{shop.Environment: dir, "XDG_STATE_HOME": state}[name]
	}
	put := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.FromSlash(name)), []byte(text), 0o600))
	}
	for n, f := range question.ShopFields() {
		text := boothAnswers[f.Name]
		require.NotEmpty(t, text, f.Name)
		put(fmt.Sprintf("booths/of-%d.toml", n), fmt.Sprintf("format = \"boothset.booth/1\"\n%s = %s\nretired = true\n", f.Name, text))
	}
	put("booths/torn.toml", "format")
	two, err := os.ReadFile(filepath.Join(dir, "booths", "two.toml"))
	require.NoError(t, err)
	put("booths/two.toml", string(two)+"lamp = 1\n")
	m, err := shop.MachineOf(env)
	require.NoError(t, err)
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	asked := map[string][]string{}
	for _, row := range question.Plan.Fields {
		asked[row.Name] = []string{"invented"}
	}
	_, err = f.Keep(m, shop.Record{Booth: "two", At: time.Now(), Asked: asked, Painter: "nobody"}, unit.US)
	require.NoError(t, err)
	return dir, env
}

// shopDocuments is documents of the shop's commands, by their schema, which between them hold
// every value that there can be.
func shopDocuments(t *testing.T) map[string]string {
	t.Helper()
	dir, env := fullShop(t)
	all := map[string]string{}
	run := func(schema, input string, args ...string) {
		t.Helper()
		r := boothsetIn(env, input, append(args, "--json")...)
		require.NotContains(t, []int{ExitBadInput, ExitFailed}, r.code, "%v: %s", args, r.err)
		require.Contains(t, r.out, `"schema":"boothset.`+schema+`/1"`)
		all[schema] += r.out
	}
	job := []string{"--booth", "two", "--coat", "clear", "--gun", "clear-2"}
	day := append(slices.Clone(job), "--temp", "72F", "--humidity", "45")
	var set, read []string
	for _, value := range []string{"supply=90psi", "wall=49psi", "gun=25psi", "flow=9cfm", "distance=6in", "opening=70%", "tip=1.3mm"} {
		set, read = append(set, "--set", value), append(read, "--read", value)
	}

	run("painter", "", "shop", "painter", "MK")
	north := filepath.Join(t.TempDir(), "north.toml")
	require.NoError(t, os.WriteFile(north, []byte("format = \"boothset.booth/1\"\nsupply = \"90psi\"\nlamp = 1\n"), 0o600))
	run("add", "", "shop", "add", north)
	for range 2 { // the second in place of the first
		run("agree", "", slices.Concat([]string{"agree", "--why", "flat", "--knobs", "fan full", "--by", "MK"}, day, set)...)
	}
	run("agree", "", append([]string{"agree", "--temp", "110F", "--humidity", "96"}, job...)...)
	run("card", "", append([]string{"card"}, day...)...)
	run("record", "", slices.Concat([]string{"log", "record", "--note", "invented", "--by", "MK"}, day, set, read)...)
	run("record", "", "log", "outcome", "--booth", "two", "--outcome", "peel", "--then", "polish")
	run("compare", "", append([]string{"compare", "--booth", "one"}, day...)...)
	starved := []string{"--booth", "two", "--coat", "clear", "--gun", "clear-1", "--temp", "72F", "--humidity", "45"}
	learnt := boothsetIn(env, "", slices.Concat([]string{"learn", "--keep"}, starved, []string{
		"--reading", "still wall=50psi gun=50psi", "--reading", "wall=50psi gun=14psi", "--reading", "wall=50psi gun=24psi without=coupling-2", "--reading", "wall=50psi gun=14psi cap=8psi",
	})...)
	require.Equal(t, ExitAnswered, learnt.code, learnt.err)
	require.Contains(t, learnt.out, "ODD: Gun coupling")
	run("plan", "", append([]string{"plan"}, starved...)...)
	run("card", "", append([]string{"card"}, starved...)...)
	run("compare", "", append([]string{"compare", "--booth", "one"}, starved...)...)
	two := filepath.Join(dir, "booths", "two.toml")
	text, err := os.ReadFile(two)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(two, []byte(strings.Replace(string(text), "50ft", "35ft", 1)), 0o600))
	run("compare", "", append([]string{"compare"}, day...)...)
	run("settings", "", "settings", "--all")
	run("log", "", "log")
	run("shop", "", "shop")
	run("check", "", "shop", "check")
	run("drift", "", "drift")
	run("sheet", "", "sheet", "--booth", "two", "--gun", "clear-2")
	run("demo", "", "demo", filepath.Join(t.TempDir(), "demo"))

	bare := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(bare, "booths"), 0o700))
	for _, id := range []string{"one", "two"} {
		require.NoError(t, os.WriteFile(filepath.Join(bare, "booths", id+".toml"), []byte("format = \"boothset.booth/1\"\n"), 0o600))
	}
	requests := strings.ReplaceAll(strings.ReplaceAll(requestsTo(t, question.Plan), `"spread":true,`, ""), `,"spread":true`, "")
	run("card", requests, "card", "--batch")
	run("compare", requests, "compare", "--batch", "--shop", bare)
	return all
}

// What a command of the shop is to answer with is picked as of a question's answer.
func TestAFewFiguresOfTheShop(t *testing.T) {
	dir, env := quarryLane(t)
	agreedOn(t, dir, 41)
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"shop", "--fields", "booths.id,guns.name"}, `{"booths":[{"id":"three"},{"id":"two"}],"guns":[{"name":"number four"}]}`},
		{[]string{"shop", "painter", "--fields", "painters"}, `{"painters":[]}`},
		{[]string{"settings", "--fields", "settings.set.wall.psi"}, `{"settings":[{"set":{"wall":{"psi":41}}}]}`},
		{[]string{"log", "--fields", "jobs"}, `{"jobs":[]}`},
		{[]string{"drift", "--fields", "apart,schema"}, `{"schema":"boothset.drift/1","apart":null}`},
		{[]string{"sheet", "--booth", "two", "--coat", "clear", "--fields", "guns.rows.cells.agreed"}, `{"guns":[{"rows":[{"cells":[{"agreed":false},{"agreed":true},{"agreed":false},{"agreed":false}]}]}]}`},
	} {
		r := boothsetIn(env, "", append(c.args, "--json")...)
		assert.Equal(t, ran{c.want + "\n", "", ExitAnswered}, r, c.args)
	}
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"shop", "--json", "--fields", "boths.id"}, "nearest is booths.id"},
		{[]string{"shop", "--fields", "booths.id"}, "it goes with --json"},
		{[]string{"log", "--csv", "--json"}, "csv: it does not go with --json"},
		{[]string{"card", "--json", "--format", "pdf"}, `format "pdf": it does not go with --json`},
	} {
		r := boothsetIn(env, "", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says)
	}
}

// A card as JSON is the rows of its text.
func TestACardAsJSONIsItsText(t *testing.T) {
	dir, env := quarryLane(t)
	agreedOn(t, dir, 41)
	job := []string{"card", "--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "70F", "--humidity", "50"}
	r := boothsetIn(env, "", append(job, "--json")...)
	var c struct {
		Schema, Title, Booth, Verdict string
		Rows                          []struct {
			Role, Text, Name, More string
			Cells                  []string
		}
		Agreed []settingJSON
		Plan   planJSON
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &c), r.err)
	assert.Equal(t, "boothset.card/1", c.Schema)
	assert.Equal(t, "Booth two", c.Booth)
	require.Len(t, c.Agreed, 1)
	assert.NotEmpty(t, c.Plan.Wall.Flowing)
	words := func(s string) string { return strings.Join(strings.Fields(s), "") }
	text := words(boothsetIn(env, "", job...).out)
	for _, row := range c.Rows {
		if strings.HasPrefix(row.Text, "Printed") {
			continue // a minute may have passed
		}
		said := row.Cells // a row of a table is its cells; its text is what a screen reader says
		if len(said) == 0 {
			said = []string{row.Text, row.Name, row.More}
		}
		for _, of := range said {
			assert.True(t, strings.Contains(text, words(of)), of)
		}
	}
}
