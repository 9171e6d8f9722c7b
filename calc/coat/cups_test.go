package coat_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/coat"
)

func TestFindCupResolvesWhatPeopleType(t *testing.T) {
	for text, want := range map[string]string{
		"din4": "din4", "DIN 4": "din4", "din": "din4", "DIN 53211": "din4", "DIN-4mm": "din4", "DIN cup 4 mm": "din4",
		"iso4": "iso4", "ISO 4 mm": "iso4", "ISO 2431 4mm": "iso4", "DIN EN ISO 2431, 5 mm": "iso5", "iso 3": "iso3",
		"ford4": "ford4", "Ford #4": "ford4", "ford no. 3": "ford3", "ASTM D1200 2": "ford2", "ASTM Ford 4": "ford4",
		"zahn2": "zahn2", "Zahn cup nr 2": "zahn2", "D4212 #5": "zahn5", "Zahn 1": "zahn1",
		"6 mm": "iso6", "6": "iso6",
	} {
		c, err := coat.FindCup(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, c.ID, text)
	}
}

func TestEveryCupIsFoundByItsOwnNames(t *testing.T) {
	for _, c := range coat.Cups() {
		for _, text := range []string{c.ID, c.Label, strings.ToUpper(c.Label)} {
			got, err := coat.FindCup(text)
			require.NoError(t, err, text)
			assert.Equal(t, c, got)
		}
	}
}

func TestTwoCupsCalled4mmAreAskedFor(t *testing.T) {
	for text, want := range map[string][]string{
		"4mm":        {"iso4", "din4"},
		"4 mm":       {"iso4", "din4"},
		"4":          {"iso4", "din4", "ford4", "zahn4"},
		"4 cup":      {"iso4", "din4", "ford4", "zahn4"},
		"DIN/ISO":    {"iso3", "iso4", "iso5", "iso6", "din4"},
		"ASTM 4":     {"ford4", "zahn4"},
		"ford4 zahn": {"ford4", "zahn4"},
		"zahn":       {"zahn1", "zahn2", "zahn3", "zahn4", "zahn5"},
	} {
		_, err := coat.FindCup(text)
		var which *coat.AmbiguousCup
		require.ErrorAs(t, err, &which, text)
		var ids []string
		for _, c := range which.Candidates {
			ids = append(ids, c.ID)
		}
		assert.Equal(t, want, ids, text)
	}
	_, err := coat.FindCup("4mm")
	assert.EqualError(t, err, `cup "4mm": which one, iso4 or din4?`)
}

func TestUnknownCupListsTheKnownOnes(t *testing.T) {
	for _, text := range []string{"", "7 mm", "din5", "ford 3 4", "bucket", "iso 9", "4 µm", strings.Repeat("4", 500)} {
		_, err := coat.FindCup(text)
		var unknown *coat.UnknownCup
		require.ErrorAs(t, err, &unknown, text)
		assert.Contains(t, err.Error(), "iso4, iso5, iso6, din4, ford1")
		assert.Less(t, len(err.Error()), 250)
	}
}

func FuzzFindCup(f *testing.F) {
	for _, s := range []string{"din4", "4mm", "ASTM D1200 Ford #4", "zahn", "ISO 2431:4", "\xff4"} {
		f.Add(s)
	}
	known := map[string]bool{}
	for _, c := range coat.Cups() {
		known[c.ID] = true
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := coat.FindCup(s)
		if err == nil {
			assert.True(t, known[c.ID])
			return
		}
		var which *coat.AmbiguousCup
		var unknown *coat.UnknownCup
		if errors.As(err, &which) {
			assert.GreaterOrEqual(t, len(which.Candidates), 2)
		} else {
			assert.ErrorAs(t, err, &unknown)
		}
		assert.NotEmpty(t, err.Error())
	})
}
