package command

import (
	"encoding/json"
	"flag"
	"strings"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// question is a sub-command for one of the coat's own questions: fields in, an answer
// out, as text, as JSON or as a batch.
type question struct {
	name, brief string // brief is the id of what it is for
	help        help
	fields      []presets.Field
	ask         func(c *presets.Catalogue, s presets.Sheet, sys unit.System) (reply, error)
}

// reply is the answer to a question.
type reply interface {
	print(p *printer)
	appendJSON(j *jsonWriter, sys unit.System, w *words.Words) // into an open object
	stopped() bool                                             // the job cannot be done as asked
}

// asks joins a question's resolving, its solving and its reply.
func asks[R, A any](resolve func(*presets.Catalogue, presets.Sheet, unit.System) (R, []*presets.FieldError), solve func(*R) (A, error), say func(*R, *A) reply) func(*presets.Catalogue, presets.Sheet, unit.System) (reply, error) {
	return func(c *presets.Catalogue, s presets.Sheet, sys unit.System) (reply, error) {
		r, faults := resolve(c, s, sys)
		if len(faults) > 0 {
			return nil, faults[0]
		}
		a, err := solve(&r)
		if err != nil {
			return nil, c.Refused(err, sys, s.Field)
		}
		return say(&r, &a), nil
	}
}

func (q question) command() command { return command{q.name, q.brief, q.run} }

func (q question) run(args []string, std Stdio, getenv func(string) string) int {
	s := presets.Sheet{}
	f := flag.NewFlagSet(q.name, flag.ContinueOnError)
	for _, field := range q.fields {
		f.Func(field.Name, field.Usage, func(v string) error {
			if field.List {
				s.Add(field.Name, presets.Typed(v))
			} else {
				s[field.Name] = presets.Typed(v)
			}
			return nil
		})
	}
	o, code, done := begin(f, q.help, args, std, getenv)
	if done {
		return code
	}
	w := o.words
	if o.batch {
		return runBatch(std, w, func(dst, text []byte, n int) ([]byte, int) { return q.appendLine(dst, o.catalogue, text, n, o.sys, w) })
	}
	r, err := q.ask(o.catalogue, s, o.sys)
	if err != nil {
		return refuse(std, err)
	}
	var out []byte
	if o.asJSON {
		out = append(q.appendReply(nil, r, o.sys, w), '\n')
	} else {
		out = printed(r, cardWidth, o.sys, w)
	}
	return writeAnswer(std, w, out, r.stopped())
}

// printed is an answer as text in a width.
func printed(r reply, width int, sys unit.System, w *words.Words) []byte {
	p := &printer{width: width, sys: sys, words: w}
	r.print(p)
	return p.b
}

// appendReply appends an answer as one JSON object.
func (q question) appendReply(dst []byte, r reply, sys unit.System, w *words.Words) []byte {
	j := jsonWriter{b: dst, fresh: true}
	j.object("", func() {
		j.text("schema", q.help.schema)
		j.bool("stopped", r.stopped())
		r.appendJSON(&j, sys, w)
	})
	return j.b
}

// appendLine answers one line of a batch. Its keys are the fields' names, with an
// underscore for each hyphen; a list may be one.
func (q question) appendLine(dst []byte, c *presets.Catalogue, text []byte, n int, sys unit.System, w *words.Words) ([]byte, int) {
	bad := func(err error) ([]byte, int) { return appendError(dst, n, err), ExitBadInput }
	var raw map[string]json.RawMessage
	if err := decodeLine(text, &raw, w); err != nil {
		return bad(err)
	}
	s := presets.Sheet{}
	for key, v := range raw {
		field := strings.ReplaceAll(key, "_", "-")
		var list []presets.Typed
		if json.Unmarshal(v, &list) != nil {
			var one presets.Typed
			if err := json.Unmarshal(v, &one); err != nil {
				return bad(&presets.FieldError{Field: field, Given: string(v), Want: w.Say("want-text-or-number")})
			}
			list = []presets.Typed{one}
		}
		for _, v := range list {
			s.Add(field, v)
		}
	}
	if units, ok := s[presets.FieldUnits]; ok {
		delete(s, presets.FieldUnits)
		var err error
		if sys, err = systemOf(string(units), c); err != nil {
			return bad(err)
		}
	}
	if field := s.Unknown(q.fields); field != "" {
		return bad(&presets.FieldError{Field: "request", Given: field, Want: spoken(w, "want-field-of", said("name", q.name), said("command", "boothset "+q.name+" --help"))})
	}
	r, err := q.ask(c, s, sys)
	if err != nil {
		return bad(err)
	}
	code := ExitAnswered
	if r.stopped() {
		code = ExitCannot
	}
	return q.appendReply(dst, r, sys, w), code
}
