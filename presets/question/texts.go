package question

import (
	"errors"
	"strconv"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// The readings of what is no plain quantity.

// clock reads a time of day: "14:30", "14.30" or, as a keypad has no colon, "1430"; "2:30pm"
// and "2pm" by twelve hours. SI is seconds since midnight.
func clock(r *Reader, f *Field, t string, sys unit.System) Value {
	at, ok := timeOfDay(t)
	if !ok {
		return r.wanted(f, t, sys, "want-time-of-day")
	}
	return Value{SI: [2]float64{at.Seconds()}}
}

func timeOfDay(t string) (time.Duration, bool) {
	t = strings.TrimSuffix(strings.ToLower(strings.ReplaceAll(t, " ", "")), ".")
	half, twelve := 0, false
	for h, marks := range []words.Spelling{words.Morning, words.Afternoon} {
		for _, mark := range words.Spellings(marks) {
			if before, found := strings.CutSuffix(t, mark); found {
				t, half, twelve = strings.TrimSuffix(before, "."), h, true
			}
		}
	}
	t = strings.NewReplacer(".", ":", ",", ":").Replace(t)
	hours, minutes, parted := strings.Cut(t, ":")
	if n := len(t); !parted && (n == 3 || n == 4) {
		hours, minutes, parted = t[:n-2], t[n-2:], true
	}
	h, err := strconv.ParseUint(hours, 10, 8)
	m := uint64(0)
	if parted && err == nil {
		m, err = strconv.ParseUint(minutes, 10, 8)
	}
	ok := err == nil && m < 60 && (parted && len(minutes) == 2 || !parted && twelve)
	if twelve {
		ok = ok && h >= 1 && h <= 12
		h = h%12 + 12*uint64(half)
	}
	return time.Duration(h)*time.Hour + time.Duration(m)*time.Minute, ok && h < 24
}

// ratio reads a mixing ratio.
func ratio(r *Reader, f *Field, t string, sys unit.System) Value {
	mixed, err := coat.ParseRatio(withColons(t))
	if err != nil {
		return r.wanted(f, t, sys, "want-ratio")
	}
	return Value{Ratio: mixed}
}

// withColons is a ratio typed without them, as a keypad has none: "4 1 1", "4/1/1", or
// "4.1.1", whose points are too many for a number. "4.1" stays as it is: it may be a
// percent without its sign.
func withColons(t string) string {
	parts, percent, both := strings.Cut(t, "+")
	if strings.ContainsAny(parts, ":%") {
		return t
	}
	switch fields := strings.Fields(parts); {
	case strings.Contains(parts, "/"):
		parts = strings.ReplaceAll(parts, "/", ":")
	case len(fields) > 1:
		parts = strings.Join(fields, ":")
	case strings.Count(parts, ".") > 1:
		parts = strings.ReplaceAll(parts, ".", ":")
	}
	if both {
		return parts + "+" + percent
	}
	return parts
}

const mostPanels = 50 // of one kind

func panelNames() (names []string) {
	for _, p := range coat.Panels() {
		names = append(names, p.ID)
	}
	return names
}

const digits = "0123456789"

// area reads an area, or a panel of usual size, with how many of it in front. SI is its
// bounds, ID the panel.
func area(r *Reader, f *Field, t string, sys unit.System) Value {
	if a, err := unit.Surface.Read(t, sys); err == nil {
		if a.SI <= 0 {
			return r.wanted(f, t, sys, "want-above-zero")
		}
		return Value{SI: [2]float64{a.SI, a.SI}, Bare: [2]bool{a.Bare}}
	}
	lower := strings.ToLower(strings.TrimSpace(t))
	name := strings.TrimLeft(lower, digits)
	n := 1
	if many := lower[:len(lower)-len(name)]; many != "" {
		var ok bool
		if n, ok = wholeNumber(many); !ok || n < 1 || n > mostPanels {
			return r.wanted(f, t, sys, "want-panel-count", calc.CountFigure("most", mostPanels))
		}
		name = strings.TrimPrefix(strings.TrimSpace(name), "x ")
	}
	name = strings.TrimSpace(name)
	for _, p := range coat.Panels() {
		if name == p.ID || name == p.ID+"s" {
			return Value{ID: p.ID, SI: [2]float64{float64(unit.Area(n) * p.Low), float64(unit.Area(n) * p.High)}}
		}
	}
	return r.wanted(f, t, sys, "want-area", r.names(panelNames()))
}

// price reads "60/L" or "$200/gal" and gives it a litre. A number alone is refused: a
// price a litre taken for one a gallon is wrong by four.
func price(r *Reader, f *Field, t string, sys unit.System) Value {
	amount, per, _ := strings.Cut(t, "/")
	amount = strings.TrimLeft(amount, " $€£")
	q, err := unit.Share.Read(amount, unit.US) // in hundredths
	volume, errPer := unit.Parse[unit.Volume](unit.Tank, "1"+per, unit.Named)
	if errors.Join(err, errPer) != nil || !q.Bare || q.SI < 0 || strings.ContainsAny(per, digits+".,") {
		return r.wanted(f, t, sys, "want-price")
	}
	if fault := r.twoWays(f, 0, t, amount, sys, q); fault != nil {
		return Value{Fault: fault}
	}
	return Value{SI: [2]float64{q.SI * 100 / volume.Litres()}}
}
