package practice

import (
	"sync"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// invented is a deck of the invented shop with a seed.
func invented(t testing.TB, seed uint64, of Record) *Deck {
	s, err := Invented(words.English())
	require.NoError(t, err)
	return NewDeck(s, unit.US, seed, of)
}

// many is how many jobs stand for all, and fewer how many badly set booths.
const many, fewer = 250, 60

// jobs and finds are so many of the invented shop, drawn once for all tests, which change none.
var (
	jobs = sync.OnceValue(func() (all []*Job) {
		d := dealt()
		for range many {
			all = append(all, d.Job())
		}
		return all
	})
	finds = sync.OnceValue(func() (all []*Find) {
		d := dealt()
		for range fewer {
			all = append(all, d.Find())
		}
		return all
	})
)

func dealt() *Deck {
	s, err := Invented(words.English())
	if err != nil {
		panic(err)
	}
	return NewDeck(s, unit.US, 1, NewRecord())
}
