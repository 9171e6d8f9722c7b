package command

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"reflect"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// errorSchema names the shape of a bad line's answer.
const errorSchema = "boothset.error/1"

// batchRequest is one line of a batch.
type batchRequest struct {
	presets.Answers
	Units  string `json:"units"`
	Spread bool   `json:"spread"` // work out how sure the answer is too
}

// lineAnswer appends the answer to the n-th line of a batch and gives its exit code.
type lineAnswer func(dst, text []byte, n int) ([]byte, int)

// runBatch answers one JSON request a line, in order. A bad line is answered by an
// error object and the rest go on. It exits 2 where any line was bad, else 3 where any
// job cannot be done, else 0.
func runBatch(std Stdio, w *words.Words, answer lineAnswer) int {
	in := bufio.NewReaderSize(std.In, 1<<16)
	out := bufio.NewWriterSize(std.Out, 1<<16)
	worst := ExitAnswered
	var dst []byte
	for n := 1; ; n++ {
		text, err := readLine(in)
		if n == 1 {
			text = bytes.TrimPrefix(text, []byte("\ufeff")) // some shells put a byte order mark first
		}
		if len(bytes.TrimSpace(text)) > 0 {
			var code int
			dst, code = answer(dst[:0], text, n)
			if code == ExitBadInput || worst == ExitAnswered {
				worst = code
			}
			if _, err := out.Write(append(dst, '\n')); err != nil {
				return failed(std, w, "failed-line-out", err, calc.FigureOf("line", calc.FigureCount, n))
			}
		}
		if err == nil && in.Buffered() == 0 {
			err = out.Flush() // whoever sends one line at a time waits for its answer
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return failed(std, w, "failed-line-in", err, calc.FigureOf("line", calc.FigureCount, n))
		}
	}
	if err := out.Flush(); err != nil {
		return failed(std, w, "failed-writing", err)
	}
	return worst
}

// aloneWithBatch refuses the flags that a batch's requests give themselves.
func aloneWithBatch(f *flag.FlagSet, w *words.Words) (err error) {
	f.Visit(func(x *flag.Flag) {
		switch x.Name {
		case flagBatch, "json", presets.FieldUnits, flagLang:
		default:
			err = &presets.FieldError{Field: x.Name, Want: w.Say("want-no-batch")}
		}
	})
	return err
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

// decodeLine reads one line's request into q, or says what is wrong with it.
func decodeLine(text []byte, q any, w *words.Words) error {
	if len(text) > longestLine {
		return wholeLine(spoken(w, "want-shorter", calc.FigureOf("most", calc.FigureCount, longestLine)))
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(q); err != nil {
		return requestFault(err, w)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return wholeLine(w.Say("want-one-object"))
	}
	return nil
}

// planLine answers a batch's line with a plan.
func planLine(c *presets.Catalogue, sys unit.System, w *words.Words) lineAnswer {
	var q batchRequest // one for all lines
	var p Plan
	return func(dst, text []byte, n int) ([]byte, int) {
		q, p = batchRequest{}, Plan{}
		return appendPlanLine(dst, c, text, n, sys, w, &q, &p)
	}
}

func appendPlanLine(dst []byte, c *presets.Catalogue, text []byte, n int, sys unit.System, w *words.Words, q *batchRequest, p *Plan) ([]byte, int) {
	if err := decodeLine(text, q, w); err != nil {
		return appendError(dst, n, err), ExitBadInput
	}
	if q.Units != "" {
		var err error
		if sys, err = systemOf(q.Units, c); err != nil {
			return appendError(dst, n, err), ExitBadInput
		}
	}
	if err := p.answer(c, &q.Answers, sys); err != nil {
		return appendError(dst, n, err), ExitBadInput
	}
	if q.Spread {
		p.sure()
	}
	code := ExitAnswered
	if p.Setup.Stopped() {
		code = ExitCannot
	}
	return appendPlan(dst, p, sys, w), code
}

// wholeLine is a fault of a line as a whole.
func wholeLine(want string) *presets.FieldError {
	return &presets.FieldError{Field: "request", Want: want}
}

// lineExample is a request as a line of a batch may be.
const lineExample = `{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}`

// requestFault says in plain words what is wrong with a line's JSON.
func requestFault(err error, w *words.Words) *presets.FieldError {
	var kind *json.UnmarshalTypeError
	if !errors.As(err, &kind) {
		if key, found := strings.CutPrefix(err.Error(), "json: unknown field "); found {
			return &presets.FieldError{Field: strings.Trim(key, `"`), Want: spoken(w, "want-field", said("names", strings.Join(requestFields(), ", ")))}
		}
		return wholeLine(spoken(w, "want-json", said("example", lineExample)))
	}
	field := kind.Field[strings.LastIndexByte(kind.Field, '.')+1:] // without the struct it is embedded from
	var want string
	switch field {
	case "":
		return wholeLine(spoken(w, "want-object", said("kind", kind.Value)))
	case presets.FieldHose:
		want = spoken(w, "want-list", said("example", `["25ft,3/8in"]`))
	case presets.FieldOther:
		want = spoken(w, "want-list", said("example", `["10cfm,50%"]`))
	case "spread":
		want = w.Say("want-truth")
	case presets.FieldUnits:
		want = chooseUnits(w)
	default:
		want = w.Say("want-text-or-number")
	}
	return &presets.FieldError{Field: field, Want: spoken(w, "want-other-kind", said("kind", kind.Value), said("want", want))}
}

// requestFields is the names that a request may hold.
func requestFields() (names []string) {
	for _, f := range reflect.VisibleFields(reflect.TypeFor[batchRequest]()) {
		if name, _, _ := strings.Cut(f.Tag.Get("json"), ","); name != "" {
			names = append(names, name)
		}
	}
	return names
}

func appendError(dst []byte, n int, err error) []byte {
	j := jsonWriter{b: dst, fresh: true}
	j.object("", func() {
		j.text("schema", errorSchema)
		j.count("line", n)
		j.object("error", func() {
			var f *presets.FieldError
			if errors.As(err, &f) {
				j.text("field", strings.ReplaceAll(f.Field, "-", "_")) // as a request spells it
				j.text("given", f.Given)
				j.text("want", f.Want)
			}
			j.text("text", err.Error())
		})
	})
	return j.b
}
