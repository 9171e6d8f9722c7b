package learn

import (
	"testing"

	"boothset/calc/calctest"
)

// BenchmarkReading is a new reading of 20,000 draws, and the settings after it.
func BenchmarkReading(b *testing.B) {
	before := learner(b, calctest.MildClear(b), Draws)
	for b.Loop() {
		l := *before
		l.draws, l.logs, l.weights = append([]draw(nil), before.draws...), append([]float64(nil), before.logs...), append([]float64(nil), before.weights...)
		l.readings = nil
		if err := l.Add(Reading{Opening: 1, Shows: wallAndGun(31, 25)}); err != nil {
			b.Fatal(err)
		}
		l.Settings()
	}
}

// BenchmarkNext is what all options are worth after two readings.
func BenchmarkNext(b *testing.B) {
	l := learner(b, calctest.MildClear(b), Draws)
	for _, x := range []Reading{{Still: true, Shows: wallAndGun(30, 29)}, {Opening: 1, Shows: wallAndGun(31, 24)}} {
		if err := l.Add(x); err != nil {
			b.Fatal(err)
		}
	}
	options := l.Options()
	for b.Loop() {
		l.Next(options)
	}
}
