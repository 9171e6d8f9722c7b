package draw

import "math"

// Gauge is a wall gauge with the face the shop's own has: a span that stays, over three
// quarters of a circle from the lower left over the top to the lower right, its numbers
// inside.
//
//	draw.Gauge{Scale: draw.NewScale(0, 60, 7, psi), Minor: 5, Set: draw.Mark{At: 31, Text: "set 31"}, Name: "WALL", Value: "31 psi"}
type Gauge struct {
	Scale         // the gauge's own span, with a tick for each number
	Minor  int    // parts between two numbers, told by small ticks where there is room
	Set    Mark   // the needle
	Rest   Mark   // a ring outside the rim: with no air moving, or as it was answered
	Ghost  Mark   // where the needle stood before: a needle of dots
	Likely Span   // a heavy rim
	Limit  Mark   // a stroke across the rim, which is heavy from here to its end
	Name   string // under the face
	Value  string // between the ends of the scale, or behind the name
}

const (
	leastGaugeWidth  = 20
	leastGaugeHeight = 8
	// The rows a face keeps when the texts of its marks are put under it.
	gaugeOverLegend = 12
	gaugeSweep      = 0.75 * fullTurn
	// numberGap is between a tick and its number, in dots.
	numberGap = 1.5
	// A smaller face than this radius has the numbers of its ends beside these and no others.
	numberedFace = 16
	// A face of this radius and more has a rim of two dots.
	heavyFace = 40
	// A face of this radius and more shows its numbers through the needle; on a smaller one
	// the needle hides the number under it.
	wideFace = 24
	// fewestDots is how far apart small ticks stand at least.
	fewestDots = 4
)

// Signs that stand for what has no shape of its own in ASCII, and in legends.
const (
	ringSign   = 'o'
	likelySign = '='
	limitSign  = '%'
)

// The dots of a cell that stand for a needle, two heavy rims, a needle of dots.
var (
	needleBits = dotCell{bits: 0x5C}
	likelyBits = dotCell{bits: 0x36}
	limitBits  = dotCell{bits: 0xFF}
	ghostBits  = dotCell{bits: 0x8A}
)

// Rows draws the gauge. It needs 20 columns and 8 rows. The texts of the marks stand beside
// it where there is room, else under it, else nowhere.
func (g Gauge) Rows(w, h int, glyphs Glyphs, ink Ink) []string {
	if w < leastGaugeWidth || h < leastGaugeHeight || !g.ok() {
		return nil
	}
	c := newCanvas(w, h, glyphs)
	high := c.h
	if g.Name != "" {
		high--
	}
	keys := g.keys(glyphs)
	left, wide, high := c.roomRound(keys, g.face(c.w, high).across(), high, gaugeOverLegend)
	f := g.face(wide, high)
	f.left, f.canvas = left, c
	g.texts(f, high)
	g.draw(f)
	f.dots.onto(c, left, 0)
	return c.rows(ink)
}

// gaugeFace is where a face stands.
type gaugeFace struct{ dial }

// face is the largest that fits some cells.
func (g Gauge) face(w, h int) gaugeFace {
	f := gaugeFace{newDial(w, h)}
	ring := 0.0
	if g.Rest.shown() {
		ring = dotsDown
	}
	down := -math.Cos(gaugeSweep / 2)
	f.r = math.Floor(min(f.x-ring, (float64(f.dots.h)-1.5-ring)/(1+down))) - 0.5
	f.y = f.r + ring
	return f
}

// across is how many columns a face takes.
func (f gaugeFace) across() int { return min(int(f.y)+4, f.dots.w/dotsAcross) }

// angle is that of a value, and on which side of the scale it lies.
func (g Gauge) angle(v float64) (float64, side) {
	share, off := g.at(v)
	return (share - 0.5) * gaugeSweep, off
}

// rim is the radius of the thin rim, under the likely range and the limit.
func (f gaugeFace) rim() float64 { return f.r - 2 }

// tick is how long a tick is, and a small one half of it.
func (f gaugeFace) tick() float64 { return 3 + f.r/24 }

// heavy is how thick the rim is.
func (f gaugeFace) heavy() float64 {
	if f.r >= heavyFace {
		return 2
	}
	return 1
}

// draw puts everything that is made of dots.
func (g Gauge) draw(f gaugeFace) {
	f.plain[RoleBand], f.plain[RoleLimit] = likelySign, limitSign
	f.arc(f.x, f.y, f.rim(), f.heavy(), -gaugeSweep/2, gaugeSweep/2, RoleAxis)
	g.ticks(f)
	if g.Likely.shown() {
		low, high := g.Likely.ends()
		from, _ := g.angle(low)
		to, _ := g.angle(high)
		f.arc(f.x, f.y, f.r-1, 3, from, to, RoleBand)
	}
	if g.Limit.shown() {
		from, _ := g.angle(g.Limit.At)
		f.arc(f.x, f.y, f.r-1, 3, from, gaugeSweep/2, RoleLimit)
		f.radial(from, f.rim()-f.tick()-2, f.r, 2, RoleLimit)
	}
	if g.Ghost.shown() {
		a, off := g.angle(g.Ghost.At)
		for r := 6.0; r <= f.rim(); r += 2.5 {
			x, y := polar(f.x, f.y, r, a)
			f.dots.set(round(x), round(y), RoleGhost)
		}
		f.beyond(off, RoleGhost)
	}
	if g.Rest.shown() {
		a, off := g.angle(g.Rest.At)
		f.beyond(off, RoleRest)
		if off == 0 {
			f.ring(a, ringSign, RoleRest)
		}
	}
	if g.Set.shown() {
		a, off := g.angle(g.Set.At)
		f.needle(a, f.rim()-1, RoleMark)
		f.beyond(off, RoleMark)
	}
}

// ticks puts those with numbers, and small ones between them where they stand apart.
func (g Gauge) ticks(f gaugeFace) {
	for i, t := range g.Ticks {
		a, off := g.angle(t.At)
		if off != 0 || math.IsNaN(t.At) {
			continue
		}
		f.radial(a, f.rim()-f.tick(), f.rim(), 1, RoleAxis)
		if i+1 == len(g.Ticks) || g.Minor < 2 || g.Minor > mostTicks {
			continue
		}
		next, off := g.angle(g.Ticks[i+1].At)
		by := (next - a) / float64(g.Minor)
		if off != 0 || !(by*f.r >= fewestDots) {
			continue
		}
		for n := 1; n < g.Minor; n++ {
			f.radial(a+by*float64(n), f.rim()-f.tick()/2, f.rim(), 1, RoleAxis)
		}
	}
}

// needle draws one that tapers from its tail to its tip, over a hub.
func (f gaugeFace) needle(angle, long float64, role Role) {
	half, tail := 1+f.r/48, 1.5+f.r/12
	corner := func(r, side float64) [2]float64 {
		x, y := polar(f.x, f.y, r, angle)
		sin, cos := math.Sincos(angle)
		return [2]float64{x + side*cos, y + side*sin}
	}
	f.polygon(role, corner(-tail, -half), corner(long, -0.5), corner(long, 0.5), corner(-tail, half))
	f.radial(angle, -tail, long, 1, role)
	f.disc(f.x, f.y, 1.2+f.r/24, role)
}

// ring puts a sign outside the rim, next to it.
func (f gaugeFace) ring(angle float64, sign rune, role Role) {
	for r := f.r + 1; r < f.r+2*dotsDown; r++ {
		x, y := polar(f.x, f.y, r, angle)
		col, row := start(x, 1), row(y)
		if k, _ := f.dots.at(col*dotsAcross, row*dotsDown); k == nil || k.bits == 0 {
			f.canvas.put(f.left+col, row, sign, role)
			return
		}
	}
}

// beyond puts an arrow under an end of the scale that a value lies beyond.
func (f gaugeFace) beyond(off side, role Role) {
	if off != 0 {
		x, y := polar(f.x, f.y, f.rim()-f.tick()/2, float64(off)*(gaugeSweep/2+5/f.r))
		f.canvas.put(f.left+start(x, 1), row(y), off.arrow(), role)
	}
}

// texts puts the numbers, the value and the name.
func (g Gauge) texts(f gaugeFace, high int) {
	x, y := polar(f.x, f.y, f.rim(), gaugeSweep/2)
	end, across := min(row(y), high-1), f.dots.w/dotsAcross
	name, n := g.Name, length(g.Value)
	open := int(math.Sqrt2/2*(f.rim()-f.tick())) - 1 // columns between the ends
	if length(name) <= open {
		high = end + 1
	}
	if n <= open {
		f.text(f.left+start(f.x, n), end, g.Value, RoleMark)
	} else if both := length(name) + 1 + n; name != "" && both <= across {
		f.text(f.left+(across+both)/2-n, high, g.Value, RoleMark)
		f.text(f.left+(across-both)/2, high, name, RoleText)
		name = ""
	}
	f.middle(f.left+across/2, high, f.left, f.left+across-1, name, RoleText)
	if f.r >= numberedFace {
		g.numbers(f)
		return
	}
	if len(g.Ticks) > 0 {
		right := start(x, 1) + 2
		low, high := g.Ticks[0], g.Ticks[len(g.Ticks)-1]
		f.beside(across-1-right, end, low, g.Low, -length(low.Text)+1)
		f.beside(right, end, high, g.High, 0)
	}
}

// beside puts the number of an end of the scale in some columns beside it.
func (f gaugeFace) beside(x, y int, t Tick, end float64, back int) {
	if n := length(t.Text); t.At == end && x+back >= 0 && x+back+n <= f.dots.w/dotsAcross {
		f.text(f.left+x+back, y, t.Text, RoleAxis)
	}
}

// numbers puts those of every tick, of every second, and so on: as many as stand apart.
func (g Gauge) numbers(f gaugeFace) {
	type place struct{ x, y, n, tick int }
	var all []place
	for i, t := range g.Ticks {
		text := figure(t.Text, int(f.r)/2)
		a, off := g.angle(t.At)
		if text == "" || off != 0 || math.IsNaN(t.At) {
			continue
		}
		n := length(text)
		sin, cos := math.Sincos(a)
		r := f.rim() - f.tick() - numberGap - math.Abs(sin)*float64(n) - math.Abs(cos)*dotsDown/2
		x, y := polar(f.x, f.y, r, a)
		all = append(all, place{start(x, n), row(y), n, i})
	}
	apart := func(step int) bool {
		for i := 0; i < len(all); i += step {
			for j := i + step; j < len(all); j += step {
				a, b := all[i], all[j]
				if a.y == b.y && a.x <= b.x+b.n && b.x <= a.x+a.n {
					return false
				}
			}
		}
		return true
	}
	step := 1
	for step < len(all) && !(apart(step) && ((len(all)-1)%step == 0 || step > len(all)/2)) {
		step++
	}
	needle := newDots(1, 1)
	if set, _ := g.angle(g.Set.At); g.Set.shown() && f.r < wideFace {
		needle = newDots(f.dots.w/dotsAcross, f.dots.h/dotsDown)
		gaugeFace{dial{dots: needle, x: f.x, y: f.y, r: f.r}}.needle(set, f.rim(), RoleMark)
	}
	for i := 0; i < len(all); i += step {
		p := all[i]
		hidden := false
		for x := p.x; x < p.x+p.n; x++ {
			k, _ := needle.at(x*dotsAcross, p.y*dotsDown)
			hidden = hidden || k != nil && k.bits != 0
		}
		if !hidden {
			f.text(f.left+p.x, p.y, g.Ticks[p.tick].Text, RoleAxis)
		}
	}
}

// keys are the signs of the marks and their texts.
func (g Gauge) keys(glyphs Glyphs) (keys []key) {
	sign := func(k dotCell, plain rune) rune { return dotSign(glyphs, k, plain) }
	for _, k := range []struct {
		Mark
		sign rune
		role Role
	}{
		{g.Set, sign(needleBits, '/'), RoleMark},
		{g.Rest, ringSign, RoleRest},
		{g.Ghost, sign(ghostBits, glyphs.Dot), RoleGhost},
		{Mark{min(g.Likely.Low, g.Likely.High), g.Likely.Text}, sign(likelyBits, likelySign), RoleBand},
		{g.Limit, sign(limitBits, limitSign), RoleLimit},
	} {
		if k.shown() {
			keys = append(keys, key{g.sign(k.At, k.sign), k.Text, k.role})
		}
	}
	return keys
}
