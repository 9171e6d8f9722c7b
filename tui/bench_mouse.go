package tui

// zones is the tabs over the view, and the inputs beside it: a click opens a tab and marks an
// input.
func (b *bench) zones(window size) zones {
	if b.err != nil {
		return nil
	}
	f := frameOf(b, window)
	all := b.tabZones(window, f, b.looksAt)
	v := b.share(f.room)
	if !v.side {
		return all
	}
	left, room := f.room.w-sideWide, size{sideWide, f.room.h - len(v.foot)}
	high := sideList(room, b.sideFoot(room))
	first := around(b.input, len(b.inputs()), high)
	for i := first; i < min(first+high, len(b.inputs())); i++ {
		all = append(all, zone{left, f.top() + 1 + i - first, sideWide, 1, func(*root) { b.input = i }})
	}
	return all
}

// tabZones is the tabs, in the last row over a page's room.
func (b *bench) tabZones(window size, f frame, shows func(destination) bool) (all zones) {
	x := 0
	for _, t := range b.tabPlaces(window.w, shows) {
		all = append(all, zone{x, f.top() - 1, t.wide, 1, func(r *root) {
			r.over = nil // a page of the coat's own is left for what was clicked
			if m := b.lead(t.to, f.room); m != nil {
				m(r)
			}
		}})
		x += t.wide
	}
	return all
}

// zones is the tabs over the page.
func (f *form) zones(window size) zones {
	return f.from.tabZones(window, frameOf(f, window), f.looksAt)
}
