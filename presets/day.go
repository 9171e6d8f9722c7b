package presets

import (
	"strconv"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// The fields of day that a plan does not have.
const (
	FieldPaint   = "paint"
	FieldPanels  = "panels"
	FieldStarted = "started"
)

// DayFields is what the day's question takes.
func DayFields() []Field {
	return append(planFields(FieldCoat, FieldTemp, FieldHumidity, FieldPanel),
		Field{FieldPaint, "usage-paint", false},
		Field{FieldAltitude, "usage-altitude", false},
		Field{FieldPanels, "usage-panels", false},
		Field{FieldPotLife, "usage-pot-life", false},
		Field{FieldStarted, "usage-started", false},
	)
}

// planFields is fields of a plan by name.
func planFields(names ...string) (fields []Field) {
	for _, name := range names {
		for _, f := range PlanFields {
			if f.Name == name {
				fields = append(fields, f)
			}
		}
	}
	return fields
}

// Day turns what was typed into a request for the day. Bare numbers are read in the
// system's units. Every answer that will not do comes as a *FieldError; the request is
// complete only where there is none.
func (c *Catalogue) Day(s Sheet, sys unit.System) (calc.DayRequest, []*FieldError) {
	v := newResolver(c, sys)
	var r calc.DayRequest
	if e, ok := pick(&v, FieldCoat, s[FieldCoat], c.entries.Coat); ok {
		r.CoatID, r.Waterborne, r.Isocyanate = string(s[FieldCoat]), e.Waterborne, e.Isocyanate
		r.Coat = e.name(FieldCoat, r.CoatID, c.words)
		r.Solvent, _ = e.solvent() // check has found it
	}
	v.day(&Answers{Temp: s[FieldTemp], Humidity: s[FieldHumidity], Panel: s[FieldPanel], Altitude: s[FieldAltitude]})
	r.Day = v.r.Day
	r.Paint = r.Air
	if t := s[FieldPaint]; t != "" {
		r.Paint = read(&v, FieldPaint, t, "", unit.ParseTemp, sys.TempUnit())
	}
	r.Panels = 1
	if t := s[FieldPanels]; t != "" {
		n, ok := wholeNumber(string(t))
		if !ok || n < 1 || n > calc.MostPanels {
			v.fault(FieldPanels, t, "want-panels", count("most", calc.MostPanels))
		}
		r.Panels = n
	}
	if t := s[FieldPotLife]; t != "" {
		r.PotLife = v.potLife(t)
	}
	if t := s[FieldStarted]; t != "" {
		r.Started, r.HasStarted = v.clock(FieldStarted, t)
		if s[FieldPotLife] == "" {
			v.fault(FieldPotLife, "", "needed-pot-life", figure("sheetTemp", calc.FigureTemp, calc.SheetTemp))
		}
	}
	v.judged(s, r.Problems)
	return r, v.faults
}

// potLife reads a span; a bare number is hours, and what is no span a request can hold
// is 1 s, which its check refuses.
func (v *resolver) potLife(t Typed) time.Duration {
	life := read(v, FieldPotLife, t, "", unit.ParseSeconds, unit.InHours)
	if life <= 0 {
		return time.Second
	}
	return time.Duration(float64(min(life, 1e7)) * float64(time.Second))
}

// clock reads a time of day: "14:30", "14.30" or, as a keypad has no colon, "1430"; "2:30pm"
// and "2pm" by twelve hours.
func (v *resolver) clock(field string, t Typed) (calc.Clock, bool) {
	text := strings.TrimSuffix(strings.ToLower(strings.ReplaceAll(string(t), " ", "")), ".")
	half, twelve := 0, false
	for h, marks := range [][]string{{"am", "a.m"}, {"pm", "p.m"}} {
		for _, mark := range marks {
			if before, found := strings.CutSuffix(text, mark); found {
				text, half, twelve = strings.TrimSuffix(before, "."), h, true
			}
		}
	}
	text = strings.NewReplacer(".", ":", ",", ":").Replace(text)
	hours, minutes, parted := strings.Cut(text, ":")
	if n := len(text); !parted && (n == 3 || n == 4) {
		hours, minutes, parted = text[:n-2], text[n-2:], true
	}
	h, err := strconv.ParseUint(hours, 10, 8)
	m := uint64(0)
	if parted && err == nil {
		m, err = strconv.ParseUint(minutes, 10, 8)
	}
	ok := err == nil && m < 60 && (parted && len(minutes) == 2 || !parted && twelve)
	switch {
	case twelve:
		ok = ok && h >= 1 && h <= 12
		h = h%12 + 12*uint64(half)
	default:
		ok = ok && h < 24
	}
	if !ok {
		v.fault(field, t, "want-time-of-day")
		return 0, false
	}
	return calc.Clock(time.Duration(h)*time.Hour + time.Duration(m)*time.Minute), true
}
