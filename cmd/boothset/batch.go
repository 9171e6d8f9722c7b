package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// errorSchema names the shape of a bad line's answer.
const errorSchema = "boothset.error/1"

// batchRequest is one line of a batch.
type batchRequest struct {
	presets.Answers
	Units string `json:"units"`
}

// runBatch answers one JSON request a line, in order. A bad line is answered by an
// error object and the rest go on. It exits 2 where any line was bad, else 3 where any
// job cannot be done, else 0.
func runBatch(c *presets.Catalogue, sys unit.System, std stdio) int {
	in := bufio.NewReaderSize(std.in, 1<<16)
	out := bufio.NewWriterSize(std.out, 1<<16)
	w := words.English()
	worst := exitAnswered
	var dst []byte
	for n := 1; ; n++ {
		text, err := readLine(in)
		if len(bytes.TrimSpace(text)) > 0 {
			var code int
			dst, code = appendAnswer(dst[:0], c, text, n, sys, w)
			if code == exitBadInput || worst == exitAnswered {
				worst = code
			}
			if _, err := out.Write(append(dst, '\n')); err != nil {
				return failed(std, fmt.Errorf("writing answer %d: %w", n, err))
			}
		}
		if err == nil && in.Buffered() == 0 {
			err = out.Flush() // whoever sends one line at a time waits for its answer
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return failed(std, fmt.Errorf("line %d: %w", n, err))
		}
	}
	if err := out.Flush(); err != nil {
		return failed(std, fmt.Errorf("writing: %w", err))
	}
	return worst
}

// longestLine is the longest request that is read.
const longestLine = 1 << 20

// readLine reads to the end of a line, or to the end of input with io.EOF.
func readLine(in *bufio.Reader) ([]byte, error) {
	text, err := in.ReadSlice('\n')
	if !errors.Is(err, bufio.ErrBufferFull) {
		return text, err
	}
	long := append([]byte(nil), text...)
	for errors.Is(err, bufio.ErrBufferFull) {
		text, err = in.ReadSlice('\n')
		if len(long)+len(text) > longestLine {
			return nil, fmt.Errorf("longer than %d bytes", longestLine)
		}
		long = append(long, text...)
	}
	return long, err
}

// appendAnswer answers one line.
func appendAnswer(dst []byte, c *presets.Catalogue, text []byte, n int, sys unit.System, w *words.Words) ([]byte, int) {
	var q batchRequest
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&q); err != nil {
		return appendError(dst, n, &presets.FieldError{Field: "request", Want: requestFault(err)}), exitBadInput
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return appendError(dst, n, &presets.FieldError{Field: "request", Want: "one JSON object a line, nothing behind it"}), exitBadInput
	}
	if q.Units != "" {
		var err error
		if sys, err = systemOf(q.Units, c); err != nil {
			return appendError(dst, n, err), exitBadInput
		}
	}
	r, s, err := answer(c, q.Answers, sys)
	if err != nil {
		return appendError(dst, n, err), exitBadInput
	}
	code := exitAnswered
	if s.Stopped() {
		code = exitCannot
	}
	return appendPlan(dst, &r, &s, sys, w), code
}

// requestFault says in plain words what is wrong with a line's JSON.
func requestFault(err error) string {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax), errors.Is(err, io.ErrUnexpectedEOF):
		return `not JSON; give one object a line, such as {"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}`
	case errors.As(err, &kind):
		return fmt.Sprintf("%s cannot be a JSON %s; give text or a number", kind.Field, kind.Value)
	}
	return err.Error()
}

func appendError(dst []byte, n int, err error) []byte {
	j := jsonWriter{b: dst, fresh: true}
	j.object("", func() {
		j.text("schema", errorSchema)
		j.number("line", float64(n))
		j.object("error", func() {
			var f *presets.FieldError
			if errors.As(err, &f) {
				j.text("field", f.Field)
				j.text("given", f.Given)
				j.text("want", f.Want)
			}
			j.text("text", err.Error())
		})
	})
	return j.b
}
