package edit_test

import (
	"sync"
	"testing"

	"boothset/presets/catalogue"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
)

// ownFiles are shops' files that change every kind of entry, and lists and tables inside.
var ownFiles = []string{
	"",
	`
[coat.clear]
name = "our clear"
dries-like = "xylene"
rank = 1
[coat.clear.working.reduced-pressure]
start = "27psi"
[coat.clear.cup]
cup = "ford4"
[coat.clear.film]
typical = "2.3mil"
[coat.clear.overlap]
usual = "60%"
[coat.clear.mix]
solids = "50%"
[coat.clear.thinner]
most = "5%"
[gun.reduced-pressure]
aliases = ["ours"]
flow = "11cfm"
valve.shape = 0.7
transfer.part = "60%"
cup.size = "500mL"
[coupling.slim]
bore = "4.5mm"
[hose."3/8in"]
end = "9mm"
[hose.wide]
bore = "16mm"
end = "15mm"
[regulator."1/2in"]
flow-coefficient = 2.0
[filter.clogged]
conductance = 2
[bore.hose]
us = ["1/2in", "1/4in"]
metric = ["13mm", "5mm"]
[usual.tip]
values = ["1.0 mm"]
[tolerance.valve]
within = "20%"
[line]
hose = ["30ft,3/8in", "6ft,5/16in"]
supply = "110psi"
`,
	"[coat.clear.working.reduced-pressure]\nstart = \"270psi\"\n", // will not do
}

// used is what a reader of a language answers to everything that it can be asked.
func used(lang, shop string) (all []any) {
	w, _ := words.For(lang)
	c, err := catalogue.LoadIn(w, words.Locale{}, []byte(shop), "shop.toml")
	if err != nil {
		return []any{err.Error()}
	}
	r, err := question.New(c)
	if err != nil {
		return []any{err.Error()}
	}
	for _, row := range question.Plan.Fields {
		all = append(all, r.Choices(row.Field), r.UsualFor(row.Field))
	}
	for _, sys := range bothSystems {
		for _, f := range []*question.Field{question.Cup, question.CupSize, question.Ratio, question.Tip, question.Fan, question.Overlap} {
			all = append(all, edit.Suggestions(r, f, "", sys))
		}
		texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45%", "supply", "90psi", "hose", "25ft,3/8in", "area", "hood", "cup", "din4", "seconds", "20")
		a := r.ReadAll(question.Plan, texts, sys)
		q, faults := r.Plan(a, sys)
		all = append(all, q, faults)
		for _, in := range []edit.Input{{Field: question.Coat}, {Field: question.Coupling}, {Field: question.Hose, Piece: 1}} {
			for _, by := range []int{1, -1} {
				b, moved := edit.Step(r, a, q, in, by, sys)
				all = append(all, b.Texts(), moved)
			}
		}
		day, faultsOfDay := r.Day(r.ReadAll(question.Day, texts, sys), sys)
		thin, faultsOfThin := r.Thin(r.ReadAll(question.Thin, texts, sys), sys)
		film, faultsOfFilm := r.Film(r.ReadAll(question.Film, texts, sys), sys)
		mix, faultsOfMix := r.Mix(r.ReadAll(question.Mix, texts, sys), sys)
		all = append(all, day, faultsOfDay, thin, faultsOfThin, film, faultsOfFilm, mix, faultsOfMix)
	}
	return all
}

// Opening and using any number of readers at once, in any language and with a shop's file,
// changes nothing of another: they read the same embedded files and the same rows.
func TestReadersDoNotDisturbOneAnother(t *testing.T) {
	var wants [][]any
	var wg sync.WaitGroup
	for _, lang := range words.Languages() {
		for _, shop := range ownFiles {
			want := used(lang, shop)
			wants = append(wants, want)
			for range 4 {
				wg.Go(func() { assert.Equal(t, want, used(lang, shop), "%s\n%s", lang, shop) })
			}
		}
	}
	wg.Wait()
	for i := range wants {
		for j := range i {
			assert.NotEqual(t, wants[i], wants[j], "each answers otherwise")
		}
	}
}
