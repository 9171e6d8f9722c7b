package draw

import "math"

// Segment is one that air passes, with the pressure before and behind it.
type Segment struct {
	Name    string
	In, Out float64
	Worst   bool   // the one that Fall.Worst is said of
	Note    string // shown where there is room
}

// Fall is the pressure as it falls part by part, in the order the air passes them.
//
//	draw.Fall{Parts: parts, Text: psi, Worst: "costs most", Others: "others", End: "at the cap"}
type Fall struct {
	Parts  []Segment
	Text   func(float64) string // a pressure, or a loss of it, as a short figure
	Worst  string               // said of the worst part
	Others string               // names the row of those that have no row of their own
	End    string               // names the row of what is left; none where empty
}

const (
	leastFallWidth  = 30
	leastFallHeight = 3
	// A profile needs columns and rows enough to be stairs.
	leastStair         = 6
	leastProfileHeight = 8
)

// Rows draws the fall. It needs 30 columns and 3 rows.
//
// One row a part is what reads best: the name stands beside its bar, the losses stand
// under each other with their figures, and it holds at 60 by 12. The stairs show better
// that each part begins where the one before ended, but cut the names short, so they stand
// above the rows, where both fit: with the usual seven to ten parts not at 80 by 16, but at
// 116 by 28. Parts beyond the rows are gathered, the smallest losses first.
func (f Fall) Rows(w, h int, g Glyphs, ink Ink) []string {
	parts, top := f.finite()
	if w < leastFallWidth || h < leastFallHeight || !(top > 0) || f.Text == nil {
		return nil
	}
	c := newCanvas(w, h, g)
	need := len(parts)
	if f.End != "" {
		need++
	}
	y := 0
	if free := c.h - need - 1; free >= leastProfileHeight && c.w/len(parts) >= leastStair {
		f.profile(c, parts, top, free)
		y = free + 1
	}
	f.table(c, parts, top, y)
	c.h = min(c.h, y+need)
	return c.rows(ink)
}

// finite are the parts whose pressures can be drawn, and the highest of these.
func (f Fall) finite() (parts []Segment, top float64) {
	for _, p := range f.Parts {
		if d := p.In - p.Out; math.IsNaN(d) || math.IsInf(d, 0) || math.IsInf(p.In, 0) {
			continue
		}
		parts = append(parts, p)
		top = max(top, p.In, p.Out)
	}
	return parts, top
}

// gather keeps n of the parts in their order, those with the smallest losses gathered in
// one behind them. Its loss is theirs together, down to where the last part ends.
func (f Fall) gather(parts []Segment, n int) []Segment {
	if len(parts) <= n {
		return parts
	}
	kept := append([]Segment(nil), parts...)
	last := parts[len(parts)-1].Out
	rest := Segment{Name: f.Others, In: last, Out: last}
	for len(kept) >= n && len(kept) > 0 {
		least := 0
		for i, p := range kept {
			if lighter(p, kept[least]) {
				least = i
			}
		}
		rest.In += kept[least].In - kept[least].Out
		kept = append(kept[:least], kept[least+1:]...)
	}
	return append(kept, rest)
}

// lighter reports whether a part goes before another when parts are gathered.
func lighter(p, q Segment) bool {
	if p.Worst != q.Worst {
		return q.Worst
	}
	return p.In-p.Out < q.In-q.Out
}

// table is one row a part: name, pressure before it, a bar of that pressure with what is
// lost at its end, and the loss.
func (f Fall) table(c *canvas, parts []Segment, top float64, y int) {
	rows := c.h - y
	if f.End != "" {
		rows--
	}
	end := parts[len(parts)-1].Out
	gathered := len(parts) > rows
	parts = f.gather(parts, rows)
	name, in, loss, note := length(f.End), length(f.Text(end)), 0, 0
	for _, p := range parts {
		name, in = max(name, length(p.Name)), max(in, length(f.Text(p.In)))
		loss = max(loss, length(f.lossText(p)))
		note = max(note, length(f.noteText(p)))
	}
	name, in, loss = min(name, c.w/3), min(in, c.w/5), min(loss, c.w/5)
	note = min(note, (c.w-name-in-loss-3)/2)
	if note < length(f.Worst) {
		note = 0 // a sign of the worst stands before its name in any case
	}
	bar := c.w - 2 - name - in - loss - note - 4
	at := [...]int{2, name + 3, name + in + 4, name + in + bar + 5, name + in + bar + loss + 6}
	put := func(p Segment, before string, whole bool) {
		role, sign, lost := RoleLost, ' ', c.g.Mid
		if p.Worst {
			role, sign, lost = RoleWorst, '>', c.g.Dark
		}
		c.put(0, y, sign, role)
		c.text(at[0], y, nameTo(p.Name, name), RoleText)
		before = figure(before, in)
		c.text(at[1]+in-length(before), y, before, RoleKept)
		kept, full := f.cells(p, top, bar)
		c.run(at[2], y, kept, c.g.Full, RoleKept)
		c.run(at[2]+kept, y, full-kept, lost, role)
		if p.In < 0 || p.Out < 0 {
			c.put(at[2], y, side(-1).arrow(), role)
		}
		if whole {
			text := figure(f.lossText(p), loss)
			c.text(at[3]+loss-length(text), y, text, role)
			c.text(at[4], y, cutTo(f.noteText(p), note), role)
		}
		y++
	}
	for i, p := range parts {
		before := f.Text(p.In)
		if gathered && i == len(parts)-1 {
			before = "" // they lie apart along the line
		}
		put(p, before, true)
	}
	if f.End != "" {
		put(Segment{Name: f.End, In: end, Out: end}, f.Text(end), false)
	}
}

// lossText is a part's loss in figures; a gain has a plus.
func (f Fall) lossText(p Segment) string {
	if p.Out > p.In {
		return "+" + f.Text(p.Out-p.In)
	}
	return "-" + f.Text(p.In-p.Out)
}

// noteText is what is said of a part.
func (f Fall) noteText(p Segment) string {
	if p.Worst {
		return f.Worst
	}
	return p.Note
}

// cells are how many of n cells the pressure behind a part takes, and the one before it. A
// loss takes one cell at least.
func (f Fall) cells(p Segment, top float64, n int) (kept, full int) {
	full = round(max(p.In, 0) / top * float64(n))
	kept = round(max(p.Out, 0) / top * float64(n))
	if p.Out < p.In && kept >= full {
		kept = max(full-1, 0)
	}
	return kept, max(full, kept)
}

// profile is the pressure as stairs, an equal column a part, in h rows: what is left
// filled, what is lost shaded, the names below and the pressures on top.
func (f Fall) profile(c *canvas, parts []Segment, top float64, h int) {
	wide := c.w / len(parts)
	names, under := make([][2]string, len(parts)), 1
	for i, p := range parts {
		if names[i] = nameIn(p.Name, wide-1); names[i][1] != "" {
			under = 2
		}
	}
	high := h - 1 - under
	for i, p := range parts {
		role, lost := RoleLost, c.g.Mid
		if p.Worst {
			role, lost = RoleWorst, c.g.Dark
		}
		kept, full := f.cells(p, top, high)
		x := i * wide
		for y := range full {
			char, r := c.g.Full, RoleKept
			if y >= kept {
				char, r = lost, role
			}
			c.run(x, high-y, wide-1, char, r)
		}
		if p.In < 0 || p.Out < 0 {
			c.put(x, high, side(-1).arrow(), role)
		}
		c.middle(x+wide/2-1, high-full, x, x+wide-2, figure(f.Text(p.In), wide-1), RoleKept)
		for n, name := range names[i][:under] {
			c.middle(x+wide/2-1, h-under+n, x, x+wide-2, name, RoleText)
		}
	}
}
