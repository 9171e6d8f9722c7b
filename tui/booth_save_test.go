package tui

import (
	"os"
	"path/filepath"
	"testing"

	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// The first booth of a shop is described by a job that was answered: its line is kept under a
// name, and the job is then in it.
func TestTheLineOfAnAnswerIsKeptAsABooth(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "shop")
	r := start(t, look{folder: dir})
	press(r, toAnswer...)
	before := r.result().Plan
	press(r, "b")
	require.Equal(t, "save", where(r))
	done(r, "enter")
	require.Contains(t, r.View(), "give it a name")
	press(r, "Bay 4, north")
	require.Contains(t, r.View(), "bay-4-north")
	done(r, "enter")
	require.Equal(t, "bench", where(r))
	require.Contains(t, r.View(), "Bay 4, north is kept")
	require.Equal(t, "bay-4-north", r.s.desk.booth.ID)
	require.Contains(t, r.bench.tabs(200, r.bench.looksAt), "a agreed", "it can be agreed on there")

	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	b, faults := f.Booth(r.s.desk.base, "bay-4-north")
	require.Empty(t, faults)
	require.Equal(t, "Bay 4, north", b.Name)

	again := start(t, look{folder: dir})
	press(again, "enter", "1", "8", "2", "75F", "enter", "45", "enter", "enter", "enter", "enter")
	require.Equal(t, "bench", where(again))
	require.Equal(t, before.Setup.Wall, again.result().Plan.Setup.Wall, "the same line gives the same")
	require.Equal(t, len(before.Request.Line), len(again.result().Plan.Request.Line))
}

// In a booth the line as it was changed for the job goes into that booth's file; all else in it
// stays as a person wrote it.
func TestAChangedLineIsKeptInItsBooth(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, then(deskAnswer[:9], "95psi", "enter")...)
	require.Equal(t, stepLine, where(r))
	press(r, "3") // part by part
	require.Equal(t, "parts", where(r))
	press(r, "down", "2", "enter", "enter", "enter", "enter")
	for range 3 {
		if where(r) != "bench" {
			press(r, "enter")
		}
	}
	require.Len(t, r.result().Plan.Request.Line, 4, "without the filter")
	press(r, "b")
	require.Equal(t, "save", where(r))
	done(r, "enter")
	data, err := os.ReadFile(filepath.Join(dir, "booths", "two.toml"))
	require.NoError(t, err)
	require.Contains(t, string(data), "# A booth of an invented shop")
	require.Contains(t, string(data), "filter-changed = 2025-01-20")
	require.Contains(t, string(data), "supply = '95psi'")
	require.NotContains(t, string(data), "point-of-use")
	require.Equal(t, "two", r.s.desk.booth.ID)

	press(r, "b", "down", "ctrl+u", "one")
	done(r, "enter")
	require.Equal(t, "save", where(r))
	require.Contains(t, r.View(), "there is a booth one already")
	press(r, "ctrl+u", "old")
	done(r, "enter")
	require.Contains(t, r.View(), "there is a booth old already", "one that is no longer offered too")
}

func TestIDsOfNames(t *testing.T) {
	for name, want := range map[string]string{
		"Booth two": "booth-two", "Bay 4, north": "bay-4-north", "  ": "", "Cabina Ñandú": "cabina-and", "!!": "",
		"a name that is far longer than any file of the shop's folder may be called": "a-name-that-is-far-longer-than-any-file",
	} {
		require.Equal(t, want, idOf(name), name)
	}
}
