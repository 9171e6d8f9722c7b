package draw

import "math"

// Reach is the hand, the air and the panel, seen from the side: the gun with its cap at 0,
// the jet that thins out, and the panel where it is held. Its scale should begin at 0.
//
//	draw.Reach{Scale: draw.NewScale(0, 9, 10, inches), Unit: "in", Set: draw.Mark{At: 5.5, Text: "5.5 in"},
//		Keep: draw.Span{Low: 5, High: 6, Text: "keep 5 to 6"}, Gun: "cap", Panel: "panel"}
type Reach struct {
	Scale
	Unit       string // before the ruler's numbers
	Set        Mark   // where the panel is held
	Ghost      Mark   // where it was held before: dots
	Keep       Span   // the band to keep to
	Likely     Span   // the range it likely lies within
	Gun, Panel string
}

const (
	leastReachWidth  = 24
	leastReachHeight = 5
	// A picture of this width and more shows the gun, and takes a quarter of its columns for
	// it, but no more than mostGun.
	gunWidth = 36
	mostGun  = 18
	// leastJet is the rows the jet keeps when rows are given to what stands under it.
	leastJet = 3
)

// Rows draws the reach. It needs 24 columns and 5 rows. From above: the gun, jet and panel,
// the band to keep, the likely range, the ruler with its numbers, what the signs mean. Where
// there are not rows enough, what the signs mean goes first, then the likely range.
func (r Reach) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastReachWidth || h < leastReachHeight || !r.ok() || !r.Set.shown() {
		return nil
	}
	c := newCanvas(w, h, g)
	gun := 4
	if c.w >= gunWidth {
		gun = min(c.w/4, mostGun)
	}
	jet := c.h - 2 // the ruler
	take := func(n int) int {
		if jet-n < leastJet {
			return 0
		}
		jet -= n
		return n
	}
	keep, likely := 0, 0
	if r.Keep.shown() {
		keep = 1
		jet--
	}
	if r.Likely.shown() {
		likely = take(1)
	}
	keys := r.keys(g)
	legend := take(legendRows(keys, c.w))
	p := newPlot(c, gun, 0, c.w-gun, jet, r.Scale, Scale{High: 1})
	p.dots = newDots(c.w, jet) // the gun stands beside the scale
	r.names(p)
	r.jet(p)
	r.gun(p)
	p.onto(c, 0, 0)
	y := jet
	if keep > 0 {
		r.band(p, y, r.Keep, 2, RoleKeep)
		y++
	}
	if likely > 0 {
		r.band(p, y, r.Likely, 1, RoleBand)
		y++
	}
	c.run(gun, y, c.w-gun, g.Rule, RoleAxis)
	r.numbers(c, gun, c.w-gun, y)
	if n := length(r.Unit); n+1 < gun {
		c.text(gun-n-1, y+1, r.Unit, RoleAxis)
	}
	if legend > 0 {
		c.legend(keys, y+2, c.w)
	}
	return c.rows(ink)
}

// x is the dot of a distance, from the picture's left, and on which side of the scale it
// lies.
func (r Reach) x(p plot, v float64) (float64, side) {
	at, off := r.at(v)
	return float64(dotsAcross*p.left) + at*float64(dotsAcross*p.w-1), off
}

// middle is the height of the jet's axis in dots.
func (r Reach) middle(p plot) float64 { return float64(p.dots.h-1) / 2 }

// jet draws what flies from the cap to the panel, the panel, and where it was.
func (r Reach) jet(p plot) {
	cap, _ := r.x(p, 0)
	set, off := r.x(p, r.Set.At)
	mid := r.middle(p)
	// As many drops pass each distance, over a height that grows with it: they thin out.
	// A golden section between them across keeps them even.
	const golden = 0.6180339887498949
	end := set - 2
	n := int(max(end-cap, 0) * (2 + mid/30))
	for i := range n {
		x := cap + 1 + (end-cap)*(float64(i)+0.5)/float64(n)
		_, side := math.Modf(float64(i) * golden)
		spread := 1 + (x-cap)/max(end-cap, 1)*(mid*0.75-1)
		p.dots.set(round(x), round(mid+(2*side-1)*spread), RoleKept)
	}
	if r.Ghost.shown() {
		ghost, off := r.x(p, r.Ghost.At)
		for y := 0; y < p.dots.h; y += 3 {
			p.dots.set(round(ghost), y, RoleGhost)
		}
		r.beyond(p, ghost, off, RoleGhost)
	}
	p.dots.line(set, 0, set, float64(p.dots.h-1), 2, RoleMark)
	r.beyond(p, set, off, RoleMark)
}

// beyond puts an arrow beside a panel that lies off the scale.
func (r Reach) beyond(p plot, x float64, off side, role Role) {
	if off != 0 {
		p.put(start(x, 1), row(r.middle(p)), off.arrow(), role)
	}
}

// gun draws the gun: its cap with two horns, and where there is room its body, cup and
// handle.
func (r Reach) gun(p plot) {
	cap, _ := r.x(p, 0)
	mid := r.middle(p)
	u := mid / 20 // it is drawn as for a jet of ten rows
	box := func(role Role, x0, y0, x1, y1 float64) {
		p.polygon(role, [2]float64{x0, y0}, [2]float64{x1, y0}, [2]float64{x1, y1}, [2]float64{x0, y1})
	}
	half := max(5*u, 1.5)
	box(RoleText, cap-3, mid-half, cap-1, mid+half)
	if half >= 3 {
		box(RoleText, cap-1, mid-half, cap, mid-half+1)
		box(RoleText, cap-1, mid+half-1, cap, mid+half)
	}
	back := 0.0
	if p.left >= gunWidth/4 {
		back = cap - 5 - min(24*u, cap-6)
	}
	box(RoleAxis, back, mid-max(2.5*u, 1), cap-5, mid+max(2.5*u, 1))
	if p.left < gunWidth/4 || u < 0.4 {
		return
	}
	long := cap - 5 - back
	// The handle leans back from the body's end, the cup stands over its front.
	p.polygon(RoleAxis, [2]float64{back + long*0.1, mid}, [2]float64{back + long*0.42, mid}, [2]float64{back + long*0.3, float64(p.dots.h - 1)}, [2]float64{back, float64(p.dots.h - 1)})
	p.polygon(RoleAxis, [2]float64{back + long*0.35, mid - 16*u}, [2]float64{back + long*0.95, mid - 16*u}, [2]float64{back + long*0.78, mid - 5*u}, [2]float64{back + long*0.52, mid - 5*u})
	box(RoleAxis, back+long*0.6, mid-5*u, back+long*0.7, mid)
	p.line(back+long*0.62, mid+2.5*u, back+long*0.52, mid+11*u, 1, RoleAxis)
}

// names puts the gun's name over its cap, and the panel's with its distance beside it.
func (r Reach) names(p plot) {
	x, _ := r.x(p, r.Set.At)
	for i, text := range [...]string{r.Set.Text, r.Panel} {
		n := length(text)
		at := int(x)/dotsAcross + 2
		if at+n > p.canvas.w {
			at = int(x)/dotsAcross - n - 1
		}
		if i < p.h && at > p.left {
			p.text(at, i, text, [...]Role{RoleMark, RoleText}[i])
		}
	}
	if n := length(r.Gun); p.blank(p.left+1, 0, n+1) && p.left+1+n < int(x)/dotsAcross {
		p.text(p.left+1, 0, r.Gun, RoleText)
	}
}

// band draws a range over the ruler, so many dots thick; an arrow stands where it goes on
// beyond the scale.
func (r Reach) band(p plot, y int, b Span, thick int, role Role) {
	low, high := b.ends()
	from, under := r.at(low)
	to, over := r.at(high)
	d := newDots(p.w, 1)
	last := float64(d.w - 1)
	d.plain[RoleKeep], d.plain[RoleBand] = '=', '-'
	d.line(from*last, 1.5, to*last, 1.5, thick, role)
	d.line(from*last, 0, from*last, 3, 1, role)
	d.line(to*last, 0, to*last, 3, 1, role)
	if under != 0 {
		p.put(p.left, y, under.arrow(), role)
	}
	if over != 0 {
		p.put(p.left+p.w-1, y, over.arrow(), role)
	}
	d.onto(p.canvas, p.left, y)
}

// keys are the signs of the bands and the ghost, and their texts.
func (r Reach) keys(g Glyphs) (keys []key) {
	keep, likely, ghost := dotCell{bits: 0x36}.char(g), dotCell{bits: 0x12}.char(g), dotCell{bits: 0x42}.char(g)
	if r.Keep.shown() {
		keys = append(keys, key{keep, r.Keep.Text, RoleKeep})
	}
	if r.Likely.shown() {
		keys = append(keys, key{likely, r.Likely.Text, RoleBand})
	}
	if r.Ghost.shown() {
		keys = append(keys, key{ghost, r.Ghost.Text, RoleGhost})
	}
	return keys
}
