package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// checked is the sentences of a check of a folder, in English.
func checked(t testing.TB, f *shop.Folder) (said []string) {
	t.Helper()
	_, faults := f.Check(questiontest.Open(t), aDay)
	for _, x := range faults {
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			assert.NotContains(t, x.In(w), "{", lang)
		}
		said = append(said, x.Error())
	}
	return said
}

func TestACheckOfWhatIsRightSaysNothing(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo, "guns/four.toml", gunFour, "README", "ours", ".git/HEAD", "x", "log/two/.keep", "")
	four := clearMild
	four.Gun = "four"
	g, faults := f.Gun(r, "four")
	require.Empty(t, faults)
	with, err := shop.WithGuns(r, g)
	require.NoError(t, err)
	_, err = f.Agree(agreed(t, with, boothIn(t, f, r, "two"), four), unit.US)
	require.NoError(t, err)
	_, err = f.Keep(machine(t), job(1), unit.US)
	require.NoError(t, err)
	n, faults := f.Check(r, aDay)
	assert.Empty(t, faults)
	assert.Equal(t, shop.Counted{Booths: 1, Guns: 1, Settings: 1, Records: 1}, n)
}

// Everything that will not do is named, and nothing is deleted or changed.
func TestACheckNamesWhatWillNotDo(t *testing.T) {
	r := questiontest.Open(t)
	m := machine(t)
	f := folder(t, "booths/two.toml", boothTwo, "booths/Three.toml", boothTwo, "booths/two (conflicted copy).toml", boothTwo,
		"booths/four.toml", "format = \"boothset.booth/1\"\nfilter-changed = 2041-01-01\n", "booths/five.toml", "format = \"boothset.booth/1\"\ncoupling = \"gone\"\n",
		"guns/four.toml", gunFour, "guns/four.toml~", gunFour, "settings/gone/0001-01890a5d-ac96-774b-bcce-b302099a8057.toml", "", "settings/notes.txt", "",
		"booths/.x.tmp", "", "bands (2).toml", "", "log/two/2031-03-"+m.ID+".jsonl", "{\"torn")
	kept, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	one, err := os.ReadFile(filepath.Join(f.Path, "settings", "two", "0001-"+kept.ID+".toml"))
	require.NoError(t, err)
	put(t, f.Path, "settings/two/0001-01890a5d-ac96-774b-bcce-b302099a8057.toml", strings.Replace(string(one), "why", "wherefore", 1),
		"booths/two.toml", strings.Replace(boothTwo, "35ft", "50ft", 1))
	late := job(1)
	late.At = aDay.AddDate(3, 0, 0)
	_, err = f.Keep(m, late, unit.US)
	require.NoError(t, err)

	before := listing(t, f.Path)
	said := checked(t, f)
	assert.Equal(t, before, listing(t, f.Path), "none is deleted or changed")
	for _, want := range []string{
		"booths/.x.tmp: left by a write that was cut off",
		"booths/Three.toml: its name is no id",
		"booths/two (conflicted copy).toml: a copy, as synchronising leaves one",
		"guns/four.toml~: a copy",
		"bands (2).toml: a copy",
		"settings/notes.txt: does not belong here",
		"booths/five.toml:2: will not do: coupling \"gone\": choose",
		"booths/four.toml: key filter-changed: 2041-01-01 is yet to come",
		"settings/gone/0001-01890a5d-ac96-774b-bcce-b302099a8057.toml: begin it with format",
		"settings/two/0001-01890a5d-ac96-774b-bcce-b302099a8057.toml:8: key \"wherefore\" is not known",
		"settings/two: for clear, full, reduced-pressure, mild: agreed twice apart",
		"for clear, full, reduced-pressure, mild: void, hose=35ft,3/8in is now hose=50ft,3/8in; agree on it anew",
		"log/two: holds 1 record from 2034-03-04 on, yet to come",
		".jsonl:1: torn, and passed over",
	} {
		assert.Contains(t, strings.Join(said, "\n"), want)
	}
	assert.Len(t, said, 15, "and nothing else: %s", strings.Join(said, "\n"))
}

// listing is every file of a folder with its contents.
func listing(t testing.TB, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.Walk(dir, func(path string, info os.FileInfo, err error) error {
		if err != nil || info.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		all[path] = string(data)
		return err
	}))
	return all
}

// A setting for a coat, a gun or a stage that this catalogue does not know is named, and no
// other one is taken for it.
func TestWhatTheCatalogueDoesNotKnowIsNamed(t *testing.T) {
	r := questiontest.Open(t)
	for _, of := range []shop.Subject{
		{Coat: "gone", Stage: "any", Gun: "any", Band: "any"}, {Coat: "clear", Stage: "drop", Gun: "any", Band: "any"}, {Coat: "clear", Stage: "any", Gun: "seven", Band: "any"},
	} {
		f := folder(t, "booths/two.toml", boothTwo)
		_, err := f.Agree(shop.Setting{Booth: "two", Subject: of, Values: shop.Values{Wall: unit.PSIG(30)}}, unit.US)
		require.NoError(t, err)
		_, faults := f.Check(r, aDay)
		assert.Equal(t, []string{"shop-setting-unknown"}, ids(faults))
	}
}

func TestAFileOfAnotherShopIsAdded(t *testing.T) {
	r := questiontest.Open(t)
	f := at(t, filepath.Join(t.TempDir(), "new"))
	from := t.TempDir()
	put(t, from, "two.toml", boothTwo, "four.toml", gunFour, "Two.toml", boothTwo, "broken.toml", "format = \"boothset.booth/1\"\nsupply = 90\n", "big.toml", strings.Repeat("#", 1<<20+1))
	look := func(name string) (*shop.Added, []*shop.Fault) { return f.Look(r, filepath.Join(from, name)) }
	booth, faults := look("two.toml")
	require.Empty(t, faults)
	assert.Equal(t, "booths/two.toml", booth.File)
	gun, faults := look("four.toml")
	require.Empty(t, faults)
	assert.Equal(t, "guns/four.toml", gun.File)
	assert.NoDirExists(t, f.Path, "looking writes nothing")
	require.NoError(t, f.Add(booth))
	require.NoError(t, f.Add(gun))
	data, err := os.ReadFile(filepath.Join(f.Path, "booths", "two.toml"))
	require.NoError(t, err)
	assert.Equal(t, boothTwo, string(data), "its comments too")
	for name, id := range map[string]string{
		"two.toml": "shop-there", "Two.toml": "shop-stray-id", "broken.toml": "file-key-takes", "big.toml": "file-unreadable", "none.toml": "file-unreadable", ".": "shop-stray-id",
	} {
		_, faults := look(name)
		assert.Equal(t, []string{id}, ids(faults), name)
	}
}
