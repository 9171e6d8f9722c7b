package presets

import "strings"

// paired reports whether a field's values are two quantities each with a comma between.
func paired(field string) bool {
	return field == FieldHose || field == FieldMain || field == FieldOther
}

// comma is where the two quantities of a value part, -1 where it has but one. Of length
// and bore it is the last, so that a decimal comma may stand in the length; of air and
// share the first.
func comma(field, value string) int {
	switch field {
	case FieldHose, FieldMain:
		return strings.LastIndexByte(value, ',')
	case FieldOther:
		return strings.IndexByte(value, ',')
	}
	return -1
}

// pieces is the two quantities of a value; ok is false where it has but one.
func pieces(field string, value Typed) (first, second string, ok bool) {
	text := string(value)
	at := comma(field, text)
	if at < 0 {
		return text, "", false
	}
	return text[:at], text[at+1:], true
}

// Of is the text of the input in the text of its field, empty where it has none.
func (in Input) Of(text string) string {
	if !paired(in.Field) {
		return text
	}
	all := parted(text)
	if in.Part >= len(all) {
		return ""
	}
	first, second, _ := pieces(in.Field, all[in.Part])
	if in.Piece == 0 {
		return strings.TrimSpace(first)
	}
	return strings.TrimSpace(second)
}

// With is the text of the input's field in answers with the input's own text replaced.
func (in Input) With(a Answers, text string) string {
	if !paired(in.Field) {
		return text
	}
	parts := parted(a.Field(in.Field))
	if in.Part >= len(parts) {
		return text
	}
	parts[in.Part] = withPiece(in, parts[in.Part], text)
	return strings.Join(texts(parts), " + ")
}

// withPiece is a value with the input's quantity in it replaced; a second one that it
// does not have yet is added.
func withPiece(in Input, value Typed, quantity string) Typed {
	if !paired(in.Field) {
		return Typed(quantity)
	}
	first, second, both := pieces(in.Field, value)
	first, second = strings.TrimSpace(first), strings.TrimSpace(second)
	if in.Piece == 0 {
		first = quantity
	} else {
		second, both = quantity, true
	}
	if !both {
		return Typed(first)
	}
	return Typed(first + ", " + second)
}

// InputAt is the input that a rune of a field's text belongs to, as of the cursor that
// stands before it. Places beyond the text count as its ends.
func InputAt(field, text string, at int) Input {
	before := text
	for i := range text {
		if at <= 0 {
			before = text[:i]
			break
		}
		at--
	}
	in, start := Input{Field: field}, 0
	if field == FieldHose || field == FieldOther {
		start = strings.LastIndexByte(before, '+') + 1
		in.Part = len(parted(before[:start]))
	}
	value, _, _ := strings.Cut(text[start:], "+")
	if c := comma(field, value); c >= 0 && len(before)-start > c {
		in.Piece = 1
	}
	return in
}
