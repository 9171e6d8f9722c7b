package tui

import (
	"testing"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// cost is how often answers were resolved and solved, and their spread worked out.
type cost struct{ resolved, solved, spreads int }

// costOf is what some keys cost, their frames too.
func costOf(r *root, keys ...string) (c cost) {
	s := r.s
	resolve, solve, sure := s.resolve, s.solve, s.sure
	defer func() { s.resolve, s.solve, s.sure = resolve, solve, sure }()
	s.resolve = func(a question.Answers, sys unit.System) (*calc.Request, []*question.Fault) {
		c.resolved++
		return resolve(a, sys)
	}
	s.solve = func(q *calc.Request) (*calc.Setup, error) {
		c.solved++
		return solve(q)
	}
	s.sure = func(q *calc.Request, setup *calc.Setup) *spread.Spread {
		c.spreads++
		return sure(q, setup)
	}
	for _, k := range keys {
		press(r, k)
		r.View()
	}
	return c
}

// once is what a key that moves something costs.
var once = cost{1, 1, 1}

func TestOneKeyOnTheAnswerIsWorkedOutOnce(t *testing.T) {
	r := open80x24(t)
	press(r, toSupply[:len(toSupply)-1]...)
	require.Equal(t, once, costOf(r, "enter"), "arriving at the answer")
	for range r.bench.inputs() {
		in := r.bench.inputs()[r.bench.input]
		for _, k := range []string{"right", "left", "shift+right", "shift+left"} {
			before := r.bench.tried.id
			spent := costOf(r, k)
			if r.bench.tried.id != before {
				want := once
				if r.bench.tried.Stopped() {
					want.spreads = 0 // nothing is set
				}
				require.Equal(t, want, spent, "%s of %s", k, in.Field.Name)
			} else {
				require.Contains(t, []cost{{}, {1, 0, 0}, {1, 1, 0}}, spent, "%s of %s, which stays", k, in.Field.Name)
			}
		}
		if r.bench.changed() {
			require.Equal(t, cost{}, costOf(r, "esc"), "put back")
		}
		require.Equal(t, cost{}, costOf(r, "down"), "on to the next")
	}
}

func TestNothingIsWorkedOutForLooking(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	for _, keys := range [][]string{{"up", "down", "k", "j"}, viewKeys(), {"6", "pgdown", "pgup", "6"}, {"?", "esc"}} {
		require.Equal(t, cost{}, costOf(r, keys...), keys)
	}
	press(r, "right")
	require.Equal(t, cost{}, costOf(r, "3", "up", "esc"), "putting back what was tried")
	press(r, "right")
	require.Equal(t, cost{}, costOf(r, "enter"), "keeping what was tried")
}

// Other units are another mark on the gauge: what is kept is worked out anew, and what is
// tried where that is another job.
func TestOtherUnitsAreWorkedOutOnce(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	require.Equal(t, once, costOf(r, "u"))
	press(r, "right")
	require.True(t, r.bench.changed())
	require.Equal(t, cost{2, 2, 2}, costOf(r, "u"))
	require.True(t, r.bench.changed())
}

// Whatever is pressed at the answer, a key is worked out once at most.
func TestOneKeyOnTheAnswerIsNeverWorkedOutTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, look{metric: rapid.Bool().Draw(t, "metric")})
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toRead}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			most := 1
			if k == "u" && r.bench.changed() {
				most = 2
			}
			spent := costOf(r, k)
			require.LessOrEqual(t, spent.resolved, most, k)
			require.LessOrEqual(t, spent.solved, most, k)
			require.LessOrEqual(t, spent.spreads, most, k)
		}
	})
}

// Of 10,000 requests the assistant has the verdict that the plan has.
func TestTheAssistantHasTheVerdictOfThePlan(t *testing.T) {
	s := open80x24(t).s
	s.sure = func(*calc.Request, *calc.Setup) *spread.Spread { return nil }
	s.check = checkKeep
	for texts := range questiontest.Requests(s.reader, 10000) {
		all := s.reader.ReadAll(question.Plan, texts, s.sys)
		p, err := answer.AskPlan(s.reader, all, s.sys)
		require.NoError(t, err)
		j, err := s.work(all)
		require.NoError(t, err)
		require.Equal(t, p.Setup.Judgement, j.Setup.Judgement, "%v", texts)
		require.GreaterOrEqual(t, j.Setup.Verdict, j.Today.Verdict)
	}
}
