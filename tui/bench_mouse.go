package tui

import "github.com/charmbracelet/x/ansi"

// zones is the tabs over the answer, and the inputs beside it: a click opens a tab and marks an
// input.
func (b *bench) zones(window size) (all zones) {
	if b.err != nil {
		return nil
	}
	f := frameOf(b, window)
	names, between := b.tabs(window.w)
	x := 0
	for i, d := range b.destinations() {
		wide := ansi.StringWidth(names[i])
		all = append(all, zone{x, 1, wide, 1, func(r *root) {
			if m := b.lead(d, f.room); m != nil {
				m(r)
			}
		}})
		x += wide + ansi.StringWidth(between)
	}
	v := b.share(f.room)
	if !v.side {
		return all
	}
	top := f.top() + len(v.verdict) + len(v.settings)
	first := around(b.input, len(b.inputs()), v.view.h)
	for i := first; i < min(first+v.view.h, len(b.inputs())); i++ {
		all = append(all, zone{v.view.w, top + i - first, window.w - v.view.w, 1, func(*root) { b.input = i }})
	}
	return all
}
