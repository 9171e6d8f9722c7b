package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/card"
	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// done sends keys, the disk waited for.
func done(r *root, keys ...string) {
	r.s.atOnce = true
	press(r, keys...)
}

// agreedInFolder is what stands in a booth of a folder.
func agreedInFolder(t test, dir, booth string) []*shop.Setting {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	all, faults := f.Settings(booth)
	require.Empty(t, faults)
	return shop.Standing(all)
}

// What is agreed on screen is kept as it shows, says so beside the answer, and another agreement
// for the same takes its place.
func TestAgreeingOnWhatShows(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	require.Contains(t, r.bench.tabs(200, r.bench.looksAt), "a agreed")
	require.NotContains(t, r.View(), "Agreed:")
	set := r.result().Plan.Setup
	done(r, "a")
	require.Equal(t, "agree", where(r))
	press(r, "up", "up", "up", "down", "down", "down", "flat, no dry spray")
	done(r, "enter")
	require.Equal(t, "bench", where(r))
	require.Contains(t, r.View(), "at the wall in Booth two", "it is said")
	standing := agreedInFolder(t, dir, "two")
	require.Len(t, standing, 1)
	got := standing[0]
	require.Equal(t, shop.Subject{Coat: "clear", Stage: "full", Gun: "clear-1", Band: "mild"}, got.Subject)
	require.InDelta(t, float64(set.Wall.Flowing), float64(got.Values.Wall), 400, "to what can be set")
	require.Equal(t, "flat, no dry spray", got.Why)
	require.Empty(t, got.By)
	require.True(t, testDay.Equal(got.Agreed))
	press(r, "down")
	require.Contains(t, r.View(), "Agreed: ")
	require.Contains(t, r.View(), "Nothing has moved it.")

	press(r, "a")
	require.Contains(t, r.View(), got.ID, "what it would take the place of")
	require.Contains(t, bodyText(r.View()), "Because: flat, no dry spray")
	done(r, "enter")
	again := agreedInFolder(t, dir, "two")
	require.Len(t, again, 1)
	require.Equal(t, []string{got.ID}, again[0].Replaces)
	require.Empty(t, again[0].Why, "it was said of the other")
}

// For any weather, with any gun: the most specific wins beside the answer.
func TestAgreeingForAny(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	press(r, "a", "right", "down", "right", "down", "right")
	done(r, "enter")
	standing := agreedInFolder(t, dir, "two")
	require.Len(t, standing, 1)
	require.Equal(t, shop.Subject{Coat: "clear", Stage: shop.Any, Gun: shop.Any, Band: shop.Any}, standing[0].Subject)
	press(r, "down")
	require.Contains(t, r.View(), "(any weather)")
}

// Who agreed is asked for only where the shop keeps painters.
func TestWhoAgreed(t *testing.T) {
	dir := shopCopy(t)
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	id, err := f.AddPainter("RM")
	require.NoError(t, err)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	press(r, "a", "down", "down", "down", "right")
	require.Contains(t, r.View(), "< RM >")
	done(r, "enter")
	require.Equal(t, id, agreedInFolder(t, dir, "two")[0].By)
	press(r, "a")
	require.Contains(t, bodyText(r.View()), "By RM.")
}

// A coupling swapped since is told under the verdict and in words: what was agreed on is void.
func TestAnAgreedSettingIsVoidOnceTheLineChanges(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	done(r, "a", "enter")
	file := filepath.Join(dir, "booths", "two.toml")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(data), "coupling=slim", "coupling=large-bore", 1)), 0o600))

	for _, lang := range []string{"en", "es"} {
		l := look{folder: dir, lang: lang}
		r = start(t, l)
		press(r, deskAnswer...)
		void := r.s.words.Text(r.s.sys, "agreed-void", nil)
		void, _, _ = strings.Cut(void, "{")
		require.Contains(t, r.View(), strings.TrimSpace(void))
		got := dialogueOf(t, l, lines("2", "2", "8", "75F", "45", "", "", "", "", "", "", "", ""))
		require.NoError(t, got.err)
		require.Contains(t, got.out, strings.TrimSpace(void))
	}
}

// Two that were agreed apart are both named, and one agreement takes the place of both.
func TestTwinsAreShownAndTakenTogether(t *testing.T) {
	dir, other := shopCopy(t), shopCopy(t)
	for _, folder := range []string{dir, other} {
		r := start(t, look{folder: folder})
		press(r, deskAnswer...)
		done(r, "a", "enter")
	}
	require.NoError(t, os.CopyFS(filepath.Join(dir, "settings"), os.DirFS(filepath.Join(other, "settings"))))
	twins := agreedInFolder(t, dir, "two")
	require.Len(t, twins, 2)
	r := start(t, look{folder: dir, size: size{120, 40}})
	press(r, deskAnswer...)
	require.Contains(t, r.View(), "agreed on twice apart")
	press(r, "a")
	for _, twin := range twins {
		require.Contains(t, r.View(), twin.ID)
	}
	done(r, "enter")
	standing := agreedInFolder(t, dir, "two")
	require.Len(t, standing, 1)
	require.ElementsMatch(t, []string{twins[0].ID, twins[1].ID}, standing[0].Replaces)
}

// Nothing is agreed on of a job that is stopped, and a folder that cannot be written says so.
func TestWhatCannotBeAgreedOn(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, then(deskAnswer[:9], "25psi", "enter", "enter", "enter", "a", "enter")...)
	require.Equal(t, "agree", where(r))
	require.Contains(t, r.View(), "there is nothing to agree on")
	require.Empty(t, agreedInFolder(t, dir, "two"))

	require.NoError(t, os.WriteFile(filepath.Join(dir, "settings"), nil, 0o600)) // where its folder would be
	r = start(t, look{folder: dir})
	press(r, deskAnswer...)
	done(r, "a", "enter")
	require.Contains(t, r.View(), "cannot be written")
}

// What is agreed on screen, in each booth and each weather, is what the card of that job then
// says is to be set, and what the sheet of the booth has.
func TestTheCardAndTheSheetSayWhatWasAgreedOnScreen(t *testing.T) {
	dir := shopCopy(t)
	for _, booth := range []string{"1", "2"} {
		for air, weather := range map[string][]string{"55F": nil, "70F": nil, "85F": {"right"}} {
			r := start(t, look{folder: dir})
			press(r, "enter", booth, "2", "8", air, "enter", "45", "enter", "enter", "enter", "enter", "a")
			require.Equal(t, "agree", where(r))
			press(r, weather...)
			done(r, "enter")
			requireAgreedEverywhere(t, dir, r)
		}
	}
}

func requireAgreedEverywhere(t *testing.T, dir string, r *root) {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	plan := r.result().Plan
	of, faults := card.AgreedFor(f, r.s.desk.booth.ID, plan)
	require.Empty(t, faults)
	require.Len(t, of.Settings, 1)
	require.False(t, of.Void)
	set := of.Settings[0].Values
	require.InDelta(t, plan.Setup.Wall.Flowing.PSI(), set.Wall.PSI(), 0.06)
	require.InDelta(t, plan.Setup.Valve.Opening, set.Opening, 0.006)

	sheet, faults, err := f.SheetOf(r.s.reader, r.s.desk.booth, []string{"clear-1"}, []string{"clear"}, false)
	require.NoError(t, err)
	require.Empty(t, faults)
	seen := false
	for _, row := range sheet.Guns[0].Rows {
		for n, cell := range row.Cells {
			if row.Stage == plan.Request.Coat.Stage.ID && sheet.Bands[n].ID == of.Band.ID {
				v, agreed := cell.Set()
				require.True(t, agreed)
				require.Equal(t, set.Wall, v.Wall)
				seen = true
			}
		}
	}
	require.True(t, seen)
}
