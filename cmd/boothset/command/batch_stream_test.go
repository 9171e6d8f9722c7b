package command

import (
	"bufio"
	"bytes"
	"io"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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
