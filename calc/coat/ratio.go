package coat

import (
	"math"
	"strconv"
	"strings"

	"boothset/calc/unit"
)

// Ratio is a mixing ratio by volume: the parts in their order (base first), with any
// percent already turned into a part of its own. Parts are not below 0 and the first
// is above it.
type Ratio struct{ Parts []float64 }

// RatioError says that a text is no mixing ratio.
type RatioError struct{ Given string }

func (e *RatioError) Error() string {
	return "mixing ratio " + strconv.Quote(e.Given) + `: give parts as "4:1:1", a percent as "10%", or both as "2:1+10%"`
}

const (
	maxRatio = 80    // bytes
	maxParts = 6     // in a mix
	mostPart = 10000 // of any unit
)

// ParseRatio reads parts with colons ("4:1:1", "100:50:30"), a percent of the whole
// before it ("2:1+10%", that is 2:1:0.3), or a percent alone ("10%", that is 1:0.1).
// Blanks do not matter; a decimal comma is a point. At most 6 parts, each up to
// 10000, and a percent up to 200; anything else is a *RatioError.
func ParseRatio(text string) (Ratio, error) {
	bad := &RatioError{text}
	if len(text) > maxRatio {
		bad.Given = strings.ToValidUTF8(text[:maxRatio], "") + "..."
		return Ratio{}, bad
	}
	parts, percent, both := strings.Cut(text, "+")
	if !both && strings.Contains(text, "%") {
		parts, percent, both = "1", text, true
	}
	var r Ratio
	sum := 0.0
	for field := range strings.SplitSeq(parts, ":") {
		v, ok := plain(field)
		if !ok || v > mostPart {
			return Ratio{}, bad
		}
		r.Parts = append(r.Parts, v)
		sum += v
	}
	if both {
		digits, ok := strings.CutSuffix(strings.TrimSpace(percent), "%")
		v, isNumber := plain(digits)
		added := sum * v / 100
		if !ok || !isNumber || v > 200 || added > mostPart {
			return Ratio{}, bad
		}
		r.Parts = append(r.Parts, added)
	}
	if r.Parts[0] < 1e-3 || len(r.Parts) < 2 || len(r.Parts) > maxParts {
		return Ratio{}, bad
	}
	return r, nil
}

// plain reads digits with at most one point or comma among or before them.
func plain(s string) (float64, bool) {
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	if strings.Trim(s, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// String is the ratio with colons to four decimals, which ParseRatio reads back.
func (r Ratio) String() string {
	fields := make([]string, len(r.Parts))
	for i, p := range r.Parts {
		fields[i] = strconv.FormatFloat(math.Round(p*1e4)/1e4, 'f', -1, 64)
	}
	return strings.Join(fields, ":")
}

func (r Ratio) check() error {
	if len(r.Parts) == 0 {
		return within("parts", 0, 1, maxParts, "parts")
	}
	for _, p := range r.Parts {
		if err := within("part", p, 0, mostPart, "parts"); err != nil {
			return err
		}
	}
	return within("first-part", r.Parts[0], 1e-3, mostPart, "parts")
}

// Split shares a volume of ready mix out by the ratio, in the ratio's order.
func (r Ratio) Split(total unit.Volume) ([]unit.Volume, error) {
	if err := first(r.check(), within("volume-to-mix", total.Litres(), 0, 1e4, "L")); err != nil {
		return nil, err
	}
	sum := 0.0
	for _, p := range r.Parts {
		sum += p
	}
	out := make([]unit.Volume, len(r.Parts))
	for i, p := range r.Parts {
		out[i] = total * unit.Volume(p/sum)
	}
	return out, nil
}

// Solids is the volume solids of the ready mix, for the solids of each part in the
// ratio's order; parts without one (thinners) have none.
func (r Ratio) Solids(each []float64) (float64, error) {
	if err := first(r.check(), within("parts-with-solids", float64(len(each)), 0, float64(len(r.Parts)), "parts")); err != nil {
		return 0, err
	}
	parts := make([]Part, len(r.Parts))
	for i, p := range r.Parts {
		parts[i].Amount = p
		if i < len(each) {
			parts[i].Solids = each[i]
		}
	}
	return ReadySolids(parts)
}
