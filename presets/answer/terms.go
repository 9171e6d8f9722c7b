package answer

import (
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// terms is the words of the trade that a view or a page is read with, in the order in which they
// are met there: "day" is the view of the weather and the page of the day alike.
var terms = map[string][]string{
	"set":  {"wall-regulator", "trigger", "inlet-valve", "to-spare", "likely-range", "push", "rating", "cap-pressure", "stage", "overlap", "flash-off", "recoat", "fluid-tip"},
	"look": {"wall-regulator", "trigger", "rating", "inlet-valve", "to-spare", "choked", "push"},
	"line": {"supply", "wall-regulator", "coupling", "hose-bore", "inlet-valve", "passages", "cap-pressure"},
	"day":  {"dew-point", "flash-off", "dry-spray", "thinner-grade", "pot-life", "isocyanate"},
	"sure": {"likely-range", "coupling", "hose-bore", "inlet-valve", "push"},
	"why":  {"wall-regulator", "trigger", "to-spare", "rating", "cap-pressure", "passages", "choked", "push", "supply", "dew-point", "dry-spray", "isocyanate"},
	"thin": {"viscosity-cup", "thinner-grade", "pot-life"},
	"film": {"film", "stage", "fan", "overlap", "fluid-tip", "recoat"},
	"mix":  {"pot-life", "film", "fluid-tip", "isocyanate"},
	// of what proves it at the gun
	"prove": {"wall-regulator", "trigger", "inlet-valve", "likely-range", "coupling", "push"},
	// of a gun that sprays badly
	"trouble": {"wall-regulator", "trigger", "inlet-valve", "choked", "push", "dry-spray", "thinner-grade", "dew-point", "viscosity-cup", "film", "flash-off"},
	// of jobs to practise on
	"practice": {"wall-regulator", "trigger", "inlet-valve", "to-spare", "choked", "push", "likely-range", "rating", "dew-point", "dry-spray"},
	// of a booth of the shop's folder
	"outcome": {"dry-spray", "orange-peel", "run", "mottle", "dieback", "solvent-pop"},
	"agreed":  {"agreed", "weather-band", "stage", "void", "twice-apart"},
}

// Terms is the words of the trade that a view of the answer or a page of the coat's own is read
// with, none of one that is not known.
func Terms(view string) []string { return slices.Clone(terms[view]) }

// Explain is what a term is called, and what it means in two short sentences.
func Explain(w *words.Words, term string) (title, meaning string) {
	return w.Say("term-" + term), w.Say("explain-" + term)
}

// Here is what a term comes to in this plan, in a sentence, such as "Here: 1.1 psi."; empty where
// it has no figure, and of what is set on a plan that is stopped.
func (p *Plan) Here(w *words.Words, sys unit.System, term string) string {
	f := p.here(term)
	if f == nil {
		return ""
	}
	return w.Text(sys, "here-"+term, f)
}

func (p *Plan) here(term string) calc.Figures {
	r, s := p.Request, p.Setup
	switch term {
	case "supply":
		return calc.Figures{calc.FigureOf("supply", calc.FigureGauge, r.Supply)}
	case "rating":
		return calc.Figures{calc.FigureOf("inlet", calc.FigureGauge, r.Gun.Stamp.Inlet), calc.FigureOf("flow", calc.FigureFlow, r.Gun.Stamp.Flow)}
	case "dew-point":
		return calc.Figures{calc.FigureOf("dew", calc.FigureTemp, s.Weather.DewPoint), calc.FigureOf("panel", calc.FigureTemp, r.Day.Panel)}
	}
	if p.Stopped() {
		return nil
	}
	switch likely, known := p.LikelyWall(); term {
	case "wall-regulator":
		if r.RegulatorAt() == calc.Wall {
			return calc.Figures{calc.FigureOf("flowing", calc.FigureGauge, s.Wall.Flowing), calc.BriefFigure("static", calc.FigureGauge, s.Wall.Static)}
		}
	case "inlet-valve":
		if !s.Valve.None {
			return calc.Figures{s.Valve.Knob("valve", s.Valve.Opening), calc.FigureOf("opening", calc.FigureShare, s.Valve.Opening)}
		}
	case "to-spare":
		return calc.Figures{calc.FigureOf("reserve", calc.FigureDrop, s.Reserve())}
	case "likely-range":
		if known {
			return calc.Figures{calc.BriefFigure("low", calc.FigureGauge, likely.Low), calc.BriefFigure("high", calc.FigureGauge, likely.High)}
		}
	case "push":
		return calc.Figures{calc.FigureOf("target", calc.FigureDistance, s.Distance.Target)}
	case "cap-pressure":
		return calc.Figures{calc.FigureOf("cap", calc.FigureGauge, s.Working.Cap)}
	case "passages":
		if i := slices.IndexFunc(s.Line, func(step calc.Step) bool { return step.Kind == line.PassagesKind }); i >= 0 {
			return calc.Figures{calc.FigureOf("loss", calc.FigureDrop, s.Line[i].Loss)}
		}
	}
	return nil
}
