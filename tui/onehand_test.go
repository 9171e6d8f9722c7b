package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc/calctest"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// oneHand is the keys that are enough for all of the job.
var oneHand = strings.Fields("0 1 2 3 4 5 6 7 8 9 up down left right enter esc")

// The whole job by digits, arrows, enter and esc alone: every question, the line and the
// supply part by part, every page of every view, every input, a page of its own, and the
// way out.
func TestOneHandIsEnoughForTheWholeJob(t *testing.T) {
	calctest.WithoutRace(t)
	t.Parallel()
	for n, lang := range words.Languages() {
		for _, l := range []size{theSizes[n], theSizes[len(theSizes)-1-n]} {
			r := start(t, look{size: l, lang: lang})
			visited := map[string]bool{}
			by := func(keys ...string) {
				for _, k := range keys {
					require.Contains(t, oneHand, k)
					visited[where(r)] = true
					press(r, k)
					requireFits(t, r.View(), l)
				}
			}
			by("enter", "5", "enter", "down", "enter")        // the safety page, the coat, its hardener, the gun
			by("7", "5", "right", "enter", "4", "5", "enter") // the air and its humidity
			by("down", "right", "down", "enter")              // the panel, the altitude
			by("9", "0", "enter", "right", "down", "7", "0", "enter")
			require.Equal(t, stepCheck, where(r))
			by("right", "enter", "up", "enter", "enter", "down", "enter", "up", "enter", "enter", "down", "up", "enter")
			require.Equal(t, question.Compressor.Name, where(r))
			by("1", "8", "enter", "6", "0", "enter", "enter", "enter", "enter", "1", "0", "enter", "up", "enter", "up", "enter", "enter", "enter", "enter", "down", "up", "enter", "enter")
			require.Equal(t, "bench", where(r))
			for i := range r.s.steps {
				st := &r.s.steps[i]
				require.True(t, visited[st.id] || st.rows != nil, st.id)
				for _, row := range st.rows {
					require.True(t, visited[row.Name] || st.id == stepSheet, row.Name)
				}
			}

			before := r.result()
			for range r.bench.inputs() {
				by("down", "right", "left", "right")
			}
			require.True(t, r.bench.changed())
			require.Equal(t, before, r.result())
			by("esc")
			require.False(t, r.bench.changed())
			for r.bench.inputs()[r.bench.input].Field != question.Hose {
				by("up")
			}
			by("right", "enter")
			require.NotEqual(t, before, r.result())

			for n := range views {
				by("1", viewKeys()[(n+1)%len(views)], viewKeys()[n])
				require.Equal(t, n, r.bench.view)
			}
			by(pageKey(question.Thin))
			require.Equal(t, "thin", where(r))
			by("up", "right", "enter", "2", "2", "enter")
			for !formOf(r).onAnswer() {
				by("enter")
			}
			require.True(t, formOf(r).onAnswer(), "%s", r.View())
			require.NoError(t, formOf(r).err)
			for before := ""; before != r.View(); { // to its last row
				before = r.View()
				by("down")
			}
			by("esc", "1")
			for where(r) == "bench" {
				by("enter")
			}
			require.Equal(t, "finish", where(r))
			by("down", "enter")
			require.Equal(t, "bench", where(r), "it can be thought over")
			by("enter", "1")
			require.True(t, r.done)
			require.False(t, r.stopped)
			require.NotNil(t, r.result().Plan)
		}
	}
}

// From the answer esc alone goes back to the first question and then to the way out.
func TestEscAloneLeadsBack(t *testing.T) {
	r := open80x24(t)
	press(r, toSupply...)
	var seen []string
	for where(r) != "finish" {
		seen = append(seen, where(r))
		press(r, "esc")
	}
	require.Equal(t, "bench", seen[0])
	require.Equal(t, question.Coat.Name, seen[len(seen)-1])
	require.True(t, slices.Contains(seen, question.Main.Name))
	press(r, "esc")
	require.Equal(t, question.Coat.Name, where(r), "and no further")
	press(r, "esc", "enter")
	require.True(t, r.done)
	require.Nil(t, r.result().Plan)
}

// The last run's answers are taken up with enter alone.
func TestALastRunIsTakenUpWhereItWas(t *testing.T) {
	for _, c := range []struct {
		pick, at string
		coat     string
	}{
		{"1", question.Humidity.Name, "clear"},
		{"2", question.Coat.Name, "clear"},
		{"3", question.Coat.Name, "clear"},
		{"4", question.Coat.Name, ""},
	} {
		r := open80x24(t)
		r.resume.run = r.s.read(*halfRun())
		press(r, "enter")
		require.Equal(t, "resume", where(r))
		press(r, c.pick)
		require.Equal(t, c.at, where(r), c.pick)
		require.Equal(t, c.coat, r.s.answers.Text(question.Coat))
		if c.pick == "1" {
			require.Equal(t, "4", fieldText(r), "what was half typed too")
			press(r, "5", "enter", "up", "up")
			require.Equal(t, "75F", fieldText(r))
			require.Contains(t, r.View(), "entered 3 h ago")
		}
	}
	r := open80x24(t)
	r.resume.run = r.s.read(*wholeRun())
	press(r, "enter", "enter")
	require.Equal(t, "bench", where(r))
	require.Equal(t, "day-assumed", r.result().Plan.Setup.Against[0].ID)
	press(r, "=")
	want := open80x24(t)
	press(want, toAnswer...)
	require.Equal(t, want.result().Plan.Setup, r.result().Plan.Setup)
}
