package draw

import "math"

// Band is a value with the range it likely lies within, on a scale of its own.
type Band struct {
	Name, Text        string // what it is; the value in figures
	Scale             Scale
	Low, High, At     float64
	LowText, HighText string // the ends in figures
}

// Share is a part, 0 to 1, of a whole.
type Share struct {
	Name  string
	Share float64
}

// Bands are ranges under each other, and beneath them what makes them so wide, as one bar.
//
//	draw.Bands{Bands: bands, Title: "what makes it unsure", Shares: shares, Others: "others", Figure: percent}
type Bands struct {
	Bands  []Band
	Title  string // over the shares
	Shares []Share
	Others string               // names those that have no piece of their own
	Figure func(float64) string // a share as a short figure
}

const (
	leastBandsWidth = 30
	// The rows of a band: with name and value beside it; over it; and its scale's numbers
	// under it; and a blank one.
	bandBeside, bandUnder, bandNumbered, bandApart = 1, 2, 3, 4
	// leastTrack is the columns of a band beside its name.
	leastTrack = 14
	// sharesRows are those of the title, the bar and one row of names, with a blank one before.
	sharesRows = 4
)

// Rows draws the bands. It needs 30 columns and a row for each band, two where name, figures
// and band do not fit beside each other. Where there is height each has its scale under it.
// The shares stand beneath where there are rows for them.
func (b Bands) Rows(w, h int, g Glyphs, ink Ink) []string {
	bands := b.complete()
	if w < leastBandsWidth || len(bands) == 0 || h < 1 {
		return nil
	}
	c := newCanvas(w, h, g)
	l := layBands(bands, c.w)
	each := bandBeside
	if l.track < leastTrack {
		each = bandUnder
	}
	if len(bands)*each > c.h {
		return nil
	}
	shares := b.pieces()
	free := c.h
	if len(shares) > 0 && c.h-sharesRows >= len(bands)*each {
		free -= sharesRows
	} else {
		shares = nil
	}
	for next := each + 1; next <= bandApart && len(bands)*next <= free+next/bandApart; next++ {
		each = next
	}
	for i, k := range bands {
		l.band(c, k, i*each, each)
	}
	y := min(len(bands)*each, free)
	if shares != nil {
		if each < bandApart {
			y++
		}
		y = b.bar(c, shares, y)
	}
	c.h = min(c.h, y)
	return c.rows(ink)
}

// complete are the bands that have a value and a scale.
func (b Bands) complete() (bands []Band) {
	for _, k := range b.Bands {
		if k.Scale.ok() && !math.IsNaN(k.At) && !math.IsNaN(k.Low) && !math.IsNaN(k.High) {
			bands = append(bands, k)
		}
	}
	return bands
}

// bandColumns is where the pieces of a band stand in a row.
type bandColumns struct{ w, name, text, low, high, left, track int }

func layBands(bands []Band, w int) bandColumns {
	l := bandColumns{w: w}
	for _, k := range bands {
		l.name, l.text = max(l.name, length(k.Name)), max(l.text, length(k.Text))
		l.low, l.high = max(l.low, length(k.LowText)), max(l.high, length(k.HighText))
	}
	l.name, l.text, l.low, l.high = min(l.name, w/2), min(l.text, w/3), min(l.low, w/5), min(l.high, w/5)
	l.left = l.name + l.text + l.low + 3
	l.track = w - l.left - l.high - 1
	return l
}

// band puts one in so many rows from a row on.
func (l bandColumns) band(c *canvas, k Band, y, rows int) {
	left, track := l.left, l.track
	c.text(0, y, nameTo(k.Name, l.name), RoleText)
	c.text(l.name+1, y, figure(k.Text, l.w-l.name-1), RoleMark)
	if rows > bandBeside {
		y++
		left, track = l.low+1, l.w-l.low-l.high-2
	}
	low, high := figure(k.LowText, l.low), figure(k.HighText, l.high)
	c.text(left-1-length(low), y, low, RoleBand)
	c.text(left+track+1, y, high, RoleBand)
	c.run(left, y, track, c.g.Rule, RoleAxis)
	if rows >= bandNumbered {
		k.Scale.numbers(c, left, track, y)
	}
	from, under := k.Scale.at(min(k.Low, k.High))
	to, over := k.Scale.at(max(k.Low, k.High))
	c.stretch(left, y, track, from, to, RoleBand)
	if under != 0 {
		c.put(left, y, under.arrow(), RoleBand)
	}
	if over != 0 {
		c.put(left+track-1, y, over.arrow(), RoleBand)
	}
	at, off := k.Scale.column(k.At, track)
	sign := c.g.Full
	if off != 0 {
		sign = off.arrow()
	}
	c.put(left+at, y, sign, RoleMark)
}

// stretch puts a heavy piece of a line of w columns between two shares of it, right to half
// a column where the set can.
func (c *canvas) stretch(left, y, w int, from, to float64, role Role) {
	a, b := round(from*float64(2*w-1)), round(to*float64(2*w-1))
	for x := a / 2; x <= b/2; x++ {
		first, second := 2*x >= a, 2*x+1 <= b
		char := '━'
		switch {
		case c.g.Braille == 0 && c.g.Upper == 0:
			char = '='
		case c.g.Braille == 0:
			char = c.g.Mid
		case first && !second:
			char = '╾'
		case second && !first:
			char = '╼'
		}
		c.put(left+x, y, char, role)
	}
}

// pieces are the shares of the bar, the smallest gathered in one behind the others.
func (b Bands) pieces() (shares []Share) {
	for _, k := range b.Shares {
		if k.Share > 0 && !math.IsInf(k.Share, 0) {
			shares = append(shares, k)
		}
	}
	rest := Share{Name: b.Others}
	for len(shares) > len(pieceLooks) || rest.Share > 0 && len(shares) == len(pieceLooks) {
		least := 0
		for i, k := range shares {
			if k.Share < shares[least].Share {
				least = i
			}
		}
		rest.Share += shares[least].Share
		shares = append(shares[:least], shares[least+1:]...)
	}
	if rest.Share > 0 {
		shares = append(shares, rest)
	}
	return shares
}

// pieceLooks are the roles of the pieces of the bar, each with a shade of its own, no two
// that touch alike.
var pieceLooks = [...]struct {
	shade func(Glyphs) rune
	role  Role
}{
	{func(g Glyphs) rune { return g.Full }, RoleBand},
	{func(g Glyphs) rune { return g.Mid }, RoleLost},
	{func(g Glyphs) rune { return g.Dark }, RoleKeep},
	{func(g Glyphs) rune { return g.Light }, RoleGhost},
	{func(g Glyphs) rune { return g.Dot }, RoleText},
}

// bar puts the title, the bar and what its pieces mean, and returns the row behind them.
func (b Bands) bar(c *canvas, shares []Share, y int) int {
	c.text(0, y, cutTo(b.Title, c.w), RoleText)
	sum := 0.0
	for _, k := range shares {
		sum += k.Share
	}
	sum = max(sum, 1) // what is not told is left blank
	keys := make([]key, len(shares))
	at := 0.0
	for i, k := range shares {
		look := pieceLooks[i]
		from := round(at * float64(c.w))
		at += k.Share / sum
		c.run(from, y+1, max(round(at*float64(c.w))-from, 1), look.shade(c.g), look.role)
		text := k.Name
		if b.Figure != nil {
			text += " " + b.Figure(k.Share)
		}
		keys[i] = key{look.shade(c.g), text, look.role}
	}
	y += 2
	if y+1+legendRows(keys, c.w) <= c.h {
		y++
	}
	return y + c.legend(keys, y, c.w)
}
