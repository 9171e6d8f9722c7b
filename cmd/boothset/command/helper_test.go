package command

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc"

	"github.com/stretchr/testify/require"
)

// noEnv is an environment with nothing in it, so that no shop's file is found.
func noEnv(string) string { return "" }

// ran is what a run left.
type ran struct {
	out, err string
	code     int
}

// boothset runs a sub-command on an input, without a shop's file; the assistant gets
// what it says where it has no terminal.
func boothset(input string, args ...string) ran {
	return boothsetIn(noEnv, input, args...)
}

func boothsetIn(getenv func(string) string, input string, args ...string) ran {
	var out, err bytes.Buffer
	code := runOn(Stdio{strings.NewReader(input), &out, &err}, getenv, args...)
	return ran{out.String(), err.String(), code}
}

func runOn(std Stdio, getenv func(string) string, args ...string) int {
	p := &Program{
		Std: std, Getenv: getenv, Version: func() string { return "v1.2.3" },
		Assistant: func(a *Assistant) int { return a.NoScreen("no-screen-input") },
		Serve:     func(s *Serve) int { return s.Refuse("keys-absent", calc.PathFigure("file", s.Keys)) },
	}
	return Run(p, args)
}

// job is the arguments of a plan for a mild day on 90 psi, with more behind.
func job(coat, gun string, more ...string) []string {
	return append([]string{"plan", "--coat", coat, "--gun", gun, "--temp", "72F", "--humidity", "45", "--supply", "90psi"}, more...)
}

// clearJob is the job whose values the trade knows best.
func clearJob(more ...string) []string { return job("clear", "reduced-pressure", more...) }

// both is a quantity in both systems of units.
type both map[string]float64

// step is a part of the line in an answer.
type step struct {
	Name, Kind    string
	In, Out, Loss both
	Share, Mach   float64
}

// planJSON is an answer as a reader of its JSON sees it.
type planJSON struct {
	Schema string
	judgedJSON
	First *string
	Input map[string]any
	Wall  struct{ Flowing, Static, Open, Limit both }
	Foot  *struct{ Flowing, Static, Open, Limit both }
	Gun   struct {
		Working, Reads, Cap, Flow both
		MaxInlet                  both    `json:"max_inlet"`
		CapLimit                  both    `json:"cap_limit"`
		JetMach                   float64 `json:"jet_mach"`
	}
	Distance struct{ Target, Low, High both }
	Valve    struct {
		Opening, Area, Turns, Floor, Mach float64
		OfTurns                           float64 `json:"of_turns"`
		FromShut                          float64 `json:"from_shut"`
		Reserve                           both
		Choked                            bool
	}
	Line       []step
	Bottleneck string
	Short      *struct {
		Best         both
		SupplyNeeded both `json:"supply_needed"`
	}
	Now *struct {
		Wall          both
		GunIfOpen     both    `json:"gun_if_open"`
		OpeningNeeded float64 `json:"opening_needed"`
		AreaNeeded    float64 `json:"area_needed"`
		Enough        bool
		Choked        bool
		Mach          float64
	}
	Weather struct {
		DewPoint    both `json:"dew_point"`
		PanelMargin both `json:"panel_margin"`
		Correction  both
	}
	Reasons  []struct{ About, ID, Text, Basis, Source string }
	Cautions []struct{ Level, ID, Text string }
}

// judgedJSON is a verdict as a reader of its JSON sees it.
type judgedJSON struct {
	Verdict string
	Stopped bool
	Turn    *string
	Against []struct{ ID, Level, Turn, Text, Basis, Source string }
}

// against is the ids of what speaks against spraying at a level.
func (a judgedJSON) against(level string) (ids []string) {
	for _, c := range a.Against {
		if c.Level == level {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// planned is the answer of a plan that must end with code.
func planned(t testing.TB, code int, args []string) planJSON {
	t.Helper()
	r := boothset("", append(args, "--json")...)
	require.Equal(t, code, r.code, r.err)
	require.Empty(t, r.err)
	return decoded(t, r.out)
}

func decoded(t testing.TB, text string) (a planJSON) {
	t.Helper()
	require.NoError(t, json.Unmarshal([]byte(text), &a))
	require.Equal(t, schema("plan"), a.Schema)
	return a
}

// part is the part of an answer's line with a name.
func (a planJSON) part(t testing.TB, name string) step {
	t.Helper()
	for _, s := range a.Line {
		if s.Name == name {
			return s
		}
	}
	require.Failf(t, "no such part", "%q in %v", name, a.names())
	return step{}
}

func (a planJSON) names() (names []string) {
	for _, s := range a.Line {
		names = append(names, s.Name)
	}
	return names
}

// cautioned is the ids of an answer's cautions of a level.
func (a planJSON) cautioned(level string) (ids []string) {
	for _, c := range a.Cautions {
		if c.Level == level {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// shopEnv is the environment of an invented shop with a file of its own.
func shopEnv(t testing.TB, toml string) func(string) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "boothset"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "boothset", "shop.toml"), []byte(toml), 0o644))
	return func(name string) string {
		if name == "XDG_CONFIG_HOME" {
			return dir
		}
		return ""
	}
}

// closed is an output that is gone.
type closed struct{}

var errClosed = errors.New("the other end is closed")

func (closed) Write([]byte) (int, error) { return 0, errClosed }

var _ io.Writer = closed{}
