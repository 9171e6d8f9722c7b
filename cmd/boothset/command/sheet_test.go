package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// agreedOn puts a setting of booth two for a clear in any weather into the folder.
func agreedOn(t testing.TB, dir string, wall float64) {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	r, err := question.Open(noEnv, words.English())
	require.NoError(t, err)
	g, _ := f.Gun(r, "number-four")
	r, err = shop.WithGuns(r, g)
	require.NoError(t, err)
	b, faults := f.Booth(r, "two")
	require.Empty(t, faults)
	s := shop.Setting{
		Booth: "two", Subject: shop.Subject{Coat: "clear", Stage: shop.Any, Gun: "number-four", Band: "mild"}, Agreed: time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC),
		Values: shop.Values{Wall: unit.PSIG(wall)},
	}
	q, err := shop.Request(r, b, s.Subject)
	require.NoError(t, err)
	setup, err := calc.Solve(q)
	require.NoError(t, err)
	s.Worked = shop.WorkedOf(q, setup)
	_, err = f.Agree(s, unit.US)
	require.NoError(t, err)
}

// row is the line of a sheet that begins with a name.
func row(t testing.TB, sheet, name string) []string {
	t.Helper()
	for _, l := range strings.Split(sheet, "\n") {
		if strings.HasPrefix(l, name) {
			return strings.Fields(strings.TrimPrefix(l, name))
		}
	}
	require.Fail(t, "no such row", "%s in\n%s", name, sheet)
	return nil
}

// The sheet says what a plan of the same job says, and what was agreed in its place, marked.
func TestTheSheetOfABooth(t *testing.T) {
	dir, env := quarryLane(t)
	called := words.English().Say("name-coat-clear")
	sheet := func() string {
		r := boothsetIn(env, "", "sheet", "--booth", "two")
		require.Equal(t, ExitAnswered, r.code, r.err)
		return r.out
	}
	plan := boothsetIn(env, "", "plan", "--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "21C", "--humidity", "50", "--json")
	a := decoded(t, plan.out)
	mild := unit.Pressure.Number(unit.US, float64(unit.PSIG(a.Wall.Flowing["psi"])), unit.Usual)
	worked := row(t, sheet(), called)
	require.Len(t, worked, 4)
	assert.True(t, strings.HasPrefix(worked[1], mild+"/"), "%v and %s", worked, mild)
	assert.NotContains(t, sheet(), "* agreed")

	agreedOn(t, dir, 41)
	agreed := row(t, sheet(), called)
	assert.Equal(t, strings.Replace(worked[1], mild, "41", 1)+"*", agreed[1], "the wall as agreed, the rest as worked out")
	assert.Equal(t, worked[0], agreed[0], "for mild days alone")
	assert.Contains(t, sheet(), "\n* agreed\n")

	two, err := os.ReadFile(filepath.Join(dir, "booths", "two.toml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "booths", "two.toml"), []byte(strings.Replace(string(two), "50ft", "35ft", 1)), 0o600))
	void := row(t, sheet(), called)
	assert.True(t, strings.HasSuffix(void[1], "!"), void)
	assert.NotContains(t, void[1], "41")
	assert.Contains(t, sheet(), "\n! agreed, and void")

	var found struct {
		Schema, Booth string
		Guns          []struct {
			Gun  string
			Rows []struct {
				Coat, Stage string
				Cells       []struct {
					Band, WallID string
					Wall         both
					WallLow      both `json:"wall_low"`
					WallHigh     both `json:"wall_high"`
					Agreed, Void bool
				}
			}
		}
	}
	r := boothsetIn(env, "", "sheet", "--booth", "two", "--json", "--coat", "clear", "--coat", "metal")
	require.NoError(t, json.Unmarshal([]byte(r.out), &found), r.err)
	assert.Equal(t, "boothset.sheet/1", found.Schema)
	require.Len(t, found.Guns, 1)
	assert.Len(t, found.Guns[0].Rows, 4, "a clear, and three stages of a metallic base")
	cell := found.Guns[0].Rows[0].Cells[1]
	assert.True(t, cell.Void)
	assert.Less(t, cell.WallLow["psi"], cell.Wall["psi"])
	assert.Greater(t, cell.WallHigh["psi"], cell.Wall["psi"])
}

func TestSheetsFitAPage(t *testing.T) {
	_, env := quarryLane(t)
	for _, lang := range words.Languages() {
		for _, units := range []string{"us", "metric"} {
			r := boothsetIn(env, "", "sheet", "--booth", "two", "--lang", lang, "--units", units)
			require.Equal(t, ExitAnswered, r.code, r.err)
			for _, l := range strings.Split(r.out, "\n") {
				assert.LessOrEqual(t, displaywidth.String(l), 80, l)
			}
			assert.NotContains(t, r.out, "{")
		}
	}
}

func TestASheetThatCannotBe(t *testing.T) {
	_, env := quarryLane(t, "booths/open.toml", "format = \"boothset.booth/1\"\nhose = [\"25ft,3/8in\"]\n")
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "booth open: supply: "},
		{[]string{"--booth", "nine"}, `booth "nine": choose open, three or two`},
		{[]string{"--booth", "open"}, "supply: "},
		{[]string{"--booth", "two", "--gun", "airless"}, `gun "airless": choose`},
		{[]string{"--booth", "two", "--coat", "varnish"}, `coat "varnish": choose`},
	} {
		r := boothsetIn(env, "", append([]string{"sheet"}, c.args...)...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says)
	}
}
