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
	// Draws is how many lines are drawn, above 0, and Seed what by.
	Draws int
	Seed  uint64
}

// Taken is a reading of the line as it stands but for one piece of it, by its id, if any: one
// that was bypassed, or that a spare one like it took the place of.
type Taken struct {
	Reading
	Without, Swapped string
	// Was is how often each piece was replaced since.
	Was map[string]int
}

// Answer is the answer to a Request.
type Answer struct {
	Setup  *calc.Setup
	Pieces []Piece
	// AsDescribed: no reading tells of the line yet. Settings, Foretold and what Steps are to show
	// are then those of a line in which nothing is odd.
	AsDescribed bool
	// Taken is how sure the plan was of its own, nothing odd; nil where the supply is short.
	Taken    *spread.Spread
	Settings Settings
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
	of := Line{Request: q.Plan, Setup: s, Others: q.Others}
	var spares map[string]int
	of.Gone, of.Spare, spares = q.spares()
	l, err := New(of, q.Draws, q.Seed)
	if err != nil {
		return nil, &calc.Problem{Field: "reading", ID: "learn-too-many", Figures: calc.Figures{calc.CountFigure("most", MostPieces)}}
	}
	var foretold []spread.GaugeRange
	var turned []Turning
	for i := range q.Readings {
		turned = append(turned, l.known().turned(&q.Readings[i]))
		foretold = append(foretold, l.known().foretell(l.as(&q.Readings[i], spares)))
		if err := l.Add(l.as(&q.Readings[i], spares)); err != nil {
			return nil, &calc.Problem{Field: "reading", ID: "want-reading"}
		}
	}
	a := &Answer{Setup: s, Foretold: foretold, Turned: turned, Pieces: l.pieces, Taken: spread.Of(q.Plan, s), AsDescribed: l.unpulled(), Settings: l.known().Settings(), Finding: l.Find(), Contradictions: l.Contradictions(), Counting: l.Counting()}
	a.Wall = l.Reads(WallGauge)
	if q.Plan.Gauge != calc.NoGauge {
		a.Gun = l.Reads(GunGauge)
	}
	for _, k := range a.Found {
		a.Bores = append(a.Bores, l.Bore(k))
	}
	a.Turning = l.known().turning(q.Marked(a.Settings.Middle))
	a.Seeks, a.Doubt = len(a.Untold) > 0, l.Doubt()
	for _, w := range l.Next(l.Options()) {
		if w.Kind == CompareStill || w.Kind == ReadOpen {
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
		swapped := slices.ContainsFunc(q.Readings, func(x Taken) bool { return x.Swapped == id })
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
		case id == x.Without:
		case id == x.Swapped:
			r.Pieces = append(r.Pieces, first+spares[replaced(id, 0)])
		case x.Was[id] > 0:
			r.Pieces = append(r.Pieces, first+spares[replaced(id, x.Was[id])])
		default:
			r.Pieces = append(r.Pieces, k)
		}
	}
	return r
}
