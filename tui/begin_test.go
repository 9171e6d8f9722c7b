package tui

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// beginning is the first start of somebody who has nothing set up, behind the safety page, and
// where the shop's folder would be.
func beginning(t *testing.T, l look) (r *root, folder string) {
	t.Helper()
	l.folder = filepath.Join(t.TempDir(), "shop")
	t.Setenv("TMPDIR", t.TempDir()) // where an invented shop is made
	r = start(t, l)
	r.s.offers = true
	r.keepIn(filepath.Join(t.TempDir(), "last.json"))
	press(r, "enter")
	return r, l.folder
}

func TestTheFirstStartOffersWaysToBegin(t *testing.T) {
	r, folder := beginning(t, look{})
	require.Equal(t, stepBegin, where(r))
	press(r, "enter")
	require.Equal(t, question.Coat.Name, where(r), "one key for somebody who wants neither")
	press(r, "esc")
	require.NotEqual(t, stepBegin, where(r), "it is asked once")
	require.NoDirExists(t, folder)
}

func TestWhoHasSomethingSetUpIsOfferedNothing(t *testing.T) {
	r := start(t, look{folder: inventedShop})
	r.s.offers = true
	r.keepIn(filepath.Join(t.TempDir(), "last.json"))
	press(r, "enter")
	require.Equal(t, stepBooth, where(r), "a shop's folder")

	h := newShelf(t)
	typed(h.run(t, look{}), toAnswer...)
	r = start(t, look{})
	r.s.offers = true
	r.keepIn(h.file)
	press(r, "enter")
	require.Equal(t, "resume", where(r), "kept answers")
	press(r, "4")
	require.Equal(t, question.Coat.Name, where(r))
}

func TestTheShopsOwnInThreeQuestions(t *testing.T) {
	for lang, name := range map[string]string{"en": "Booth one", "es": "Cabina uno"} {
		r, folder := beginning(t, look{lang: lang})
		press(r, "2")
		require.Equal(t, stepOwn, where(r))
		press(r, "enter")
		require.Contains(t, r.View(), "! ", "the supply must be given")
		require.NoDirExists(t, folder)
		press(r, "95psi", "up", "35ft,5/16in", "enter")
		require.Equal(t, question.Coat.Name, where(r))
		require.Equal(t, name, r.s.desk.boothName())
		press(r, "esc")
		require.Equal(t, stepBooth, where(r), "the booth is one of the shop's")

		id := strings.ReplaceAll(strings.ToLower(name), " ", "-")
		data, err := os.ReadFile(filepath.Join(folder, "booths", id+".toml"))
		require.NoError(t, err)
		require.Contains(t, string(data), "supply = '95psi'")
		require.Contains(t, string(data), "hose = ['35ft, 5/16in']")

		press(r, "enter", "8", "2", "75F", "enter", "45", "enter", "enter", "enter", "enter", "enter")
		require.Equal(t, "bench", where(r))
		require.InDelta(t, 95, r.result().Plan.Request.Supply.PSI(), 1e-9, "as the booth has it")
	}
}

func TestABoothThatCannotBeKeptIsTold(t *testing.T) {
	r, folder := beginning(t, look{})
	require.NoError(t, os.WriteFile(folder, nil, 0o600))
	press(r, "2", "down", "down", "95psi", "enter")
	require.Equal(t, stepOwn, where(r))
	require.Contains(t, r.View(), "! ")
	press(r, "up", "up", "ctrl+u", "*", "enter")
	require.Equal(t, stepOwn, where(r))
	require.Contains(t, r.View(), "give it a name")
}

func TestTheInventedShopIsToldAndLeavesNothing(t *testing.T) {
	r, folder := beginning(t, look{})
	press(r, "3")
	require.Equal(t, stepBooth, where(r))
	require.Contains(t, strings.Join(strings.Fields(r.View()), " "), "an invented shop")
	typed(r, "2", "1", "enter")
	require.Empty(t, r.s.keep.file, "nothing is kept of it")
	require.NoDirExists(t, folder)
	require.NotEqual(t, folder, r.s.desk.where)
}

// In lines of text the same is offered, and to a script, which keeps nothing, not.
func TestLinesOfferWaysToBegin(t *testing.T) {
	for _, lang := range []string{"en", "es"} {
		o := look{lang: lang, folder: filepath.Join(t.TempDir(), "shop")}.options(t)
		var out bytes.Buffer
		o.Kept, o.Begins, o.Out = filepath.Join(t.TempDir(), "last.json"), true, &out
		o.In = strings.NewReader("2\n\n\n95psi\n8\n")
		_, err := Plain(o)
		require.Error(t, err, "the input ends")
		require.Contains(t, out.String(), o.Words.Say("ask-begin"))
		require.FileExists(t, filepath.Join(o.Shop, "booths", map[string]string{"en": "booth-one", "es": "cabina-uno"}[lang]+".toml"))

		out.Reset()
		o.Shop = filepath.Join(t.TempDir(), "shop")
		o.Kept, o.Begins, o.In = "", false, strings.NewReader("8\n")
		_, err = Plain(o)
		require.Error(t, err)
		require.NotContains(t, out.String(), o.Words.Say("ask-begin"))
	}
}
