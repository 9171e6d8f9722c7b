package edit_test

import (
	"fmt"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
)

// Each field stepped down, up and far up, in either system.
func TestStepOfEachAnswer(t *testing.T) {
	r := questiontest.Open(t)
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
		{"coat", 0, 0, "sealer", unit.US, "surfacer", "solvent-base", "high-solids-clear"},
		{"coat", 0, 0, "", unit.US, "", "epoxy-primer", "ultraviolet-primer"},
		{"gun", 0, 0, "high-pressure", unit.US, "reduced-pressure", "touch-up", "pressure-feed"},
		{"gun", 0, 0, "HVLP", unit.US, "", "reduced-pressure", "pressure-feed"},
		{"regulator", 0, 0, "", unit.US, "3/8in", "none", "none"},
		{"gauge", 0, 0, "foot", unit.Metric, "handle", "none", "none"},
	} {
		texts := questiontest.With(questiontest.With(wholeShop(), "wall", ""), x.field, x.given)
		f := field(x.field)
		a := read(r, texts, x.sys)
		in := edit.Input{Field: f, Part: x.part, Piece: x.piece}
		for by, want := range map[int]string{-1: x.down, 1: x.up, 10: x.farUp} {
			what := fmt.Sprintf("%v %q by %d", named(in), x.given, by)
			got, moved := step(r, a, in, by, x.sys)
			assert.Equal(t, want != "", moved, what)
			if want == "" {
				want = a.Text(f)
			}
			assert.Equal(t, want, got.Text(f), what)
			assert.Equal(t, a.Texts(), got.With(f, a.Get(f)...).Texts(), what+": nothing else changes")
		}
	}
}

// The wall goes by the marks of its gauge, where these are plain in the unit in use.
func TestTheWallGoesByItsMarks(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		mark string
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
		a := read(r, questiontest.With(wholeShop(), "mark", x.mark), x.sys)
		got, moved := step(r, a, edit.Input{Field: question.Wall}, 1, x.sys)
		assert.True(t, moved, x.mark)
		assert.Equal(t, x.up, got.Text(question.Wall), x.mark)
	}
}

// No wall is moved above its supply; one that stands there can come down, and one that is
// typed may be anything.
func TestNoWallIsMovedAboveItsSupply(t *testing.T) {
	r := questiontest.Open(t)
	wall := edit.Input{Field: question.Wall}
	walk := func(from string, by int) string {
		a, moved := read(r, questiontest.With(wholeShop(), "wall", from), unit.US), true
		for moved {
			if a, moved = step(r, a, wall, by, unit.US); by < 0 {
				break
			}
		}
		return a.Text(question.Wall)
	}
	assert.Equal(t, "90 psi", walk("33psi", 10))
	assert.Equal(t, "120psi", walk("120psi", 1))
	assert.Equal(t, "119 psi", walk("120psi", -1))
	typed, moved := edit.StepText(r, read(r, wholeShop(), unit.US), question.Wall, "90psi", 0, 1, unit.US)
	assert.True(t, moved)
	assert.Equal(t, "91 psi", typed)
}

// The compressor's switch starts it no higher than it stops it, where that was said.
func TestACutInStaysBelowItsCutOut(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		in, out string
		field   *question.Field
		by      int
		want    string
	}{
		{"100psi", "105psi", question.CutIn, 10, "105 psi"},
		{"105psi", "105psi", question.CutIn, 1, ""},
		{"100psi", "", question.CutIn, 10, "110 psi"}, // the cut-out follows
		{"100psi", "105psi", question.CutOut, -10, "100 psi"},
		{"100psi", "100psi", question.CutOut, -1, ""},
		{"100psi", "95psi", question.CutOut, -1, "94 psi"}, // either may be what is wrong
		{"100psi", "95psi", question.CutOut, 10, "105 psi"},
	} {
		a := read(r, questiontest.With(questiontest.With(wholeShop(), "cut-in", x.in), "cut-out", x.out), unit.US)
		got, moved := step(r, a, edit.Input{Field: x.field}, x.by, unit.US)
		assert.Equal(t, x.want != "", moved, x)
		if moved {
			assert.Equal(t, x.want, got.Text(x.field), x)
		}
	}
}

// What is wrong or missing elsewhere keeps nothing from being moved.
func TestOtherAnswersMayBeMissingOrWrong(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		in    edit.Input
		pairs []string
		want  string
	}{
		{edit.Input{Field: question.Temp}, []string{"temp", "72F"}, "74 F"},
		{edit.Input{Field: question.Panel}, []string{"temp", "72F"}, "74 F"},
		{edit.Input{Field: question.Temp}, []string{"temp", "72F", "coat", "treacle", "gun", "cannon", "humidity", "x", "supply", "900psi", "mark", "y"}, "74 F"},
		{edit.Input{Field: question.Receiver}, []string{"receiver", "60gal", "compressor", "10cfm", "cut-in", "soon", "main", "far"}, "70 gal"},
		{edit.Input{Field: question.CutIn}, []string{"cut-in", "120psi", "cut-out", "110psi", "compressor", "10cfm", "receiver", "60gal"}, "121 psi"},
		{edit.Input{Field: question.Hose}, []string{"hose", "25ft,3/8in", "hose", "6ft"}, "30 ft, 3/8in + 6ft"},
		{edit.Input{Field: question.Other, Part: 1}, []string{"compressor", "10cfm", "other", "air", "other", "4cfm"}, "air + 5 cfm"},
	} {
		got, moved := step(r, read(r, questiontest.Texts(x.pairs...), unit.US), x.in, 1, unit.US)
		assert.True(t, moved, x)
		assert.Equal(t, x.want, got.Text(x.in.Field), x)
	}
	for _, x := range []struct {
		in    edit.Input
		pairs []string
	}{
		{edit.Input{Field: question.Temp}, nil},
		{edit.Input{Field: question.Temp}, []string{"temp", "warm"}},
		{edit.Input{Field: question.Supply}, []string{"supply", "900psi"}},
		{edit.Input{Field: question.Hose}, []string{"hose", "25ft"}},
		{edit.Input{Field: question.Hose, Part: 1}, nil},
		{edit.Input{Field: question.Receiver}, []string{"receiver", "60gal"}},
		{edit.Input{Field: question.Paint}, []string{"paint", "20C"}},
	} {
		a := read(r, questiontest.Texts(x.pairs...), unit.US)
		for _, by := range []int{-1, 0, 1} {
			got, moved := step(r, a, x.in, by, unit.US)
			assert.False(t, moved, x)
			assert.Equal(t, a, got)
		}
	}
}

// A supply keeps to its bounds whether the line starves the gun or not.
func TestASupplyKeepsToItsBoundsOnAShortLine(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.With(questiontest.With(questiontest.With(wholeShop(), "supply", "10psi"), "wall", ""), "cut-in", "40psi")
	for f, last := range map[*question.Field]string{question.Compressor: "0 cfm", question.Receiver: "10 gal", question.CutIn: "5 psi", question.CutOut: "40 psi", question.SprayTime: "0 min"} {
		a, moved := read(r, texts, unit.US), true
		for range 200 {
			if a, moved = step(r, a, edit.Input{Field: f}, -10, unit.US); !moved {
				break
			}
		}
		assert.False(t, moved, f.Name)
		assert.Equal(t, last, a.Text(f))
	}
}

// What stands out of its bounds comes back to them by steps toward them, and goes no farther
// away.
func TestAValueOutsideItsBoundsComesBack(t *testing.T) {
	r := questiontest.Open(t)
	a := read(r, questiontest.With(wholeShop(), "supply", "305psi"), unit.US)
	in := edit.Input{Field: question.Supply}
	_, moved := step(r, a, in, 1, unit.US)
	assert.False(t, moved)
	_, moved = step(r, a, in, -1, unit.US)
	assert.False(t, moved, "304 psi is none either")
	got, moved := step(r, a, in, -10, unit.US)
	assert.True(t, moved)
	assert.Equal(t, "295 psi", got.Text(question.Supply))
}
