package tui

import (
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
)

// The settings stand in the same rows of the window on every view and page, as large as the
// window allows.
func TestTheSettingsStandInTheSamePlaceOnEveryViewAndPage(t *testing.T) {
	for high, digits := range map[int]int{24: 3, 40: 5, 50: 7, 60: 9} {
		r := start(t, look{size: size{160, high}})
		press(r, toAnswer...)
		pinned := func() string {
			return strings.Join(strings.Split(r.View(), "\n")[1:len(r.page().under(r.size))], "\n")
		}
		want := pinned()
		for _, row := range draw.Digits("31", digits, r.s.glyphs) {
			require.Contains(t, want, strings.TrimRight(row, " "), "%d rows", high)
		}
		for n := range views {
			openView(r, n)
			require.Equal(t, want, pinned(), views[n].id)
		}
		for _, q := range []*question.Question{question.Day, question.Thin, question.Film, question.Mix} {
			press(r, pageKey(q))
			require.Equal(t, q.Name, where(r))
			require.Equal(t, want, pinned(), q.Name)
			press(r, "esc")
		}
	}
}

// On STOP the cure stands in the place of the settings, with its figure.
func TestTheCureStandsWhereTheSettingsWould(t *testing.T) {
	r := open80x24(t)
	press(r, toDew...)
	frame := r.View()
	require.Contains(t, frame, r.s.say("cure-title"))
	require.NotContains(t, frame, r.s.say("number-wall")+" ")
	number, _, _ := strings.Cut(unit.Temperature.Text(r.s.sys, r.bench.tried.Setup.Turn().Figures[0].Value, unit.Usual), " ")
	for _, row := range draw.Digits(number, 3, r.s.glyphs) {
		require.Contains(t, frame, strings.TrimRight(row, " "), number)
	}
}

// The response is worked once for a trial and an input, and leads where the wall then is.
func TestTheResponseIsWhereATrialLeads(t *testing.T) {
	r := start(t, look{size: size{120, 40}})
	press(r, toAnswer...)
	walkTo(t, r, question.Hose, 0)
	got := *r.bench.respond()
	require.Greater(t, len(got.values), 4)
	wall := r.s.axis(unit.Pressure)
	for i := got.at + 1; i < len(got.values); i++ {
		press(r, "shift+right")
		require.InDelta(t, got.walls[i], wall.at(float64(r.bench.tried.Setup.Wall.Flowing)), 1e-9, got.values[i])
	}
}
