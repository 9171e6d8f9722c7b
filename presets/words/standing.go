package words

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// Standing is a basis and its source as they stand behind a reason.
func (w *Words) Standing(s calc.Standing) string {
	basis, source := w.Basis(s.Basis), w.Source(s)
	switch {
	case source == "":
		return basis
	case strings.HasPrefix(source, basis):
		return source
	}
	return basis + ": " + source
}

// Source is where a value comes from, in words; empty where its basis says it all.
func (w *Words) Source(s calc.Standing) string {
	if s.Figures == nil {
		return w.Say(s.Source)
	}
	return w.Text(unit.US, s.Source, *s.Figures)
}

// Basis is what a value rests on, in words.
func (w *Words) Basis(b calc.Basis) string {
	switch b {
	case calc.Published:
		return w.Say("basis-published")
	case calc.CommonPractice:
		return w.Say("basis-common-practice")
	case calc.Computed:
		return w.Say("basis-computed")
	case calc.Estimate:
		return w.Say("basis-estimate")
	case calc.OwnReadings:
		return w.Say("basis-own-readings")
	case calc.Sheet:
		return w.Say("basis-sheet")
	}
	return string(b)
}

// Spread is how sure a setup is, in sentences; none where it has no spread.
func (w *Words) Spread(sys unit.System, s *calc.Spread) []string {
	if s == nil {
		return nil
	}
	f := s.Figures()
	all := []string{w.Text(sys, "spread-bounds", f)}
	if len(s.Causes) > 0 {
		id := s.Causes[0].ID
		for i := range f {
			if f[i].Name == "cause" {
				f[i].Text = w.Text(sys, "cause-"+id, nil)
			}
		}
		f = append(f, calc.Figure{Name: "measure", Text: w.Text(sys, "measure-"+id, nil)})
		all = append(all, w.Text(sys, "spread-cause", f))
	}
	return all
}
