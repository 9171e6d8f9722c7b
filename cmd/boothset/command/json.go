package command

import (
	"fmt"
	"math"
	"strconv"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// jsonWriter appends JSON by hand: a batch writes tens of thousands of answers a
// second, and the standard encoder's reflection would be most of its time. Keys are
// plain; of text whatever cannot be printed is escaped.
type jsonWriter struct {
	b     []byte
	fresh bool // nothing stands in the open object or array yet
	// pick is what is wanted of the open object or array, nil where that is all of it.
	pick *picked
}

// key writes a key, where it is wanted.
func (j *jsonWriter) key(name string) (wanted bool) {
	if name != "" && !j.pick.has(name) {
		return false
	}
	if !j.fresh {
		j.b = append(j.b, ',')
	}
	j.fresh = false
	if name != "" {
		j.b = append(j.b, '"')
		j.b = append(j.b, name...)
		j.b = append(j.b, '"', ':')
	}
	return true
}

// object writes an object under a key; an empty key is an element of an array.
func (j *jsonWriter) object(name string, fill func()) { j.nest(name, '{', '}', fill) }

func (j *jsonWriter) array(name string, fill func()) { j.nest(name, '[', ']', fill) }

func (j *jsonWriter) nest(name string, open, shut byte, fill func()) {
	if !j.key(name) {
		return
	}
	outer := j.pick
	if name != "" {
		j.pick = j.pick.within(name)
	}
	j.b = append(j.b, open)
	j.fresh = true
	fill()
	j.b = append(j.b, shut)
	j.fresh, j.pick = false, outer
}

func (j *jsonWriter) number(name string, v float64) {
	if j.key(name) {
		j.value(v)
	}
}

// value appends a number to twelve digits. Nothing in an answer is infinite or undefined; were
// it so, null says it without breaking the line.
func (j *jsonWriter) value(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		j.b = append(j.b, "null"...)
		return
	}
	if v == 0 {
		v = 0 // not -0
	}
	j.b = unit.AppendExact(j.b, v)
}

func (j *jsonWriter) count(name string, n int) {
	if j.key(name) {
		j.b = strconv.AppendInt(j.b, int64(n), 10)
	}
}

func (j *jsonWriter) bool(name string, v bool) {
	if j.key(name) {
		j.b = strconv.AppendBool(j.b, v)
	}
}

func (j *jsonWriter) null(name string) {
	if j.key(name) {
		j.b = append(j.b, "null"...)
	}
}

func (j *jsonWriter) text(name, s string) {
	if j.key(name) {
		j.b = appendText(j.b, s)
	}
}

func appendText(b []byte, s string) []byte {
	b = append(b, '"')
	if !needsEscape(s) {
		b = append(b, s...)
		return append(b, '"')
	}
	for _, c := range s { // bytes that are no character become the one for that
		switch {
		case c == '"' || c == '\\':
			b = append(b, '\\', byte(c))
		case unicode.IsPrint(c):
			b = utf8.AppendRune(b, c)
		default: // a terminal may be where it goes
			for _, unit := range utf16.AppendRune(nil, c) {
				b = fmt.Appendf(b, `\u%04x`, unit)
			}
		}
	}
	return append(b, '"')
}

func needsEscape[T string | []byte](s T) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' || c >= 0x7f {
			return true
		}
	}
	return false
}

// written writes text that write appends, without a copy where nothing in it needs an
// escape, which in a sentence nothing does.
func (j *jsonWriter) written(name string, write func(dst []byte) []byte) {
	if !j.key(name) {
		return
	}
	j.b = append(j.b, '"')
	start := len(j.b)
	j.b = write(j.b)
	if needsEscape(j.b[start:]) {
		text := string(j.b[start:])
		j.b = appendText(j.b[:start-1], text)
		return
	}
	j.b = append(j.b, '"')
}

// quantity is a value in both systems.
func quantity[T ~float64](j *jsonWriter, name string, q *unit.Quantity, v T) {
	if !j.pick.has(name) {
		return
	}
	us, a, metric, b := q.Pair(float64(v))
	j.object(name, func() {
		j.number(us, a)
		j.number(metric, b)
	})
}

func (j *jsonWriter) gauge(name string, p unit.Gauge) { quantity(j, name, unit.Pressure, p) }
func (j *jsonWriter) drop(name string, d unit.Drop)   { quantity(j, name, unit.Pressure, d) }
func (j *jsonWriter) near(name string, l unit.Length) { quantity(j, name, unit.Distance, l) }
func (j *jsonWriter) run(name string, l unit.Length)  { quantity(j, name, unit.Run, l) }
func (j *jsonWriter) film(name string, l unit.Length) { quantity(j, name, unit.Film, l) }
func (j *jsonWriter) temp(name string, t unit.Temp)   { quantity(j, name, unit.Temperature, t) }
func (j *jsonWriter) degrees(name string, d unit.TempDiff) {
	quantity(j, name, unit.TemperatureDifference, d)
}
func (j *jsonWriter) flow(name string, q unit.Flow)       { quantity(j, name, unit.AirFlow, q) }
func (j *jsonWriter) speed(name string, v unit.Speed)     { quantity(j, name, unit.Velocity, v) }
func (j *jsonWriter) volume(name string, v unit.Volume)   { quantity(j, name, unit.Tank, v) }
func (j *jsonWriter) density(name string, d unit.Density) { quantity(j, name, unit.PaintDensity, d) }
func (j *jsonWriter) voc(name string, d unit.Density)     { quantity(j, name, unit.VOC, d) }
func (j *jsonWriter) area(name string, a unit.Area)       { quantity(j, name, unit.Surface, a) }

func (j *jsonWriter) ground(w *words.Words, g calc.Ground) {
	j.text("basis", string(g.Basis))
	j.text("source", w.Source(g))
}
