package draw

import "strings"

// Size is how large a number is drawn.
type Size uint8

// The sizes. Plain is one row of text. Small is three columns a digit, and three rows
// where the glyphs have halves, else five. Medium is five columns and Large six, both five
// rows.
const (
	Plain Size = iota
	Small
	Medium
	Large
)

const firstPixels = ' '

// pixels of each character that there is, from firstPixels on, five rows from the top.
var pixels = [...][5]string{
	'0' - firstPixels: {"###", "# #", "# #", "# #", "###"},
	'1' - firstPixels: {" # ", "## ", " # ", " # ", "###"},
	'2' - firstPixels: {"###", "  #", "###", "#  ", "###"},
	'3' - firstPixels: {"###", "  #", " ##", "  #", "###"},
	'4' - firstPixels: {"# #", "# #", "###", "  #", "  #"},
	'5' - firstPixels: {"###", "#  ", "###", "  #", "###"},
	'6' - firstPixels: {"###", "#  ", "###", "# #", "###"},
	'7' - firstPixels: {"###", "  #", " # ", " # ", " # "},
	'8' - firstPixels: {"###", "# #", "###", "# #", "###"},
	'9' - firstPixels: {"###", "# #", "###", "  #", "###"},
	'/' - firstPixels: {"  #", "  #", " # ", "#  ", "#  "},
	' ' - firstPixels: {" ", " ", " ", " ", " "},
	'.' - firstPixels: {" ", " ", " ", " ", "#"},
	'-' - firstPixels: {"   ", "   ", "###", "   ", "   "},
}

// Number draws a number such as "29", "-5.5" or "1 3/8": rows of equal width, from the top.
// Text with a character that is not a digit, a point, a sign, a bar or a blank comes back as
// it is, in one row, as does any with Plain.
func Number(text string, size Size, g Glyphs) []string {
	if size == Plain {
		return []string{text}
	}
	var dots [5]string
	for i, c := range text {
		if c < firstPixels || c-firstPixels >= rune(len(pixels)) || pixels[c-firstPixels][0] == "" {
			return []string{text}
		}
		p := pixels[c-firstPixels]
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

// mediumPixels widens the three pixels of a row of a digit to Medium's five columns: those
// not named have a middle pixel of one column between two of two.
func mediumPixels(row string) string {
	switch row {
	case " # ":
		return " ##  "
	case "## ":
		return "###  "
	case " ##":
		return " ####"
	}
	return row[:1] + row + row[2:]
}

// cells makes a row of cells of a row of pixels.
func cells(dots string, size Size, g Glyphs) string {
	chars := strings.Split(dots, gap)
	for i, row := range chars {
		switch {
		case size == Small:
		case size == Medium && len(row) == 3:
			chars[i] = mediumPixels(row)
		default:
			chars[i] = strings.NewReplacer("#", "##", " ", "  ").Replace(row)
		}
	}
	return strings.ReplaceAll(strings.Join(chars, " "), "#", string(g.Full))
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
