package tui

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// atPage marks the field of a name on a page of fields.
func atField(t *testing.T, r *root, name string) {
	t.Helper()
	p := r.page().(*entryPage)
	p.at = slices.IndexFunc(p.all, func(b box) bool { return b.Name == name })
	require.GreaterOrEqual(t, p.at, 0, name)
}

// pick picks what a list calls by an id.
func pick(t *testing.T, r *root, id string) {
	t.Helper()
	p := r.page().(*pickPage)
	p.list.point(id)
	require.Equal(t, id, p.list.id())
	done(r, "enter")
}

// A gun is described with the checks of its file, copied, retired and offered again; all else in
// the file stays.
func TestGunsAreManaged(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	done(r, "enter", "m")
	require.Equal(t, "manage", where(r))
	pick(t, r, "gun/clear-1")
	pick(t, r, "edit")
	require.Equal(t, "entry", where(r))
	atField(t, r, "own-inlet")
	done(r, "ctrl+u", "29cfm", "enter")
	require.Equal(t, "entry", where(r))
	require.Contains(t, r.View(), "guns/clear-1.toml:", "what will not do is said, and nothing written")
	done(r, "ctrl+u", "29psi")
	atField(t, r, "own-serviced")
	done(r, "ctrl+u", "soon", "enter")
	require.Contains(t, r.View(), "a day, such as 2025-03-14")
	done(r, "ctrl+u", "2025-03-01", "enter")
	require.Equal(t, "manage", where(r))
	require.Contains(t, r.View(), "Clear 1 is kept.")
	data, err := os.ReadFile(filepath.Join(dir, "guns", "clear-1.toml"))
	require.NoError(t, err)
	require.Contains(t, string(data), "# A gun of an invented shop")
	require.Contains(t, string(data), "inlet = '29psi'")
	require.Contains(t, string(data), "serviced = 2025-03-01")
	require.Contains(t, string(data), `cap-fitted = 'R4'`)

	pick(t, r, "gun/clear-1")
	pick(t, r, "copy")
	done(r, "clear 2", "enter")
	require.Equal(t, "manage", where(r))
	require.NotNil(t, r.s.desk.gunOf("clear-2"))
	require.Equal(t, "29psi", r.s.desk.gunOf("clear-2").Says("inlet"))
	pick(t, r, "gun/clear-2")
	pick(t, r, "retire")
	require.Nil(t, r.s.desk.gunOf("clear-2"))
	require.Contains(t, r.View(), "not offered: gun: clear 2")
	pick(t, r, "gun/clear-2")
	pick(t, r, "offer")
	require.NotNil(t, r.s.desk.gunOf("clear-2"))

	pick(t, r, "gun/")
	done(r, "primer", "enter")
	require.Equal(t, "manage", where(r))
	require.NotNil(t, r.s.desk.gunOf("primer"))
	pick(t, r, "gun/")
	done(r, "primer", "enter")
	require.Contains(t, r.View(), "already")
	done(r, "esc", "esc")
	require.Equal(t, stepBooth, where(r))
	done(r, "1")
	require.Contains(t, r.View(), "primer", "it can be picked at once")
}

// A booth too; what is longer than a field stays as it is.
func TestBoothsAreManaged(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	done(r, "enter", "m")
	pick(t, r, "booth/two")
	pick(t, r, "edit")
	require.Contains(t, bodyText(r.View()), "Its line stands part by part in its file.")
	atField(t, r, "altitude")
	done(r, "ctrl+u", "1200", "enter")
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	b, faults := f.Booth(r.s.desk.base, "two")
	require.Empty(t, faults)
	require.Equal(t, "1200 ft", b.Answers.Texts()["altitude"][0], "with its unit")
	require.Len(t, b.Answers.Texts()["line"], 5, "its line is as it was")
	require.Equal(t, "2025-01-20", b.FilterChanged.Text())
	require.Equal(t, "Bay 2, north side.", b.Notes)

	pick(t, r, "booth/two")
	pick(t, r, "edit")
	atField(t, r, "supply")
	done(r, "ctrl+u", "900psi", "enter")
	require.Equal(t, "entry", where(r))
	require.NotEmpty(t, r.page().(*entryPage).fault)
	done(r, "esc")

	pick(t, r, "booth/two")
	pick(t, r, "copy")
	done(r, "Booth five", "enter")
	require.Equal(t, "manage", where(r))
	five, faults := f.Booth(r.s.desk.base, "booth-five")
	require.Empty(t, faults)
	require.Len(t, five.Answers.Texts()["line"], 5)
	pick(t, r, "booth/old")
	pick(t, r, "offer")
	require.NotNil(t, r.s.desk.boothOf("old"))
	pick(t, r, "booth/")
	done(r, "Hill", "down", "down", "enter")
	require.NotNil(t, r.s.desk.boothOf("hill"))
}

// In lines of text too.
func TestPlainManages(t *testing.T) {
	dir := shopCopy(t)
	o := look{folder: dir}.options(t)
	got := dialogueIn(t, o, lines("2", "2", "8", "75F", "45", "", "", "", "", "", "", "", "m", "gun: base 1", "3", "<", "q"))
	require.NoError(t, got.err)
	require.Contains(t, got.out, "Base-1 is kept.")
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	guns, _ := f.Guns(readerOf(t, look{}))
	require.True(t, guns[0].Retired)
}
