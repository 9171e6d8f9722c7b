package main

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"

	"boothset/presets/words"
)

// maker makes one request, all of it drawn from the seed, the command and the number, so
// that each can be made again alone.
type maker struct {
	*rand.Rand
	*request
	metric bool // bare numbers are metric
	edgy   bool // many of its values lie at a bound
}

// command is a command that is asked, with what makes a request to it without faults.
type command struct {
	name string
	make func(m *maker)
}

var commands = []command{
	{"plan", (*maker).plan},
	{"day", (*maker).day},
	{"thin", (*maker).thin},
	{"film", (*maker).film},
	{"mix", (*maker).mix},
}

// How many requests are of which kind.
const (
	faulty  = 0.15
	edgy    = 0.2  // of those without a fault
	atBound = 0.4  // of the values of such a one
	spreads = 300  // plans with their spread
	ownUnit = 0.15 // requests that give their units themselves

	inAnother      = 0.06 // in a language other than English
	faultInAnother = 0.35
	byLocale       = 0.02 // language and units, which are Spanish and metric
)

// makeRequest makes the request of a number out of n.
func makeRequest(seed uint64, command, number, n int) *request {
	c := commands[command]
	m := &maker{
		Rand:    rand.New(rand.NewPCG(seed, uint64(command)<<32|uint64(number))),
		request: &request{command: c.name, number: number},
	}
	spread := c.name == "plan" && nth(number, n, spreads, 0)
	spoilt := !spread && m.chance(faulty)
	m.edgy = !spoilt && m.chance(edgy)
	m.chooseRun(spoilt)
	c.make(m)
	switch {
	case spread:
		m.fields = append(m.fields, field{name: "spread", json: "true"})
	case c.name == "plan" && m.chance(0.02):
		m.fields = append(m.fields, field{name: "spread", json: "false"})
	}
	if m.chance(0.2) {
		m.Shuffle(len(m.fields), func(i, j int) { m.fields[i], m.fields[j] = m.fields[j], m.fields[i] })
	}
	if spoilt {
		m.spoil()
	}
	return m.request
}

// nth reports whether a number out of n is one of few that are spread evenly over them.
func nth(number, n, few, offset int) bool {
	every := max(1, n/few)
	return number%every == offset%every && number/every < few
}

// chooseRun chooses language and units: one in ten speaks another language than English,
// a few of them by the locale, and more of those with a fault, which are few and say most of their sentences.
func (m *maker) chooseRun(spoilt bool) {
	english := words.English().Lang()
	another := inAnother
	if spoilt {
		another = faultInAnother
	}
	switch {
	case m.chance(byLocale):
		m.run, m.metric = run{}, true
		return
	case m.chance(another):
		m.run.lang = pick(m, slices.DeleteFunc(words.Languages(), func(lang string) bool { return lang == english })...)
	default:
		m.run.lang = english
	}
	m.metric = m.chance(0.5)
	m.run.units = system(m.metric)
	if m.chance(ownUnit) {
		m.metric = m.chance(0.5)
		m.give("units", system(m.metric))
	}
}

func system(metric bool) string {
	if metric {
		return "metric"
	}
	return "us"
}

func (m *maker) chance(p float64) bool { return m.Float64() < p }

// pick is one of several.
func pick[T any](m *maker, from ...T) T { return from[m.IntN(len(from))] }

// give adds a field with its values; another kind of JSON than text is chosen by chance.
func (m *maker) give(name string, values ...string) {
	m.fields = append(m.fields, field{name, m.asJSON(name, values), values})
}

// maybe gives a field as it is drawn, by a chance; now and then it is left out by null or
// by empty text.
func (m *maker) maybe(p float64, name string) {
	switch {
	case m.chance(p):
		m.give(name, m.draw(name))
	case m.chance(0.01):
		m.fields = append(m.fields, field{name: name, json: pick(m, "null", `""`)})
	}
}

// asJSON is a field's values as a request holds them. A plan's lists are lists; the other
// commands' may be one text, with "+" between.
func (m *maker) asJSON(name string, values []string) string {
	all := make([]string, len(values))
	for i, v := range values {
		all[i] = m.one(v)
	}
	switch {
	case !lists[name]:
		return all[0]
	case m.command == "plan" || m.chance(0.6):
		return "[" + strings.Join(all, ",") + "]"
	case len(all) == 1:
		return all[0]
	}
	return quoted(strings.Join(values, pick(m, " + ", "+", " +")))
}

var jsonNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// one is a value as text or, where it is a number, as that.
func (m *maker) one(value string) string {
	if jsonNumber.MatchString(value) && m.chance(0.5) {
		return value
	}
	return quoted(value)
}
