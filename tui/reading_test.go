package tui

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestComplete(t *testing.T) {
	for _, c := range []struct {
		field, typed string
		sys          unit.System
		want         string
	}{
		{presets.FieldTemp, "75", unit.US, "75 F"},
		{presets.FieldTemp, " 24 ", unit.Metric, "24 C"},
		{presets.FieldTemp, "75°", unit.US, "75 F"},
		{presets.FieldTemp, "75 degrees", unit.US, "75 F"},
		{presets.FieldTemp, "24c", unit.US, "24c"},
		{presets.FieldTemp, "hot", unit.US, "hot"},
		{presets.FieldHumidity, "45", unit.US, "45%"},
		{presets.FieldHumidity, "45 %", unit.US, "45 %"},
		{presets.FieldSupply, "90", unit.US, "90 psi"},
		{presets.FieldSupply, "6,2", unit.Metric, "6,2 bar"},
		{presets.FieldAltitude, "1500", unit.Metric, "1500 m"},
		{presets.FieldAltitude, "0", unit.US, "0"},
		// A fraction of an inch is one in either system.
		{presets.FieldHose, "25,3/8", unit.US, "25 ft, 3/8"},
		{presets.FieldHose, "8,10", unit.Metric, "8 m, 10 mm"},
		{presets.FieldHose, "8,3/8", unit.Metric, "8 m, 3/8"},
		{presets.FieldHose, "25ft,3/8in + 6,1/4", unit.US, "25ft, 3/8in + 6 ft, 1/4"},
		{presets.FieldHose, "25", unit.US, "25"},
		{presets.FieldMain, "100,3/4", unit.US, "100 ft, 3/4"},
		{presets.FieldMain, "none", unit.US, "none"},
		{presets.FieldCompressor, "18", unit.US, "18 cfm"},
		{presets.FieldCompressor, "500", unit.Metric, "500 L/min"},
		{presets.FieldCompressor, "5hp", unit.US, "5hp"},
		{presets.FieldReceiver, "60", unit.US, "60 gal"},
		{presets.FieldReceiver, "200", unit.Metric, "200 L"},
		{presets.FieldOther, "10,50 + 4", unit.US, "10 cfm, 50% + 4 cfm"},
		{presets.FieldOther, "10 cfm, 50 %", unit.Metric, "10 cfm, 50 %"},
		{presets.FieldSprayTime, "3", unit.US, "3 min"},
		{presets.FieldSprayTime, "90 s", unit.Metric, "90 s"},
		{presets.FieldHose, "", unit.US, ""},
	} {
		require.Equal(t, c.want, complete(c.field, c.typed, c.sys), "%s %q", c.field, c.typed)
	}
}

// Once its unit is named, text means the same in either system, and what it meant in
// the one it was typed in.
func TestCompleteTextMeansTheSameInEitherSystem(t *testing.T) {
	c := catalogueOf(t, look{})
	rapid.Check(t, func(t *rapid.T) {
		sys := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
		number := rapid.StringMatching(`[1-9][0-9]?(\.[0-9])?`)
		a := presets.Answers{Coat: "clear", Gun: "reduced-pressure", Humidity: "50"}
		field := rapid.SampledFrom([]string{presets.FieldTemp, presets.FieldSupply, presets.FieldAltitude, presets.FieldHose}).Draw(t, "field")
		a.Temp, a.Supply = "20C", "100psi"
		text := number.Draw(t, "number")
		if field == presets.FieldHose {
			text += "," + rapid.SampledFrom([]string{"3/8", "1/4", "0.3", "8", "10mm"}).Draw(t, "bore")
		}
		a.Set(field, text)
		want, faults := c.Resolve(a, sys)
		if len(faults) > 0 {
			return
		}
		a.Set(field, complete(field, text, sys))
		for _, in := range []unit.System{unit.US, unit.Metric} {
			got, faults := c.Resolve(a, in)
			require.Empty(t, faults)
			require.Equal(t, want.Day, got.Day)
			require.Equal(t, want.Supply, got.Supply)
			for i := range want.Line {
				require.Equal(t, want.Line[i].Hose, got.Line[i].Hose)
			}
		}
	})
}

// What the parsers read can be typed.
func TestFieldsTakeEveryUnitTheParsersRead(t *testing.T) {
	for field, texts := range map[string][]string{
		presets.FieldTemp:       {"75 F", "75 °F", "75 degF", "75 degreesF", "75 fahrenheit", "24 C", "24°c", "24 celsius", "75 deg", "75 degrees", "-5", "+5"},
		presets.FieldHumidity:   {"45%", "45 percent", "45 pct", "45%rh"},
		presets.FieldSupply:     {"90psi", "90 PSIG", "90 lbs", "6 bar", "6 barg", "6 bar(g)", "620 kPa", "620 kpag", "0.62 MPa"},
		presets.FieldAltitude:   {"5000 ft", "5000 feet", "1 foot", "5000'", "1500 m", "1500 metres", "1500 meters", "1 1/2 m"},
		presets.FieldCompressor: {"18cfm", "18 SCFM", "500 L/min", "500lpm", "0.5 m3/min", "30 m3/h", "8 l/s", "5 ft3/min", "5hp", "500 dm3/min"},
		presets.FieldReceiver:   {"60gal", "60 gallons", "200L", "200 litres", "200 liters", "240 qt", "900 fl.oz", "9000 ml", "9000 cm3"},
		presets.FieldMain:       {"100ft,3/4in", "none"},
		presets.FieldOther:      {"10cfm,50%", "10 cfm, 50 percent + 100 L/min"},
		presets.FieldSprayTime:  {"3min", "180 seconds", "0.1 hours", "3 minutes"},
		presets.FieldHose:       {"25ft,3/8in", `25',3/8"`, "8m,10mm", "25 feet, 1-1/2 inches + 6 foot, 8 millimetres", "800 centimeters, 1cm"},
	} {
		for _, text := range texts {
			for _, c := range text {
				require.True(t, readings[field].takes(c), "%s %q: %q", field, text, c)
			}
		}
	}
}

func TestEveryStepSaysWhatItAsksInEveryLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		r := start(t, look{lang: lang})
		for i := range steps {
			st := &steps[i]
			require.Equal(t, st.typed, readings[st.id] != nil, st.id)
			for _, start := range []string{"ask-", "why-"} {
				require.True(t, r.s.words.Has(start+st.id), start+st.id)
			}
			require.True(t, r.s.words.Has(st.part), st.part)
			if st.field() {
				require.True(t, r.s.words.Has("short-"+st.id), st.id)
			}
			require.Equal(t, st.optional, r.s.words.Has("empty-"+st.id), st.id)
			if !st.typed && st.field() {
				require.NotEmpty(t, r.s.catalogue.Choices(st.id), st.id)
			}
		}
	}
}
