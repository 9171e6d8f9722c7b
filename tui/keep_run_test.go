package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// shelf is a file of last answers and the clock of who opens it.
type shelf struct {
	file string
	now  time.Time
}

func newShelf(t *testing.T) *shelf {
	return &shelf{filepath.Join(t.TempDir(), "boothset", "last.json"), testDay}
}

// run is an assistant that keeps its answers on the shelf.
func (h *shelf) run(t test, l look) *root {
	t.Helper()
	r := start(t, l)
	r.s.now = func() time.Time { return h.now }
	r.keepIn(h.file)
	return r
}

// typed sends keys and does what the program does with what each brings: the disk is
// written.
func typed(r *root, keys ...string) {
	for _, k := range keys {
		if _, cmd := r.Update(keyOf(k)); cmd != nil {
			cmd()
		}
	}
}

func TestAHalfAnsweredJobComesBackWhereItWas(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	press(r, "enter")
	require.Equal(t, question.Coat.Name, where(r), "nothing is offered yet")
	typed(r, "8", "2", "75F", "enter", "4")
	require.Equal(t, question.Humidity.Name, where(r))

	h.now = testDay.Add(3 * time.Hour)
	again := h.run(t, look{})
	press(again, "enter")
	require.Equal(t, "resume", where(again))
	require.Contains(t, again.View(), "3 h ago you left a job half answered:")
	require.Contains(t, again.View(), "75F")
	press(again, "1")
	require.Equal(t, question.Humidity.Name, where(again))
	require.Equal(t, "4", fieldText(again), "typed and not taken")
	require.Equal(t, r.s.answers, again.s.answers)
	press(again, "5", "enter", "up", "up")
	require.Equal(t, question.Temp.Name, where(again))
	require.Contains(t, again.View(), "entered 3 h ago")
}

func TestWhatWasEmptiedStaysEmpty(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	typed(r, "enter", "8", "2", "75F", "enter", "up", "ctrl+u")
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, question.Temp.Name, where(again))
	require.Empty(t, fieldText(again))
}

func TestAnAnsweredJobComesBackAtItsAnswer(t *testing.T) {
	looks := []look{{metric: true}}
	for _, lang := range words.Languages() {
		looks = append(looks, look{lang: lang})
	}
	for _, l := range looks {
		h := newShelf(t)
		r := h.run(t, l)
		typed(r, toSupply...)
		require.Equal(t, "bench", where(r))
		h.now = testDay.Add(50 * time.Hour)
		again := h.run(t, look{lang: l.lang, metric: !l.metric})
		press(again, "enter")
		require.Equal(t, "resume", where(again))
		press(again, "1")
		require.Equal(t, "bench", where(again))
		require.True(t, again.result().Plan.Request.Day.Assumed, "the day is another")
		press(again, "=")
		require.Equal(t, r.result(), again.result(), "units too")

		again = h.run(t, l)
		press(again, "enter", "3")
		require.Equal(t, question.Coat.Name, where(again), "question by question")
		for range len(r.s.steps) {
			if where(again) != "bench" {
				press(again, "enter")
			}
		}
		press(again, "=")
		require.Equal(t, r.result(), again.result(), "the same answers all the way")
	}
}

// Looking at an old answer does not make its readings new.
func TestTheAgeIsThatOfTheReadings(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	h.now = testDay.Add(72 * time.Hour)
	r := h.run(t, look{})
	typed(r, "enter")
	require.Contains(t, r.View(), "3 days ago you answered:")
	typed(r, "1", "2", "1")

	h.now = testDay.Add(73 * time.Hour)
	r = h.run(t, look{})
	typed(r, "enter")
	require.Contains(t, r.View(), "3 days ago you answered:", "it was only looked at")
	typed(r, "3", "enter", "enter")
	require.Equal(t, question.Temp.Name, where(r))
	require.Equal(t, 2, strings.Count(r.View(), "entered 3 days ago"))
	typed(r, "80F", "enter", "50", "enter", "up")
	require.NotContains(t, r.View(), "entered", "it was entered now")
	typed(r, "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, "bench", where(r))

	h.now = testDay.Add(75 * time.Hour)
	r = h.run(t, look{})
	typed(r, "enter")
	require.Contains(t, r.View(), "2 h ago you answered:")
	typed(r, "3", "enter")
	require.Contains(t, r.View(), "entered 2 h ago", "Enter takes an answer anew")
}

func TestAgesInWords(t *testing.T) {
	for age, want := range map[time.Duration][2]string{
		-time.Hour:                      {"a moment", "un momento"},
		0:                               {"a moment", "un momento"},
		119 * time.Second:               {"2 min", "2 min"},
		5 * time.Minute:                 {"5 min", "5 min"},
		59*time.Minute + time.Second*40: {"60 min", "60 min"},
		61 * time.Minute:                {"60 min", "60 min"},
		100 * time.Minute:               {"2 h", "2 h"},
		23*time.Hour + time.Minute*40:   {"24 h", "24 h"},
		30 * time.Hour:                  {"30 h", "30 h"},
		50 * time.Hour:                  {"2 days", "2 días"},
		400 * 24 * time.Hour:            {"400 days", "400 días"},
	} {
		for i, lang := range []string{"en", "es"} {
			s := start(t, look{lang: lang}).s
			require.Equal(t, want[i], s.since(testDay.Add(-age)), age)
		}
	}
}

func TestACleanStartForgets(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	r := h.run(t, look{})
	typed(r, "enter", "4")
	require.Equal(t, question.Coat.Name, where(r))
	require.True(t, r.s.answers.Empty())
	again := h.run(t, look{})
	press(again, "enter")
	require.Equal(t, question.Coat.Name, where(again), "nothing is offered")
}

func TestLeavingBeforeTheOfferIsTakenKeepsIt(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	for _, keys := range [][]string{{"q"}, {"enter", "q"}, {"ctrl+c"}, {"enter", "ctrl+c"}} {
		typed(h.run(t, look{}), keys...)
		r := h.run(t, look{})
		press(r, "enter")
		require.Equal(t, "resume", where(r), keys)
	}
}

// What was typed on a page comes back with it, in the units it was typed in.
func TestThePagesComeBack(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{metric: true})
	typed(r, toAnswer...)
	typed(r, pageKey(question.Thin), "up", "din4", "enter", "22", "enter", "30", "enter", "enter")
	require.Equal(t, question.SheetSeconds.Name, boxAt(r))
	typed(r, "1", "6", "-", "1", "8")
	require.Equal(t, unit.Metric, formOf(r).read)

	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, "thin", where(again), "the page was open")
	require.Equal(t, formOf(r).own(), formOf(again).own())
	press(r, "pgdown")
	require.Equal(t, r.View(), again.View())
	require.Contains(t, answerText(again), "paint at 30.0 C")

	// Units changed behind the text do not change what it means.
	press(again, "u")
	again.s.keep.flush(again.draft()) //nolint:errcheck // the next line reads it
	third := h.run(t, look{metric: true})
	press(third, "enter", "1")
	require.Equal(t, unit.US, third.s.sys)
	require.Contains(t, answerText(third), "paint at 86 F")
}

// What the program before this one kept comes back whole: the answer and every page of it.
func TestAFileOfAnEarlierProgramComesBack(t *testing.T) {
	kept, err := os.ReadFile(filepath.Join("..", "presets", "last", "testdata", "format1.json"))
	require.NoError(t, err)
	h := newShelf(t)
	require.NoError(t, os.MkdirAll(filepath.Dir(h.file), 0o700))
	require.NoError(t, os.WriteFile(h.file, kept, 0o600))
	r := h.run(t, look{})
	press(r, "enter", "1")
	require.Equal(t, "thin", where(r))
	require.Equal(t, unit.Metric, r.s.sys)
	require.Equal(t, question.Texts{"cup": {"din4"}, "seconds": {"22"}, "paint": {"30"}, "sheet-seconds": {"16-18"}}, formOf(r).own())
	require.Contains(t, answerText(r), "paint at 30.0 C")
	press(r, "esc", pageKey(question.Mix))
	require.Equal(t, question.Texts{"area": {"hood + 2 door"}}, formOf(r).own())
	require.NoError(t, formOf(r).err)
	press(r, "esc")
	got := r.result().Plan
	require.NotNil(t, got)
	require.Equal(t, calc.Wall, got.Request.RegulatorAt())
	require.InDelta(t, 70, got.Request.Now.PSI(), 1e-6)
	require.InDelta(t, 95, got.Request.Shop.ReceiverTemp.F(), 1e-6)
	require.InDelta(t, 12, got.Request.Shop.System.Rated.SCFM(), 1e-6)
	require.InDelta(t, 0.5, got.Request.Shop.System.Others[0].Duty, 1e-9)
	var hoses []float64
	for _, p := range got.Request.Line {
		if p.Kind == line.HoseKind {
			hoses = append(hoses, float64(p.Hose.Length))
		}
	}
	require.Equal(t, []float64{8, 2}, hoses)
	before := r.result()

	typed(r, "u", "u") // it is written anew
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, before, again.result())
}

// Two terminals at it at once: each keeps its own job, and at the next start either can be
// gone on with.
func TestEachTerminalKeepsItsOwnJob(t *testing.T) {
	h := newShelf(t)
	first, second := h.run(t, look{}), h.run(t, look{})
	press(first, "enter")
	press(second, "enter")
	typed(first, "8", "2", "75F", "enter")
	typed(second, "8", "1", "68F", "enter")
	h.now = testDay.Add(time.Minute)
	typed(first, "45", "enter")

	again := h.run(t, look{})
	press(again, "enter")
	require.Equal(t, "resume", where(again))
	require.Contains(t, again.View(), "75F", "what was kept last")
	require.NotContains(t, again.View(), "68F")
	press(again, "4")
	require.Equal(t, "resume", where(again))
	require.Contains(t, again.View(), "68F")
	press(again, "4")
	require.Contains(t, again.View(), "75F", "round to the first")
	press(again, "4")
	typed(again, "enter")
	require.Equal(t, question.Humidity.Name, where(again), "where the second was left")
	typed(again, "50", "enter")

	drafts, err := last.LoadAll(h.file)
	require.NoError(t, err)
	require.Len(t, drafts, 2, "it took the second's place")
	require.Equal(t, []string{"68F"}, drafts[0].Answers[question.Temp.Name])
	require.Equal(t, []string{"75F"}, drafts[1].Answers[question.Temp.Name])

	alone := newShelf(t)
	only := alone.run(t, look{})
	typed(only, "enter", "8", "2")
	only = alone.run(t, look{})
	press(only, "enter")
	require.NotContains(t, only.View(), only.s.say("resume-other"), "there is no other")
}
