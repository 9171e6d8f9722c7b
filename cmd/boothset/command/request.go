package command

import (
	"encoding/json"
	"errors"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// request is one line of a batch, read.
type request struct {
	answers question.Answers
	reader  *question.Reader // of its booth and gun
	sys     unit.System
	spread  bool // work out how sure a plan is too
}

// The keys of a request that are no field of its question.
const (
	keyUnits  = "units"
	keyBooth  = "booth"
	keySpread = "spread"
)

// lineExample is a request as a line of a batch may be.
const lineExample = `{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}`

// decode reads one line's request, bare numbers in the batch's units where it names none. Its
// keys are the fields' names, with an underscore for each hyphen; their values are text, a
// number or null, or a list of such where the field repeats.
func (b *batch) decode(line []byte) (got request, err error) {
	w := b.words
	raw, err := readObject(line, b.keys, w)
	if err != nil {
		return got, err
	}
	got.sys = b.sys
	if v, ok := raw[keyUnits]; ok {
		if kind := kindOf(v); kind != "string" && kind != "null" {
			return got, otherKind(w, keyUnits, kind, chooseUnits(w))
		}
		units, _ := textOf(v)
		if got.sys, err = systemOf(strings.Join(units, ""), b.reader); err != nil {
			return got, err
		}
	}
	if v, ok := raw[keySpread]; ok && json.Unmarshal(v, &got.spread) != nil {
		return got, otherKind(w, keySpread, kindOf(v), w.Say("want-truth"))
	}
	texts := make(question.Texts, len(raw))
	for i, row := range b.q.Fields {
		v, ok := raw[b.keys[i]]
		if !ok {
			continue
		}
		all, kind := textOf(v)
		want := "want-text-or-number"
		switch {
		case row.Repeats:
			want = "want-list"
		case kind == "" && kindOf(v) == kindArray:
			kind = kindArray
		}
		if kind != "" {
			return got, otherKind(w, b.keys[i], kind, w.Say(want))
		}
		texts[row.Name] = all
	}
	booth := ""
	if v, ok := raw[keyBooth]; ok {
		if kind := kindOf(v); kind != "string" && kind != "null" {
			return got, otherKind(w, keyBooth, kind, w.Say("takes-text"))
		}
		id, _ := textOf(v)
		booth = strings.Join(id, "")
	}
	got.reader, err = b.readerOf(booth, lastOf(texts[question.Gun.Name]))
	if err == nil {
		got.answers = got.reader.ReadAll(b.q, texts, got.sys)
	}
	return got, err
}

// readerOf is the reader of a request's booth and gun, the batch's own where it names neither
// a booth nor a gun of the shop's.
func (b *batch) readerOf(booth, gun string) (*question.Reader, error) {
	if booth == "" && (gun == "" || b.reader.Read(question.Gun, gun, b.sys).Fault == nil) {
		return b.reader, nil
	}
	r, err := b.shops.reader(b.opened, booth, gun)
	if err != nil {
		return nil, err
	}
	return r.Reader, nil
}

// requestKeys is the keys that a request may hold, those of the fields first, in their order.
func requestKeys(q *question.Question) []string {
	keys := append(q.Keys(), keyBooth, keyUnits)
	if q == question.Plan {
		keys = append(keys, keySpread)
	}
	return keys
}

// kindArray is what JSON calls a list.
const kindArray = "array"

// textOf is a JSON value as text, several of a list; kind is what it is where that is no
// text. null is none.
func textOf(v json.RawMessage) (texts []string, kind string) {
	switch kind := kindOf(v); kind {
	case "null":
		return nil, ""
	case "number":
		return []string{numberText(string(v))}, ""
	case "string":
		var s string
		if err := json.Unmarshal(v, &s); err != nil {
			return nil, kind
		}
		return []string{s}, ""
	case kindArray:
		var list []json.RawMessage
		if err := json.Unmarshal(v, &list); err != nil {
			return nil, kind
		}
		for _, one := range list {
			t, kind := textOf(one)
			if kind != "" || kindOf(one) == kindArray {
				return nil, kindOf(one)
			}
			texts = append(texts, t...)
		}
		return texts, ""
	default:
		return nil, kind
	}
}

// numberText is a JSON number as it is typed: without an exponent, and with another zero behind
// three decimals, since its point never marks thousands.
func numberText(number string) string {
	x, err := strconv.ParseFloat(number, 64)
	if err != nil { // past what can be told apart from infinity
		return number
	}
	plain := strconv.FormatFloat(x, 'f', -1, 64)
	if _, decimals, _ := strings.Cut(plain, "."); len(decimals) == 3 {
		plain += "0"
	}
	return plain
}

// kindOf is what JSON calls a value.
func kindOf(v json.RawMessage) string {
	switch v[0] {
	case '"':
		return "string"
	case '[':
		return kindArray
	case '{':
		return "object"
	case 't', 'f':
		return "bool"
	case 'n':
		return "null"
	}
	return "number"
}

// otherKind is a fault of a key that holds another kind of value.
func otherKind(w *words.Words, key, kind, want string) error {
	return &fieldError{field: key, want: spoken(w, "want-other-kind", calc.TextFigure("kind", kind), calc.TextFigure("want", want))}
}

// wholeLine is a fault of a line as a whole.
func wholeLine(want string) error { return &fieldError{field: "request", want: want} }

// lineFault says in plain words what is wrong with a line's JSON.
func lineFault(err error, w *words.Words) error {
	var kind *json.UnmarshalTypeError
	if errors.As(err, &kind) {
		return wholeLine(spoken(w, "want-object", calc.TextFigure("kind", kind.Value)))
	}
	return wholeLine(spoken(w, "want-json", calc.TextFigure("example", lineExample)))
}
