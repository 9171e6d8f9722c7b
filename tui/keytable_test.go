package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/practice"
	"boothset/presets/question"
	"boothset/presets/shop"
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
	want := keyTable(readerOf(t, look{}))
	if os.Getenv("UPDATE_GOLDEN") != "" {
		table = want
		require.NoError(t, os.WriteFile(file, []byte(before+start+want+end+after), 0o644))
	}
	require.Equal(t, want, table, "UPDATE_GOLDEN=1 go test ./tui -run Table")
}

// keyTable is what every key does, place by place, as a table in Markdown. It is made of
// the bindings that the assistant itself goes by.
func keyTable(reader *question.Reader) string {
	r := newRoot(newSession(reader, words.English(), reader.System(), None, func(string) string { return "" }))
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
	write("a question with a list", r.sample(question.Gun).keys(low))
	typed := r.sample(question.Hose)
	typed.field.set("8m,10mm")
	write("a question to type", typed.keys(low))

	day := r.sampleGroup(stepDay)
	write("a page of several questions", day.keys(low))
	day.all[0].typed.set("20C")
	write("the same, something typed", day.keys(low))
	air := r.sampleGroup(stepAir)
	air.at = air.place(stepLine)
	write("the same, something to choose", air.keys(low))
	write("not sure", (&unsurePage{s, question.Temp, nil}).keys(low))

	s.answers = sampleAnswers(reader)
	s.takeLine(lineParts)
	write("the line as a list of its parts", (&partsPage{s: s}).keys(low))
	s.answers = sampleAnswers(reader)
	r.bench.enter()
	write("the answer", r.bench.keys(low))
	r.bench.nudge(1)("right")
	write("the answer, something tried", r.bench.keys(low)[:2])
	write("a field of a page of its own", r.bench.fieldKeys(low))
	f := newForm(s, r.bench, question.Day)
	f.enter() // it is answered by what the plan was
	write("the answer of such a page", f.keys(low))
	p := r.bench.prove
	p.enter()
	s.atOnce = true
	p.start()
	p.follow()
	p.toEmpty()
	write("a gauge to read, where it is proved", p.keys(low))
	p.at = slices.IndexFunc(p.all, func(b box) bool { return b.Field == question.Pattern })
	p.choose("right")
	p.choose("right")
	write("a pattern that is seen there", p.keys(low))
	for i := range p.all {
		if p.all[i].choices == nil {
			p.all[i].typed.set("30psi")
		}
	}
	p.enter()
	p.toAnswer("")
	write("what the gauges come to", p.keys(low))
	s.atOnce = false
	t := newTroublePage(s, r.bench)
	t.enter()
	t.typed.set("fad")
	t.offer()
	write("what is seen, of bad spray", t.keys(low))
	t.trace("")
	write("a check that is asked for", t.keys(low))
	t.found = []trouble.Found{{Check: "valve-open", Finding: "climbs"}}
	t.work()
	write("what it is, and what to do", t.keys(low))
	s.desk.where = inventedShop
	s.openDesk()
	s.enterBooth(s.desk.boothOf("two"))
	booth := boothPage(s)
	booth.enter()
	write("which booth, which gun", booth.keys(low))
	s.unsaid.others = []shop.Record{{Booth: "two"}}
	left := leftPage(s)
	left.enter()
	write("a job of before", left.keys(low))
	inBooth := r.bench.destinationBindings(low)
	write("the answer in a booth", inBooth[2:len(inBooth)-1])
	for _, d := range r.bench.deskPages {
		if p, ok := d.page.(*entryPage); ok {
			p.enter()
			write(s.say(p.title), p.everyKey(low))
		}
	}
	s.desk.seen = true
	one := s.boothEntry(managePage(s, nil), s.desk.boothOf("two"), false)
	one.enter()
	write(s.say(one.title), one.everyKey(low))
	writePractice(reader, low, write)
	write("everywhere", append(r.everywhere(), r.besides()...))
	return b.String()
}

// writePractice writes the keys of practice: a job, a booth, what they come to.
func writePractice(reader *question.Reader, low size, write func(where string, all []binding)) {
	s := newSession(reader, words.English(), reader.System(), None, func(string) string { return "" })
	source, err := practice.Invented(s.words)
	if err != nil {
		panic(err)
	}
	d := &drill{s: s, Practice: Practice{Deck: practice.NewDeck(source, s.sys, 7, practice.NewRecord())}}
	guess := d.nextJob().(*entryPage)
	guess.enter()
	write("a job to practise on", guess.keys(low))
	find := d.nextFind().(*pickPage)
	find.enter()
	write("a badly set booth", find.keys(low))
	long := func(size) []string { return make([]string, low.h+1) }
	write("what a guess came to", (&toldPage{d: d, rows: long}).keys(low))
}

// fieldKeys is every key that some field of some page has, empty or typed.
func (b *bench) fieldKeys(room size) (all []binding) {
	for _, f := range b.forms {
		all = f.boxes.withKeys(all, "1", func() []binding { return f.keys(room) })
	}
	return all
}

// everyKey is every key that some field of the page has, empty or typed.
func (p *entryPage) everyKey(room size) []binding {
	return p.boxes.withKeys(nil, "x", func() []binding { return p.keys(room) })
}

// withKeys adds each key that some field has, empty or typed, and none before had.
func (b *boxes) withKeys(all []binding, typed string, keys func() []binding) []binding {
	for b.at = range b.all {
		for _, text := range []string{"", typed} {
			b.all[b.at].typed.set(text)
			for _, k := range keys() {
				if !slices.ContainsFunc(all, func(have binding) bool { return have.does == k.does }) {
					all = append(all, k)
				}
			}
		}
	}
	return all
}

// sample is the step of a field, arrived at.
func (r *root) sample(field *question.Field) *stepPage {
	for _, p := range r.pages {
		if p, ok := p.(*stepPage); ok && p.step.field == field {
			p.enter()
			return p
		}
	}
	return nil
}

// sampleGroup is a page of several questions, arrived at.
func (r *root) sampleGroup(id string) *groupPage {
	for _, p := range r.pages {
		if p, ok := p.(*groupPage); ok && p.step.id == id {
			p.enter()
			return p
		}
	}
	return nil
}

// sampleAnswers is a job that can be answered: the first coat on the first gun that it
// goes through.
func sampleAnswers(r *question.Reader) question.Answers {
	coat := r.Choices(question.Coat)[0].ID
	a := r.ReadAll(question.Plan, question.Texts{"coat": {coat}, "temp": {"20C"}, "humidity": {"50%"}, "supply": {"100psi"}}, unit.US)
	for _, g := range r.Choices(question.Gun) {
		if r.GoTogether(coat, g.ID) {
			return a.With(question.Gun, r.Read(question.Gun, g.ID, unit.US))
		}
	}
	return a
}
