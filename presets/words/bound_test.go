package words_test

import (
	"strings"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
)

func TestANumberIsBoundToItsUnit(t *testing.T) {
	for text, want := range map[string]string{
		"":                                "",
		"as the shop has it":              "as the shop has it",
		"75 mL are left in the gun":       "75~mL are left in the gun",
		"from 9.7 fl oz to 19 fl oz.":     "from 9.7~fl~oz to 19~fl~oz.",
		"wall 31 psi, 5.5 in (5 to 6 in)": "wall 31~psi, 5.5~in (5~to 6~in)",
		"16 L/min":                        "16~L/min",
		"at 45% humidity":                 "at 45% humidity",
		"2 acabados, 3 manos":             "2 acabados, 3~manos",
		"12 ":                             "12 ",
		"an oz of it":                     "an oz of it",
	} {
		assert.Equal(t, strings.ReplaceAll(want, "~", words.NoBreak), words.Bound(text))
	}
}
