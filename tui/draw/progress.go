package draw

import (
	"strconv"
	"strings"
)

// Progress is the steps of a way as one row: those done, the one now, those to come.
//
//	draw.Progress{Steps: []string{"coat", "gun", "line"}, Now: 1}
type Progress struct {
	Steps []string
	Now   int // the step that is now, from 0; as many as there are where all are done
}

// stepSigns are those of a step done, now, to come; and between them.
type stepSigns struct{ done, now, next, way, ahead rune }

// Rows draws the progress in one row. The names of all stand there where they fit, else that
// of the step now, else only the signs, else how many of how many. It needs a column for
// each of these.
func (p Progress) Rows(w, h int, g Glyphs, ink Ink) []string {
	if h < 1 || w < 1 || len(p.Steps) == 0 || len(p.Steps) > mostSide {
		return nil
	}
	c := newCanvas(w, 1, g)
	now := min(max(p.Now, 0), len(p.Steps))
	signs := stepSigns{'x', '>', 'o', '-', '-'}
	if g.Braille != 0 {
		signs = stepSigns{'●', '◆', '○', '━', '─'}
	}
	for _, named := range [...]func(int) bool{
		func(int) bool { return true },
		func(i int) bool { return i >= now-1 && i <= now+1 },
		func(i int) bool { return i == now },
		func(int) bool { return false },
	} {
		if p.width(named) <= c.w {
			p.put(c, now, signs, named)
			return c.rows(ink)
		}
	}
	count := strconv.Itoa(min(now+1, len(p.Steps))) + "/" + strconv.Itoa(len(p.Steps))
	if length(count) > c.w {
		return nil
	}
	c.text(0, 0, count, RoleMark)
	return c.rows(ink)
}

// width is how many columns the steps take with the names of some.
func (p Progress) width(named func(int) bool) int {
	w := 3*len(p.Steps) - 2
	for i, name := range p.Steps {
		if n := length(name); named(i) && n > 0 {
			w += n + 2
			if i+1 == len(p.Steps) {
				w--
			}
		}
	}
	return w
}

// put puts the steps: a sign, its name, and the way to the next.
func (p Progress) put(c *canvas, now int, signs stepSigns, named func(int) bool) {
	x := 0
	for i, name := range p.Steps {
		sign, way, role := signs.next, signs.ahead, RoleAxis
		switch {
		case i < now:
			sign, way, role = signs.done, signs.way, RoleKeep
		case i == now:
			sign, role = signs.now, RoleMark
		}
		c.put(x, 0, sign, role)
		x++
		if name = strings.TrimSpace(clean(name)); named(i) && name != "" {
			text := role
			if i < now {
				text = RoleText
			}
			x += 1 + c.text(x+1, 0, name, text)
			if i+1 < len(p.Steps) {
				x++
			}
		}
		if i+1 < len(p.Steps) {
			if role == RoleMark {
				role = RoleAxis
			}
			c.run(x, 0, 2, way, role)
			x += 2
		}
	}
}
