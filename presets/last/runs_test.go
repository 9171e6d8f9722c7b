package last_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"boothset/presets/last"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var morning = time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC)

// run is a draft of a run, saved some time after another.
func run(name string, after time.Duration) last.Draft {
	return last.Draft{Run: name, Saved: morning.Add(after), At: "gun", Units: "us", Answers: last.Texts{"coat": {name}}}
}

// names is the runs that a file holds, the one saved last first.
func names(t require.TestingT, file string) (all []string) {
	drafts, err := last.LoadAll(file)
	require.NoError(t, err)
	for _, d := range drafts {
		all = append(all, d.Run)
	}
	return all
}

// Two terminals at it at once keep each its own job, and the one saved last is offered.
func TestTwoRunsKeepEachItsOwn(t *testing.T) {
	file := filepath.Join(t.TempDir(), "boothset", "last.json")
	for i := range 3 {
		require.NoError(t, last.Save(file, run("clear", time.Duration(2*i)*time.Minute)))
		require.NoError(t, last.Save(file, run("base", time.Duration(2*i+1)*time.Minute)))
	}
	assert.Equal(t, []string{"base", "clear"}, names(t, file))
	d, found, err := last.Load(file)
	require.NoError(t, err)
	assert.True(t, found)
	assert.Equal(t, run("base", 5*time.Minute), d)
	all, err := last.LoadAll(file)
	require.NoError(t, err)
	assert.Equal(t, run("clear", 4*time.Minute), all[1], "whole")
}

// Runs that were left with nothing answered take the place of none that was not.
func TestRunsWithoutAnAnswerPushOutNone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "last.json")
	require.NoError(t, last.Save(file, run("clear", 0)))
	for i := range 20 {
		require.NoError(t, last.Save(file, last.Draft{Run: fmt.Sprint(i), Saved: morning.Add(time.Duration(i+1) * time.Minute)}))
	}
	assert.Equal(t, []string{"19", "clear"}, names(t, file))
}

// A run that goes on from a kept one takes its place. Of the others those of the day are kept,
// the latest few.
func TestWhatOfOtherRunsIsKept(t *testing.T) {
	file := filepath.Join(t.TempDir(), "last.json")
	unnamed := run("clear", 0)
	unnamed.Run = ""
	require.NoError(t, last.Save(file, unnamed))
	require.NoError(t, last.Save(file, run("a", time.Hour)))
	assert.Equal(t, []string{"a", ""}, names(t, file), "one of a program that names no runs")
	on := run("b", 2*time.Hour)
	on.From = "a"
	require.NoError(t, last.Save(file, on))
	assert.Equal(t, []string{"b", ""}, names(t, file))
	require.NoError(t, last.Save(file, run("c", 25*time.Hour)))
	assert.Equal(t, []string{"c", "b"}, names(t, file), "a day later the first is gone")
	for i := range 20 {
		require.NoError(t, last.Save(file, run(fmt.Sprint(i), 25*time.Hour+time.Duration(i)*time.Second)))
	}
	assert.Equal(t, []string{"19", "18", "17", "16", "15", "14", "13", "12"}, names(t, file))
}

// Where all of them are too large together the oldest are left out, never the last.
func TestTheFileHasRoomForTheLast(t *testing.T) {
	file := filepath.Join(t.TempDir(), "last.json")
	large := func(name string, after time.Duration) last.Draft {
		d := run(name, after)
		d.Sheets = map[string]last.Texts{}
		for i := range 10 {
			d.Sheets[fmt.Sprint(i)] = last.Texts{}
			for j := range 10 {
				d.Sheets[fmt.Sprint(i)][fmt.Sprint(j)] = []string{strings.Repeat("界", 200)}
			}
		}
		return d
	}
	for i := range 8 {
		require.NoError(t, last.Save(file, large(fmt.Sprint(i), time.Duration(i)*time.Minute)))
	}
	assert.Equal(t, []string{"7", "6", "5", "4"}, names(t, file))
}

// Programs that save at the same time lose nothing of each other's.
func TestRunsThatSaveAtOnceAllStay(t *testing.T) {
	file := filepath.Join(t.TempDir(), "boothset", "last.json")
	var all sync.WaitGroup
	for w := range 6 {
		all.Go(func() {
			for i := range 15 {
				assert.NoError(t, last.Save(file, run(fmt.Sprint(w), time.Duration(i)*time.Second)))
			}
		})
	}
	all.Wait()
	assert.ElementsMatch(t, []string{"0", "1", "2", "3", "4", "5"}, names(t, file))
}

// What is no file of answers, or of a later program, is set aside whole, each time anew.
func TestWhatCannotBeReadIsSetAside(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "last.json")
	contents := []string{`{"format": 2, "answers": ["of a later program"]}`, `{"format": 1, "answers": {"coat": "cl`, "", strings.Repeat("x", 1<<19), "\x00\xff"}
	for i, text := range contents {
		require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
		require.NoError(t, last.Save(file, run("mine", 0)))
		assert.Equal(t, []string{"mine"}, names(t, file))
		for n, was := range contents[:i+1] {
			aside, err := os.ReadFile(filepath.Join(dir, fmt.Sprintf("last-aside-%d.json", n+1)))
			require.NoError(t, err)
			assert.Equal(t, was, string(aside))
		}
	}
}

// Nothing is set aside for answers that cannot be written themselves.
func TestNothingIsSetAsideForNothing(t *testing.T) {
	file := write(t, `{"format": 2}`)
	isError(t, last.Save(file, last.Draft{Saved: time.Date(12345, 1, 1, 0, 0, 0, 0, time.UTC)}), file, last.Unwritable)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, `{"format": 2}`, string(text))
}

// Whatever runs save in whatever order, the last is first, no run is there twice, and one that
// nothing took the place of stays as it was saved.
func TestRunsInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dir, err := os.MkdirTemp("", "last")
		require.NoError(t, err)
		defer os.RemoveAll(dir)
		file := filepath.Join(dir, "last.json")
		stands := map[string]last.Draft{}
		for i := range rapid.IntRange(1, 12).Draw(t, "saves") {
			d := run(rapid.SampledFrom([]string{"a", "b", "c", "d"}).Draw(t, "run"), time.Duration(i)*time.Minute)
			d.From = rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "from")
			if d.From != "" {
				delete(stands, d.From)
			}
			stands[d.Run] = d
			require.NoError(t, last.Save(file, d))
			all, err := last.LoadAll(file)
			require.NoError(t, err)
			require.Equal(t, d, all[0])
			require.Len(t, all, len(stands))
			for _, one := range all {
				require.Equal(t, stands[one.Run], one)
			}
		}
	})
}
