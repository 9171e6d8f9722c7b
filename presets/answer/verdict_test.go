package answer_test

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plan and day are what texts come to.
func plan(t require.TestingT, r *question.Reader, texts question.Texts) *answer.Plan {
	p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, unit.US), unit.US)
	require.NoError(t, err)
	return p
}

func day(t require.TestingT, r *question.Reader, texts question.Texts) *answer.Day {
	a, err := answer.Ask(r, question.Day, r.ReadAll(question.Day, texts, unit.US), unit.US)
	require.NoError(t, err)
	return a.(*answer.Day)
}

// dayTexts is what a plan's answers say of its day.
func dayTexts(plan question.Texts) question.Texts {
	texts := question.Texts{}
	for _, row := range question.Day.Fields {
		if all, ok := plan[row.Name]; ok {
			texts[row.Name] = all
		}
	}
	return texts
}

// Of 10,000 requests the plan is never milder than the day asked about by itself, says of
// the weather what that does, and comes to the same where line, gun and supply raise nothing.
func TestAPlanIsNeverMilderThanItsDay(t *testing.T) {
	r := questiontest.Open(t)
	seen := map[calc.Verdict]int{}
	for texts := range questiontest.Requests(r, 10000) {
		p := plan(t, r, texts)
		s, d := p.Setup, day(t, r, dayTexts(texts)).Found
		require.GreaterOrEqual(t, s.Verdict, d.Verdict, "%v", texts)
		var raised []calc.Cause
		for _, c := range s.Against {
			if !slices.ContainsFunc(d.Against, func(o calc.Cause) bool { return o.ID == c.ID }) {
				raised = append(raised, c)
			}
		}
		require.Len(t, s.Against, len(d.Against)+len(raised), "%v", texts)
		if len(raised) == 0 {
			require.Equal(t, d.Verdict, s.Verdict, "%v", texts)
		}
		require.Equal(t, s.Stopped(), s.Verdict == calc.VerdictStop)
		seen[s.Verdict]++
	}
	for v := calc.VerdictGo; v <= calc.VerdictStop; v++ {
		assert.Greater(t, seen[v], 200, "%v", v)
	}
}

// A verdict is the worst of what speaks against spraying, which stands in order, each with
// a turn; it heads the answer, and of a job that is stopped nothing is to be set.
func TestTheVerdictHeadsTheAnswer(t *testing.T) {
	r := questiontest.Open(t)
	for texts := range questiontest.Requests(r, 500) {
		p := plan(t, r, texts)
		p.Sure()
		j := &p.Setup.Judgement
		require.Equal(t, j.Verdict == calc.VerdictGo, len(j.Against) == 0)
		for i, c := range j.Against {
			require.LessOrEqual(t, c.Level, j.Verdict)
			require.True(t, i == 0 || j.Against[i-1].Level >= c.Level, "the gravest first")
			require.NotEmpty(t, c.Turn.ID, c.ID)
		}
		rows := p.Rows(r.Words(), unit.US)
		require.Equal(t, answer.Verdict, rows[0].Role)
		require.Equal(t, j.Verdict.String(), rows[0].ID)
		if len(j.Against) > 0 {
			require.Equal(t, j.Verdict, j.Against[0].Level)
			require.Contains(t, rows[0].Text, answer.TurnText(r.Words(), unit.US, j.Turn()), "the cure comes first")
		}
		set := slices.ContainsFunc(rows, func(row answer.Row) bool {
			return row.Role == answer.Setting || row.Role == answer.Range || row.Role == answer.First
		})
		require.Equal(t, !p.Stopped(), set)
		require.Equal(t, p.Stopped(), p.Spread == nil && !(p.Setup.Short.Is && !p.Stopped()))
	}
}

// A wall that is read too high leaves the verdict as it is, and is what is mended first.
func TestAWallReadTooHighIsTurnedDownFirst(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	require.Equal(t, calc.VerdictGo, plan(t, r, texts).Setup.Verdict)
	p := plan(t, r, questiontest.With(texts, "wall", "70psi"))
	assert.Equal(t, calc.VerdictGo, p.Setup.Verdict)
	rows := answer.FirstRows(r.Words(), unit.US, p.Setup)
	require.Len(t, rows, 1)
	assert.Equal(t, "Turn the wall regulator down to 31.0 psi first.", rows[0].Text)
	all := p.Rows(r.Words(), unit.US)
	first := slices.IndexFunc(all, func(row answer.Row) bool { return row.Role == answer.First })
	setting := slices.IndexFunc(all, func(row answer.Row) bool { return row.Role == answer.Setting })
	assert.Less(t, first, setting)
	for wall, id := range map[string]string{"31psi": "", "31.4psi": "", "32psi": "first-down", "30psi": "", "29psi": "first-up"} {
		assert.Equal(t, id, plan(t, r, questiontest.With(texts, "wall", wall)).Setup.First.ID, wall)
	}
	stopped := questiontest.With(questiontest.With(texts, "wall", "70psi"), "humidity", "95")
	assert.Empty(t, plan(t, r, stopped).Setup.First.ID, "nothing is set")
}

// Each thing that line, gun and supply raise, with its verdict and what turns it.
func TestWhatLineGunAndSupplyRaise(t *testing.T) {
	r := questiontest.Open(t)
	with := func(pairs ...string) question.Texts {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		for name, all := range questiontest.Texts(pairs...) {
			texts[name] = all
		}
		return texts
	}
	small := []string{"compressor", "6cfm", "receiver", "10gal", "spray-time", "5min"}
	for _, x := range []struct {
		name    string
		texts   question.Texts
		verdict calc.Verdict
		against []string
		turn    string
	}{
		{"nothing", with(), calc.VerdictGo, nil, ""},
		{"less than the target, inside the band", with("supply", "28psi"), calc.VerdictWait, []string{"supply-short"}, "turn-more-supply"},
		{"under the band", with("supply", "26.5psi"), calc.VerdictStop, []string{"supply-short"}, "turn-more-supply"},
		{"no regulator", with("regulator", "none"), calc.VerdictWait, []string{"no-regulator"}, "turn-regulator"},
		{"no regulator, and short", with("regulator", "none", "supply", "28psi"), calc.VerdictWait, []string{"supply-short", "no-regulator"}, "turn-more-supply"},
		{"a wall over twice the stamp", with("hose", "60ft,1/4in", "gun", "high-volume-low-pressure", "supply", "150psi"), calc.VerdictWait, []string{"wall-high"}, "turn-mend"},
		{"a supply that gives out", with(small...), calc.VerdictStop, []string{"supply-gives-out"}, "turn-compressor"},
		{"and a mask on it", with(append(small, "other", "6cfm,mask")...), calc.VerdictStop, []string{"mask-starves", "supply-gives-out"}, "turn-mask"},
		{"a mask on a supply that lasts", with("compressor", "30cfm", "receiver", "60gal", "other", "6cfm,mask"), calc.VerdictGo, nil, ""},
		{"a mask on a supply that is short", with("supply", "28psi", "compressor", "30cfm", "receiver", "60gal", "other", "6 cfm, Mask"), calc.VerdictStop, []string{"mask-starves", "supply-short"}, "turn-mask"},
		{"lasts from full alone", with("compressor", "0cfm", "receiver", "30gal", "spray-time", "2min"), calc.VerdictWait, []string{"supply-from-full"}, "turn-full"},
		{"a receiver that hides a deficit for a panel", with("compressor", "8cfm", "receiver", "60gal"), calc.VerdictWatch, []string{"supply-deficit"}, "turn-pause"},
		{"panels that it does not recover between", with("compressor", "6cfm", "receiver", "60gal", "panels", "9", "pause", "10s"), calc.VerdictWait, []string{"supply-series"}, "turn-pause"},
		{"panels that it recovers between", with("compressor", "8cfm", "receiver", "60gal", "panels", "9"), calc.VerdictGo, nil, ""},
		{"another gun by its class", with("compressor", "8cfm", "receiver", "10gal", "other", "high-volume-low-pressure"), calc.VerdictStop, []string{"supply-gives-out"}, "turn-compressor"},
		{"a hazard of the coat does not count", with("coat", "epoxy-primer"), calc.VerdictGo, nil, ""},
		{"a high-volume clear is no warning of its own", with("gun", "high-volume-low-pressure"), calc.VerdictGo, nil, ""},
	} {
		t.Run(x.name, func(t *testing.T) {
			s := plan(t, r, x.texts).Setup
			var ids []string
			for _, c := range s.Against {
				ids = append(ids, c.ID)
			}
			assert.Equal(t, x.verdict, s.Verdict)
			assert.Equal(t, x.against, ids)
			assert.Equal(t, x.turn, s.Turn().ID)
		})
	}
}

// No coat's own start on any gun sets off a warning on a mild day, in either system's marks.
func TestNoDefaultSetsOffItsOwnWarning(t *testing.T) {
	r := questiontest.Open(t)
	for _, coat := range questiontest.Entries(r, question.Coat) {
		for _, gun := range questiontest.Entries(r, question.Gun) {
			for _, sys := range bothSystems {
				p, err := answer.AskPlan(r, r.ReadAll(question.Plan, questiontest.MildDay(coat, gun), sys), sys)
				require.NoError(t, err)
				s := p.Setup
				assert.Equal(t, calc.VerdictGo, s.Verdict, "%s %s", coat, gun)
				assert.LessOrEqual(t, s.Wall.Flowing, s.Wall.Limit, "%s %s", coat, gun)
				for _, c := range s.Cautions {
					assert.True(t, c.Level == calc.Note || c.Safety, "%s %s: %s", coat, gun, c.ID)
				}
			}
		}
	}
}
