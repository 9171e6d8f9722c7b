package tui

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
)

// answer is what to set, with its reasons.
type answer struct {
	s       *session
	request calc.Request // as answered
	setup   calc.Setup   // of it
	spread  *calc.Spread // nil where the supply is short; how sure it is
	tried   calc.Setup   // the same with another wall pressure tried, where trying
	wall    unit.Gauge   // that is tried
	trying  bool
	all     bool // show every reason, with what it rests on
	err     error
	scroll  scroll
	forms   []*form // opened from here
	room    size    // it was last drawn in
}

func (a *answer) skip() bool { return false }

func (a *answer) heading() (left, right string) {
	s := a.s
	return s.name(presets.FieldCoat, s.value(presets.FieldCoat)) + ", " + s.name(presets.FieldGun, s.value(presets.FieldGun)), s.unitsName()
}

func (a *answer) press(tea.KeyMsg) move { return nil }

// enter works the answers out anew.
func (a *answer) enter() *presets.FieldError {
	a.scroll.top = 0
	return a.solve()
}

func (a *answer) solve() *presets.FieldError {
	a.err, a.trying = nil, false
	var field *presets.FieldError
	a.request, a.err = a.s.catalogue.Request(a.s.complete(), a.s.sys)
	if a.err == nil {
		a.setup, a.err = calc.Solve(&a.request)
	}
	if a.err == nil {
		a.spread = a.s.sure(&a.request, &a.setup)
	}
	if errors.As(a.s.catalogue.Refused(a.err, a.s.sys, a.s.value), &field) {
		return field
	}
	return nil
}

// fail shows what is wrong where no question is to blame.
func (a *answer) fail(err error) { a.err = err }

func (a *answer) keys() []binding {
	all := []binding{{keys: []string{"esc", "backspace"}, show: "esc", does: "back", act: always(back)}}
	if a.err == nil {
		all = append(all,
			binding{keys: []string{"left", "right"}, show: "left/right", does: "try wall", act: a.try(1), more: "another wall pressure, a mark of its gauge at a time, and what the gun gets from it"},
			binding{keys: []string{"r"}, show: "r", does: "why", act: a.showReasons, more: "every reason with what it rests on, or only the main ones"},
			binding{keys: []string{"l"}, show: "l", does: "line", act: a.jump(sectionLine), more: "what each part of it takes"},
		)
	}
	if a.err == nil && len(a.forms) > 0 {
		all = append(all, a.questions())
	}
	all = append(all,
		binding{keys: []string{"u"}, show: "u", does: "units", act: a.changeUnits, more: moreUnits},
		binding{keys: []string{"n"}, show: "n", does: "again", act: always(restart), more: "from the first question, answers kept"},
		quitKey())
	if a.err == nil {
		all = append(all, binding{keys: []string{"shift+left", "shift+right"}, show: "shift+left/right", does: "try ten marks on", act: a.try(10)})
	}
	return append(all, a.scroll.keys()...)
}

// questions opens one of the coat's own.
func (a *answer) questions() binding {
	b := binding{show: "1", act: func(key string) move {
		n, err := strconv.Atoi(key)
		if err != nil {
			return nil
		}
		return open(a.forms[n-1])
	}, more: "a page of its own, with what is answered already in it"}
	var names []string
	for i, f := range a.forms {
		b.keys = append(b.keys, strconv.Itoa(i+1))
		names = append(names, f.ask.Name)
	}
	if n := len(names); n > 1 {
		b.show = fmt.Sprintf("1-%d", n)
	}
	b.does = strings.Join(names, ", ")
	return b
}

// changeUnits solves anew: the marks of the wall's gauge are the system's.
func (a *answer) changeUnits(string) move {
	a.s.changeUnits()
	top, trying, wall := a.scroll.top, a.trying, a.wall
	if f := a.solve(); f != nil {
		a.err = f
		return nil
	}
	a.scroll.top = top
	if trying {
		a.tryAt(wall)
	}
	return nil
}

// offer is what the answer has for a field of the coat's own questions, empty where it
// has nothing.
func (a *answer) offer(field string) string {
	switch field {
	case presets.FieldPressure:
		if a.setup.Short.Is {
			return a.s.sys.Gauge(a.setup.Short.Best, words.PressureDecimals(a.s.sys))
		}
		return a.s.sys.Gauge(a.setup.Working.Pressure, words.PressureDecimals(a.s.sys))
	case presets.FieldDistance:
		return a.s.sys.Small(a.setup.Distance.Target, unit.Usual)
	}
	all := a.s.complete()
	return all.Field(field)
}

// shown is the setup that shows.
func (a *answer) shown() *calc.Setup {
	if a.trying {
		return &a.tried
	}
	return &a.setup
}

// try moves the wall as it stands now by marks of its gauge, and shows what the gun
// would get from it.
func (a *answer) try(marks unit.Gauge) func(string) move {
	return func(key string) move {
		by := marks * unit.Gauge(a.request.Mark)
		if strings.HasSuffix(key, "left") {
			by = -by
		}
		from := a.setup.Wall.Flowing
		if now := a.shown().Now; now.Given {
			from = now.Wall
		}
		top := max(a.request.Supply, a.request.Now)
		a.tryAt(min(max(from+by, calc.LowestSupply), top))
		// What it does shows, and as much as there is room for of what lies above.
		_, at := a.rows(a.room)
		a.scroll.top = min(max(at[sectionBottleneck]-(a.room.h-1), 0), at[sectionNow])
		return nil
	}
}

func (a *answer) tryAt(wall unit.Gauge) {
	r := a.request
	r.HasNow, r.Now = true, wall
	tried, err := calc.Solve(&r)
	if err != nil {
		return // the request without it was good, and the wall stays within what it may be
	}
	a.trying, a.wall, a.tried = true, wall, tried
}

func (a *answer) showReasons(key string) move {
	a.all = !a.all
	a.scroll.top = 0
	if a.all {
		return a.jump(sectionReasons)(key)
	}
	return nil
}

// jump brings a section to the top, or, where it is there already, the beginning.
func (a *answer) jump(to section) func(string) move {
	return func(string) move {
		rows, at := a.rows(a.room)
		top := min(at[to], lowestTop(len(rows), a.room))
		if a.scroll.top == top {
			top = 0
		}
		a.scroll.top = top
		return nil
	}
}
