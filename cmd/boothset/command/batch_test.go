package command

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const goodLine = `{"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45,"supply":"90psi"}`

// fault is the answer to a line that will not do.
type fault struct {
	Schema string
	Line   int
	Error  struct{ Field, Given, Want, Text string }
}

func faultIn(t *testing.T, text string) (f fault) {
	t.Helper()
	require.NoError(t, json.Unmarshal([]byte(text), &f), text)
	require.Equal(t, errorSchema, f.Schema, text)
	require.NotEmpty(t, f.Error.Text)
	return f
}

func batchLines(t *testing.T, r ran) []string {
	t.Helper()
	require.Empty(t, r.err)
	require.True(t, r.out == "" || strings.HasSuffix(r.out, "\n"))
	return strings.Split(strings.TrimSuffix(r.out, "\n"), "\n")
}

// generalCaution is the caution that a run says once, as it stands in an answer.
var generalCaution = regexp.MustCompile(`,\{"level":"note","id":"safety"[^}]*\}`)

// once is an answer without it.
func once(line string) string { return generalCaution.ReplaceAllString(line, "") }

// The general caution is said once for the run, with its first answer, and what protects from
// each coat with each line.
func TestBatchSaysTheGeneralCautionOnce(t *testing.T) {
	epoxy := strings.Replace(goodLine, "clear", "epoxy-primer", 1)
	for q, in := range map[string]string{
		"plan": "nonsense\n" + goodLine + "\n" + epoxy + "\n" + goodLine + "\n",
		"day":  "nonsense\n" + strings.Repeat(`{"coat":"metallic-base","temp":"75F","humidity":45}`+"\n", 3),
	} {
		lines := batchLines(t, boothset(in, q, "--batch"))
		require.Len(t, lines, 4)
		for i, line := range lines {
			assert.Equal(t, i == 1, strings.Contains(line, `"id":"safety"`), line)
			assert.Equal(t, i > 0, strings.Contains(line, `"level":"warn","id":"isocyanate`) || strings.Contains(line, `"id":"amine"`), line)
		}
	}
}

// A line is answered as the same job is by flags.
func TestBatchAnswersAsFlagsDo(t *testing.T) {
	r := boothset(goodLine+"\n", "plan", "--batch")
	assert.Equal(t, ExitAnswered, r.code)
	got, want := decoded(t, r.out), planned(t, ExitAnswered, clearJob())
	assert.Equal(t, want, got)
}

func TestBatchTakesEveryField(t *testing.T) {
	r := boothset(`{"coat":"clear","gun":"reduced-pressure","temp":22,"humidity":"45%","panel":20.5,"altitude":300,"supply":6,"hose":["8,10","2m,8mm"],`+
		`"coupling":"ordinary","filter":"point-of-use","regulator":"3/8in","regulator_at":"gun","gauge":"foot","wall":4,"mark":0.1,"units":"metric"}`, "plan", "--batch")
	require.Equal(t, ExitAnswered, r.code, r.out)
	want := planned(t, ExitAnswered, clearJob("--units", "metric", "--temp", "22", "--panel", "20.5", "--altitude", "300", "--supply", "6", "--hose", "8,10", "--hose", "2m,8mm",
		"--coupling", "ordinary", "--filter", "point-of-use", "--regulator", "3/8in", "--regulator-at", "gun", "--gauge", "foot", "--wall", "4", "--mark", "0.1"))
	assert.Equal(t, want, decoded(t, r.out))
}

// A number is read as JSON writes it: with an exponent, with a point that never marks thousands.
func TestBatchReadsTheNumbersOfJSON(t *testing.T) {
	want := boothset(strings.Replace(goodLine, "}", `,"altitude":1250,"panel":70.125,"units":"us"}`, 1), "plan", "--batch")
	assert.Equal(t, ExitAnswered, want.code)
	got := boothset(strings.NewReplacer(`:45`, `:4.5E+1`, `}`, `,"altitude":1.25e3,"panel":701250e-4,"units":"us"}`).Replace(goodLine), "plan", "--batch")
	assert.Equal(t, want, got)
	plain := boothset(strings.Replace(goodLine, "}", `,"altitude":1.125,"units":"metric"}`, 1), "plan", "--batch")
	assert.NotContains(t, plain.out, `"error"`, "a text with this point is asked about, a number is not")
	asked := faultIn(t, boothset(strings.Replace(goodLine, "}", `,"altitude":"1.125","units":"metric"}`, 1), "plan", "--batch").out)
	assert.Equal(t, "the point can be read two ways: type 1125 or 1.1250", asked.Error.Want)
}

func TestBatchKeepsTheOrderAndGoesOnPastABadLine(t *testing.T) {
	supplies := []string{"40psi", "90psi", "nonsense", "60psi", "20psi"}
	var in strings.Builder
	for _, s := range supplies {
		in.WriteString(strings.Replace(goodLine, "90psi", s, 1) + "\n")
	}
	r := boothset(in.String(), "plan", "--batch")
	assert.Equal(t, ExitBadInput, r.code, "a bad line weighs more than a job that cannot be done")
	lines := batchLines(t, r)
	require.Len(t, lines, len(supplies))
	for i, psi := range map[int]float64{0: 40, 1: 90, 3: 60, 4: 20} {
		a := decoded(t, lines[i])
		assert.InDelta(t, psi, a.Line[0].In["psi"], 1e-9)
	}
	f := faultIn(t, lines[2])
	assert.Equal(t, 3, f.Line)
	assert.Equal(t, "supply", f.Error.Field)
	assert.Equal(t, "nonsense", f.Error.Given)
	assert.Contains(t, f.Error.Want, "90psi")
}

func TestBatchExitCodes(t *testing.T) {
	short := strings.Replace(goodLine, "90psi", "20psi", 1)
	for name, c := range map[string]struct {
		in   string
		code int
	}{
		"nothing":             {"", ExitAnswered},
		"answered":            {goodLine, ExitAnswered},
		"cannot be done":      {goodLine + "\n" + short + "\n" + goodLine, ExitCannot},
		"bad":                 {"{}\n" + goodLine, ExitBadInput},
		"bad, then cannot":    {"{}\n" + short, ExitBadInput},
		"cannot, then bad":    {short + "\n{}", ExitBadInput},
		"only blank lines":    {"\n \n\t\r\n", ExitAnswered},
		"good, then nonsense": {goodLine + "\nnonsense\n", ExitBadInput},
	} {
		assert.Equal(t, c.code, boothset(c.in, "plan", "--batch").code, name)
	}
}

func TestBatchLineEndsAndBlankLines(t *testing.T) {
	for name, in := range map[string]string{
		"windows line ends":          goodLine + "\r\n" + goodLine + "\r\n",
		"last line without an end":   goodLine + "\n" + goodLine,
		"blank lines between":        "\n\n" + goodLine + "\n  \n\t\n" + goodLine + "\n\n",
		"byte order mark":            "\ufeff" + goodLine + "\n" + goodLine + "\n",
		"spaces around":              "  " + goodLine + "  \n\t" + goodLine,
		"space within":               strings.ReplaceAll(goodLine, ":", " : ") + "\n" + goodLine,
		"keys in capitals":           strings.Replace(goodLine, "coat", "COAT", 1) + "\n" + goodLine,
		"the same key again, latest": strings.Replace(goodLine, `{`, `{"coat":"sealer",`, 1) + "\n" + goodLine,
	} {
		r := boothset(in, "plan", "--batch")
		assert.Equal(t, ExitAnswered, r.code, name)
		lines := batchLines(t, r)
		require.Len(t, lines, 2, name)
		assert.Equal(t, lines[1], once(lines[0]), name)
	}
	r := boothset("\n\n{}\n", "plan", "--batch")
	assert.Equal(t, 3, faultIn(t, r.out).Line, "blank lines count")
}

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

// A line of spaces to a megabyte is longer than the reader's buffer and is still read.
func TestBatchReadsALongLine(t *testing.T) {
	long := strings.Replace(goodLine, "{", "{"+strings.Repeat(" ", 200_000), 1)
	lines := batchLines(t, boothset(long+"\n"+goodLine, "plan", "--batch"))
	require.Len(t, lines, 2)
	assert.Equal(t, lines[1], once(lines[0]))
}

func TestBatchUnitsFlagIsForLinesWithoutTheirOwn(t *testing.T) {
	metric := `{"coat":"clear","gun":"reduced-pressure","temp":22,"humidity":45,"supply":6}`
	us := `{"coat":"clear","gun":"reduced-pressure","temp":72,"humidity":45,"supply":90,"units":"us"}`
	lines := batchLines(t, boothset(metric+"\n"+us, "plan", "--batch", "--json", "--units", "metric"))
	require.Len(t, lines, 2)
	assert.InDelta(t, 6, decoded(t, lines[0]).Line[0].In["bar"], 1e-9)
	assert.InDelta(t, 90, decoded(t, lines[1]).Line[0].In["psi"], 1e-9)
}

func TestBatchRefusesAnswersByFlag(t *testing.T) {
	r := boothset(goodLine, "plan", "--batch", "--coat", "clear")
	assert.Equal(t, ExitBadInput, r.code)
	assert.Empty(t, r.out)
	assert.Contains(t, r.err, "coat: with --batch each request gives its own")
}

// Whoever sends one line at a time has its answer before sending the next.
func TestBatchAnswersBeforeTheInputEnds(t *testing.T) {
	in, answers, code := pipedBatch(t)
	for range 3 {
		_, err := io.WriteString(in, goodLine+"\n")
		require.NoError(t, err)
		select {
		case text := <-answers:
			decoded(t, text)
		case <-time.After(10 * time.Second):
			require.Fail(t, "no answer while the input is open")
		}
	}
	require.NoError(t, in.Close())
	assert.Equal(t, ExitAnswered, <-code)
	_, more := <-answers
	assert.False(t, more)
}

// pipedBatch is a batch whose input stays open, with its answers as they come.
func pipedBatch(t *testing.T, args ...string) (in *io.PipeWriter, answers <-chan string, code <-chan int) {
	t.Helper()
	toIn, in := io.Pipe()
	out, fromOut := io.Pipe()
	ended, lines := make(chan int, 1), make(chan string, 1000)
	go func() {
		c := runOn(Stdio{toIn, fromOut, io.Discard}, noEnv, append([]string{"plan", "--batch"}, args...)...)
		fromOut.Close()
		ended <- c
	}()
	go func() {
		defer close(lines)
		rows := bufio.NewScanner(out)
		rows.Buffer(nil, 1<<20)
		for rows.Scan() {
			lines <- rows.Text()
		}
	}()
	t.Cleanup(func() { in.Close() })
	return in, lines, ended
}

// All answers there are leave while the next line is waited for, half of which may be there.
func TestBatchAnswersWithHalfALineWaiting(t *testing.T) {
	for _, jobs := range []string{"1", "2", "7"} {
		in, answers, code := pipedBatch(t, "--jobs", jobs)
		half := len(goodLine) / 2
		_, err := io.WriteString(in, strings.Repeat(goodLine+"\n", 40)+goodLine[:half])
		require.NoError(t, err)
		for range 40 {
			select {
			case text := <-answers:
				decoded(t, text)
			case <-time.After(10 * time.Second):
				require.Fail(t, "no answer while half a line waits")
			}
		}
		_, err = io.WriteString(in, goodLine[half:])
		require.NoError(t, err)
		require.NoError(t, in.Close())
		decoded(t, <-answers)
		assert.Equal(t, ExitAnswered, <-code)
	}
}

// However many lines are answered at once, the answers are the same and in the same order.
func TestBatchAnswersAlikeOnAnyNumberOfJobs(t *testing.T) {
	var in strings.Builder
	for i := range 120 {
		switch {
		case i%11 == 3:
			in.WriteString("nonsense\n")
		case i%13 == 5:
			in.WriteString("\n")
		default:
			in.WriteString(strings.Replace(goodLine, "90psi", strconv.Itoa(20+i%80)+"psi", 1) + "\n")
		}
	}
	want := boothset(in.String(), "plan", "--batch", "--jobs", "1")
	assert.Equal(t, ExitBadInput, want.code)
	for _, jobs := range []string{"2", "3", "16", "256"} {
		assert.Equal(t, want, boothset(in.String(), "plan", "--batch", "--jobs", jobs), jobs)
	}
	assert.Equal(t, want, boothset(in.String(), "plan", "--batch"))
}

// endless is an input of so many lines that says how much memory is held on its way.
type endless struct {
	line  string
	rest  string
	lines int
	held  map[int]uint64 // by how many lines are left
}

func (e *endless) Read(p []byte) (int, error) {
	if e.rest == "" {
		if e.lines == 0 {
			return 0, io.EOF
		}
		if _, ask := e.held[e.lines]; ask {
			var m runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&m)
			e.held[e.lines] = m.HeapAlloc
		}
		e.lines--
		e.rest = e.line
	}
	n := copy(p, e.rest)
	e.rest = e.rest[n:]
	return n, nil
}

// The memory does not grow with the input.
func TestBatchMemoryIsFlat(t *testing.T) {
	in := &endless{line: strings.Repeat(goodLine+"\n", 10), lines: 300, held: map[int]uint64{200: 0, 10: 0}}
	code := runOn(Stdio{in, io.Discard, io.Discard}, noEnv, "plan", "--batch", "--jobs", "2")
	assert.Equal(t, ExitAnswered, code)
	require.NotZero(t, in.held[200], "more than are in hand were read")
	assert.Less(t, in.held[10], in.held[200]+8<<20, "the answers in between are some 19 MB")
}

// What stops the output stops the batch, whatever is still to be read.
func TestBatchEndsWithItsOutput(t *testing.T) {
	in := &endless{line: goodLine + "\n", lines: 1 << 40}
	var err strings.Builder
	assert.Equal(t, ExitFailed, runOn(Stdio{in, closed{}, &err}, noEnv, "plan", "--batch"))
	assert.Contains(t, err.String(), errClosed.Error())
}

// halfway is an input that breaks after its text.
type halfway struct{ io.Reader }

func (h halfway) Read(p []byte) (int, error) {
	n, err := h.Reader.Read(p)
	if err == io.EOF {
		err = errClosed
	}
	return n, err
}

func TestBatchInputThatBreaks(t *testing.T) {
	var out, errs bytes.Buffer
	code := runOn(Stdio{halfway{strings.NewReader(goodLine + "\n" + goodLine)}, &out, &errs}, noEnv, "plan", "--batch")
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, errs.String(), errClosed.Error())
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
