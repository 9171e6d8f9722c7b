package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// deskAnswer is the keys of a job in booth two of the invented shop to its answer: clear with
// gun clear 1, 75 F, 45 %, all of the line as the booth has it.
var deskAnswer = []string{"enter", "2", "2", "8", "75F", "enter", "45", "enter", "enter", "enter", "enter"}

// shopCopy is a copy of the invented shop that may be written in, without the booth that will
// not do.
func shopCopy(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(inventedShop)))
	require.NoError(t, os.Remove(filepath.Join(dir, "booths", "torn.toml")))
	return dir
}

func TestTheFirstStepPicksBoothAndGun(t *testing.T) {
	r := start(t, look{folder: inventedShop})
	press(r, "enter")
	require.Equal(t, stepBooth, where(r))
	require.Contains(t, r.View(), "booths/torn.toml:3", "what will not do is named")
	require.NotContains(t, r.View(), "Old booth", "retired")
	press(r, "2")
	require.Equal(t, stepOwnGun, where(r))
	press(r, "2")
	require.Equal(t, question.Coat.Name, where(r))
	press(r, "8")
	require.Equal(t, question.Temp.Name, where(r), "the gun is picked already")
	press(r, deskAnswer[4:]...)
	require.Equal(t, "bench", where(r))
	q := r.result().Plan.Request
	require.Equal(t, "clear 1", q.Gun.Name)
	require.InDelta(t, 100, q.Supply.PSI(), 1e-9)
	require.InDelta(t, 900, q.Day.Altitude.Feet(), 1e-6)
	require.InDelta(t, 1.4, q.Coat.Stage.Tip.Usual.MM(), 1e-9, "fitted to the gun")
	require.Equal(t, []line.Kind{line.RegulatorKind, line.FilterKind, line.CouplingKind, line.HoseKind, line.CouplingKind}, kindsOf(q.Line))
	require.Contains(t, r.View(), "Booth two")
}

func kindsOf(parts []line.Part) (all []line.Kind) {
	for i := range parts {
		all = append(all, parts[i].Kind)
	}
	return all
}

// What is typed beats the booth, and the booth the shop's file; in another booth what was said
// of the line of the one before counts no more.
func TestTypedBeatsTheBoothAndTheBoothTheShop(t *testing.T) {
	r := start(t, look{folder: inventedShop, shop: "[line]\nsupply = \"80psi\"\naltitude = \"300ft\"\n"})
	press(r, "enter", "1", "2", "8", "75F", "enter", "45", "enter", "enter")
	require.Contains(t, r.View(), "110psi  as in Booth one")
	press(r, "95psi", "enter", "enter", "enter")
	q := r.result().Plan.Request
	require.InDelta(t, 95, q.Supply.PSI(), 1e-9, "typed")
	require.InDelta(t, 300, q.Day.Altitude.Feet(), 1e-6, "the booth does not say")

	press(r, "n", "2", "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, "bench", where(r))
	q = r.result().Plan.Request
	require.InDelta(t, 100, q.Supply.PSI(), 1e-9, "booth two's")
	require.InDelta(t, 900, q.Day.Altitude.Feet(), 1e-6)

	press(r, "n", "3", "enter", "enter", "enter", "enter", "enter")
	q = r.result().Plan.Request
	require.InDelta(t, 80, q.Supply.PSI(), 1e-9, "in none of the booths")
}

// A gun that the coat does not go through, and one that is picked by its class, are asked for.
func TestAnotherGunThanTheShops(t *testing.T) {
	r := start(t, look{folder: inventedShop})
	press(r, "enter", "2", "3")
	require.Equal(t, question.Coat.Name, where(r))
	press(r, "8")
	require.Equal(t, question.Gun.Name, where(r))
	require.Contains(t, r.View(), "clear 1", "the shop's are among them")
	r.page().(*stepPage).list.point("reduced-pressure")
	press(r, "enter", "75F", "enter", "45", "enter", "enter", "enter", "enter")
	require.Equal(t, "reduced-pressure", r.result().Plan.Request.Gun.ID)
}

// Going back from the coat leads over the gun to the booth, and from there out.
func TestBackOverGunAndBooth(t *testing.T) {
	r := start(t, look{folder: inventedShop})
	press(r, "enter", "2", "2", "esc")
	require.Equal(t, stepOwnGun, where(r))
	press(r, "esc")
	require.Equal(t, stepBooth, where(r))
	require.Equal(t, "two", r.page().(*pickPage).list.id(), "the mark stands on what was picked")
	press(r, "esc")
	require.Equal(t, "finish", where(r))
}

// The last booth and gun are offered, and a job that is gone on with is in its booth.
func TestTheLastBoothIsOffered(t *testing.T) {
	h := newShelf(t)
	l := look{folder: inventedShop}
	typed(h.run(t, l), deskAnswer...)

	r := h.run(t, l)
	press(r, "enter", "esc")
	require.Equal(t, "resume", where(r))
	require.Contains(t, r.View(), "Booth two")
	require.Contains(t, r.View(), "clear 1")
	press(r, "1")
	require.Equal(t, "bench", where(r))
	require.Contains(t, r.View(), "Booth two")
	require.InDelta(t, 900, r.result().Plan.Request.Day.Altitude.Feet(), 1e-6)

	r = h.run(t, l)
	press(r, "enter", "esc", "2")
	require.Equal(t, question.Coat.Name, where(r), "another coat, all else the same: the booth too")
	require.Equal(t, "Booth two", r.s.desk.boothName())

	r = h.run(t, l)
	press(r, "enter", "esc", "4")
	require.Equal(t, stepBooth, where(r))
	require.Equal(t, "two", r.page().(*pickPage).list.id())

	gone := h.run(t, look{})
	press(gone, "enter", "esc", "1")
	require.Equal(t, question.Gun.Name, where(gone), "the shop's gun is not known without its folder")
}

// Without a folder, or with one that is empty, all is as it was.
func TestWithoutAShopNothingIsAsked(t *testing.T) {
	for _, folder := range []string{"", filepath.Join(t.TempDir(), "none"), t.TempDir()} {
		r := start(t, look{folder: folder})
		require.False(t, r.s.desk.seen, "nothing is looked up before the first key")
		press(r, toAnswer...)
		require.Equal(t, "bench", where(r))
		bare := open80x24(t)
		press(bare, toAnswer...)
		require.Equal(t, bare.View(), r.View())
	}
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	r := start(t, look{folder: file})
	press(r, "enter")
	require.Equal(t, stepBooth, where(r))
	require.Contains(t, r.View(), "is no folder")
	press(r, "1")
	require.Equal(t, question.Coat.Name, where(r))
}

// In lines of text it is the same job by the same answers.
func TestPlainPicksBoothAndGun(t *testing.T) {
	got := dialogueOf(t, look{folder: inventedShop}, lines("2", "clear 1", "8", "75F", "45", "", "", "", "", "", "", "", ""))
	require.NoError(t, got.err)
	r := start(t, look{folder: inventedShop})
	press(r, deskAnswer...)
	require.Equal(t, r.result(), got.left)
	require.Contains(t, got.out, "2  Booth two (hose 50ft,5/16in, 100 psi)")
	require.True(t, strings.Contains(got.out, "100psi  as in Booth two"), got.out)
}

// A name in a file is data: nothing of it moves the cursor.
func TestANameOfABoothIsPlainText(t *testing.T) {
	dir := shopCopy(t)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "booths", "evil.toml"), []byte("format = \"boothset.booth/1\"\nname = \"\\u001b[2Jgone\\u202e\"\nnotes = \"\\u001b]0;x\\u0007\"\n"), 0o600))
	r := start(t, look{folder: dir})
	press(r, "enter")
	frame := r.View()
	require.NotContains(t, frame, "\x1b")
	require.NotContains(t, frame, "\u202e")
	require.Equal(t, unit.US, r.s.sys)
}
