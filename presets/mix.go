package presets

import (
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// The fields of mix alone.
const (
	FieldArea    = "area"
	FieldPrice   = "price"
	FieldCupSize = "cup-size"
	FieldLoss    = "loss"
	FieldPotLife = "pot-life"
)

// MixFields is what the mix's question takes.
func MixFields() []Field {
	return append(layingFields(),
		Field{FieldArea, "usage-area", true},
		Field{FieldPrice, "usage-price", true},
		Field{FieldCupSize, "usage-cup-size", false},
		Field{FieldLoss, "usage-loss", false},
		Field{FieldPotLife, "usage-pot-life", false},
		Field{FieldTemp, "usage-mix-temp", false},
		Field{FieldFluidRate, "usage-mix-fluid-rate", false},
	)
}

// Mix turns what was typed into a request for the mix, as Film does for the film.
func (c *Catalogue) Mix(s Sheet, sys unit.System) (calc.MixRequest, []*FieldError) {
	v := newResolver(c, sys)
	r := calc.MixRequest{Application: v.laying(s)}
	if s[FieldGun] == "" {
		v.fault(FieldGun, "", "needed-gun", v.names(c.entries.Gun.ids()))
	}
	if e, ok := c.entries.Coat.get(r.CoatID); ok {
		r.Ratio = v.ratio(s, e)
	}
	areas := s.list(FieldArea)
	if len(areas) == 0 {
		v.fault(FieldArea, "", "want-area", v.names(panelNames()))
	}
	for _, t := range areas {
		r.Panels = append(r.Panels, v.panel(t))
	}
	for _, t := range s.list(FieldPrice) {
		r.Prices = append(r.Prices, v.price(t))
	}
	v.gunCup(s, &r)
	if t := s[FieldPotLife]; t != "" {
		r.PotLife = v.potLife(t)
	}
	r.Booth = calc.SheetTemp
	if t := s[FieldTemp]; t != "" {
		r.Booth = read(&v, FieldTemp, t, "", unit.ParseTemp, sys.TempUnit())
	}
	if t := s[FieldFluidRate]; t != "" {
		r.Rate = v.fluidRate(t)
	}
	v.judged(s, r.Problems)
	return r, v.faults
}

// gunCup reads the gun's cup and what stays behind in it.
func (v *resolver) gunCup(s Sheet, r *calc.MixRequest) {
	if g, ok := v.c.entries.Gun.get(r.GunID); ok {
		cup := g.Cup
		if class, ok := v.c.entries.Gun.get(g.class(r.GunID)); ok && cup == nil {
			cup = class.Cup
		}
		if cup != nil {
			r.Cup = calc.Stated[unit.Volume]{Value: cup.Size.v, Ground: cup.standing()}
			r.Loss = calc.Stated[unit.Volume]{Value: cup.Loss.v, Ground: cup.standing()}
		}
	}
	unknown := r.GunID != "" && r.Cup.Basis == ""
	if t := s[FieldCupSize]; t != "" || unknown {
		r.Cup = calc.Stated[unit.Volume]{Value: read(v, FieldCupSize, t, "", unit.ParseVolume, v.cupUnit()), Ground: calc.AsTyped}
	}
	if t := s[FieldLoss]; t != "" || unknown {
		r.Loss = calc.Stated[unit.Volume]{Value: read(v, FieldLoss, t, "", unit.ParseVolume, v.cupUnit()), Ground: calc.AsTyped}
	}
}

const mostPanels = 50 // of one kind

func panelNames() (names []string) {
	for _, p := range coat.Panels() {
		names = append(names, p.ID)
	}
	return names
}

// panel reads an area, or a panel of usual size, with how many of it in front.
func (v *resolver) panel(t Typed) calc.PanelArea {
	if a, err := unit.ParseArea(string(t), v.sys.AreaUnit()); err == nil {
		if a <= 0 {
			v.fault(FieldArea, t, "want-above-zero")
		}
		return calc.PanelArea{Name: string(t), Low: a, High: a}
	}
	text := strings.ToLower(strings.TrimSpace(string(t)))
	name := strings.TrimLeft(text, digits)
	n := 1
	if many := text[:len(text)-len(name)]; many != "" {
		var ok bool
		if n, ok = wholeNumber(many); !ok || n < 1 || n > mostPanels {
			v.fault(FieldArea, t, "want-panel-count", count("most", mostPanels))
			return calc.PanelArea{}
		}
		name = strings.TrimPrefix(strings.TrimSpace(name), "x ")
	}
	name = strings.TrimSpace(name)
	for _, p := range coat.Panels() {
		if name == p.ID || name == p.ID+"s" {
			return calc.PanelArea{Name: string(t), Low: unit.Area(n) * p.Low, High: unit.Area(n) * p.High, Usual: true}
		}
	}
	v.fault(FieldArea, t, "want-area", v.names(panelNames()))
	return calc.PanelArea{}
}

// price reads "60/L" or "$200/gal" and gives it a litre. A number alone is refused: a
// price a litre taken for one a gallon is wrong by four.
func (v *resolver) price(t Typed) float64 {
	text, per, _ := strings.Cut(string(t), "/")
	p, ok := number(strings.TrimLeft(text, " $€£"))
	volume, err := unit.ParseVolume("1"+per, 0)
	if !ok || err != nil || p < 0 || strings.ContainsAny(per, "0123456789.,") {
		v.fault(FieldPrice, t, "want-price")
		return 0
	}
	return p / volume.Litres()
}
