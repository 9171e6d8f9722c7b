package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"
)

// The catalogue read and its usual line read: what every start pays that asks anything.
func BenchmarkOpen(b *testing.B) {
	dir := b.TempDir()
	vars := func(name string) string { return map[string]string{"XDG_CONFIG_HOME": dir}[name] }
	b.ReportAllocs()
	for b.Loop() {
		if _, err := question.Open(vars, words.English()); err != nil {
			b.Fatal(err)
		}
	}
}

// Texts into values.
func BenchmarkReadAll(b *testing.B) {
	r := questiontest.Open(b)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	b.ReportAllocs()
	for b.Loop() {
		r.ReadAll(question.Plan, texts, unit.US)
	}
}

// Values into a request: a key on the answer pays it once.
func BenchmarkPlan(b *testing.B) {
	r := questiontest.Open(b)
	a := r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := r.Plan(a, unit.US); len(faults) > 0 {
			b.Fatal(faults[0])
		}
	}
}

func BenchmarkWith(b *testing.B) {
	r := questiontest.Open(b)
	a := r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	v := r.Read(question.Temp, "75F", unit.US)
	b.ReportAllocs()
	for b.Loop() {
		a.With(question.Temp, v)
	}
}

func BenchmarkOr(b *testing.B) {
	r := questiontest.Open(b)
	a := r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	b.ReportAllocs()
	for b.Loop() {
		a.Or(r.Usual())
	}
}
