package draw

import (
	"math"
	"strconv"
)

// PipePart is a part of the line, in the order the air passes it.
type PipePart struct {
	Name    string
	In, Out float64 // the pressure before and after it; where In is not the Out before it, the line jumps
	Bore    float64 // its inner diameter, in the same unit for all
	Length  float64 // of a hose; those that have one share the width by it
	Own     bool    // of the gun itself: it cannot be changed
	Worst   bool    // the one Pipe.Worst is said of
}

// Pipe is the line from the wall to the gun: the pressure as it falls, over the parts as a
// pipe with each bore to scale.
//
//	draw.Pipe{Parts: parts, Pressure: draw.NewScale(0, 40, 5, psi), Title: "psi", Worst: "costs most: 2.3"}
type Pipe struct {
	Parts    []PipePart
	Pressure Scale  // up; it should begin at 0
	Title    string // over it
	Worst    string // said at the worst part
}

const (
	leastPipeWidth  = 30
	leastPipeHeight = 9
	mostParts       = 40
	leastPartWidth  = 3 // columns, for a number
	// Rows of the pressure and of the pipe at least, and of the pipe where there is room.
	leastPressure, leastPipe, tallPipe = 4, 2, 4
	// tallPipePicture is the rows from where the pipe is tall.
	tallPipePicture = 16
)

// Rows draws the pipe. It needs 30 columns and 9 rows, and room for each part. The names
// stand under the parts where each has room for its own in two rows; else numbers stand
// there and the names with them in rows below, as many as there is room for.
func (p Pipe) Rows(w, h int, g Glyphs, ink Ink) []string {
	parts := p.finite()
	if w < leastPipeWidth || h < leastPipeHeight || len(parts) == 0 || len(parts) > mostParts || !p.Pressure.ok() {
		return nil
	}
	c := newCanvas(w, h, g)
	left := max(tickWidth(p.Pressure, c.w/6), 1) + 2
	across := c.w - left
	if across < len(parts)*leastPartWidth {
		return nil
	}
	pipe := leastPipe
	if c.h >= tallPipePicture {
		pipe = tallPipe
	}
	l := layParts(parts, across)
	names := l.names(false)
	if free := max(c.h-pipe-leastPressure-1, 1); len(names) > free {
		names = l.names(true)[:free]
	}
	rows := c.h - 1 - pipe - len(names)
	c.text(0, 0, cutTo(p.Title, left+across/2), RoleAxis)
	f := newPlot(c, left, 1, across, rows, Scale{High: 1}, p.Pressure)
	f.upAxis()
	p.mark(f, l)
	p.falls(f, l)
	bore := newDots(across, pipe)
	l.bores(bore)
	bore.onto(c, left, 1+rows)
	for i, row := range names {
		for _, t := range row {
			c.text(left+t.x, 1+rows+pipe+i, t.text, t.role)
		}
	}
	return c.rows(ink)
}

// finite are the parts that can be drawn.
func (p Pipe) finite() (parts []PipePart) {
	for _, k := range p.Parts {
		if in, out := k.In-k.Out, k.Bore+k.Length; !math.IsNaN(in-out) && !math.IsInf(in, 0) && !math.IsInf(out, 0) {
			parts = append(parts, k)
		}
	}
	return parts
}

// role tells parts that can be changed, the one that costs most, and the gun's own apart.
func (k PipePart) role() Role {
	switch {
	case k.Worst:
		return RoleWorst
	case k.Own:
		return RoleOwn
	}
	return RoleLost
}

// laid is where each part stands: its first column, and that behind the last one; and
// whether its name stands under it.
type laid struct {
	parts    []PipePart
	at       []int
	numbered bool
}

// layParts shares out columns: to each part what its name takes, or its number where there
// is less room, and what is left to the hoses by their lengths, else to all alike.
func layParts(parts []PipePart, across int) laid {
	l := laid{parts: parts, at: make([]int, len(parts)+1)}
	least, sum := make([]int, len(parts)), 0
	for i, k := range parts {
		least[i] = max(nameWidth(k.Name)+1, leastPartWidth)
		sum += least[i]
	}
	if l.numbered = sum > across; l.numbered {
		for i := range least {
			least[i] = leastPartWidth
		}
		sum = len(parts) * leastPartWidth
	}
	long := 0.0
	for _, k := range parts {
		long += max(k.Length, 0)
	}
	shared, before := 0.0, 0
	for i, k := range parts {
		if long > 0 {
			shared += max(k.Length, 0) / long
		} else {
			shared += 1 / float64(len(parts))
		}
		before += least[i]
		l.at[i+1] = before + int(shared*float64(across-sum)+1e-6)
	}
	l.at[len(parts)] = across
	return l
}

// nameWidth is the fewest columns a name takes in at most two rows.
func nameWidth(name string) int {
	least := length(name)
	for w := least - 1; w > 0; w-- {
		rows := nameIn(name, w)
		if rows[1] == "" || length(rows[0])+1+length(rows[1]) < length(plain(name, w)) {
			break
		}
		least = w
	}
	return least
}

// placed is a text at a column.
type placed struct {
	x    int
	text string
	role Role
}

// names are the rows of texts under the parts; those in rows of their own begin with the
// worst part's where not all of them are to be shown.
func (l laid) names(cut bool) (rows [][]placed) {
	put := func(row, x, w int, text string, role Role) {
		for len(rows) <= row {
			rows = append(rows, nil)
		}
		rows[row] = append(rows[row], placed{x + max(w-length(text), 0)/2, text, role})
	}
	for i, k := range l.parts {
		x, w := l.at[i], l.at[i+1]-l.at[i]
		if l.numbered {
			put(0, x, w, strconv.Itoa(i+1), k.role())
			continue
		}
		for row, text := range nameIn(k.Name, w-1) {
			if text != "" {
				put(row, x, w, text, k.role())
			}
		}
	}
	if !l.numbered {
		return rows
	}
	row, x, across := 1, 0, l.at[len(l.parts)]
	add := func(i int) {
		text := strconv.Itoa(i+1) + " " + cutTo(l.parts[i].Name, across-4)
		if n := length(text); x > 0 && x+n > across {
			row, x = row+1, 0
		}
		put(row, x, 0, text, l.parts[i].role())
		x += length(text) + 2
	}
	for _, first := range [...]bool{true, false} {
		for i, k := range l.parts {
			if (cut && k.Worst) == first {
				add(i)
			}
		}
	}
	return rows
}

// ends are the first and the last dot of a part, the last one that of the next.
func (l laid) ends(i int) (from, to float64) {
	return float64(l.at[i] * dotsAcross), float64(l.at[i+1] * dotsAcross)
}

// falls draws the pressure, with a quiet ground under it and a step where it jumps.
func (p Pipe) falls(f plot, l laid) {
	before := l.parts[0].In
	for i, k := range l.parts {
		from, to := l.ends(i)
		a, b := f.py(k.In), f.py(k.Out)
		for x := int(from); x < int(to); x++ {
			y := along(from, a, to, b, float64(x))
			f.under(x, y, sparse, RoleFill)
		}
		if before != k.In {
			f.line(from, f.py(before), from, a, f.thick(2), k.role())
		}
		f.line(from, a, to, b, f.thick(2), k.role())
		before = k.Out
	}
	f.show()
}

// mark says what the worst part is over the line at its middle.
func (p Pipe) mark(f plot, l laid) {
	for i, k := range l.parts {
		if !k.Worst || p.Worst == "" {
			continue
		}
		from, to := l.ends(i)
		text := figure(p.Worst, f.w)
		n := length(text)
		x := min(max(start((from+to)/2, n), 0), f.w-n)
		// Over the highest of the line where the text stands.
		top := f.h - 1
		for j := range l.parts {
			if a, b := l.ends(j); b/dotsAcross >= float64(x) && a/dotsAcross <= float64(x+n) {
				top = min(top, row(f.py(max(l.parts[j].In, l.parts[j].Out))))
			}
		}
		f.canvas.text(f.left+x, f.top+max(top-1, -1), text, RoleWorst)
		return
	}
}

// bores draws the parts as a pipe, each bore to scale with the widest.
func (l laid) bores(d *dots) {
	widest := 0.0
	for _, k := range l.parts {
		widest = max(widest, k.Bore)
	}
	mid := float64(d.h-1) / 2
	half := func(k PipePart) float64 {
		if !(widest > 0) {
			return mid
		}
		return max(math.Round(k.Bore/widest*(mid-1)+0.5)-0.5, 0.5)
	}
	for i, k := range l.parts {
		from, to := l.ends(i)
		y := half(k)
		for _, side := range [...]float64{-1, 1} {
			d.line(from, mid+side*y, to-1, mid+side*y, 1, k.role())
			if i > 0 {
				d.line(from, mid+side*half(l.parts[i-1]), from, mid+side*y, 1, RoleAxis)
			}
		}
	}
}
