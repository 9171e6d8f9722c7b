package command

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// agree says whether the two figures of a quantity do, by the key of the US one.
func agree(path, key string, us, metric float64) bool {
	// A cubic foot a minute is here to four digits, as printed in handbooks.
	size := map[string]float64{"psi": 0.0689475729, "in": 25.4, "ft": 0.3048, "ft_s": 0.3048, "cfm": 0.4782 * 60, "f": 1 / 1.8}[key]
	if key == "f" && !strings.HasSuffix(path, "margin") && !strings.HasSuffix(path, ".by") {
		us -= 32
	}
	return math.Abs(us*size-metric) <= 1e-4*math.Abs(metric)+1e-12
}

// usOf is the US key of each metric one; a "c" goes with an "f", as temperature or as
// a difference.
var usOf = map[string]string{"bar": "psi", "mm": "in", "m": "ft", "l_min": "cfm", "c": "f", "m_s": "ft_s"}

// mayBeNull is what an answer can be without, besides whole sections of it; any other
// null would be a number that is none.
var mayBeNull = []string{".distance.held", ".gun.reads", ".gun.cap_limit", ".input.wall", ".input.second", ".supply.hold_s", ".supply.hold_from_full_s", ".supply.series.enough_pause_s",
	".wall.low", ".wall.high", ".wall.static_low", ".wall.static_high", ".voc.thinner", ".voc.limit", ".voc.over"}

// nullHere is what a cause or a stage can be without.
var nullHere = regexp.MustCompile(`\.wall_if_known$|^\.stages\[\d+\]\.(working|wall|turns|distance|film|overlap|flash|recoat|tip)$`)

// walk goes through decoded JSON and reports what no answer may hold: a quantity in
// one system only, two figures that differ, a null where a figure should be.
func walk(path string, v any) (faults []string) {
	switch v := v.(type) {
	case map[string]any:
		for metric, us := range usOf {
			x, a := v[us].(float64)
			y, b := v[metric].(float64)
			switch {
			case !a && !b: // "in" is also what goes into a part of the line
			case !a || !b || len(v) != 2:
				faults = append(faults, path+" is in one system only")
			case !agree(path, us, x, y):
				faults = append(faults, fmt.Sprintf("%s: %v do not agree", path, v))
			}
		}
		for _, key := range sorted(v) {
			faults = append(faults, walk(path+"."+key, v[key])...)
		}
	case []any:
		for i := range v {
			faults = append(faults, walk(fmt.Sprintf("%s[%d]", path, i), v[i])...)
		}
	case nil:
		if strings.Count(path, ".") > 1 && !slices.Contains(mayBeNull, path) && !nullHere.MatchString(path) {
			faults = append(faults, path+" is null")
		}
	}
	return faults
}

func sorted(v map[string]any) []string {
	keys := make([]string, 0, len(v))
	for k := range v {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func faultsOf(t testing.TB, text string) []string {
	t.Helper()
	var v map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	return walk("", v)
}

func TestWalkSeesWhatIsWrong(t *testing.T) {
	assert.Equal(t, []string{".a is in one system only"}, faultsOf(t, `{"a":{"psi":1}}`))
	assert.Len(t, faultsOf(t, `{"a":{"psi":1,"bar":1}}`), 1)
	assert.Len(t, faultsOf(t, `{"a":{"f":50,"c":9}}`), 1)
	assert.Len(t, faultsOf(t, `{"panel_margin":{"f":50,"c":10}}`), 1)
	assert.Len(t, faultsOf(t, `{"a":[{"mach":null}]}`), 1)
	assert.Empty(t, faultsOf(t, `{"a":{"psi":1,"bar":0.0689475729},"b":{"f":50,"c":10},"panel_margin":{"f":18,"c":10},"now":null}`))
}

// jobs are plans of every kind.
var jobs = map[string][]string{
	"usual line":          clearJob(),
	"wall as it stands":   clearJob("--wall", "70psi"),
	"choked":              clearJob("--wall", "140psi"),
	"short":               clearJob("--supply", "28psi", "--wall", "20psi"),
	"far too little":      clearJob("--supply", "3psi"),
	"dew point":           clearJob("--humidity", "99"),
	"no regulator":        clearJob("--regulator", "none"),
	"regulator at gun":    clearJob("--regulator-at", "gun", "--gauge", "foot"),
	"two hoses, filter":   clearJob("--hose", "50ft,3/8in", "--hose", "6ft,1/4in", "--filter", "clogged", "--gauge", "none"),
	"no couplings":        clearJob("--coupling", "none"),
	"hvlp up a mountain":  job("waterborne-base", "high-volume-low-pressure", "--altitude", "10000ft"),
	"old gun, hot day":    job("metallic-base", "high-pressure", "--temp", "40C", "--humidity", "12"),
	"coldest and driest":  clearJob("--temp", "-10C", "--humidity", "1"),
	"hottest and wettest": clearJob("--temp", "60C", "--humidity", "100", "--panel", "60C"),
	"metric":              clearJob("--units", "metric"),
}

func TestEveryQuantityIsInBothSystemsAndTheyAgree(t *testing.T) {
	for name, args := range jobs {
		t.Run(name, func(t *testing.T) {
			r := boothset("", append(args, "--json")...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
			assert.Empty(t, faultsOf(t, r.out))
			assert.Equal(t, 1, strings.Count(r.out, "\n"), "one line")
			assert.NotContains(t, r.out, ":-0,")
			assert.NotContains(t, r.out, ":-0}")
			assert.Equal(t, r.code == ExitCannot, decoded(t, r.out).Stopped)
		})
	}
}

// The shape that schema boothset.plan/1 promises.
func TestShapeOfAnAnswer(t *testing.T) {
	var v map[string]any
	require.NoError(t, json.Unmarshal([]byte(boothset("", append(clearJob("--wall", "40psi"), "--json")...).out), &v))
	assert.Equal(t, "boothset.plan/1", v["schema"])
	for table, keys := range map[string][]string{
		"input":    {"coat", "gun", "temp", "humidity", "panel", "altitude", "supply", "line", "hose_temp", "hose", "coupling", "filter", "regulator", "regulator_at", "gauge", "mark", "wall", "units"},
		"wall":     {"flowing", "static", "open", "limit"},
		"gun":      {"working", "reads", "cap", "flow", "max_inlet", "cap_limit", "jet_mach"},
		"distance": {"target", "low", "high"},
		"valve":    {"opening", "area", "turns", "of_turns", "from_shut", "turns_low", "turns_high", "reserve", "floor", "choked", "mach"},
		"now":      {"wall", "gun_if_open", "opening_needed", "area_needed", "turns_needed", "choked"},
		"weather":  {"dew_point", "panel_margin"},
	} {
		in, ok := v[table].(map[string]any)
		require.True(t, ok, table)
		for _, key := range keys {
			assert.Contains(t, in, key, table)
		}
	}
	for list, keys := range map[string][]string{
		"line":     {"name", "kind", "in", "out", "loss", "share", "mach"},
		"reasons":  {"about", "text", "basis", "source"},
		"cautions": {"level", "text"},
	} {
		all, ok := v[list].([]any)
		require.True(t, ok, list)
		require.NotEmpty(t, all, list)
		for _, one := range all {
			for _, key := range keys {
				assert.Contains(t, one, key, list)
			}
		}
	}
	assert.Contains(t, v, "bottleneck")
	assert.Nil(t, v["foot"])
	assert.Contains(t, v, "foot")
}

func TestInputIsEchoedAsItWasUnderstood(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--temp", "24 C", "--supply", "6 bar", "--panel", "70F", "--altitude", "1500m", "--hose", "7,5m,10mm",
		"--coupling", "ordinary", "--filter", "point-of-use", "--regulator", "3/8in", "--gauge", "foot", "--wall", "3bar", "--mark", "0.1bar"))
	quantity := func(key, unit string) float64 { return a.Input[key].(map[string]any)[unit].(float64) }
	assert.Equal(t, "clear", a.Input["coat"])
	assert.Equal(t, "reduced-pressure", a.Input["gun"])
	assert.InDelta(t, 24, quantity("temp", "c"), 1e-9)
	assert.InDelta(t, 0.45, a.Input["humidity"], 1e-12)
	assert.InDelta(t, 70, quantity("panel", "f"), 1e-9)
	assert.InDelta(t, 1500, quantity("altitude", "m"), 1e-9)
	assert.InDelta(t, 6, quantity("supply", "bar"), 1e-9)
	assert.InDelta(t, 3, quantity("wall", "bar"), 1e-9)
	assert.InDelta(t, 0.1, quantity("mark", "bar"), 1e-9)
	for key, want := range map[string]string{"coupling": "ordinary", "filter": "point-of-use", "regulator": "3/8in", "regulator_at": "wall", "gauge": "foot", "units": "us"} {
		assert.Equal(t, want, a.Input[key], key)
	}
	hose := a.Input["hose"].([]any)
	require.Len(t, hose, 1)
	assert.InDelta(t, 7.5, hose[0].(map[string]any)["length"].(map[string]any)["m"], 1e-9)
	assert.InDelta(t, 10, hose[0].(map[string]any)["bore"].(map[string]any)["mm"], 1e-9)
}

func TestSharesAddToOneBetweenTheSetPressureAndTheGun(t *testing.T) {
	for name, args := range jobs {
		r := boothset("", append(args, "--json")...)
		a := decoded(t, r.out)
		if a.Line == nil {
			assert.True(t, a.Stopped && a.Short == nil, name)
			continue
		}
		var shares float64
		for _, s := range a.Line {
			if slices.Contains([]string{"regulator", "passages", "cap"}, s.Kind) {
				assert.Zero(t, s.Share, "%s: %s", name, s.Name)
			}
			shares += s.Share
		}
		assert.InDelta(t, 1, shares, 1e-9, name)
	}
}

func TestFiguresAreNotRounded(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob())
	for name, v := range map[string]float64{"open": a.Wall.Open["psi"], "opening": a.Valve.Opening, "cap": a.Gun.Cap["bar"], "flow": a.Gun.Flow["cfm"]} {
		assert.NotEqual(t, math.Round(v*1e6)/1e6, v, name)
	}
}

func TestTextIsEscapedForJSON(t *testing.T) {
	for _, s := range []string{"", "plain", `a "quoted" \ word`, "two\nlines", "é 3/8″", "\x00\x7f\xff", "</script>"} {
		var got string
		require.NoError(t, json.Unmarshal(appendText(nil, s), &got), "%q", s)
		assert.Equal(t, strings.ToValidUTF8(s, "\ufffd"), got)
	}
}

func TestAnUndefinedNumberDoesNotBreakTheLine(t *testing.T) {
	j := jsonWriter{fresh: true}
	j.object("", func() {
		j.number("a", math.NaN())
		j.number("b", math.Inf(-1))
		j.number("c", math.Copysign(0, -1))
		j.number("d", 1e300)
	})
	assert.Equal(t, `{"a":null,"b":null,"c":0,"d":1e+300}`, string(j.b))
}

// Figures come without the rounding of their units: 75 F is 75, and no number has more than
// twelve digits.
func TestFiguresComeWithoutTheRoundingOfUnits(t *testing.T) {
	out := boothset("", clearJob("--temp", "75F", "--panel", "60.1F", "--json")...).out
	assert.Contains(t, out, `"temp":{"f":75,"c":23.888888889}`)
	assert.Contains(t, out, `"panel":{"f":60.1,"c":15.611111111}`)
	assert.Contains(t, out, `"bore":{"in":0.375,"mm":9.525}`)
	for _, number := range regexp.MustCompile(`[:\[]-?[0-9][0-9.]*`).FindAllString(out, -1) {
		digits := strings.TrimLeft(strings.NewReplacer(".", "", "-", "").Replace(number[1:]), "0")
		assert.LessOrEqual(t, len(digits), 12, number)
	}
}
