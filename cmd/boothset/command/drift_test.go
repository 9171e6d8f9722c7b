package command

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A booth whose line loses 2 psi more from a day on is told so, with the day.
func TestABoothThatHasDrifted(t *testing.T) {
	dir, env := quarryLane(t)
	f, err := shop.At(dir)
	require.NoError(t, err)
	m, err := shop.MachineOf(env)
	require.NoError(t, err)
	first := time.Date(2031, 1, 1, 12, 0, 0, 0, time.UTC)
	keep := func(booth string, more float64) {
		rng := rand.New(rand.NewPCG(2, 2))
		for n := range 80 {
			v := shop.Values{Wall: unit.PSIG(31), Gun: unit.PSIG(26), Flow: unit.SCFM(9.5)}
			read := shop.Values{Wall: unit.PSIG(31), Gun: unit.PSIG(25 + 0.3*rng.NormFloat64())}
			if n >= 60 {
				read.Gun -= unit.PSIG(more)
			}
			_, err := f.Keep(m, shop.Record{Booth: booth, At: first.AddDate(0, 0, n), Subject: shop.Subject{Coat: "clear", Gun: "number-four"}, Answered: v, Read: read}, unit.US)
			require.NoError(t, err)
		}
	}
	keep("two", 2)
	keep("three", 0)
	r := boothsetIn(env, "", "drift", "--booth", "two")
	require.Equal(t, ExitAnswered, r.code, r.err)
	assert.Contains(t, r.out, "Booth two: 80 jobs set as answered")
	assert.Contains(t, r.out, "Since 2031-03-02 the line loses ")
	assert.Contains(t, r.out, "Likeliest: it came at once")
	assert.Contains(t, boothsetIn(env, "", "drift", "--booth", "three").out, "No drift")
	for _, lang := range words.Languages() {
		assert.NotContains(t, boothsetIn(env, "", "drift", "--booth", "two", "--lang", lang).out, "{")
	}
	var drifts struct {
		Schema string
		Booths []struct {
			Changes []struct {
				Since, Cause string
				Shift        both
			}
			Points []map[string]any
		}
		Apart *struct{ Painters both }
	}
	require.NoError(t, json.Unmarshal([]byte(boothsetIn(env, "", "drift", "--booth", "two", "--json").out), &drifts))
	assert.Equal(t, "boothset.drift/1", drifts.Schema)
	require.Len(t, drifts.Booths, 1)
	found := drifts.Booths[0]
	require.NotEmpty(t, found.Changes)
	assert.True(t, strings.HasPrefix(found.Changes[0].Since, "2031-03-02"))
	assert.InDelta(t, 2, found.Changes[0].Shift["psi"], 0.7)
	assert.Len(t, found.Points, 80)
	assert.Nil(t, drifts.Apart, "nobody is named")
	both := boothsetIn(env, "", "drift").out
	assert.Contains(t, both, "Booth two: ")
	assert.Contains(t, both, "Three: ", "by its id: it has no name")
	assert.Contains(t, boothsetIn(env, "", "drift", "--booth", "../two").err, "choose three or two")

	for n := range 60 { // painters set the wall 2 psi apart, in either booth
		set := shop.Values{Wall: unit.PSIG(30 + 2*float64(n%2))}
		_, err := f.Keep(m, shop.Record{
			Booth: []string{"two", "three"}[n/2%2], At: first, Answered: shop.Values{Wall: unit.PSIG(31)}, Set: set, Painter: []string{"a", "b"}[n%2], Note: "x",
		}, unit.US)
		require.NoError(t, err)
	}
	assert.Contains(t, boothsetIn(env, "", "drift").out, "Between painters 1.4 psi, between booths 0.0 psi")
}
