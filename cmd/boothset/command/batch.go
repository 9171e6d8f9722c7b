package command

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"runtime/debug"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"
)

// errorSchema names the shape of a bad line's answer.
const errorSchema = "boothset.error/1"

// runBatch answers one JSON request a line, in order. A bad line is answered by an
// error object and the rest go on. It exits 2 where any line was bad, else 3 where any
// job cannot be done, else 0.
func (p *Program) runBatch(o opened, q *question.Question) int {
	b := batch{opened: o, q: q, keys: requestKeys(q), shops: booths{p: p}}
	// Next to nothing lives on from line to line: collecting garbage every few megabytes
	// would be a tenth of the time.
	defer debug.SetGCPercent(debug.SetGCPercent(1000))
	in := bufio.NewReaderSize(p.Std.In, 1<<16)
	out := bufio.NewWriterSize(p.Std.Out, 1<<16)
	worst := ExitAnswered
	var dst []byte
	for n := 1; ; n++ {
		text, err := readLine(in)
		if n == 1 {
			text = bytes.TrimPrefix(text, []byte("\ufeff")) // some shells put a byte order mark first
		}
		if len(bytes.TrimSpace(text)) > 0 {
			var code int
			dst, code = b.appendLine(dst[:0], text, n)
			if code == ExitBadInput || worst == ExitAnswered {
				worst = code
			}
			if _, err := out.Write(append(dst, '\n')); err != nil {
				return p.failed(o.words, "failed-line-out", err, calc.CountFigure("line", n))
			}
		}
		if err == nil && in.Buffered() == 0 {
			err = out.Flush() // whoever sends one line at a time waits for its answer
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return p.failed(o.words, "failed-line-in", err, calc.CountFigure("line", n))
		}
	}
	if err := out.Flush(); err != nil {
		return p.failed(o.words, "failed-writing", err)
	}
	return worst
}

// longestLine is the longest request that is read.
const longestLine = 1 << 20

// readLine reads to the end of a line, or to the end of input with io.EOF. Of a line
// longer than longestLine only so much is kept as shows that.
func readLine(in *bufio.Reader) ([]byte, error) {
	text, err := in.ReadSlice('\n')
	if !errors.Is(err, bufio.ErrBufferFull) {
		return text, err
	}
	long := append([]byte(nil), text...)
	for errors.Is(err, bufio.ErrBufferFull) {
		text, err = in.ReadSlice('\n')
		if len(long) <= longestLine {
			long = append(long, text...)
		}
	}
	return long, err
}

// batch is requests to a question on their way to their answers.
type batch struct {
	opened
	q     *question.Question
	keys  []string // requestKeys
	said  bool     // the general caution
	shops booths
}

// appendLine appends the answer to the n-th line and gives its exit code.
func (b *batch) appendLine(dst []byte, text []byte, n int) ([]byte, int) {
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
	dst = appendAnswer(dst, b.q, found, b.said, r.sys, b.words)
	b.said = true
	return dst, code
}

func appendError(dst []byte, n int, err error) []byte {
	j := jsonWriter{b: dst, fresh: true}
	j.object("", func() {
		j.text("schema", errorSchema)
		j.count("line", n)
		j.object("error", func() {
			if field, given, want, ok := fields(err); ok {
				j.text("field", strings.ReplaceAll(field, "-", "_")) // as a request spells it
				j.text("given", given)
				j.text("want", want)
			}
			j.text("text", err.Error())
		})
	})
	return j.b
}
