package question

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// What film and mix share: the coat as it is applied.
var (
	DryFilm = &Field{Name: "film", Read: amount, Of: [2]*unit.Quantity{unit.Film}, Bounds: [2]*calc.Bound{&calc.FilmBound}, Default: OfEntry}
	Coats   = &Field{Name: "coats", Read: whole, Bounds: [2]*calc.Bound{&calc.CoatsBound}, Want: "want-coats", Default: OfEntry}
	Solids  = &Field{Name: "solids", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Repeats: true, Default: OfEntry}
	Ratio   = &Field{Name: "ratio", Read: ratio, Default: OfEntry}
	Thinner = &Field{Name: "thinner", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Default: LeftOut}
	// FilmLimit is the most that the film may have in all.
	FilmLimit = &Field{Name: "film-limit", Read: positive, Of: [2]*unit.Quantity{unit.Film}, Bounds: [2]*calc.Bound{&calc.FilmBound}, Default: OfEntry}
	Before    = &Field{Name: "before", Read: amount, Of: [2]*unit.Quantity{unit.Film}, Bounds: [2]*calc.Bound{&calc.BeforeBound}, Default: LeftOut}
	Transfer  = &Field{Name: "transfer", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Bounds: [2]*calc.Bound{&calc.TransferBound}, Default: OfEntry}
	Pressure  = &Field{Name: "pressure", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.InletBound}, Default: OfEntry}
	Distance  = &Field{Name: "distance", Read: amount, Of: [2]*unit.Quantity{unit.Distance}, Bounds: [2]*calc.Bound{&calc.DistanceBound}, Default: OfEntry}
	FluidRate = &Field{Name: "fluid-rate", Read: positive, Of: [2]*unit.Quantity{unit.FluidFlow}, Bounds: [2]*calc.Bound{&calc.FluidBound}, Want: "want-fluid-rate", Default: LeftOut}
)

// applicationRows is the fields that film and mix both have.
var applicationRows = [...]Row{
	{Field: Coat}, {Field: Hardener}, {Field: Gun}, {Field: DryFilm}, {Field: Coats}, {Field: Solids}, {Field: Ratio}, {Field: Thinner},
	{Field: FilmLimit}, {Field: Before}, {Field: Transfer}, {Field: Pressure}, {Field: Distance},
}

// mostThinner is the most thinner on top of what the solids speak of.
const mostThinner = 2.0

// application resolves what film and mix share. Without a gun nothing is said of what
// lands.
func (v *resolver) application() (l calc.Application) {
	e, id, ok := v.family()
	if !ok {
		return l
	}
	l.CoatID, l.Coat, l.Waterborne, l.Hardener = id, e.Called(), e.Waterborne, v.hardener(e)
	if f := e.Film; f != nil {
		l.Wants = calc.FilmWants{Known: true, Low: f.Low.V, High: f.High.V, Most: f.Most.V, Ground: f.Ground()}
		l.Dry = calc.Stated[unit.Length]{Value: f.Typical.V, Ground: f.Ground()}
	}
	if f := e.Lay; f != nil {
		l.Usual = calc.UsualCoats{Coats: f.Coats, Low: f.CoatLow.V, High: f.CoatHigh.V, Ground: f.Ground()}
	}
	if v.has(DryFilm) || e.Film == nil {
		l.Dry = calc.Stated[unit.Length]{Value: si[unit.Length](v, DryFilm), Ground: onSheet}
	}
	if v.has(FilmLimit) {
		w := &l.Wants
		w.Most = si[unit.Length](v, FilmLimit)
		w.High, w.Low = w.Most, min(w.Most, w.Low)
		w.Ground = onSheet
		if !w.Known {
			w.Known, w.Low = true, calc.ThinnestFilm
		}
	}
	if v.has(Coats) || l.Usual.Coats == 0 {
		l.Coats = calc.Stated[int]{Value: int(si[float64](v, Coats)), Ground: onSheet}
	}
	v.solids(e, &l)
	l.Before = or(v, Before, unit.Length(0))
	if v.has(Gun) {
		v.holding(&l)
	}
	return l
}

// solids resolves the volume solids of the ready mix.
func (v *resolver) solids(e *catalogue.Coat, l *calc.Application) {
	given := v.a.Get(Solids)
	if len(given) == 0 {
		switch {
		case e.Mix == nil:
			v.fault(Solids, "want-solids")
		case v.has(Thinner):
			v.fault(Thinner, "needed-solids", calc.TextFigure("coat", l.CoatID))
		default:
			l.Solids = calc.Stated[float64]{Value: e.Mix.Solids.V, Ground: e.Mix.Ground()}
		}
		return
	}
	parts := make([]float64, len(given))
	for i, g := range given {
		if parts[i] = g.SI[0]; g.Fault != nil {
			v.faults = append(v.faults, g.Fault)
		}
	}
	l.Solids = calc.Stated[float64]{Value: parts[0], Ground: onSheet}
	if len(parts) > 1 {
		mixed := v.ratio(e)
		if len(mixed.Value.Parts) == 0 {
			v.fault(Solids, "needed-ratio")
			return
		}
		ready, err := mixed.Value.Solids(parts)
		if err != nil {
			v.fault(Solids, "want-part-solids", calc.CountFigure("parts", len(mixed.Value.Parts)))
			return
		}
		l.Solids.Value = ready
	}
	if v.has(Thinner) {
		more := si[float64](v, Thinner)
		if !(more >= 0 && more <= mostThinner) {
			v.fault(Thinner, "want-thinner", calc.BriefFigure("most", calc.FigureShare, mostThinner))
			return
		}
		l.Solids.Value /= 1 + more
	}
}

// ratio resolves the mixing ratio, or takes the catalogue's; without parts where there is
// none.
func (v *resolver) ratio(e *catalogue.Coat) (r calc.Stated[coat.Ratio]) {
	if v.has(Ratio) {
		x, _ := v.value(Ratio)
		return calc.Stated[coat.Ratio]{Value: x.Ratio, Ground: onSheet}
	}
	if e.Mix == nil {
		return calc.Stated[coat.Ratio]{Ground: onSheet}
	}
	r.Ground = e.Mix.Ground()
	r.Value, _ = coat.ParseRatio(e.Mix.Ratio) // the catalogue's check has read it
	return r
}

// holding resolves the gun, and how it is set and held.
func (v *resolver) holding(l *calc.Application) {
	before := len(v.faults)
	var c calc.Coat
	var g calc.Gun
	if v.coatAndGun(&c, &g); len(v.faults) > before {
		return
	}
	l.GunID, l.Gun = g.ID, g.Name
	e, _ := v.Guns.Get(g.ID)
	of, ok := e.Transfer()
	if !ok {
		v.fault(Gun, "want-transfer-table")
		return
	}
	h := &l.Held
	h.Known = true
	h.Choked = of.Choked.V
	if hand, ok := e.HandOf(); ok {
		h.Hand = calc.Stated[unit.Speed]{Value: hand.Speed.V, Ground: hand.Ground()}
	}
	h.Class = calc.Stated[coat.GunTransfer]{Value: coat.GunTransfer{Transfer: of.Part.V, Pressure: of.Pressure.V, Distance: of.Distance.V}, Ground: of.Ground()}
	h.Pressure = or(v, Pressure, min(c.Working.Start, e.Inlet.V))
	h.Distance = or(v, Distance, min(max(of.Distance.V+c.Farther, e.Nearest.V), e.Farthest.V))
	if v.has(Transfer) {
		h.Typed = true
		h.Class.Value = coat.GunTransfer{Transfer: si[float64](v, Transfer), Pressure: h.Pressure, Distance: h.Distance}
		h.Class.Ground = calc.AsTyped
	}
}
