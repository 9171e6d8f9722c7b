package words_test

import (
	"regexp"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No sentence speaks of a name of the program: every word in one is the trade's.
func TestSentencesAreForThePainter(t *testing.T) {
	program := regexp.MustCompile(`[a-z]+_[a-z]|[a-z][A-Z]|%[a-z]|\bnull\b|\bnil\b`)
	units := regexp.MustCompile(`\b\d*(mL|kPa|cSt)\b`)
	require.NotEmpty(t, program.FindString("a faultOf"))
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, id := range w.IDs() {
			if strings.HasPrefix(id, "key-") {
				continue // as it is printed on the key
			}
			text := w.Text(unit.US, id, nil)
			for _, name := range w.Needs(id) {
				text = strings.ReplaceAll(text, "{"+name+"}", "")
			}
			assert.Empty(t, program.FindString(units.ReplaceAllString(text, "")), "%s of %s: %s", id, lang, text)
		}
	}
}
