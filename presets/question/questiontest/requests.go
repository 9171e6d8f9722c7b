package questiontest

import (
	"iter"

	"boothset/presets/question"

	"pgregory.net/rapid"
)

// Requests is so many answers to the plan, the same ones each time: one in two of what a shop
// could have on a day it could have, the others anything that the limits of a request allow;
// one in two with the air upstream of the regulator, some of it breathed.
func Requests(r *question.Reader, n int) iter.Seq[question.Texts] {
	drawn := rapid.Custom(func(t *rapid.T) question.Texts {
		d := Drawer{t}
		texts := d.Plan(r)
		if rapid.Bool().Draw(t, "bench") {
			d.Bench(texts)
		}
		if rapid.Bool().Draw(t, "with-supply") {
			d.Supply(texts)
		}
		if texts["regulator"][0] == question.None { // then nothing of one counts
			for _, of := range []string{"regulator-at", "wall", "mark"} {
				delete(texts, of)
			}
		}
		return texts
	})
	return func(yield func(question.Texts) bool) {
		for seed := range n {
			if !yield(drawn.Example(seed)) {
				return
			}
		}
	}
}

// Bench puts a day and a line over answers to the plan that a shop could have.
func (d Drawer) Bench(texts question.Texts) {
	set := func(field, typed string) { texts[field] = []string{typed} }
	set("temp", d.Number("bench-temp", "%.1fC", 12, 38))
	set("humidity", d.Number("bench-humidity", "%.0f", 15, 88))
	set("panel", "")
	set("altitude", "")
	set("mark", "")
	set("supply", d.Number("bench-supply", "%.0fpsi", 25, 130))
	set("hose", d.Number("bench-feet", "%.0fft", 5, 60)+d.Number("bench-mm", ",%.1fmm", 6, 13))
}
