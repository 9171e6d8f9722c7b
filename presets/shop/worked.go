package shop

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Worked is what a setting was worked from: the line and the gun with their figures, the day,
// and what the answer then was.
type Worked struct {
	Air      unit.Temp
	Humidity float64
	Answer   Values
	Line     []WorkedPart
	Gun      WorkedPart
}

// WorkedPart is a part of the line, or the gun, with the figures that the answer went by, in
// the units of the catalogue's files.
type WorkedPart struct {
	Kind    string    `toml:"kind"`
	Entry   string    `toml:"entry"`
	Figures []float64 `toml:"figures"`
}

// keyGun is the kind of what stands for the gun, and its key in a setting.
const keyGun = "gun"

type workedFile struct {
	Temp     string       `toml:"temp,omitempty"`
	Humidity string       `toml:"humidity,omitempty"`
	Answer   wireValues   `toml:"answer"`
	Gun      WorkedPart   `toml:"gun"`
	Line     []WorkedPart `toml:"line"`
}

// WorkedOf is what a request and its answer were worked from, its line as it is described.
func WorkedOf(q *calc.Request, s *calc.Setup) Worked {
	described := q.AsDescribed()
	return Worked{Air: q.Day.Air, Humidity: q.Day.Humidity, Answer: Answered(q, s), Line: partsOf(described.Line), Gun: gunOf(described)}
}

// Answered is the values of an answer.
func Answered(q *calc.Request, s *calc.Setup) Values {
	return Values{Supply: q.Supply, Wall: s.Wall.Flowing, Gun: s.Working.Reads, Flow: s.Working.Flow, Distance: s.Distance.Target, Opening: s.Valve.Opening}
}

func partsOf(parts []line.Part) []WorkedPart {
	all := make([]WorkedPart, len(parts))
	for i := range parts {
		p := &parts[i]
		all[i] = WorkedPart{Kind: p.Kind.String(), Entry: p.Entry, Figures: []float64{digits(float64(p.Restriction.C)), digits(p.Restriction.B)}}
		switch p.Kind {
		case line.RegulatorKind:
			all[i].Figures = append(all[i].Figures, digits(p.Droop), digits(float64(p.LockUp)))
		case line.HoseKind:
			end := p.Hose.End
			all[i].Figures = []float64{digits(float64(p.Hose.Length)), digits(float64(p.Hose.Bore)), digits(float64(end.C)), digits(end.B)}
		}
	}
	return all
}

func gunOf(q *calc.Request) WorkedPart {
	g, v := &q.Gun, &q.Gun.Valve
	return WorkedPart{Kind: keyGun, Entry: g.ID, Figures: []float64{
		digits(float64(g.Stamp.Inlet)), digits(float64(g.Stamp.Flow)), digits(float64(g.Stamp.Cap)), digits(float64(v.Full.C)), digits(v.Full.B), digits(v.Turns),
	}}
}

// digits is a figure to six digits, so that the same one is the same on each machine.
func digits(v float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	scale := math.Pow(10, 5-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*scale) / scale
}

// Change is what has changed since a setting was agreed.
type Change struct {
	Was, Is WorkedPart // one without a kind is not there
	// Values: it is the same part, and the catalogue has other figures of it.
	Values bool
}

// Since is what of the line and the gun of a request has changed since the setting was worked
// out. A change of a part makes it void until it is agreed anew; one of the catalogue's
// figures alone only marks it as worked from older values. One for any gun goes by the line
// alone, and one that does not say what it was worked from by nothing.
func (s *Setting) Since(q *calc.Request) (changes []Change) {
	described := q.AsDescribed()
	was, is := slices.Clone(s.Worked.Line), partsOf(described.Line)
	if len(was) == 0 {
		return nil
	}
	if s.Gun != Any {
		was, is = append(was, s.Worked.Gun), append(is, gunOf(described))
	}
	for len(was) > 0 && len(is) > 0 && same(was[0], is[0]) {
		changes = append(changes, figures(was[0], is[0])...)
		was, is = was[1:], is[1:]
	}
	var tail []Change
	for len(was) > 0 && len(is) > 0 && same(was[len(was)-1], is[len(is)-1]) {
		tail = append(figures(was[len(was)-1], is[len(is)-1]), tail...)
		was, is = was[:len(was)-1], is[:len(is)-1]
	}
	for i := range max(len(was), len(is)) {
		var c Change
		if i < len(was) {
			c.Was = was[i]
		}
		if i < len(is) {
			c.Is = is[i]
		}
		changes = append(changes, c)
	}
	return append(changes, tail...)
}

// Void reports whether changes make a setting void.
func Void(changes []Change) bool {
	return slices.ContainsFunc(changes, func(c Change) bool { return !c.Values })
}

// same reports whether two parts are one: a hose goes by its length and bore, however they were
// written, a gun by its stamp too, all else by its entry.
func same(a, b WorkedPart) bool {
	const size, stamp = 2, 3 // of a hose; a gun's inlet, flow and cap
	first := func(n int) bool {
		return len(a.Figures) >= n && len(b.Figures) >= n && slices.Equal(a.Figures[:n], b.Figures[:n])
	}
	switch {
	case a.Kind != b.Kind:
		return false
	case a.Kind == line.HoseKind.String():
		return first(size)
	case a.Kind == keyGun:
		return a.Entry == b.Entry && first(stamp)
	}
	return a.Entry == b.Entry
}

func figures(was, is WorkedPart) []Change {
	if slices.Equal(was.Figures, is.Figures) {
		return nil
	}
	return []Change{{was, is, true}}
}

// read is the file's as values; key is the first that will not do.
func (w *workedFile) read() (k Worked, key, given string) {
	if w.Temp != "" {
		t, err := read(w.Temp, unit.Temperature)
		if k.Air = unit.Temp(t); err != nil {
			return k, "temp", w.Temp
		}
	}
	if w.Humidity != "" {
		h, err := read(w.Humidity, unit.Share)
		if k.Humidity = h; err != nil {
			return k, "humidity", w.Humidity
		}
	}
	k.Line, k.Gun = w.Line, w.Gun
	for i := range k.Line {
		k.Line[i].clean()
	}
	k.Gun.clean()
	k.Answer, key, given = valuesOf(&w.Answer)
	return k, key, given
}

func (p *WorkedPart) clean() {
	p.Kind, p.Entry = shownName(p.Kind), shownName(p.Entry)
}

// wire is what files hold of it, nil of nothing.
func (w *Worked) wire(sys unit.System) *workedFile {
	if len(w.Line) == 0 {
		return nil
	}
	file := &workedFile{Answer: w.Answer.wire(sys), Gun: w.Gun, Line: w.Line}
	if w.Air > 0 {
		file.Temp, file.Humidity = unit.Temperature.Text(sys, float64(w.Air), unit.Usual), unit.Share.Text(sys, w.Humidity, unit.Usual)
	}
	return file
}
