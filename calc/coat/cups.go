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

const mm = 1000 * Micrometre

// cups holds the equations as the standards print them, in the order they are listed
// to a person. Source: a viscosity laboratory's published equations for D1200 and
// D4212, and a public table of cup constants for ISO 2431 and DIN 53211.
var cups = []Cup{
	{ID: "iso3", Label: "ISO 2431 3 mm", Standard: iso2431, Orifice: 3 * mm, A: 0.443, B: 200, Low: 30, High: 100, family: "iso", number: 3},
	{ID: "iso4", Label: "ISO 2431 4 mm", Standard: iso2431, Orifice: 4 * mm, A: 1.37, B: 200, Low: 30, High: 100, family: "iso", number: 4},
	{ID: "iso5", Label: "ISO 2431 5 mm", Standard: iso2431, Orifice: 5 * mm, A: 3.28, B: 220, Low: 30, High: 100, family: "iso", number: 5},
	{ID: "iso6", Label: "ISO 2431 6 mm", Standard: iso2431, Orifice: 6 * mm, A: 6.90, B: 570, Low: 30, High: 100, family: "iso", number: 6},
	{ID: "din4", Label: "DIN 53211 4 mm", Standard: din53211, Orifice: 4 * mm, A: 4.57, B: 452, Low: 25, High: 150, family: "din", number: 4},
	{ID: "ford1", Label: "Ford 1", Standard: d1200, Orifice: 1.9 * mm, A: 0.49, Offset: 35.0, Low: 55, High: 100, family: "ford", number: 1},
	{ID: "ford2", Label: "Ford 2", Standard: d1200, Orifice: 2.53 * mm, A: 1.44, Offset: 18.0, Low: 40, High: 100, family: "ford", number: 2},
	{ID: "ford3", Label: "Ford 3", Standard: d1200, Orifice: 3.4 * mm, A: 2.31, Offset: 6.58, Low: 20, High: 100, family: "ford", number: 3},
	{ID: "ford4", Label: "Ford 4", Standard: d1200, Orifice: 4.12 * mm, A: 3.85, Offset: 4.49, Low: 20, High: 100, family: "ford", number: 4},
	{ID: "ford5", Label: "Ford 5", Standard: d1200, Orifice: 5.2 * mm, A: 12.1, Offset: 2.0, Low: 20, High: 100, family: "ford", number: 5},
	{ID: "zahn1", Label: "Zahn 1", Standard: ZahnStandard, Orifice: 2.0 * mm, A: 1.1, Offset: 29, Low: 35, High: 80, family: "zahn", number: 1},
	{ID: "zahn2", Label: "Zahn 2", Standard: ZahnStandard, Orifice: 2.7 * mm, A: 3.5, Offset: 14, Low: 20, High: 80, family: "zahn", number: 2},
	{ID: "zahn3", Label: "Zahn 3", Standard: ZahnStandard, Orifice: 3.8 * mm, A: 11.7, Offset: 7.5, Low: 20, High: 80, family: "zahn", number: 3},
	{ID: "zahn4", Label: "Zahn 4", Standard: ZahnStandard, Orifice: 4.3 * mm, A: 14.8, Offset: 5, Low: 20, High: 80, family: "zahn", number: 4},
	{ID: "zahn5", Label: "Zahn 5", Standard: ZahnStandard, Orifice: 5.3 * mm, A: 23, Offset: 0, Low: 20, High: 80, family: "zahn", number: 5},
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
