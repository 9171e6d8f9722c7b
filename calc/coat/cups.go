package coat

import (
	"slices"
	"strconv"
	"strings"

	"boothset/calc/unit"
)

// Cup is an efflux cup: the seconds its stream lasts tell the kinematic viscosity,
// nu = A (t - Offset) - B/t with nu in mm2/s and t in seconds. The equations hold at
// 25 C; paint sheets mostly mean a reading at 20 C, so a reading keeps its
// temperature with it.
type Cup struct {
	ID       string // "din4"
	Label    string // "DIN 53211 4 mm"
	Standard string // "DIN 53211"
	Orifice  unit.Length
	A        float64 // mm2/s2
	Offset   float64 // s
	B        float64 // mm2
	// Low and High bound the seconds that the standard publishes the equation for.
	Low, High float64
	family    string
	number    int
}

// ZahnStandard is the standard of the Zahn cups, which itself keeps them from settling
// a specification.
const ZahnStandard = "ASTM D4212"

// The other standards whose cups are known here.
const (
	iso2431  = "ISO 2431"
	din53211 = "DIN 53211" // withdrawn, still on sheets
	d1200    = "ASTM D1200"
)

// cups holds the equations as the standards print them, in the order they are listed
// to a person. Source: a viscosity laboratory's published equations for D1200 and
// D4212, and a public table of cup constants for ISO 2431 and DIN 53211.
var cups = []Cup{
	isoCup(3, 0.443, 200),
	isoCup(4, 1.37, 200),
	isoCup(5, 3.28, 220),
	isoCup(6, 6.90, 570),
	{ID: "din4", Label: "DIN 53211 4 mm", Standard: din53211, Orifice: unit.MM(4), A: 4.57, B: 452, Low: 25, High: 150, family: "din", number: 4},
	fordCup(1, 1.9, 0.49, 35.0, 55),
	fordCup(2, 2.53, 1.44, 18.0, 40),
	fordCup(3, 3.4, 2.31, 6.58, 20),
	fordCup(4, 4.12, 3.85, 4.49, 20),
	fordCup(5, 5.2, 12.1, 2.0, 20),
	zahnCup(1, 2.0, 1.1, 29, 35),
	zahnCup(2, 2.7, 3.5, 14, 20),
	zahnCup(3, 3.8, 11.7, 7.5, 20),
	zahnCup(4, 4.3, 14.8, 5, 20),
	zahnCup(5, 5.3, 23, 0, 20),
}

func isoCup(n int, a, b float64) Cup {
	return Cup{
		ID: "iso" + strconv.Itoa(n), Label: "ISO 2431 " + strconv.Itoa(n) + " mm", Standard: iso2431,
		Orifice: unit.MM(float64(n)), A: a, B: b, Low: 30, High: 100, family: "iso", number: n,
	}
}

func fordCup(n int, orifice, a, offset, low float64) Cup {
	return Cup{
		ID: "ford" + strconv.Itoa(n), Label: "Ford " + strconv.Itoa(n), Standard: d1200,
		Orifice: unit.MM(orifice), A: a, Offset: offset, Low: low, High: 100, family: "ford", number: n,
	}
}

func zahnCup(n int, orifice, a, offset, low float64) Cup {
	return Cup{
		ID: "zahn" + strconv.Itoa(n), Label: "Zahn " + strconv.Itoa(n), Standard: ZahnStandard,
		Orifice: unit.MM(orifice), A: a, Offset: offset, Low: low, High: 80, family: "zahn", number: n,
	}
}

// Cups lists every cup known here.
func Cups() []Cup { return slices.Clone(cups) }

// AmbiguousCup says that what was typed fits several cups: the person must say which.
type AmbiguousCup struct {
	Given      string
	Candidates []Cup
}

func (e *AmbiguousCup) Error() string {
	return "cup " + strconv.Quote(e.Given) + ": which one, " + strings.Join(ids(e.Candidates), " or ") + "?"
}

// UnknownCup says that what was typed fits no cup.
type UnknownCup struct{ Given string }

func (e *UnknownCup) Error() string {
	return "cup " + strconv.Quote(e.Given) + ": give one of " + strings.Join(ids(cups), ", ")
}

func ids(list []Cup) []string {
	names := make([]string, len(list))
	for i, c := range list {
		names[i] = c.ID
	}
	return names
}

// maxCupName is how many bytes of typing are looked at.
const maxCupName = 64

// FindCup is the cup that a person means by text: an id ("din4"), a name ("Ford no. 4",
// "zahn #2") or a standard with a size ("ISO 2431 4 mm"). Text that fits several cups
// gives an *AmbiguousCup with all of them: "4 mm" is two cups whose seconds differ by
// a factor of about 2.5. Text that fits none gives an *UnknownCup.
func FindCup(text string) (Cup, error) {
	want, ok := readCup(text)
	if !ok {
		if len(text) > maxCupName {
			text = strings.ToValidUTF8(text[:maxCupName], "") + "..."
		}
		return Cup{}, &UnknownCup{text}
	}
	var found []Cup
	for _, c := range cups {
		if want.fits(c) {
			found = append(found, c)
		}
	}
	switch len(found) {
	case 0:
		return Cup{}, &UnknownCup{text}
	case 1:
		return found[0], nil
	}
	return Cup{}, &AmbiguousCup{text, found}
}

// wanted is what a text says of a cup: the families it names (none names all), the
// standard, the size, and whether the size was in millimetres.
type wanted struct {
	families []string
	standard string
	number   int
	metric   bool
}

func (w wanted) fits(c Cup) bool {
	switch {
	case w.standard != "":
		if c.Standard != w.standard {
			return false
		}
	case len(w.families) > 0 && !slices.Contains(w.families, c.family):
		return false
	case len(w.families) == 0 && w.metric && c.Orifice != unit.MM(float64(w.number)):
		return false
	}
	return w.number == 0 || w.number == c.number
}

// readCup reads the words and numbers of text; false where it says nothing of a cup
// or holds something that is no part of a cup's name.
func readCup(text string) (w wanted, ok bool) {
	if len(text) > maxCupName {
		return w, false
	}
	for _, token := range tokens(strings.ToLower(text)) {
		switch token {
		case "cup", "no", "nr", "number", "en", "d", "flow", "efflux", "viscosity", "size":
		case "mm":
			w.metric = true
		case "iso", "din", "ford", "zahn":
			w.families = append(w.families, token)
		case "astm":
			w.families = append(w.families, "ford", "zahn")
		case "2431":
			w.standard = iso2431
		case "53211":
			w.standard = din53211
		case "1200":
			w.standard = d1200
		case "4212":
			w.standard = ZahnStandard
		case "1", "2", "3", "4", "5", "6":
			n := int(token[0] - '0')
			if w.number != 0 && w.number != n {
				return w, false
			}
			w.number = n
		default:
			return w, false
		}
	}
	// "ASTM Ford 4" names one family, not two.
	if slices.Contains(w.families, "ford") && slices.Contains(w.families, "zahn") {
		w.families = narrow(w.families)
	}
	return w, w.number != 0 || len(w.families) > 0 || w.standard != ""
}

// narrow keeps the families that are named more than once, or all where none is.
func narrow(families []string) []string {
	var twice []string
	for i, f := range families {
		if slices.Contains(families[:i], f) {
			twice = append(twice, f)
		}
	}
	if len(twice) > 0 {
		return twice
	}
	return families
}

// tokens cuts s into runs of letters and runs of digits; blanks and the marks that
// people put between them fall away, any other character is a token by itself.
func tokens(s string) []string {
	var out []string
	kind := func(r rune) int {
		switch {
		case r >= '0' && r <= '9':
			return 1
		case r >= 'a' && r <= 'z':
			return 2
		case strings.ContainsRune(" \t#.-_:/,()", r):
			return 3
		}
		return 4
	}
	last := 0
	for _, r := range s {
		k := kind(r)
		if k != 3 {
			if k == last && k != 4 {
				out[len(out)-1] += string(r)
			} else {
				out = append(out, string(r))
			}
		}
		last = k
	}
	return out
}
