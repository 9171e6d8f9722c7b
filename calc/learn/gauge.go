package learn

import (
	"math"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Gauge is one that a reading may be taken with.
type Gauge uint8

// The gauges: at the wall's regulator; two that are put on for a test, before the gun's inlet
// valve and at the air cap; and each gun's own, wherever it sits: see OfGun. The wall's of another
// line come after these.
const (
	WallGauge Gauge = iota
	FootGauge
	CapGauge
	GunGauge
)

// mostGauges is how many there may be.
const mostGauges = int(GunGauge) + MostGuns + MostLines

// OfGun is a gun's own gauge.
func OfGun(gun int) Gauge { return GunGauge + Gauge(gun) }

// Instrument is how wrong a gauge may be.
type Instrument struct {
	// Within is what it may be off by, always by the same: two standard deviations.
	Within unit.Drop
	// Noise is the standard deviation of one reading besides.
	Noise unit.Drop
}

// atMost is what it may be off by in one reading, Pa: two standard deviations of each.
func (i *Instrument) atMost() float64 { return float64(i.Within + 2*i.Noise) }

const (
	// ReadingNoise is the noise of one reading: half a mark of 1 psi either way, even odds all
	// over, has a standard deviation of 0.29 psi.
	ReadingNoise = unit.Drop(0.3 * unit.PascalPerPSI)
	// footGauge and capGauge are what the gauges put on for a test may be off by: class 2.5 of
	// 60 psi and of 30 psi.
	footGauge = unit.Drop(0.025 * 60 * unit.PascalPerPSI)
	capGauge  = unit.Drop(0.025 * 30 * unit.PascalPerPSI)
	// turnNoise is the standard deviation of a knob's turns as they are counted: a sixteenth
	// either way, even odds all over.
	turnNoise = 1. / 16 / 1.7320508
)

// instruments are the gauges of a line and its guns, and the wall's of other lines.
func instruments(t *calc.Tolerances, guns int, elsewhere []OtherLine) []Instrument {
	all := []Instrument{
		WallGauge: {unit.Drop(t.WallGauge.Within), ReadingNoise},
		FootGauge: {footGauge, ReadingNoise},
		CapGauge:  {capGauge, ReadingNoise},
	}
	for range guns {
		all = append(all, Instrument{unit.Drop(t.GunGauge.Within), ReadingNoise})
	}
	for i := range elsewhere {
		all = append(all, Instrument{unit.Drop(elsewhere[i].WallGauge.Within), ReadingNoise})
	}
	return all
}

// Reads is what a gauge reads too high, Pa, 80 % sure.
func (l *Learner) Reads(g Gauge) spread.Range {
	return spread.Range{Low: l.readsBelow(g, 0.1), High: l.readsBelow(g, 0.9)}
}

// readsBelow is what a gauge reads too high at most, at a probability: of the normals of all
// draws together.
func (l *Learner) readsBelow(g Gauge, share float64) float64 {
	means, variance := make([]float64, len(l.draws)), 0.0
	for i := range l.draws {
		means[i] = l.draws[i].mean[g]
		variance += l.weights[i] * l.draws[i].cov[g][g]
	}
	mean := stat.Mean(means, l.weights)
	for i := range means {
		variance += l.weights[i] * (means[i] - mean) * (means[i] - mean)
	}
	const widths = 8 // standard deviations, within which all lies
	low, high := mean-widths*math.Sqrt(variance), mean+widths*math.Sqrt(variance)
	for range 30 {
		middle, below := (low+high)/2, 0.0
		for i := range l.draws {
			if l.weights[i] > 0 {
				below += l.weights[i] * distuv.Normal{Mu: means[i], Sigma: math.Sqrt(l.draws[i].cov[g][g])}.CDF(middle)
			}
		}
		if below < share {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
