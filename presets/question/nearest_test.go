package question

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Published examples of the distance: kitten and sitting, saturday and sunday (Levenshtein's,
// any text on string matching); ca and abc, 3 where no letter is changed twice.
func TestChanges(t *testing.T) {
	for _, x := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3}, {"saturday", "sunday", 3}, {"ca", "abc", 3}, {"ca", "ac", 1},
		{"", "", 0}, {"", "clear", 5}, {"claer", "clear", 1}, {"clear", "clear", 0},
	} {
		assert.Equal(t, x.want, changes(x.a, x.b, 99), "%s %s", x.a, x.b)
	}
}

// As many changes lead there as back, none where they are the same, no fewer than their
// lengths differ by and no more than the longer one has letters.
func TestChangesAreADistance(t *testing.T) {
	text := rapid.StringMatching(`[abc]{0,8}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := text.Draw(t, "a"), text.Draw(t, "b")
		d := changes(a, b, 99)
		assert.Equal(t, d, changes(b, a, 99))
		assert.Equal(t, a == b, d == 0)
		assert.GreaterOrEqual(t, d, max(len(a)-len(b), len(b)-len(a)))
		assert.LessOrEqual(t, d, max(len(a), len(b)))
		most := rapid.IntRange(0, 8).Draw(t, "most")
		assert.Equal(t, d <= most, changes(a, b, most) <= most)
	})
}
