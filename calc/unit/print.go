package unit

import (
	"math"
	"strconv"
)

// System is the set of units a person reads and, where no unit is typed, writes.
type System int

// The two systems: psi, F, in, ft, mil, cfm, gal; and bar, C, mm, m, um, L/min, L.
const (
	US System = iota
	Metric
)

// Printing turns a quantity into a number and a unit, such as "30 psi". The Append forms
// allocate nothing when dst has room. Values must be finite; what rounds to zero prints
// without a sign.

// Usual asks for the decimals that suit the quantity, its unit and its size.
// Any other negative count of decimals does too.
const Usual = -1

// usual is the decimals of a number, by how large it is as it will be printed.
func (sc *scale) usual(v float64) int {
	switch v = math.Abs(v); {
	case sc.finest > 0 && v < 1:
		return sc.finest
	case v+0.5*math.Pow10(-sc.fine) < 10:
		return sc.fine
	}
	return sc.coarse
}

// append prints v with the decimals given, or usual ones.
func (sc *scale) append(dst []byte, v float64, decimals int) []byte {
	if decimals < 0 {
		decimals = sc.usual(v)
	}
	start := len(dst)
	dst = strconv.AppendFloat(dst, v, 'f', decimals, 64)
	if dst[start] != '-' {
		return dst
	}
	for _, c := range dst[start+1:] {
		if c != '0' && c != '.' {
			return dst
		}
	}
	copy(dst[start:], dst[start+1:])
	return dst[:len(dst)-1]
}

// Append prints a value in the system's unit with the decimals given. A bore has its own.
func (q *Quantity) Append(dst []byte, sys System, si float64, decimals int) []byte {
	if q == Bore {
		return appendBore(dst, sys, Length(si))
	}
	sc := q.scale(sys, si)
	return append(sc.append(dst, sc.count(si), decimals), sc.label...)
}

// Text is Append as a string.
func (q *Quantity) Text(sys System, si float64, decimals int) string {
	return string(q.Append(nil, sys, si, decimals))
}

// Number is the value as a number without its unit.
func (q *Quantity) Number(sys System, si float64, decimals int) string {
	sc := q.scale(sys, si)
	return string(sc.append(nil, sc.count(si), decimals))
}

// Rounded is the value, in SI, that a value is printed as with the decimals given.
func (q *Quantity) Rounded(sys System, si float64, decimals int) float64 {
	sc := q.scale(sys, si)
	v, err := strconv.ParseFloat(string(sc.append(nil, sc.count(si), decimals)), 64)
	if err != nil {
		return si // beyond the largest number there is
	}
	return sc.of(v)
}

// Label is the unit that the value is printed in, "psi".
func (q *Quantity) Label(sys System, si float64) string { return trimmed(q.scale(sys, si).label) }

// CountText is a count of the system's units as text, with its unit.
func (q *Quantity) CountText(sys System, count float64, decimals int) string {
	sc := &q.shown[sys]
	return string(append(sc.append(nil, count, decimals), sc.label...))
}

// AppendBrief prints a value to three digits. Without its unit where another figure of the
// sentence has it.
func (q *Quantity) AppendBrief(dst []byte, sys System, si float64, withUnit bool) []byte {
	sc := q.briefScale(sys)
	return sc.labelled(AppendDigits(dst, q.counted(sc, si)), withUnit)
}

// AppendPast prints a value as AppendBrief does, with as many more digits as tell it from
// another one: from the bound that it is past.
func (q *Quantity) AppendPast(dst []byte, sys System, si, past float64, withUnit bool) []byte {
	sc := q.briefScale(sys)
	return sc.labelled(AppendApart(dst, q.counted(sc, si), q.counted(sc, past)), withUnit)
}

func (q *Quantity) briefScale(sys System) *scale {
	if sc := &q.brief[sys]; sc.count != nil {
		return sc
	}
	return &q.shown[sys]
}

// counted is how many of a scale's units a value is, without the rounding of a temperature's.
func (q *Quantity) counted(sc *scale, si float64) float64 {
	if q == Temperature {
		return degrees(sc.count(si))
	}
	return sc.count(si)
}

func (sc *scale) labelled(dst []byte, withUnit bool) []byte {
	if withUnit {
		return append(dst, sc.label...)
	}
	return dst
}

// AppendApart prints a number to three digits, or to as many more as tell it from another one. One
// that is further out than that is printed with all digits before its point, as it was typed.
func AppendApart(dst []byte, v, past float64) []byte {
	digits := 3
	if math.Abs(v) > math.Abs(past) {
		digits = max(digits, min(len(strconv.FormatFloat(math.Abs(v), 'f', 0, 64)), 15))
	}
	for digits < 15 && DigitsText(v, digits) == DigitsText(past, digits) {
		digits++
	}
	return appendDigits(dst, v, digits)
}

// degrees is a temperature without the rounding of its unit: counted from absolute zero, 0
// degrees are one off.
func degrees(v float64) float64 { return math.Round(v*1e9) / 1e9 }

// AppendExact prints a number to as many digits as any reading has, without the rounding of
// its unit: 75 and not 75.00000000000006. It may have an exponent.
func AppendExact(dst []byte, v float64) []byte { return strconv.AppendFloat(dst, v, 'g', 12, 64) }

// AppendDigits prints a number to three digits, without an exponent.
func AppendDigits(dst []byte, v float64) []byte { return appendDigits(dst, v, 3) }

// DigitsText is a number to so many digits as text, without an exponent.
func DigitsText(v float64, digits int) string { return string(appendDigits(nil, v, digits)) }

func appendDigits(dst []byte, v float64, digits int) []byte {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	if err != nil {
		short = v // rounded past the largest number there is
	}
	return strconv.AppendFloat(dst, short, 'f', -1, 64)
}

// AppendNumber prints a number that has no unit, two decimals below ten and none from ten
// on.
func AppendNumber(dst []byte, v float64) []byte { return plainNumber.append(dst, v, Usual) }

var plainNumber = scale{fine: 2}

// appendBore prints the bore of a hose or a passage. In the US system whole
// sixteenths of an inch are printed as such ("3/8 in", "1-1/2 in"), other bores
// with three decimals; in the metric one it is mm with one decimal, or none where
// that would be a zero.
func appendBore(dst []byte, s System, l Length) []byte {
	if s == Metric {
		if v := l.MM(); math.Abs(v-math.Round(v)) < 0.05 {
			return Distance.Append(dst, s, float64(l), 0)
		}
		return Distance.Append(dst, s, float64(l), 1)
	}
	sixteenths := l.Inches() * 16
	n := math.Round(sixteenths)
	const same = 1e-4 // of a sixteenth: rounding of the arithmetic, not of the bore
	if n < 1 || n > 16*100 || math.Abs(sixteenths-n) > same {
		return Distance.Append(dst, s, float64(l), 3)
	}
	return append(appendParts(dst, int64(n), 16, '-'), " in"...)
}

// TurnParts is the parts of a turn that turns of a knob are told in: a hand sets no finer.
const TurnParts = 8

// NearestTurns is turns of a knob to the nearest of its parts.
func NearestTurns(turns float64) float64 { return math.Round(turns*TurnParts) / TurnParts }

// AppendTurns prints turns of a knob, 0 or more, to the nearest eighth: "3/8", "1 1/4", "0".
func AppendTurns(dst []byte, turns float64) []byte {
	return appendParts(dst, int64(math.Round(turns*TurnParts)), TurnParts, ' ')
}

// appendParts prints n parts, so many of which are one, as a whole number and a fraction in
// its lowest terms; of is a power of 2.
func appendParts(dst []byte, n, of int64, joint byte) []byte {
	whole, over := n/of, n%of
	for over != 0 && over%2 == 0 {
		over, of = over/2, of/2
	}
	if whole > 0 || over == 0 {
		dst = strconv.AppendInt(dst, whole, 10)
	}
	if whole > 0 && over > 0 {
		dst = append(dst, joint)
	}
	if over > 0 {
		dst = strconv.AppendInt(dst, over, 10)
		dst = append(dst, '/')
		dst = strconv.AppendInt(dst, of, 10)
	}
	return dst
}
