package command

import (
	"boothset/calc"
	"boothset/presets/answer"
)

// appendStages appends every stage of the coat with what is set for it, in order; one that is
// stopped has nothing to set.
func appendStages(j *jsonWriter, p *answer.Plan) {
	j.array("stages", func() {
		for i := range p.Stages {
			st := &p.Stages[i]
			j.object("", func() { appendStage(j, &st.Coat.Stage, st.Setup) })
		}
	})
}

func appendStage(j *jsonWriter, st *calc.Stage, s *calc.Setup) {
	j.text("stage", st.ID)
	j.text("verdict", s.Verdict.String())
	if s.Stopped() {
		for _, name := range [...]string{"working", "wall", "turns", "distance"} {
			j.null(name)
		}
	} else {
		j.gauge("working", s.Working.Pressure)
		j.gauge("wall", s.Wall.Flowing)
		j.number("turns", s.Valve.Turns)
		j.near("distance", s.Distance.Target)
	}
	j.count("coats", st.Coats.Value)
	between(j, "film", st.Film.Known(), func() {
		j.film("low", st.Film.Low)
		j.film("high", st.Film.High)
	})
	between(j, "overlap", st.Overlap.Known(), func() {
		j.number("low", st.Overlap.Low)
		j.number("usual", st.Overlap.Usual)
		j.number("high", st.Overlap.High)
	})
	between(j, "flash", s.Flash.Known(), func() {
		j.number("low_s", s.Flash.Low.Seconds())
		j.number("usual_s", s.Flash.Usual.Seconds())
		j.number("high_s", s.Flash.High.Seconds())
	})
	between(j, "recoat", s.Recoat.Known(), func() {
		j.number("low_s", s.Recoat.Low.Seconds())
		j.number("usual_s", s.Recoat.Usual.Seconds())
		j.number("high_s", s.Recoat.High.Seconds())
	})
	between(j, "tip", st.Tip.Known(), func() {
		j.number("low_mm", st.Tip.Low.MM())
		j.number("usual_mm", st.Tip.Usual.MM())
		j.number("high_mm", st.Tip.High.MM())
	})
}

// between appends a range, null where it is not known.
func between(j *jsonWriter, name string, known bool, what func()) {
	if !known {
		j.null(name)
		return
	}
	j.object(name, what)
}
