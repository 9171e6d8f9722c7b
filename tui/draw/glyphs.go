// Package draw turns numbers into pictures made of characters: large digits, bars.
// Numbers in, lines of text out; every character is one column wide and nothing is
// coloured.
//
//	for _, row := range draw.Number("29", draw.Large, draw.Blocks) { ... }
package draw

// Glyphs is a set of characters to draw with, each one column wide.
type Glyphs struct {
	Full         rune // a whole cell of ink
	Upper, Lower rune // half a cell of ink; 0 where the set has none
	Rule         rune // a horizontal line
	Between      rune // between two pieces of a line of text
	Cursor       rune // where the next character goes
}

// Blocks is for terminals that show Unicode. All of it is in the old PC character set,
// which the fonts of bare consoles have too.
var Blocks = Glyphs{Full: '█', Upper: '▀', Lower: '▄', Rule: '─', Between: '·', Cursor: '▌'}

// ASCII is for all others.
var ASCII = Glyphs{Full: '#', Rule: '-', Between: '|', Cursor: '_'}
