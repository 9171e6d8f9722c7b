package presets_test

import (
	"fmt"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wholeShop is answers in which everything that can be moved counts.
func wholeShop() presets.Answers {
	a := mildDay("clear", "reduced-pressure")
	a.Hose = []presets.Typed{"25ft,3/8in", "6ft,5/16in"}
	a.Wall, a.Compressor, a.Receiver = "33psi", "18cfm", "60gal"
	a.Main, a.Other = "100ft,3/4in", []presets.Typed{"10cfm", "4cfm,50%"}
	return a
}

func TestWhatCanBeMovedInTheOrderOfTheJob(t *testing.T) {
	c := shippedCatalogue(t)
	list := func(a presets.Answers) (all []string) {
		for _, in := range c.Inputs(a) {
			all = append(all, fmt.Sprintf("%s %d.%d", in.Field, in.Part, in.Piece))
		}
		return all
	}
	day := []string{"coat 0.0", "gun 0.0", "temp 0.0", "humidity 0.0", "panel 0.0", "altitude 0.0", "supply 0.0", "regulator 0.0"}
	hose := []string{"hose 0.0", "hose 0.1"}
	assert.Equal(t, join(day, []string{"regulator-at 0.0", "filter 0.0"}, hose, []string{"coupling 0.0", "gauge 0.0", "wall 0.0", "mark 0.0"}),
		list(mildDay("clear", "reduced-pressure")))

	bare := mildDay("clear", "reduced-pressure")
	bare.Regulator, bare.Compressor = "none", "none"
	assert.Equal(t, join(day, []string{"filter 0.0"}, hose, []string{"coupling 0.0", "gauge 0.0"}), list(bare))

	assert.Equal(t, join(day, []string{"regulator-at 0.0", "filter 0.0"}, hose, []string{"hose 1.0", "hose 1.1"},
		[]string{"coupling 0.0", "gauge 0.0", "wall 0.0", "mark 0.0", "compressor 0.0", "receiver 0.0", "cut-in 0.0", "cut-out 0.0"},
		[]string{"main 0.0", "main 0.1", "other 0.0", "other 0.1", "other 1.0", "other 1.1"},
		[]string{"spray-time 0.0", "receiver-temp 0.0", "line-temp 0.0"}), list(wholeShop()))

	a := wholeShop()
	a.Main = "none"
	assert.NotContains(t, list(a), "main 0.0")
}

func join(lists ...[]string) (all []string) {
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}

// Each field stepped down, up and far up, in either system.
func TestStepOfEachAnswer(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		field           string
		part, piece     int
		given           string
		sys             unit.System
		down, up, farUp string
	}{
		{"temp", 0, 0, "72F", unit.US, "70 F", "74 F", "92 F"},
		{"temp", 0, 0, "73", unit.US, "72 F", "74 F", "92 F"},
		{"temp", 0, 0, "72F", unit.Metric, "22 C", "23 C", "32 C"},
		{"temp", 0, 0, "24", unit.Metric, "23 C", "25 C", "34 C"},
		{"temp", 0, 0, "59C", unit.Metric, "58 C", "60 C", "60 C"},
		{"humidity", 0, 0, "45", unit.US, "40%", "50%", "95%"},
		{"humidity", 0, 0, "43%", unit.Metric, "40%", "45%", "90%"},
		{"humidity", 0, 0, "97%", unit.US, "95%", "100%", "100%"},
		{"panel", 0, 0, "", unit.US, "70 F", "74 F", "92 F"}, // as warm as the air
		{"panel", 0, 0, "60F", unit.Metric, "15 C", "16 C", "25 C"},
		{"altitude", 0, 0, "", unit.US, "-500 ft", "500 ft", "5000 ft"},
		{"altitude", 0, 0, "1000ft", unit.Metric, "300 m", "400 m", "1300 m"},
		{"altitude", 0, 0, "0", unit.Metric, "-100 m", "100 m", "1000 m"},
		{"supply", 0, 0, "90psi", unit.US, "89 psi", "91 psi", "100 psi"},
		{"supply", 0, 0, "6,25 bar", unit.Metric, "6.2 bar", "6.3 bar", "7.2 bar"},
		{"supply", 0, 0, "300psi", unit.US, "299 psi", "", ""},
		{"hose", 0, 0, "25ft,3/8in", unit.US, "20 ft, 3/8in", "30 ft, 3/8in", "75 ft, 3/8in"},
		{"hose", 0, 0, "", unit.Metric, "7 m, 3/8in", "8 m, 3/8in", "17 m, 3/8in"},
		{"hose", 0, 1, "", unit.US, "25ft, 5/16 in", "25ft, 1/2 in", "25ft, 1/2 in"},
		{"hose", 0, 1, "25ft,3/8in", unit.Metric, "25ft, 8 mm", "25ft, 10 mm", "25ft, 13 mm"},
		{"hose", 0, 1, "8m,10mm", unit.US, "8m, 3/8 in", "8m, 1/2 in", "8m, 1/2 in"},
		{"hose", 1, 0, "25ft,3/8in + 6ft,5/16in", unit.US, "25ft,3/8in + 5 ft, 5/16in", "25ft,3/8in + 10 ft, 5/16in", "25ft,3/8in + 55 ft, 5/16in"},
		{"hose", 1, 1, "25ft,3/8in + 6ft,5/16in", unit.US, "25ft,3/8in + 6ft, 1/4 in", "25ft,3/8in + 6ft, 3/8 in", "25ft,3/8in + 6ft, 1/2 in"},
		{"wall", 0, 0, "33psi", unit.US, "32 psi", "34 psi", "43 psi"},
		{"wall", 0, 0, "33psi", unit.Metric, "2.25 bar", "2.30 bar", "2.75 bar"},
		{"wall", 0, 0, "", unit.US, "", "", ""}, // nothing counts in its place
		{"mark", 0, 0, "", unit.US, "", "2 psi", "11 psi"},
		{"mark", 0, 0, "", unit.Metric, "", "0.10 bar", "0.55 bar"},
		{"compressor", 0, 0, "18cfm", unit.US, "17 cfm", "19 cfm", "28 cfm"},
		{"compressor", 0, 0, "18cfm", unit.Metric, "500 L/min", "550 L/min", "1000 L/min"},
		{"compressor", 0, 0, "5hp", unit.US, "4 hp", "6 hp", "15 hp"},
		{"compressor", 0, 0, "7.5 HP", unit.Metric, "7 hp", "8 hp", "17 hp"},
		{"receiver", 0, 0, "60gal", unit.US, "50 gal", "70 gal", "160 gal"},
		{"receiver", 0, 0, "60gal", unit.Metric, "200 L", "250 L", "700 L"},
		{"cut-in", 0, 0, "", unit.US, "89 psi", "91 psi", "100 psi"},    // at the supply
		{"cut-out", 0, 0, "", unit.US, "119 psi", "121 psi", "130 psi"}, // 30 psi above
		{"cut-out", 0, 0, "90psi", unit.US, "", "91 psi", "100 psi"},    // not below cut-in
		{"cut-out", 0, 0, "8.05bar", unit.US, "116 psi", "117 psi", "126 psi"},
		{"main", 0, 0, "100ft,3/4in", unit.US, "95 ft, 3/4in", "105 ft, 3/4in", "150 ft, 3/4in"},
		{"main", 0, 1, "100ft,3/4in", unit.US, "100ft, 1/2 in", "100ft, 1 in", "100ft, 2 in"},
		{"main", 0, 1, "100ft,3/4in", unit.Metric, "100ft, 15 mm", "100ft, 20 mm", "100ft, 50 mm"},
		{"other", 0, 0, "10cfm", unit.US, "9 cfm", "11 cfm", "20 cfm"},
		{"other", 0, 1, "10cfm", unit.US, "10cfm, 90%", "", ""}, // all of the time
		{"other", 0, 0, "10cfm, 50%", unit.Metric, "250 L/min, 50%", "300 L/min, 50%", "750 L/min, 50%"},
		{"other", 1, 1, "10cfm + 4cfm, 55%", unit.US, "10cfm + 4cfm, 50%", "10cfm + 4cfm, 60%", "10cfm + 4cfm, 100%"},
		{"spray-time", 0, 0, "", unit.US, "2 min", "4 min", "13 min"},
		{"spray-time", 0, 0, "90 s", unit.Metric, "1 min", "2 min", "11 min"},
		{"receiver-temp", 0, 0, "", unit.Metric, "32 C", "33 C", "42 C"}, // 10 C above the air
		{"line-temp", 0, 0, "", unit.US, "70 F", "74 F", "92 F"},
		{"coat", 0, 0, "sealer", unit.US, "surfacer", "solvent-base", "clear"},
		{"coat", 0, 0, "", unit.US, "", "epoxy-primer", "clear"},
		{"gun", 0, 0, "high-pressure", unit.US, "reduced-pressure", "", ""},
		{"regulator", 0, 0, "", unit.US, "3/8in", "none", "none"},
		{"gauge", 0, 0, "foot", unit.Metric, "handle", "none", "none"},
	} {
		a := wholeShop()
		a.Wall = ""
		a.Set(x.field, x.given)
		in := presets.Input{Field: x.field, Part: x.part, Piece: x.piece}
		for by, want := range map[int]string{-1: x.down, 1: x.up, 10: x.farUp} {
			what := fmt.Sprintf("%v %q by %d", in, x.given, by)
			got, moved := c.Nudge(a, in, by, x.sys)
			assert.Equal(t, want != "", moved, what)
			if want == "" {
				want = a.Field(x.field)
			}
			assert.Equal(t, want, got.Field(x.field), what)
			got.Set(x.field, a.Field(x.field))
			assert.Equal(t, a, got, what+": nothing else changes")
		}
	}
}

// The wall goes by the marks of its gauge, where these are plain in the unit in use.
func TestTheWallGoesByItsMarks(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		mark presets.Typed
		sys  unit.System
		up   string
	}{
		{"2psi", unit.US, "34 psi"},
		{"0.5psi", unit.US, "33.5 psi"},
		{"5psi", unit.US, "35 psi"},
		{"0.1bar", unit.Metric, "2.3 bar"},
		{"0.02bar", unit.Metric, "2.28 bar"},
		{"0.1bar", unit.US, "34 psi"},
		{"2psi", unit.Metric, "2.30 bar"},
	} {
		a := wholeShop()
		a.Mark = x.mark
		got, moved := c.Nudge(a, presets.Input{Field: presets.FieldWall}, 1, x.sys)
		assert.True(t, moved, x.mark)
		assert.Equal(t, x.up, got.Field(presets.FieldWall), x.mark)
	}
}

// A list ends at its ends and passes over what does not go with the rest.
func TestAListIsWalkedOverWhatGoesWithTheRest(t *testing.T) {
	c := shop(t, `
[gun.touch-up]
rank = 5
class = "touch-up"
inlet = "20psi"
flow = "3cfm"
cap = "14psi"
nearest = "4in"
farthest = "6in"
valve = { conductance = 3.0, ratio = 0.3, turns = 2.0, shape = [[0.0, 0.0], [1.0, 1.0]] }

[coat.marsh-tint]
rank = 1
name = "tint of the invented Marsh Lane shop"
working.touch-up = { start = "16psi", low = "14psi", high = "19psi" }
`)
	walk := func(a presets.Answers, field string, by int) (all []string) {
		for {
			b, moved := c.Nudge(a, presets.Input{Field: field}, by, unit.US)
			if !moved {
				require.Equal(t, a, b)
				return all
			}
			a = b
			all = append(all, a.Field(field))
		}
	}
	others := []string{"epoxy-primer", "surfacer", "sealer", "solvent-base", "metallic-base", "waterborne-base", "single-stage", "clear"}
	assert.Equal(t, others, walk(mildDay("", "reduced-pressure"), presets.FieldCoat, 1), "the tint is not for this gun")
	assert.Equal(t, others, walk(mildDay("marsh-tint", "reduced-pressure"), presets.FieldCoat, 1))
	assert.Equal(t, append([]string{"marsh-tint"}, others...), walk(mildDay("", ""), presets.FieldCoat, 1), "no gun is chosen yet")
	assert.Empty(t, walk(mildDay("marsh-tint", "touch-up"), presets.FieldCoat, 1))
	assert.Empty(t, walk(mildDay("marsh-tint", "touch-up"), presets.FieldGun, -1))
	assert.Equal(t, []string{"touch-up", "high-volume-low-pressure", "reduced-pressure", "high-pressure"}, walk(mildDay("", ""), presets.FieldGun, 1))
	assert.Equal(t, []string{"high-volume-low-pressure", "reduced-pressure", "high-pressure"}, walk(mildDay("clear", ""), presets.FieldGun, 1))
	assert.Equal(t, []string{"reduced-pressure", "high-volume-low-pressure"}, walk(mildDay("clear", "high-pressure"), presets.FieldGun, -1))
	for _, field := range []string{presets.FieldCoupling, presets.FieldRegulator, presets.FieldFilter, presets.FieldRegulatorAt, presets.FieldGauge} {
		all := ids(c.Choices(field))
		a := mildDay("clear", "reduced-pressure")
		a.Set(field, all[0])
		assert.Equal(t, all[1:], walk(a, field, 1), field)
		a.Set(field, all[len(all)-1])
		assert.Len(t, walk(a, field, -1), len(all)-1, field)
	}
}

// A bore that a shop adds is one of those a hose is walked over, however it is written.
func TestAShopsOwnBoresAreWalkedOver(t *testing.T) {
	c := shop(t, "[hose.\"9mm\"]\nbore = \"9mm\"\nend = \"8mm\"\n[bore.main]\nus = [\"2in\", \"3/4in\"]\n")
	var all []string
	a, moved := wholeShop(), true
	for a.Hose = []presets.Typed{"25ft,1/4in"}; moved; {
		all = append(all, a.Field(presets.FieldHose))
		a, moved = c.Nudge(a, presets.Input{Field: presets.FieldHose, Piece: 1}, 1, unit.US)
	}
	assert.Equal(t, []string{"25ft,1/4in", "25ft, 5/16 in", "25ft, 0.354 in", "25ft, 3/8 in", "25ft, 1/2 in"}, all)
	a, _ = c.Nudge(a, presets.Input{Field: presets.FieldMain, Piece: 1}, 1, unit.US)
	assert.Equal(t, "100ft, 2 in", a.Field(presets.FieldMain))
}

// What is wrong or missing elsewhere keeps nothing from being moved.
func TestOtherAnswersMayBeMissingOrWrong(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		in   presets.Input
		a    presets.Answers
		want string
	}{
		{presets.Input{Field: presets.FieldTemp}, presets.Answers{Temp: "72F"}, "74 F"},
		{presets.Input{Field: presets.FieldPanel}, presets.Answers{Temp: "72F"}, "74 F"},
		{presets.Input{Field: presets.FieldTemp}, presets.Answers{Temp: "72F", Coat: "treacle", Gun: "cannon", Humidity: "x", Supply: "900psi", Mark: "y"}, "74 F"},
		{presets.Input{Field: presets.FieldReceiver}, presets.Answers{Receiver: "60gal", Compressor: "10cfm", CutIn: "soon", Main: "far"}, "70 gal"},
		{presets.Input{Field: presets.FieldCutIn}, presets.Answers{CutIn: "120psi", CutOut: "110psi", Compressor: "10cfm", Receiver: "60gal"}, "121 psi"},
		{presets.Input{Field: presets.FieldHose}, presets.Answers{Hose: []presets.Typed{"25ft,3/8in", "6ft"}}, "30 ft, 3/8in + 6ft"},
		{presets.Input{Field: presets.FieldOther, Part: 1}, presets.Answers{Compressor: "10cfm", Other: []presets.Typed{"air", "4cfm"}}, "air + 5 cfm"},
	} {
		got, moved := c.Nudge(x.a, x.in, 1, unit.US)
		assert.True(t, moved, x)
		assert.Equal(t, x.want, got.Field(x.in.Field), x)
	}
	for _, x := range []struct {
		in presets.Input
		a  presets.Answers
	}{
		{presets.Input{Field: presets.FieldTemp}, presets.Answers{}},
		{presets.Input{Field: presets.FieldTemp}, presets.Answers{Temp: "warm"}},
		{presets.Input{Field: presets.FieldSupply}, presets.Answers{Supply: "900psi"}},
		{presets.Input{Field: presets.FieldHose}, presets.Answers{Hose: []presets.Typed{"25ft"}}},
		{presets.Input{Field: presets.FieldHose, Part: 1}, presets.Answers{}},
		{presets.Input{Field: presets.FieldReceiver}, presets.Answers{Receiver: "60gal"}},
		{presets.Input{Field: "weather"}, presets.Answers{}},
	} {
		for _, by := range []int{-1, 0, 1} {
			got, moved := c.Nudge(x.a, x.in, by, unit.US)
			assert.False(t, moved, x)
			assert.Equal(t, x.a, got)
		}
	}
}

// Where the line starves the gun, the supply is not looked at; its bounds hold all the same.
func TestASupplyKeepsToItsBoundsOnAShortLine(t *testing.T) {
	c := shippedCatalogue(t)
	a := wholeShop()
	a.Supply, a.Wall, a.CutIn = "10psi", "", "40psi"
	for field, last := range map[string]string{presets.FieldCompressor: "0 cfm", presets.FieldReceiver: "10 gal", presets.FieldCutIn: "5 psi", presets.FieldCutOut: "40 psi", presets.FieldSprayTime: "0 min"} {
		b, moved := a, true
		for range 200 {
			if b, moved = c.Nudge(b, presets.Input{Field: field}, -10, unit.US); !moved {
				break
			}
		}
		assert.False(t, moved, field)
		assert.Equal(t, last, b.Field(field))
	}
}

func TestThePieceUnderTheCursor(t *testing.T) {
	for _, x := range []struct {
		field, text string // | is the cursor
		part, piece int
	}{
		{"temp", "7|2F", 0, 0},
		{"hose", "|", 0, 0},
		{"hose", "|25ft,3/8in", 0, 0},
		{"hose", "25ft|,3/8in", 0, 0},
		{"hose", "25ft,|3/8in", 0, 1},
		{"hose", "25ft,3/8in| + 6ft,1/4in", 0, 1},
		{"hose", "25ft,3/8in +| 6ft,1/4in", 1, 0},
		{"hose", "25ft,3/8in + 6ft,1/4in|", 1, 1},
		{"hose", "7|,5m,10mm", 0, 0},
		{"hose", "7,5|m,10mm", 0, 0},
		{"hose", " + + 8m|,10mm", 0, 0},
		{"main", "100ft, |3/4in", 0, 1},
		{"main", "none|", 0, 0},
		{"other", "10cfm|", 0, 0},
		{"other", "10cfm,5|0% + 4", 0, 1},
		{"other", "10cfm,50% + 4|", 1, 0},
		{"other", "é,é|é", 0, 1},
	} {
		before, after, _ := strings.Cut(x.text, "|")
		got := presets.InputAt(x.field, before+after, len([]rune(before)))
		assert.Equal(t, presets.Input{Field: x.field, Part: x.part, Piece: x.piece}, got, x.text)
	}
	assert.Equal(t, presets.Input{Field: "hose", Piece: 1}, presets.InputAt("hose", "8m,10mm", 99))
	assert.Equal(t, presets.Input{Field: "hose"}, presets.InputAt("hose", "8m,10mm", -1))
}

func TestATextIsMovedWhereTheCursorIs(t *testing.T) {
	c := shippedCatalogue(t)
	a := wholeShop()
	for _, x := range []struct {
		field, text, want string
		at, by            int
	}{
		{"hose", "25,3/8 + 6,1/4", "25,3/8 + 10 ft, 1/4", 10, 1},
		{"hose", "25,3/8 + 6,", "20 ft, 3/8 + 6,", 0, -1},
		{"hose", "", "30 ft, 3/8in", 0, 1},
		{"temp", " 72 ", "74 F", 2, 1},
		{"panel", "", "74 F", 0, 1},
		{"other", "10,50", "10, 60%", 5, 1},
		{"coupling", "slim", "ordinary", 0, -1},
		{"temp", "hot", "", 0, 1},
		{"hose", "25,3/8 + 6,", "", 11, 1},
		{"main", "", "50 ft, 3/4 in", 0, 1},
	} {
		got, moved := c.NudgeText(a, presets.InputAt(x.field, x.text, x.at), x.text, x.by, unit.US)
		assert.Equal(t, x.want != "", moved, x)
		if x.want == "" {
			x.want = x.text
		}
		assert.Equal(t, x.want, got, x)
	}
	assert.Equal(t, wholeShop(), a, "the answers stay as they were")
}

// Every field that may stand empty has somewhere to begin, so that arrows alone fill it.
func TestAnEmptyFieldBeginsSomewhere(t *testing.T) {
	c := shippedCatalogue(t)
	a := presets.Answers{Coat: "clear", Gun: "reduced-pressure", Temp: "70F", Humidity: "50", Supply: "90psi", Compressor: "18cfm", Receiver: "60gal"}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		for _, field := range []string{"temp", "humidity", "panel", "altitude", "supply", "hose", "wall", "compressor", "receiver", "cut-in", "cut-out", "main", "other", "spray-time", "receiver-temp", "line-temp"} {
			text, ok := c.NudgeText(a, presets.InputAt(field, "", 0), "", +1, sys)
			require.True(t, ok, field)
			with := a
			with.Set(field, text)
			require.Nil(t, c.Fault(with, field, sys), "%s %q", field, text)
		}
	}
}
