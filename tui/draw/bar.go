package draw

import (
	"math"
	"strings"
)

// Bar is a bar of a share, 0 to 1, of a width in columns, without the blank behind it.
// A share above 0 shows at least one cell; one outside 0 to 1 counts as the nearer end.
func Bar(share float64, width int, g Glyphs) string {
	if !(share > 0) || width < 1 {
		return ""
	}
	n := int(math.Round(min(share, 1) * float64(width)))
	return strings.Repeat(string(g.Full), max(n, 1))
}
