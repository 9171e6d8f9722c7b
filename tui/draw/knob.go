package draw

import "math"

// Knob is the knob of a gun's inlet valve, seen from the front: turned from open, at the
// top, to where it should stand. Its marks are in turns from open.
//
//	draw.Knob{Shut: 2, Set: draw.Mark{At: 0.375, Text: "3/8 turn closed"}, Limit: draw.Mark{At: 1, Text: "not past 1"}, Open: "open", Closed: "shut"}
type Knob struct {
	Shut         float64 // turns from open to shut
	Anticlock    bool    // closes against the clock
	Set          Mark    // the pointer, and what it has been turned from open
	Ghost        Mark    // where the pointer stood before: dots
	Limit        Mark    // the least opening there is sense in; from here on the way is barred
	Open, Closed string  // words at the ends of the way
}

const (
	leastKnobWidth  = 18
	leastKnobHeight = 8
	// The rows a knob keeps when the texts of its marks are put under it.
	knobOverLegend = 12
	// mostTurns is how many are drawn; a pointer farther on stands there with a sign.
	mostTurns = 4
	// teeth are on the rim of a knob; of one of less than wideFace half of them.
	teeth = 24
	// In dots: how deep a tooth is, and what the way keeps from the rim.
	toothDepth, wayGap = 2.5, 4
	// A smaller knob than this radius shows its way as one ring, and no more than a turn.
	windingKnob = 20
)

// Rows draws the knob. It needs 18 columns and 8 rows. More than a turn winds inward. The
// text of what is set stands under the knob, the others beside it where there is room, else
// under it, else nowhere.
func (k Knob) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastKnobWidth || h < leastKnobHeight || !k.Set.shown() {
		return nil
	}
	c := newCanvas(w, h, g)
	high := c.h - 1
	left, wide, high := c.roomRound(k.keys(g), k.face(c.w, high).across()+2*length(k.Closed), high, knobOverLegend)
	f := k.face(wide, high)
	f.left, f.canvas = left, c
	mid, end := left+start(f.x, 0), left+wide-1
	c.middle(mid, row(f.y+f.r)+1, left, end, k.Set.Text, RoleMark)
	k.ends(f, end)
	k.draw(f)
	f.dots.onto(c, left, 0)
	return c.rows(ink)
}

// knobFace is where a knob stands, and the way its pointer takes: so far from the middle where
// it begins, so much nearer after a turn.
type knobFace struct {
	dial
	way, inward float64
	thick       float64
}

// face is the largest knob that fits some cells, a row above it for the word at the top.
func (k Knob) face(w, h int) knobFace {
	f := knobFace{dial: newDial(w, h)}
	f.r = math.Floor(min(f.x-toothDepth-1, (float64(f.dots.h-dotsDown)-1-2*toothDepth)/2)) - 0.5
	f.y = dotsDown + toothDepth + f.r
	turns := max(k.turns(k.Shut), k.turns(k.Set.At), k.turns(k.Limit.At), 1)
	f.way = f.r - wayGap - f.r/16
	if f.r < windingKnob {
		f.thick = 2
		return f
	}
	f.inward = min(f.r/4, (f.way-f.r/6)/turns)
	f.thick = max(min(3, f.inward-2), 1)
	return f
}

// across is how many columns a knob takes.
func (f knobFace) across() int { return min(int(f.r+toothDepth)+3, f.dots.w/dotsAcross) }

// turns are those that are drawn of some.
func (k Knob) turns(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return min(max(v, 0), mostTurns)
}

// angle is where the pointer stands after some turns.
func (k Knob) angle(turns float64) float64 {
	if k.Anticlock {
		turns = -turns
	}
	return turns * fullTurn
}

// place is the point of the way after some turns, so far outward of it.
func (k Knob) place(f knobFace, turns, out float64) (x, y float64) {
	return polar(f.x, f.y, f.way-f.inward*turns+out, k.angle(turns))
}

// draw puts everything that is made of dots.
func (k Knob) draw(f knobFace) {
	f.plain[RoleKeep], f.plain[RoleLimit] = '=', limitSign
	heavy, n := 1, teeth/2
	if f.r >= wideFace {
		heavy, n = 2, teeth
	}
	f.ring(f.x, f.y, f.r, float64(heavy), RoleAxis)
	for i := range n {
		f.radial(fullTurn*(float64(i)+0.5)/float64(n), f.r, f.r+toothDepth, heavy, RoleAxis)
	}
	f.radial(0, f.r-2, f.r+toothDepth, 2, RoleText)
	set, shut := k.turns(k.Set.At), k.turns(k.Shut)
	limit := shut
	if k.Limit.shown() {
		limit = k.turns(k.Limit.At)
	}
	end := max(set, shut)
	if f.inward == 0 {
		end = min(max(set, limit), 1)
	}
	k.wind(f, end, func(turns float64) (float64, Role) {
		switch {
		case turns <= set:
			return f.thick, RoleKeep
		case turns <= limit:
			return 1, RoleAxis
		}
		return min(2, f.thick), RoleLimit
	})
	if k.Limit.shown() && (f.inward > 0 || limit < 1) {
		f.lineAcross(k, limit, RoleLimit)
	}
	if k.Ghost.shown() {
		a := k.angle(k.turns(k.Ghost.At))
		for r := f.r / 5; r < f.r; r += 2.5 {
			x, y := polar(f.x, f.y, r, a)
			f.dots.set(round(x), round(y), RoleGhost)
		}
	}
	f.bar(k.angle(set), f.r-1, 0.5+float64(heavy)/2, RoleMark)
	f.disc(f.x, f.y, 1.2+f.r/20, RoleMark)
}

// lineAcross draws a stroke across the way.
func (f knobFace) lineAcross(k Knob, turns float64, role Role) {
	x0, y0 := k.place(f, turns, -f.thick)
	x1, y1 := k.place(f, turns, f.thick)
	f.line(x0, y0, x1, y1, 2, role)
}

// bar draws the pointer, so far to each side of its radius.
func (f knobFace) bar(angle, long, half float64, role Role) {
	sin, cos := math.Sincos(angle)
	x, y := polar(f.x, f.y, long, angle)
	f.polygon(role, [2]float64{f.x + half*cos, f.y + half*sin}, [2]float64{x + half*cos, y + half*sin},
		[2]float64{x - half*cos, y - half*sin}, [2]float64{f.x - half*cos, f.y - half*sin})
}

// wind draws the way up to some turns: each dot that lies less than half the thickness its
// place has from it.
func (k Knob) wind(f knobFace, to float64, look func(turns float64) (thick float64, role Role)) {
	outer := f.way + f.thick
	for row := max(ceil(f.y-outer), 0); row <= min(floor(f.y+outer), f.dots.h-1); row++ {
		for col := max(ceil(f.x-outer), 0); col <= min(floor(f.x+outer), f.dots.w-1); col++ {
			dx, dy := float64(col)-f.x, float64(row)-f.y
			if k.Anticlock {
				dx = -dx
			}
			r := math.Sqrt(dx*dx + dy*dy)
			if r > outer || r < f.way-f.inward*to-f.thick {
				continue
			}
			for turns := turned(math.Atan2(dx, -dy)) / fullTurn; turns <= to; turns++ {
				if thick, role := look(turns); math.Abs(f.way-f.inward*turns-r) <= thick/2 {
					f.dots.set(col, row, role)
				}
			}
		}
	}
}

// ends puts the words at the ends of the way, and a sign where the pointer lies off it.
func (k Knob) ends(f knobFace, end int) {
	n := length(k.Open)
	from := max(f.left+start(f.x, n), f.left)
	f.text(from, 0, cutTo(k.Open, end-from+1), RoleText)
	if n = length(k.Closed); k.Shut > 0 && n > 0 {
		sin, cos := math.Sincos(k.angle(k.turns(k.Shut)))
		out := f.r + toothDepth + 2
		x := f.left + start(f.x+sin*(out+float64(n)), n)
		y := row(f.y - cos*out)
		if !f.blank(x-1, y, n+2) { // both ends are at the top
			x, y = from+length(k.Open)+2, 0
		}
		if x >= f.left && x+n <= end+1 && f.blank(x, y, n) {
			f.text(x, y, k.Closed, RoleText)
		}
	}
	switch {
	case k.Set.At < 0:
		f.text(f.left+start(f.x, 1), row(f.y), "<", RoleMark)
	case k.Set.At > mostTurns:
		f.text(f.left+start(f.x, 1), row(f.y), ">", RoleMark)
	}
}

// keys are the signs of the marks under a legend, and their texts.
func (k Knob) keys(g Glyphs) (keys []key) {
	if k.Ghost.shown() {
		keys = append(keys, key{dotSign(g, ghostBits, g.Dot), k.Ghost.Text, RoleGhost})
	}
	if k.Limit.shown() {
		keys = append(keys, key{dotSign(g, limitBits, limitSign), k.Limit.Text, RoleLimit})
	}
	return keys
}
