package tui

import "boothset/presets"

// The parts of the job that the steps belong to.
const (
	partCoat = "the coat"
	partGun  = "the gun"
	partDay  = "the day"
	partAir  = "the air"
)

// stepLine is the step that shows the line as it is; it is no field of the answers.
const stepLine = "line"

// step is one question. Its sentences are under ask-, why- and empty- and its id.
type step struct {
	id       string // the field of presets.Answers, or stepLine
	part     string
	short    string // what stands before its answer among the others; empty where that speaks for itself
	typed    bool   // typed, not picked from a list
	optional bool   // may be left empty where the shop has no usual
	when     func(*session) bool
}

// steps is every question in order: what the assistant asks, and nothing else asks more.
var steps = []step{
	{id: presets.FieldCoat, part: partCoat},
	{id: presets.FieldGun, part: partGun},
	{id: presets.FieldTemp, part: partDay, short: "air", typed: true},
	{id: presets.FieldHumidity, part: partDay, short: "humidity", typed: true},
	{id: presets.FieldPanel, part: partDay, short: "panel", typed: true, optional: true},
	{id: presets.FieldAltitude, part: partDay, short: "altitude", typed: true, optional: true},
	{id: presets.FieldSupply, part: partAir, short: "supply", typed: true},
	{id: stepLine, part: partAir},
	{id: presets.FieldRegulator, part: partAir, short: "regulator", when: walksLine},
	{id: presets.FieldRegulatorAt, part: partAir, short: "it is at", when: func(s *session) bool { return walksLine(s) && hasRegulator(s) }},
	{id: presets.FieldFilter, part: partAir, short: "filter", when: walksLine},
	{id: presets.FieldHose, part: partAir, short: "hose", typed: true, when: walksLine},
	{id: presets.FieldCoupling, part: partAir, short: "couplings", when: walksLine},
	{id: presets.FieldGauge, part: partAir, short: "gauge", when: walksLine},
	{id: presets.FieldWall, part: partAir, short: "wall now", typed: true, optional: true, when: hasRegulator},
}

// ofLine reports whether a step is one of the parts of the line.
func (st *step) ofLine() bool {
	switch st.id {
	case presets.FieldRegulator, presets.FieldRegulatorAt, presets.FieldFilter, presets.FieldHose, presets.FieldCoupling, presets.FieldGauge:
		return true
	}
	return false
}

func walksLine(s *session) bool { return s.walkLine }

func hasRegulator(s *session) bool { return s.value(presets.FieldRegulator) != presets.None }

// asked reports whether a step is to be asked as things stand.
func (s *session) asked(st *step) bool { return st.when == nil || st.when(s) }

// position is where a step stands among those to be asked.
func (s *session) position(id string) (n, of int) {
	for i := range steps {
		if !s.asked(&steps[i]) {
			continue
		}
		of++
		if steps[i].id == id {
			n = of
		}
	}
	return n, of
}
