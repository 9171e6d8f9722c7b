package command

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"boothset/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// learnt is the command on the catalogue's own line, with readings.
func learnt(readings ...string) []string {
	args := []string{"learn", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "75F", "--humidity", "45", "--supply", "90psi"}
	for _, r := range readings {
		args = append(args, "--reading", r)
	}
	return args
}

// A gun that is starved by the plug at its inlet: two readings know only what takes the air
// together, a third with that coupling bypassed tells it, with the hole that it is like.
func TestAStarvingCouplingIsFound(t *testing.T) {
	var got struct {
		Schema, End string
		Pieces      []struct {
			Piece string
			Odd   float64
			Bore  *struct{ MM float64 }
		}
		Untold []struct{ Why string }
		Next   []struct{ Reading, Piece string }
		Wall   struct{ Flowing, Was struct{ PSI float64 } }
	}
	starved := []string{"still wall=30psi gun=30psi", "wall=31psi gun=16psi"}
	told := boothset("", append(learnt(starved...), "--json")...)
	assert.Equal(t, ExitAnswered, told.code)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "boothset.learn/1", got.Schema)
	assert.Equal(t, "untold", got.End)
	require.NotEmpty(t, got.Untold)
	assert.Equal(t, "together", got.Untold[0].Why)
	require.NotEmpty(t, got.Next)
	assert.Greater(t, got.Wall.Flowing.PSI, got.Wall.Was.PSI+10)

	told = boothset("", append(learnt(append(starved, "without=coupling-2 wall=31psi gun=26psi")...), "--json")...)
	require.NoError(t, json.Unmarshal([]byte(told.out), &got))
	assert.Equal(t, "odd", got.End)
	for _, p := range got.Pieces {
		if p.Piece == "coupling-2" {
			assert.Greater(t, p.Odd, 0.9)
			require.NotNil(t, p.Bore)
			assert.InDelta(t, 3.5, p.Bore.MM, 1)
		}
	}
}

// Readings that cannot be right are named, and the answer says by its code that it cannot be
// used; a reading that says nothing is refused with what would do.
func TestReadingsThatWillNotDo(t *testing.T) {
	told := boothset("", learnt("still wall=38psi gun=28psi")...)
	assert.Equal(t, ExitCannot, told.code)
	assert.Contains(t, told.out, "CONTRADICTION")
	told = boothset("", learnt("wall=30psi gun=38psi")...)
	assert.Equal(t, ExitCannot, told.code)
	assert.Contains(t, strings.Join(strings.Fields(told.out), " "), "the gun's gauge shows 8.0 psi more than the wall gauge with the trigger pulled, where it can show no more")
	told = boothset("", learnt("before=30psi wall=32psi gun=25psi")...)
	assert.Contains(t, strings.Join(strings.Fields(told.out), " "), "the wall gauge shows 2.0 psi more with the trigger pulled than before")
	for reading, want := range map[string]string{
		"wall=30psi":                             "two gauges",
		"wall=30psi wall=31psi":                  "two gauges",
		"soon wall=30psi gun=20psi":              "a reading is such as",
		"wall=30psi gun=20psi hose=3":            "a reading is such as",
		"wall=3000psi gun=20psi":                 "a gauge shows 0 to",
		"wall=thirty gun=20psi":                  "a reading is such as",
		"without=pump wall=30psi gun=20psi":      "choose coupling-1, hose or coupling-2",
		"turns=9 wall=30psi gun=20psi":           "turns 2 turns in all",
		"wall=0psi gun=0psi":                     "the wall gauge must show something",
		"still turns=1 wall=30psi gun=20psi":     "two gauges",
		"still before=30psi gun=20psi wall=9psi": "two gauges",
	} {
		told = boothset("", learnt(reading)...)
		assert.Equal(t, ExitBadInput, told.code, reading)
		assert.Contains(t, told.err, want, reading)
	}
	for flag, want := range map[string]string{"--gauge": "no gauge", "--regulator": "regulator"} {
		told = boothset("", append(learnt("wall=30psi gun=20psi"), flag, "none")...)
		assert.Equal(t, ExitBadInput, told.code, flag)
		assert.Contains(t, told.err, want, flag)
	}
}

// What readings say of a gun holds in other booths that it is sprayed with in, until its parts are
// replaced, and what they say of the booth's own line does not.
func TestAGunIsKnownInOtherBooths(t *testing.T) {
	calctest.WithoutRace(t)
	_, env := quarryLane(t)
	in := func(command, booth string, more ...string) ran {
		t.Helper()
		r := boothsetIn(env, "", flags([]string{command, "--booth", booth, "--coat", "clear", "--gun", "number-four", "--temp", "21C", "--humidity", "50"}, more...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		return r
	}
	before := in("plan", "three").out
	require.NotContains(t, before, "Worked with")
	in("learn", "two", "--keep", "--reading", "still wall=50psi gun=48.5psi", "--reading", "wall=50psi gun=36psi cap=29psi", "--reading", "wall=50psi gun=38psi without=coupling-2 cap=30psi")
	after := in("plan", "three").out
	assert.Contains(t, text(after), "Worked with 3 readings of this gun in other booths; this line has none yet.")
	assert.Contains(t, text(after), "3 readings in other booths say what the number four gun takes")
	assert.Contains(t, text(in("plan", "three", "--lang", "es").out), "3 lecturas de esta pistola en otras cabinas")
	var told struct {
		Pieces []struct {
			Piece string
			Odd   float64
		}
	}
	assert.Contains(t, text(in("learn", "three").out), "3 readings of this gun in other booths count too.")
	require.NoError(t, json.Unmarshal([]byte(in("learn", "three", "--json").out), &told))
	for _, p := range told.Pieces {
		switch p.Piece {
		case "gun":
			assert.Greater(t, p.Odd, 0.8, "so little air lets it show so much")
		case "coupling-1", "coupling-2", "hose":
			assert.InDelta(t, 0.1, p.Odd, 0.03, p.Piece)
		}
	}
	in("learn", "two", "--keep", "--replaced", "gun")
	assert.Equal(t, before, in("plan", "three").out, "it has other parts now")
}

// What is kept of a booth's line is the basis of every plan on it: plan, batch, sheet, card and
// compare set the wall that learning told, within its range, until readings contradict one another or
// the line is described otherwise.
func TestKeptReadingsAreTheBasisOfPlans(t *testing.T) {
	calctest.WithoutRace(t)
	_, env := quarryLane(t)
	job := []string{"--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "21C", "--humidity", "50"}
	type planned struct {
		Wall    struct{ Flowing, Low, High both }
		Learnt  *struct{ Told string }
		Reasons []struct{ ID string }
		Input   struct {
			Hose []struct{ Length struct{ FT float64 } }
		}
	}
	plan := func(more ...string) (p planned) {
		t.Helper()
		r := boothsetIn(env, "", flags(flags([]string{"plan", "--json"}, job...), more...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		require.NoError(t, json.Unmarshal([]byte(r.out), &p))
		return p
	}
	before := plan()
	require.Nil(t, before.Learnt)
	var learnt struct {
		Wall      struct{ Flowing, Was both }
		WallRange struct{ Low, High both } `json:"wall_range"`
	}
	wall := before.Wall.Flowing["psi"]
	readings := []string{"--reading", fmt.Sprintf("still wall=%gpsi gun=%gpsi", wall, wall-1.5), "--reading", fmt.Sprintf("wall=%gpsi gun=22psi", wall)}
	r := boothsetIn(env, "", flags(flags(flags([]string{"learn", "--json", "--keep"}, job...)), readings...)...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	require.NoError(t, json.Unmarshal([]byte(r.out), &learnt))
	require.Equal(t, wall, learnt.Wall.Was["psi"])
	require.Greater(t, learnt.Wall.Flowing["psi"], wall+2)

	after := plan()
	require.NotNil(t, after.Learnt)
	assert.Equal(t, learnt.Wall.Flowing["psi"], after.Wall.Flowing["psi"])
	assert.Equal(t, learnt.WallRange.Low["psi"], after.Wall.Low["psi"])
	assert.Equal(t, learnt.WallRange.High["psi"], after.Wall.High["psi"])
	assert.Less(t, after.Wall.High["psi"]-after.Wall.Low["psi"], before.Wall.High["psi"]-before.Wall.Low["psi"])
	assert.Contains(t, fmt.Sprint(after.Reasons), "learnt-line")
	assert.Equal(t, before.Input, after.Input, "what was asked is told as it was described")

	mark := fmt.Sprintf("%g psi", learnt.Wall.Flowing["psi"])
	line := `{"booth":"two","coat":"clear","gun":"number-four","temp":"21C","humidity":50}`
	assert.Contains(t, boothsetIn(env, line+"\n"+line, "plan", "--batch", "--fields", "wall.flowing.psi").out, fmt.Sprintf(`{"psi":%g}`, learnt.Wall.Flowing["psi"]))
	assert.Contains(t, boothsetIn(env, "", flags([]string{"card"}, job...)...).out, mark)
	beside := boothsetIn(env, "", flags([]string{"compare", "--booth", "three"}, job...)...)
	assert.Contains(t, beside.out, mark, beside.err)
	cells := func() string {
		r := boothsetIn(env, "", "sheet", "--booth", "two", "--gun", "number-four", "--coat", "clear", "--json", "--fields", "guns.rows.cells.wall")
		require.Equal(t, ExitAnswered, r.code, r.err)
		return r.out
	}
	assert.Contains(t, cells(), fmt.Sprintf(`"psi":%g`, learnt.Wall.Flowing["psi"]))

	other := plan("--line", "regulator=1/2in", "--line", "coupling=slim", "--line", "hose=50ft,3/8in", "--line", "coupling=slim")
	assert.Nil(t, other.Learnt, "of another line nothing is known")

	r = boothsetIn(env, "", flags(flags(flags([]string{"learn", "--keep"}, job...)), "--reading", fmt.Sprintf("still wall=%gpsi gun=%gpsi", wall, wall-15))...)
	require.Equal(t, ExitCannot, r.code)
	against := plan()
	require.NotNil(t, against.Learnt)
	assert.Equal(t, "contradicts", against.Learnt.Told)
	assert.Equal(t, before.Wall, against.Wall, "as it is described")
	assert.Contains(t, fmt.Sprint(against.Reasons), "learnt-contradicts")
}
