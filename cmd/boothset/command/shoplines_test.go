package command

import (
	"encoding/json"
	"strings"
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func requestLine(t testing.TB, request map[string]any) string {
	t.Helper()
	line, err := json.Marshal(request)
	require.NoError(t, err)
	return string(line) + "\n"
}

// clearRequest is a job in booth two, and more of a request.
func clearRequest(t testing.TB, more map[string]any) string {
	t.Helper()
	request := map[string]any{"booth": "two", "coat": "clear", "gun": "number-four", "temp": "72F", "humidity": 45}
	for key, v := range more {
		request[key] = v
	}
	return requestLine(t, request)
}

// Each line of a batch is answered as the command alone would, but that the general caution is
// said once.
func TestABatchOfTheShopsCommands(t *testing.T) {
	_, env := quarryLane(t)
	alone := []string{"--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "72F", "--humidity", "45"}
	in := clearRequest(t, nil) + clearRequest(t, map[string]any{"booth": []string{"two"}, "units": "metric", "temp": 22.5}) + clearRequest(t, nil)
	for _, c := range []string{"compare", "card"} {
		in := in
		if c == "card" {
			in = strings.ReplaceAll(in, `["two"]`, `"two"`)
		}
		batch := boothsetIn(env, in, c, "--batch", "--jobs", "2")
		require.Equal(t, ExitAnswered, batch.code, batch.err)
		rows := strings.Split(strings.TrimSpace(batch.out), "\n")
		require.Len(t, rows, 3, c)
		single := boothsetIn(env, "", append([]string{c, "--json"}, alone...)...)
		if c == "compare" {
			assert.Equal(t, strings.TrimSpace(single.out), rows[0])
			assert.Equal(t, 1, strings.Count(batch.out, `"id":"safety"`))
		}
		var a, b map[string]any
		require.NoError(t, json.Unmarshal([]byte(single.out), &a))
		require.NoError(t, json.Unmarshal([]byte(rows[2]), &b))
		for _, key := range []string{"printed", "rows", "cautions"} { // the time of it, and the caution that was said
			delete(a, key)
			delete(b, key)
		}
		assert.Equal(t, a, b, c)
		assert.NotContains(t, rows[1], errorSchema)
	}
}

// What is kept by a batch is kept line by line, in their order; a bad line costs itself.
func TestABatchIsKept(t *testing.T) {
	_, env := quarryLane(t)
	in := clearRequest(t, map[string]any{"set": []string{"wall=50psi"}}) + clearRequest(t, map[string]any{"set": "wall=51psi", "any": []string{"band"}}) +
		clearRequest(t, map[string]any{"set": map[string]any{"wall": 50}}) + "nonsense\n" + clearRequest(t, map[string]any{"force": "yes"}) + clearRequest(t, map[string]any{"set": []string{"wall=52psi"}})
	dry := boothsetIn(env, in, "agree", "--batch", "--dry-run")
	assert.Equal(t, ExitBadInput, dry.code)
	assert.Empty(t, settingsOf(t, env, "--all"))
	r := boothsetIn(env, in, "agree", "--batch")
	assert.Equal(t, ExitBadInput, r.code)
	rows := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, rows, 6)
	for n, says := range map[int]string{2: `"field":"set","given":"","want":"a JSON object will not do; give text or a number, or a list of them"`, 3: "not JSON", 4: `"field":"force","given":"","want":"no such field; a request may hold set, any, band,`} {
		assert.Contains(t, rows[n], errorSchema)
		assert.Contains(t, rows[n], says)
	}
	all := settingsOf(t, env, "--all")
	require.Len(t, all, 3)
	assert.Equal(t, []string{all[0].ID}, all[2].Replaces)
	assert.Equal(t, 1, strings.Count(r.out, `"id":"safety"`))

	r = boothsetIn(env, clearRequest(t, map[string]any{"read": []string{"wall=49psi", "gun=25psi"}, "at": "2025-01-02"})+clearRequest(t, map[string]any{"outcome": []string{"run", "dirt"}, "then": "redo"}), "log", "record", "--batch", "--fields", "kept,record")
	require.Equal(t, ExitAnswered, r.code, r.err)
	var first struct{ Record string }
	require.NoError(t, json.Unmarshal([]byte(strings.Split(r.out, "\n")[0]), &first))
	r = boothsetIn(env, requestLine(t, map[string]any{"id": first.Record, "outcome": "good"})+requestLine(t, map[string]any{"outcome": "good"}), "log", "outcome", "--batch")
	assert.Equal(t, ExitBadInput, r.code, "the second has its outcome by now, and the first too")
	jobs := jobsOfLog(t, env)
	require.Len(t, jobs, 2)
	assert.Equal(t, []string{"good"}, jobs[0].Outcome)
	assert.Equal(t, []string{"run", "dirt"}, jobs[1].Outcome)

	for _, args := range [][]string{
		{"agree", "--batch", "--coat", "clear"}, {"log", "record", "--batch", "--at", "2025-01-02"}, {"compare", "--batch", "--booth", "two"}, {"sheet", "--jobs", "2"},
		{"card", "--batch", "--output", "x"}, {"agree", "--batch", "--jobs", "0"}, {"agree", "--batch", "--fields", "settings"},
	} {
		assert.Equal(t, ExitBadInput, boothsetIn(env, in, args...).code, args)
	}
}

// The sheets of all booths are those of each, in their order, of the whole shop; one that cannot
// be costs itself.
func TestTheSheetsOfAllBooths(t *testing.T) {
	_, env := quarryLane(t, "booths/torn.toml", "format", "booths/old.toml", "format = \"boothset.booth/1\"\nretired = true\n")
	all := boothsetIn(env, "", "sheet")
	assert.Equal(t, ExitBadInput, all.code)
	assert.Contains(t, all.err, "booths/torn.toml")
	assert.NotContains(t, all.out+all.err, "of old")
	three, two := boothsetIn(env, "", "sheet", "--booth", "three").out, boothsetIn(env, "", "sheet", "--booth", "two").out
	body := two[:strings.LastIndex(two, "\n- ")] // the general caution is said once
	assert.Equal(t, three+"\n"+body, strings.TrimSuffix(all.out, "\n"))
	rows := strings.Split(strings.TrimSpace(boothsetIn(env, "", "sheet", "--json", "--coat", "clear", "--fields", "booth,guns.rows.coat").out), "\n")
	require.Len(t, rows, 3)
	assert.Equal(t, `{"booth":"three","guns":[{"rows":[{"coat":"clear"}]}]}`, rows[0])
	assert.Contains(t, rows[1], errorSchema)
	assert.Contains(t, rows[1], "booth torn: ")
	batch := boothsetIn(env, `{"booth":"two","coat":["clear"]}`+"\n"+`{"booth":"nine"}`+"\n{}", "sheet", "--batch")
	assert.Equal(t, ExitBadInput, batch.code)
	assert.Equal(t, 3, strings.Count(batch.out, "\n"), "one answer a line")
	assert.Contains(t, batch.out, `"field":"booth","given":"nine","want":"choose old, three, torn or two"`)
}

// Every question that is answered for a booth and a gun of the shop by flags is so by keys.
func TestBoothAndGunAsFlagsAndAsKeys(t *testing.T) {
	_, env := quarryLane(t)
	asked := map[string]map[string]any{
		"plan": {"coat": "clear", "temp": "72F", "humidity": "45%"}, "day": {"coat": "clear", "temp": "72F", "humidity": "45%"}, "thin": {"coat": "clear", "cup": "din4", "seconds": "21", "paint": "62F"},
		"film": {"coat": "clear", "cup_volume": "100mL", "cup_time": "33s"}, "mix": {"coat": "clear", "area": "12ft2", "ratio": "4:1:1"},
	}
	for _, q := range question.Questions() {
		request, args := asked[q.Name], []string{q.Name, "--json", "--booth", "three"}
		request["booth"] = "three"
		if q.Has(question.Gun) {
			request["gun"] = "number-four"
		}
		for key, v := range request {
			if key != "booth" {
				args = append(args, "--"+strings.ReplaceAll(key, "_", "-"), v.(string))
			}
		}
		flags := boothsetIn(env, "", args...)
		require.Equal(t, ExitAnswered, flags.code, flags.err)
		keys := boothsetIn(env, requestLine(t, request), q.Name, "--batch")
		if q == question.Plan {
			keys = boothsetIn(env, requestLine(t, func() map[string]any { request["spread"] = true; return request }()), q.Name, "--batch")
		}
		assert.Equal(t, flags, keys, q.Name)
	}
}
