// Package draw turns numbers into pictures made of characters: large digits, a gauge, a
// knob, the gun before the panel, the line as a pipe, the day, ranges, curves, films, a
// mixing cup, the time of a job. Numbers and short texts in, rows of text out; every
// character is one column wide. A picture computes no physics and holds no words: what is
// said is the caller's.
//
//	for _, row := range draw.Digits("29", 7, draw.Blocks) { ... }
//	rows := draw.Gauge{Scale: scale, Set: draw.Mark{At: 31, Text: "set 31"}}.Rows(40, 14, draw.Blocks, nil)
//
// All pictures keep to the same rules. Rows gives at most h rows of at most w columns, or
// nil where the room is less than the picture's least or there is nothing to draw; the
// caller then says the same in text. A Mark or Band without a text, or with a NaN, is not
// drawn. What lies off a scale stands at its end with < or >.
//
// Lines, arcs and fills are dots, 2 x 4 in a cell, where the set has Braille, else the
// characters whose shape is nearest. Text wins over dots. A cell has one role: that of the
// highest rank of what is in it.
package draw

// Glyphs is a set of characters to draw with, each one column wide.
type Glyphs struct {
	Full              rune // a whole cell of ink
	Upper, Lower      rune // half a cell of ink; 0 where the set has none
	Left, Right       rune // the same, upright
	Light, Mid, Dark  rune // shades between blank and Full
	Dot               rune // a single point
	Rule, Upright     rune // a line across, a line down
	Down, Up, Cross   rune // a line across with a branch down, up, both
	TeeRight, TeeLeft rune // a line down with a branch to the right, to the left
	DownRight         rune // a corner with a branch down and one to the right
	DownLeft          rune
	UpRight, UpLeft   rune
	Between           rune // between two pieces of a line of text
	Cursor            rune // where the next character goes
	Done              rune // before what is done
	Braille           rune // the blank of the 256 with 2 x 4 dots; 0 where the set has none
}

// Blocks is for terminals that show Unicode. With its Braille come rounded corners, quarters
// and eighths of a cell; all else is in the old PC character set, which the fonts of bare
// consoles have too.
var Blocks = Glyphs{
	Full: '█', Upper: '▀', Lower: '▄', Left: '▌', Right: '▐', Light: '░', Mid: '▒', Dark: '▓', Dot: '·',
	Rule: '─', Upright: '│', Down: '┬', Up: '┴', Cross: '┼', TeeRight: '├', TeeLeft: '┤',
	DownRight: '┌', DownLeft: '┐', UpRight: '└', UpLeft: '┘', Between: '·', Cursor: '▌', Done: '√', Braille: '\u2800',
}

// ASCII is for all others.
var ASCII = Glyphs{
	Full: '#', Light: ':', Mid: '=', Dark: '%', Dot: '.',
	Rule: '-', Upright: '|', Down: '+', Up: '+', Cross: '+', TeeRight: '+', TeeLeft: '+',
	DownRight: '+', DownLeft: '+', UpRight: '+', UpLeft: '+', Between: '|', Cursor: '_', Done: 'x',
}
