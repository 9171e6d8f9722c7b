package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func content(t testing.TB, f *shop.Folder, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(f.Path, filepath.FromSlash(name)))
	require.NoError(t, err)
	return string(data)
}

// What is saved anew stands in the old one's place; comments, order and what is not known stay.
func TestABoothIsEditedInPlace(t *testing.T) {
	r := questiontest.Open(t)
	const before = `# ours
format = "boothset.booth/1"
name = "Booth #2" # by the door
lamp = 7
line = [ # from the supply
  "regulator=1/2in",
  "hose=25ft,3/8in", # grey
] # to the gun
# the last
supply = "95psi"

[kept]
x = 1
`
	for _, ending := range []string{"\n", "\r\n"} {
		f := folder(t, "booths/two.toml", strings.ReplaceAll(before, "\n", ending))
		require.NoError(t, f.SaveBooth(r, "two", shop.Key{Name: "name", Value: "two"}, shop.Key{Name: "line", Value: []string{"regulator=1/4in", "hose=8m,10mm"}},
			shop.Key{Name: "supply", Value: nil}, shop.Key{Name: "gauge", Value: "foot"}, shop.Key{Name: "filter-changed", Value: shop.Date{Time: aDay}}))
		want := `# ours
format = "boothset.booth/1"
name = 'two' # by the door
lamp = 7
line = ['regulator=1/4in', 'hose=8m,10mm'] # to the gun
gauge = 'foot'
filter-changed = 2031-03-04
# the last

[kept]
x = 1
`
		assert.Equal(t, strings.ReplaceAll(want, "\n", ending), content(t, f, "booths/two.toml"))
	}
}

func TestTodaysLineIsSavedAsABooth(t *testing.T) {
	r := questiontest.Open(t)
	f := at(t, filepath.Join(t.TempDir(), "new"))
	today := r.ReadAll(question.Plan, questiontest.With(questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), "supply", "90"), "hose", "25,3/8"), unit.US)
	keys := append([]shop.Key{{Name: "name", Value: "Booth nine"}}, shop.KeysOf(r, today, unit.US)...)
	require.NoError(t, f.SaveBooth(r, "nine", keys...))
	assert.Equal(t, "format = 'boothset.booth/1'\nname = 'Booth nine'\nsupply = '90 psi'\nhose = ['25 ft, 3/8']\n", content(t, f, "booths/nine.toml"))
	b := boothIn(t, f, r, "nine")
	q, _ := planned(t, r.Over(b.Answers), clearOn(r, "reduced-pressure"))
	assert.InDelta(t, 90, q.Supply.PSI(), 1e-9)
	require.NoError(t, f.SaveGun(r, "four", shop.Key{Name: "class", Value: "high-pressure"}, shop.Key{Name: "retired", Value: true}))
	g, faults := f.Gun(r, "four")
	require.Empty(t, faults)
	assert.True(t, g.Retired)
}

// What would not do is not written, and a newer or broken file not rewritten.
func TestWhatIsNotSaved(t *testing.T) {
	r := questiontest.Open(t)
	for name, c := range map[string]struct{ before, id string }{
		"a wrong value":  {boothTwo, "file-key-takes"},
		"a newer format": {"format = \"boothset.booth/2\"\n", "shop-newer"},
		"a torn file":    {"format = \"boothset.booth/1\"\nname = \"", "shop-broken"},
	} {
		f := folder(t, "booths/two.toml", c.before)
		err := f.SaveBooth(r, "two", shop.Key{Name: "supply", Value: true})
		var fault *shop.Fault
		require.ErrorAs(t, err, &fault, name)
		assert.Equal(t, c.id, fault.ID, name)
		assert.Equal(t, c.before, content(t, f, "booths/two.toml"), name)
	}
	err := folder(t).SaveBooth(r, "Two")
	assert.ErrorContains(t, err, "can be no id")
}

// A file that nobody wrote by hand is not edited.
func TestAHugeFileIsNotEdited(t *testing.T) {
	f := folder(t, "booths/two.toml", boothTwo+"x = '''\n"+strings.Repeat("\n", 70_000)+"'''\n")
	assert.ErrorContains(t, f.SaveBooth(questiontest.Open(t), "two", shop.Key{Name: "name", Value: "x"}), "edit it by hand")
}
