package presets

import (
	"bytes"
	"reflect"
	"sync"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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
[coat.clear.lay]
overlap = "60%"
[coat.clear.mix]
solids = "50%"
[coat.clear.thinner]
most = "5%"
[gun.reduced-pressure]
flow = "11cfm"
valve.shape = [[0, 0], [0.3, 0.5], [1, 1]]
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

// used is what a catalogue of a language answers to everything that it can be asked.
func used(t *testing.T, lang, shop string) (all []any) {
	w, _ := words.For(lang)
	c, err := LoadIn(w, words.Locale{}, []byte(shop), "shop.toml")
	if err != nil {
		return []any{err.Error()}
	}
	for _, f := range PlanFields {
		all = append(all, c.Choices(f.Name), c.Usual(f.Name))
	}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		for _, field := range []string{FieldCup, FieldCupSize, FieldRatio, FieldTip, FieldFan, FieldOverlap} {
			all = append(all, c.Suggestions(field, "", sys))
		}
		a := Answers{Coat: "clear", Gun: "reduced-pressure", Temp: "72F", Humidity: "45%", Supply: "90psi", Hose: []Typed{"25ft,3/8in"}}
		r, faults := c.Resolve(a, sys)
		all = append(all, r, faults)
		for _, in := range []Input{{Field: FieldCoat}, {Field: FieldCoupling}, {Field: FieldHose, Piece: 1}} {
			for _, by := range []int{1, -1} {
				b, moved := c.Nudge(a, in, by, sys)
				all = append(all, b, moved)
			}
		}
		s := Sheet{FieldCoat: "clear", FieldGun: "reduced-pressure", FieldTemp: "72F", FieldHumidity: "45%", FieldArea: "hood", FieldCup: "din4", FieldSeconds: "20"}
		day, faultsOfDay := c.Day(s, sys)
		thin, faultsOfThin := c.Thin(s, sys)
		film, faultsOfFilm := c.Film(s, sys)
		mix, faultsOfMix := c.Mix(s, sys)
		all = append(all, day, faultsOfDay, thin, faultsOfThin, film, faultsOfFilm, mix, faultsOfMix)
	}
	return all
}

// Every catalogue shares what is shipped: opening and using any number of them at once,
// in any language and with a shop's file, changes nothing of it, nor of one another.
func TestCataloguesDoNotDisturbOneAnother(t *testing.T) {
	laidDown := func() string {
		var b bytes.Buffer
		literal(&b, reflect.ValueOf(shipped), true)
		return b.String()
	}
	before := laidDown()
	var wants [][]any
	var wg sync.WaitGroup
	for _, lang := range words.Languages() {
		for _, shop := range ownFiles {
			want := used(t, lang, shop)
			wants = append(wants, want)
			for range 4 {
				wg.Go(func() { assert.Equal(t, want, used(t, lang, shop), "%s\n%s", lang, shop) })
			}
		}
	}
	wg.Wait()
	require.Equal(t, before, laidDown())
	for i := range wants {
		for j := range i {
			assert.NotEqual(t, wants[i], wants[j], "each answers otherwise")
		}
	}
}
