package command

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

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
