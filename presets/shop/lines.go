package shop

import (
	"fmt"
	"strings"
	"sync"

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

// Of is what readings left of a plan's line, as it is described; nil where none of them is of it.
// The reader finds the guns of them, and other those that are not the plan's: see History.
func (l *Lines) Of(r *question.Reader, described *calc.Request, all []*GaugeReading, other func(id string) *learn.OtherGun) *calc.Learnt {
	if len(all) == 0 {
		return nil
	}
	l.lock.Lock()
	defer l.lock.Unlock()
	key := lineKey(described, all)
	x, known := l.left[key]
	if !known {
		x = Left(LineRequest(r, described, all, other))
		l.keep(key, x)
	}
	return x
}

// Known is what is known to be left of a line; false where that was not worked yet.
func (l *Lines) Known(described *calc.Request, all []*GaugeReading) (x *calc.Learnt, known bool) {
	l.lock.Lock()
	defer l.lock.Unlock()
	x, known = l.left[lineKey(described, all)]
	return x, known
}

// Keep keeps what was worked of a line.
func (l *Lines) Keep(described *calc.Request, all []*GaugeReading, x *calc.Learnt) {
	l.lock.Lock()
	defer l.lock.Unlock()
	l.keep(lineKey(described, all), x)
}

func (l *Lines) keep(key string, x *calc.Learnt) {
	if l.left == nil || len(l.left) == keptLines {
		l.left = map[string]*calc.Learnt{}
	}
	l.left[key] = x
}

// lineKey tells lines apart by all that what is left of them goes by: their parts and gun, the
// place, and the readings.
func lineKey(q *calc.Request, all []*GaugeReading) string {
	var key strings.Builder
	fmt.Fprint(&key, LineOf(q), partsOf(q.Line), gunOf(q), q.Gun.Valve.Shape, q.Gauge, q.Day.Altitude)
	for _, x := range all {
		fmt.Fprint(&key, "\n", x.At, x.Gun, x.Line, x.Text, x.Replaced)
	}
	return key.String()
}

// LineRequest is the request of what readings left of a plan's line, nil where none of them is of
// it; see Lines.Of.
func LineRequest(r *question.Reader, described *calc.Request, all []*GaugeReading, other func(id string) *learn.OtherGun) *learn.Request {
	q := learn.Request{Plan: described, Draws: learn.Draws, Seed: question.LearnSeed}
	if q.Readings, q.Others = History(r, described, described.Gun.ID, all, other); len(q.Readings) == 0 {
		return nil
	}
	return &q
}

// Left works such a request, nil too.
func Left(q *learn.Request) *calc.Learnt {
	if q == nil {
		return nil
	}
	x, err := learn.Left(q)
	if err != nil {
		return nil // nothing can be learnt of such a line: whoever asks for that is told why
	}
	return x
}
