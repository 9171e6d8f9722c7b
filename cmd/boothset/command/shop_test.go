package command

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// quarryLane is the folder of Quarry Lane Refinish, which is invented.
func quarryLane(t testing.TB, more ...string) (dir string, env func(string) string) {
	t.Helper()
	dir, state := t.TempDir(), t.TempDir()
	files := append([]string{
		"booths/two.toml", `format = "boothset.booth/1"
name = "Booth two"
line = ["regulator=1/2in", "coupling=slim", "hose=50ft,5/16in", "coupling=slim"]
supply = "95psi"
`, "booths/three.toml", "format = \"boothset.booth/1\"\naltitude = \"5000ft\"\nhose = [\"25ft,3/8in\"]\nsupply = \"100psi\"\n",
		"guns/number-four.toml", "format = \"boothset.gun/1\"\nname = \"number four\"\nclass = \"reduced-pressure\"\ninlet = \"30psi\"\nflow = \"9.5cfm\"\n",
	}, more...)
	for i := 0; i < len(files); i += 2 {
		name := filepath.Join(dir, filepath.FromSlash(files[i]))
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, []byte(files[i+1]), 0o644))
	}
	return dir, func(name string) string {
		return map[string]string{shop.Environment: dir, "XDG_STATE_HOME": state}[name]
	}
}

// boothJob is a job without a line or a supply: the booth says them.
var boothJob = []string{"plan", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "72F", "--humidity", "45"}

func TestABoothAnswersForItsLine(t *testing.T) {
	dir, env := quarryLane(t)
	planned := func(args ...string) planJSON {
		r := boothsetIn(env, "", append(append(boothJob, "--json"), args...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		return decoded(t, r.out)
	}
	two := planned("--booth", "two")
	var hoses []string
	for _, s := range two.Line {
		if s.Kind == "hose" {
			hoses = append(hoses, s.Name)
		}
	}
	assert.Len(t, hoses, 1)
	three := planned("--booth", "three")
	assert.Greater(t, two.Wall.Flowing["psi"], three.Wall.Flowing["psi"], "a long thin hose between slim couplings")
	typed := planned("--booth", "three", "--hose", "100ft,5/16in")
	assert.Greater(t, typed.Wall.Flowing["psi"], three.Wall.Flowing["psi"], "what is typed beats the booth")
	assert.Equal(t, two, planned("--booth", "two", "--shop", dir))

	four := planned("--booth", "two", "--gun", "number-four")
	assert.InDelta(t, 30, four.Gun.MaxInlet["psi"], 1e-9, "a gun by its own file")
	assert.Equal(t, four, planned("--booth", "two", "--gun", "number-f"), "by its beginning")
	day := boothsetIn(env, "", "day", "--booth", "three", "--coat", "clear", "--temp", "72F", "--humidity", "45", "--json")
	assert.Equal(t, ExitAnswered, day.code, day.err)
	assert.Contains(t, day.out, `"altitude":{"ft":5000`)
}

func TestBoothsAndGunsInABatch(t *testing.T) {
	_, env := quarryLane(t)
	lines := strings.Join([]string{
		`{"booth":"two","coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45}`,
		`{"booth":"three","coat":"clear","gun":"number-four","temp":"72F","humidity":45}`,
		`{"booth":"three","coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45,"supply":"60psi"}`,
		`{"booth":"seven","coat":"clear"}`, `{"booth":7}`, `{"booth":null,"coat":"clear","gun":"number-nine","temp":"72F","humidity":45}`,
	}, "\n")
	r := boothsetIn(env, lines, "plan", "--batch")
	out := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, out, 6)
	for i, args := range [][]string{{"--booth", "two"}, {"--booth", "three", "--gun", "number-four"}, {"--booth", "three", "--supply", "60psi"}} {
		alone := boothsetIn(env, "", append(append(boothJob, "--json"), args...)...)
		assert.Equal(t, decoded(t, alone.out).Wall, decoded(t, out[i]).Wall)
	}
	assert.Contains(t, out[3], `"field":"booth","given":"seven","want":"choose three or two"`)
	assert.Contains(t, out[4], `"field":"booth"`)
	assert.Contains(t, out[5], `"field":"gun","given":"number-nine"`)
	assert.Contains(t, out[5], "number-four", "the guns of the shop are among those to choose")
}

func TestABoothThatWillNotDo(t *testing.T) {
	_, env := quarryLane(t, "booths/torn.toml", "format = \"boothset.booth/1\"\nsupply = \"95", "booths/odd.toml", "format = \"boothset.booth/1\"\nsupply = \"95psi\"\nlamp = 1\n",
		"guns/torn.toml", "")
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"--booth", "four"}, ExitBadInput, `booth "four": choose odd, three, torn or two`},
		{[]string{"--booth", "../two"}, ExitBadInput, `"../two" can be no id`},
		{[]string{"--booth", "torn"}, ExitBadInput, "booths/torn.toml:2:"},
		{[]string{"--booth", "odd"}, ExitAnswered, `booths/odd.toml:3: key "lamp" is not known`},
		{[]string{"--booth", "two", "--gun", "torn"}, ExitBadInput, "guns/torn.toml: begin it with format"},
		{[]string{"--booth", "two", "--shop", filepath.Join(t.TempDir(), "none")}, ExitBadInput, "there is no booth in"},
		{[]string{"--booth", "two", "--hose", "25ft,3/8in"}, ExitBadInput, "give all of it with line"},
	} {
		r := boothsetIn(env, "", append(boothJob, c.args...)...)
		assert.Equal(t, c.code, r.code, c.args)
		assert.Contains(t, r.err, c.says)
	}
	r := boothset("", append(boothJob, "--booth", "two")...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "give one with --shop")
}

// Without a booth the folder is not looked at, however broken.
func TestWithoutABoothNothingIsLookedUp(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	env := func(name string) string { return map[string]string{shop.Environment: file}[name] }
	assert.Equal(t, boothset("", clearJob()...), boothsetIn(env, "", clearJob()...))
	r := boothsetIn(env, "", append(boothJob, "--booth", "two")...)
	assert.Contains(t, r.err, "is no folder")
}

func TestTheFolderIsListedAndChecked(t *testing.T) {
	dir, env := quarryLane(t)
	r := boothsetIn(env, "", "shop")
	assert.Equal(t, ExitAnswered, r.code)
	assert.Contains(t, r.out, "booth    two                  Booth two\n")
	assert.Contains(t, r.out, "gun      number-four          number four\n")
	var listed struct {
		Schema       string
		Booths, Guns []map[string]any
		Wrong        []map[string]any
	}
	require.NoError(t, json.Unmarshal([]byte(boothsetIn(env, "", "shop", "--json").out), &listed))
	assert.Equal(t, "boothset.shop/1", listed.Schema)
	assert.Len(t, listed.Booths, 2)
	assert.Equal(t, "boothset.booth/1", listed.Booths[0]["schema"])
	assert.Len(t, listed.Guns, 1)

	r = boothsetIn(env, "", "shop", "check")
	assert.Equal(t, ExitAnswered, r.code)
	assert.Equal(t, "2 booths, 1 gun, 0 settings and 0 records read; 0 to mend\n", r.out)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "booths", "x (1).toml"), nil, 0o600))
	r = boothsetIn(env, "", "shop", "check", "--lang", "es")
	assert.Equal(t, ExitCannot, r.code)
	assert.Contains(t, r.out, "booths/x (1).toml: una copia")
	assert.Contains(t, r.out, "por corregir: 1\n")
	r = boothsetIn(env, "", "shop", "check", "--json")
	var found struct {
		Mend  int `json:"to_mend"`
		Wrong []struct{ File, Level, ID, Text string }
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &found))
	assert.Equal(t, 1, found.Mend)
	assert.Equal(t, "shop-copy", found.Wrong[0].ID)
	assert.Equal(t, "mend", found.Wrong[0].Level)
	for _, args := range [][]string{{"shop", "wash"}, {"shop", "add"}, {"shop", "check", "two"}} {
		assert.Equal(t, ExitBadInput, boothsetIn(env, "", args...).code, args)
	}
	assert.Contains(t, boothsetIn(func(name string) string { return map[string]string{shop.Environment: filepath.Join(dir, "none")}[name] }, "", "shop").out, "nothing in it yet")
}

func TestAFileOfAnotherShopIsAddedByHand(t *testing.T) {
	dir, env := quarryLane(t)
	file := filepath.Join(t.TempDir(), "north.toml")
	require.NoError(t, os.WriteFile(file, []byte("format = \"boothset.booth/1\"\nsupply = \"90psi\"\n"), 0o600))
	r := boothsetIn(env, "", "shop", "add", file, "--dry-run")
	assert.Equal(t, ran{"would add booth north as booths/north.toml\n", "", ExitAnswered}, r)
	assert.NoFileExists(t, filepath.Join(dir, "booths", "north.toml"))
	r = boothsetIn(env, "", "shop", "add", file)
	assert.Equal(t, ran{"added booth north as booths/north.toml\n", "", ExitAnswered}, r)
	assert.FileExists(t, filepath.Join(dir, "booths", "north.toml"))
	r = boothsetIn(env, "", "shop", "add", file)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "is there already; nothing was changed")
}

// logged puts a job into the log of booth two, with what was said of it later.
func logged(t testing.TB, dir string, env func(string) string, note string) {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	m, err := shop.MachineOf(env)
	require.NoError(t, err)
	job, err := f.Keep(m, shop.Record{
		Booth: "two", At: time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC), Subject: shop.Subject{Coat: "clear", Stage: "full", Gun: "number-four", Band: "mild"},
		Answered: shop.Values{Wall: unit.PSIG(31), Opening: 0.8}, Set: shop.Values{Wall: unit.PSIG(32)}, Read: shop.Values{Wall: unit.PSIG(32), Gun: unit.PSIG(26)}, Note: note,
	}, unit.US)
	require.NoError(t, err)
	_, err = f.Keep(m, shop.Record{Booth: "two", Of: job.ID, At: job.At.Add(time.Hour), Outcome: []shop.Outcome{shop.Dry, shop.Dirt}, Then: shop.Polish}, unit.US)
	require.NoError(t, err)
}

func TestTheLogIsListed(t *testing.T) {
	dir, env := quarryLane(t)
	assert.Equal(t, "Nothing is in the log yet.\n", boothsetIn(env, "", "log").out)
	logged(t, dir, env, `=HYPERLINK("x") `+"\u202e")
	r := boothsetIn(env, "", "log", "--booth", "two")
	assert.Equal(t, ExitAnswered, r.code, r.err)
	assert.Contains(t, r.out, `  two  clear  full  number-four  said 31.0 psi  set 32.0 psi  read 32.0 psi  dry spray, dirt, polish  =HYPERLINK("x") \u202e`)
	for _, lang := range words.Languages() {
		assert.NotContains(t, boothsetIn(env, "", "log", "--lang", lang).out, "outcome-")
	}

	r = boothsetIn(env, "", "log", "--csv")
	rows, err := csv.NewReader(strings.NewReader(r.out)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 2)
	at := func(head string) string {
		for i, h := range rows[0] {
			if h == head {
				return rows[1][i]
			}
		}
		require.Fail(t, "no column", "%s in %v", head, rows[0])
		return ""
	}
	assert.Equal(t, "2031-03-04T09:30:00Z", at("at"))
	assert.Equal(t, "31", at("said_wall_psi"))
	assert.Equal(t, "0.8", at("said_opening"))
	assert.Equal(t, "26", at("read_gun_psi"))
	assert.Equal(t, "dry dirt", at("outcome"))
	assert.Equal(t, `'=HYPERLINK("x") \u202e`, at("note"), "as text")
	assert.Contains(t, boothsetIn(env, "", "log", "--csv", "--units", "metric").out, "said_wall_bar")

	var listed struct {
		Jobs []struct {
			Booth   string
			Said    map[string]any
			Outcome []string
		}
		Wrong []any
	}
	require.NoError(t, json.Unmarshal([]byte(boothsetIn(env, "", "log", "--json").out), &listed))
	require.Len(t, listed.Jobs, 1)
	assert.Equal(t, []string{"dry", "dirt"}, listed.Jobs[0].Outcome)
	assert.InDelta(t, 31, listed.Jobs[0].Said["wall"].(map[string]any)["psi"], 1e-6)
}

// What a spreadsheet would work out is quoted as text.
func TestCellsAreText(t *testing.T) {
	for given, want := range map[string]string{
		"": "", "good": "good", "=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "\tx": "'\tx", "a=b": "a=b", "'x": "'x",
	} {
		assert.Equal(t, want, cell(given))
	}
}
