package unit_test

import (
	"testing"
	"unicode/utf8"

	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The characters are those of Unicode's code charts: Latin-1, general punctuation, number
// forms, half- and full-width forms.
func TestWhatLooksAlikeIsReadAlike(t *testing.T) {
	for _, c := range []struct {
		typed, plain string
		of           *unit.Quantity
	}{
		{"24ºC", "24°C", unit.Temperature},
		{"24\u00a0ºC", "24 °C", unit.Temperature},
		{"24℃", "24°C", unit.Temperature},
		{"75℉", "75°F", unit.Temperature},
		{"75˚F", "75°F", unit.Temperature},
		{"\u22125 C", "-5 C", unit.Temperature},
		{"–5℃", "-5°C", unit.Temperature},
		{"25′", "25'", unit.Run},
		{"25’", "25'", unit.Run},
		{"6″", `6"`, unit.Distance},
		{"6”", `6"`, unit.Distance},
		{"6′′", "6''", unit.Distance},
		{"⅜in", "3/8in", unit.Bore},
		{"1½ in", "1 1/2 in", unit.Bore},
		{"1\u202f½″", `1 1/2"`, unit.Bore},
		{"3⁄8 in", "3/8 in", unit.Bore},
		{"９０ｐｓｉ", "90psi", unit.Pressure},
		{"６．２　ｂａｒ", "6.2 bar", unit.Pressure},
		{"６，２ bar", "6,2 bar", unit.Pressure},
		{"45％", "45%", unit.Share},
		{"1.2m²", "1.2m2", unit.Surface},
		{"12 ft²", "12 ft2", unit.Surface},
		{"50 cm³", "50 cm3", unit.Tank},
		{"100µm", "100um", unit.Film},
		{"100 μm", "100 um", unit.Film},
		{"5ℓ", "5l", unit.Tank},
	} {
		assert.Equal(t, c.plain, unit.Fold(c.typed))
		got, err := c.of.Read(c.typed, unit.US)
		require.NoError(t, err, c.typed)
		want, err := c.of.Read(c.plain, unit.US)
		require.NoError(t, err, c.plain)
		assert.Equal(t, want, got, c.typed)
		for _, r := range c.typed {
			assert.True(t, c.of.Takes(r), "%s: %q", c.typed, r)
		}
	}
	for typed, stays := range map[string]string{"10²psi": "10²psi", "²": "²", "٣٤psi": "٣٤psi", "año": "año", "\xff½": "\xff½"} {
		assert.Equal(t, stays, unit.Fold(typed))
		_, err := unit.Pressure.Read(typed, unit.US)
		assert.Error(t, err, typed)
	}
	assert.False(t, unit.Pressure.Takes('²'))
	assert.False(t, unit.Share.Takes('½'))
}

// Folding again changes nothing, and what is ASCII stays.
func TestFoldingOnceIsEnough(t *testing.T) {
	alike := []rune("0123456789 .,/º℃℉−–′″½⅜²³ｐ９％　\u00a0µx'\"")
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.SampledFrom(alike))).Draw(t, "text")
		once := unit.Fold(text)
		if again := unit.Fold(once); again != once {
			t.Fatalf("%q, then %q", once, again)
		}
		if utf8.RuneCountInString(text) == len(text) && once != text {
			t.Fatalf("%q became %q", text, once)
		}
	})
}

// A point before exactly three digits may mark thousands, where there are at most three digits
// before it; each reading can be typed so that it is no other.
func TestAPointBeforeThreeDigitsHasTwoReadings(t *testing.T) {
	for typed, c := range map[string]struct{ grouped, one, other string }{
		"1.500m":    {"1500m", "1500m", "1.5m"},
		"1.125 m":   {"1125 m", "1125 m", "1.1250 m"},
		"12.000 ft": {"12000 ft", "12000 ft", "12 ft"},
		"-1.050m":   {"-1050m", "-1050m", "-1.05m"},
		"+1.500m":   {"1500m", "+1500m", "+1.5m"},
		"0.500m":    {},
		"00.500m":   {},
		"1.50m":     {},
		"1.5000m":   {},
		"1500.125m": {},
		"1.500":     {"1500", "1500", "1.5"},
	} {
		r, err := unit.Run.Read(typed, unit.Metric)
		require.NoError(t, err, typed)
		if c.grouped == "" {
			assert.Zero(t, r.Grouped, typed)
			continue
		}
		want, err := unit.Run.Read(c.grouped, unit.Metric)
		require.NoError(t, err)
		assert.Equal(t, want.SI, r.Grouped, typed)
		one, other := r.TwoWays(typed)
		assert.Equal(t, []string{c.one, c.other}, []string{one, other}, typed)
		for text, si := range map[string]float64{one: r.Grouped, other: r.SI} {
			again, err := unit.Run.Read(text, unit.Metric)
			require.NoError(t, err, text)
			assert.Equal(t, si, again.SI, text)
			assert.Zero(t, again.Grouped, text)
		}
	}
}
