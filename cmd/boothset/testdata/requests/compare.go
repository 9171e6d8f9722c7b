package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// difference is one place where two answers to a request differ.
type difference struct {
	path     string // in the JSON; of what is in a list its id stands for its place, where it has one
	field    string // that an error is about
	old, new string
	relative float64 // of two numbers, else 0
}

// ignored is the paths that are not compared, by the kind of the fault of the requests that
// they are left out for; empty is all requests.
type ignored map[string][]string

// readIgnored reads "path,path" where a path may follow the kind of a fault and a colon.
func readIgnored(text string) ignored {
	all := ignored{}
	for _, entry := range strings.Split(text, ",") {
		kind, path, of := strings.Cut(strings.TrimSpace(entry), ":")
		if !of {
			kind, path = "", kind
		}
		if path != "" {
			all[kind] = append(all[kind], path)
		}
	}
	return all
}

// holds reports whether a path of an answer to a request is ignored.
func (ig ignored) holds(path string, r *request) bool {
	names := strings.Split(path, ".")
	in := func(p string) bool { return covers(strings.Split(p, "."), names) }
	return slices.ContainsFunc(ig[""], in) || r.fault != "" && slices.ContainsFunc(ig[r.fault], in)
}

// covers reports whether names are those of a path or begin with them; "*" is any name.
func covers(path, names []string) bool {
	if len(path) > len(names) {
		return false
	}
	for i, p := range path {
		if p != "*" && p != names[i] {
			return false
		}
	}
	return true
}

// outcome is what all answers have: what it is, and the field of an error.
type outcome struct {
	Schema  string `json:"schema"`
	Stopped bool   `json:"stopped"`
	Error   struct {
		Field string `json:"field"`
	} `json:"error"`
}

func (o *outcome) refused() bool { return strings.HasPrefix(o.Schema, "boothset.error/") }

func (o *outcome) String() string {
	switch {
	case o.refused():
		return "refused: " + o.Error.Field
	case o.Stopped:
		return "stopped"
	}
	return "answered"
}

// comparison is two answers to a request, being compared.
type comparison struct {
	request *request
	ignored ignored
	field   string
	found   []difference
}

func (c *comparison) differ(path, old, new string, relative float64) {
	if !c.ignored.holds(path, c.request) {
		c.found = append(c.found, difference{path, c.field, old, new, relative})
	}
}

// answers compares two answers as JSON. What came of the request is read from the old one.
func (c *comparison) answers(old, new []byte) (of outcome, err error) {
	if err := json.Unmarshal(old, &of); err != nil {
		return of, fmt.Errorf("the old answer is no JSON: %w", err)
	}
	if bytes.Equal(old, new) {
		return of, nil
	}
	var other outcome
	if err := json.Unmarshal(new, &other); err != nil {
		c.differ("json", "JSON", "no JSON: "+brief(string(new)), 0)
		return of, nil
	}
	if of.refused() {
		c.field = of.Error.Field
	}
	if of.refused() != other.refused() {
		c.field = of.Error.Field + other.Error.Field
		c.differ("outcome", of.String(), other.String(), 0)
		return of, nil
	}
	a, err := decoded(old)
	if err != nil {
		return of, err
	}
	b, err := decoded(new)
	if err != nil {
		c.differ("json", "one object", err.Error(), 0)
		return of, nil
	}
	c.values("", a, b)
	return of, nil
}

// decoded is JSON with its numbers as they are written.
func decoded(text []byte) (v any, err error) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	if err = d.Decode(&v); err == nil && d.More() {
		err = fmt.Errorf("more than one value")
	}
	return v, err
}

// values compares two values at a path, and all below them.
func (c *comparison) values(path string, old, new any) {
	switch a := old.(type) {
	case map[string]any:
		if b, ok := new.(map[string]any); ok {
			c.objects(path, a, b)
			return
		}
	case []any:
		if b, ok := new.([]any); ok {
			if len(a) != len(b) {
				c.differ(path, shown(old), shown(new), 0)
				return
			}
			for i := range a {
				at := path
				if id := idOf(a[i]); id != "" && id == idOf(b[i]) {
					at += "." + id
				}
				c.values(at, a[i], b[i])
			}
			return
		}
	case json.Number:
		if b, ok := new.(json.Number); ok {
			if a != b {
				c.differ(path, a.String(), b.String(), apart(a, b))
			}
			return
		}
	default:
		if old == new {
			return
		}
	}
	c.differ(path, shown(old), shown(new), 0)
}

// idOf is the id of what is in a list, as of a reason.
func idOf(v any) string {
	object, _ := v.(map[string]any)
	id, _ := object["id"].(string)
	return id
}

func (c *comparison) objects(path string, a, b map[string]any) {
	keys := slices.AppendSeq(slices.Collect(maps.Keys(a)), maps.Keys(b))
	slices.Sort(keys)
	for _, key := range slices.Compact(keys) {
		at := strings.TrimPrefix(path+"."+key, ".")
		x, inA := a[key]
		y, inB := b[key]
		switch {
		case !inB:
			c.differ(at, shown(x), "absent", 0)
		case !inA:
			c.differ(at, "absent", shown(y), 0)
		default:
			c.values(at, x, y)
		}
	}
}

// apart is how far two numbers are apart, as a share of the larger.
func apart(a, b json.Number) float64 {
	x, err1 := strconv.ParseFloat(a.String(), 64)
	y, err2 := strconv.ParseFloat(b.String(), 64)
	most := max(math.Abs(x), math.Abs(y))
	if err1 != nil || err2 != nil || most == 0 {
		return 0
	}
	return math.Abs(x-y) / most
}

func shown(v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		return fmt.Sprint(v)
	}
	return string(b)
}

// brief is the beginning of a text.
func brief(text string) string {
	const most = 300
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "..."
	}
	return text
}

// runs compares two runs by flags: exit code, standard error, and the answer as JSON.
func (c *comparison) runs(old, new ended) (of outcome, err error) {
	if old.exit == 2 {
		of.Schema = "boothset.error/1"
		_, text, _ := strings.Cut(string(old.err), "boothset: ")
		c.field, _, _ = strings.Cut(text, " ")
		c.field = strings.TrimSuffix(c.field, ":")
	}
	if old.exit != new.exit {
		c.differ("exit", strconv.Itoa(old.exit), strconv.Itoa(new.exit), 0)
	}
	if !bytes.Equal(old.err, new.err) {
		c.differ("stderr", string(old.err), string(new.err), 0)
	}
	switch {
	case len(old.out) > 0 && len(new.out) > 0:
		return c.answers(old.out, new.out)
	case len(old.out) != len(new.out):
		c.differ("outcome", brief(string(old.out)), brief(string(new.out)), 0)
	}
	return of, nil
}
