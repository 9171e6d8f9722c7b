package question_test

import (
	"math"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestUnitsAreNamed(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		field *question.Field
		typed string
		sys   unit.System
		want  string
	}{
		{question.Temp, "75", unit.US, "75 F"},
		{question.Temp, " 24 ", unit.Metric, "24 C"},
		{question.Temp, "75°", unit.US, "75 F"},
		{question.Temp, "75 degrees", unit.US, "75 F"},
		{question.Temp, "24c", unit.US, "24c"},
		{question.Temp, "hot", unit.US, "hot"},
		{question.Humidity, "45", unit.US, "45%"},
		{question.Humidity, "45 %", unit.US, "45 %"},
		{question.Supply, "90", unit.US, "90 psi"},
		{question.Supply, "6,2", unit.Metric, "6,2 bar"},
		{question.Altitude, "1500", unit.Metric, "1500 m"},
		{question.Altitude, "0", unit.US, "0"},
		// A fraction of an inch is one in either system.
		{question.Hose, "25,3/8", unit.US, "25 ft, 3/8"},
		{question.Hose, "8,10", unit.Metric, "8 m, 10 mm"},
		{question.Hose, "8,3/8", unit.Metric, "8 m, 3/8"},
		{question.Hose, "25ft,3/8in + 6,1/4", unit.US, "25ft, 3/8in + 6 ft, 1/4"},
		{question.Hose, "25", unit.US, "25"},
		{question.Main, "100,3/4", unit.US, "100 ft, 3/4"},
		{question.Main, "none", unit.US, "none"},
		{question.Compressor, "18", unit.US, "18 cfm"},
		{question.Compressor, "500", unit.Metric, "500 L/min"},
		{question.Compressor, "5hp", unit.US, "5hp"},
		{question.Receiver, "60", unit.US, "60 gal"},
		{question.Receiver, "200", unit.Metric, "200 L"},
		{question.Other, "10,50 + 4", unit.US, "10 cfm, 50% + 4 cfm"},
		{question.Other, "10 cfm, 50 %", unit.Metric, "10 cfm, 50 %"},
		{question.SprayTime, "3", unit.US, "3 min"},
		{question.SprayTime, "90 s", unit.Metric, "90 s"},
		{question.Hose, "", unit.US, ""},
		// The pages' own.
		{question.Area, "12", unit.US, "12 ft2"},
		{question.Area, "1,2", unit.Metric, "1,2 m2"},
		{question.Area, "2 door + 3", unit.Metric, "2 door + 3 m2"},
		{question.FluidRate, "180", unit.US, "180 mL/min"},
		{question.GunSpeed, "1.2", unit.US, "1.2 ft/s"},
		{question.Wet, "4,5", unit.US, "4 mil, 5 mil"},
		{question.Wet, "100", unit.Metric, "100 um"},
		{question.Tip, "1.3", unit.US, "1.3 mm"},
		{question.CupSize, "20", unit.US, "20 fl oz"},
		{question.Seconds, "18", unit.US, "18 s"},
		{question.SheetSeconds, "16-18", unit.US, "16-18"},
		{question.Ratio, "4 1 1", unit.US, "4 1 1"},
		{question.Price, "60/L", unit.US, "60/L"},
		{question.Started, "14.30", unit.US, "14.30"},
		{question.Panels, "4", unit.US, "4"},
		{question.Gun, "HVLP", unit.US, "HVLP"},
	} {
		got := r.Completed(c.field, r.ReadText(c.field, c.typed, c.sys), c.sys)
		require.Equal(t, c.want, question.TextOf(got), "%s %q", c.field.Name, c.typed)
	}
}

// Once its unit is named, text means the same in either system, and what it meant in
// the one it was typed in.
func TestTextWithItsUnitMeansTheSameInEitherSystem(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
		number := rapid.StringMatching(`[1-9][0-9]?(\.[0-9])?`)
		f := rapid.SampledFrom([]*question.Field{question.Temp, question.Supply, question.Altitude, question.Hose}).Draw(t, "field")
		text := number.Draw(t, "number")
		if f == question.Hose {
			text += "," + rapid.SampledFrom([]string{"3/8", "1/4", "0.3", "8", "10mm"}).Draw(t, "bore")
		}
		texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "humidity", "50", "temp", "20C", "supply", "100psi")
		want, faults := r.Plan(r.ReadAll(question.Plan, questiontest.With(texts, f.Name, text), sys), sys)
		if len(faults) > 0 {
			return
		}
		whole := question.TextOf(r.Completed(f, r.ReadText(f, text, sys), sys))
		for _, in := range bothSystems {
			got := plan(t, r, questiontest.With(texts, f.Name, whole), in)
			require.Equal(t, want.Day, got.Day)
			require.Equal(t, want.Supply, got.Supply)
			for i := range want.Line {
				require.Equal(t, want.Line[i].Hose, got.Line[i].Hose)
			}
		}
	})
}

// Of every field that holds quantities, a number without a unit names its own, reads back to
// the same in SI, and stays what it is from then on.
func TestEveryQuantityIsNamedAndReadsBack(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom(question.Questions()).Draw(t, "question")
		row := rapid.SampledFrom(q.Fields).Draw(t, "field")
		if row.Of[0] == nil {
			return
		}
		sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
		text := rapid.StringMatching(`[1-9][0-9]{0,2}([.,][0-9])?|[1-7]/8`).Draw(t, "number")
		if row.Pair() {
			text += "," + rapid.StringMatching(`[1-9][0-9]?|[1-7]/8`).Draw(t, "second")
		}
		v := r.Read(row.Field, text, sys)
		if v.Fault != nil {
			return
		}
		named := r.Completed(row.Field, []question.Value{v}, sys)
		for _, in := range []unit.System{unit.US, unit.Metric} {
			back := r.Read(row.Field, question.TextOf(named), in)
			require.Nil(t, back.Fault, "%s %q", row.Name, named)
			for n, si := range v.SI {
				require.InDelta(t, si, back.SI[n], 1e-12*math.Abs(si), "%s %q named %q", row.Name, text, named)
			}
		}
		require.Equal(t, v.SI, named[0].SI)
	})
}
