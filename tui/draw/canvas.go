package draw

import (
	"math"
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// canvas is a grid of characters, each with its role. What is put outside of it is not
// drawn.
type canvas struct {
	w, h int
	g    Glyphs
	cell []cell
}

type cell struct {
	char rune
	role Role
	text bool // of a text, its blanks too: no dot comes between
}

// mostSide bounds a picture's width and height, far beyond any screen.
const mostSide = 1000

// newCanvas is a blank canvas of at least one cell.
func newCanvas(w, h int, g Glyphs) *canvas {
	w, h = min(max(w, 1), mostSide), min(max(h, 1), mostSide)
	c := &canvas{w: w, h: h, g: g, cell: make([]cell, w*h)}
	for i := range c.cell {
		c.cell[i].char = ' '
	}
	return c
}

// put sets a character.
func (c *canvas) put(x, y int, char rune, role Role) {
	if x >= 0 && x < c.w && y >= 0 && y < c.h {
		c.cell[y*c.w+x] = cell{char: char, role: role}
	}
}

// at is the character at a place, 0 outside.
func (c *canvas) at(x, y int) rune {
	if x < 0 || x >= c.w || y < 0 || y >= c.h {
		return 0
	}
	return c.cell[y*c.w+x].char
}

// run puts a character n times, to the right.
func (c *canvas) run(x, y, n int, char rune, role Role) {
	for i := max(x, 0); i < min(x+n, c.w); i++ {
		c.put(i, y, char, role)
	}
}

// clean is text in which each character is one column wide: one that takes none is left
// out, one that takes two is a question mark.
func clean(text string) string {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return strings.Map(narrow, text)
		}
	}
	return text
}

func narrow(r rune) rune {
	if r >= ' ' && r <= '~' || r > 0xAD && r < 0x300 {
		return r
	}
	switch ansi.StringWidth(string(r)) {
	case 0:
		return -1
	case 1:
		return r
	}
	return '?'
}

// length is how many columns a text takes.
func length(text string) int { return utf8.RuneCountInString(clean(text)) }

// plain is a name without what it has in brackets, where it is longer than w columns.
func plain(name string, w int) string {
	if length(name) > w {
		name, _, _ = strings.Cut(name, " (")
	}
	return name
}

// nameTo is a name in at most w columns.
func nameTo(name string, w int) string { return cutTo(plain(name, w), w) }

// nameIn is a name in one row of at most w columns, or in two, parted at a blank that is not
// behind a number.
func nameIn(name string, w int) (rows [2]string) {
	if name = plain(name, w); length(name) > w {
		for at := 1; at < len(name); at++ {
			behind := name[at-1]
			if number := '0' <= behind && behind <= '9'; name[at] == ' ' && !number && length(name[:at]) <= w {
				rows = [2]string{name[:at], cutTo(name[at+1:], w)}
			}
		}
	}
	if rows[0] == "" {
		rows[0] = cutTo(name, w)
	}
	return rows
}

// cutTo is a text in at most w columns, without the words that have no room; a first word that
// is longer is cut.
func cutTo(text string, w int) string {
	text = clean(text)
	n := 0
	for i := range text {
		if n == w {
			if at := strings.LastIndexByte(text[:i], ' '); at > 0 && text[i] != ' ' {
				i = at
			}
			return strings.TrimRight(text[:i], " ")
		}
		n++
	}
	if w < 1 {
		return ""
	}
	return text
}

// figure is a figure where it fits in w columns, else nothing: cut, it would tell another.
func figure(text string, w int) string {
	if length(text) > w {
		return ""
	}
	return text
}

// text puts a text and returns the columns it took.
func (c *canvas) text(x, y int, text string, role Role) int {
	n := 0
	for _, r := range clean(text) {
		c.put(x+n, y, r, role)
		if c.at(x+n, y) != 0 {
			c.cell[y*c.w+x+n].text = true
		}
		n++
	}
	return n
}

// middle puts a text with its middle at a column, moved as far as it takes to stay between
// two others.
func (c *canvas) middle(x, y, left, right int, text string, role Role) {
	n := length(text)
	x -= n / 2
	x = max(min(x, right-n+1), left)
	c.text(x, y, cutTo(text, right-left+1), role)
}

// blank reports whether n cells from a place on hold nothing.
func (c *canvas) blank(x, y, n int) bool {
	for i := x; i < x+n; i++ {
		if was := c.at(i, y); was != ' ' && was != 0 {
			return false
		}
	}
	return true
}

// rows are the canvas's rows without the blanks behind them, inked.
func (c *canvas) rows(ink Ink) []string {
	rows := make([]string, c.h)
	row := make([]byte, 0, 3*c.w) // no character of the sets takes more bytes
	for y := range rows {
		row = row[:0]
		cells := c.cell[y*c.w : (y+1)*c.w]
		for x := 0; x < len(cells); {
			if cells[x].char == ' ' {
				row = append(row, ' ')
				x++
				continue
			}
			end := piece(cells, x)
			from := len(row)
			for _, k := range cells[x:end] {
				row = utf8.AppendRune(row, k.char)
			}
			if ink != nil {
				row = append(row[:from], ink(cells[x].role, string(row[from:]))...)
			}
			x = end
		}
		rows[y] = strings.TrimRight(string(row), " ")
	}
	return rows
}

// piece is the end of the piece that begins at a cell: characters of its role, with the
// blanks between them but not those behind.
func piece(cells []cell, x int) (end int) {
	role := cells[x].role
	for i := x; i < len(cells); i++ {
		switch {
		case cells[i].char == ' ':
		case cells[i].role != role:
			return end
		default:
			end = i + 1
		}
	}
	return end
}

// key is a piece of a legend: a sign and what it means.
type key struct {
	sign rune
	text string
	role Role
}

// keyGap is between two keys of a row.
const keyGap = 3

// legendRows is how many rows the keys take at a width.
func legendRows(keys []key, w int) int {
	return new(canvas).legend(keys, 0, w)
}

// legend puts the keys in as many rows as they need, from a row on, and returns how many.
// Keys without a text are left out.
func (c *canvas) legend(keys []key, y, w int) int {
	n, x := 0, 0
	for _, k := range keys {
		if k.text == "" {
			continue
		}
		text := nameTo(k.text, w-2)
		long := length(text) + 2
		if n == 0 || x+long > w {
			n, x = n+1, 0
		}
		c.put(x, y+n-1, k.sign, k.role)
		c.text(x+2, y+n-1, text, RoleText)
		x += long + keyGap
	}
	return n
}

// keysWidth is how many columns keys take under each other, 0 where there are none.
func keysWidth(keys []key) (w int) {
	for _, k := range keys {
		w = max(w, length(k.text)+2)
	}
	return w
}

// list puts keys under each other.
func (c *canvas) list(keys []key, x, y int) {
	for i, k := range keys {
		c.put(x, y+i, k.sign, k.role)
		c.text(x+2, y+i, cutTo(k.text, c.w-x-2), RoleText)
	}
}

// round is the nearest whole number.
func round(v float64) int { return int(math.Round(v)) }
