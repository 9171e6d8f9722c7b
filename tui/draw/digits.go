package draw

import "strings"

// Size is how large a number is drawn.
type Size uint8

// The sizes. Plain is one row of text. Small is three columns a digit, and three rows
// where the glyphs have halves, else five. Large is six columns and five rows.
const (
	Plain Size = iota
	Small
	Large
)

// pixels of each character, five rows from the top.
var pixels = map[rune][5]string{
	'0': {"###", "# #", "# #", "# #", "###"},
	'1': {" # ", "## ", " # ", " # ", "###"},
	'2': {"###", "  #", "###", "#  ", "###"},
	'3': {"###", "  #", " ##", "  #", "###"},
	'4': {"# #", "# #", "###", "  #", "  #"},
	'5': {"###", "#  ", "###", "  #", "###"},
	'6': {"###", "#  ", "###", "# #", "###"},
	'7': {"###", "  #", " # ", " # ", " # "},
	'8': {"###", "# #", "###", "# #", "###"},
	'9': {"###", "# #", "###", "  #", "###"},
	'.': {" ", " ", " ", " ", "#"},
	'-': {"   ", "   ", "###", "   ", "   "},
}

// Number draws a number such as "29" or "-5.5": rows of equal width, from the top. Text
// with a character that is not a digit, a point or a sign comes back as it is, in one
// row, as does any with Plain.
func Number(text string, size Size, g Glyphs) []string {
	if size == Plain {
		return []string{text}
	}
	var dots [5]string
	for i, c := range text {
		p, ok := pixels[c]
		if !ok {
			return []string{text}
		}
		for y := range dots {
			if i > 0 {
				dots[y] += gap
			}
			dots[y] += p[y]
		}
	}
	if size == Small && g.Upper != 0 {
		return halves(dots, g)
	}
	rows := make([]string, len(dots))
	for y := range dots {
		rows[y] = cells(dots[y], size, g)
	}
	return rows
}

// gap stands between two characters; it stays one column wide at every size.
const gap = "|"

// cells makes a row of cells of a row of pixels.
func cells(dots string, size Size, g Glyphs) string {
	wide := 1
	if size == Large {
		wide = 2
	}
	var b strings.Builder
	for _, d := range dots {
		switch d {
		case rune(gap[0]):
			b.WriteByte(' ')
		case '#':
			b.WriteString(strings.Repeat(string(g.Full), wide))
		default:
			b.WriteString(strings.Repeat(" ", wide))
		}
	}
	return b.String()
}

// halves puts two rows of pixels into each row of cells; the row missing under the
// last is blank.
func halves(dots [5]string, g Glyphs) []string {
	ink := [4]rune{' ', g.Lower, g.Upper, g.Full}
	rows := make([]string, 0, 3)
	for y := 0; y < len(dots); y += 2 {
		var b strings.Builder
		for x := range len(dots[y]) {
			at := 0
			if dots[y][x] == '#' {
				at += 2
			}
			if y+1 < len(dots) && dots[y+1][x] == '#' {
				at++
			}
			b.WriteRune(ink[at])
		}
		rows = append(rows, b.String())
	}
	return rows
}
