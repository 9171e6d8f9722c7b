package tui

import "boothset/presets/answer"

// overAnswer is what a page has that may lie over the answer: what is pinned of that and the tabs
// then stand over it.
type overAnswer struct {
	from *bench // nil where it lies over none
	tab  page   // the page whose tab it shows
}

func (o *overAnswer) under(window size) []string {
	if o.from == nil {
		return nil
	}
	return append(o.from.glance(window), o.from.tabs(window.w, o.looksAt))
}

func (o *overAnswer) ownRules() bool { return o.from != nil }

// looksAt reports whether a destination is the page's.
func (o *overAnswer) looksAt(d destination) bool { return d.page != nil && d.page == o.tab }

// zones is the tabs over the page.
func (o *overAnswer) zones(window size) zones {
	if o.from == nil || o.from.err != nil {
		return nil
	}
	return o.from.tabZones(window, frameOf(o.tab, window), o.looksAt)
}

// plan is the answer's, nil where there is none.
func (o *overAnswer) plan() *answer.Plan {
	if o.from == nil {
		return nil
	}
	return &o.from.tried.Plan
}
