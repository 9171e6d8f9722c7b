package tui

import (
	"fmt"
	"slices"
	"strings"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// KeyTable is what every key does, place by place, as a table in Markdown. It is made of
// the bindings that the assistant itself goes by.
func KeyTable(c *presets.Catalogue, questions []Question) string {
	r := newRoot(newSession(c, words.English(), c.System(), func(string) string { return "" }), questions)
	s, low := r.s, size{leastWidth, leastHeight / 2} // where everything scrolls
	var b strings.Builder
	fmt.Fprintf(&b, "| %s | %s | %s |\n| --- | --- | --- |\n", s.say("keys-where"), s.say("keys-key"), s.say("keys-does"))
	write := func(where string, all []binding) {
		where = s.say(where)
		for _, k := range all {
			does := s.say(k.does)
			if more := s.say(k.more); more != "" {
				does += ": " + more
			}
			fmt.Fprintf(&b, "| %s | `%s` | %s |\n", where, s.keyName(k), does)
			where = ""
		}
	}

	write("keys-at-safety", r.pages[0].keys(low))
	write("keys-at-list", r.sample(presets.FieldGun).keys(low))
	typed := r.sample(presets.FieldTemp)
	typed.field.set("20C")
	write("keys-at-typed", typed.keys(low))

	s.answers = sampleAnswers(c)
	r.bench.enter()
	write("keys-at-answer", r.bench.keys(low))
	r.bench.nudge(1)("right")
	write("keys-at-tried", r.bench.keys(low)[:2])
	if len(r.bench.forms) > 0 {
		write("keys-at-field", r.bench.fieldKeys(low))
		f := r.bench.forms[0]
		f.at = len(f.boxes)
		f.answer, f.err = Answer{Text: func(int) string { return strings.Repeat(".\n", leastHeight) }}, nil
		write("keys-at-form", f.keys(low))
	}
	write("keys-everywhere", r.everywhere())
	return b.String()
}

// fieldKeys is every key that some field of some page has, empty or typed.
func (b *bench) fieldKeys(room size) (all []binding) {
	for _, f := range b.forms {
		for f.at = range f.boxes {
			for _, text := range []string{"", "1"} {
				f.boxes[f.at].typed.set(text)
				for _, k := range f.keys(room) {
					if !slices.ContainsFunc(all, func(have binding) bool { return have.does == k.does }) {
						all = append(all, k)
					}
				}
			}
		}
	}
	return all
}

// sample is the question of a field, arrived at.
func (r *root) sample(field string) *question {
	for _, p := range r.pages {
		if q, ok := p.(*question); ok && q.step.id == field {
			q.enter()
			return q
		}
	}
	return nil
}

// sampleAnswers is a job that can be answered: the first coat on the first gun that it
// goes through.
func sampleAnswers(c *presets.Catalogue) presets.Answers {
	a := presets.Answers{Coat: presets.Typed(c.Choices(presets.FieldCoat)[0].ID), Temp: "20C", Humidity: "50%", Supply: "100psi"}
	for _, g := range c.Choices(presets.FieldGun) {
		a.Gun = presets.Typed(g.ID)
		if c.Fault(a, presets.FieldGun, unit.US) == nil {
			break
		}
	}
	return a
}
