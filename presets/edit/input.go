package edit

import (
	"slices"
	"strings"

	"boothset/calc/unit"
	"boothset/presets/question"
)

// Input is one thing of a plan's answers that can be moved by a step: a field, of one that
// repeats which value, and of a pair which of its two quantities.
type Input struct {
	Field *question.Field
	Part  int // of the field's values, from 0
	Piece int // of "25ft,3/8in": 0 the first quantity, 1 the second
}

// Inputs is what can be moved as the answers stand, in the order of the job: what does not
// count, such as the cut-in without a compressor, is left out.
func Inputs(r *question.Reader, a question.Answers) []Input {
	a = a.Or(r.Usual())
	all := make([]Input, 0, 32)
	for _, row := range question.Plan.Fields {
		if row.Field == question.Compressor && !question.Supplied(a) {
			continue
		}
		for part := range movable(row.Field, a) {
			in := Input{Field: row.Field, Part: part}
			all = append(all, in)
			if f, _ := in.Of(a); f.Pair() {
				in.Piece = 1
				all = append(all, in)
			}
		}
	}
	return all
}

// Of is the field that reads the input's value among answers, and the value, empty where there
// is none: of a part of a line those of its own kind.
func (in Input) Of(a question.Answers) (*question.Field, question.Value) {
	values := a.Get(in.Field)
	if in.Part >= len(values) {
		return in.Field, question.Value{}
	}
	v := values[in.Part]
	if of, part := v.Part(); of != nil {
		return of, part
	}
	return in.Field, v
}

// put is the answers with the input's value, as the field of Of has it, replaced.
func (in Input) put(a question.Answers, values []question.Value, v question.Value) question.Answers {
	if in.Part < len(values) && values[in.Part].Kind != "" {
		v = question.PartOf(values[in.Part].Kind, v)
	}
	return a.Changed(in.Field, a.With(in.Field, values...).WithValue(in.Field, in.Part, v).Get(in.Field)...)
}

// movable is how many values of a field can be moved: none of one that does not count or comes by the piece, one
// of a plain field, answered or not, of pairs those that there are.
func movable(f *question.Field, a question.Answers) int {
	values := a.Get(f)
	switch {
	case !question.Plan.Has(f) || !question.Applies(f, a):
		return 0
	case f.Repeats:
		return len(values)
	case f.Pair() && (len(values) == 0 || values[0].ID != ""):
		return 0
	}
	return 1
}

// Text is the text of the input in the answers, with its units named in a system; empty
// where it has none.
func (in Input) Text(r *question.Reader, a question.Answers, sys unit.System) string {
	f, v := in.Of(a)
	t := question.TextOf(r.Completed(f, []question.Value{v}, sys))
	if !f.Pair() {
		return t
	}
	one, other, _ := question.Parts(f, t)
	if in.Piece == 0 {
		return strings.TrimSpace(one)
	}
	return strings.TrimSpace(other)
}

// Shown is the text of the input in the answers as a person reads it, in a system's units.
func (in Input) Shown(r *question.Reader, a question.Answers, sys unit.System) string {
	f, v := in.Of(a)
	return r.ShownPiece(f, r.Completed(f, []question.Value{v}, sys)[0], in.Piece, sys)
}

// With is the answers with the input's own text replaced and read.
func (in Input) With(r *question.Reader, a question.Answers, t string, sys unit.System) question.Answers {
	all := a.Or(r.Usual())
	values := all.Get(in.Field)
	if in.Part >= len(values) || !in.Field.Repeats && !in.Field.Pair() {
		return a.With(in.Field, r.Completed(in.Field, r.ReadText(in.Field, t, sys), sys)...)
	}
	f, v := in.Of(all)
	v = r.Completed(f, []question.Value{r.Read(f, withPiece(f, in.Piece, v.Text, t), sys)}, sys)[0]
	return in.put(a, values, v)
}

// withPiece is a value's text with one of its quantities replaced; a second one that it does
// not have yet is added.
func withPiece(f *question.Field, piece int, value, quantity string) string {
	if !f.Pair() {
		return quantity
	}
	one, other, both := question.Parts(f, value)
	one, other = strings.TrimSpace(one), strings.TrimSpace(other)
	if piece == 0 {
		one = quantity
	} else {
		other, both = quantity, true
	}
	if !both {
		return one
	}
	return f.Joined(one, other)
}

// inputAt is the input that a rune of a field's text belongs to, as of the cursor that
// stands before it. Places beyond the text count as its ends.
func inputAt(f *question.Field, t string, at int) Input {
	before := t
	for i := range t {
		if at <= 0 {
			before = t[:i]
			break
		}
		at--
	}
	in, start := Input{Field: f}, 0
	if f.Repeats {
		start = strings.LastIndexByte(before, '+') + 1
		in.Part = len(slices.DeleteFunc(strings.Split(before[:start], "+"), func(s string) bool { return strings.TrimSpace(s) == "" }))
	}
	value, _, _ := strings.Cut(t[start:], "+")
	if kind, _, ok := strings.Cut(value, "="); f == question.Line && ok {
		if of := question.PartField(strings.TrimSpace(kind)); of != nil {
			f = of
		}
	}
	if one, _, both := question.Parts(f, value); f.Pair() && both && len(before)-start > len(one) {
		in.Piece = 1
	}
	return in
}
