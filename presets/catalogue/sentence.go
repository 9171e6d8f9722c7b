package catalogue

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// sentence is what there is to say of something: its id and the figures it speaks of.
type sentence struct {
	id      string
	figures calc.Figures
}

func newSentence(id string, f ...calc.Figure) *sentence { return &sentence{id: id, figures: f} }

// sentenceOf is what an error of the packages below says.
func sentenceOf(err error) *sentence {
	id, f := calc.SentenceOf(err)
	return newSentence(id, f...)
}

// because is a sentence whose figure "why" is another one's.
func because(id string, err error, f ...calc.Figure) *sentence {
	why, figures := calc.SentenceOf(err)
	return newSentence(id, append(append(f, calc.SentenceFigure("why", why)), figures...)...)
}

// under is a sentence whose figure "why" is another one.
func under(id string, why *sentence) *sentence {
	if why == nil {
		return nil
	}
	return newSentence(id, append(slices.Clone(why.figures), calc.SentenceFigure("why", why.id))...)
}

// in is the sentence in a language and a system's units.
func (s *sentence) in(w *words.Words, sys unit.System) string {
	return w.Text(sys, s.id, s.figures)
}

// withoutUnit is a figure without its unit.
func withoutUnit(f calc.Figure) calc.Figure {
	f.WithoutUnit = true
	return f
}
