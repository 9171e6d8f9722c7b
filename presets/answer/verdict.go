package answer

import (
	"slices"

	"boothset/calc"
)

// PlanVerdict is what a job and its day come to, from the worst that is said of them, by the
// id of its sentence.
type PlanVerdict string

// The verdicts of a plan.
const (
	PlanGo    PlanVerdict = "bench-go"
	PlanWatch PlanVerdict = "bench-watch" // spray, and mind the warnings
	PlanWait  PlanVerdict = "bench-wait"  // the day is against it
	PlanStop  PlanVerdict = "bench-stop"
)

// Level is how much a verdict weighs.
func (v PlanVerdict) Level() calc.Level {
	switch v {
	case PlanStop:
		return calc.Stop
	case PlanGo:
		return calc.Note
	}
	return calc.Warn
}

// Verdict is the plan's verdict; its day counts where it was worked out.
func (p *Plan) Verdict() PlanVerdict {
	worst := PlanGo
	for _, c := range p.AllCautions() {
		switch {
		case c.Level == calc.Stop:
			return PlanStop
		case c.Level == calc.Warn && !c.Safety:
			worst = PlanWatch
		}
	}
	if p.Today != nil && p.Today.Verdict == calc.VerdictWait {
		return PlanWait
	}
	return worst
}

// AllCautions is what is to be known before spraying, of the setup and, where it was worked
// out, of the day: its warnings that the setup has not.
func (p *Plan) AllCautions() []calc.Caution {
	all := slices.Clone(p.Setup.Cautions)
	if p.Today == nil {
		return all
	}
	for _, c := range p.Today.Cautions {
		known := slices.ContainsFunc(all, func(have calc.Caution) bool { return have.ID == c.ID })
		if c.Level == calc.Warn && !known {
			all = append(all, c)
		}
	}
	return all
}
