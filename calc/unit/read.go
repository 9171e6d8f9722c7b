package unit

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Reading takes what people type at the bench: a number, then the unit with or without a
// space ("90psi", "6 bar", "24°C", "3/8 in", "45%"). A bare number is in the system's unit.
//
// A number is digits with at most one point or decimal comma ("1,5" is 1.5) and a sign if
// wanted. "1,500" is refused, since it means 1500 to some and 1.5 to others. Lengths may be
// fractions ("3/8", "1-1/2", "1 1/2"). Exponents, hex, nan, inf, underscores, digits other
// than 0 to 9, more than 32 characters and numbers beyond 1e9 are refused. Units are read
// without regard to case, by their English and their Spanish names. What only looks otherwise
// is read as it is meant: see Fold.
//
// Every error is a *ParseError and comes with a zero value; a value is finite. Whether a
// value is sensible (a humidity of 300 %) is for the caller to say.

// Named is the system in which no bare number is read: the unit must be typed.
const Named System = -1

// Reading is a quantity as it was read, in SI.
type Reading struct {
	SI   float64
	Bare bool // no unit was named
	// Size is that of the unit it was read in, in SI, or for a rate of what the rate is of.
	Size float64
	// Grouped is what it would be in SI were its point a mark of thousands, 0 where it cannot be
	// one: "1.500" is 1.5 to some and 1500 to others.
	Grouped float64
	// number is how many characters of the trimmed text the number takes.
	number int
	label  string // of the unit that a bare number was taken in, with the blank before it
}

// Read reads text, a bare number in the system's unit.
func (q *Quantity) Read(typed string, sys System) (Reading, error) {
	text := Fold(typed)
	if utf8.RuneCountInString(text) > maxTyped {
		short := string([]rune(text)[:maxTyped]) + "..."
		return Reading{}, q.fail(short, "typed-too-long")
	}
	trimmed := strings.Trim(text, " \t\r\n")
	sc := scanner{rest: trimmed}
	value, fraction, want := sc.number(q.fractions, q.usage)
	if want.id != "" {
		return Reading{}, q.fail(typed, want.id, want.details...)
	}
	r := Reading{number: len(trimmed) - len(sc.rest)}
	name := q.withoutRate(strings.TrimSuffix(sc.rest, "."))
	if q.unmarked(name) {
		if sys == Named {
			return Reading{}, q.fail(typed, q.usage)
		}
		r.Bare, r.label = true, q.shown[sys].label
		// A fraction is inches where millimetres are usual: a hose is sold as 3/8 in countries
		// that measure it in millimetres too.
		if fraction && r.label == showMM.label {
			r.label = showInch.label
		}
		name = q.withoutRate(r.label)
	}
	for i := range q.units {
		if u := &q.units[i]; u.spelled(name) {
			r.SI, r.Size = q.inSI(u, value), u.size
			if sc.grouped != 0 {
				r.Grouped = q.inSI(u, sc.grouped)
			}
			return q.checked(r, typed)
		}
	}
	return Reading{}, q.fail(typed, q.usage)
}

// inSI is so many of a unit. Percentages are divided, which is exact where a product with
// 0.01 is not, and temperatures counted from absolute zero.
func (q *Quantity) inSI(u *spelling, value float64) float64 {
	switch {
	case q == Share:
		return value / 100
	case q == Temperature && u.size != 1:
		return float64(Fahrenheit(value))
	case q == Temperature:
		return float64(Celsius(value))
	case q == FluidFlow:
		return value * u.size / SecondPerMinute
	}
	return value * u.size
}

// checked refuses a temperature that there is not.
func (q *Quantity) checked(r Reading, typed string) (Reading, error) {
	if q == Temperature && r.SI <= 0 {
		return Reading{}, q.fail(typed, "want-above-absolute-zero")
	}
	return r, nil
}

// Parse is the value of text.
func Parse[T ~float64](q *Quantity, text string, sys System) (T, error) {
	r, err := q.Read(text, sys)
	return T(r.SI), err
}

// Complete is text that was read, with the unit named that it was taken in where that was
// left out.
func (r Reading) Complete(text string) string {
	text = strings.Trim(Fold(text), " \t\r\n")
	if !r.Bare {
		return text
	}
	return strings.TrimSpace(text[:r.number]) + r.label
}

// TwoWays is how each of its readings is typed so that it is no other, where it has two.
func (r Reading) TwoWays(text string) (one, other string) {
	text = strings.Trim(Fold(text), " \t\r\n")
	number, rest := text[:r.number], text[r.number:]
	decimal := strings.TrimSuffix(strings.TrimRight(number, "0"), ".")
	if decimal == number { // three digits again
		decimal += "0"
	}
	return strings.ReplaceAll(number, ".", "") + rest, decimal + rest
}

// Takes reports whether a character can be part of the quantity as it is typed.
func (q *Quantity) Takes(c rune) bool {
	if c == '²' || c == '³' {
		return q.named(rune(lookAlike(c)[0]))
	}
	for _, c := range Fold(string(c)) {
		if !strings.ContainsRune("0123456789 .,+-", c) && !(q.fractions && c == '/') && !q.named(unicode.ToLower(c)) {
			return false
		}
	}
	return true
}

// named reports whether a character is in a name of the quantity's units.
func (q *Quantity) named(c rune) bool {
	in := func(names []string) bool {
		for _, name := range names {
			if strings.ContainsRune(name, c) {
				return true
			}
		}
		return false
	}
	for i := range q.units {
		if in(q.units[i].names) {
			return true
		}
	}
	return in(q.marks) || in(q.per)
}

// unmarked reports whether typed names no unit.
func (q *Quantity) unmarked(typed string) bool {
	for _, mark := range q.marks {
		if spells(typed, mark) {
			return true
		}
	}
	return spells(typed, "")
}

// withoutRate is typed without the ending that makes a rate of its unit.
func (q *Quantity) withoutRate(typed string) string {
	for _, ending := range q.per {
		for at := range typed {
			if spells(typed[at:], ending) {
				return typed[:at]
			}
		}
	}
	return typed
}

func (u *spelling) spelled(typed string) bool {
	for _, name := range u.names {
		if spells(typed, name) {
			return true
		}
	}
	return false
}

func (q *Quantity) fail(given, id string, details ...Detail) error {
	return &ParseError{Quantity: q.ID, Given: given, ID: id, Usage: q.usage, Details: details}
}

// same is how near two counts are that differ by the rounding of their units alone.
const same = 1e-6

// Steps is the counts of the system's unit that lie so many steps of a size from a value:
// to the next whole step first where it lies between two.
func (q *Quantity) Steps(sys System, si, size float64, by int) float64 {
	count := q.shown[sys].count(si) / size
	if near := math.Round(count); math.Abs(count-near) < same {
		count = near
	}
	if by > 0 {
		return (math.Floor(count) + float64(by)) * size
	}
	return (math.Ceil(count) + float64(by)) * size
}

// Decimals is how many decimals a size in a unit is written with, and whether these few say it.
func Decimals(size float64) (decimals int, plain bool) {
	const most = 2
	for ; decimals <= most; decimals++ {
		if v := size * math.Pow10(decimals); v >= 1-same && math.Abs(v-math.Round(v)) < same {
			return decimals, true
		}
	}
	return most, false
}
