package presets_test

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func dayOf(t testing.TB, c *presets.Catalogue, sys unit.System, pairs ...string) (calc.DayRequest, calc.DayAnswer) {
	t.Helper()
	r, faults := c.Day(sheetOf(pairs...), sys)
	require.Empty(t, faults)
	a, err := calc.SolveDay(&r)
	require.NoError(t, err)
	return r, a
}

func TestDayTakesTheAirForPanelAndPaint(t *testing.T) {
	c := shippedCatalogue(t)
	r, _ := dayOf(t, c, unit.US, "coat", "clear", "temp", "75", "humidity", "45")
	assert.InDelta(t, 75, r.Air.F(), 1e-9)
	assert.Equal(t, r.Air, r.Panel)
	assert.Equal(t, r.Air, r.Paint)
	assert.Equal(t, 1, r.Panels)
	assert.True(t, r.Isocyanate)
	assert.Equal(t, "butyl-acetate", r.Solvent.ID)
	r, _ = dayOf(t, c, unit.Metric, "coat", "waterborne-base", "temp", "24", "humidity", "45", "panel", "19", "paint", "68F", "altitude", "1500", "panels", "4")
	assert.True(t, r.Waterborne)
	assert.InDelta(t, 19, r.Panel.C(), 1e-9)
	assert.InDelta(t, 20, r.Paint.C(), 1e-9)
	assert.InDelta(t, 1500, float64(r.Altitude), 1e-9)
	assert.Equal(t, 4, r.Panels)
}

func TestPotLifeAndClockAsTyped(t *testing.T) {
	c := shippedCatalogue(t)
	for text, want := range map[string]time.Duration{"4h": 4 * time.Hour, "90min": 90 * time.Minute, "4": 4 * time.Hour, "1,5 h": 90 * time.Minute} {
		r, _ := dayOf(t, c, unit.US, "coat", "clear", "temp", "70F", "humidity", "45", "pot-life", text)
		assert.Equal(t, want, r.PotLife, text)
		assert.False(t, r.HasStarted)
	}
	for text, want := range map[string]time.Duration{
		"14:30": 14*time.Hour + 30*time.Minute, "2:30pm": 14*time.Hour + 30*time.Minute, "2:30 p.m.": 14*time.Hour + 30*time.Minute,
		"2 PM": 14 * time.Hour, "12am": 0, "12:05pm": 12*time.Hour + 5*time.Minute, "0:00": 0, "23:59": 23*time.Hour + 59*time.Minute, "9:05": 9*time.Hour + 5*time.Minute,
		"1430": 14*time.Hour + 30*time.Minute, "930": 9*time.Hour + 30*time.Minute, "0930": 9*time.Hour + 30*time.Minute, "000": 0, "2359": 23*time.Hour + 59*time.Minute,
		"14.30": 14*time.Hour + 30*time.Minute, "9,30": 9*time.Hour + 30*time.Minute, "230pm": 14*time.Hour + 30*time.Minute, "1205 a.m": 5 * time.Minute, "2.30 p.m.": 14*time.Hour + 30*time.Minute,
	} {
		r, _ := dayOf(t, c, unit.US, "coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h", "started", text)
		assert.Equal(t, calc.Clock(want), r.Started, text)
		assert.True(t, r.HasStarted)
	}
}

func TestDayFaults(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct{ field, typed, says string }{
		{"coat", "varnish", "choose epoxy-primer"},
		{"temp", "", "type a number with F or C"},
		{"temp", "200F", "outside 14 to 140 F"},
		{"humidity", "0", "outside 1 to 100%"},
		{"humidity", "wet", "percent"},
		{"panel", "cold", "F or C"},
		{"paint", "100C", "outside"},
		{"altitude", "9000m", "outside"},
		{"panels", "0", "whole number of panels, 1 to 100"},
		{"panels", "1.5", "whole number"},
		{"panels", "101", "1 to 100"},
		{"pot-life", "soon", "s, min or h"},
		{"pot-life", "0h", "60 s to 7 days"},
		{"pot-life", "-3h", "60 s to 7 days"},
		{"pot-life", "9999999h", "60 s to 7 days"},
		{"started", "24:00", "14:30 or 2:30pm"},
		{"started", "13pm", "14:30 or 2:30pm"},
		{"started", "7", "14:30 or 2:30pm"},
		{"started", "7:5", "14:30 or 2:30pm"},
		{"started", "7:60", "14:30 or 2:30pm"},
		{"started", "-1:00", "14:30 or 2:30pm"},
		{"started", "14", "14:30 or 2:30pm"},
		{"started", "14.3", "14:30 or 2:30pm"},
		{"started", "1.5", "14:30 or 2:30pm"},
		{"started", "2400", "14:30 or 2:30pm"},
		{"started", "1260", "14:30 or 2:30pm"},
		{"started", "1330pm", "14:30 or 2:30pm"},
		{"started", "12345", "14:30 or 2:30pm"},
		{"started", "1:2:30", "14:30 or 2:30pm"},
		{"started", "noon", "14:30 or 2:30pm"},
	} {
		s := sheetOf("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
		s[x.field] = presets.Typed(x.typed)
		_, faults := c.Day(s, unit.US)
		require.NotEmpty(t, faults, "%s %q", x.field, x.typed)
		assert.Equal(t, x.field, faults[0].Field, "%q", x.typed)
		assert.Equal(t, x.typed, faults[0].Given)
		assert.Contains(t, faults[0].Want, x.says)
	}
	_, faults := c.Day(sheetOf("coat", "clear", "temp", "70F", "humidity", "45", "started", "14:30"), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "pot-life", faults[0].Field)
	assert.Contains(t, faults[0].Want, "needed beside started")
}

func drawDaySheet(t *rapid.T, c *presets.Catalogue) presets.Sheet {
	d := drawer{t}
	s := presets.Sheet{
		"coat": presets.Typed(rapid.SampledFrom(ids(c.Choices(presets.FieldCoat))).Draw(t, "coat")),
		"temp": d.number("temp", "%.2fC", -10, 60), "humidity": d.number("humidity", "%.2f", 1, 100),
		"panel": d.maybe("panel", "%.2fC", -10, 60), "paint": d.maybe("paint", "%.2fC", -10, 60), "altitude": d.maybe("altitude", "%.1fm", -430, 5000),
		"panels": presets.Typed(fmt.Sprint(rapid.IntRange(1, 9).Draw(t, "panels"))), "pot-life": d.maybe("pot life", "%.2fh", .02, 168),
	}
	if s["pot-life"] != "" && rapid.Bool().Draw(t, "with a start") {
		s["started"] = presets.Typed(fmt.Sprintf("%d:%02d", rapid.IntRange(0, 23).Draw(t, "h"), rapid.IntRange(0, 59).Draw(t, "min")))
	}
	return s
}

// whole asserts that every reason, caution and advice of an answer is a sentence.
func whole(t require.TestingT, w *words.Words, seen map[string]bool, reasons []calc.Reason, cautions []calc.Caution) {
	for _, x := range reasons {
		seen[x.ID] = true
		sounds(t, w, x.ID, x.Figures)
		assert.NotEmpty(t, x.About, x.ID)
		assert.NotEmpty(t, w.Standing(x.Ground), x.ID)
	}
	require.NotEmpty(t, cautions)
	for _, x := range cautions {
		seen[x.ID] = true
		sounds(t, w, x.ID, x.Figures)
	}
	assert.Equal(t, "safety", cautions[len(cautions)-1].ID)
}

func TestEverySentenceOfADayIsWhole(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		r, faults := c.Day(drawDaySheet(t, c), unit.US)
		require.Empty(t, faults)
		a, err := calc.SolveDay(&r)
		require.NoError(t, err)
		whole(t, w, map[string]bool{}, a.Reasons, a.Cautions)
		if id := a.Remedy.Sentence(); id != "" {
			sounds(t, w, id, a.Remedy.Figures())
		}
	})
}

// The answers that bring up each sentence of a day at least once.
func TestWhatBringsUpEachSentenceOfADay(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	day := func(coat, temp, humidity string, more ...string) []string {
		return append([]string{"coat", coat, "temp", temp, "humidity", humidity}, more...)
	}
	for _, x := range []struct {
		pairs []string
		has   []string
	}{
		{day("clear", "75F", "45"), []string{"day-air", "day-dries-solvent", "day-grade-hardener", "isocyanate", "safety"}},
		{day("solvent-base", "75F", "45", "panels", "5", "pot-life", "4h"), []string{"day-grade", "day-grade-large", "pot-life"}},
		{day("clear", "75F", "45", "pot-life", "4h", "started", "14:30"), []string{"pot-life-ends"}},
		{day("waterborne-base", "15C", "85"), []string{"day-dries-water", "day-grade-water", "limit-dew", "limit-damp", "limit-cold", "limit-slow", "turn-warm-air-water", "dew-near", "damp", "cold", "slow-water"}},
		{day("waterborne-base", "18C", "70"), []string{"day-warmer"}},
		{day("waterborne-base", "20C", "100"), []string{"day-dries-not", "turn-warm-air", "dew-on-panel", "still-water"}},
		{day("waterborne-base", "33C", "95"), []string{"turn-drier"}},
		{day("clear", "40C", "12"), []string{"limit-hot", "turn-cool-air", "hot-air"}},
		{day("clear", "38C", "90"), []string{"turn-cooler-drier"}},
		{day("clear", "22C", "30", "panel", "14C"), []string{"turn-warm-panel", "cold-panel"}},
		{day("clear", "22C", "60", "panel", "18C"), []string{"panel-tight"}},
		{day("clear", "22C", "30", "panel", "45C"), []string{"turn-cool-panel", "hot-panel"}},
		{day("clear", "22C", "50", "paint", "5C"), []string{"turn-warm-paint", "cold-paint", "wet-paint"}},
		{day("clear", "22C", "30", "paint", "12C", "panel", "12C"), []string{"turn-warm-both"}},
		{day("clear", "2C", "50", "pot-life", "4h"), []string{"pot-life-outside"}},
	} {
		_, a := dayOf(t, c, unit.US, x.pairs...)
		seen := map[string]bool{a.Remedy.Sentence(): true}
		whole(t, w, seen, a.Reasons, a.Cautions)
		for _, id := range x.has {
			assert.True(t, seen[id], "%s for %v, which brings %v", id, x.pairs, seen)
		}
	}
}

// FuzzDay types anything at all into a field of the day: it is refused by name, or
// answered in finite figures.
func FuzzDay(f *testing.F) {
	for _, s := range []string{"", "75", "24C", "1e9", "-1", "nan", "999999999", "100", "0,5", "14:30", "12am", "255:00", ":", "4h", "168h", "\x00", "½", "clear", "100%", "1430", "14.3", "14.30", "230p.m."} {
		for i := range len(presets.DayFields()) {
			f.Add(i, s, i%2 == 0)
		}
	}
	fuzzSheet(f, presets.DayFields(), sheetOf("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h", "started", "14:30"),
		func(c *presets.Catalogue, s presets.Sheet, sys unit.System) (any, error) {
			r, faults := c.Day(s, sys)
			if len(faults) > 0 {
				return nil, faults[0]
			}
			a, err := calc.SolveDay(&r)
			return a, c.Refused(err, unit.US, s.Field)
		})
}

// fuzzSheet types anything into one field of a sheet that answers otherwise.
func fuzzSheet(f *testing.F, fields []presets.Field, base presets.Sheet, ask func(*presets.Catalogue, presets.Sheet, unit.System) (any, error)) {
	c, err := presets.Load(nil, "")
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, n int, text string, metric bool) {
		field := fields[(n%len(fields)+len(fields))%len(fields)].Name
		s := presets.Sheet{}
		for name, v := range base {
			s[name] = v
		}
		s[field] = presets.Typed(text)
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		a, err := ask(c, s, sys)
		var fault *presets.FieldError
		switch {
		case err == nil:
			if bad := unsound(reflect.ValueOf(a), "answer"); bad != "" {
				t.Fatalf("%s %q: %s", field, text, bad)
			}
		case !errors.As(err, &fault) || fault.Field == "" || fault.Want == "":
			t.Fatalf("%s %q: %v", field, text, err)
		}
	})
}
