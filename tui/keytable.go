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
	low := size{leastWidth, leastHeight / 2} // where everything scrolls
	var b strings.Builder
	b.WriteString("| where | key | what it does |\n| --- | --- | --- |\n")
	write := func(where string, all []binding) {
		for _, k := range all {
			does := k.does
			if k.more != "" {
				does += ": " + k.more
			}
			fmt.Fprintf(&b, "| %s | `%s` | %s |\n", where, k.show, does)
			where = ""
		}
	}

	first := r.pages[0]
	first.body(low)
	write("before you spray", first.keys())
	write("a question with a list", r.sample(presets.FieldGun).keys())
	typed := r.sample(presets.FieldTemp)
	typed.field.set("20C")
	write("a question to type", typed.keys())

	r.s.answers = sampleAnswers(c)
	r.answer.enter()
	r.answer.body(low)
	write("the answer", r.answer.keys())
	if len(r.answer.forms) > 0 {
		f := r.answer.forms[0]
		var all []binding
		for f.at = range f.boxes {
			f.boxes[f.at].typed.set("1")
			for _, k := range f.keys() {
				if !slices.ContainsFunc(all, func(have binding) bool { return have.show == k.show }) {
					all = append(all, k)
				}
			}
		}
		write("a field of a page of its own", all)
		f.at = len(f.boxes)
		f.answer, f.err = Answer{Text: func(int) string { return strings.Repeat(".\n", leastHeight) }}, nil
		f.body(low)
		write("the answer of such a page", f.keys())
	}
	write("everywhere", r.everywhere())
	return b.String()
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
