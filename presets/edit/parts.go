package edit

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
)

// WholeLine is answers with the line given part by part: as it is, or from the answers to the
// usual line, the shop's where there are none. What of it cannot be read is left out.
func WholeLine(r *question.Reader, a question.Answers, sys unit.System) question.Answers {
	all := a.Or(r.Usual())
	if question.Whole(all) {
		return a.With(question.Line, all.Get(question.Line)...)
	}
	request, _ := r.Plan(all, sys)
	parts := make([]question.Value, 0, len(request.Line))
	for i := range request.Line {
		p := &request.Line[i]
		if v := r.Read(question.Line, p.Kind.String()+"="+p.Entry, sys); v.Fault == nil {
			parts = append(parts, v)
		}
	}
	return UsualLine(a).With(question.Line, r.Completed(question.Line, parts, sys)...)
}

// UsualLine is answers that say nothing of the line: the shop's usual one counts.
func UsualLine(a question.Answers) question.Answers {
	for _, f := range question.LineFields() {
		a = a.With(f)
	}
	return a
}

// AddPart is answers with a part added to the line after the one at a place, -1 before the
// first; false where there is no room for it.
func AddPart(a question.Answers, after int, part question.Value) (question.Answers, bool) {
	parts := a.Get(question.Line)
	if after < -1 || after >= len(parts) || len(parts) >= calc.MostParts || part.Fault != nil {
		return a, false
	}
	return a.With(question.Line, slices.Insert(slices.Clone(parts), after+1, part)...), true
}

// RemovePart is answers without a part of the line; false where it is the only one.
func RemovePart(a question.Answers, at int) (question.Answers, bool) {
	parts := a.Get(question.Line)
	if at < 0 || at >= len(parts) || len(parts) == 1 {
		return a, false
	}
	return a.With(question.Line, slices.Delete(slices.Clone(parts), at, at+1)...), true
}

// MovePart is answers with a part of the line moved to another place in it; false where there
// is no such place.
func MovePart(a question.Answers, from, to int) (question.Answers, bool) {
	parts := slices.Clone(a.Get(question.Line))
	if from == to || min(from, to) < 0 || max(from, to) >= len(parts) {
		return a, false
	}
	p := parts[from]
	parts = slices.Insert(slices.Delete(parts, from, from+1), to, p)
	return a.With(question.Line, parts...), true
}

// SwapPart is answers with another part in place of one of the line; false where there is
// none, or the other was not read.
func SwapPart(a question.Answers, at int, part question.Value) (question.Answers, bool) {
	parts := slices.Clone(a.Get(question.Line))
	if at < 0 || at >= len(parts) || part.Fault != nil {
		return a, false
	}
	parts[at] = part
	return a.With(question.Line, parts...), true
}

// NewPart is the part of a kind that is added first: as the last of its kind in the line, else
// the catalogue's first; of hoses else the shop's usual, or one that is common.
func NewPart(r *question.Reader, a question.Answers, kind string, sys unit.System) question.Value {
	for _, v := range slices.Backward(a.Get(question.Line)) {
		if v.Kind == kind {
			return v
		}
	}
	entry := ""
	switch f := question.PartField(kind); {
	case kind == catalogue.KindHose:
		if entry = commonHose[sys]; r.Usual().Has(question.Hose) {
			entry = r.Usual().Get(question.Hose)[0].Text
		}
	case f != nil:
		if all := r.Choices(f); len(all) > 0 {
			entry = all[0].ID
		}
	}
	return r.Completed(question.Line, []question.Value{r.Read(question.Line, kind+"="+entry, sys)}, sys)[0]
}

// commonHose is a hose that is common in booths.
var commonHose = [...]string{unit.US: "25 ft, 3/8 in", unit.Metric: "8 m, 10 mm"}
