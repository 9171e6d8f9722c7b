package shop_test

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestABoothAnswersWhatItsFileSays(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	b, faults := f.Booth(r, "two")
	require.Empty(t, faults)
	assert.Equal(t, "Booth two", b.Name)
	assert.Equal(t, "2031-01-20", b.FilterChanged.Text())
	assert.Equal(t, "2031-02-10", b.GaugeChecked.Text())
	assert.InDelta(t, 0.4, float64(b.Draught), 1e-12)

	q, _ := planned(t, r.Over(b.Answers), clearOn(r, "reduced-pressure"))
	assert.InDelta(t, 95, q.Supply.PSI(), 1e-9)
	assert.InDelta(t, 900*unit.MetrePerFoot, float64(q.Day.Altitude), 1e-9)
	kinds := make([]line.Kind, len(q.Line))
	for i := range q.Line {
		kinds[i] = q.Line[i].Kind
	}
	assert.Equal(t, []line.Kind{line.RegulatorKind, line.FilterKind, line.CouplingKind, line.HoseKind, line.CouplingKind}, kinds)
	assert.True(t, q.Shop.Known, "the compressor behind it")
}

// What is typed beats the booth, the booth the shop's file, and that the catalogue.
func TestWhatIsTypedBeatsTheBooth(t *testing.T) {
	c, err := catalogue.Load([]byte("[line]\nsupply = \"80psi\"\ncoupling = \"slim\"\nhose = [\"50ft,3/8in\"]\nmark = \"2psi\"\n"), "shop.toml")
	require.NoError(t, err)
	r, err := question.New(c)
	require.NoError(t, err)
	b, faults := folder(t, "booths/two.toml", boothTwo).Booth(r, "two")
	require.Empty(t, faults)

	with := r.Over(b.Answers)
	q, _ := planned(t, with, clearOn(r, "reduced-pressure"))
	assert.InDelta(t, 95, q.Supply.PSI(), 1e-9, "the booth's, not the shop's 80")
	assert.InDelta(t, 2, q.Mark.PSI(), 1e-9, "the shop's: the booth does not say")
	assert.Len(t, q.Line, 5, "the booth's line, part by part")
	q, _ = planned(t, with, clearOn(r, "reduced-pressure").With(question.Supply, r.Read(question.Supply, "70psi", unit.US)))
	assert.InDelta(t, 70, q.Supply.PSI(), 1e-9, "as typed")
	q, _ = planned(t, r, clearOn(r, "reduced-pressure"))
	assert.InDelta(t, 80, q.Supply.PSI(), 1e-9, "without a booth")

	short, faults := folder(t, "booths/one.toml", "format = \"boothset.booth/1\"\nhose = [\"8m,10mm\"]\n").Booth(r, "one")
	require.Empty(t, faults)
	q, _ = planned(t, r.Over(short.Answers), clearOn(r, "reduced-pressure"))
	for _, p := range q.Line {
		if p.Kind == line.CouplingKind {
			assert.Equal(t, "slim", p.Entry, "the shop's coupling at both ends of the booth's hose")
		}
	}
}

func TestAGunIsOneOfTheCatalogues(t *testing.T) {
	r := questiontest.Open(t)
	g, faults := folder(t, "guns/four.toml", gunFour).Gun(r, "four")
	require.Empty(t, faults)
	assert.Equal(t, "R4", g.Cap)
	assert.Equal(t, "2031-02-01", g.Serviced.Text())
	with, err := shop.WithGuns(r, g)
	require.NoError(t, err)
	q, s := planned(t, with.Over(g.Answers), clearOn(with, "four").With(question.Supply, with.Read(question.Supply, "90psi", unit.US)))
	assert.Equal(t, "number four", q.Gun.Name)
	assert.InDelta(t, 30, q.Gun.Stamp.Inlet.PSI(), 1e-9)
	assert.InDelta(t, 1.5, s.Valve.TurnsOf, 1e-12)
	assert.True(t, s.Valve.CountsFromShut)
	_, known := r.Guns.Get("four")
	assert.False(t, known, "the catalogue it was read with stays as it was")
}

// A file that will not do says what would, and where.
func TestFilesThatWillNotDo(t *testing.T) {
	head := "format = \"boothset.booth/1\"\n"
	gun := "format = \"boothset.gun/1\"\nclass = \"reduced-pressure\"\n"
	for name, c := range map[string]struct{ file, contents, id, where string }{
		"empty":                  {"booths/two.toml", "", "shop-no-format", ""},
		"no format":              {"booths/two.toml", "name = \"two\"\n", "shop-no-format", ""},
		"a newer format":         {"booths/two.toml", "format = \"boothset.booth/2\"\nline = 7\n", "shop-newer", ":1"},
		"another kind":           {"booths/two.toml", "format = \"boothset.gun/1\"\n", "shop-other-format", ":1"},
		"no such format":         {"booths/two.toml", "format = 1\n", "file-key-takes", ":1"},
		"torn":                   {"booths/two.toml", head + "name = \"two", "shop-broken", ":2"},
		"both sides of a merge":  {"booths/two.toml", head + "<<<<<<< HEAD\nsupply = \"90psi\"\n=======\nsupply = \"95psi\"\n>>>>>>> north\n", "shop-merge", ":2"},
		"no such coupling":       {"booths/two.toml", head + "coupling = \"gone\"\n", "shop-answer", ":2"},
		"no such part":           {"booths/two.toml", head + "\nline = [\"regulator=1/2in\", \"coupling=gone\"]\n", "shop-answer", ":3"},
		"a line that is none":    {"booths/two.toml", head + "line = \"hose=8m,10mm\"\n", "file-key-takes", ":2"},
		"a supply without unit":  {"booths/two.toml", head + "supply = \"90\"\n", "shop-answer", ":2"},
		"a supply out of bounds": {"booths/two.toml", head + "supply = \"900psi\"\n", "shop-answer", ":2"},
		"said twice":             {"booths/two.toml", head + "line = [\"regulator=1/2in\", \"hose=8m,10mm\"]\nhose = [\"8m,10mm\"]\n", "shop-answer", ":3"},
		"a date in quotes":       {"booths/two.toml", head + "filter-changed = \"2031-01-02\"\n", "file-key-takes", ":2"},
		"a gale":                 {"booths/two.toml", head + "draught = \"40m/s\"\n", "shop-draught", ":2"},
		"a gun without a class":  {"guns/two.toml", "format = \"boothset.gun/1\"\ninlet = \"30psi\"\n", "shop-gun-class", ""},
		"no such class":          {"guns/two.toml", "format = \"boothset.gun/1\"\nclass = \"wide\"\n", "shop-gun-class", ":2"},
		"a flow of nothing":      {"guns/two.toml", gun + "flow = \"0.01cfm\"\n", "shop-gun", ""},
		"a flow in psi":          {"guns/two.toml", gun + "flow = \"9psi\"\n", "shop-gun", ":3"},
		"a gun of the catalogue": {"guns/touch-up.toml", gun, "shop-gun-taken", ""},
		"no text at all":         {"booths/two.toml", "\xff\xfe\x00", "shop-broken", ":1:1"},
		"deep":                   {"booths/two.toml", head + "name = " + strings.Repeat("[", 100_000), "shop-broken", ""},
		"huge":                   {"booths/two.toml", head + "notes = \"" + strings.Repeat("x", 1<<20) + "\"\n", "file-unreadable", ""},
	} {
		t.Run(name, func(t *testing.T) {
			r := questiontest.Open(t)
			f := folder(t, c.file, c.contents, "booths/whole.toml", boothTwo, "guns/whole.toml", gunFour)
			booths, faults := f.Booths(r)
			guns, more := f.Guns(r)
			faults = append(faults, more...)
			require.NotEmpty(t, faults)
			assert.Equal(t, c.id, faults[0].ID, faults[0])
			assert.Contains(t, faults[0].Error(), c.file+c.where+":")
			require.Len(t, booths, 1, "it costs itself alone")
			require.Len(t, guns, 1)
			assert.Equal(t, "whole", booths[0].ID)
			data, err := os.ReadFile(filepath.Join(f.Path, filepath.FromSlash(c.file)))
			require.NoError(t, err)
			assert.Equal(t, c.contents, string(data), "nobody rewrites it")
			for _, lang := range words.Languages() {
				w, _ := words.For(lang)
				assert.NotContains(t, faults[0].In(w), "{", lang)
			}
		})
	}
}

// Unknown keys are told and cost nothing; CRLF and a byte order mark are read.
func TestWhatDoesNotCost(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", "\ufeff"+strings.ReplaceAll(boothTwo, "\n", "\r\n")+"lamp = \"warm\"\r\n", "booths/Upper.toml", boothTwo)
	booths, faults := f.Booths(r)
	require.Len(t, booths, 1, "a name that is no id is not read")
	require.Len(t, faults, 1)
	assert.Equal(t, "booths/two.toml:16: key \"lamp\" is not known; it stays in the file and does not count", faults[0].Error())
	assert.Equal(t, shop.Told, faults[0].Weight)
}

func TestNamesAreShownWithoutWhatCannotBePrinted(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", "format = \"boothset.booth/1\"\nname = \"\\u001b[2Jtwo\\u202e\\u0007\"\nnotes = \"one\\ntwo\"\n\"\\u001b]0;\" = 1\n")
	b, faults := f.Booth(r, "two")
	require.NotNil(t, b)
	assert.Equal(t, `\x1b[2Jtwo\u202e\a`, b.Name)
	assert.Equal(t, "one two", b.Notes)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Error(), `\x1b]0;`)
	assert.NotContains(t, faults[0].Error(), "\x1b")
}

func TestIDs(t *testing.T) {
	for _, good := range []string{"two", "2", "north-2", strings.Repeat("a", 40), "come", "com", "com10", "console"} {
		assert.True(t, shop.IsID(good), good)
	}
	for _, bad := range []string{"", "-two", "Two", "two.toml", "..", "a/b", "a b", "dos\u202e", strings.Repeat("a", 41), "con", "nul", "aux", "prn", "com1", "lpt9", "cabína"} {
		assert.False(t, shop.IsID(bad), bad)
		b, faults := folder(t).Booth(questiontest.Open(t), bad)
		assert.Nil(t, b)
		assert.Equal(t, []string{"shop-id"}, ids(faults))
	}
}

// No link that leads out of the folder is followed, and nothing is waited for.
func TestOnlyPlainFilesOfTheFolderAreRead(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need a right there that tests do not have")
	}
	r := questiontest.Open(t)
	elsewhere := t.TempDir()
	put(t, elsewhere, "two.toml", boothTwo, "log/a", "")
	f := folder(t, "booths/one.toml", boothTwo)
	booths := filepath.Join(f.Path, "booths")
	require.NoError(t, os.Symlink(filepath.Join(elsewhere, "two.toml"), filepath.Join(booths, "out.toml")))
	require.NoError(t, os.Symlink(filepath.Join("..", "..", filepath.Base(elsewhere), "two.toml"), filepath.Join(booths, "up.toml")))
	require.NoError(t, os.Symlink("one.toml", filepath.Join(booths, "within.toml")))
	require.NoError(t, os.Symlink("nowhere.toml", filepath.Join(booths, "none.toml")))
	require.NoError(t, os.Mkdir(filepath.Join(booths, "folder.toml"), 0o755))
	fifo(t, filepath.Join(booths, "pipe.toml"))
	require.NoError(t, os.Symlink(elsewhere, filepath.Join(f.Path, "guns")))

	all, faults := f.Booths(r)
	var read []string
	for _, b := range all {
		read = append(read, b.ID)
	}
	assert.Equal(t, []string{"one", "within"}, read)
	assert.ElementsMatch(t, []string{"file-unreadable", "shop-link", "shop-link", "shop-link", "file-unreadable"}, ids(faults))
	guns, faults := f.Guns(r)
	assert.Empty(t, guns)
	assert.Equal(t, []string{"shop-link"}, ids(faults))
}

func TestWhereTheFolderIs(t *testing.T) {
	env := func(pairs ...string) func(string) string {
		return func(name string) string {
			for i := 0; i < len(pairs); i += 2 {
				if pairs[i] == name {
					return pairs[i+1]
				}
			}
			return ""
		}
	}
	if runtime.GOOS == "windows" {
		t.Skip("paths are others there")
	}
	assert.Equal(t, "/typed", shop.Where(env("BOOTHSET_SHOP", "/share", "XDG_DATA_HOME", "/data"), "/typed"))
	assert.Equal(t, "/share", shop.Where(env("BOOTHSET_SHOP", "/share", "XDG_DATA_HOME", "/data"), ""))
	assert.Equal(t, "/data/boothset/shop", shop.Where(env("XDG_DATA_HOME", "/data", "HOME", "/home/a"), ""))
	assert.Equal(t, "/home/a/.local/share/boothset/shop", shop.Where(env("XDG_DATA_HOME", "data", "HOME", "/home/a"), ""))
	assert.Empty(t, shop.Where(env(), ""))
	_, err := shop.At("")
	assert.ErrorContains(t, err, "--shop")
	f, err := shop.At(filepath.Join(t.TempDir(), "none"))
	require.NoError(t, err)
	assert.False(t, f.Found())
	booths, faults := f.Booths(questiontest.Open(t))
	assert.Empty(t, booths)
	assert.Empty(t, faults)
	assert.NoDirExists(t, f.Path, "reading makes nothing")
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, err = shop.At(file)
	assert.ErrorContains(t, err, "no folder")
}
