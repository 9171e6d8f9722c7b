package question

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/gun"
	"boothset/calc/learn"
	"boothset/calc/unit"
)

// GaugeReading is what the gauges showed at one time, such as "open wall=31psi gun=24psi".
var GaugeReading = &Field{Name: "reading", Read: gaugeReading, Repeats: true, Want: "want-reading", Default: LeftOut}

// Learn asks what readings say of the line of a plan.
var Learn = &Question{Name: "learn", Fields: append([]Row{{Field: GaugeReading}, {Field: Draws}}, Plan.Fields...)}

// Draws is how many lines are drawn: more tell the same a little finer.
var Draws = &Field{Name: "draws", Read: whole, Bounds: [2]*calc.Bound{&drawsBound}, Want: "want-draws", Default: Fixed}

var drawsBound = calc.Bound{ID: "outside", Low: 1000, High: 100_000, Kind: calc.FigureCount}

// LearnSeed draws the lines: the same every time, so that the same readings say the same.
const LearnSeed = 1

// Seen is a reading as it was typed.
type Seen struct {
	Still            bool
	Turns            float64 // of the knob as it is counted, where HasTurns
	HasTurns         bool
	Without, Swapped []string // ids of parts of the line
	Shows            []learn.Shown
}

// The words of a reading.
const (
	readStill   = "still"
	readOpen    = "open"
	readBefore  = "before"
	readTurns   = "turns"
	readWithout = "without"
	readSwapped = "swapped"
)

// readGauges are what the gauges are called in a reading.
var readGauges = map[string]learn.Gauge{"wall": learn.WallGauge, "gun": learn.GunGauge, "foot": learn.FootGauge, "cap": learn.CapGauge}

var readKey = regexp.MustCompile(`[a-z]+\s*=`)

// gaugeReading reads a reading: still, or open where that is left out, and then each gauge with
// its pressure, and what was done to the line.
func gaugeReading(r *Reader, f *Field, t string, sys unit.System) Value {
	refuse := func(id string, figures ...calc.Figure) Value { return r.wanted(f, t, sys, id, figures...) }
	lower := strings.ToLower(t)
	keys := readKey.FindAllStringIndex(lower, -1)
	if len(keys) == 0 {
		return refuse(f.Want)
	}
	seen := &Seen{}
	switch strings.TrimSpace(lower[:keys[0][0]]) {
	case readStill:
		seen.Still = true
	case readOpen, "":
	default:
		return refuse(f.Want)
	}
	v := Value{ID: readOpen, Seen: seen}
	for i, at := range keys {
		end := len(lower)
		if i+1 < len(keys) {
			end = keys[i+1][0]
		}
		key, text := strings.TrimSpace(strings.TrimSuffix(lower[at[0]:at[1]], "=")), strings.TrimSpace(lower[at[1]:end])
		switch gauge, is := readGauges[key]; {
		case is || key == readBefore:
			q, err := unit.Pressure.Read(text, sys)
			if err != nil {
				return r.refused(f, t, sys, err)
			}
			if fault := r.twoWays(f, 0, t, text, sys, q); fault != nil {
				return Value{Fault: fault}
			}
			if p := unit.Gauge(q.SI); p < 0 || p > calc.TopSupply {
				return refuse("want-shown", calc.BriefFigure("most", calc.FigureGauge, float64(calc.TopSupply)))
			}
			v.Bare[0] = v.Bare[0] || q.Bare
			seen.Shows = append(seen.Shows, learn.Shown{Gauge: gauge, Pressure: unit.Gauge(q.SI), Before: key == readBefore})
		case key == readTurns:
			turns, err := unit.Turns.Read(text, unit.US) // the same in any
			if err != nil || turns.SI < 0 {
				return refuse(f.Want)
			}
			seen.Turns, seen.HasTurns = turns.SI, true
		case key == readWithout:
			seen.Without = append(seen.Without, text)
		case key == readSwapped:
			seen.Swapped = append(seen.Swapped, text)
		default:
			return refuse(f.Want)
		}
	}
	if seen.Still {
		v.ID = readStill
	}
	if !seen.tells() {
		return refuse("want-two-gauges")
	}
	return v
}

// tells is whether a reading tells anything: of two gauges at least, none of them twice, nor a
// part, and with no air moving, when none comes to the cap, of the line as it stands.
func (s *Seen) tells() bool {
	for i, x := range s.Shows {
		twice := slices.ContainsFunc(s.Shows[:i], func(o learn.Shown) bool { return o.Gauge == x.Gauge && o.Before == x.Before })
		if twice || s.Still && (x.Before || x.Gauge == learn.CapGauge) {
			return false
		}
	}
	changed := slices.Concat(s.Without, s.Swapped)
	for i, id := range changed {
		if slices.Contains(changed[:i], id) {
			return false
		}
	}
	return len(s.Shows) > 1 && !(s.Still && (s.HasTurns || changed != nil))
}

// Learn turns answers into a complete request, as Plan does.
func (r *Reader) Learn(a Answers, sys unit.System) (q learn.Request, faults []*Fault) {
	plan, faults := r.Described(a.Of(Plan), sys)
	q, more := r.LearnOf(plan, a.Get(GaugeReading), sys)
	if v := (&resolver{Reader: r, a: a, sys: sys}); v.has(Draws) {
		q.Draws = int(bounded[float64](v, Draws))
		more = append(more, v.faults...)
	}
	return q, append(faults, more...)
}

// LearnOf is the request of readings of a plan's line, as it is described.
func (r *Reader) LearnOf(plan *calc.Request, readings []Value, sys unit.System) (q learn.Request, faults []*Fault) {
	q = learn.Request{Plan: plan, Draws: learn.Draws, Seed: LearnSeed}
	v := &resolver{Reader: r, sys: sys}
	for _, x := range readings {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
			continue
		}
		if f := v.reading(q.Plan, &x); f != nil {
			v.faults = append(v.faults, f)
			continue
		}
		q.Readings = append(q.Readings, taken(&q.Plan.Gun.Valve, x.Seen))
	}
	return q, v.faults
}

// ShownPressure is what one gauge showed, for readings that are asked for gauge by gauge.
func ShownPressure(name string) *Field {
	return &Field{Name: name, Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&shownBound}, Default: LeftOut}
}

// shownBound is what a gauge may show.
var shownBound = calc.Bound{ID: "outside", High: float64(calc.TopSupply), Kind: calc.FigureGauge}

// TakenAs is a reading that was taken as an option says, of the line of pieces, with what each
// of its gauges showed.
func TakenAs(o *learn.Option, pieces []learn.Piece, valve *gun.Valve, shown []unit.Gauge) Value {
	s := &Seen{Still: o.Still}
	v := Value{ID: readOpen, Seen: s}
	switch o.Kind {
	case learn.CompareStill:
		v.ID = readStill
	case learn.ReadSet:
		s.Turns, s.HasTurns = (1-o.Opening)*valve.Turns, true
		if valve.FromShut {
			s.Turns = o.Opening * valve.Turns
		}
	}
	for _, k := range o.Without {
		s.Without = append(s.Without, pieces[k].ID)
	}
	for _, k := range o.Swapped {
		s.Swapped = append(s.Swapped, pieces[k].ID)
	}
	for i, p := range shown {
		s.Shows = append(s.Shows, learn.Shown{Gauge: o.Shows[i].Gauge, Pressure: p})
	}
	return v
}

// reading is what is wrong with a reading of a plan's line, nil where nothing is.
func (v *resolver) reading(plan *calc.Request, x *Value) *Fault {
	fault := func(id string, f ...calc.Figure) *Fault { return v.Fault(GaugeReading.Name, x.Text, v.sys, id, f...) }
	s, ids := x.Seen, learn.PieceIDs(plan)
	for _, piece := range slices.Concat(s.Without, s.Swapped) {
		if !slices.Contains(ids, piece) {
			return fault("learn-no-piece", v.names(ids))
		}
	}
	if plan.Gauge == calc.NoGauge && slices.ContainsFunc(s.Shows, func(o learn.Shown) bool { return o.Gauge == learn.GunGauge }) {
		return fault("learn-no-gauge")
	}
	if !s.Still && slices.ContainsFunc(s.Shows, func(o learn.Shown) bool { return o.Gauge == learn.WallGauge && o.Pressure == 0 }) {
		return fault("learn-wall-zero")
	}
	if valve := &plan.Gun.Valve; s.HasTurns && (valve.None || opening(valve, s) <= 0) {
		return fault("learn-turns", calc.FigureOf("turns", calc.FigureTurns, valve.Turns))
	}
	return nil
}

// opening is how far a valve is open, 0..1, 0 or less where the turns shut it.
func opening(v *gun.Valve, s *Seen) float64 {
	if !s.HasTurns {
		return 1
	}
	return OpeningAt(v, s.Turns)
}

// OpeningAt is how far a valve is open, to 1, with its knob turned as it is counted; 0 or less where
// that shuts it.
func OpeningAt(v *gun.Valve, turns float64) float64 {
	if v.FromShut {
		return min(turns/v.Turns, 1)
	}
	return 1 - turns/v.Turns
}

// KnobTurns is how far the knob of a valve was turned, as it is counted: so far that some air
// passes, an eighth of a turn from shut at the least.
func KnobTurns(v *gun.Valve) *Field {
	const least = 1. / unit.TurnParts
	within := calc.Bound{ID: "outside", High: v.Turns - least, Kind: calc.FigureTurns}
	if v.FromShut {
		within.Low, within.High = least, v.Turns
	}
	return &Field{Name: "knob-turns", Read: amount, Of: [2]*unit.Quantity{unit.Turns}, Bounds: [2]*calc.Bound{&within}, Default: LeftOut}
}

// Taken is a reading of a plan's line that was kept as text, with the gun of a number; false where
// it will not do on that line.
func (r *Reader) Taken(plan *calc.Request, text string, gun int) (t learn.Taken, ok bool) {
	x := r.Read(GaugeReading, text, unit.Named)
	v := &resolver{Reader: r, sys: unit.US}
	if x.Fault != nil || v.reading(plan, &x) != nil {
		return t, false
	}
	t = taken(&plan.Gun.Valve, x.Seen)
	t.Gun = gun
	for i := range t.Shows {
		if t.Shows[i].Gauge == learn.GunGauge {
			t.Shows[i].Gauge = learn.OfGun(gun)
		}
	}
	return t, true
}

// Text is the reading as it may be typed, with units.
func (s *Seen) Text(sys unit.System) string {
	const decimals = 2 // of three a point could mark thousands
	words := []string{readOpen}
	if s.Still {
		words[0] = readStill
	}
	for _, x := range s.Shows {
		name := readBefore
		for gauge, of := range readGauges {
			if of == x.Gauge && !x.Before {
				name = gauge
			}
		}
		words = append(words, name+"="+unit.Pressure.Text(sys, float64(x.Pressure), decimals))
	}
	if s.HasTurns {
		words = append(words, readTurns+"="+strconv.FormatFloat(s.Turns, 'g', 6, 64))
	}
	for _, piece := range s.Without {
		words = append(words, readWithout+"="+piece)
	}
	for _, piece := range s.Swapped {
		words = append(words, readSwapped+"="+piece)
	}
	return strings.Join(words, " ")
}

func taken(v *gun.Valve, s *Seen) learn.Taken {
	return learn.Taken{
		Reading: learn.Reading{Still: s.Still, Opening: opening(v, s), Shows: s.Shows},
		Without: s.Without, Swapped: s.Swapped,
	}
}
