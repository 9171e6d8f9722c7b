package edit

import (
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
)

// Step moves one input of the answers by so many steps, to a whole multiple of its step in
// the system's unit, or so many choices along its list. It goes no farther than the field's
// bounds, and reports whether it went at all. An empty field starts from what counts in its
// place in the request that the answers come to, which may be nil; where nothing does it
// stays.
func Step(r *question.Reader, a question.Answers, now *calc.Request, in Input, by int, sys unit.System) (question.Answers, bool) {
	all := a.Or(r.Usual())
	if by == 0 || in.Part >= movable(in.Field, all) {
		return a, false
	}
	values := all.Get(in.Field)
	f, v := in.Of(all)
	if f == question.Line || v.Fault != nil && !f.Listed() {
		return a, false
	}
	s := stepping{r, all, Input{f, in.Part, in.Piece}, sys, now}
	var ok bool
	if f.Listed() {
		v, ok = s.along(v, by)
	} else {
		v, ok = s.moved(v, len(values) > 0, by)
	}
	if !ok {
		return a, false
	}
	return in.put(a, values, v), true
}

// StepText is Step for the text of a field while it is typed, the other answers as they
// are: it moves the quantity that a rune of the text belongs to. An empty field that
// nothing counts for begins at its first.
func StepText(r *question.Reader, a question.Answers, f *question.Field, t string, at, by int, sys unit.System) (string, bool) {
	if t == "" && f.Begin[sys] != "" && !r.Usual().Has(f) {
		return f.Begin[sys], true
	}
	a = a.With(f, r.ReadText(f, t, sys)...)
	now, _ := r.Plan(a, sys)
	now.Supply = 0 // a wall may be typed that stands above it: what that means is told
	a, ok := Step(r, a, now, inputAt(f, t, at), by, sys)
	if !ok {
		return t, false
	}
	return a.Text(f), true
}

// StepSize is what one press moves an input by, as a person reads it: a quantity, or of a list
// which choice of how many it stands on. Empty where it stands nowhere.
func StepSize(r *question.Reader, a question.Answers, now *calc.Request, in Input, sys unit.System) string {
	all := a.Or(r.Usual())
	if in.Part >= movable(in.Field, all) {
		return ""
	}
	values := all.Get(in.Field)
	f, v := in.Of(all)
	s := stepping{r, all, Input{f, in.Part, in.Piece}, sys, now}
	switch {
	case f == question.Panels:
		return "1"
	case f.Listed():
		choices := r.Choices(f)
		at := slices.IndexFunc(choices, func(c catalogue.Choice) bool { return c.ID == v.ID })
		if at < 0 {
			return ""
		}
		return strconv.Itoa(at+1) + "/" + strconv.Itoa(len(choices))
	}
	q, _, size, ok := s.from(v, len(values) > 0)
	if !ok || q == unit.Bore {
		return ""
	}
	decimals, _ := unit.Decimals(size)
	return q.CountText(sys, size, decimals)
}

// stepping is one input on its way.
type stepping struct {
	r   *question.Reader
	a   question.Answers // with the shop's usual
	in  Input
	sys unit.System
	now *calc.Request // nil where there is none
}

// along goes along a list from where it stands, or from before its start, over what does
// not go with the other answers. A coat's stage that is not answered is its first.
func (s stepping) along(from question.Value, by int) (question.Value, bool) {
	choices := s.r.Choices(s.in.Field)
	if s.in.Field == question.Stage && from.ID == "" {
		from.ID = s.r.FirstStage(s.a.ID(question.Coat))
	}
	at := -1
	for i := range choices {
		if choices[i].ID == from.ID && from.Fault == nil {
			at = i
		}
	}
	toward, left := 1, by
	if by < 0 {
		toward, left = -1, -by
	}
	got, ok := question.Value{}, false
	for at += toward; at >= 0 && at < len(choices) && left > 0; at += toward {
		if id := choices[at].ID; s.goes(id) {
			got, ok = question.Value{Text: id, ID: id}, true
			left--
		}
	}
	return got, ok
}

// goes reports whether a choice goes with the other answers: a coat with the gun, a gun or a
// stage with the coat.
func (s stepping) goes(id string) bool {
	coat, gun := s.a.ID(question.Coat), s.a.ID(question.Gun)
	switch s.in.Field {
	case question.Coat:
		return gun == "" || s.r.GoTogether(id, gun)
	case question.Gun:
		return coat == "" || s.r.GoTogether(coat, id)
	case question.Stage:
		return slices.Contains(s.r.StagesOf(coat), id)
	}
	return true
}

// moved is a value with the input's quantity some steps on, or as near to that as there is
// something to take.
func (s stepping) moved(v question.Value, answered bool, by int) (question.Value, bool) {
	if s.in.Field == question.Panels {
		return s.counted(v, answered, by)
	}
	q, at, size, ok := s.from(v, answered)
	if !ok {
		return v, false
	}
	if q == unit.Bore {
		return s.alongBores(v, unit.Length(at), by)
	}
	toward := 1
	if by < 0 {
		toward = -1
	}
	decimals, _ := unit.Decimals(size)
	for ; by != 0; by -= toward {
		n := q.Steps(s.sys, at, size, by)
		if to := q.Of(s.sys, n); s.within(q, to) {
			return s.with(v, q, to, q.CountText(s.sys, n, decimals)), true
		}
	}
	return v, false
}

// counted is a whole number so many on, as far as its bounds go.
func (s stepping) counted(v question.Value, answered bool, by int) (question.Value, bool) {
	f := s.in.Field
	at := v.SI[0]
	if !answered && s.now != nil {
		at = f.Counts(s.now)
	}
	to := min(max(at+float64(by), f.Bounds[0].Low), f.Bounds[0].High)
	return question.Value{Text: strconv.Itoa(int(to)), SI: [2]float64{to}}, to != at
}

// from is the quantity that is moved, where it stands and its step; ok is false where it
// stands nowhere. A compressor told by its motor is moved by that, the wall by the mark of
// its gauge where that is a plain number in the system's unit.
func (s stepping) from(v question.Value, answered bool) (q *unit.Quantity, at, size float64, ok bool) {
	f := s.in.Field
	if f == question.Compressor && v.SI[1] > 0 {
		return unit.Power, v.SI[1], unit.Power.Step[s.sys], true
	}
	q = f.Of[s.in.Piece]
	if size = f.Step[s.in.Piece][s.sys]; size == 0 {
		size = q.Step[s.sys]
	}
	if f == question.Wall && s.now != nil {
		if mark := q.Count(s.sys, float64(s.now.Mark)); plain(mark) {
			size = mark
		}
	}
	switch {
	case answered && v.ID == "":
		return q, v.SI[s.in.Piece], size, true
	case !answered && f.Counts != nil && s.now != nil:
		return q, f.Counts(s.now), size, true
	}
	return q, 0, size, false
}

func plain(size float64) bool {
	_, plain := unit.Decimals(size)
	return plain
}

// within reports whether the field takes the quantity so.
func (s stepping) within(q *unit.Quantity, si float64) bool {
	f := s.in.Field
	if q == unit.Power {
		return f.Read(s.r, f, q.CountText(s.sys, q.Count(s.sys, si), 0), s.sys).Fault == nil
	}
	b := f.Bounds[s.in.Piece]
	return (b == nil || b.Holds(si)) && s.beside(si)
}

// beside reports whether the quantity goes with another that bounds it: no wall stands
// higher than its supply, no supply higher than its cut-out, and no cut-out below its cut-in. Where they are in no such order
// yet, the other one may be what is wrong.
func (s stepping) beside(si float64) bool {
	if s.now == nil {
		return true
	}
	switch cut, v := &s.now.Shop.System, unit.Gauge(si); s.in.Field {
	case question.Wall:
		return s.now.Supply <= 0 || v <= max(s.now.Supply, s.now.Now)
	case question.Supply:
		return !s.a.Has(question.CutOut) || !s.now.Shop.Known || s.now.Supply > cut.CutOut || v <= cut.CutOut
	case question.CutIn:
		return !s.a.Has(question.CutOut) || cut.CutIn > cut.CutOut || v <= cut.CutOut
	case question.CutOut:
		return cut.CutOut < max(cut.CutIn, s.now.Supply) || v >= max(cut.CutIn, s.now.Supply)
	}
	return true
}

// with is a value with the input's quantity in it replaced.
func (s stepping) with(v question.Value, q *unit.Quantity, si float64, t string) question.Value {
	f := s.in.Field
	if q == unit.Power {
		v = f.Read(s.r, f, t, s.sys)
		v.Text = t
		return v
	}
	v.ID = ""
	v.Word = v.Word && s.in.Piece == 0
	v.Text = withPiece(f, s.in.Piece, v.Text, t)
	v.SI[s.in.Piece], v.Bare[s.in.Piece] = si, false
	return v
}

// alongBores is the value with the bore so many of those that there are farther on, as far
// as the last. One that is written as the bore itself is not a step.
func (s stepping) alongBores(v question.Value, at unit.Length, by int) (question.Value, bool) {
	here := s.sys.Bore(at)
	var ahead []unit.Length
	for _, b := range s.r.Bores(s.in.Field.Name, s.sys) {
		if s.sys.Bore(b) != here && (b > at) == (by > 0) {
			ahead = append(ahead, b)
		}
	}
	if by < 0 {
		slices.Reverse(ahead)
		by = -by
	}
	ahead = slices.CompactFunc(ahead, func(a, b unit.Length) bool { return s.sys.Bore(a) == s.sys.Bore(b) })
	if len(ahead) == 0 {
		return v, false
	}
	t := s.sys.Bore(ahead[min(by, len(ahead))-1])
	written, err := unit.Bore.Read(t, unit.Named) // three decimals of an inch are not all of it
	return s.with(v, unit.Bore, written.SI, t), err == nil
}
