package tui

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

func TestFiveAnswersGiveTheSetting(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	require.Equal(t, "bench", where(r))
	got := r.result()
	require.NotNil(t, got.Plan)
	require.Equal(t, "clear", got.Plan.Request.Coat.ID)
	require.Equal(t, "reduced-pressure", got.Plan.Request.Gun.ID)
	require.Equal(t, unit.Fahrenheit(75), got.Plan.Request.Day.Air)
	require.InDelta(t, 0.45, got.Plan.Request.Day.Humidity, 1e-12)
	require.InDelta(t, 90, got.Plan.Request.Supply.PSI(), 1e-9)
	require.InDelta(t, 26, got.Plan.Setup.Working.Pressure.PSI(), 1e-6)
	require.False(t, got.Plan.Request.HasNow)
}

func TestTheAnswerIsThatOfTheCommandLine(t *testing.T) {
	reader := readerOf(t, look{})
	for sys, keys := range map[unit.System][]string{unit.US: nil, unit.Metric: {"u"}} {
		r := open80x24(t)
		press(r, then(toAnswer, keys...)...)
		texts := question.Texts{"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}, "humidity": {"45"}, "supply": {"90psi"}}
		want, faults := reader.Plan(reader.ReadAll(question.Plan, texts, sys), sys)
		require.Empty(t, faults)
		got := r.result()
		for i := range got.Plan.Request.Line { // the text an entry came from differs: "25ft, 3/8in"
			got.Plan.Request.Line[i].Entry = want.Line[i].Entry
		}
		require.Equal(t, want, got.Plan.Request)
		solved, err := calc.Solve(want)
		require.NoError(t, err)
		require.Equal(t, solved, got.Plan.Setup)
		require.Equal(t, sys, got.System)
	}
}

// Units changed on the way give the same job as units changed at the end.
func TestUnitsCanBeChangedAnywhere(t *testing.T) {
	want := open80x24(t)
	press(want, then(toAnswer, "u")...)
	for _, at := range []int{0, 1, 2, 10} { // where no text is typed
		r := open80x24(t)
		press(r, then(then(toAnswer[:at], "u"), toAnswer[at:]...)...)
		require.Equal(t, want.result(), r.result(), at)
	}
}

func TestNumbersWithAndWithoutUnits(t *testing.T) {
	for _, typed := range []string{"75", "75F", "75 f", "23.888888888889C", "75°", "+75", "75.0"} {
		r := open80x24(t)
		press(r, atTemp...)
		press(r, typed, "enter")
		require.Equal(t, question.Humidity.Name, where(r), typed)
		press(r, toAnswer[5:]...)
		require.InDelta(t, float64(unit.Fahrenheit(75)), float64(r.result().Plan.Request.Day.Air), 1e-9, typed)
	}
}

func TestTheStepsComeInOrder(t *testing.T) {
	r := open80x24(t)
	var seen []string
	for _, k := range then(atHumidity, "45", "enter", "down", "enter", "90psi", "enter", "right", "down", "60", "enter", "right", "enter", "enter", "2", "2", "50,3/8", "enter", "2", "2", "18", "enter", "60", "enter", "100", "enter", "130", "enter", "100,3/4", "enter", "10,50", "enter", "2", "enter", "3", "enter", "5", "enter", "95", "enter", "70", "enter", "enter") {
		if at := where(r); len(seen) == 0 || seen[len(seen)-1] != at {
			seen = append(seen, at)
		}
		press(r, k)
	}
	require.Equal(t, []string{"safety", "coat", "gun", "temp", "humidity", "panel", "altitude", "supply", "line", "wall", "check",
		"regulator", "regulator-at", "filter", "hose", "coupling", "gauge", "compressor", "receiver", "cut-in", "cut-out", "main", "other", "spray-time", "panels", "pause", "receiver-temp", "line-temp", "sheet"}, seen)
	require.Equal(t, "bench", where(r))
	q := r.result().Plan.Request
	require.True(t, q.HasNow)
	require.Equal(t, "filter (point-of-use)", q.Line[0].Name)
	require.Equal(t, "wall coupling (ordinary)", q.Line[1].Name)
	require.InDelta(t, 50, q.Line[2].Hose.Length.Feet(), 1e-9)
}

func TestWithoutARegulatorNeitherItsPlaceNorTheWallIsAsked(t *testing.T) {
	r := open80x24(t)
	press(r, then(atLine, "2", "4")...)
	require.Equal(t, question.Filter.Name, where(r))
	press(r, "enter", "enter", "enter", "enter")
	require.Equal(t, stepSheet, where(r))
	for where(r) != stepLine {
		press(r, "esc")
	}
	press(r, "down")
	require.Equal(t, stepCheck, where(r))
}

func TestBadInputStaysInTheField(t *testing.T) {
	for _, c := range []struct {
		name string
		keys []string
		bad  string
		want string // part of the message
	}{
		{"text for a temperature", atTemp, "hot", "type a number with F or C"},
		{"a temperature no booth has", atTemp, "300F", "outside"},
		{"nan", atTemp, "nan", "type a number"},
		{"the wrong unit", atTemp, "75 cc", "type a number with F or C"},
		{"humidity above all", atHumidity, "101", "outside 1 to 100"},
		{"two readings of a comma", atSupply, "1,500", "two ways"},
		{"a negative supply", atSupply, "-5", "outside"},
		{"a hose without a bore", then(atLine, "2", "1", "1", "1"), "25ft", "length and bore"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := open80x24(t)
			press(r, c.keys...)
			at := where(r)
			if c.bad != "" {
				for _, k := range c.bad {
					press(r, string(k))
				}
			}
			before := fieldText(r)
			press(r, "enter")
			require.Equal(t, at, where(r), "the same question")
			require.Equal(t, before, fieldText(r), "what was typed is still there")
			require.Contains(t, r.View(), before+string(r.s.glyphs.Cursor), "and so is the cursor")
			require.Contains(t, faultText(r), c.want)
			require.Contains(t, r.View(), "! ")
			press(r, "end")
			require.Empty(t, faultText(r), "the next key clears it")
		})
	}
}

// Blanks are no answer: what an empty field takes is taken.
func TestBlanksAloneAreNoAnswer(t *testing.T) {
	r := open80x24(t)
	press(r, atPanel...)
	require.Equal(t, question.Panel.Name, where(r))
	press(r, " ", " ", "enter")
	require.Equal(t, question.Supply.Name, where(r))
	require.False(t, r.s.answers.Has(question.Panel))
}

func TestRunesThatBelongToNoQuantityAreRefused(t *testing.T) {
	r := open80x24(t)
	press(r, atTemp...)
	press(r, "7", "]", "5", "F", ";", "x")
	require.Equal(t, "75F", fieldText(r))
	require.NotEmpty(t, faultText(r))
	r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("1"), Alt: true})
	require.Equal(t, "75F", fieldText(r), "alt makes no text")
}

func TestTheAnswerToABackgroundQueryWritesNothingButDigits(t *testing.T) {
	// What a terminal sends late: ESC ] 11 ; rgb:1c1c/1c1c/1c1c BEL. The library makes
	// alt+] of its start, then runes.
	r := open80x24(t)
	press(r, then(atSupply, "90")...)
	r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("]"), Alt: true})
	r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(";rgb:/\x07")})
	require.Equal(t, "90rgb", fieldText(r))
	require.Equal(t, question.Supply.Name, where(r))
}

func TestTwoQuickKeysInOneMessageAreTwoKeys(t *testing.T) {
	r := open80x24(t)
	press(r, "enter", "82")
	require.Equal(t, question.Temp.Name, where(r))
	require.Equal(t, "clear", r.s.answers.Text(question.Coat))
	require.Equal(t, "reduced-pressure", r.s.answers.Text(question.Gun))
}

func TestPastedTextIsTextAndNeverAKey(t *testing.T) {
	paste := func(r *root, text string) { r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}) }
	r := open80x24(t)
	press(r, "enter")
	paste(r, "8q")
	require.Equal(t, question.Coat.Name, where(r), "nothing is picked")
	require.False(t, r.done)
	press(r, "8", "2")
	paste(r, "75 F\n")
	require.Equal(t, question.Temp.Name, where(r), "a line end in it does not take the answer")
	require.Equal(t, "75 F", fieldText(r))
	paste(r, string(make([]rune, 5000)))
	require.LessOrEqual(t, len(fieldText(r)), longestText)
}

func TestNothingTypedIsLostGoingBackAndForward(t *testing.T) {
	r := open80x24(t)
	press(r, atHumidity...)
	press(r, "450", "enter") // will not do
	require.Equal(t, question.Humidity.Name, where(r))
	press(r, "up")
	require.Equal(t, question.Temp.Name, where(r), "back from an invalid field")
	require.Equal(t, "75F", fieldText(r))
	press(r, "esc")
	require.Equal(t, question.Gun.Name, where(r))
	press(r, "enter", "enter")
	require.Equal(t, question.Humidity.Name, where(r), "no page is left with what will not do")
	require.Equal(t, "450", fieldText(r))
	press(r, "backspace", "enter", "enter")
	require.Equal(t, question.Supply.Name, where(r))
	press(r, "esc", "esc", "esc", "esc", "esc")
	require.Equal(t, question.Coat.Name, where(r), "the safety page shows once")
	require.Equal(t, "clear", r.page().(*stepPage).list.picked().ID)
	press(r, "enter", "enter", "enter")
	require.Equal(t, question.Supply.Name, where(r), "enter alone goes through what was answered")
}

// Typing in a field takes the place of the answer that it has; a key that edits begins with
// that.
func TestTypingReplacesAnAnswerAndEditingBeginsWithIt(t *testing.T) {
	r := open80x24(t)
	press(r, then(atHumidity, "up", "8", "0")...)
	require.Equal(t, "80", fieldText(r))
	press(r, "ctrl+u")
	require.Empty(t, fieldText(r))
	require.False(t, r.s.answers.Has(question.Temp), "what was emptied counts no more")
	press(r, "75F", "enter", "up", "backspace", "backspace", "6")
	require.Equal(t, "76", fieldText(r))
	press(r, "backspace", "backspace")
	require.False(t, r.s.answers.Has(question.Temp))
}

func TestLeftAndBackspaceGoBackOnlyWhereNothingIsTyped(t *testing.T) {
	for _, k := range []string{"left", "backspace"} {
		r := open80x24(t)
		press(r, toLine(question.Hose)...)
		press(r, "7", k)
		require.Equal(t, question.Hose.Name, where(r), k)
		press(r, "ctrl+u", k)
		require.Equal(t, question.Filter.Name, where(r), k)
	}
}

func TestThePartsOfTheLineKeepWhatWasSaidWhenTheLineIsTakenAsItIs(t *testing.T) {
	r := open80x24(t)
	press(r, then(atLine, "2", "1", "1", "1")...)
	press(r, "99", "enter", "esc", "esc", "esc", "esc")
	require.Equal(t, stepLine, where(r))
	require.Contains(t, r.View(), "1/4 in regulator")
	require.Contains(t, r.View(), "25ft, 3/8in", "a hose that would not do is not taken")
	press(r, "1", "enter")
	require.Equal(t, "bench", where(r))
	require.Equal(t, "1/4in", r.result().Plan.Request.Line[0].Entry)
}

func TestAShopsOwnLineIsOffered(t *testing.T) {
	shop := look{size: usualSize, shop: `[line]
hose = ["10m,8mm"]
supply = "7bar"
altitude = "500m"
units = "metric"
`}
	r := start(t, shop)
	press(r, "enter", "8", "2", "22", "enter", "50", "enter")
	require.Contains(t, r.View(), "500m  usual")
	press(r, "enter")
	require.Contains(t, r.View(), "7bar  usual")
	press(r, "enter", "enter")
	q := r.result().Plan.Request
	require.InDelta(t, 7, q.Supply.Bar(), 1e-9)
	require.InDelta(t, 500, float64(q.Day.Altitude), 1e-9)
	require.Equal(t, unit.Celsius(22), q.Day.Air)
	press(r, "u")
	require.Equal(t, q.Supply, r.result().Plan.Request.Supply, "other units change what is shown, not what was meant")
	require.Equal(t, q.Day, r.result().Plan.Request.Day)
}

func TestOtherUnitsDoNotChangeWhatWasTyped(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	press(r, "u")
	after := r.result()
	require.Equal(t, unit.Metric, after.System)
	require.Equal(t, before.Plan.Request.Day, after.Plan.Request.Day)
	require.Equal(t, before.Plan.Request.Supply, after.Plan.Request.Supply)
	require.InDelta(t, 0.05, after.Plan.Request.Mark.Bar(), 1e-12, "the gauge is read in the new units")
	press(r, "u")
	require.Equal(t, before, r.result())
}

func TestAgainKeepsTheAnswers(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	press(r, "n")
	require.Equal(t, question.Coat.Name, where(r))
	press(r, "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, before, r.result())
}
