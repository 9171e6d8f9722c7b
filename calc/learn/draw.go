package learn

import (
	"math/rand/v2"
	"runtime"
	"sync"

	"boothset/calc"
)

// draw is one line as it may be.
type draw struct {
	shared [shared]float64 // in standard deviations
	own    [MostPieces]own
	offsets
	like float64 // logarithm of the likelihood of the readings
}

// own is how far one piece is off by itself.
type own struct {
	passes, end float64 // in standard deviations
	odd         bool
	by          float64 // where an odd piece is between the bounds of what it passes, 0..1
}

// drawn makes d a draw of what is known beforehand.
func (m *model) drawn(d *draw, random *rand.Rand) {
	*d = draw{offsets: newOffsets(m.instruments)}
	for k := range d.shared {
		if m.sigma[k] > 0 {
			d.shared[k] = random.NormFloat64()
		}
	}
	for i := range m.pieces {
		m.drawOwn(&d.own[i], i, random)
	}
}

// drawOwn draws one piece anew.
func (m *model) drawOwn(o *own, i int, random *rand.Rand) {
	*o = own{odd: random.Float64() < OddShare}
	if m.passesBy[i] > 0 {
		o.passes = random.NormFloat64()
	}
	if m.endBy[i] > 0 {
		o.end = random.NormFloat64()
	}
	if o.odd {
		o.by = random.Float64()
	}
}

// stream is a source of chance of its own for one draw of one generation.
type stream struct {
	pcg    *rand.PCG
	random *rand.Rand
}

func newStream() stream {
	pcg := rand.NewPCG(0, 0)
	return stream{pcg, rand.New(pcg)}
}

// at is the source of the i-th draw of a generation.
func (s stream) at(seed uint64, generation, i int) *rand.Rand {
	s.pcg.Seed(seed, uint64(generation)<<32|uint64(i))
	return s.random
}

// worker is what one goroutine works draws with.
type worker struct {
	solver
	stream
	settings *calc.Perturbed // made when it is first needed
	other    draw            // that one may become
}

// each works n things side by side; what is done to one goes by its number alone.
func (m *model) each(n int, do func(w *worker, i int)) {
	workers := min(runtime.GOMAXPROCS(0), n)
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			w := &worker{solver: solver{m: m, ambient: m.air.Ambient}, stream: newStream()}
			for i := k * n / workers; i < (k+1)*n/workers; i++ {
				do(w, i)
			}
		})
	}
	wait.Wait()
}
