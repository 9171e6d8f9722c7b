package calc

import (
	"boothset/calc/line"
	"boothset/calc/unit"
)

// A line is one ordered list of parts from the supply to the gun: regulators, filters,
// dryers, couplings, hoses, regulating valves. The march along it goes by the list alone.

// Bounds of a line.
const (
	// MostParts is how many parts it may have up to the gun.
	MostParts = line.MostParts
	// MostRegulators is how many of them may be regulators: one at the wall, one nearer
	// the gun, or both.
	MostRegulators = 2
)

// Place is where in the line a regulator sits.
type Place uint8

// Where a regulator can be: at the wall, at the gun's foot, or nowhere.
const (
	Wall Place = iota
	Foot
	Nowhere
)

// Regulators are the places in the line of the regulator farthest upstream, the wall's, and
// of the last, which sets what reaches the gun: the same place where there is one, -1 where
// there is none.
func (r *Request) Regulators() (wall, sets int) {
	wall, sets = -1, -1
	for i := range r.Line {
		if r.Line[i].Kind != line.RegulatorKind {
			continue
		}
		if sets = i; wall < 0 {
			wall = i
		}
	}
	return wall, sets
}

// RegulatorAt is where the regulator farthest upstream sits, Nowhere where there is none.
func (r *Request) RegulatorAt() Place {
	wall, _ := r.Regulators()
	return PlaceOf(r.Line, wall)
}

// PlaceOf is where in a line its part at sits, Nowhere where there is none: at the foot is
// what has something upstream of it and no hose downstream.
func PlaceOf(parts []line.Part, at int) Place {
	switch {
	case at < 0:
		return Nowhere
	case at == 0:
		return Wall
	}
	for i := range parts[at:] {
		if parts[at+i].Kind == line.HoseKind {
			return Wall
		}
	}
	return Foot
}

// regulator is the regulator at a place in the line, one that never droops where there is
// none.
func (r *Request) regulator(at int) line.Regulator {
	if at < 0 {
		return line.Regulator{}
	}
	return r.Line[at].Regulator()
}

// HoseTemp is the temperature of the air in the line and in the gun.
func (r *Request) HoseTemp() unit.Temp {
	if r.HoseAir != 0 {
		return r.HoseAir
	}
	return r.Day.Air
}

// lineProblems is everything wrong with the line.
func (r *Request) lineProblems(found *problems) {
	if len(r.Line) > MostParts {
		found.add("hose", "too-many-parts", CountFigure("parts", len(r.Line)), CountFigure("most", MostParts))
	}
	regulators := 0
	for i := range r.Line {
		switch p := &r.Line[i]; p.Kind {
		case line.RegulatorKind:
			regulators++
		case line.HoseKind:
			found.within("hose", float64(p.Hose.Length), &HoseLengthBound)
			found.within("hose", float64(p.Hose.Bore), &HoseBoreBound)
		}
	}
	if regulators > MostRegulators {
		found.add("regulator", "too-many-regulators", CountFigure("regulators", regulators), CountFigure("most", MostRegulators))
	}
}
