package unit

import (
	"strconv"
	"strings"
)

// The bounds of what is taken from a keyboard: characters in all, and the size
// of the number before its unit is applied.
const (
	maxTyped  = 32
	maxNumber = 1e9
)

// ParseError says that something typed could not be read as a quantity: which
// quantity, what was given, and the id of the sentence that says what would do.
type ParseError struct {
	Quantity string   // its id, such as "pressure"
	Given    string   // what was typed, cut short where it was too long
	ID       string   // "want-pressure"
	Usage    string   // the id of what the quantity takes at all
	Details  []Detail // what the sentence speaks of
}

// Detail is what stands at a place of a sentence, by its name there.
type Detail struct{ Name, Text string }

func (e *ParseError) Error() string {
	return e.Quantity + " " + strconv.Quote(e.Given) + ": " + e.ID
}

// refusal is the sentence that says what would have done, none where its id is empty.
type refusal struct {
	id      string
	details []Detail
}

// spells compares without regard to spaces and to ASCII case.
func spells(typed, name string) bool {
	for i := range len(typed) {
		c := typed[i]
		if c == ' ' || c == '\t' {
			continue
		}
		if 'A' <= c && c <= 'Z' {
			c += 'a' - 'A'
		}
		if name == "" || name[0] != c {
			return false
		}
		name = name[1:]
	}
	return name == ""
}

// scanner eats a typed string from its front.
type scanner struct {
	rest string
	// grouped is what the number would be were its point a mark of thousands, 0 where it cannot
	// be one.
	grouped float64
}

func (sc *scanner) accept(c byte) bool {
	if sc.rest == "" || sc.rest[0] != c {
		return false
	}
	sc.rest = sc.rest[1:]
	return true
}

func (sc *scanner) spaces() { sc.rest = strings.TrimLeft(sc.rest, " \t") }

func (sc *scanner) digits() string {
	n := 0
	for n < len(sc.rest) && '0' <= sc.rest[n] && sc.rest[n] <= '9' {
		n++
	}
	d := sc.rest[:n]
	sc.rest = sc.rest[n:]
	return d
}

// number reads a number: an optional sign, digits with at most one point or
// decimal comma, or a fraction where those are allowed. A want that has an id
// says what would have done instead: usage, or something more exact.
func (sc *scanner) number(fractions bool, usage string) (v float64, fraction bool, want refusal) {
	negative := sc.accept('-')
	if !negative {
		sc.accept('+')
	}
	whole := sc.digits()
	if fractions && whole != "" {
		v, fraction = sc.fraction(whole)
	}
	if !fraction {
		v, want = sc.decimal(whole, usage)
	}
	switch {
	case want.id != "":
		return 0, false, want
	case v > maxNumber:
		return 0, false, refusal{"typed-too-large", []Detail{{"most", strconv.FormatFloat(maxNumber, 'f', -1, 64)}}}
	case negative && v != 0: // so that -0 is 0
		v, sc.grouped = -v, -sc.grouped
	}
	return v, fraction, refusal{}
}

// decimal reads what follows the digits before the point. A comma with exactly
// three digits behind it could be a decimal comma or a thousands mark, which is
// a factor of a thousand, so it is refused; after a zero it can only be decimal.
func (sc *scanner) decimal(whole, usage string) (v float64, want refusal) {
	comma := sc.accept(',')
	point := !comma && sc.accept('.')
	part := sc.digits()
	significant := strings.TrimLeft(whole, "0")
	switch {
	case whole+part == "":
		return 0, refusal{id: usage}
	case (comma || point) && sc.rest != "" && (sc.rest[0] == ',' || sc.rest[0] == '.'):
		return 0, refusal{id: "typed-marks"}
	case comma && len(part) == 3 && significant != "":
		without := strings.TrimRight(significant+"."+part, "0")
		return 0, refusal{"typed-two-ways", []Detail{{"one", significant + part}, {"other", strings.TrimSuffix(without, ".")}}}
	}
	if point && len(part) == 3 && len(whole) <= 3 && significant != "" {
		sc.grouped = digitsValue(whole + part)
	}
	return digitsValue(whole + "." + part), refusal{}
}

// fraction reads "/8" after a 3, or " 1/2" or "-1/2" after a 1. Where it finds
// none that makes sense (a zero below, or 1-3/2) it leaves the input as it was.
func (sc *scanner) fraction(whole string) (v float64, ok bool) {
	start := sc.rest
	over := whole
	sc.spaces()
	mixed := !sc.accept('/')
	if mixed {
		sc.accept('-')
		sc.spaces()
		over = sc.digits()
		sc.spaces()
		if over == "" || !sc.accept('/') {
			sc.rest = start
			return 0, false
		}
		v = digitsValue(whole)
	}
	sc.spaces()
	under := sc.digits()
	a, b := digitsValue(over), digitsValue(under)
	if b == 0 || mixed && a >= b {
		sc.rest = start
		return 0, false
	}
	return v + a/b, true
}

// digitsValue is the value of digits with at most one point; none is 0. With
// at most maxTyped digits it cannot overflow, the only error possible here.
func digitsValue(digits string) float64 {
	v, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return 0
	}
	return v
}
