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
