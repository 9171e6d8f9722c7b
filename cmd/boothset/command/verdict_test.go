package command

import (
	"encoding/json"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A batch of 10,000 requests has the verdict of each plan, what speaks against it in the same
// order, and, of one that is stopped, nothing to set; it exits as the worst of them.
func TestABatchHasTheVerdictOfEachPlan(t *testing.T) {
	r := questiontest.Open(t)
	var lines strings.Builder
	var want []calc.Judgement
	for texts := range questiontest.Requests(r, 10000) {
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
		require.NoError(t, err)
		lines.Write(append(line, '\n'))
		p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, unit.US), unit.US)
		require.NoError(t, err)
		want = append(want, p.Setup.Judgement)
	}
	ran := boothset(lines.String(), "plan", "--batch", "--units", "us")
	if at := strings.Index(ran.out, `"boothset.error`); at >= 0 {
		require.Fail(t, "a line was refused", ran.out[at:min(at+400, len(ran.out))])
	}
	require.Equal(t, ExitCannot, ran.code, ran.err)
	got := strings.Split(strings.TrimSpace(ran.out), "\n")
	require.Len(t, got, len(want))
	for i, text := range got {
		var a map[string]any
		require.NoError(t, json.Unmarshal([]byte(text), &a))
		j := &want[i]
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
