package shop

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"time"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/presets/question"
)

// Lines is what their own readings left of lines, each worked once. The zero value is ready, and
// several may use it at once.
type Lines struct {
	lock sync.Mutex
	left map[string]*calc.Learnt // nil of one that was not read
}

// keptLines is how many are kept at once: a batch may name anything.
const keptLines = 100

// Kept is the readings that may tell of a plan's line, and what is needed to read them.
type Kept struct {
	Own  []*GaugeReading // of the booth, in order
	Away []*GaugeReading // of other booths, in order
	// Gun finds a gun that the line was read with, and Away is read with Plan, a plan in a booth with a
	// gun, as its line is described; nil where that cannot be.
	Gun  func(id string) *learn.OtherGun
	Plan func(booth, gun string) *calc.Request
}

// Of is what readings left of a plan's line, as it is described; nil where none of them is of it.
func (l *Lines) Of(r *question.Reader, described *calc.Request, k *Kept) *calc.Learnt {
	if len(k.Own)+len(k.Away) == 0 {
		return nil
	}
	l.lock.Lock()
	defer l.lock.Unlock()
	key := k.key(described)
	x, known := l.left[key]
	if !known {
		x = Left(k.Request(r, described))
		l.keep(key, x)
	}
	return x
}

// Known is what is known to be left of a line; false where that was not worked yet.
func (l *Lines) Known(described *calc.Request, k *Kept) (x *calc.Learnt, known bool) {
	l.lock.Lock()
	defer l.lock.Unlock()
	x, known = l.left[k.key(described)]
	return x, known
}

// Keep keeps what was worked of a line.
func (l *Lines) Keep(described *calc.Request, k *Kept, x *calc.Learnt) {
	l.lock.Lock()
	defer l.lock.Unlock()
	l.keep(k.key(described), x)
}

func (l *Lines) keep(key string, x *calc.Learnt) {
	if l.left == nil || len(l.left) == keptLines {
		l.left = map[string]*calc.Learnt{}
	}
	l.left[key] = x
}

// key tells lines apart by all that what is left of them goes by: their parts and gun, the place, and
// the readings.
func (k *Kept) key(q *calc.Request) string {
	var key strings.Builder
	fmt.Fprint(&key, LineOf(q), partsOf(q.Line), gunOf(q), q.Gun.Valve.Shape, q.Gauge, q.Day.Altitude)
	for _, x := range k.Own {
		fmt.Fprint(&key, "\n", x.At, x.Gun, x.Line, x.Text, x.Replaced)
	}
	for _, x := range k.Away {
		if x.Gun == q.Gun.ID {
			fmt.Fprint(&key, "\n", x.At, x.Booth, x.Line, x.Text, x.Replaced)
		}
	}
	return key.String()
}

// Request is what readings say of a plan's line, as it is described.
func (k *Kept) Request(r *question.Reader, described *calc.Request) *learn.Request {
	q := &learn.Request{Plan: described, Draws: learn.Draws, Seed: question.LearnSeed}
	q.Readings, q.Others = History(r, described, described.Gun.ID, k.Own, k.Gun)
	q.Elsewhere = k.elsewhere(r, described.Gun.ID)
	return q
}

// elsewhere is what a gun was read on in other booths since its parts were last replaced: of each
// booth's line as it stands, its parts as they are.
func (k *Kept) elsewhere(r *question.Reader, gun string) (all []learn.OtherLine) {
	var since time.Time
	booths := map[string][]*GaugeReading{}
	for _, x := range slices.Concat(k.Own, k.Away) {
		if x.Gun == gun && x.Replaced == ReplacedGun && x.At.After(since) {
			since = x.At
		}
	}
	for _, x := range k.Away {
		if x.Gun == gun && x.At.After(since) {
			booths[x.Booth] = append(booths[x.Booth], x)
		}
	}
	for _, booth := range slices.Sorted(maps.Keys(booths)) {
		plan := k.Plan(booth, gun)
		if plan == nil || plan.RegulatorAt() == calc.Nowhere || len(all) == learn.MostLines {
			continue
		}
		taken, _ := History(r, plan, gun, booths[booth], func(string) *learn.OtherGun { return nil })
		if other := learn.Elsewhere(plan, taken); len(other.Readings) > 0 {
			all = append(all, other)
		}
	}
	return all
}

// Left works such a request; nil where nothing was read.
func Left(q *learn.Request) *calc.Learnt {
	if len(q.Readings)+len(q.Elsewhere) == 0 {
		return nil
	}
	x, err := learn.Left(q)
	if err != nil {
		return nil // nothing can be learnt of such a line: whoever asks for that is told why
	}
	return x
}
