package words

import (
	"slices"
	"strings"
)

// commaIn is the territories where Spanish marks decimals with a comma; elsewhere, in most of
// the Americas, with a point. Source: Unicode CLDR, common/main, es.xml and what its regions and
// es_419.xml put in its place: numbers, symbols, decimal.
var commaIn = map[string][]string{
	"es": {"AR", "BO", "CL", "CO", "CR", "EC", "ES", "GQ", "PH", "PY", "UY", "VE"},
}

// comma reports whether a language marks decimals with a comma in a territory.
func comma(lang, territory string) bool { return slices.Contains(commaIn[lang], territory) }

// WithComma is the sentences of the language, told where decimals are marked with a comma or
// with a point.
func (w *Words) WithComma(comma bool) *Words {
	if w.comma == comma {
		return w
	}
	return &Words{w.lang, w.sentences, comma}
}

// mostWhole is the most digits before a decimal mark: no value has more, the numbers of
// regulations do.
const mostWhole = 3

// Marked is text as it is shown, its decimals marked as the place does. What is read again by a
// program is not for it. Paragraphs of standards and regulations keep their points: 1910.134,
//
func (w *Words) Marked(text string) string {
	if !w.comma || !strings.Contains(text, ".") {
		return text
	}
	marked := []byte(text)
	for i := 1; i+1 < len(text); i++ {
		if text[i] == '.' && digitAt(text, i-1) && digitAt(text, i+1) && isDecimal(text, i) {
			marked[i] = ','
		}
	}
	return string(marked)
}

// isDecimal reports whether a point between digits stands in a number.
func isDecimal(text string, at int) bool {
	start, end := at, at+1
	for digitAt(text, start-1) {
		start--
	}
	for digitAt(text, end) {
		end++
	}
	lettered := start > 1 && text[start-1] == '-' && letterAt(text, start-2)
	pointed := start > 0 && text[start-1] == '.' || end+1 < len(text) && text[end] == '.' && digitAt(text, end+1)
	return at-start <= mostWhole && !lettered && !pointed
}

func digitAt(text string, at int) bool {
	return at >= 0 && at < len(text) && '0' <= text[at] && text[at] <= '9'
}

func letterAt(text string, at int) bool {
	c := text[at] | 0x20
	return 'a' <= c && c <= 'z'
}
