package tui

import (
	"strings"
	"testing"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// In each case the bar is the cursor.
func TestEditingAField(t *testing.T) {
	key := func(kind tea.KeyType) tea.KeyMsg { return tea.KeyMsg{Type: kind} }
	alt := func(kind tea.KeyType, runes ...rune) tea.KeyMsg {
		return tea.KeyMsg{Type: kind, Runes: runes, Alt: true}
	}
	for _, c := range []struct {
		before, after string
		press         tea.KeyMsg
	}{
		{"25ft|", "25f|t", key(tea.KeyLeft)},
		{"|25ft", "|25ft", key(tea.KeyLeft)},
		{"25|ft", "25f|t", key(tea.KeyRight)},
		{"25ft|", "25ft|", key(tea.KeyRight)},
		{"25ft|", "|25ft", key(tea.KeyHome)},
		{"|25ft", "25ft|", key(tea.KeyEnd)},
		{"25ft|", "25f|", key(tea.KeyBackspace)},
		{"|25ft", "|25ft", key(tea.KeyBackspace)},
		{"2|5ft", "2|ft", key(tea.KeyDelete)},
		{"25ft|", "25ft|", key(tea.KeyDelete)},
		{"25 ft 3/8 |in", "25 ft |3/8 in", key(tea.KeyCtrlLeft)},
		{"25 | ft in", "25  ft| in", key(tea.KeyCtrlRight)},
		{"25 ft 3/8 |in", "25 ft |in", key(tea.KeyCtrlW)},
		{"25| ft in", "25| in", alt(tea.KeyRunes, 'd')},
		{"25 |ft", "|ft", key(tea.KeyCtrlU)},
		{"25 |ft", "25 |", key(tea.KeyCtrlK)},
		{"2|5ft", "2|5ft", key(tea.KeyPgUp)},
	} {
		text, behind, _ := strings.Cut(c.before, "|")
		f := field{}
		f.set(text + behind)
		f.cursor = len([]rune(text))
		f.edit(c.press)
		assert.Equal(t, c.after, f.row('|', 80), "%s on %s", c.press, c.before)
	}
}

// Whatever is pressed, the text is no longer than it may be, the cursor stands in it, and
// what is typed comes before the cursor.
func TestAFieldHoldsItsBounds(t *testing.T) {
	kinds := []tea.KeyType{tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyBackspace, tea.KeyDelete, tea.KeyCtrlLeft, tea.KeyCtrlRight, tea.KeyCtrlW, tea.KeyCtrlU, tea.KeyCtrlK}
	rapid.Check(t, func(t *rapid.T) {
		var f field
		for range rapid.IntRange(1, 40).Draw(t, "presses") {
			if rapid.Bool().Draw(t, "type") {
				typed := rapid.StringOfN(rapid.RuneFrom(nil, unicode.L, unicode.Nd, unicode.Zs), 1, 20, -1).Draw(t, "typed")
				before := string(f.text[:f.cursor])
				f.insert([]rune(typed))
				assert.True(t, strings.HasPrefix(before+typed, string(f.text[:f.cursor])))
				assert.True(t, len(f.text) == longestText || string(f.text[:f.cursor]) == before+typed)
			} else {
				f.edit(tea.KeyMsg{Type: rapid.SampledFrom(kinds).Draw(t, "key")})
			}
			assert.LessOrEqual(t, len(f.text), longestText)
			assert.GreaterOrEqual(t, f.cursor, 0)
			assert.LessOrEqual(t, f.cursor, len(f.text))
		}
	})
}
