package practice

import (
	"math"

	"boothset/calc"
	"boothset/calc/unit"
)

// Judged is what a guess comes to.
type Judged struct {
	Guess
	Verdict bool   // it is the answer's
	Marks   []Mark // of what was asked; none where the guess or the answer does not spray
	// Advised is what comes of the settings as advised, and As of those that were guessed, both
	// with Marks.
	Advised, As calc.Sprayed
	Signs       []calc.Sign  // what shows on the panel
	Against     []calc.Cause // what the guess sprays against, though the answer waits or stops
	Idea        Idea         // that explains the miss; empty where all is right
	Figures     calc.Figures // of the idea's sentence
}

// Mark is a setting that was guessed beside the advised one and its likely range, in SI.
type Mark struct {
	Of               Setting
	Guessed, Advised float64
	Low, High        float64
}

// Right reports whether the guess lies in the answer's own likely range.
func (m *Mark) Right() bool { return m.Guessed >= m.Low && m.Guessed <= m.High }

// off is how far the guess is past its range, in half ranges: 0 within.
func (m *Mark) off() float64 {
	half := (m.High - m.Low) / 2
	return max(m.Low-m.Guessed, m.Guessed-m.High, 0) / max(half, leastHalf[m.Of])
}

// leastHalf is the half range that a miss is measured by at least, in SI: as fine as a hand sets.
var leastHalf = map[Setting]float64{Wall: 1 * unit.PascalPerPSI, Opening: 0.1, Distance: 0.5 * unit.MetrePerInch}

// Right reports whether nothing was missed: the verdict, each setting, and what comes of them
// together.
func (j *Judged) Right() bool { return j.Idea == "" }

// Judge judges a guess of the job.
func (j *Job) Judge(g Guess) *Judged {
	found := &Judged{Guess: g, Verdict: g.Verdict == j.Setup.Verdict}
	if Sprays(g.Verdict) && !Sprays(j.Setup.Verdict) {
		found.Against = j.Setup.Against
	}
	if Sprays(g.Verdict) && j.Sets() {
		found.settings(j)
	}
	found.explain(j)
	return found
}

// Sets reports whether the answer sets anything: not where it stops, nor where the supply is short.
func (j *Job) Sets() bool { return !j.Setup.Stopped() && !j.Setup.Short.Is }

// settings judges what was set.
func (d *Judged) settings(j *Job) {
	s := j.Setup
	set := s.Set()
	for _, of := range j.Asks() {
		m := j.mark(of)
		switch of {
		case Wall:
			m.Guessed, set.Wall = float64(d.Set.Wall), d.Set.Wall
		case Opening:
			m.Guessed, set.Opening = d.Set.Opening, d.Set.Opening
		case Distance:
			m.Guessed, set.Distance = float64(d.Set.Distance), d.Set.Distance
		}
		d.Marks = append(d.Marks, m)
	}
	d.Advised, d.As = j.Request.Spray(s, s.Set()), j.Request.Spray(s, set)
	d.Signs = s.Signs(j.Request, &d.Advised, &d.As, set.Opening)
	d.Set = set
}

// mark is a setting as advised, with its likely range; what the answer says itself is in it.
func (j *Job) mark(of Setting) (m Mark) {
	s := j.Setup
	m = Mark{Of: of}
	switch of {
	case Wall:
		m.Advised = float64(s.Wall.Flowing)
	case Opening:
		m.Advised = s.Valve.Opening
	case Distance:
		m.Advised = float64(s.Distance.Target)
	}
	m.Low, m.High = m.Advised, m.Advised
	widen := func(low, high float64) { m.Low, m.High = min(m.Low, low), max(m.High, high) }
	switch wall, known := j.LikelyWall(); {
	case of == Distance:
		widen(float64(s.Distance.Low), float64(s.Distance.High))
	case of == Wall && known:
		widen(float64(wall.Low), float64(wall.High))
	case of == Opening && j.Spread != nil:
		widen(j.Spread.Opening.Low, j.Spread.Opening.High)
	}
	// A hand that sets the very end of the range is in it, however the end was rounded.
	const rounding = 1e-9
	m.Low, m.High = m.Low-rounding*math.Abs(m.Low), m.High+rounding*math.Abs(m.High)
	return m
}
