package edit_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
)

// One press of a key on an input: a number, a list, a bore.
func BenchmarkStep(b *testing.B) {
	r := questiontest.Open(b)
	a := read(r, wholeShop(), unit.US)
	now, _ := r.Plan(a, unit.US)
	for _, in := range []edit.Input{{Field: question.Temp}, {Field: question.Coat}, {Field: question.Hose, Piece: 1}} {
		b.Run(in.Field.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, moved := edit.Step(r, a, now, in, -1, unit.US); !moved {
					b.Fatal("it did not move")
				}
			}
		})
	}
}

func BenchmarkInputs(b *testing.B) {
	r := questiontest.Open(b)
	a := read(r, wholeShop(), unit.US)
	b.ReportAllocs()
	for b.Loop() {
		edit.Inputs(r, a)
	}
}
