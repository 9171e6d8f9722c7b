package tui

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/last"

	tea "github.com/charmbracelet/bubbletea"
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
	require.Equal(t, presets.FieldCoat, where(r), "nothing is offered yet")
	typed(r, "8", "2", "75F", "enter", "4")
	require.Equal(t, presets.FieldHumidity, where(r))

	h.now = testDay.Add(3 * time.Hour)
	again := h.run(t, look{})
	press(again, "enter")
	require.Equal(t, "resume", where(again))
	require.Contains(t, again.View(), "3 h ago you left a job half answered:")
	require.Contains(t, again.View(), "75F")
	press(again, "1")
	require.Equal(t, presets.FieldHumidity, where(again))
	require.Equal(t, "4", again.page().(*question).field.String(), "typed and not taken")
	require.Equal(t, r.s.answers, again.s.answers)
	press(again, "5", "enter", "esc", "esc")
	require.Equal(t, presets.FieldTemp, where(again))
	require.Contains(t, again.View(), "entered 3 h ago")
}

func TestWhatWasEmptiedStaysEmpty(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	typed(r, "enter", "8", "2", "75F", "enter", "esc", "ctrl+u")
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, presets.FieldTemp, where(again))
	require.Empty(t, again.page().(*question).field.String())
}

func TestAnAnsweredJobComesBackAtItsAnswer(t *testing.T) {
	for _, l := range []look{{}, {metric: true}, {lang: "es"}} {
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
		require.Equal(t, r.result(), again.result(), "units too")

		again = h.run(t, l)
		press(again, "enter", "2")
		require.Equal(t, presets.FieldCoat, where(again), "question by question")
		for range len(steps) {
			if where(again) != "bench" {
				press(again, "enter")
			}
		}
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
	typed(r, "2", "enter", "enter")
	require.Equal(t, presets.FieldTemp, where(r))
	typed(r, "ctrl+u", "80F", "enter", "ctrl+u", "50", "enter", "esc")
	require.NotContains(t, r.View(), "entered", "it was entered now")
	typed(r, "enter", "enter", "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, "bench", where(r))

	h.now = testDay.Add(75 * time.Hour)
	r = h.run(t, look{})
	typed(r, "enter")
	require.Contains(t, r.View(), "2 h ago you answered:")
	typed(r, "2", "enter")
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
	typed(r, "enter", "3")
	require.Equal(t, presets.FieldCoat, where(r))
	require.Equal(t, presets.Answers{}, r.s.answers)
	again := h.run(t, look{})
	press(again, "enter")
	require.Equal(t, presets.FieldCoat, where(again), "nothing is offered")
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
	typed(r, "7", "3", "enter", "enter", "5", "enter")
	require.Equal(t, "note-1", boxAt(r))
	typed(r, "m", "i", "n", "e")
	require.Equal(t, unit.Metric, formOf(r).read)

	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, "wait", where(again), "the page was open")
	require.Equal(t, r.bench.forms[0].typed(), again.bench.forms[0].typed())
	press(r, "pgdown")
	require.Equal(t, r.View(), again.View())
	require.Contains(t, formOf(again).answer.text(200), "5.0 mm between them")

	// Units changed behind the text do not change what it means.
	press(again, "u")
	again.s.keep.flush(again.draft()) //nolint:errcheck // the next line reads it
	third := h.run(t, look{metric: true})
	press(third, "enter", "1")
	require.Equal(t, unit.US, third.s.sys)
	require.Contains(t, formOf(third).answer.text(200), "0.2 in between them")
}

func TestAFileThatWillNotDoIsToldAndTheProgramGoesOn(t *testing.T) {
	for name, c := range map[string]struct{ content, id string }{
		"empty":   {"", last.Broken},
		"torn":    {`{"format":1,"answers":{"coat":"cl`, last.Broken},
		"foreign": {`{"format":99}`, last.Foreign},
		"no JSON": {"\x00\x01\xff", last.Broken},
		"huge":    {strings.Repeat("x", 1<<20), last.TooLarge},
	} {
		for _, lang := range []string{"en", "es"} {
			h := newShelf(t)
			require.NoError(t, os.MkdirAll(filepath.Dir(h.file), 0o700))
			require.NoError(t, os.WriteFile(h.file, []byte(c.content), 0o600))
			r := h.run(t, look{lang: lang, size: size{200, 60}})
			_, _, err := last.Load(h.file)
			var wrong *last.Error
			require.ErrorAs(t, err, &wrong, name)
			require.Equal(t, c.id, wrong.ID, name)
			require.Contains(t, strings.Join(strings.Fields(r.View()), " "), r.s.text(wrong.ID, wrong.Figures())[:60], name)
			typed(r, toAnswer...)
			require.Equal(t, "bench", where(r), name)
			again := h.run(t, look{})
			press(again, "enter")
			require.Equal(t, "resume", where(again), "%s: it was replaced", name)
		}
	}
}

func TestAFileThatCannotBeWrittenIsToldAtTheEnd(t *testing.T) {
	// A file stands where the folder should be.
	dir := filepath.Join(t.TempDir(), "state")
	require.NoError(t, os.WriteFile(dir, nil, 0o600))
	h := &shelf{filepath.Join(dir, "boothset", "last.json"), testDay}
	r := h.run(t, look{})
	typed(r, toAnswer...)
	require.Equal(t, "bench", where(r))
	var wrong *last.Error
	require.ErrorAs(t, r.s.keep.flush(r.draft()), &wrong)
	require.Equal(t, last.Unwritable, wrong.ID)

	o := look{}.options(t)
	var out strings.Builder
	o.In, o.Out, o.Kept = strings.NewReader(lines(append(linesToAnswer[:10:10], "")...)), &out, h.file
	left, err := Plain(o)
	require.NoError(t, err)
	require.True(t, left.Answered)
	require.ErrorAs(t, left.Unkept, &wrong)
}

// A coat of a shop's file that is gone is asked for again; the rest comes back.
func TestWhatTheCatalogueNoLongerKnowsIsAskedAgain(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	d, _, err := last.Load(h.file)
	require.NoError(t, err)
	d.Answers.Coat, d.At = "gone", "nowhere"
	require.NoError(t, last.Save(h.file, d))
	r := h.run(t, look{})
	press(r, "enter", "1")
	require.Equal(t, presets.FieldCoat, where(r))
	press(r, "8", "enter")
	require.Equal(t, presets.FieldTemp, where(r))
	require.Equal(t, "75F", r.page().(*question).field.String())
}

// Two programs at once each leave the file whole: the last to write is offered.
func TestTwoProgramsAtOnce(t *testing.T) {
	h := newShelf(t)
	one, two := h.run(t, look{}), h.run(t, look{metric: true})
	typed(one, "enter")
	typed(two, "enter")
	for i := range max(len(toAnswer), len(toSupply)) - 1 {
		if i+1 < len(toAnswer) {
			typed(one, toAnswer[i+1])
		}
		typed(two, toSupply[i+1])
	}
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, two.result(), again.result())
	typed(one, "2") // a key that changes nothing writes nothing
	typed(one, "u")
	again = h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, one.result(), again.result())
}

// A key never waits for the disk, and of the drafts asked for meanwhile the latest is
// written.
func TestKeysDoNotWaitForTheDisk(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	press(r, "enter")
	entered, free := make(chan struct{}), make(chan struct{})
	first := true
	r.s.keep.now = func() time.Time { // called while it writes, one at a time
		if first {
			first = false
			close(entered)
			<-free
		}
		return h.now
	}
	_, write := r.Update(keyOf("8"))
	require.NotNil(t, write)
	done := make(chan struct{})
	go func() { write(); close(done) }()
	<-entered
	var late []tea.Cmd
	for _, k := range []string{"2", "75F"} { // would hang here
		_, cmd := r.Update(keyOf(k))
		late = append(late, cmd)
	}
	close(free)
	<-done
	for _, cmd := range late {
		cmd()
	}
	d, found, err := last.Load(h.file)
	require.NoError(t, err)
	require.True(t, found)
	require.Equal(t, presets.Typed("clear"), d.Answers.Coat)
	require.Equal(t, presets.FieldTemp, d.At)
	require.Equal(t, "75F", d.Typed)
}

func TestNothingIsKeptWithoutAFile(t *testing.T) {
	r := start(t, look{})
	r.keepIn("")
	for _, k := range toAnswer {
		_, cmd := r.Update(keyOf(k))
		require.Nil(t, cmd)
	}
	require.NoError(t, r.s.keep.flush(r.draft()))
}

func TestTheFileIsTheOwnersAlone(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("it has no such modes")
	}
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	info, err := os.Stat(h.file)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o600), info.Mode().Perm())
}

// Plain offers and keeps as the screen does.
func TestPlainOffersTheLastAnswers(t *testing.T) {
	h := newShelf(t)
	r := h.run(t, look{})
	typed(r, toAnswer...)
	o := look{}.options(t)
	var out strings.Builder
	o.In, o.Out, o.Kept = strings.NewReader(lines("", "")), &out, h.file
	left, err := Plain(o)
	require.NoError(t, err)
	require.Equal(t, r.result(), left)
	require.Contains(t, out.String(), "ago you answered:")
	require.Contains(t, out.String(), "Left empty: 1 go on where it was left")

	o.In = strings.NewReader(lines("3", "7", "1", "70F"))
	_, err = Plain(o)
	require.Error(t, err)
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, presets.FieldHumidity, where(again), "where the input ended")
	require.Equal(t, presets.Typed("single-stage"), again.s.answers.Coat)
}
