package trouble_test

import (
	"testing"
	"time"

	"boothset/calc/trouble"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// book is three causes of one sign, each with a check of its own.
func book(takes ...time.Duration) *trouble.Book {
	b := &trouble.Book{
		Signs:   []trouble.Sign{{ID: "rough", Causes: []trouble.Likely{{Cause: "thick", Band: trouble.Usual}, {Cause: "far", Band: trouble.Often}, {Cause: "dirty", Band: trouble.Seldom}}}},
		Causes:  []trouble.Cause{{ID: "thick"}, {ID: "far"}, {ID: "dirty"}},
		Raised:  map[string][]string{"held-far": {"far"}},
		Lowered: map[string][]string{"mix-in": {"thick"}},
		Odd:     map[string][]string{"cap": {"dirty"}},
	}
	for i, c := range b.Causes {
		b.Checks = append(b.Checks, trouble.Check{ID: "look-" + c.ID, Takes: takes[i], Findings: []trouble.Finding{{ID: "no"}, {ID: "yes", Shows: []string{c.ID}}}})
	}
	return b
}

var minutes = []time.Duration{time.Minute, time.Minute, time.Minute}

func shares(r *trouble.Ranking) map[string]float64 {
	of := map[string]float64{"": r.None}
	for _, c := range r.Causes {
		of[c.ID] = c.P
	}
	return of
}

// Bands are three times apart, and "none of these" weighs as a seldom one: 9, 3, 1 and 1.
func TestBandsAreThreeTimesApart(t *testing.T) {
	of := shares(book(minutes...).Rank(&trouble.Known{Signs: []string{"rough"}}))
	assert.InDelta(t, 9./14, of["thick"], 1e-12)
	assert.InDelta(t, 3./14, of["far"], 1e-12)
	assert.InDelta(t, 1./14, of["dirty"], 1e-12)
	assert.InDelta(t, 1./14, of[""], 1e-12)
}

// Bayes' rule by hand: a check that is right 95 times in a hundred shows the cause of 3 in 14.
func TestAFindingUpdatesByBayes(t *testing.T) {
	of := shares(book(minutes...).Rank(&trouble.Known{Signs: []string{"rough"}, Found: []trouble.Found{{"look-far", "yes"}}}))
	assert.InDelta(t, 3*.95/(3*.95+11*.05), of["far"], 1e-12)
	of = shares(book(minutes...).Rank(&trouble.Known{Signs: []string{"rough"}, Found: []trouble.Found{{"look-far", "no"}}}))
	assert.InDelta(t, 3*.05/(3*.05+11*.95), of["far"], 1e-12)
	assert.InDelta(t, 9*.95/(3*.05+11*.95), of["thick"], 1e-12)
}

// A fact moves its causes a band for each step, and an odd part by the odds of its readings.
func TestFactsAndOddPartsMoveTheirCauses(t *testing.T) {
	rank := func(k trouble.Known) map[string]float64 {
		k.Signs = []string{"rough"}
		return shares(book(minutes...).Rank(&k))
	}
	assert.InDelta(t, 9./20, rank(trouble.Known{Facts: []trouble.Fact{{ID: "held-far", Steps: 1}}})["far"], 1e-12)
	assert.InDelta(t, 27./38, rank(trouble.Known{Facts: []trouble.Fact{{ID: "held-far", Steps: 2}}})["far"], 1e-12)
	assert.InDelta(t, 3./8, rank(trouble.Known{Facts: []trouble.Fact{{ID: "mix-in", Steps: 1}}})["thick"], 1e-12)
	// From one in ten to one in two: nine times the odds.
	assert.InDelta(t, 9./22, rank(trouble.Known{Odd: []trouble.Oddity{{Part: "cap", Kind: "cap", Prior: .1, Now: .5}}})["dirty"], 1e-12)
	assert.InDelta(t, 1./14, rank(trouble.Known{Odd: []trouble.Oddity{{Part: "hose", Kind: "hose", Prior: .1, Now: .5}}})["dirty"], 1e-12)
	// Of two parts one is enough: from two in ten to seven in ten.
	two := []trouble.Oddity{{Part: "cap", Kind: "cap", Prior: .1, Now: .3}, {Part: "cap 2", Kind: "cap", Prior: .1, Now: .4}}
	w := (.7 / .3) / (.2 / .8)
	assert.InDelta(t, w/(13+w), rank(trouble.Known{Odd: two})["dirty"], 1e-12)
}

// Looked for first is what has the most probability for its time (Heckerman, Breese and Rommelse
// 1995): of two causes of the same probability the one that is quicker to look at, and a likely
// cause before an unlikely one that takes as long.
func TestTheNextCheckHasTheMostProbabilityAMinute(t *testing.T) {
	next := func(takes ...time.Duration) string {
		return book(takes...).Rank(&trouble.Known{Signs: []string{"rough"}}).Next.ID
	}
	assert.Equal(t, "look-thick", next(time.Minute, time.Minute, time.Minute))
	assert.Equal(t, "look-far", next(4*time.Minute, time.Minute, time.Minute))
	assert.Equal(t, "look-dirty", next(30*time.Minute, 20*time.Minute, time.Minute))
}

// Causes that all checks rule out are not told: it ends, and says so.
func TestNothingFoundIsNotTold(t *testing.T) {
	b := book(minutes...)
	b.Signs[0].Causes[0].Band, b.Signs[0].Causes[1].Band = trouble.Seldom, trouble.Seldom
	k := &trouble.Known{Signs: []string{"rough"}}
	for r := b.Rank(k); r.Next != nil && r.End == trouble.Open; r = b.Rank(k) {
		k.Found = append(k.Found, trouble.Found{Check: r.Next.ID, Finding: "no"})
	}
	require.LessOrEqual(t, len(k.Found), 3)
	r := b.Rank(k)
	assert.Greater(t, r.None, r.Causes[0].P)
	assert.NotEqual(t, trouble.Open, r.End)
}

// Two signs are stronger than one for the cause that both have, and a cause that one of them
// lacks is less likely than there alone.
func TestTwoSignsShareACause(t *testing.T) {
	b := book(minutes...)
	b.Signs = append(b.Signs, trouble.Sign{ID: "wet", Causes: []trouble.Likely{{Cause: "thick", Band: trouble.Usual}}})
	one, both := shares(b.Rank(&trouble.Known{Signs: []string{"rough"}})), shares(b.Rank(&trouble.Known{Signs: []string{"rough", "wet"}}))
	assert.InDelta(t, 81./(81+1+1./3+1), both["thick"], 1e-12)
	assert.Greater(t, both["thick"], one["thick"])
	assert.Less(t, both["far"], one["far"])
	swapped := shares(b.Rank(&trouble.Known{Signs: []string{"wet", "rough"}}))
	for id, p := range both {
		assert.InDelta(t, p, swapped[id], 1e-12, id)
	}
}
