package command

import (
	"bufio"
	"errors"
	"io"
	"runtime/debug"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
)

// errorSchema names the shape of a bad line's answer.
const errorSchema = "boothset.error/1"

// batch is requests to a question on their way to their answers.
type batch struct {
	opened
	q     *question.Question
	keys  []string // requestKeys
	pick  *picked  // of each answer; nil is all of it
	shops *booths
}

// runBatch answers requests to a question, on so many cores.
func (p *Program) runBatch(o opened, q *question.Question, jobs int, pick *picked) int {
	b := &batch{opened: o, q: q, keys: requestKeys(q), pick: pick, shops: p.booths(o.words)}
	// The longer the run, the more often would the collector come late: without a limit the most
	// that is held grows with the input.
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(int64(memoryOfBatch + jobs*memoryOfJob)))
	return p.runLines(o, p.Std.In, jobs, manyLines, b.appendLine)
}

// memoryOfBatch and memoryOfJob are what a batch may hold before garbage is collected at once, and
// what more for each line that is answered at once: some ten times what lives.
const memoryOfBatch, memoryOfJob = 32 << 20, 4 << 20

// runLines answers one JSON request a line, in their order, on so many cores, so many together. A bad line is
// answered by an error object and the rest go on. It exits 2 where any line was bad, else 3
// where any job cannot be done, else 0.
func (p *Program) runLines(o opened, from io.Reader, jobs, together int, answer lineAnswer) int {
	// Next to nothing lives on from line to line: collecting garbage every few megabytes
	// would be a tenth of the time.
	defer debug.SetGCPercent(debug.SetGCPercent(600))
	in := &metered{Reader: from}
	lines := answerAll(in, jobs, together, answer)
	defer lines.leave()
	shown := p.showProgress(o, in)
	worst, broken := lines.writeTo(p.Std.Out, shown)
	shown.clear()
	if broken != nil {
		return p.failed(o.words, broken.id, broken.err, broken.figures...)
	}
	return worst
}

// brokenOff is what a batch was broken off by: the sentence's id with the error and the line.
type brokenOff struct {
	id      string
	err     error
	figures calc.Figures
}

// writeTo writes the answers and gives the worst exit code of them.
func (q *queue) writeTo(to io.Writer, shown *progress) (worst int, broken *brokenOff) {
	out := bufio.NewWriterSize(to, 1<<16)
	for worst = ExitAnswered; ; {
		x := q.next(out)
		if x == nil {
			break
		}
		worst = worse(worst, x.code)
		if _, err := out.Write(x.answers); err != nil {
			return worst, &brokenOff{"failed-line-out", err, calc.Figures{calc.CountFigure("line", x.first)}}
		}
		if x.err != nil && x.err != io.EOF {
			broken = &brokenOff{"failed-line-in", x.err, calc.Figures{calc.CountFigure("line", x.last)}}
		}
		shown.count(x.last)
		q.again(x)
	}
	if err := out.Flush(); err != nil {
		return worst, &brokenOff{id: "failed-writing", err: err}
	}
	return worst, broken
}

// longestLine is the longest request that is read.
const longestLine = 1 << 20

// readLine appends a line to dst, its end included, or what is left at the end of input with
// io.EOF. Of a line longer than longestLine only so much is kept as shows that, and its end.
func readLine(in *bufio.Reader, dst []byte) ([]byte, error) {
	start := len(dst)
	for {
		text, err := in.ReadSlice('\n')
		if len(dst)-start <= longestLine {
			dst = append(dst, text...)
		} else if err == nil {
			dst = append(dst, '\n')
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return dst, err
		}
	}
}

// appendLine appends the answer to a line, with its end, and gives its exit code. said is that
// the general caution was said before.
func (b *batch) appendLine(dst []byte, text []byte, n int, said bool) ([]byte, int) {
	r, err := b.decode(text)
	if err != nil {
		return appendError(dst, n, err), ExitBadInput
	}
	found, err := askTyped(r.reader, b.q, r.answers, r.sys)
	if err != nil {
		return appendError(dst, n, err), ExitBadInput
	}
	if plan, ok := found.(*answer.Plan); ok && r.spread {
		plan.Sure()
	}
	code := ExitAnswered
	if found.Stopped() {
		code = ExitCannot
	}
	return append(appendAnswer(dst, b.q, found, said, r.sys, b.words, b.pick), '\n'), code
}

func appendError(dst []byte, n int, err error) []byte {
	j := jsonWriter{b: dst, fresh: true}
	j.object("", func() {
		j.text("schema", errorSchema)
		j.count("line", n)
		j.object("error", func() {
			if field, given, want, ok := fields(err); ok {
				j.text("field", words.Cut(strings.ReplaceAll(field, "-", "_"))) // as a request spells it
				j.text("given", words.Cut(given))
				j.text("want", want)
			}
			j.text("text", err.Error())
		})
	})
	return append(j.b, '\n')
}
