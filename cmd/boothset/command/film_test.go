package command

import (
	"boothset/presets/answer"
	"boothset/presets/question"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// layJSON is what an answer of film or mix has in common, as a reader of its JSON sees it.
type layJSON struct {
	Schema  string
	Stopped bool
	Input   struct {
		Coat               string
		Gun                *string
		Pressure, Distance both
	}
	Solids struct {
		Value         float64
		Basis, Source string
	}
	Film struct {
		Dry   both
		Basis string
	}
	Limits *struct{ Low, High, Most both }
	Total  struct {
		Dry        both
		WithBefore both `json:"with_before"`
		Standing   string
	}
	About    bool
	Reasons  []struct{ About, ID, Text, Basis, Source string }
	Cautions []struct{ Level, ID, Text string }
}

type filmJSON struct {
	layJSON
	Coats struct{ All, Laid, Left int }
	Each  struct{ Wet, Dry both }
	Pass  *struct {
		Fluid     float64 `json:"fluid_ml_min"`
		FluidFrom string  `json:"fluid_from"`
		Transfer  struct{ Value, Low, High float64 }
		Fan, Step both
		Overlap   float64
		Speed     both
		SpeedLow  both `json:"speed_low"`
		SpeedHigh both `json:"speed_high"`
		Passes    *int
	}
	AtSpeed *struct{ Wet, Dry both } `json:"at_speed"`
	Combs   []struct {
		Wetted  both
		DryLow  both `json:"dry_low"`
		DryHigh both `json:"dry_high"`
	}
}

// answered runs a question that must end with code, and reads its JSON strictly.
func answered(t testing.TB, code int, to any, args ...string) {
	t.Helper()
	r := boothset("", append(args, "--json")...)
	require.Equal(t, code, r.code, r.err)
	require.Empty(t, r.err)
	require.NoError(t, json.Unmarshal([]byte(r.out), to))
}

func filmArgs(more ...string) []string {
	return append([]string{"film", "--coat", "clear", "--gun", "reduced-pressure"}, more...)
}

// By hand: 180 mL/min of which 65 % lands, a 10 in fan overlapped by 65 %, 2.44 mil wet:
// 1.95e-6 m3/s over 88.9 mm and 62.1 um is 0.3532 m/s.
func TestFilmAsJSON(t *testing.T) {
	var a filmJSON
	answered(t, ExitAnswered, &a, filmArgs("--cup-volume", "90mL", "--cup-time", "30s", "--height", "3ft")...)
	assert.Equal(t, "boothset.film/1", a.Schema)
	assert.Equal(t, 2, a.Coats.All)
	assert.InDelta(t, 1.1, a.Each.Dry["mil"], 1e-9)
	assert.InDelta(t, 62.09, a.Each.Wet["um"], 0.01)
	require.NotNil(t, a.Pass)
	assert.InDelta(t, 180, a.Pass.Fluid, 1e-9)
	assert.Equal(t, "timed", a.Pass.FluidFrom)
	assert.InDelta(t, 0.3532, a.Pass.Speed["m_s"], 1e-4)
	assert.InDelta(t, 0.3532/0.3048, a.Pass.Speed["ft_s"], 1e-3)
	assert.Less(t, a.Pass.SpeedLow["m_s"], a.Pass.Speed["m_s"])
	assert.InDelta(t, 3.5, a.Pass.Step["in"], 1e-9)
	require.NotNil(t, a.Pass.Passes)
	assert.Equal(t, 9, *a.Pass.Passes)
	assert.Nil(t, a.AtSpeed)
	assert.Empty(t, a.Combs)
	assert.Equal(t, "inside", a.Total.Standing)
	assert.True(t, a.About, "solids are from memory")
	assert.Equal(t, "safety", a.Cautions[len(a.Cautions)-1].ID)
	for _, r := range a.Reasons {
		assert.NotEmpty(t, r.Text, r.ID)
		assert.NotEmpty(t, r.Basis, r.ID)
	}
}

func TestFilmFromTheSheetAndTheComb(t *testing.T) {
	var a filmJSON
	answered(t, ExitAnswered, &a, "film", "--coat", "clear", "--solids", "50", "--film", "2.2", "--wet", "2,2.5", "--wet", "2mil", "--before", "4mil")
	assert.Equal(t, "the product's sheet, as typed", a.Solids.Basis)
	assert.Nil(t, a.Input.Gun)
	assert.Nil(t, a.Pass)
	require.Len(t, a.Combs, 2)
	assert.InDelta(t, 1.0, a.Combs[0].DryLow["mil"], 1e-9)
	assert.InDelta(t, 1.25, a.Combs[0].DryHigh["mil"], 1e-9)
	assert.InDelta(t, 2.125, a.Total.Dry["mil"], 1e-9)
	assert.InDelta(t, 6.125, a.Total.WithBefore["mil"], 1e-9)
	assert.Equal(t, 0, a.Coats.Left)
	assert.False(t, a.About)
}

// Past the film at which clear fails the answer is there, and its exit code is 3.
func TestFilmPastItsLimitCannot(t *testing.T) {
	var a filmJSON
	answered(t, ExitCannot, &a, "film", "--coat", "clear", "--film", "3.2mil")
	assert.True(t, a.Stopped)
	assert.Equal(t, "stop", a.Cautions[0].Level)
	assert.Equal(t, "film-past-most", a.Cautions[0].ID)
	r := boothset("", "film", "--coat", "clear", "--film", "3.2mil")
	assert.Equal(t, ExitCannot, r.code)
	assert.Contains(t, r.out, "STOP 3.2 mil dry in all is past the 3.0 mil")
	assert.Equal(t, ExitAnswered, boothset("", "film", "--coat", "clear", "--film", "3.2mil", "--film-limit", "4mil").code, "the sheet allows it")
	assert.Equal(t, ExitCannot, boothset("", "film", "--coat", "clear", "--before", "11mil").code)
	assert.Equal(t, ExitAnswered, boothset("", filmArgs("--fluid-rate", "80")...).code, "a slow hand is a caution")
}

func TestFilmText(t *testing.T) {
	us := boothset("", filmArgs("--fluid-rate", "180")...)
	require.Equal(t, ExitAnswered, us.code, us.err)
	for _, s := range []string{"EACH COAT    about 2.4 mil wet", "dries to 1.1 mil", "2.2 mil dry in all; usual 2.0 mil to 2.5 mil", "GUN SPEED    about 1.2 ft/s", "3 ft in 3 s", "3.5 in apart", "[estimate: from memory, not verified]"} {
		assert.Contains(t, us.out, s)
	}
	metric := boothset("", filmArgs("--fluid-rate", "180", "--units", "metric", "--solids", "50", "--transfer", "60", "--gun-speed", "0.5")...)
	for _, s := range []string{"EACH COAT    56 um wet", "GUN SPEED    0.36 m/s", "1 m in", "AT 0.5 m/s"} {
		assert.Contains(t, metric.out, s)
	}
	figures, _, _ := strings.Cut(metric.out, "Why")
	assert.NotContains(t, figures, " mil")
	for _, row := range strings.Split(us.out+metric.out, "\n") {
		assert.LessOrEqual(t, ansi.StringWidth(row), answer.Width, row)
	}
}

func TestFilmBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "coat: choose epoxy-primer"},
		{[]string{"--coat", "clear", "--solids", "lots"}, `solids "lots"`},
		{[]string{"--coat", "clear", "--gun-speed", "1ft/s"}, "fluid-rate: needed beside gun-speed"},
		{[]string{"--coat", "clear", "--colour", "red"}, "see boothset film --help"},
		{[]string{"--coat", "clear", "--units", "cubits"}, "choose us or metric"},
	} {
		r := boothset("", append([]string{"film"}, c.args...)...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Empty(t, r.out)
		assert.Contains(t, r.err, c.says)
	}
	help := boothset("", "film", "--help")
	assert.Equal(t, ExitAnswered, help.code)
	for _, f := range question.Film.Fields {
		assert.Contains(t, help.out, "--"+f.Name+" ")
	}
}

// A batch has a list for repeated fields, an answer a line, and goes on after a bad one.
func TestFilmBatch(t *testing.T) {
	r := boothset(`{"coat":"clear","gun":"reduced-pressure","fluid_rate":180,"wet":["2","2"]}
{"coat":"clear","film":"5mil"}
{"coat":"clear","wett":"2"}
{"coat":"clear","film":"50","units":"metric"}
`, "film", "--batch")
	assert.Equal(t, ExitBadInput, r.code)
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 4)
	var a filmJSON
	require.NoError(t, json.Unmarshal([]byte(lines[0]), &a))
	assert.Len(t, a.Combs, 2)
	assert.False(t, a.Stopped)
	require.NoError(t, json.Unmarshal([]byte(lines[1]), &a))
	assert.True(t, a.Stopped)
	assert.Contains(t, lines[2], `"schema":"boothset.error/1"`)
	assert.Contains(t, lines[2], "no such field; a request may hold coat, hardener, gun, film, ")
	require.NoError(t, json.Unmarshal([]byte(lines[3]), &a))
	assert.InDelta(t, 50, a.Film.Dry["um"], 1e-9)
	assert.False(t, math.IsNaN(a.Each.Wet["um"]))
	assert.Equal(t, ExitCannot, boothset(`{"coat":"clear","film":"5mil"}`, "film", "--batch").code)
}
