package draw

import "math"

// Scale is an axis from Low to High in display units. One without extent, or without an
// end, carries no picture.
type Scale struct {
	Low, High float64
	Ticks     []Tick
}

// Tick is a place on a scale; one without a text is a small tick.
type Tick struct {
	At   float64
	Text string
}

// Mark is a value with its text, such as "set 31 psi".
type Mark struct {
	At   float64
	Text string
}

// Span is a range of values with its text; its ends may come in either order.
type Span struct {
	Low, High float64
	Text      string
}

// NewScale is a scale over low to high, widened to whole steps of 1, 2 or 5 times a power
// of ten, with at most the number of ticks given, or three where that is less, each with
// its text. Ends too far apart or too near to be stepped between come back without ticks.
func NewScale(low, high float64, most int, text func(float64) string) Scale {
	unstepped := Scale{Low: min(low, high), High: max(low, high)}
	if !unstepped.ok() {
		return unstepped
	}
	most = min(max(most, 3), mostTicks)
	step := niceStep((unstepped.High - unstepped.Low) / float64(most-1))
	ends := func() (first, last float64) {
		return math.Floor(unstepped.Low/step + nearly), math.Ceil(unstepped.High/step - nearly)
	}
	first, last := ends()
	for last-first >= float64(most) {
		step = niceStep(step * (1 + 2*nearly))
		first, last = ends()
	}
	s := Scale{Low: first * step, High: last * step}
	if !s.ok() {
		return unstepped
	}
	for i := range int(last-first) + 1 {
		t := Tick{At: (first + float64(i)) * step}
		if text != nil {
			t.Text = text(t.At)
		}
		s.Ticks = append(s.Ticks, t)
	}
	return s
}

const (
	mostTicks = 100
	nearly    = 1e-9 // of a step, which is as good as on it
)

// niceStep is the least of 1, 2 and 5 times a power of ten that is not below a step.
func niceStep(least float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, n := range []float64{1, 2, 5} {
		if n*ten >= least*(1-nearly) {
			return n * ten
		}
	}
	return 10 * ten
}

// ok reports whether the scale has an extent.
func (s Scale) ok() bool {
	return s.High > s.Low && !math.IsInf(s.High-s.Low, 0)
}

// side is on which side of a scale a value lies: below, on it, above.
type side int

// at is where a value lies, from 0 at Low to 1 at High, and on which side where it lies
// off the scale.
func (s Scale) at(v float64) (float64, side) {
	switch {
	case v < s.Low:
		return 0, -1
	case v > s.High:
		return 1, 1
	}
	return (v - s.Low) / (s.High - s.Low), 0
}

// column is the one of w columns, or the row of w rows, that a value lies in.
func (s Scale) column(v float64, w int) (int, side) {
	at, off := s.at(v)
	return int(math.Round(at * float64(w-1))), off
}

// shown reports whether a mark is drawn.
func (m Mark) shown() bool { return m.Text != "" && !math.IsNaN(m.At) }

// shown reports whether a band is drawn.
func (b Span) shown() bool { return b.Text != "" && !math.IsNaN(b.Low) && !math.IsNaN(b.High) }

// ends are a band's ends in order.
func (b Span) ends() (low, high float64) { return min(b.Low, b.High), max(b.Low, b.High) }

// arrow points to where a value lies that is off the scale.
func (s side) arrow() rune {
	if s < 0 {
		return '<'
	}
	return '>'
}

// sign is a value's own sign, or the arrow to it where it lies off the scale.
func (s Scale) sign(v float64, own rune) rune {
	if _, off := s.at(v); off != 0 {
		return off.arrow()
	}
	return own
}

// value is the value in the middle of the i-th of n columns or rows; column's inverse.
func (s Scale) value(i, n int) float64 {
	return s.Low + float64(i)/float64(max(n-1, 1))*(s.High-s.Low)
}
