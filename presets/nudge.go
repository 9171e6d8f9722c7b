package presets

import (
	"errors"
	"slices"

	"boothset/calc"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// Input is one thing of the answers that can be moved by a step: a field, and in one
// that holds several hoses or users which, and of a pair which of its two quantities.
type Input struct {
	Field string
	Part  int // of the hoses or the other users, from 0
	Piece int // of "25ft,3/8in" or "10cfm,50%": 0 the first quantity, 1 the second
}

// jobOrder is every field that can be moved, in the order of the job.
var jobOrder = []string{
	FieldCoat, FieldGun, FieldTemp, FieldHumidity, FieldPanel, FieldAltitude, FieldSupply,
	FieldRegulator, FieldRegulatorAt, FieldFilter, FieldHose, FieldCoupling, FieldGauge, FieldWall, FieldMark,
	FieldCompressor, FieldReceiver, FieldCutIn, FieldCutOut, FieldMain, FieldOther, FieldSprayTime, FieldReceiverTemp, FieldLineTemp,
}

// Inputs is what can be moved as the answers stand, in the order of the job: what does
// not count, such as the cut-in without a compressor, is left out.
func (c *Catalogue) Inputs(a Answers) []Input {
	regulated := c.counting(&a, FieldRegulator) != None
	compressor := c.counting(&a, FieldCompressor)
	supplied := compressor != "" && compressor != None
	var all []Input
	for _, field := range jobOrder {
		switch field {
		case FieldRegulatorAt, FieldWall, FieldMark:
			if !regulated {
				continue
			}
		default:
			if ofSupply(field) && !supplied {
				continue
			}
		}
		for part := range c.parts(&a, field) {
			all = append(all, Input{Field: field, Part: part})
			if paired(field) {
				all = append(all, Input{Field: field, Part: part, Piece: 1})
			}
		}
	}
	return all
}

// Nudge moves one input of the answers by so many steps, to a whole multiple of its step
// in the system's unit, or so many choices along its list. It goes no farther than the
// catalogue takes, and reports whether it went at all. An empty field starts from what
// counts in its place; where nothing does it stays.
func (c *Catalogue) Nudge(a Answers, in Input, by int, sys unit.System) (Answers, bool) {
	if by == 0 || !slices.Contains(c.Inputs(a), in) {
		return a, false
	}
	n := nudge{c: c, in: in, sys: sys, part: in.Part}
	parts := c.parts(&a, in.Field)
	if !n.start(a, parts) {
		return a, false
	}
	text, ok := n.to(parts[in.Part], by)
	if !ok {
		return a, false
	}
	return put(a, in.Field, parts, in.Part, text), true
}

// NudgeText is Nudge for the text of a field while it is typed, the other answers as
// they are. An empty field that nothing counts for begins at its first. Where nothing
// moves it is text as it was.
func (c *Catalogue) NudgeText(a Answers, in Input, text string, by int, sys unit.System) (string, bool) {
	if first, ok := firsts.get(in.Field); ok && text == "" && c.Usual(in.Field) == "" {
		return first[sys], true
	}
	a.Set(in.Field, text)
	a, ok := c.Nudge(a, in, by, sys)
	if !ok {
		return text, false
	}
	return a.Field(in.Field), true
}

// counting is the answer that counts for a field: what was given, else the usual.
func (c *Catalogue) counting(a *Answers, field string) string {
	if text := a.Field(field); text != "" {
		return text
	}
	return c.Usual(field)
}

// parts is the values of a field that can be moved: the one of a plain field, empty or
// not; of hoses, users and the main those that there are.
func (c *Catalogue) parts(a *Answers, field string) []Typed {
	text := c.counting(a, field)
	switch {
	case a.list(field) != nil:
		return parted(text)
	case field == FieldMain && (text == "" || text == None):
		return nil
	}
	return []Typed{Typed(text)}
}

// put is answers with one of a field's parts changed.
func put(a Answers, field string, parts []Typed, part int, text Typed) Answers {
	if list := a.list(field); list != nil {
		parts = slices.Clone(parts)
		parts[part] = text
		*list = parts
	} else {
		*a.at(field) = text
	}
	return a
}

// ofSupply reports whether a field is of the air behind the regulator.
func ofSupply(field string) bool {
	return slices.Index(jobOrder, field) >= slices.Index(jobOrder, FieldCompressor)
}

// nudge is one input on its way.
type nudge struct {
	c    *Catalogue
	in   Input
	sys  unit.System
	a    Answers // that work, whatever else was wrong in those given
	part int     // of the field in them
	r    *calc.Request
	// alone is a coat without its gun, or a gun without its coat.
	alone bool
}

// start finds answers that work to move the input in: those given, with what is wrong
// elsewhere replaced. False where it is the input itself that will not do.
func (n *nudge) start(a Answers, parts []Typed) bool {
	switch n.in.Field {
	case FieldCoat:
		_, known := n.c.entries.Gun.get(string(a.Gun))
		n.alone = !known
		a.Coat, a.Gun = n.c.pair("", a.Gun)
	case FieldGun:
		_, known := n.c.entries.Coat.get(string(a.Coat))
		n.alone = !known
		a.Coat, a.Gun = n.c.pair(a.Coat, "")
	case FieldRegulator, FieldRegulatorAt, FieldFilter, FieldCoupling, FieldGauge:
		a.Set(n.in.Field, "")
	}
	if n.mend(a) {
		return true
	}
	if len(parts) < 2 {
		return false
	}
	n.part = 0 // the others may be half typed
	return n.mend(put(a, n.in.Field, parts[n.in.Part:n.in.Part+1], 0, parts[n.in.Part]))
}

// mend makes answers work without changing the input's field.
func (n *nudge) mend(a Answers) bool {
	plain := n.c.only(Answers{}, "")
	for range jobOrder {
		r, wrong := n.c.workable(a, n.sys)
		switch wrong {
		case "":
			n.a, n.r = a, r
			return true
		case n.in.Field:
			return false
		case FieldCoat, FieldGun:
			a.Coat, a.Gun = plain.Coat, plain.Gun
		default:
			a.Set(wrong, plain.Field(wrong))
		}
	}
	return false
}

// workable is the request of answers, and the field of what keeps it from being solved.
func (c *Catalogue) workable(a Answers, sys unit.System) (*calc.Request, string) {
	r, faults := c.Resolve(a, sys)
	if len(faults) > 0 {
		return r, faults[0].Field
	}
	r.Swaps = nil
	_, err := calc.Solve(r)
	var p *calc.Problem
	switch {
	case errors.As(err, &p):
		return r, p.Field
	case err != nil:
		return r, FieldGun // what its parts make of it
	}
	return r, ""
}

// to is what the input's part becomes so many steps on, or as near to that as there is
// something to take.
func (n *nudge) to(part Typed, by int) (Typed, bool) {
	toward, steps := 1, by
	if by < 0 {
		toward, steps = -1, -by
	}
	if choices := n.c.Choices(n.in.Field); choices != nil {
		return n.choose(choices, string(part), toward, steps)
	}
	path, ok := n.path(part, toward)
	for ; ok && steps > 0; steps-- {
		if text := withPiece(n.in, part, path(steps)); n.takes(text) {
			return text, true
		}
	}
	return "", false
}

// choose goes along a list from where it stands, or from before its start, over what
// does not go with the other answers.
func (n *nudge) choose(choices []Item, from string, toward, steps int) (got Typed, ok bool) {
	at := slices.IndexFunc(choices, func(i Item) bool { return i.ID == from })
	for at += toward; at >= 0 && at < len(choices) && steps > 0; at += toward {
		if id := Typed(choices[at].ID); n.takes(id) {
			got, ok = id, true
			steps--
		}
	}
	return got, ok
}

// takes reports whether the catalogue takes the part so.
func (n *nudge) takes(text Typed) bool {
	a := put(n.a, n.in.Field, n.c.parts(&n.a, n.in.Field), n.part, text)
	switch {
	case n.alone && n.in.Field == FieldCoat:
		_, a.Gun = n.c.pair(text, "")
	case n.alone:
		a.Coat, _ = n.c.pair("", text)
	}
	r, wrong := n.c.workable(a, n.sys)
	return wrong == "" && (!ofSupply(n.in.Field) || supplies(r))
}

// supplies reports whether the air behind the regulator can be worked with by itself:
// where the line is too tight for the gun, solving does not look at it.
func supplies(r *calc.Request) bool {
	sys := r.Shop.System
	sys.RatedInlet, sys.Inlet = supply.SCFMInlet, supply.SCFMInlet
	sys.Receiver.Temp = r.Shop.ReceiverTemp
	_, err := supply.Check(sys, 0, 0, r.Shop.Spraying)
	damp := supply.Damp{
		Inlet: sys.Inlet, Humidity: r.Day.Humidity, Receiver: sys.CutIn,
		ReceiverTemp: r.Shop.ReceiverTemp, Main: r.Shop.LineTemp, Hose: r.Day.Air,
	}
	_, errWater := damp.Follow()
	return err == nil && errWater == nil
}
