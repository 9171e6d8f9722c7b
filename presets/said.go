package presets

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// said is a sentence to be said: its id and the figures it speaks of, or words of its own.
type said struct {
	id      string
	figures calc.Figures
	own     string
}

// sentence is what to say of something that will not do.
func sentence(id string, f ...calc.Figure) *said { return &said{id: id, figures: f} }

// told is what an error of the packages below says.
func told(err error) *said {
	id, f := calc.SentenceOf(err)
	return sentence(id, f...)
}

// because is a sentence whose figure "why" is another one's.
func because(id string, err error, f ...calc.Figure) *said {
	why, figures := calc.SentenceOf(err)
	return sentence(id, append(append(f, named("why", why)), figures...)...)
}

// under is a sentence whose figure "why" is another one.
func under(id string, why *said) *said {
	if why == nil {
		return nil
	}
	return sentence(id, append(slices.Clone(why.figures), named("why", why.id))...)
}

// in is the sentence in a language and a system's units.
func (s *said) in(w *words.Words, sys unit.System) string {
	if s.own != "" {
		return s.own
	}
	return w.Text(sys, s.id, s.figures)
}

// Makers of figures; figure makes one that is told to three digits.
func text(name, v string) calc.Figure { return calc.Figure{Name: name, Text: v} }

func named(name, id string) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureSentence, Text: id}
}

func count(name string, n int) calc.Figure {
	return calc.FigureOf(name, calc.FigureCount, n)
}

func figure[T ~float64](name string, kind calc.FigureKind, v T) calc.Figure {
	f := calc.FigureOf(name, kind, v)
	f.Brief = true
	return f
}

// bare is a figure without its unit.
func bare(f calc.Figure) calc.Figure {
	f.WithoutUnit = true
	return f
}

// Assumed is what is taken where nothing is said, as figures: usages and the assistant
// speak of them.
func Assumed(sys unit.System) calc.Figures {
	decimals, _ := decimalsOf(markStep[sys])
	return calc.Figures{
		figure("cutSpan", calc.FigureGauge, cutSpan),
		figure("receiverAbove", calc.FigureTempDiff, receiverAbove),
		figure("sheetTemp", calc.FigureTemp, calc.SheetTemp),
		figure("spraying", calc.FigureMinutes, usualSpraying),
		figure("warmLimit", calc.FigureTemp, usualWarmLimit),
		text("mark", pressures[sys].text(markStep[sys], decimals)),
	}
}
