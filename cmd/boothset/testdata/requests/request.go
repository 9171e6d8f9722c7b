package main

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
)

// request is one request to a command: a line of a batch, or flags.
type request struct {
	command string
	number  int
	run     run
	fields  []field
	fault   string // the kind of the one fault planted in it, empty where it has none
	junk    string // the line itself, where that is the fault
}

// run is the flags that a batch is run with; the locale's language and units where there
// are none.
type run struct{ lang, units string }

// flags is a run as arguments.
func (r run) flags() (args []string) {
	if r.lang != "" {
		args = append(args, "--lang", r.lang)
	}
	if r.units != "" {
		args = append(args, "--units", r.units)
	}
	return args
}

// field is a field of a request by the name of its flag, with what a request's JSON holds
// for it and what flags are given.
type field struct {
	name, json string
	values     []string
}

// lists is the fields that may be given more than once.
var lists = map[string]bool{"hose": true, "other": true, "area": true, "price": true, "solids": true, "wet": true}

// find is where a request gives a field, -1 where it does not.
func (r *request) find(name string) int {
	for i := range r.fields {
		if r.fields[i].name == name {
			return i
		}
	}
	return -1
}

// has reports whether a request gives a field, and not null in its place.
func (r *request) has(name string) bool {
	i := r.find(name)
	return i >= 0 && len(r.fields[i].values) > 0
}

// drop takes a field out.
func (r *request) drop(name string) {
	if i := r.find(name); i >= 0 {
		r.fields = append(r.fields[:i], r.fields[i+1:]...)
	}
}

// line is the request as a line of a batch, without its end.
func (r *request) line() string {
	if r.junk != "" {
		return r.junk
	}
	pairs := make([]string, len(r.fields))
	for i, f := range r.fields {
		pairs[i] = quoted(strings.ReplaceAll(f.name, "-", "_")) + ":" + f.json
	}
	return "{" + strings.Join(pairs, ",") + "}"
}

// throughFlags reports whether the request can be given by flags: a fault of its JSON
// cannot.
func (r *request) throughFlags() bool { return r.fault != wrongKind && r.fault != notJSON }

// arguments is the request as arguments.
func (r *request) arguments() []string {
	args := []string{r.command, "--json"}
	own := r.run
	for i, f := range r.fields {
		switch f.name {
		case "units":
			own.units = f.values[0]
			continue
		case "spread": // flags always work it out
			continue
		}
		for _, v := range f.values {
			if i%2 == 0 || strings.HasPrefix(v, "-") {
				args = append(args, "--"+f.name+"="+v)
			} else {
				args = append(args, "--"+f.name, v)
			}
		}
	}
	return append(args, own.flags()...)
}

// asLine is how to give a program the request again, through a batch.
func (r *request) asLine() string {
	args := append([]string{"boothset", r.command, "--batch"}, r.run.flags()...)
	return fmt.Sprintf("printf '%%s\\n' %s | %s", shell(r.line()), strings.Join(args, " "))
}

// asFlags is how to give it again through flags.
func (r *request) asFlags() string {
	args := r.arguments()
	for i := range args {
		args[i] = shell(args[i])
	}
	return "boothset " + strings.Join(args, " ")
}

var plainWord = regexp.MustCompile(`^[A-Za-z0-9_./:=%,+-]+$`)

// shell is a word as a shell reads it.
func shell(word string) string {
	if plainWord.MatchString(word) {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// quoted is text as JSON.
func quoted(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // cannot be: text always encodes
	}
	return string(b)
}
