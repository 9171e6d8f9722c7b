package picture

// A cell's size, what its text takes of it, and where the middle of its lines is, in the
// picture's units. Monospace fonts are about 0.6 of their size wide.
const (
	cellWide, cellHigh = 9, 18
	fontSize, baseline = 15, 14
	midX, midY         = cellWide / 2, cellHigh / 2
	underY             = 16
)

// box is a filled rectangle; shade is the quarters of its fill that show.
type box struct {
	x, y, w, h int
	shade      int
	paint
}

const solid = 4

func across(from, to int) box { return box{x: from, y: midY, w: to - from, h: 1, shade: solid} }
func down(from, to int) box   { return box{x: midX, y: from, w: 1, h: to - from, shade: solid} }

// shapes are the characters that are drawn and not written, so that they join from cell
// to cell whatever the font: blocks, shades and lines.
var shapes = map[rune][]box{
	'█': {{w: cellWide, h: cellHigh, shade: solid}},
	'▀': {{w: cellWide, h: midY, shade: solid}},
	'▄': {{y: midY, w: cellWide, h: cellHigh - midY, shade: solid}},
	'▌': {{w: midX, h: cellHigh, shade: solid}},
	'▐': {{x: midX, w: cellWide - midX, h: cellHigh, shade: solid}},
	'░': {{w: cellWide, h: cellHigh, shade: 1}},
	'▒': {{w: cellWide, h: cellHigh, shade: 2}},
	'▓': {{w: cellWide, h: cellHigh, shade: 3}},
	'─': {across(0, cellWide)},
	'│': {down(0, cellHigh)},
	'┌': {across(midX, cellWide), down(midY, cellHigh)},
	'┐': {across(0, midX+1), down(midY, cellHigh)},
	'└': {across(midX, cellWide), down(0, midY+1)},
	'┘': {across(0, midX+1), down(0, midY+1)},
	'├': {across(midX, cellWide), down(0, cellHigh)},
	'┤': {across(0, midX+1), down(0, cellHigh)},
	'┬': {across(0, cellWide), down(midY, cellHigh)},
	'┴': {across(0, cellWide), down(0, midY+1)},
	'┼': {across(0, cellWide), down(0, cellHigh)},
	'╭': {across(midX, cellWide), down(midY, cellHigh)},
	'╮': {across(0, midX+1), down(midY, cellHigh)},
	'╰': {across(midX, cellWide), down(0, midY+1)},
	'╯': {across(0, midX+1), down(0, midY+1)},
	'━': {heavy(0, cellWide)},
	'╸': {heavy(0, midX)},
	'╺': {heavy(midX, cellWide)},
	'╾': {heavy(0, midX), across(midX, cellWide)},
	'╼': {across(0, midX), heavy(midX, cellWide)},
}

// heavy is a heavy line across.
func heavy(from, to int) box { return box{x: from, y: midY - 1, w: to - from, h: 3, shade: solid} }

// The four quarters of a cell, from the upper left, the upper right below that.
var quarter = [4]box{
	{w: midX, h: midY, shade: solid}, {x: midX, w: cellWide - midX, h: midY, shade: solid},
	{y: midY, w: midX, h: cellHigh - midY, shade: solid}, {x: midX, y: midY, w: cellWide - midX, h: cellHigh - midY, shade: solid},
}

// quarters are the characters of one quarter to three, in the order of Unicode from '▖' on.
var quarters = [...][]int{{2}, {3}, {0}, {0, 2, 3}, {0, 3}, {0, 1, 2}, {0, 1, 3}, {1}, {1, 2}, {1, 2, 3}}

// Braille's dots: where each of its eight bits stands, and how large it is.
var (
	dotX = [8]int{1, 1, 1, 6, 6, 6, 1, 6}
	dotY = [8]int{1, 5, 10, 1, 5, 10, 14, 14}
)

const (
	firstBraille, lastBraille = '\u2800', '\u28ff'
	dotSide                   = 2
	leastEighth, mostEighth   = '▁', '▇'
	firstQuarter              = '▖'
)

// shapeOf is what a character is drawn as, none where it is written.
func shapeOf(c rune) (all []box) {
	switch {
	case c >= firstBraille && c <= lastBraille:
		for bit := range dotX {
			if (c-firstBraille)>>bit&1 == 1 {
				all = append(all, box{x: dotX[bit], y: dotY[bit], w: dotSide, h: dotSide, shade: solid})
			}
		}
		return all
	case c >= leastEighth && c <= mostEighth && c != '▄':
		high := int(c-leastEighth+1) * cellHigh / 8
		return []box{{y: cellHigh - high, w: cellWide, h: high, shade: solid}}
	case c >= firstQuarter && c < firstQuarter+rune(len(quarters)):
		for _, q := range quarters[c-firstQuarter] {
			all = append(all, quarter[q])
		}
		return all
	}
	return shapes[c]
}

// at is the box as it lies in a cell of the frame.
func (b box) at(x, y int, p paint) box {
	b.x, b.y, b.paint = b.x+x*cellWide, b.y+y*cellHigh, p
	return b
}

// joined makes one box of those that lie side by side, and then of those that lie one
// below the other: fewer of them, and no seams between. The boxes come row by row, each
// row from the left.
func joined(boxes []box) []box {
	boxes = grown(boxes, func(b box) box { b.w = 0; return b }, func(b box) box { b.x += b.w; b.w = 0; return b })
	return grown(boxes, func(b box) box { b.h = 0; return b }, func(b box) box { b.y += b.h; b.h = 0; return b })
}

// grown adds each box to the one whose end is its start.
func grown(boxes []box, start, end func(box) box) (out []box) {
	ends := map[box]int{}
	for _, b := range boxes {
		i, ok := ends[start(b)]
		if ok {
			out[i].w = max(out[i].w, b.x+b.w-out[i].x)
			out[i].h = max(out[i].h, b.y+b.h-out[i].y)
		} else {
			i, out = len(out), append(out, b)
		}
		ends[end(out[i])] = i
	}
	return out
}
