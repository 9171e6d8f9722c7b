package calc

import (
	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// TakenBy is what a part of the line takes of the air that is stamped on a gun, with the
// stamp's inlet pressure after the part: at sea level, on the reference day.
func TakenBy(part line.Restriction, s gun.Stamp) unit.Drop {
	here := line.NewAir(air.SeaLevelPressure, coat.ReferenceTemp)
	after := s.Inlet.Abs(air.SeaLevelPressure)
	before, _ := part.Upstream(s.Flow, after, here)
	return unit.Drop(before - after)
}

// FallenBy is how far a regulator's pressure falls from no air moving to the air that is
// stamped on a gun.
func FallenBy(r line.Regulator, s gun.Stamp) unit.Drop {
	return unit.Drop(r.Set(s.Inlet, s.Flow) - s.Inlet)
}
