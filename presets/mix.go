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
		Field{FieldArea, "`area` or panel, such as 12ft2, 1.2m2, hood or \"2 door\"; repeatable", true},
		Field{FieldPrice, "`price` of the ready mix, such as 60/L or 200/gal; repeated, of each part of the ratio", true},
		Field{FieldCupSize, "`size` of the gun's cup, such as 600mL or 20floz", false},
		Field{FieldLoss, "`volume` that stays behind in cup, filter and gun", false},
		Field{FieldPotLife, "pot `life` that the product's sheet gives for 20 C (68 F), such as 4h or 90min", false},
		Field{FieldTemp, "booth air `temperature`, for the pot life; 20 C (68 F) where left out", false},
		Field{FieldFluidRate, "fluid `rate` of the gun, such as 180mL/min: counts the batches that the pot life allows", false},
	)
}

// Mix turns what was typed into a request for the mix, as Film does for the film.
func (c *Catalogue) Mix(s Sheet, sys unit.System) (calc.MixRequest, []*FieldError) {
	v := resolver{c: c, sys: sys}
	r := calc.MixRequest{Laying: v.laying(s)}
	if s[FieldGun] == "" {
		v.fault(FieldGun, "", "needed for what lands of the coating; choose %s", listed(c.order.gun))
	}
	if e := c.entries.Coat[r.CoatID]; e != nil {
		r.Ratio = v.ratio(s, e)
	}
	areas := s.list(FieldArea)
	if len(areas) == 0 {
		v.fault(FieldArea, "", areaWant, panelNames())
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
	if g := v.c.entries.Gun[r.GunID]; g != nil {
		cup := g.Cup
		if class := v.c.entries.Gun[g.Class]; cup == nil && class != nil {
			cup = class.Cup
		}
		if cup != nil {
			r.Cup = calc.Stated[unit.Volume]{Value: cup.Size.v, Standing: cup.standing()}
			r.Loss = calc.Stated[unit.Volume]{Value: cup.Loss.v, Standing: cup.standing()}
		}
	}
	unknown := r.GunID != "" && r.Cup.Basis == ""
	if t := s[FieldCupSize]; t != "" || unknown {
		r.Cup = calc.Stated[unit.Volume]{Value: read(v, FieldCupSize, t, "", unit.ParseVolume, v.cupUnit()), Standing: calc.AsTyped}
	}
	if t := s[FieldLoss]; t != "" || unknown {
		r.Loss = calc.Stated[unit.Volume]{Value: read(v, FieldLoss, t, "", unit.ParseVolume, v.cupUnit()), Standing: calc.AsTyped}
	}
}

const (
	areaWant   = "type an area, such as 12ft2 or 1.2m2, or a panel: %s; several as 2 door"
	mostPanels = 50 // of one kind
)

func panelNames() string {
	var names []string
	for _, p := range coat.Panels() {
		names = append(names, p.ID)
	}
	return listed(names)
}

// panel reads an area, or a panel of usual size, with how many of it in front.
func (v *resolver) panel(t Typed) calc.PanelArea {
	if a, err := unit.ParseArea(string(t), v.sys.AreaUnit()); err == nil {
		if a <= 0 {
			v.fault(FieldArea, t, "must be above 0")
		}
		return calc.PanelArea{Name: string(t), Low: a, High: a}
	}
	text := strings.ToLower(strings.TrimSpace(string(t)))
	name := strings.TrimLeft(text, "0123456789")
	n := 1
	if count := text[:len(text)-len(name)]; count != "" {
		var ok bool
		if n, ok = wholeNumber(count); !ok || n < 1 || n > mostPanels {
			v.fault(FieldArea, t, "give 1 to %d of a panel", mostPanels)
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
	v.fault(FieldArea, t, areaWant, panelNames())
	return calc.PanelArea{}
}

// price reads "60/L" or "$200/gal" and gives it a litre. A number alone is refused: a
// price a litre taken for one a gallon is wrong by four.
func (v *resolver) price(t Typed) float64 {
	text, per, _ := strings.Cut(string(t), "/")
	p, ok := number(strings.TrimLeft(text, " $€£"))
	volume, err := unit.ParseVolume("1"+per, 0)
	if !ok || err != nil || p < 0 || strings.ContainsAny(per, "0123456789.,") {
		v.fault(FieldPrice, t, "type a price with its volume, such as 60/L, 50/qt or 200/gal")
		return 0
	}
	return p / volume.Litres()
}
