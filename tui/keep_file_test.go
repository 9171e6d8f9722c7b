package tui

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"boothset/presets/catalogue"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

func TestAFileThatWillNotDoIsToldAndTheProgramGoesOn(t *testing.T) {
	for name, c := range map[string]struct{ content, id string }{
		"empty":   {"", last.Broken},
		"torn":    {`{"format":1,"answers":{"coat":"cl`, last.Broken},
		"foreign": {`{"format":99}`, last.Foreign},
		"no JSON": {"\x00\x01\xff", last.Broken},
		"huge":    {strings.Repeat("x", 1<<20), last.TooLarge},
	} {
		for _, lang := range words.Languages() {
			h := newShelf(t)
			require.NoError(t, os.MkdirAll(filepath.Dir(h.file), 0o700))
			require.NoError(t, os.WriteFile(h.file, []byte(c.content), 0o600))
			r := h.run(t, look{lang: lang, size: size{200, 60}})
			_, _, err := last.Load(h.file)
			var wrong *last.Error
			require.ErrorAs(t, err, &wrong, name)
			require.Equal(t, c.id, wrong.ID, name)
			require.Contains(t, strings.Join(strings.Fields(r.View()), " "), r.s.text(wrong.ID, wrong.Figures()...)[:60], name)
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
	require.NotNil(t, left.Plan)
	require.ErrorAs(t, left.Unkept, &wrong)
}

// A coat of a shop's file that is gone is asked for again, on a page too; the rest comes back.
func TestWhatTheCatalogueNoLongerKnowsIsAskedAgain(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	d, _, err := last.Load(h.file)
	require.NoError(t, err)
	d.Answers["coat"], d.Answers["panel"], d.At = []string{"gone"}, []string{"900C"}, "nowhere"
	d.Answers["wind"] = []string{"none"}
	d.Sheets = map[string]last.Texts{"day": {"coat": {"gone"}, "paint": {"20C"}}, "mix": {"area": {"two"}}}
	require.NoError(t, last.Save(h.file, d))
	r := h.run(t, look{})
	press(r, "enter", "1")
	require.Equal(t, question.Coat.Name, where(r))
	require.False(t, r.s.answers.Has(question.Panel))
	require.Equal(t, question.Texts{"paint": {"20C"}}, r.bench.forms[0].own())
	require.Equal(t, question.Texts{"area": {"two"}}, r.bench.forms[3].own(), "what was half typed stays")
	press(r, "8", "enter")
	require.Equal(t, question.Temp.Name, where(r))
	require.Equal(t, "75F", fieldText(r))
}

// A bare number is of the units that the run was in, and keeps its meaning in others.
func TestKeptNumbersAreOfTheirUnits(t *testing.T) {
	for units, want := range map[string]float64{catalogue.UnitsUS: 90, catalogue.UnitsMetric: 6 * 14.503773773} {
		number := map[string]string{catalogue.UnitsUS: "90", catalogue.UnitsMetric: "6"}[units]
		h := newShelf(t)
		typed(h.run(t, look{}), toAnswer...)
		d, _, err := last.Load(h.file)
		require.NoError(t, err)
		d.Units, d.Answers["supply"] = units, []string{number}
		require.NoError(t, last.Save(h.file, d))
		r := h.run(t, look{})
		press(r, "enter", "1", "u")
		require.InDelta(t, want, r.result().Plan.Request.Supply.PSI(), 1e-6)
	}
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
	require.Equal(t, []string{"clear"}, d.Answers["coat"])
	require.Equal(t, question.Temp.Name, d.At)
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
	o.In, o.Out, o.Kept = strings.NewReader(lines("", "=", "")), &out, h.file
	left, err := Plain(o)
	require.NoError(t, err)
	require.Equal(t, r.result(), left)
	require.Contains(t, out.String(), "ago you answered:")
	require.Contains(t, out.String(), "Left empty: 1 go on where it was left")

	o.In = strings.NewReader(lines("4", "7", "1", "70F"))
	_, err = Plain(o)
	require.Error(t, err)
	again := h.run(t, look{})
	press(again, "enter", "1")
	require.Equal(t, question.Humidity.Name, where(again), "where the input ended")
	require.Equal(t, "single-stage", again.s.answers.ID(question.Coat))
}
