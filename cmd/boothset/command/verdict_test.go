package command

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// judgedRequest is a request to a batch with what is to speak against spraying.
type judgedRequest struct {
	line string
	calc.Judgement
}

// kind is what verdict it has, and what speaks against spraying in which order.
func (j *judgedRequest) kind() string {
	against := []string{}
	for _, c := range j.Against {
		against = append(against, fmt.Sprintf(`{"id":%q,"level":%q}`, c.ID, c.Level))
	}
	return fmt.Sprintf(`{"verdict":%q,"against":[%s],"stopped":%v}`, j.Verdict, strings.Join(against, ","), j.Stopped())
}

// judgedRequests is so many drawn requests, judged without a batch.
func judgedRequests(t *testing.T, n int) []judgedRequest {
	t.Helper()
	r := questiontest.Open(t)
	all := make([]judgedRequest, n)
	var wait sync.WaitGroup
	i := 0
	for texts := range questiontest.Requests(r, n) {
		of := &all[i]
		i++
		wait.Go(func() {
			request := map[string]any{}
			for name, all := range texts {
				row, _ := question.Plan.Field(name)
				switch {
				case row.Repeats:
					request[row.Key()] = all
				case all[0] != "":
					request[row.Key()] = all[0]
				}
			}
			line, err := json.Marshal(request)
			assert.NoError(t, err)
			q, faults := r.Plan(r.ReadAll(question.Plan, texts, unit.US), unit.US)
			if !assert.Empty(t, faults) {
				return
			}
			setup, err := calc.Solve(q)
			if assert.NoError(t, err) {
				of.line, of.Judgement = string(line)+"\n", setup.Judgement
			}
		})
	}
	wait.Wait()
	require.False(t, t.Failed())
	return all
}

// A batch of 10,000 requests has the verdict of each plan and what speaks against it, in the same
// order, and exits as the worst of them. Of each kind of those, four answers are looked at whole.
func TestABatchHasTheVerdictOfEachPlan(t *testing.T) {
	all := judgedRequests(t, 10000)
	const each = 4
	var lines, few strings.Builder
	var whole []*judgedRequest
	seen := map[string]int{}
	for i := range all {
		of := &all[i]
		lines.WriteString(of.line)
		if seen[of.kind()]++; seen[of.kind()] <= each {
			few.WriteString(of.line)
			whole = append(whole, of)
		}
	}
	require.Greater(t, len(seen), 400, "of many kinds")
	ran := boothset(lines.String(), "plan", "--batch", "--units", "us", "--fields", "verdict,against.id,against.level,stopped")
	require.Equal(t, ExitCannot, ran.code, ran.err)
	got := strings.Split(strings.TrimSpace(ran.out), "\n")
	require.Len(t, got, len(all))
	for i, text := range got {
		if want := all[i].kind(); want != text {
			require.Equal(t, want, text, all[i].line)
		}
	}
	ran = boothset(few.String(), "plan", "--batch", "--units", "us")
	require.Equal(t, ExitCannot, ran.code, ran.err)
	got = strings.Split(strings.TrimSpace(ran.out), "\n")
	require.Len(t, got, len(whole))
	for i, text := range got {
		holdsWhole(t, &whole[i].Judgement, text)
	}
}

// holdsWhole holds an answer to its judgement: each thing against it has its turn, and of a job
// that is stopped nothing is set.
func holdsWhole(t *testing.T, j *calc.Judgement, text string) {
	t.Helper()
	var a map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &a))
	require.Equal(t, j.Verdict.String(), a["verdict"], text)
	require.Equal(t, j.Stopped(), a["stopped"], text)
	against := a["against"].([]any)
	require.Len(t, against, len(j.Against))
	for n, c := range j.Against {
		of := against[n].(map[string]any)
		require.Equal(t, c.ID, of["id"])
		require.Equal(t, c.Level.String(), of["level"])
		require.NotEmpty(t, of["turn"])
	}
	if len(against) > 0 {
		require.Equal(t, against[0].(map[string]any)["turn"], a["turn"], "of the worst")
	} else {
		require.Nil(t, a["turn"])
	}
	for _, setting := range []string{"wall", "distance", "valve", "gun"} {
		require.Contains(t, a, setting)
		require.Equal(t, j.Stopped(), a[setting] == nil, "%s of %s", setting, text)
	}
	for _, hidden := range []string{"first", "now", "comparison", "spread"} {
		require.Contains(t, a, hidden)
		require.True(t, !j.Stopped() || a[hidden] == nil, "%s of %s", hidden, text)
	}
}

// A stop exits 3 and nothing milder does, as a card, as JSON and in a batch, of a plan and of
// a day.
func TestExitCodesOfVerdicts(t *testing.T) {
	for _, x := range []struct {
		verdict string
		code    int
		args    []string
		line    string
	}{
		{"go", ExitAnswered, clearJob(), `{"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45,"supply":"90psi"}`},
		{"watch", ExitAnswered, clearJob("--temp", "93F"), `{"coat":"clear","gun":"reduced-pressure","temp":"93F","humidity":45,"supply":"90psi"}`},
		{"wait", ExitAnswered, clearJob("--temp", "50F"), `{"coat":"clear","gun":"reduced-pressure","temp":"50F","humidity":45,"supply":"90psi"}`},
		{"stop", ExitCannot, clearJob("--humidity", "90"), `{"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":90,"supply":"90psi"}`},
		{"go", ExitAnswered, dayArgs("clear", "72F", "45"), `{"coat":"clear","temp":"72F","humidity":45}`},
		{"watch", ExitAnswered, dayArgs("clear", "93F", "45"), `{"coat":"clear","temp":"93F","humidity":45}`},
		{"wait", ExitAnswered, dayArgs("waterborne-base", "35C", "20"), `{"coat":"waterborne-base","temp":"35C","humidity":20}`},
		{"stop", ExitCannot, dayArgs("clear", "72F", "90"), `{"coat":"clear","temp":"72F","humidity":90}`},
	} {
		assert.Equal(t, x.code, boothset("", x.args...).code, x.args)
		for _, r := range []ran{boothset("", append(x.args, "--json")...), boothset(x.line, x.args[0], "--batch")} {
			assert.Equal(t, x.code, r.code, x.args)
			var a judgedJSON
			require.NoError(t, json.Unmarshal([]byte(r.out), &a))
			assert.Equal(t, x.verdict, a.Verdict, x.args)
			assert.Equal(t, x.code == ExitCannot, a.Stopped)
			assert.Equal(t, x.verdict == "go", a.Turn == nil)
		}
	}
}
