package words

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// placeholder is a place in a sentence that a figure is put into, {passes}, or one for the
// word that goes with a count, {passes:pass|passes}.
type placeholder struct {
	name       string // of the figure
	counts     bool
	one, other string // the word, where the figure is printed as 1 and where it is not
}

// cutPlaceholder cuts a sentence at its first placeholder: the text before it, the
// placeholder and what follows. Without one, before is the whole sentence.
func cutPlaceholder(sentence string) (before string, p placeholder, rest string) {
	before, rest, found := strings.Cut(sentence, "{")
	if !found {
		return before, p, ""
	}
	inside, rest, _ := strings.Cut(rest, "}")
	var forms string
	p.name, forms, p.counts = strings.Cut(inside, ":")
	p.one, p.other, _ = strings.Cut(forms, alternative)
	return before, p, rest
}

// alternative parts the alternatives of an entry or a placeholder.
const alternative = "|"

func (w *Words) appendPlaceholder(dst []byte, sys unit.System, p placeholder, figures calc.Figures) []byte {
	start := len(dst)
	dst = w.appendValue(dst, sys, p.name, figures)
	switch {
	case !p.counts:
		return dst
	case string(dst[start:]) == "1":
		return append(dst[:start], p.one...)
	}
	return append(dst[:start], p.other...)
}

// appendValue appends the value of the figure of a name; the name in braces where there is none.
func (w *Words) appendValue(dst []byte, sys unit.System, name string, figures calc.Figures) []byte {
	for i := range figures {
		f := &figures[i]
		switch {
		case f.Name != name:
		case f.Kind == calc.FigureSentence:
			return w.appendWithin(dst, sys, f.Text, figures)
		default:
			return w.AppendFigure(dst, sys, f)
		}
	}
	dst = append(dst, '{')
	dst = append(dst, name...)
	return append(dst, '}')
}
