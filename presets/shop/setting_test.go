package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// agreed is a setting of booth two as it may be agreed on.
func agreed(t testing.TB, r *question.Reader, booth *shop.Booth, of shop.Subject) shop.Setting {
	t.Helper()
	q, err := shop.Request(r, booth, of)
	require.NoError(t, err)
	_, s := planned(t, r.Over(booth.Answers), r.Over(booth.Answers).AnyJob().With(question.Coat, r.Read(question.Coat, of.Coat, unit.US)))
	return shop.Setting{
		Booth: booth.ID, Subject: of, Agreed: aDay, Why: "lays flat", Knobs: "fan full, fluid 2.5",
		Values: shop.Values{Wall: unit.PSIG(31), Distance: unit.Length(6 * unit.MetrePerInch), Opening: 0.8, Tip: unit.MM(1.3)},
		Worked: shop.WorkedOf(q, s),
	}
}

func boothIn(t testing.TB, f *shop.Folder, r *question.Reader, id string) *shop.Booth {
	t.Helper()
	b, faults := f.Booth(r, id)
	require.Empty(t, faults)
	require.NotNil(t, b)
	return b
}

var clearMild = shop.Subject{Coat: "clear", Stage: "full", Gun: "reduced-pressure", Band: "mild"}

func TestAnAgreedSettingIsKeptAsARevision(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	first, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	assert.Empty(t, first.Replaces)
	second, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.Metric)
	require.NoError(t, err)
	assert.Equal(t, []string{first.ID}, second.Replaces)
	assert.Equal(t, 2, second.Number)

	all, faults := f.Settings("two")
	require.Empty(t, faults)
	require.Len(t, all, 2)
	standing := shop.Standing(all)
	require.Len(t, standing, 1)
	got := standing[0]
	assert.Equal(t, second.ID, got.ID)
	assert.Equal(t, clearMild, got.Subject)
	assert.Equal(t, aDay, got.Agreed)
	assert.InDelta(t, 31, got.Values.Wall.PSI(), 0.1, "in whole marks of either system")
	assert.InDelta(t, 0.8, got.Values.Opening, 1e-9)
	assert.InDelta(t, 1.3, got.Values.Tip.MM(), 1e-9)
	assert.Equal(t, "fan full, fluid 2.5", got.Knobs)
	assert.Len(t, got.Worked.Line, 5)

	q, err := shop.Request(r, boothIn(t, f, r, "two"), clearMild)
	require.NoError(t, err)
	assert.Empty(t, got.Since(q), "as it was worked out")
	files, err := filepath.Glob(filepath.Join(f.Path, "settings", "two", "*"))
	require.NoError(t, err)
	assert.Len(t, files, 2, "nothing is left beside them")
	assert.Regexp(t, `0001-[0-9a-f-]{36}\.toml$`, files[0])
}

// What could never be read again is not kept.
func TestASettingThatIsTooLong(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	s := agreed(t, r, boothIn(t, f, r, "two"), clearMild)
	s.Why = strings.Repeat("long ", 1<<18)
	_, err := f.Agree(s, unit.US)
	require.Error(t, err)
	all, faults := f.Settings("two")
	assert.Empty(t, all)
	assert.Empty(t, faults)
}

// The file is in an order of its own, the same each time, with one value a line.
func TestASettingsFileReadsAsItStands(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	kept, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	data, err := os.ReadFile(filepath.Join(f.Path, "settings", "two", "0001-"+kept.ID+".toml"))
	require.NoError(t, err)
	head := `format = 'boothset.setting/1'
coat = 'clear'
stage = 'full'
gun = 'reduced-pressure'
band = 'mild'
replaces = []
agreed = 2031-03-04T09:30:00Z
why = 'lays flat'
knobs = 'fan full, fluid 2.5'

[set]
wall = '31.0 psi'
distance = '6.0 in'
opening = '80%'
tip = '1.3 mm'

[worked]
`
	assert.Equal(t, head, string(data)[:min(len(head), len(data))])
}

// What changes in the booth makes a setting void; the catalogue's figures alone do not.
func TestWhatMakesASettingVoid(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	kept, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	since := func(r *question.Reader, booth string) []shop.Change {
		f := folder(t, "booths/two.toml", booth)
		q, err := shop.Request(r, boothIn(t, f, r, "two"), clearMild)
		require.NoError(t, err)
		return kept.Since(q)
	}
	for name, c := range map[string]struct{ old, new, was, is string }{
		"a coupling":      {"coupling=large-bore", "coupling=slim", "coupling", "slim"},
		"a longer hose":   {"35ft,3/8in", "50ft,3/8in", "hose", "50ft,3/8in"},
		"a filter less":   {`"filter=point-of-use", `, "", "filter", ""},
		"a dryer":         {`"filter=point-of-use", `, `"filter=point-of-use", "dryer=refrigerated", `, "", "refrigerated"},
		"a regulator":     {"regulator=1/2in", "regulator=1/4in", "regulator", "1/4in"},
		"a hose reworded": {"35ft,3/8in", "35 ft, 3/8 in", "none", ""},
		"another supply":  {`supply = "95psi"`, `supply = "90psi"`, "none", ""},
	} {
		changes := since(r, strings.Replace(boothTwo, c.old, c.new, 1))
		if c.was == "none" {
			assert.Empty(t, changes, name)
			continue
		}
		if assert.Len(t, changes, 1, name) {
			assert.True(t, shop.Void(changes), name)
			assert.Equal(t, c.was, changes[0].Was.Kind, name)
			assert.Equal(t, c.is, changes[0].Is.Entry, name)
		}
	}

	own, err := question.New(catalogueOf(t, "[coupling.large-bore]\nconductance = 7.0\n"))
	require.NoError(t, err)
	changes := since(own, boothTwo)
	assert.Len(t, changes, 2, "both couplings")
	assert.False(t, shop.Void(changes), "worked from older values")
	stamped, err := question.New(catalogueOf(t, "[gun.reduced-pressure]\ninlet = \"31psi\"\n"))
	require.NoError(t, err)
	assert.True(t, shop.Void(since(stamped, boothTwo)), "another gun")
}

// The most specific wins; of as many names the gun, then the stage, then the band.
func TestTheMostSpecificWins(t *testing.T) {
	job := shop.Subject{Coat: "clear", Stage: "full", Gun: "four", Band: "mild"}
	of := func(stage, gun, band string) *shop.Setting {
		return &shop.Setting{ID: stage + gun + band, Subject: shop.Subject{Coat: "clear", Stage: stage, Gun: gun, Band: band}}
	}
	order := []*shop.Setting{
		of("any", "any", "any"), of("any", "any", "mild"), of("full", "any", "any"), of("any", "four", "any"),
		of("full", "any", "mild"), of("any", "four", "mild"), of("full", "four", "any"), of("full", "four", "mild"),
	}
	foreign := []*shop.Setting{of("full", "five", "any"), of("any", "any", "cold"), {ID: "other", Subject: shop.Subject{Coat: "sealer", Stage: "any", Gun: "any", Band: "any"}}}
	assert.Empty(t, shop.For(foreign, job))
	for n := range order {
		assert.Equal(t, order[n:n+1], shop.For(append(foreign, order[:n+1]...), job))
	}
	twin := *order[7]
	twin.ID = "twin"
	assert.Len(t, shop.For(append(order, &twin), job), 2, "twins are both shown")
}

// No clock decides: of revisions in any order, of any age, those stand that none replaces.
func TestClocksDecideNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		all := make([]*shop.Setting, n)
		replaced := map[string]bool{}
		for i := range all {
			all[i] = &shop.Setting{ID: string(rune('a' + i)), Agreed: time.Unix(rapid.Int64Range(-1e9, 1e10).Draw(t, "at"), 0)}
			for j := range i {
				if rapid.IntRange(0, 3).Draw(t, "replaces") == 0 {
					all[i].Replaces = append(all[i].Replaces, all[j].ID)
					replaced[all[j].ID] = true
				}
			}
		}
		standing := shop.Standing(rapid.Permutation(all).Draw(t, "order"))
		require.Len(t, standing, n-len(replaced))
		for _, s := range standing {
			require.False(t, replaced[s.ID])
		}
	})
}

func TestWeatherBands(t *testing.T) {
	f := folder(t)
	bands, faults := f.Bands()
	require.Empty(t, faults)
	for _, c := range []struct {
		celsius, humidity float64
		band              string
	}{{10, 0.9, "cold"}, {15, 0.5, "mild"}, {25.9, 0.9, "mild"}, {26, 0.49, "hot-dry"}, {35, 0.5, "hot-damp"}, {35, 1, "hot-damp"}, {70, 0.5, ""}} {
		b, ok := shop.BandOf(bands, unit.Celsius(c.celsius), c.humidity)
		assert.Equal(t, c.band, b.ID, c)
		assert.Equal(t, c.band != "", ok)
	}
	own := "format = \"boothset.bands/1\"\n[[band]]\nid = \"warm\"\nname = \"July\"\ntemp = [\"24C\", \"30C\"]\nday = [\"26C\", \"50%\"]\n"
	bands, faults = folder(t, "bands.toml", own).Bands()
	require.Empty(t, faults)
	require.Len(t, bands, 1)
	assert.Equal(t, "July", bands[0].Name)
	for name, wrong := range map[string]string{
		"limits the wrong way round": strings.Replace(own, `"24C", "30C"`, `"30C", "24C"`, 1),
		"a day outside":              strings.Replace(own, `"26C", "50%"`, `"16C", "50%"`, 1),
		"any":                        strings.Replace(own, `"warm"`, `"any"`, 1),
		"twice":                      own + strings.SplitN(own, "\n", 2)[1],
		"no list":                    "format = \"boothset.bands/1\"\nband = 1\n",
	} {
		bands, faults := folder(t, "bands.toml", wrong).Bands()
		assert.NotEmpty(t, faults, name)
		assert.Len(t, bands, 4, "%s: those that ship stand in", name)
	}
}
