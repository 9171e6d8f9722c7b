package answer

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// levels is how much each verdict weighs as a caution does.
var levels = [...]calc.Level{calc.VerdictGo: calc.Note, calc.VerdictWatch: calc.Warn, calc.VerdictWait: calc.Warn, calc.VerdictStop: calc.Stop}

// Headline is a verdict in a word, with what makes it milder; going is the sentence of one
// that goes.
func Headline(w *words.Words, sys unit.System, j *calc.Judgement, going string) Row {
	verdict := j.Verdict.String()
	r := Row{Role: Verdict, Level: levels[j.Verdict], ID: verdict, Name: w.Say("verdict-" + verdict)}
	if j.Verdict == calc.VerdictGo {
		r.Text = w.Say(going)
		return r
	}
	r.Text = w.Text(sys, "headline-"+verdict, calc.Figures{calc.TextFigure("turn", TurnText(w, sys, j.Turn()))})
	return r
}

// The sentences of a plan and of a day that go.
const (
	PlanGoes = "plan-goes"
	DayGoes  = "day-goes"
)

// TurnText is the sentence of what is to be done.
func TurnText(w *words.Words, sys unit.System, t calc.Turn) string {
	return w.Text(sys, t.ID, t.Figures)
}

// AgainstRows is what speaks against spraying, a row each: the reason, and what turns it
// where that is not what turns the verdict.
func AgainstRows(w *words.Words, sys unit.System, j *calc.Judgement) []Row {
	rows := make([]Row, len(j.Against))
	for i := range j.Against {
		c := &j.Against[i]
		rows[i] = Row{Role: Against, Level: levels[c.Level], ID: c.ID, Name: w.Say("verdict-" + c.Level.String()), Text: w.Text(sys, c.ID, c.Figures), Ground: w.Ground(c.Ground)}
		if told := slices.ContainsFunc(j.Against[:i], func(o calc.Cause) bool { return o.Turn.ID == c.Turn.ID }); i > 0 && !told {
			rows[i].Text += " " + TurnText(w, sys, c.Turn)
		}
	}
	return rows
}
