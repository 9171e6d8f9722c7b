package practice

import (
	"math/rand/v2"

	"boothset/calc/unit"
)

// Deck gives jobs and badly set booths one after another, the same ones for the same seed, the
// same source and the same record.
type Deck struct {
	Record // of who practises, with what is due; kept elsewhere
	source *Source
	sys    unit.System
	seed   uint64
	dealt  uint64
}

// NewDeck is a deck of a source in a system's units, for whom a record is of.
func NewDeck(s *Source, sys unit.System, seed uint64, of Record) *Deck {
	return &Deck{Record: of, source: s, sys: sys, seed: seed}
}

// Invented reports whether the booths are those of the invented shop.
func (d *Deck) Invented() bool { return d.source.Invented }

// chosenFrom is how many jobs are drawn to choose one from.
const chosenFrom = 8

// next is the draws of the next that is dealt.
func (d *Deck) next() *rand.Rand {
	d.dealt++
	return rand.New(rand.NewPCG(d.seed, d.dealt))
}

// Job is the next job; nil where the source has none that can be worked out. One that asks for
// what was missed before is likelier.
func (d *Deck) Job() *Job {
	rng := d.next()
	var jobs []*Job
	var lessons [][]Idea
	for range chosenFrom {
		if j := d.source.one(rng, d.sys); j != nil {
			jobs, lessons = append(jobs, j), append(lessons, j.Lessons())
		}
	}
	if len(jobs) == 0 {
		return nil
	}
	j := jobs[d.Due.lean(rng, lessons)]
	j.Sure()
	return j
}

// Judged takes what a guess of a job came to into a record.
func (r *Record) Judged(j *Job, of *Judged) {
	r.Jobs++
	if of.Right() {
		r.Right++
	}
	r.Due.learned(j.Lessons(), of.Idea)
}

// Named takes what naming a cause came to into a record.
func (r *Record) Named(f *Find, n *Named) {
	r.Finds++
	missed := f.Cause.Idea()
	if n.Right {
		r.Found++
		missed = ""
	}
	r.Due.learned([]Idea{f.Cause.Idea()}, missed)
}

// Due is how much each idea is missed: each miss adds one, and each job that it was asked for in
// halves it.
type Due map[Idea]float64

// learned takes a job that asked for some ideas, and the one that was missed, empty where none
// was.
func (d Due) learned(asked []Idea, missed Idea) {
	for _, of := range asked {
		if of != missed {
			d[of] /= 2
		}
		if d[of] < forgotten {
			delete(d, of)
		}
	}
	if missed != "" {
		d[missed] = d[missed]/2 + 1
	}
}

// mostDue is more than any idea comes to: half of it and one.
const mostDue = 2

// forgotten is how little an idea is due to be due no more: it was missed once, and right three
// times since.
const forgotten = 1.0 / 8

// lean chooses one of several, each with the ideas that it asks for: one that asks for nothing
// that is due counts 1, and what is due adds leaning times as much.
func (d Due) lean(rng *rand.Rand, lessons [][]Idea) int {
	const leaning = 3
	weights := make([]float64, len(lessons))
	var sum float64
	for i, asked := range lessons {
		weights[i] = 1
		for _, of := range asked {
			weights[i] += leaning * d[of]
		}
		sum += weights[i]
	}
	at := rng.Float64() * sum
	for i, w := range weights {
		if at -= w; at < 0 {
			return i
		}
	}
	return len(lessons) - 1
}
