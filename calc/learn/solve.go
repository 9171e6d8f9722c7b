package learn

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/spread"
	"boothset/calc/unit"
)

// Request is readings of the line of a plan.
type Request struct {
	Plan *calc.Request
	// Others are other guns of the readings: number 1 and on.
	Others   []OtherGun
	Readings []Taken
	// Elsewhere is what the plan's gun was read on besides.
	Elsewhere []OtherLine
	// Draws is how many lines are drawn, above 0, and Seed what by.
	Draws int
	Seed  uint64
}

// Taken is a reading of the line as it stands but for pieces of it, by their ids: those that were
// bypassed, and those that spare ones like them took the place of.
type Taken struct {
	Reading
	Without, Swapped []string
	// Was is how often each piece was replaced since.
	Was map[string]int
}

// Answer is the answer to a Request.
type Answer struct {
	// Setup is what the line asks for as it is described, and Taken how sure that was, nothing odd;
	// nil where the supply is short.
	Setup  *calc.Setup
	Taken  *spread.Spread
	Pieces []Piece
	// AsDescribed: no reading tells of the line yet, or none counts since they contradict. Sure, Gets, Foretold and what Steps are to show
	// are then those of a line in which nothing is odd.
	AsDescribed bool
	// Since is the plan on the line as it was read, as every later plan has it, After what that asks
	// for, and Sure how sure it is.
	// Of a supply that is short of it Sure is that of what Setup advises.
	Since *calc.Request
	After *calc.Setup
	Sure  *spread.Spread
	// Set is what the wall's gauge is to be set to since, flowing: as After has it, or where the supply
	// is short of that, what the line asks for.
	Set unit.Gauge
	// Gets is what the gun gets, its valve wide open and the wall's gauge at what is advised since.
	Gets spread.GaugeRange
	// Wall and Gun are what their gauges read too high, Pa, 80 % sure.
	Wall, Gun spread.Range
	Finding
	Bores          []unit.Length // of each of Found: see Learner.Bore
	Contradictions []Contradiction
	// Turning is the inlet valve as it is to be set, and Turned that of each reading, before it was
	// taken, in which it was set so.
	Turning Turning
	Turned  []Turning
	// Foretold is what the last gauge of each reading was to show by what was known before it; of
	// one without the wall's gauge nothing.
	Foretold []spread.GaugeRange
	// Next is what could be read next, the one first that tells most for its minutes: of what
	// is odd where Seeks, else of the wall's setting.
	Next  []Worth
	Seeks bool
	// Doubt is how much there is to find out about which pieces are odd, in bits: see Settles.
	Doubt float64
	// Steps are the gauges compared and the valve wide open, with what they are to show.
	Steps    []Worth
	Counting float64 // draws that count
}

const (
	// leastNarrows and leastTells are what a reading must be expected to tell to be taken.
	leastNarrows = unit.Drop(0.1 * unit.PascalPerPSI)
	leastTells   = 0.05 // bits
)

// Solve works a request. It fails, with a *calc.Problem, where the plan does, or where its line
// cannot be learnt of.
func Solve(q *Request) (*Answer, error) {
	s, err := calc.Solve(q.Plan)
	if err != nil {
		return nil, err
	}
	if p := q.problem(s); p != nil {
		return nil, p
	}
	a := &Answer{Setup: s}
	l, err := q.learner(s, func(before *Learner, reading int, x Reading) {
		before = before.known()
		a.Turned = append(a.Turned, before.turned(&q.Readings[reading]))
		a.Foretold = append(a.Foretold, before.foretell(x))
	})
	if err != nil {
		return nil, err
	}
	if a.Contradictions = l.Contradictions(); len(a.Contradictions) > 0 { // none of them counts
		l = drawnFrom(l.model, q.Draws, q.Seed)
	}
	a.Pieces, a.Taken, a.AsDescribed, a.Counting = l.pieces, spread.Of(q.Plan, s), l.unpulled(), l.Counting()
	a.Finding = l.Find()
	if err := a.settle(l, q); err != nil {
		return nil, err
	}
	a.Wall = l.Reads(WallGauge)
	if q.Plan.Gauge != calc.NoGauge {
		a.Gun = l.Reads(GunGauge)
	}
	for _, k := range a.Found {
		a.Bores = append(a.Bores, l.Bore(k))
	}
	a.Turning = a.turning(q.Plan)
	a.Seeks, a.Doubt = len(a.Untold) > 0, l.Doubt()
	for _, w := range l.Next(l.Options()) {
		if w.Odd.None() && (w.Kind == CompareStill || w.Kind == ReadOpen) {
			step := w
			if a.AsDescribed {
				step.Expected = l.known().Foretell(w.Reading)
			}
			a.Steps = append(a.Steps, step)
		}
		if a.Seeks && w.Tells >= leastTells || !a.Seeks && w.Narrows >= leastNarrows {
			a.Next = append(a.Next, w)
		}
	}
	worth := func(w Worth) float64 {
		if a.Seeks {
			return w.Tells / w.Minutes
		}
		return float64(w.Narrows) / w.Minutes
	}
	slices.SortStableFunc(a.Next, func(x, y Worth) int { return cmp.Compare(worth(y), worth(x)) })
	return a, nil
}

// learner is a learner that took the readings; before is told of each, if it is not nil, before it
// is taken.
func (q *Request) learner(s *calc.Setup, before func(l *Learner, reading int, x Reading)) (*Learner, error) {
	of := Line{Request: q.Plan, Setup: s, Others: q.Others, Elsewhere: q.Elsewhere}
	var spares map[string]int
	of.Gone, of.Spare, spares = q.spares()
	l, err := New(of, q.Draws, q.Seed)
	if err != nil {
		return nil, &calc.Problem{Field: "reading", ID: "learn-too-many", Figures: calc.Figures{calc.CountFigure("most", MostPieces)}}
	}
	if err := l.readElsewhere(); err != nil {
		return nil, &calc.Problem{Field: "reading", ID: "want-reading"}
	}
	for i := range q.Readings {
		x := l.as(&q.Readings[i], spares)
		if before != nil {
			before(l, i, x)
		}
		if err := l.Add(x); err != nil {
			return nil, &calc.Problem{Field: "reading", ID: "want-reading"}
		}
	}
	return l, nil
}

// settle works the plan on the line as it was read.
func (a *Answer) settle(l *Learner, q *Request) (err error) {
	if len(l.readings) == 0 {
		a.Since, a.After, a.Sure, a.Set = q.Plan, a.Setup, a.Taken, a.Setup.Wall.Flowing
		a.Gets = l.gets(l.known().asRead(), a.Setup)
		return nil
	}
	a.Since = l.left(a.Finding, nil).Of(q.Plan)
	if a.After, err = calc.Solve(a.Since); err != nil {
		return err
	}
	advised := a.After
	if a.After.Short.Is {
		advised = a.Setup
	}
	a.Sure, a.Gets = spread.Of(a.Since, advised), l.gets(a.Since, advised)
	if a.Set = a.After.Wall.Flowing; a.After.Short.Is {
		a.Set = q.Marked(a.Sure.Middle)
	}
	return nil
}

// Marked is a pressure to set, at the nearest mark of the wall's gauge.
func (q *Request) Marked(p unit.Gauge) unit.Gauge {
	mark := float64(q.Plan.Mark)
	return unit.Gauge(math.Round(float64(p)/mark) * mark)
}

// foretell is Foretell for a reading that may be without the wall's gauge.
func (l *Learner) foretell(x Reading) (shows spread.GaugeRange) {
	if len(x.Shows) > 1 {
		if t := l.takes(x); t.seen[0].quantity == atWall {
			return l.Foretell(x)
		}
	}
	return shows
}

// PieceIDs are the ids of the parts of a plan's line downstream of its wall's regulator, in
// order: the kind of each, with its number where there are several.
func PieceIDs(r *calc.Request) (ids []string) {
	wall, _ := r.Regulators()
	count := map[line.Kind]int{}
	for _, p := range r.Line[wall+1:] {
		count[p.Kind]++
	}
	seen := map[line.Kind]int{}
	for _, p := range r.Line[wall+1:] {
		id := p.Kind.String()
		if seen[p.Kind]++; count[p.Kind] > 1 {
			id += "-" + strconv.Itoa(seen[p.Kind])
		}
		ids = append(ids, id)
	}
	return ids
}

// problem is what is wrong with a plan to learn of, nil where nothing is.
func (q *Request) problem(s *calc.Setup) *calc.Problem {
	switch {
	case q.Plan.RegulatorAt() == calc.Nowhere:
		return &calc.Problem{Field: "regulator", ID: "learn-no-regulator"}
	case s.Short.Is:
		return &calc.Problem{Field: "supply", ID: "learn-short"}
	}
	return nil
}

// spares are the parts that were replaced, and those that can take the place of others: one like
// each hose, and one like each part that was swapped; with their numbers among both by the ids of
// what they are like and how often that was replaced since, 0 of spare ones.
func (q *Request) spares() (gone, spare []line.Part, numbers map[string]int) {
	numbers = map[string]int{}
	wall, _ := q.Plan.Regulators()
	ids := PieceIDs(q.Plan)
	for i := range q.Readings {
		for k, id := range ids {
			if n := q.Readings[i].Was[id]; n > 0 {
				key := replaced(id, n)
				if _, is := numbers[key]; !is {
					numbers[key] = len(gone)
					gone = append(gone, q.Plan.Line[wall+1+k])
				}
			}
		}
	}
	for k, id := range ids {
		part := q.Plan.Line[wall+1+k]
		swapped := slices.ContainsFunc(q.Readings, func(x Taken) bool { return slices.Contains(x.Swapped, id) })
		if part.Kind == line.HoseKind || swapped {
			numbers[replaced(id, 0)] = len(gone) + len(spare)
			spare = append(spare, part)
		}
	}
	return gone, spare, numbers
}

// replaced is what a piece is counted as that was replaced so often since.
func replaced(id string, times int) string { return id + "~" + strconv.Itoa(times) }

// as is a reading by the numbers of pieces.
func (l *Learner) as(x *Taken, spares map[string]int) Reading {
	r := x.Reading
	first := len(l.pieces) - len(l.Gone) - len(l.Spare)
	r.Pieces = []int{}
	for _, k := range l.stands {
		id := l.pieces[k].ID
		switch {
		case slices.Contains(x.Without, id):
		case slices.Contains(x.Swapped, id):
			r.Pieces = append(r.Pieces, first+spares[replaced(id, 0)])
		case x.Was[id] > 0:
			r.Pieces = append(r.Pieces, first+spares[replaced(id, x.Was[id])])
		default:
			r.Pieces = append(r.Pieces, k)
		}
	}
	return r
}
