package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
)

// group is the differences at one path of requests of one kind.
type group struct {
	way, path, field, fault string
}

// counted is how often a group was found, and the first request with it.
type counted struct {
	requests int
	largest  float64 // relative difference of two numbers
	first    *request
	example  difference
}

// tally is what came of requests to a command, given one way: by a batch or by flags.
type tally struct {
	way                                  string
	requests, answered, refused, stopped int
	faulty, faultyAnswered               int // with a fault planted, and answered all the same
	differ, crashed                      int
	groups                               map[group]*counted
}

func newTally(way string) *tally { return &tally{way: way, groups: map[group]*counted{}} }

// take adds what came of one request.
func (t *tally) take(r *request, of outcome, found []difference) {
	t.requests++
	switch {
	case of.refused():
		t.refused++
	case of.Stopped:
		t.stopped++
	default:
		t.answered++
	}
	if r.fault != "" {
		t.faulty++
		if !of.refused() {
			t.faultyAnswered++
		}
	}
	t.found(r, found)
}

// found adds differences, each group once a request.
func (t *tally) found(r *request, found []difference) {
	if len(found) > 0 {
		t.differ++
	}
	counts := map[group]bool{}
	for _, d := range found {
		g := group{t.way, d.path, d.field, r.fault}
		c := t.groups[g]
		if c == nil {
			c = &counted{first: r, example: d}
			t.groups[g] = c
		}
		if !counts[g] {
			c.requests++
			counts[g] = true
		}
		c.largest = max(c.largest, d.relative)
	}
}

// crash adds a request that a program crashed on, or both did.
func (t *tally) crash(r *request, crashes []difference) {
	t.requests++
	t.crashed++
	t.found(r, crashes)
}

// crashOf is the crash of a program, as a difference.
func crashOf(p *program, why string) difference {
	d := difference{path: "a crash of the " + p.name + " program"}
	if p.name == oldName {
		d.old = why
	} else {
		d.new = why
	}
	return d
}

// add adds another tally of later requests.
func (t *tally) add(o *tally) {
	t.requests += o.requests
	t.answered += o.answered
	t.refused += o.refused
	t.stopped += o.stopped
	t.faulty += o.faulty
	t.faultyAnswered += o.faultyAnswered
	t.differ += o.differ
	t.crashed += o.crashed
	for g, c := range o.groups {
		if have := t.groups[g]; have != nil {
			have.requests += c.requests
			have.largest = max(have.largest, c.largest)
			if c.first.number < have.first.number {
				have.first, have.example = c.first, c.example
			}
			continue
		}
		t.groups[g] = c
	}
}

// print writes the counts, then the groups that the most requests are in.
func (t *tally) print(w io.Writer, command string, most int) {
	fmt.Fprintf(w, "%-5s %-9s %6d requests: %6d answered, %5d refused, %5d stopped; %d differ, %d crashed\n",
		command, t.way, t.requests, t.answered, t.refused, t.stopped, t.differ, t.crashed)
	fmt.Fprintf(w, "      %d with a fault planted, %d of them answered; %d refused without one\n", t.faulty, t.faultyAnswered, t.refused-(t.faulty-t.faultyAnswered))
	groups := make([]group, 0, len(t.groups))
	for g := range t.groups {
		groups = append(groups, g)
	}
	slices.SortFunc(groups, func(a, b group) int {
		return cmp.Or(cmp.Compare(t.groups[b].requests, t.groups[a].requests), cmp.Compare(a.path, b.path), cmp.Compare(a.field, b.field), cmp.Compare(a.fault, b.fault))
	})
	for i, g := range groups {
		if i == most {
			fmt.Fprintf(w, "  and %d groups more\n", len(groups)-most)
			break
		}
		t.groups[g].print(w, g)
	}
}

func (c *counted) print(w io.Writer, g group) {
	fmt.Fprintf(w, "  %d requests differ in %s", c.requests, g.path)
	if g.field != "" {
		fmt.Fprintf(w, ", error of %s", g.field)
	}
	if g.fault != "" {
		fmt.Fprintf(w, ", fault %s", g.fault)
	}
	if c.largest > 0 {
		fmt.Fprintf(w, ", by %.2g of the value at most", c.largest)
	}
	give := c.first.asLine()
	if g.way == byFlags {
		give = c.first.asFlags()
	}
	fmt.Fprintf(w, "\n    request %d: %s\n      old: %s\n      new: %s\n", c.first.number, give, brief(c.example.old), brief(c.example.new))
}
