package tui

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/practice"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// inventedSources is the invented shop as jobs are drawn from it, in each language, made once.
var inventedSources = struct {
	sync.Mutex
	known map[string]*practice.Source
}{known: map[string]*practice.Source{}}

func inventedSource(t test, w *words.Words) *practice.Source {
	t.Helper()
	inventedSources.Lock()
	defer inventedSources.Unlock()
	s := inventedSources.known[w.Lang()]
	if s == nil {
		var err error
		s, err = practice.Invented(w)
		require.NoError(t, err)
		inventedSources.known[w.Lang()] = s
	}
	return s
}

// practising makes an assistant one that practises, with a seed and nothing kept.
func practising(t test, r *root, seed uint64) {
	t.Helper()
	r.s.atOnce = true
	r.practise(&Practice{Deck: practice.NewDeck(inventedSource(t, r.s.words), r.s.sys, seed, practice.NewRecord()), Seed: seed})
}

// The solver's own settings, typed as they are shown, are right on any job.
func TestTheAnswerTypedIsRight(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		right := 0
		for seed := uint64(1); seed <= 12; seed++ {
			d := practice.NewDeck(inventedSource(t, words.English()), sys, seed, practice.NewRecord())
			j := d.Job()
			r := start(t, look{metric: sys == unit.Metric})
			practising(t, r, seed)
			press(r, "enter", "enter")
			for range j.Setup.Verdict {
				press(r, "right")
			}
			if practice.Sprays(j.Setup.Verdict) {
				set := j.Setup.Set()
				for _, of := range j.Asks() {
					text := unit.Pressure.Text(sys, float64(set.Wall), unit.Pressure.Fine(sys))
					switch of {
					case practice.Distance:
						text = unit.Distance.Text(sys, float64(set.Distance), unit.Usual)
					case practice.Opening:
						text = strconv.Itoa(int(set.Opening*100+0.5)) + "%"
					}
					press(r, "down", text)
				}
				right++
			}
			press(r, "enter")
			require.Equal(t, "judged-title", where(r), "seed %d", seed)
			require.Contains(t, r.View(), r.s.say("judged-right"), "seed %d", seed)
			require.NotContains(t, r.View(), r.s.say("judged-idea"))
		}
		require.Positive(t, right)
	}
}

// Taking the fewest readings and naming the cause finds it, and says so.
func TestTheFewestReadingsFindIt(t *testing.T) {
	for seed := uint64(1); seed <= 6; seed++ {
		f := practice.NewDeck(inventedSource(t, words.English()), unit.US, seed, practice.NewRecord()).Find()
		r := open80x24(t)
		practising(t, r, seed)
		press(r, "enter", "2")
		require.Equal(t, "find", where(r))
		for _, reading := range f.Fewest {
			p := r.page().(*pickPage)
			p.list.point(strconv.Itoa(slices.Index(f.Readings, reading)))
			press(r, "enter")
			require.Equal(t, "find", where(r))
		}
		press(r, "w")
		r.page().(*pickPage).list.point(strconv.Itoa(slices.Index(f.Causes, f.Cause)))
		press(r, "enter")
		require.Equal(t, "found-title", where(r))
		require.Contains(t, r.View(), "RIGHT. It was:")
		press(r, "esc")
		require.Contains(t, r.View(), "1 of 1 badly set booth found out so far.")
	}
}

// What was begun and left is gone on with, and what was typed in it stands.
func TestWhatWasBegunIsGoneOnWith(t *testing.T) {
	r := open80x24(t)
	practising(t, r, 7)
	press(r, "enter", "enter", "down", "31psi", "esc", "2", "1")
	require.Equal(t, "find", where(r))
	readings := len(r.page().(*pickPage).list.items)
	press(r, "esc", "1")
	require.Equal(t, "guess", where(r))
	require.Equal(t, "31psi", r.page().(*entryPage).text(guessWall))
	press(r, "esc", "2")
	require.Len(t, r.page().(*pickPage).list.items, readings)
}

// What was missed is kept under initials, and is there the next time; what cannot be kept is told.
func TestWhatWasMissedIsKept(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "practice-ab.json")
	miss := func() *root {
		of, err := practice.Load(file)
		require.NoError(t, err)
		r := open80x24(t)
		r.s.atOnce = true
		r.practise(&Practice{Deck: practice.NewDeck(inventedSource(t, words.English()), unit.US, 7, of), Seed: 7, Kept: file})
		press(r, missedJob...)
		require.Equal(t, "judged-title", where(r))
		press(r, "esc")
		return r
	}
	require.Contains(t, miss().View(), "0 of 1 job right so far.")
	require.Contains(t, miss().View(), "0 of 2 jobs right so far.")
	require.NoError(t, os.WriteFile(file, []byte(`{"format": "boothset.practice/9"}`), 0o600))
	r := open80x24(t)
	r.s.atOnce = true
	r.practise(&Practice{Deck: practice.NewDeck(inventedSource(t, words.English()), unit.US, 7, practice.NewRecord()), Seed: 7, Kept: file})
	press(r, missedJob...)
	press(r, "esc")
	require.Contains(t, strings.Join(strings.Fields(r.View()), " "), "another version of this program: it stays as it is")
}

// In lines of text: a job, a booth, the way back and the way out; an input that ends once
// something was said is no fault.
func TestPracticeInLines(t *testing.T) {
	run := func(l look, lines ...string) string {
		var out bytes.Buffer
		o := l.options(t)
		o.In, o.Out = strings.NewReader(strings.Join(lines, "\n")+"\n"), &out
		o.Practice = &Practice{Deck: practice.NewDeck(inventedSource(t, o.Words), o.System, 7, practice.NewRecord()), Seed: 7}
		_, err := Plain(o)
		require.NoError(t, err, out.String())
		return out.String()
	}
	said := run(look{}, "1", "1", "26psi", "0", "7in", "2", "2", "2", "1", "<", "3")
	require.Contains(t, said, "WALL yours 26 psi, the answer 42 psi")
	require.Contains(t, said, "THE IDEA")
	require.Contains(t, said, "0 of 1 job right so far.")
	require.Contains(t, said, "1 reading, 15 s so far.")
	mended := run(look{}, "1", "1", "26 lux", "0", "7in", "26psi", "0", "7in", "3")
	require.Equal(t, 1, strings.Count(mended, "verdict: "), "what will not do is asked again, and no more than that and what follows")
	require.Contains(t, mended, "WALL yours 26 psi")
	ended := run(look{}, "1", "4")
	require.Contains(t, ended, "yours STOP", "of what is not sprayed nothing is asked")
	spanish := run(look{lang: "es", metric: true}, "1", "3", "3")
	require.Contains(t, spanish, "el suyo ESPERE")
	require.NotContains(t, spanish, "{")
}

// At any window and after any keys a frame of practice fits it, has no figure that is none, and
// drawing it changes nothing.
func TestAnyKeysInPractice(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		r := start(t, l)
		practising(t, r, rapid.Uint64Range(1, 20).Draw(t, "seed"))
		press(r, rapid.SampledFrom([][]string{{"enter"}, missedJob, {"enter", "2"}, {"enter", "2", "1", "w", "1"}}).Draw(t, "start")...)
		for _, m := range rapid.SliceOfN(anyKey(), 1, 20).Draw(t, "keys") {
			r.Update(m)
			requireWhole(t, r)
			if r.done {
				return
			}
		}
	})
}
