package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// comparedJSON is a comparison as a reader of its JSON sees it.
type comparedJSON struct {
	Schema      string
	Comparisons []struct {
		Base   *struct{ Booth, Shop string }
		Booths []struct {
			Booth, Shop string
			Stopped     bool
			Apart       []struct {
				Of string
				By both
			}
			Change *struct {
				ID, To, Part, Text string
				Wall               both
			}
			Plan planJSON
		}
	}
	Agreed *struct {
		Band        string
		Wall, Today both
		Apart       []struct {
			Of string
			By both
		}
		Changes []struct{ Was, Is string }
	}
}

// mildJob is the job that is compared.
var mildJob = []string{"--coat", "clear", "--gun", "number-four", "--temp", "72F", "--humidity", "45"}

func compared(t testing.TB, env func(string) string, code int, args ...string) (c comparedJSON) {
	t.Helper()
	r := boothsetIn(env, "", append(append([]string{"compare", "--json"}, mildJob...), args...)...)
	require.Equal(t, code, r.code, r.err)
	require.NoError(t, json.Unmarshal([]byte(r.out), &c))
	require.Equal(t, "boothset.compare/1", c.Schema)
	return c
}

// Each booth says what a plan of it says; what makes the walls differ adds up; and the one
// change, made in the booth's file, gives the wall that it says.
func TestBoothsSideBySide(t *testing.T) {
	dir, env := quarryLane(t)
	found := compared(t, env, ExitAnswered, "--booth", "two", "--booth", "three")
	require.Len(t, found.Comparisons, 1)
	assert.Nil(t, found.Agreed, "of a booth alone")
	c := found.Comparisons[0]
	require.Len(t, c.Booths, 2)
	assert.Equal(t, "three", c.Base.Booth)
	two, three := c.Booths[0], c.Booths[1]
	for _, b := range c.Booths {
		plan := decoded(t, boothsetIn(env, "", append([]string{"plan", "--json", "--booth", b.Booth}, mildJob...)...).out)
		assert.Equal(t, plan.Wall, b.Plan.Wall)
		assert.Equal(t, plan.Line, b.Plan.Line)
	}
	sum := 0.0
	for _, a := range two.Apart {
		sum += a.By["psi"]
	}
	assert.InDelta(t, two.Plan.Wall.Flowing["psi"]-three.Plan.Wall.Flowing["psi"], sum, 1e-6)
	assert.Empty(t, three.Apart)
	assert.Nil(t, three.Change)
	assert.Equal(t, found, compared(t, env, ExitAnswered, "--booth", "two", "--booth", "three", "--shop", dir))

	require.NotNil(t, two.Change)
	assert.Equal(t, "swap-couplings", two.Change.ID)
	file := filepath.Join(dir, "booths", "two.toml")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, []byte(strings.ReplaceAll(string(text), "coupling=slim", "coupling="+two.Change.To)), 0o600))
	after := compared(t, env, ExitAnswered, "--booth", "two", "--booth", "three")
	assert.InDelta(t, two.Change.Wall["psi"], after.Comparisons[0].Booths[0].Plan.Wall.Flowing["psi"], 1e-9)

	all := compared(t, env, ExitAnswered)
	assert.Len(t, all.Comparisons[0].Booths, 2, "every booth where none is named")
	stopped := compared(t, env, ExitCannot, "--supply", "20psi")
	assert.Nil(t, stopped.Comparisons[0].Base)
}

func TestTheSameBoothsOfTwoShops(t *testing.T) {
	north, env := quarryLane(t)
	south, _ := quarryLane(t, "booths/four.toml", "format = \"boothset.booth/1\"\nsupply = \"90psi\"\n")
	file := filepath.Join(south, "booths", "two.toml")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(text), "50ft", "35ft", 1)), 0o600))
	found := compared(t, env, ExitAnswered, "--shop", north, "--shop", south)
	require.Len(t, found.Comparisons, 2, "those that are in both")
	three, two := found.Comparisons[0], found.Comparisons[1]
	assert.Empty(t, three.Booths[0].Apart)
	assert.Empty(t, three.Booths[1].Apart)
	assert.Equal(t, south, two.Base.Shop)
	assert.Equal(t, north, two.Booths[0].Shop)
	assert.Equal(t, "hose", two.Booths[0].Apart[0].Of)
	r := boothsetIn(env, "", append([]string{"compare", "--shop", north, "--shop", south, "--booth", "three"}, mildJob...)...)
	assert.Contains(t, r.out, "is set as")
}

// What was agreed stands beside today's answer, with what moved it: the day, the line, or the
// hand that set it otherwise.
func TestWhatWasAgreedAgainstToday(t *testing.T) {
	dir, env := quarryLane(t)
	assert.Nil(t, compared(t, env, ExitAnswered, "--booth", "two").Agreed)
	agreedOn(t, dir, 41)
	why := func(args ...string) map[string]float64 {
		a := compared(t, env, ExitAnswered, append([]string{"--booth", "two"}, args...)...).Agreed
		require.NotNil(t, a)
		assert.InDelta(t, 41, a.Wall["psi"], 1e-6)
		by, sum := map[string]float64{}, 0.0
		for _, x := range a.Apart {
			by[x.Of] = x.By["psi"]
			sum += x.By["psi"]
		}
		assert.InDelta(t, a.Today["psi"]-41, sum, 0.07*3)
		return by
	}
	mild := why()
	assert.NotContains(t, mild, "line")
	assert.NotContains(t, mild, "day")
	require.Contains(t, mild, "hand")
	hot := why("--temp", "92F", "--humidity", "30")
	assert.Negative(t, hot["day"], "in another band: the one that was agreed for a mild day")
	assert.InDelta(t, mild["hand"], hot["hand"], 1e-6)
	longer := why("--line", "regulator=1/2in", "--line", "coupling=slim", "--line", "hose=75ft,5/16in", "--line", "coupling=slim")
	assert.Positive(t, longer["line"])
	r := boothsetIn(env, "", append([]string{"compare", "--booth", "two", "--line", "regulator=1/2in", "--line", "hose=75ft,5/16in"}, mildJob...)...)
	assert.Contains(t, r.out, "Agreed: 41.0 psi (mild). Today: ")
	assert.Contains(t, r.out, "Void until it is agreed anew: coupling=slim")
}

func TestAComparisonFitsAPage(t *testing.T) {
	dir, env := quarryLane(t)
	agreedOn(t, dir, 41)
	for _, lang := range words.Languages() {
		for _, more := range [][]string{nil, {"--booth", "two"}, {"--units", "metric"}, {"--temp", "95F"}} {
			r := boothsetIn(env, "", append(append([]string{"compare", "--lang", lang}, mildJob...), more...)...)
			require.Equal(t, ExitAnswered, r.code, r.err)
			assert.NotContains(t, r.out, "{")
			for _, l := range strings.Split(r.out, "\n") {
				assert.LessOrEqual(t, displaywidth.String(l), 80, l)
			}
		}
	}
}

func TestAComparisonThatCannotBe(t *testing.T) {
	_, env := quarryLane(t)
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--booth", "nine"}, `booth "nine": choose three or two`},
		{[]string{"--booth", "two", "--coat", "varnish"}, `coat "varnish": `},
		{[]string{"--shop", filepath.Join(t.TempDir(), "none")}, "there is no booth in"},
	} {
		r := boothsetIn(env, "", append(append([]string{"compare"}, mildJob...), c.args...)...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says)
	}
}

// A booth whose supply is short has no wall to compare, though it can spray: it is neither the
// lowest nor told what makes it differ.
func TestAShortBoothIsNotCompared(t *testing.T) {
	_, env := quarryLane(t, "booths/one.toml", "format = \"boothset.booth/1\"\nline = [\"regulator=1/2in\", \"coupling=large-bore\", \"hose=25ft,1/2in\"]\nsupply = \"100psi\"\n")
	met := false
	for _, supply := range []string{"40psi", "42psi", "44psi", "46psi", "47psi", "48psi", "49psi", "50psi", "52psi", "54psi"} {
		var c comparedJSON
		r := boothsetIn(env, "", append(append([]string{"compare", "--json", "--booth", "one", "--booth", "two"}, mildJob...), "--supply", supply)...)
		require.NoError(t, json.Unmarshal([]byte(r.out), &c), r.err)
		one, two := c.Comparisons[0].Booths[0], c.Comparisons[0].Booths[1]
		if two.Stopped || two.Plan.Short == nil || one.Plan.Short != nil {
			continue
		}
		met = true
		assert.Equal(t, "one", c.Comparisons[0].Base.Booth)
		assert.Empty(t, two.Apart)
		assert.Nil(t, two.Change)
	}
	assert.True(t, met)
}
