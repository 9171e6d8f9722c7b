package signs_test

import (
	"maps"
	"os"
	"slices"
	"testing"

	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/signs"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worked is a case as testdata/cases.toml has it.
type worked struct {
	Source, Cause string
	Signs         []string
	Setup, Found  map[string]string
}

type casesFile struct {
	Source map[string]string
	Booth  map[string]string
	Case   []worked
}

func cases(t *testing.T) casesFile {
	data, err := os.ReadFile("testdata/cases.toml")
	require.NoError(t, err)
	var f casesFile
	require.NoError(t, toml.Unmarshal(data, &f))
	return f
}

// known is what a case starts from: its signs, and the facts of its setup where it has one.
func (w *worked) known(t *testing.T, r *question.Reader, booth map[string]string) *trouble.Known {
	texts := question.Texts{}
	if len(w.Setup) > 0 {
		for field, text := range booth {
			texts[field] = []string{text}
		}
	}
	for field, text := range w.Setup {
		texts[field] = []string{text}
	}
	texts["sign"] = w.Signs
	q, faults := r.Trouble(r.ReadAll(question.Trouble, texts, unit.US), unit.US)
	require.Empty(t, faults, "%v", w)
	a, err := signs.Book().Solve(&q)
	require.NoError(t, err)
	return &trouble.Known{Signs: q.Signs, Facts: a.Job.Facts()}
}

// walk makes the checks that are asked for, one after another, until a cause is told or none
// would tell, and gives where it ends and after how many. It fails where it does not end.
func (w *worked) walk(t *testing.T, b *trouble.Book, k *trouble.Known) (r *trouble.Ranking, checks int) {
	r = b.Rank(k)
	for ; r.End == trouble.Open; checks++ {
		require.NotNil(t, r.Next)
		require.False(t, slices.ContainsFunc(k.Found, func(f trouble.Found) bool { return f.Check == r.Next.ID }), "%s is asked twice", r.Next.ID)
		finding := r.Next.Findings[0].ID
		if found, ok := w.Found[r.Next.ID]; ok {
			finding = found
		}
		k.Found = append(k.Found, trouble.Found{Check: r.Next.ID, Finding: finding})
		r = b.Rank(k)
	}
	return r, checks
}

// The worked cases: the right cause stands among the first two in 85 of a hundred, after three
// checks or fewer in the middle.
func TestTheWorkedCases(t *testing.T) {
	f, b, r := cases(t), signs.Book(), questiontest.Open(t)
	require.GreaterOrEqual(t, len(f.Case), 80)
	var all []int
	right, first := 0, 0
	for n := range f.Case {
		c := &f.Case[n]
		end, checks := c.walk(t, b, c.known(t, r, f.Booth))
		all = append(all, checks)
		if end.Causes[0].ID == c.Cause {
			first++
		}
		if slices.ContainsFunc(end.Causes[:min(2, len(end.Causes))], func(x trouble.Ranked) bool { return x.ID == c.Cause }) {
			right++
		} else {
			t.Logf("case %d, %v: %s is not among the first two, %s (%.2f) is", n+1, c.Signs, c.Cause, end.Causes[0].ID, end.Causes[0].P)
		}
	}
	slices.Sort(all)
	t.Logf("%d of %d cases right in the first two, %d in the first; checks: median %d, most %d", right, len(f.Case), first, all[len(all)/2], all[len(all)-1])
	assert.GreaterOrEqual(t, float64(right), 0.85*float64(len(f.Case)))
	assert.LessOrEqual(t, all[len(all)/2], 3)
}

// Every case names what is there, its source too, and every sign has one.
func TestTheCasesNameWhatIsThere(t *testing.T) {
	f, b := cases(t), signs.Book()
	unmet := map[string]bool{}
	for _, s := range b.Signs {
		unmet[s.ID] = true
	}
	sources := maps.Clone(f.Source)
	for n, c := range f.Case {
		assert.Contains(t, f.Source, c.Source, "case %d", n+1)
		delete(sources, c.Source)
		assert.NotNil(t, b.Cause(c.Cause), "case %d: %s", n+1, c.Cause)
		for _, id := range c.Signs {
			assert.NotNil(t, b.Sign(id), "case %d: %s", n+1, id)
			delete(unmet, id)
		}
		for check, finding := range c.Found {
			if assert.NotNil(t, b.Check(check), "case %d: %s", n+1, check) {
				assert.NotNil(t, b.Check(check).Finding(finding), "case %d: %s=%s", n+1, check, finding)
			}
		}
	}
	assert.Empty(t, unmet, "signs without a case")
	assert.Empty(t, sources, "sources without a case")
}
