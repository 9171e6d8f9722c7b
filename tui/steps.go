package tui

import "boothset/presets"

// The parts of the job that the steps belong to, by their sentences.
const (
	partCoat   = "part-coat"
	partGun    = "part-gun"
	partDay    = "part-day"
	partAir    = "part-air"
	partSupply = "part-supply"
)

// The steps that are no field of the answers: they show the line and the supply as they
// are, and ask whether to go through them part by part.
const (
	stepLine   = "line"
	stepSupply = "check"
)

// step is one question. Its sentences are under ask-, why-, short- and empty- and its id.
type step struct {
	id       string // the field of presets.Answers, stepLine or stepSupply
	part     string
	typed    bool // typed, not picked from a list, whose names speak for themselves
	optional bool // may be left empty where the shop has no usual
	when     func(*session) bool
}

// steps is every question in order: what the assistant asks, and nothing else asks more.
var steps = []step{
	{id: presets.FieldCoat, part: partCoat},
	{id: presets.FieldGun, part: partGun},
	{id: presets.FieldTemp, part: partDay, typed: true},
	{id: presets.FieldHumidity, part: partDay, typed: true},
	{id: presets.FieldPanel, part: partDay, typed: true, optional: true},
	{id: presets.FieldAltitude, part: partDay, typed: true, optional: true},
	{id: presets.FieldSupply, part: partAir, typed: true},
	{id: stepLine, part: partAir},
	{id: presets.FieldRegulator, part: partAir, when: walksLine},
	{id: presets.FieldRegulatorAt, part: partAir, when: func(s *session) bool { return walksLine(s) && hasRegulator(s) }},
	{id: presets.FieldFilter, part: partAir, when: walksLine},
	{id: presets.FieldHose, part: partAir, typed: true, when: walksLine},
	{id: presets.FieldCoupling, part: partAir, when: walksLine},
	{id: presets.FieldGauge, part: partAir, when: walksLine},
	{id: presets.FieldWall, part: partAir, typed: true, optional: true, when: hasRegulator},
	{id: stepSupply, part: partSupply},
	{id: presets.FieldCompressor, part: partSupply, typed: true, optional: true, when: walksSupply},
	{id: presets.FieldReceiver, part: partSupply, typed: true, when: walksBehindCompressor},
	{id: presets.FieldCutIn, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldCutOut, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldMain, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldOther, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldSprayTime, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldReceiverTemp, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
	{id: presets.FieldLineTemp, part: partSupply, typed: true, optional: true, when: walksBehindCompressor},
}

// ofLine reports whether a step is one of the parts of the line.
func (st *step) ofLine() bool {
	switch st.id {
	case presets.FieldRegulator, presets.FieldRegulatorAt, presets.FieldFilter, presets.FieldHose, presets.FieldCoupling, presets.FieldGauge:
		return true
	}
	return false
}

// ofSupply reports whether a step is one of the parts of the supply.
func (st *step) ofSupply() bool { return st.part == partSupply && st.id != stepSupply }

// field reports whether a step asks for a field of the answers.
func (st *step) field() bool { return st.id != stepLine && st.id != stepSupply }

func walksLine(s *session) bool { return s.walkLine }

func hasRegulator(s *session) bool { return s.value(presets.FieldRegulator) != presets.None }

func walksSupply(s *session) bool { return s.check == checkChange }

func walksBehindCompressor(s *session) bool { return walksSupply(s) && s.hasCompressor() }

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
