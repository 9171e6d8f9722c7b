package words_test

import (
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
)

// The decimal mark of each place is that of the Unicode CLDR, as the Go project's text library
// has it (golang.org/x/text, CLDR 32).
func TestDecimalsAreMarkedAsThePlaceDoes(t *testing.T) {
	for _, territory := range []string{"", "ES", "MX", "US", "AR", "BO", "CL", "CO", "CR", "CU", "DO", "EC", "GQ", "GT", "HN", "NI", "PA", "PE", "PH", "PR", "PY", "SV", "UY", "VE"} {
		locale, tag := "es", language.MustParse("es-419")
		if territory != "" {
			locale += "_" + territory
			tag = language.MustParse("es-" + territory)
		}
		w, ok := words.At(locale + ".UTF-8")
		require.True(t, ok)
		require.Equal(t, message.NewPrinter(tag).Sprintf("%.1f", 2.5), w.Marked("2.5"), locale)
	}
	for _, locale := range []string{"en_US", "en_GB", "en"} {
		w, ok := words.At(locale)
		require.True(t, ok)
		require.Equal(t, "2.5", w.Marked("2.5"))
	}
	_, ok := words.At("xx_ES")
	require.False(t, ok)
}

// Only numbers are marked: not what regulations, standards and sentences have between digits.
func TestOnlyDecimalsAreMarked(t *testing.T) {
	w, _ := words.At("es_ES")
	for text, want := range map[string]string{
		"2.15 bar, 0.5 mm":        "2,15 bar, 0,5 mm",
		"de -3.5 a 12.25 C":       "de -3,5 a 12,25 C",
		"1.2-1.4":                 "1,2-1,4",
		"\x1b[1;36m2.5\x1b[0m":    "\x1b[1;36m2,5\x1b[0m",
		"29 CFR 1910.134(i)":      "29 CFR 1910.134(i)",
		"TM 1-1500-344-23, A-8.3": "TM 1-1500-344-23, A-8.3",
		"1.2.3":                   "1.2.3",
		"fl.oz y 5. Fin":          "fl.oz y 5. Fin",
		"":                        "",
		".5 5.":                   ".5 5.",
	} {
		require.Equal(t, want, w.Marked(text))
		require.Equal(t, text, w.WithComma(false).Marked(text))
	}
}
