package words

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// Ground is a basis and its source as they stand behind a reason.
func (w *Words) Ground(s calc.Ground) string {
	basis, source := w.Basis(s.Basis), w.Source(s)
	switch {
	case source == "":
		return basis
	case strings.HasPrefix(source, basis), strings.Contains(source, ": "+basis): // it is said there, of each part
		return source
	}
	return basis + ": " + source
}

// Source is where a value comes from, in words; empty where its basis says it all.
func (w *Words) Source(s calc.Ground) string {
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
