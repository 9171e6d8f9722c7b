package words_test

import (
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
)

func TestTimesAsPeopleSayThem(t *testing.T) {
	for d, want := range map[time.Duration]string{
		40 * time.Second: "40 s", 3 * time.Minute: "3 min", 119 * time.Minute: "119 min", 2 * time.Hour: "2 h",
		2*time.Hour + 50*time.Minute: "2 h 50 min", 3*time.Hour + 3*time.Minute: "3 h 5 min", 3*time.Hour + 58*time.Minute: "4 h",
		14 * time.Hour: "14 h", 47 * time.Hour: "47 h", 7 * 24 * time.Hour: "7 days",
	} {
		assert.Equal(t, want, words.English().Minutes(d))
	}
}

func TestClockInBothSystemsAndOnLaterDays(t *testing.T) {
	for _, c := range []struct {
		at         time.Duration
		us, metric string
	}{
		{0, "12:00 am", "00:00"},
		{14*time.Hour + 30*time.Minute, "2:30 pm", "14:30"},
		{23*time.Hour + 59*time.Minute + 40*time.Second, "12:00 am next day", "00:00 next day"},
		{25 * time.Hour, "1:00 am next day", "01:00 next day"},
		{9*24*time.Hour + 12*time.Hour, "12:00 pm, 9 days on", "12:00, 9 days on"},
	} {
		assert.Equal(t, c.us, string(words.English().AppendClock(nil, unit.US, calc.Clock(c.at))))
		assert.Equal(t, c.metric, string(words.English().AppendClock(nil, unit.Metric, calc.Clock(c.at))))
	}
}

func TestCupSecondsAndRoughRatios(t *testing.T) {
	for v, want := range map[float64]string{16: "16 s", 16.54: "16.5 s", 17.96: "18 s", 29.96: "30 s", 61.5: "62 s", 150.2: "150 s"} {
		assert.Equal(t, want, words.CupText(v))
	}
	for v, want := range map[float64]string{.0524: "0.052", .234: "0.23", 1: "1", 1.24: "1.2", 4.27: "4.3", 9.94: "9.9", 9.96: "10", 20: "20", 123.4: "123"} {
		assert.Equal(t, want, words.TimesText(v))
	}
	for kind, want := range map[calc.FigureKind]string{calc.FigureTimes: "4.3", calc.FigureCup: "4.3 s", calc.FigureClock: "12:00 am"} {
		f := calc.Figure{Kind: kind, Value: 4.27}
		assert.Equal(t, want, string(words.English().AppendFigure(nil, unit.US, &f)))
	}
	f := calc.Figure{Kind: calc.FigureViscosity, Value: 57.1e-6}
	assert.Equal(t, "57 mm2/s", string(words.English().AppendFigure(nil, unit.Metric, &f)))
}
