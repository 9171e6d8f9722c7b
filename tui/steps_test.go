package tui

import (
	"slices"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is taken names its units, each where it was left out.
func TestWhatIsTakenNamesItsUnits(t *testing.T) {
	s := start(t, look{}).s
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
	} {
		_, text := s.completed(c.field, c.typed, c.sys)
		require.Equal(t, c.want, text, "%s %q", c.field.Name, c.typed)
	}
}

// Once its unit is named, text means the same in either system, and what it meant in
// the one it was typed in.
func TestCompleteTextMeansTheSameInEitherSystem(t *testing.T) {
	s := start(t, look{}).s
	rapid.Check(t, func(t *rapid.T) {
		sys := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
		f := rapid.SampledFrom([]*question.Field{question.Temp, question.Supply, question.Altitude, question.Hose, question.Main, question.Other}).Draw(t, "field")
		text := rapid.StringMatching(`[1-9][0-9]?(\.[0-9])?`).Draw(t, "number")
		if f.Pair() {
			text += "," + rapid.SampledFrom([]string{"3/8", "1/4", "0.3", "8", "10mm", "50"}).Draw(t, "second")
		}
		meant := s.reader.ReadText(f, text, sys)
		if meant[0].Fault != nil {
			return
		}
		_, complete := s.completed(f, text, sys)
		for _, in := range []unit.System{unit.US, unit.Metric} {
			again := s.reader.ReadText(f, complete, in)
			require.Nil(t, again[0].Fault, complete)
			require.Equal(t, meant[0].SI, again[0].SI, complete)
		}
	})
}

// What is read can be typed.
func TestFieldsTakeEveryUnitThatIsRead(t *testing.T) {
	for field, texts := range map[*question.Field][]string{
		question.Temp:       {"75 F", "75 °F", "75 degF", "75 degreesF", "75 fahrenheit", "24 C", "24°c", "24 celsius", "75 deg", "75 degrees", "-5", "+5"},
		question.Humidity:   {"45%", "45 percent", "45 pct", "45%rh"},
		question.Supply:     {"90psi", "90 PSIG", "90 lbs", "6 bar", "6 barg", "6 bar(g)", "620 kPa", "620 kpag", "0.62 MPa"},
		question.Altitude:   {"5000 ft", "5000 feet", "1 foot", "5000'", "1500 m", "1500 metres", "1500 meters", "1 1/2 m"},
		question.Compressor: {"18cfm", "18 SCFM", "500 L/min", "500lpm", "0.5 m3/min", "30 m3/h", "8 l/s", "5 ft3/min", "5hp", "500 dm3/min", "none"},
		question.Receiver:   {"60gal", "60 gallons", "200L", "200 litres", "200 liters", "240 qt", "900 fl.oz", "9000 ml", "9000 cm3"},
		question.Main:       {"100ft,3/4in", "none", "None"},
		question.Other:      {"10cfm,50%", "10 cfm, 50 percent + 100 L/min"},
		question.SprayTime:  {"3min", "180 seconds", "0.1 hours", "3 minutes"},
		question.Hose:       {"25ft,3/8in", `25',3/8"`, "8m,10mm", "25 feet, 1-1/2 inches + 6 foot, 8 millimetres", "800 centimeters, 1cm"},
		question.FluidRate:  {"250 mL/min", "8 fl oz a minute"},
		question.GunSpeed:   {"1.3 ft/s", "40 cm per second"},
		question.Ratio:      {"4:1:1+10%", "4 1 1"},
		question.Started:    {"2:30 pm"},
	} {
		for _, text := range texts {
			for _, c := range text {
				require.True(t, field.Takes(c), "%s %q: %q", field.Name, text, c)
			}
		}
	}
	for field, other := range map[*question.Field]string{question.Temp: "]x;", question.Supply: "/;:z", question.Receiver: "ph%", question.SprayTime: "x%"} {
		for _, c := range other {
			require.False(t, field.Takes(c), "%s %q", field.Name, c)
		}
	}
}

func TestEveryStepSaysWhatItAsksInEveryLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		r := start(t, look{lang: lang})
		for i := range r.s.steps {
			st := &r.s.steps[i]
			for _, start := range []string{"ask-", "why-"} {
				require.True(t, r.s.words.Has(start+st.id), start+st.id)
			}
			require.NotEmpty(t, r.s.say(st.part.Sentence()), st.id)
			require.NotEmpty(t, r.s.say(sayProgress+string(st.part)), st.id)
			for _, row := range st.rows {
				if st.id == stepSheet {
					break // what each takes is said
				}
				for _, start := range []string{"ask-", "why-", "short-"} {
					require.True(t, r.s.words.Has(start+row.Name), start+row.Name)
				}
				if row.Field != wayField && row.Field != checkField {
					require.True(t, r.s.words.Has("how-"+row.Name), row.Name)
				}
			}
			require.Equal(t, st.typed(), r.s.words.Has("how-"+st.id), st.id)
			if st.field != nil {
				require.NotEmpty(t, r.s.label(st.field), st.id)
				require.Equal(t, st.typed(), len(r.s.reader.Choices(st.field)) == 0, st.id)
			}
			require.Equal(t, st.optional(), r.s.words.Has("empty-"+st.id), st.id)
		}
	}
}

// Every field of the plan that belongs to a part of the job is asked for once, by itself or on
// a page, in the plan's order; the air's page asks besides for the line and the check.
func TestTheStepsAreThoseOfThePlan(t *testing.T) {
	var asked []*question.Field
	for _, st := range stepsOf(question.Plan) {
		if st.field != nil {
			asked = append(asked, st.field)
		}
		for _, row := range st.rows {
			require.NotEmpty(t, pageOf[st.part])
			asked = append(asked, row.Field)
		}
	}
	var want []*question.Field
	for _, row := range question.Plan.Fields {
		if row.Part != "" {
			want = append(want, row.Field)
		}
	}
	wall := slices.Index(want, question.Wall)
	want = slices.Delete(want, wall, wall+1)
	supply := slices.Index(want, question.Supply)
	want = slices.Insert(want, supply+1, wayField, question.Wall, checkField)
	require.Equal(t, want, asked)
}
