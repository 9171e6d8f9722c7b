package words

import (
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"boothset/calc"
	"boothset/calc/unit"
)

// Words is the sentences of one language.
type Words struct {
	lang      string
	sentences map[string]string // by id
	comma     bool              // decimals are marked with a comma where they are shown
}

// Lang is the language's code, such as "en".
func (w *Words) Lang() string { return w.lang }

// IDs is the id of every sentence, sorted.
func (w *Words) IDs() []string { return slices.Sorted(maps.Keys(w.sentences)) }

// Needs is the names of the figures that a sentence has placeholders for.
func (w *Words) Needs(id string) (names []string) {
	for rest := w.sentences[id]; rest != ""; {
		var p placeholder
		if _, p, rest = cutPlaceholder(rest); p.name != "" {
			names = append(names, p.name)
		}
	}
	return names
}

// Has reports whether there is a sentence with an id.
func (w *Words) Has(id string) bool {
	_, ok := w.sentences[id]
	return ok
}

// Say is a sentence that needs no figures; the id itself where there is none.
func (w *Words) Say(id string) string {
	if s, ok := w.sentences[id]; ok {
		return s
	}
	return id
}

// Append appends the sentence of an id with its figures printed in a system's units.
// A missing sentence is its id, a missing figure its name in braces, so that neither
// can pass unseen.
func (w *Words) Append(dst []byte, sys unit.System, id string, figures calc.Figures) []byte {
	start := len(dst)
	dst = w.appendWithin(dst, sys, id, figures)
	if strings.HasPrefix(w.sentences[id], "{") {
		return capitalise(dst, start)
	}
	return dst
}

// appendWithin is Append for a sentence inside another one: it begins as it is written.
func (w *Words) appendWithin(dst []byte, sys unit.System, id string, figures calc.Figures) []byte {
	rest, ok := w.sentences[id]
	if !ok {
		return append(dst, id...)
	}
	for rest != "" {
		var before string
		var p placeholder
		before, p, rest = cutPlaceholder(rest)
		dst = append(dst, before...)
		if p.name != "" {
			dst = w.appendPlaceholder(dst, sys, p, figures)
		}
	}
	return dst
}

// capitalise makes a capital of the letter at start: a sentence that begins with a name
// begins with a capital all the same.
func capitalise(dst []byte, start int) []byte {
	first, size := utf8.DecodeRune(dst[start:])
	var capital [utf8.UTFMax]byte
	n := utf8.EncodeRune(capital[:], unicode.ToTitle(first))
	return slices.Replace(dst, start, start+size, capital[:n]...)
}

// Text is Append as a string.
func (w *Words) Text(sys unit.System, id string, figures calc.Figures) string {
	var room [256]byte // most sentences need no more
	return string(w.Append(room[:0], sys, id, figures))
}
