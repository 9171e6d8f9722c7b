package command

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBatchSaysWhatIsWrongWithALine(t *testing.T) {
	for _, c := range []struct{ line, field, want string }{
		{`nonsense`, "request", "not JSON; give one object a line"},
		{`{"coat":`, "request", "not JSON"},
		{`{"coat":"clear",}`, "request", "not JSON"},
		{`[]`, "request", "a JSON array; give one object a line"},
		{`"clear"`, "request", "a JSON string; give one object a line"},
		{`5`, "request", "a JSON number"},
		{`null`, "coat", "choose"},
		{goodLine + ` x`, "request", "nothing after it"},
		{goodLine + goodLine, "request", "nothing after it"},
		{`{"coat":"clear","colour":"red"}`, "colour", "no such field; a request may hold " + strings.Join(question.Plan.Keys(), ", ") + ", "},
		{`{"coat":true}`, "coat", "a JSON bool will not do; give text or a number"},
		{`{"temp":{"f":72}}`, "temp", "a JSON object will not do"},
		{`{"temp":[72]}`, "temp", "a JSON array will not do"},
		{`{"hose":{}}`, "hose", "a JSON object will not do; give text or a number, or a list of them"},
		{`{"hose":[true]}`, "hose", "a JSON bool will not do"},
		{strings.Replace(goodLine, `}`, `,"hose":[""]}`, 1), "hose", "type length and bore"},
		{strings.Replace(goodLine, `}`, `,"compressor":"18cfm","receiver":"60gal","cut_in":"20psi","cut_out":"10psi"}`, 1), "cut_out", "10 psi is outside 20 to"},
		{`{"spread":"yes"}`, "spread", "give true or false"},
		{`{"units":5}`, "units", "choose us or metric"},
		{`{"units":"imperial"}`, "units", "choose us or metric"},
		{`{}`, "coat", "choose"},
		{strings.Replace(goodLine, `}`, `,"regulator_at":"roof"}`, 1), "regulator_at", "choose wall or gun"},
		{strings.Replace(goodLine, `45`, `1.002e2`, 1), "humidity", "100.2% is outside 1 to 100%"},
		{strings.Replace(goodLine, `45`, `1e300`, 1), "humidity", "that is too long"},
		{strings.Replace(goodLine, `45`, `450`, 1), "humidity", "outside 1 to 100%"},
		{"{\"coat\":\"\xff\"}", "coat", "choose"},
		{`{"coat":"` + strings.Repeat("x", longestLine) + `"}`, "request", "give a line of at most 1048576 bytes"},
	} {
		r := boothset(c.line+"\n"+goodLine+"\n", "plan", "--batch")
		assert.Equal(t, ExitBadInput, r.code)
		lines := batchLines(t, r)
		require.Len(t, lines, 2, c.line)
		f := faultIn(t, lines[0])
		assert.Equal(t, 1, f.Line)
		assert.Equal(t, c.field, f.Error.Field, lines[0])
		assert.Contains(t, f.Error.Want, c.want)
		decoded(t, lines[1])
	}
}

// FuzzBatch sends anything at all: as many answers as lines that are not blank, each
// an answer or an error object of its own line, in finite numbers.
func FuzzBatch(f *testing.F) {
	for _, s := range []string{
		"", "\n", goodLine, goodLine + "\r\n" + goodLine, "{}\n[]\nnull\n\"\"\n5\n", "\xff\n\x00\n", "\ufeff" + goodLine,
		`{"coat":"clear","gun":"high-pressure","temp":-10,"humidity":1,"supply":1,"wall":300,"hose":["500ft,3mm"],"regulator":"none","gauge":"foot","mark":"20psi","altitude":"5000m"}`,
		`{"coat":"waterborne-base","gun":"high-volume-low-pressure","temp":"60C","humidity":100,"supply":"300psi","hose":[],"coupling":"none","regulator_at":"gun","units":"metric"}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":22,"humidity":45,"supply":"90psi","compressor":"5hp","receiver":"60gal","main":"100ft,3/4in","other":["10cfm,50%"],"spray_time":5,"spread":true}`,
	} {
		f.Add([]byte(s))
	}
	known := pathsOf("plan")
	f.Fuzz(func(t *testing.T, data []byte) {
		r := boothset(string(data), "plan", "--batch")
		var want []int
		for i, l := range bytes.Split(bytes.TrimPrefix(data, []byte("\ufeff")), []byte("\n")) {
			if len(bytes.TrimSpace(l)) > 0 {
				want = append(want, i+1)
			}
		}
		lines := batchLines(t, r)
		if r.out == "" {
			lines = nil
		}
		require.Len(t, lines, len(want))
		for i, l := range lines {
			if strings.HasPrefix(l, `{"schema":"`+errorSchema) {
				require.Equal(t, ExitBadInput, r.code)
				require.Equal(t, want[i], faultIn(t, l).Line)
				continue
			}
			decoded(t, l)
			require.Empty(t, faultsOf(t, l))
			var v any
			require.NoError(t, json.Unmarshal([]byte(l), &v))
			paths := map[string]bool{}
			pathsIn(v, "", paths)
			for path := range paths {
				require.Contains(t, known, path, "it can be named with --fields")
			}
		}
		require.Contains(t, []int{ExitAnswered, ExitBadInput, ExitCannot}, r.code)
	})
}

// What is typed and does not count is a fault of its line, and the lines after it go on.
func TestBatchTellsWhatDoesNotCount(t *testing.T) {
	lines := batchLines(t, boothset(strings.Replace(goodLine, "{", `{"regulator":"none","regulator_at":"gun",`, 1)+"\n"+goodLine+"\n", "plan", "--batch"))
	f := faultIn(t, lines[0])
	assert.Equal(t, "regulator_at", f.Error.Field)
	assert.Contains(t, f.Error.Want, "does not count beside regulator none")
	decoded(t, lines[1])
	r := boothset("", clearJob("--compressor", "none", "--receiver", "60gal")...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Equal(t, "boothset: receiver \"60gal\": does not count beside compressor none; leave one of the two out\n", r.err)
}
