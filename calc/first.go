package calc

import "boothset/calc/unit"

// first is what to do before anything else: the set pressure as it stands brought to the one
// advised. Its ID is empty where it stands there, as near as the gauge can be read, where
// none was given and where nothing is to be set.
func (s *Setup) first(r *Request) Turn {
	if !s.Now.Given || s.Short.Is || r.RegulatorAt() == Nowhere {
		return Turn{}
	}
	id := ""
	switch off := s.Now.Wall - s.Wall.Flowing; {
	case off > unit.Gauge(r.Mark)/2 && !s.Foot.Is: // a regulator nearer the gun holds it back
		id = "first-down"
	case !s.Now.Enough:
		id = "first-up"
	default:
		return Turn{}
	}
	return Turn{id, Figures{RegulatorFigure(r.RegulatorAt()), gauge("set", s.Wall.Flowing), gauge("wall", s.Now.Wall)}}
}
