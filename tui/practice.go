package tui

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/practice"

	tea "github.com/charmbracelet/bubbletea"
)

// Practice is what the assistant practises with, in place of asking for a job.
type Practice struct {
	Deck *practice.Deck
	Seed uint64 // that the deck was made with
	// Kept is the file that what was missed is kept in; empty keeps nothing.
	Kept string
}

// drill is practice as the pages share it.
type drill struct {
	Practice
	s      *session
	begun  map[string]page // what was left before it was answered, by what is practised
	notice string          // what went wrong; the next key clears it
}

// practise makes practice what there is to do, behind what is said before anything else.
func (r *root) practise(p *Practice) {
	d := &drill{Practice: *p, s: r.s, begun: map[string]page{}}
	r.pages, r.first = []page{&safety{s: r.s}, d.homePage()}, 1
}

// practiceWords is what the words of the pages are listed under.
const practiceWords = "practice"

// What there is to practise.
const (
	practiseJob   = "job"
	practiseFind  = "find"
	practiseLeave = "leave"
)

// homePage asks what is practised.
func (d *drill) homePage() *pickPage {
	p := &pickPage{s: d.s, id: "practice", title: "practice-title", words: practiceWords}
	p.first = func() bool { return true }
	p.fill = func() {
		at := p.list.id()
		p.list = d.s.listOf("practice-", practiseJob, practiseFind, practiseLeave)
		p.list.point(at)
	}
	p.over = d.standing
	p.take = func(id string) move {
		if id == practiseLeave {
			return leave
		}
		return d.deal(id)
	}
	p.fill()
	return p
}

// standing is what was practised so far, what to come back to, and where the jobs come from.
func (d *drill) standing(w int) (rows []string) {
	say := func(id string, f ...calc.Figure) { rows = append(rows, wrap(d.s.text(id, f...), w)...) }
	if d.notice != "" {
		rows = append(rows, each(hang("! ", d.notice, w), d.s.theme.level[calc.Warn].Render)...)
	}
	of := &d.Deck.Record
	if of.Jobs > 0 {
		say("practice-jobs", calc.CountFigure("right", of.Right), calc.CountFigure("jobs", of.Jobs))
	}
	if of.Finds > 0 {
		say("practice-finds", calc.CountFigure("found", of.Found), calc.CountFigure("finds", of.Finds))
	}
	if due := d.due(); due != "" {
		say("practice-due", calc.TextFigure("ideas", due))
	}
	if d.Deck.Invented() {
		say("practice-invented")
	}
	say("practice-seed", calc.CountFigure("seed", int(d.Seed)))
	return rows
}

// mostToldDue is how many ideas to come back to are told.
const mostToldDue = 3

// due is what was missed, the most missed first.
func (d *drill) due() string {
	all := slices.SortedFunc(maps.Keys(d.Deck.Due), func(a, b practice.Idea) int {
		if x, y := d.Deck.Due[a], d.Deck.Due[b]; x != y {
			return map[bool]int{true: -1, false: 1}[x > y]
		}
		return strings.Compare(string(a), string(b))
	})
	var names []string
	for _, of := range all[:min(len(all), mostToldDue)] {
		if name := d.s.say(ideaSentence(of)); name != "" { // else it is of a later program
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// ideaSentence is what an idea is called; a fault that was not found is its own.
func ideaSentence(of practice.Idea) string {
	if strings.HasPrefix(string(of), practice.FindIdea) {
		return string(of)
	}
	return "idea-" + string(of)
}

// deal opens the page of what is practised: one that was left, else the next; or says that there
// is none.
func (d *drill) deal(what string) move {
	d.notice = ""
	p := d.begun[what]
	if p == nil {
		if p = map[string]func() page{practiseJob: d.nextJob, practiseFind: d.nextFind}[what](); p == nil {
			d.notice = d.s.say("practice-none")
			return nil
		}
		d.begun[what] = p
	}
	return func(r *root) {
		r.over = nil
		open(p)(r)
	}
}

// home goes back to where it is asked what is practised.
func (d *drill) home(r *root) {
	r.over = nil
	r.page().enter()
}

// learned takes what was practised into the record, keeps it, and shows what it came to. The
// screen does not wait for the disk; leaving does.
func (d *drill) learned(r *root, shows *toldPage, change func(*practice.Record)) {
	delete(d.begun, shows.what)
	r.over = nil
	open(shows)(r)
	change(&d.Deck.Record)
	do := func() practised { return practised{d, practice.Update(d.Kept, change)} }
	if d.s.atOnce {
		do().hear()
		return
	}
	done := make(chan practised, 1)
	d.s.writing.Add(1)
	go func() {
		defer d.s.writing.Done()
		done <- do()
	}()
	r.do(func() tea.Msg { return <-done })
}

// practised is that what was practised was kept, or why it was not.
type practised struct {
	drill *drill
	err   error
}

// hear says why it was not kept.
func (p practised) hear() {
	var unkept *practice.Error
	if errors.As(p.err, &unkept) {
		p.drill.notice = p.drill.s.text(unkept.ID, unkept.Figures()...)
	}
}
