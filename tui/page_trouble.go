package tui

import (
	"strings"

	"boothset/calc/trouble"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/signs"

	tea "github.com/charmbracelet/bubbletea"
)

// troublePage goes from what is seen to its cause, over the answer: first the sign is looked for
// by typing, then one check after another is asked for, and each finding moves the causes. What
// was found stays for as long as the assistant runs.
type troublePage struct {
	s    *session
	from *bench

	typed  field // a word of the sign
	offers list  // the signs that it may be

	sign     string          // empty while it is looked for
	found    []trouble.Found // in the order they were found
	answer   *answer.Trouble
	findings list // of the check that is asked for
	further  bool // to look at more than was needed to tell
	scroll   scroll
}

func newTroublePage(s *session, from *bench) *troublePage { return &troublePage{s: s, from: from} }

func (p *troublePage) enter() *question.Fault {
	p.offer()
	p.work()
	return nil
}

func (p *troublePage) skip() bool             { return false }
func (p *troublePage) ownRules() bool         { return true }
func (p *troublePage) heading() (_, _ string) { return p.s.say("trouble-title"), p.s.unitsName() }

func (p *troublePage) terms() (page string, of *answer.Plan) { return "trouble", &p.from.tried.Plan }

func (p *troublePage) under(window size) []string {
	return append(p.from.glance(window), p.from.tabs(window.w, p.looksAt))
}

func (p *troublePage) looksAt(d destination) bool { return d.page == page(p) }

func (p *troublePage) zones(window size) zones {
	return p.from.tabZones(window, frameOf(p, window), p.looksAt)
}

// offer lists the signs that what is typed may be.
func (p *troublePage) offer() {
	p.offers = list{means: func(id string) string { return p.s.say("look-sign-" + id) }}
	for _, id := range signs.Search(p.typed.String()) {
		p.offers.items = append(p.offers.items, choiceOf(id, p.s.say(signs.Name(id))))
	}
}

// asks reports whether a check is asked for.
func (p *troublePage) asks() bool {
	return p.answer != nil && p.answer.Found.Next != nil && (p.answer.Found.End == trouble.Open || p.further)
}

// work works out the causes by what was found, with the job as the answer shows it and what its
// pages know of mix and film.
func (p *troublePage) work() {
	p.answer, p.scroll = nil, scroll{}
	if p.sign == "" {
		return
	}
	q := &trouble.Request{Signs: []string{p.sign}, Found: p.found, Plan: p.from.tried.Request}
	for _, f := range p.from.forms {
		if len(f.own()) == 0 || f.err != nil {
			continue
		}
		switch a := f.answer.(type) {
		case *answer.Thin:
			q.Mix = a.Request
		case *answer.Film:
			q.Film = a.Request
		}
	}
	found, err := signs.Book().Solve(q)
	if err != nil {
		return // cannot be: the answers that it is made of were solved
	}
	p.answer = &answer.Trouble{Request: q, Found: found}
	p.findings = list{}
	if next := found.Next; next != nil {
		for _, f := range next.Findings {
			p.findings.items = append(p.findings.items, choiceOf(f.ID, p.s.say(answer.FindingName(next.ID, f.ID))))
		}
		p.findings.items = append(p.findings.items, choiceOf(question.Skipped, p.s.say("finding-skip")))
	}
}

// trace takes the marked sign.
func (p *troublePage) trace(string) move {
	if id := p.offers.id(); id != "" {
		p.begin(id)
	}
	return nil
}

// begin begins with a sign.
func (p *troublePage) begin(sign string) {
	p.sign, p.found, p.further = sign, nil, false
	p.work()
}

// shows takes the marked finding of the check.
func (p *troublePage) shows(string) move {
	p.found = append(p.found[:len(p.found):len(p.found)], trouble.Found{Check: p.answer.Found.Next.ID, Finding: p.findings.id()})
	p.further = false
	p.work()
	return nil
}

// before takes back the last finding, and before the first the sign.
func (p *troublePage) before(string) move {
	switch {
	case p.further:
		p.further = false
	case len(p.found) > 0:
		p.found = p.found[:len(p.found)-1]
	default:
		p.sign = ""
	}
	p.work()
	return nil
}

func (p *troublePage) look(string) move {
	p.further = true
	p.scroll = scroll{}
	return nil
}

func (p *troublePage) changeUnits(pressed string) move {
	p.from.changeUnits(pressed)
	p.work()
	return nil
}

func (p *troublePage) keys(room size) []binding {
	if p.sign == "" {
		return p.signKeys()
	}
	all := []binding{bindKey(listBack, "do-check-before", p.before)}
	switch {
	case p.asks():
		all = append([]binding{bindKey(takeKeys, "do-shows", p.shows)}, append(all, p.findings.keys(p.shows)...)...)
	case p.answer != nil && p.answer.Found.Next != nil:
		all = append([]binding{bindKey(takeKeys, "do-further", p.look)}, all...)
	}
	all = append(all, bindExplained(unitsKeys, "do-units", p.changeUnits), quitKey())
	rows, rest := p.textRows(room)
	scrolls := p.scroll.keys(len(rows), rest)
	if p.asks() && len(scrolls) > 0 {
		scrolls = scrolls[1:] // up and down walk the findings
	}
	return append(all, scrolls...)
}

// signKeys is the keys while a sign is looked for: what is no key types.
func (p *troublePage) signKeys() []binding {
	all := []binding{bindExplained(escKeys, "do-back-answer", always(back))}
	if len(p.offers.items) > 0 {
		listed := p.offers.keys(p.trace)
		if all = append([]binding{bindKey(takeKeys, "do-trace", p.trace)}, append(all, listed[0])...); len(p.offers.items) > 1 {
			all = append(all, bindKey(stepKeys, "do-choose", listed[1].act)) // letters type
		}
	}
	if p.typed.String() != "" {
		all = append(all, bindKey(clearKeys, "do-empty", func(string) move {
			p.typed.set("")
			p.offer()
			return nil
		}))
	}
	return all
}

func (p *troublePage) press(k tea.KeyMsg) move {
	if p.sign != "" {
		return nil
	}
	if k.Type == tea.KeyRunes || k.Type == tea.KeySpace {
		p.typed.insert([]rune(plain(string(k.Runes))))
	} else {
		p.typed.edit(k)
	}
	if strings.TrimSpace(p.typed.String()) == "" && k.Type == tea.KeySpace {
		p.typed.set("")
	}
	p.offer()
	return nil
}

func (p *troublePage) clicked(x, y int, room size) move {
	if p.sign == "" {
		_, first, high, w := p.signRows(room)
		return p.offers.zones(0, first, size{w, high}, p.trace).at(x, y)
	}
	if !p.asks() {
		return nil
	}
	_, first, high, w := p.above(room)
	return p.findings.zones(0, first, size{w, high}, p.shows).at(x, y)
}
