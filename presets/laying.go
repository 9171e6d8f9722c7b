package presets

import (
	"math"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// The fields of film and mix that a plan does not have.
const (
	FieldFilm      = "film"
	FieldCoats     = "coats"
	FieldSolids    = "solids"
	FieldRatio     = "ratio"
	FieldThinner   = "thinner"
	FieldFilmLimit = "film-limit"
	FieldBefore    = "before"
	FieldTransfer  = "transfer"
	FieldPressure  = "pressure"
	FieldDistance  = "distance"
	FieldFluidRate = "fluid-rate"
)

// layingFields is what film and mix both take.
func layingFields() []Field {
	return []Field{
		{FieldCoat, "usage-coat", false},
		{FieldGun, "usage-gun", false},
		{FieldFilm, "usage-film", false},
		{FieldCoats, "usage-coats", false},
		{FieldSolids, "usage-solids", true},
		{FieldRatio, "usage-ratio", false},
		{FieldThinner, "usage-thinner", false},
		{FieldFilmLimit, "usage-film-limit", false},
		{FieldBefore, "usage-before", false},
		{FieldTransfer, "usage-transfer", false},
		{FieldPressure, "usage-pressure", false},
		{FieldDistance, "usage-distance", false},
	}
}

// mostThinner is the most thinner on top of what the solids speak of.
const mostThinner = 2.0

// onSheet is the standing of what was typed from the product's sheet.
var onSheet = calc.Ground{Basis: calc.Sheet}

// laying reads what film and mix share. Without a gun nothing is said of what lands.
func (v *resolver) laying(s Sheet) (l calc.Application) {
	e, ok := pick(v, FieldCoat, s[FieldCoat], v.c.entries.Coat)
	if !ok {
		return l
	}
	l.CoatID, l.Coat, l.Waterborne, l.Isocyanate = string(s[FieldCoat]), e.name(FieldCoat, string(s[FieldCoat]), v.c.words), e.Waterborne, e.Isocyanate
	if f := e.Film; f != nil {
		l.Wants = calc.FilmWants{
			Known: true, Low: f.Low.v, High: f.High.v, Most: f.Most.v, Ground: f.standing(),
		}
		l.Dry = calc.Stated[unit.Length]{Value: f.Typical.v, Ground: f.standing()}
	}
	if f := e.Lay; f != nil {
		l.Usual = calc.UsualCoats{Coats: f.Coats, Low: f.CoatLow.v, High: f.CoatHigh.v, Ground: f.standing()}
	}
	if t := s[FieldFilm]; t != "" || e.Film == nil {
		l.Dry = calc.Stated[unit.Length]{Value: read(v, FieldFilm, t, "", unit.ParseLength, v.sys.FilmUnit()), Ground: onSheet}
	}
	if t := s[FieldFilmLimit]; t != "" {
		w := &l.Wants
		w.Most = positive(v, FieldFilmLimit, t, unit.ParseLength, v.sys.FilmUnit())
		w.High, w.Low = w.Most, min(w.Most, w.Low)
		w.Ground = onSheet
		if !w.Known {
			w.Known, w.Low = true, calc.ThinnestFilm
		}
	}
	if t := s[FieldCoats]; t != "" || l.Usual.Coats == 0 {
		l.Coats = calc.Stated[int]{Value: v.coats(t), Ground: onSheet}
	}
	v.solids(s, e, &l)
	if t := s[FieldBefore]; t != "" {
		l.Before = read(v, FieldBefore, t, "", unit.ParseLength, v.sys.FilmUnit())
	}
	if s[FieldGun] != "" {
		v.holding(s, &l)
	}
	return l
}

// solids reads the volume solids of the ready mix.
func (v *resolver) solids(s Sheet, e *coatEntry, l *calc.Application) {
	given := s.list(FieldSolids)
	thinner := s[FieldThinner]
	if len(given) == 0 {
		if e.Mix == nil {
			v.fault(FieldSolids, "", "want-solids")
		} else if thinner != "" {
			v.fault(FieldThinner, thinner, "needed-solids", text("coat", l.CoatID))
		} else {
			l.Solids = calc.Stated[float64]{Value: e.Mix.Solids.v, Ground: e.Mix.standing()}
		}
		return
	}
	parts := make([]float64, len(given))
	for i, g := range given {
		parts[i] = read(v, FieldSolids, g, "", parsePercent, struct{}{})
	}
	l.Solids = calc.Stated[float64]{Value: parts[0], Ground: onSheet}
	if len(parts) > 1 {
		ratio := v.ratio(s, e)
		if len(ratio.Value.Parts) == 0 {
			v.fault(FieldSolids, s[FieldSolids], "needed-ratio")
			return
		}
		ready, err := ratio.Value.Solids(parts)
		if err != nil {
			v.fault(FieldSolids, s[FieldSolids], "want-part-solids", count("parts", len(ratio.Value.Parts)))
			return
		}
		l.Solids.Value = ready
	}
	if thinner != "" {
		more := read(v, FieldThinner, thinner, "", parsePercent, struct{}{})
		if !(more >= 0 && more <= mostThinner) {
			v.fault(FieldThinner, thinner, "want-thinner", figure("most", calc.FigureShare, mostThinner))
			return
		}
		l.Solids.Value /= 1 + more
	}
}

// ratio reads the mixing ratio, or the catalogue's; without parts where there is none.
func (v *resolver) ratio(s Sheet, e *coatEntry) (r calc.Stated[coat.Ratio]) {
	text, r := s[FieldRatio], calc.Stated[coat.Ratio]{Ground: onSheet}
	if text == "" && e.Mix != nil {
		text, r.Ground = Typed(e.Mix.Ratio), e.Mix.standing()
	}
	if text == "" {
		return r
	}
	var err error
	if r.Value, err = coat.ParseRatio(withColons(string(text))); err != nil {
		v.fault(FieldRatio, text, "want-ratio")
	}
	return r
}

// withColons is a ratio typed without them, as a keypad has none: "4 1 1", "4/1/1", or
// "4.1.1", whose points are too many for a number. "4.1" stays as it is: it may be a
// percent without its sign.
func withColons(text string) string {
	parts, percent, both := strings.Cut(text, "+")
	if strings.ContainsAny(parts, ":%") {
		return text
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

// holding reads the gun, and how it is set and held.
func (v *resolver) holding(s Sheet, l *calc.Application) {
	before := len(v.faults)
	v.coatAndGun(&Answers{Coat: s[FieldCoat], Gun: s[FieldGun]})
	if len(v.faults) > before {
		return
	}
	l.GunID, l.Gun = v.r.Gun.ID, v.r.Gun.Name
	g, _ := v.c.entries.Gun.get(l.GunID)
	of := g.Transfer
	if class, ok := v.c.entries.Gun.get(g.class(l.GunID)); ok && of == nil {
		of = class.Transfer
	}
	if of == nil {
		v.fault(FieldGun, s[FieldGun], "want-transfer-table")
		return
	}
	h := &l.Held
	h.Known = true
	h.Choked = of.Choked.v
	h.Class = calc.Stated[coat.GunTransfer]{Value: coat.GunTransfer{Transfer: of.Part.v, Pressure: of.Pressure.v, Distance: of.Distance.v}, Ground: of.standing()}
	h.Pressure = min(v.r.Coat.Working.Start, g.Inlet.v)
	if t := s[FieldPressure]; t != "" {
		h.Pressure = read(v, FieldPressure, t, "", unit.ParseGauge, v.sys.PressureUnit())
	}
	h.Distance = min(max(of.Distance.v+v.r.Coat.Farther, g.Nearest.v), g.Farthest.v)
	if t := s[FieldDistance]; t != "" {
		h.Distance = read(v, FieldDistance, t, "", unit.ParseLength, v.sys.SmallUnit())
	}
	if t := s[FieldTransfer]; t != "" {
		h.Typed = true
		h.Class.Value = coat.GunTransfer{Transfer: read(v, FieldTransfer, t, "", parsePercent, struct{}{}), Pressure: h.Pressure, Distance: h.Distance}
		h.Class.Ground = calc.AsTyped
	}
}

func (v *resolver) coats(t Typed) int {
	n, ok := wholeNumber(string(t))
	if !ok || n < 1 || n > calc.MostCoats {
		v.fault(FieldCoats, t, "want-coats", count("most", calc.MostCoats))
	}
	return n
}

// fluidRate reads a flow of coating; a bare number is mL/min in either system.
func (v *resolver) fluidRate(t Typed) coat.FluidRate {
	text := strings.ToLower(strings.TrimSpace(string(t)))
	for _, a := range []string{"/min", "per min", "a minute", "por minuto", "por min"} {
		text = strings.TrimSuffix(text, a)
	}
	q, err := unit.ParseVolume(text, unit.InML)
	if err != nil || q <= 0 {
		v.fault(FieldFluidRate, t, "want-fluid-rate")
	}
	return coat.FluidRate(float64(q) / unit.SecondPerMinute)
}

// positive is read for a value that must be above 0.
func positive[T ~float64, U any](v *resolver, field string, typed Typed, parse func(string, U) (T, error), bare U) T {
	before := len(v.faults)
	q := read(v, field, typed, "", parse, bare)
	if q <= 0 && len(v.faults) == before {
		v.fault(field, typed, "want-above-zero")
	}
	return q
}

func parsePercent(s string, _ struct{}) (float64, error) { return unit.ParsePercent(s) }

// number reads a number without a unit.
func number(s string) (float64, bool) {
	v, err := unit.ParsePercent(s) // in hundredths
	return v * 100, err == nil && !strings.ContainsAny(s, "%pP")
}

func wholeNumber(s string) (int, bool) {
	v, ok := number(s)
	n := math.Round(v)
	return int(n), ok && math.Abs(v-n) < 1e-6 // a number typed is below 1e9
}

// judged adds the problems of a complete request to the faults.
func (v *resolver) judged(s Sheet, problems func() []calc.Problem) {
	if len(v.faults) > 0 {
		return
	}
	for _, p := range problems() {
		v.refuse(p.Field, s[p.Field], &p)
	}
}
