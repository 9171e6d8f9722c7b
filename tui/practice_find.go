package tui

import (
	"slices"
	"strconv"
	"time"

	"boothset/calc"
	"boothset/presets/practice"
)

// search is a badly set booth while its fault is looked for.
type search struct {
	d     *drill
	f     *practice.Find
	taken []practice.Reading
}

// leastLooks is the readings, or the causes, that show whatever else does.
const leastLooks = 4

// nameIt is the entry that ends the readings; those go by their place.
const nameIt = "name"

// nextFind is the page of the next badly set booth; nil where there is none.
func (d *drill) nextFind() page {
	f := d.Deck.Find()
	if f == nil {
		return nil
	}
	q := &search{d: d, f: f}
	p := &pickPage{s: d.s, id: "find", title: "find-title", words: practiceWords, least: leastLooks}
	p.more = []binding{bindKey(nameKeys, "do-name", func(string) move { return open(q.namePage()) })}
	p.fill = func() { p.list = q.list(p.list.at) }
	p.over = q.told
	p.take = func(id string) move {
		if id == nameIt {
			return open(q.namePage())
		}
		n, _ := strconv.Atoi(id)
		q.taken = append(q.taken, f.Readings[n])
		p.fill()
		return nil
	}
	return p
}

// list is the readings that are not taken yet, and the end of them.
func (q *search) list(at int) list {
	s := q.d.s
	l := list{means: func(id string) string {
		n, err := strconv.Atoi(id)
		if err != nil {
			return ""
		}
		return s.took(q.f.Takes(q.f.Readings[n]))
	}}
	for i, r := range q.f.Readings {
		if !slices.Contains(q.taken, r) {
			l.items = append(l.items, choiceOf(strconv.Itoa(i), s.reading(q.f, r)))
		}
	}
	l.items = append(l.items, s.choice(nameIt, "find-name"))
	l.at = min(at, len(l.items)-1)
	return l
}

// took is a time as people say it.
func (s *session) took(d time.Duration) string { return s.words.Minutes(d) }

// reading is what is looked at.
func (s *session) reading(f *practice.Find, r practice.Reading) string {
	id := "read-" + string(r.Kind)
	if r.Kind == practice.LookSound && f.Request.Gauge == calc.NoGauge {
		id = "read-sound-cap"
	}
	return s.text(id, calc.TextFigure("part", f.Request.Line[r.Part].Name))
}

// fault is what is wrong.
func (s *session) faultOf(f *practice.Find, c practice.Cause) string {
	return s.text("fault-"+string(c.Kind), calc.TextFigure("part", f.Request.Line[c.Part].Name))
}

// told is how the booth is set, what was read in it, and the job; in lines of text that is said
// once.
func (q *search) told(w int) []string {
	s := q.d.s
	if len(q.taken) > 0 && s.atOnce {
		return q.read(w)
	}
	rows := wrap(s.text("find-set", calc.TextFigure("settings", s.advised(q.f.Job))), w)
	return append(append(rows, q.read(w)...), s.jobRows(q.f.Job, w)...)
}

// read is what was read so far, and how long that took.
func (q *search) read(w int) (rows []string) {
	var took time.Duration
	for _, r := range q.taken {
		took += q.f.Takes(r)
		rows = append(rows, hang("- ", q.shown(r), w)...)
	}
	if len(q.taken) > 0 {
		rows = append(rows, wrap(q.d.s.text("find-took", readingFigures(q.d.s, q.taken, took)...), w)...)
	}
	return rows
}

// shown is a reading that was taken, and what it would be were all well.
func (q *search) shown(r practice.Reading) string {
	s := q.d.s
	shows, sound := q.f.Shown(r)
	return s.text("find-taken", calc.TextFigure("look", s.reading(q.f, r)), q.f.Shows(r, "shows", shows), q.f.Shows(r, "sound", sound))
}

// namePage asks what is wrong.
func (q *search) namePage() *pickPage {
	s := q.d.s
	p := &pickPage{s: s, id: "name", title: "find-title", words: practiceWords, least: leastLooks}
	p.fill = func() {
		p.list = list{}
		for i, c := range q.f.Causes {
			p.list.items = append(p.list.items, choiceOf(strconv.Itoa(i), s.faultOf(q.f, c)))
		}
	}
	p.over = q.read
	p.take = func(id string) move {
		n, _ := strconv.Atoi(id)
		named := q.f.Name(q.f.Causes[n], q.taken)
		return func(r *root) {
			q.d.learned(r, q.foundPage(named), func(of *practice.Record) { of.Named(q.f, named) })
		}
	}
	return p
}

// foundPage is what naming a cause came to.
func (q *search) foundPage(n *practice.Named) *toldPage {
	lines := func(w int) []string { return q.found(n, w) }
	return &toldPage{d: q.d, title: "found-title", what: practiseFind, plan: q.f.Plan, lines: lines, rows: func(room size) []string { return lines(room.w) }}
}

// found is what was wrong, what the readings told, and how few would have done.
func (q *search) found(n *practice.Named, w int) (rows []string) {
	s, f := q.d.s, q.f
	say := func(id string, of ...calc.Figure) { rows = append(rows, wrap(s.text(id, of...), w)...) }
	is := calc.TextFigure("fault", s.faultOf(f, f.Cause))
	if n.Right {
		rows = append(rows, each(wrap(s.text("found-right", is), w), s.theme.Go.Render)...)
	} else {
		rows = append(rows, each(wrap(s.text("found-wrong", calc.TextFigure("named", s.faultOf(f, n.Cause)), is), w), s.theme.level[calc.Warn].Render)...)
	}
	if len(n.Left) > 0 {
		var left []string
		for _, c := range n.Left {
			left = append(left, s.faultOf(f, c))
		}
		id := "found-left"
		if n.Right {
			id = "found-lucky"
		}
		say(id, calc.TextFigure("faults", s.words.Listed(left)))
	}
	rows = append(rows, "")
	say("found-yours", readingFigures(s, n.Taken, n.Took)...)
	for i, r := range n.Taken {
		shows, _ := f.Shown(r)
		rows = append(rows, hang("- ", s.text("found-reading", calc.TextFigure("look", s.reading(f, r)), f.Shows(r, "shows", shows), calc.CountFigure("left", len(f.Left(n.Taken[:i+1])))), w)...)
	}
	rows = append(rows, q.set("found-fewest", f.Fewest, n.LeastTook, w)...)
	rows = append(rows, q.set("found-order", n.Order, n.OrderTook, w)...)
	rows = append(rows, "", s.theme.Title.Render(s.ruled(s.say("found-panel"), w)))
	return append(rows, s.signRows(f.Signs, w)...)
}

// set is some readings under a sentence, each with what it shows.
func (q *search) set(id string, of []practice.Reading, took time.Duration, w int) []string {
	s := q.d.s
	rows := append([]string{""}, wrap(s.text(id, readingFigures(s, of, took)...), w)...)
	for _, r := range of {
		rows = append(rows, hang("- ", q.shown(r), w)...)
	}
	return rows
}

func readingFigures(s *session, of []practice.Reading, took time.Duration) []calc.Figure {
	return []calc.Figure{calc.CountFigure("readings", len(of)), calc.TextFigure("took", s.took(took))}
}
