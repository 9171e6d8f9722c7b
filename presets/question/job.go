package question

import (
	"slices"

	"boothset/calc"
	"boothset/presets/catalogue"
)

// The coat and the gun.
var (
	Coat = &Field{Name: "coat", Read: choice, Entries: catalogue.KindCoat, Part: PartCoat}
	Gun  = &Field{Name: "gun", Read: choice, Entries: catalogue.KindGun, Part: PartGun}
	// Stage is which of the coat's stages is set up.
	Stage = &Field{Name: "stage", Read: choice, Entries: catalogue.KindStage, Default: OfEntry}
)

// coatAndGun resolves both, and the working pressure that the coat has on the gun's class:
// in the stage that is asked for, or in its first; all is the coat in each of its stages.
func (v *resolver) coatAndGun(coat *calc.Coat, gun *calc.Gun) (all []calc.Coat) {
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
		return nil
	}
	stages := family.StageIDs()
	chosen, ok := v.stage(stages)
	if !ok {
		return nil
	}
	of := calc.Coat{ID: coatID, Name: family.Called(), Waterborne: family.Waterborne, Hardener: v.hardener(family), Farther: family.Farther.V}
	of.Solvent, _ = family.Solvent() // the catalogue's check has found it
	for n := range stages {
		if of.Stage, of.Working, ok = family.Stage(n, e.ClassOf(g.ID), v.Catalogue); !ok {
			v.fault(Gun, "no-working-pressure", calc.TextFigure("coat", coatID), v.names(family.Classes()))
			return nil
		}
		all = append(all, of)
	}
	*coat = all[chosen]
	return all
}

// StagesOf is the ids of a coat's stages, in order; none of one that is not known.
func (r *Reader) StagesOf(coat string) []string {
	e, ok := r.Coats.Get(coat)
	if !ok {
		return nil
	}
	return e.StageIDs()
}

// FirstStage is the id of a coat's first stage, empty of one that is not known.
func (r *Reader) FirstStage(coat string) string {
	if all := r.StagesOf(coat); len(all) > 0 {
		return all[0]
	}
	return ""
}

// stage is the place among a coat's stages of the one that is asked for.
func (v *resolver) stage(of []string) (int, bool) {
	if !v.has(Stage) {
		return 0, true
	}
	x, ok := v.value(Stage)
	if !ok {
		return 0, false
	}
	n := slices.Index(of, x.ID)
	if n < 0 {
		v.fault(Stage, "choose", v.names(of))
	}
	return n, n >= 0
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
