package question

import (
	"boothset/calc"
	"boothset/presets/catalogue"
)

// The coat and the gun.
var (
	Coat = &Field{Name: "coat", Read: choice, Entries: catalogue.KindCoat, Part: PartCoat}
	Gun  = &Field{Name: "gun", Read: choice, Entries: catalogue.KindGun, Part: PartGun}
)

// coatAndGun resolves both, and the working pressure that the coat has on the gun's class.
func (v *resolver) coatAndGun(coat *calc.Coat, gun *calc.Gun) {
	family, coatID, knownCoat := v.family()
	g, knownGun := v.value(Gun)
	var e *catalogue.Gun
	if knownGun {
		e, _ = v.Guns.Get(g.ID)
		gun.Gun = e.Gun()
		gun.ID, gun.Name = g.ID, e.Called()
		gun.Nearest, gun.Farthest = e.Nearest.V, e.Farthest.V
		felt := e.FeltOf()
		gun.Felt, gun.FeltAt = felt.Push(), felt.Pressure.V
		gun.Ground, gun.Distance = e.Ground(), felt.Ground()
	}
	if !knownCoat || !knownGun {
		return
	}
	working, ok := family.On(e.ClassOf(g.ID))
	if !ok {
		v.fault(Gun, "no-working-pressure", calc.TextFigure("coat", coatID), v.names(family.Classes()))
		return
	}
	coat.ID, coat.Name = coatID, family.Called()
	coat.Waterborne, coat.Hardener, coat.Farther = family.Waterborne, v.hardener(family), family.Farther.V
	coat.Solvent, _ = family.Solvent() // the catalogue's check has found it
	coat.Working = working
}

// GoTogether reports whether a coat has a working pressure on a gun.
func (r *Reader) GoTogether(coat, gun string) bool {
	c, ok := r.Coats.Get(coat)
	g, okGun := r.Guns.Get(gun)
	if !ok || !okGun {
		return false
	}
	_, ok = c.Working[g.ClassOf(gun)]
	return ok
}

// goTogether is a coat and a gun that go together, with the one given where the catalogue
// has it; the catalogue's check sees to it that every coat and every gun has one.
func (r *Reader) goTogether(coat, gun string) (string, string) {
	_, knownCoat := r.Coats.Get(coat)
	_, knownGun := r.Guns.Get(gun)
	for _, c := range r.Coats.IDs() {
		for _, g := range r.Guns.IDs() {
			if (!knownCoat || c == coat) && (!knownGun || g == gun) && r.GoTogether(c, g) {
				return c, g
			}
		}
	}
	return "", ""
}
