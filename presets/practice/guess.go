package practice

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// Guess is how somebody would set a job. What of Set is not asked does not count.
type Guess struct {
	Verdict calc.Verdict
	Set     calc.Set
}

// Sprays reports whether a job of the verdict is sprayed as it stands.
func Sprays(v calc.Verdict) bool { return v <= calc.VerdictWatch }

// Setting is one of the settings that are asked for.
type Setting string

// The settings, as sentences and JSON name them.
const (
	Wall     Setting = "wall"
	Opening  Setting = "opening"
	Distance Setting = "distance"
)

// Asks is what of a job's settings is asked for where it is sprayed, in the order in which they
// are set: no wall without a regulator, no valve where the gun has none or where a second
// regulator sets it.
func (j *Job) Asks() (all []Setting) {
	if j.Request.RegulatorAt() != calc.Nowhere {
		all = append(all, Wall)
	}
	if v := &j.Setup.Valve; !v.None && !j.Setup.Foot.Is {
		all = append(all, Opening)
	}
	return append(all, Distance)
}

// Read reads a setting into a guess, a bare number in the system's unit: the valve's as turns of
// the knob, counted as it is, or as how far it is open with a % sign. What will not do changes
// nothing.
func (j *Job) Read(g *Guess, of Setting, text string, sys unit.System) *question.Fault {
	r := j.reader
	switch of {
	case Wall:
		v := r.Read(question.Wall, text, sys)
		if f := r.Check(question.Wall, []question.Value{v}, sys); f != nil {
			return f
		}
		g.Set.Wall = unit.Gauge(v.SI[0])
	case Distance:
		v := r.Read(question.Distance, text, sys)
		if f := r.Check(question.Distance, []question.Value{v}, sys); f != nil {
			return f
		}
		g.Set.Distance = unit.Length(v.SI[0])
	case Opening:
		open, ok := j.opening(text, sys)
		if !ok {
			return r.Fault(string(Opening), text, sys, "want-opening", calc.FigureOf("most", calc.FigureTurns, j.Setup.Valve.TurnsOf))
		}
		g.Set.Opening = open
	}
	return nil
}

// opening reads how far the valve is open: shut is no opening to spray with.
func (j *Job) opening(text string, sys unit.System) (open float64, ok bool) {
	v := &j.Setup.Valve
	if strings.HasSuffix(strings.TrimSpace(unit.Fold(text)), "%") {
		share, err := unit.Share.Read(text, sys)
		return share.SI, err == nil && share.SI > 0 && share.SI <= 1
	}
	turned, err := unit.Turns.Read(text, sys)
	if err != nil || turned.SI < 0 || turned.SI > v.TurnsOf {
		return 0, false
	}
	open = turned.SI / v.TurnsOf
	if !v.CountsFromShut {
		open = 1 - open
	}
	return open, open > 0
}
