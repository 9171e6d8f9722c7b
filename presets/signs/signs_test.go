package signs_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/signs"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What ships holds together: every name names something, every cause is of a sign and shown by
// a check, a check has a time, a finding that shows nothing and others that do.
func TestTheBookHoldsTogether(t *testing.T) {
	b := signs.Book()
	require.Len(t, b.Signs, 36)
	shown, of := map[string]bool{}, map[string]bool{}
	for _, s := range b.Signs {
		require.NotEmpty(t, s.Causes, s.ID)
		assert.Contains(t, []calc.Basis{calc.Published, calc.CommonPractice}, s.Basis, s.ID)
		assert.NotEmpty(t, s.Source, s.ID)
		once := map[string]bool{}
		for _, l := range s.Causes {
			assert.NotNil(t, b.Cause(l.Cause), "%s: %s", s.ID, l.Cause)
			assert.False(t, once[l.Cause], "%s names %s twice", s.ID, l.Cause)
			once[l.Cause], of[l.Cause] = true, true
		}
		assert.Equal(t, trouble.Usual, s.Causes[0].Band, "%s has a usual cause", s.ID)
		d := signs.DrawnOf(s.ID)
		assert.True(t, d.Wide > 0 && d.High > 0 && d.Wet > 0, "%s can be drawn", s.ID)
	}
	for _, c := range b.Checks {
		require.GreaterOrEqual(t, len(c.Findings), 2, c.ID)
		assert.Empty(t, c.Findings[0].Shows, c.ID)
		assert.Positive(t, c.Takes, c.ID)
		for _, f := range c.Findings[1:] {
			assert.NotEmpty(t, f.Shows, "%s=%s", c.ID, f.ID)
			for _, id := range f.Shows {
				assert.NotNil(t, b.Cause(id), "%s: %s", c.ID, id)
				shown[id] = true
			}
		}
	}
	for _, c := range b.Causes {
		assert.True(t, shown[c.ID], "no check shows %s", c.ID)
		assert.True(t, of[c.ID], "no sign has the cause %s", c.ID)
	}
	for _, all := range []map[string][]string{b.Raised, b.Lowered, b.Odd} {
		for id, causes := range all {
			for _, c := range causes {
				assert.NotNil(t, b.Cause(c), "%s: %s", id, c)
			}
		}
	}
}

// Every sign is found by its id, by its name in each language, with accents or without, and by
// every other word for it; by the beginning of its name it is among what is offered.
func TestEverySignIsFoundByItsNames(t *testing.T) {
	for _, s := range signs.Book().Signs {
		assert.Equal(t, s.ID, signs.Find(s.ID))
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			name := w.Say(signs.Name(s.ID))
			assert.Equal(t, s.ID, signs.Find(name), "%s in %s", name, lang)
			assert.Contains(t, signs.Search(name[:len(name)/2]), s.ID, "%s in %s", name, lang)
		}
		for _, also := range signs.Also(s.ID) {
			assert.Equal(t, s.ID, signs.Find(also), also)
		}
	}
	assert.Equal(t, "orange-peel", signs.Find("CASCARA DE NARANJA"), "as it is typed without accents")
	assert.Equal(t, []string{"orange-peel"}, signs.Search("naranj"))
	assert.Len(t, signs.Search(""), 36)
	assert.Empty(t, signs.Search("xyzzy"))
	assert.Empty(t, signs.Find("heavy"), "several are")
}

// Whatever is found, it ends: no check is asked for twice, probabilities stay probabilities, and
// they add up to one.
func TestItAlwaysEnds(t *testing.T) {
	b := signs.Book()
	var facts []string
	for id := range b.Raised {
		facts = append(facts, id)
	}
	slices.Sort(facts)
	rapid.Check(t, func(t *rapid.T) {
		k := &trouble.Known{}
		for _, n := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(b.Signs)-1), 1, 4, rapid.ID[int]).Draw(t, "signs") {
			k.Signs = append(k.Signs, b.Signs[n].ID)
		}
		for _, id := range rapid.SliceOfNDistinct(rapid.SampledFrom(facts), 0, 8, rapid.ID[string]).Draw(t, "facts") {
			k.Facts = append(k.Facts, trouble.Fact{ID: id, Steps: rapid.IntRange(1, 2).Draw(t, "steps")})
		}
		for {
			r := b.Rank(k)
			sum := r.None
			for i, c := range r.Causes {
				require.True(t, c.P >= 0 && c.P <= 1)
				require.True(t, i == 0 || c.P <= r.Causes[i-1].P)
				sum += c.P
			}
			require.InDelta(t, 1, sum, 1e-9)
			require.Equal(t, r.End == trouble.NotTold, r.Next == nil && r.End != trouble.Told)
			if r.Next == nil {
				return
			}
			for _, f := range k.Found {
				require.NotEqual(t, f.Check, r.Next.ID)
			}
			finding := question.Skipped
			if n := rapid.IntRange(0, len(r.Next.Findings)).Draw(t, "finding"); n < len(r.Next.Findings) {
				finding = r.Next.Findings[n].ID
			}
			k.Found = append(k.Found, trouble.Found{Check: r.Next.ID, Finding: finding})
		}
	})
}

// A fact that speaks for a cause never makes it less likely, one against it never more.
func TestAFactMovesItsCausesTheRightWay(t *testing.T) {
	b := signs.Book()
	p := func(k *trouble.Known, cause string) float64 {
		for _, c := range b.Rank(k).Causes {
			if c.ID == cause {
				return c.P
			}
		}
		return 0
	}
	for _, s := range b.Signs {
		for _, l := range s.Causes {
			for id := range b.Raised {
				plain, with := &trouble.Known{Signs: []string{s.ID}}, &trouble.Known{Signs: []string{s.ID}, Facts: []trouble.Fact{{ID: id, Steps: 2}}}
				only := func(causes []string) bool {
					return slices.Contains(causes, l.Cause) && !slices.ContainsFunc(causes, func(c string) bool { return c != l.Cause && s.Has(c) })
				}
				if only(b.Raised[id]) {
					assert.Greater(t, p(with, l.Cause), p(plain, l.Cause), "%s: %s by %s", s.ID, l.Cause, id)
				}
				if only(b.Lowered[id]) && !slices.ContainsFunc(b.Raised[id], s.Has) {
					assert.Less(t, p(with, l.Cause), p(plain, l.Cause), "%s: %s by %s", s.ID, l.Cause, id)
				}
			}
		}
	}
}

// Booths drawn as the book has them: a cause by its band, findings as often right as the check
// is. What is told at 80 % and more is right at least as often, and the checks asked for find
// it in few.
func TestWhatIsToldIsRightAsOftenAsItSays(t *testing.T) {
	b, random := signs.Book(), rand.New(rand.NewPCG(1, 2))
	told, right, said, checks := 0, 0, 0.0, 0
	const n = 4000
	for range n {
		s := &b.Signs[random.IntN(len(b.Signs))]
		k := &trouble.Known{Signs: []string{s.ID}}
		r := b.Rank(k)
		at, draw := "", random.Float64()
		for _, c := range r.Causes {
			if draw -= c.P; draw < 0 {
				at = c.ID
				break
			}
		}
		for ; r.End == trouble.Open; r = b.Rank(k) {
			k.Found = append(k.Found, trouble.Found{Check: r.Next.ID, Finding: drawn(r.Next.Check, at, random)})
			checks++
		}
		if r.End == trouble.Told {
			told++
			said += r.Causes[0].P
			if r.Causes[0].ID == at {
				right++
			}
		}
	}
	t.Logf("told %d of %d, right %.3f, said %.3f, %.2f checks each", told, n, float64(right)/float64(told), said/float64(told), float64(checks)/n)
	assert.InDelta(t, said/float64(told), float64(right)/float64(told), 0.02)
	assert.Greater(t, float64(told), 0.85*n)
}

// drawn is what a check finds where a cause is at work.
func drawn(c *trouble.Check, cause string, random *rand.Rand) string {
	draw := random.Float64()
	for _, f := range c.Findings {
		if draw -= c.Finds(f.ID, cause); draw < 0 {
			return f.ID
		}
	}
	return c.Findings[0].ID
}

// A sign is read as a person types it, and what is none says what there is.
func TestASignIsReadAsItIsTyped(t *testing.T) {
	r := questiontest.Open(t)
	for typed, id := range map[string]string{"orange-peel": "orange-peel", "Orange Peel": "orange-peel", "escurrido": "runs", "tiger stripes": "stripes", "naranja": "orange-peel"} {
		v := r.Read(question.Sign, typed, r.System())
		require.Nil(t, v.Fault, typed)
		assert.Equal(t, id, v.ID)
	}
	assert.Equal(t, "choose-sign", r.Read(question.Sign, "purple", r.System()).Fault.ID)
	assert.Equal(t, "which-sign", r.Read(question.Sign, "heavy", r.System()).Fault.ID)
	assert.Equal(t, "choose-check", r.Read(question.Found, "nose=wet", r.System()).Fault.ID)
	assert.Equal(t, "choose-finding", r.Read(question.Found, "listen", r.System()).Fault.ID)
	assert.Equal(t, "choose-finding", r.Read(question.Found, "listen=loud", r.System()).Fault.ID)
	assert.Nil(t, r.Read(question.Found, " Listen = skip", r.System()).Fault)
}
