package calc_test

import (
	"testing"

	"boothset/calc"

	"github.com/stretchr/testify/assert"
)

// safetyOf is the ids of the cautions that protect people, the levels' first letters before them.
func safetyOf(all []calc.Caution) (ids []string) {
	for _, c := range all {
		if c.Safety {
			ids = append(ids, string(c.Level[0])+":"+c.ID)
		}
	}
	return ids
}

// Each answer says of each hardener what harms in it; a hardener that is not known counts as
// isocyanate. Spraying and handling have their own cautions, and one-part paint asks for no
// supplied air.
func TestEachHardenerHasItsCaution(t *testing.T) {
	for h, id := range map[calc.Hardener]string{
		calc.UnknownHardener: "w:isocyanate-unknown", calc.Isocyanate: "w:isocyanate", calc.Amine: "w:amine", calc.Acrylate: "w:acrylate", calc.OnePart: "",
	} {
		own := []string{id}
		booth := []string{id, "n:booth-clear", "n:breathing-air", "n:booth-air"}
		if h == calc.OnePart {
			own, booth = nil, []string{"n:booth-clear", "n:booth-air"}
		}
		day := solvedDay(t, with(aDay(t, false, 22, 0.45), func(r *calc.DayRequest) { r.Coat.Hardener = h }))
		assert.Equal(t, booth, safetyOf(day.Cautions), h)
		film := filmOf(t, filmRequest(func(r *calc.FilmRequest) { r.Hardener = h }))
		assert.Equal(t, append(own, "n:booth-clear"), safetyOf(film.Cautions), h)
		mix := mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Hardener = h }))
		assert.Equal(t, append(own, "n:skin"), safetyOf(mix.Cautions), h)
		right := aMix(t, 17, 20)
		right.Hardener = h
		assert.Equal(t, append(own, "n:skin"), safetyOf(thinned(t, right).Cautions), h)
	}
}
