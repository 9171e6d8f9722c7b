package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// The table of keys that the reader sees is the one that the program goes by.
// UPDATE_GOLDEN=1 writes it.
func TestTheTableOfKeysIsTheProgramsOwn(t *testing.T) {
	file := filepath.Join("..", "README.md")
	readme, err := os.ReadFile(file)
	require.NoError(t, err)
	const start, end = "<!-- keys -->\n", "<!-- /keys -->"
	before, rest, ok := strings.Cut(string(readme), start)
	require.True(t, ok)
	table, after, ok := strings.Cut(rest, end)
	require.True(t, ok)
	c := catalogueOf(t, look{})
	want := keyTable(c, look{pages: true}.questions(c))
	if os.Getenv("UPDATE_GOLDEN") != "" {
		table = want
		require.NoError(t, os.WriteFile(file, []byte(before+start+want+end+after), 0o644))
	}
	require.Equal(t, want, table, "UPDATE_GOLDEN=1 go test ./tui -run Table")
}

// keyTable is what every key does, place by place, as a table in Markdown. It is made of
// the bindings that the assistant itself goes by.
func keyTable(c *presets.Catalogue, questions []Question) string {
	r := newRoot(newSession(c, words.English(), c.System(), func(string) string { return "" }), questions)
	s, low := r.s, size{leastWidth, leastHeight / 2} // where everything scrolls
	var b strings.Builder
	b.WriteString("| where | key | what it does |\n| --- | --- | --- |\n")
	write := func(where string, all []binding) {
		for _, k := range all {
			does := s.say(k.does)
			if more := s.say(k.more); more != "" {
				does += ": " + more
			}
			fmt.Fprintf(&b, "| %s | `%s` | %s |\n", where, s.keyName(k), does)
			where = ""
		}
	}

	write("before you spray", r.pages[0].keys(low))
	write("a question with a list", r.sample(presets.FieldGun).keys(low))
	typed := r.sample(presets.FieldTemp)
	typed.field.set("20C")
	write("a question to type", typed.keys(low))

	s.answers = sampleAnswers(c)
	r.bench.enter()
	write("the answer", r.bench.keys(low))
	r.bench.nudge(1)("right")
	write("the answer, something tried", r.bench.keys(low)[:2])
	if len(r.bench.forms) > 0 {
		write("a field of a page of its own", r.bench.fieldKeys(low))
		f := r.bench.forms[0]
		f.at = len(f.boxes)
		f.answer.text, f.err = func(int) string { return strings.Repeat(".\n", leastHeight) }, nil
		write("the answer of such a page", f.keys(low))
	}
	write("everywhere", r.everywhere())
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
