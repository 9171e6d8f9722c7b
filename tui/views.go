package tui

import (
	"slices"
	"strings"

	"boothset/calc/unit"
	"boothset/tui/draw"

	"github.com/charmbracelet/bubbles/key"
)

// view is one way to look at the answer.
type view struct {
	id string // its name is under view- and this
	// screenfuls is the view in a room, in pieces each as high as that at most.
	screenfuls func(b *bench, room size) [][]string
	// inWords is the view without its pictures, in blocks of rows: all that they show is said.
	inWords func(b *bench, w int) [][]string
	// settings: it shows the three values to set by itself.
	settings bool
}

// views is every way to look at the answer, the first one first.
var views = []view{
	{"set", (*bench).setView, (*bench).setInWords, true},
	{"look", (*bench).lookView, (*bench).lookInWords, false},
	{"line", (*bench).lineView, (*bench).lineInWords, false},
	{"day", (*bench).dayView, (*bench).dayInWords, false},
	{"sure", (*bench).sureView, (*bench).sureInWords, false},
	{"why", (*bench).whyView, (*bench).whyInWords, false},
}

// destinationKeys is the keys that lead somewhere from the answer, in the order of where to:
// digits, then letters that do nothing else there, neither on the screen nor in lines. The pages
// of a booth, that which proves the answer and that of bad spray have keys of their own.
const destinationKeys = "1234567890efghilorvz"

// The keys to the pages of a booth.
const (
	agreedKey  = "a"
	boothKey   = "b"
	outcomeKey = "d"
	manageKey  = "m"
)

// The keys to the pages that prove the answer at the gun and that trace bad spray, whatever else
// there is.
const (
	proveKey   = "p"
	troubleKey = "t"
)

// destination is where a key leads from the answer.
type destination struct {
	key, name string
	does      string // of a page of the booth's: its keys' sentence is do- and this
	view      int    // of the views
	page      page   // or a page over the answer, nil for a view
}

// destinations is where keys lead from the answer: to the views, then to the pages. What has
// no key left is none of them.
func (b *bench) destinations() []destination {
	var all []destination
	for i, v := range b.views {
		all = append(all, destination{name: b.s.say("view-" + v.id), view: i})
	}
	for _, f := range b.forms {
		all = append(all, destination{name: f.name(), page: f})
	}
	all = all[:min(len(all), len(destinationKeys))]
	for i := range all {
		all[i].key = destinationKeys[i : i+1]
	}
	if b.s.desk.booth != nil {
		all = append(all, b.deskPages...)
	}
	all = append(all, destination{key: proveKey, name: b.s.say("page-prove"), does: "prove", page: b.prove})
	return append(all, destination{key: troubleKey, name: b.s.say("page-trouble"), does: "trouble", page: b.trouble})
}

// besideTabs is where a key leads without a tab: to the page that changes booths and guns, and
// outside the shop's booths to the one that keeps the line as a booth.
func (b *bench) besideTabs() []destination {
	if b.s.desk.booth != nil {
		return []destination{b.manage}
	}
	save := slices.IndexFunc(b.deskPages, func(d destination) bool { return d.key == boothKey })
	return []destination{b.deskPages[save], b.manage}
}

// destination is where a key leads; false where to nothing.
func (b *bench) destination(pressed string) (destination, bool) {
	all := append(b.destinations(), b.besideTabs()...)
	if i := slices.IndexFunc(all, func(d destination) bool { return d.key == pressed }); i >= 0 {
		return all[i], true
	}
	return destination{}, false
}

// keysTo is the keys of destinations, which are called by themselves.
func keysTo(all []destination, called func(keys []string) string) key.Binding {
	var keys []string
	for _, d := range all {
		keys = append(keys, d.key)
	}
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(called(keys), ""))
}

// fromTo calls keys by the first and the last of them.
func fromTo(keys []string) string {
	if len(keys) == 1 {
		return keys[0]
	}
	return keys[0] + "-" + keys[len(keys)-1]
}

// oneByOne calls keys by all of them.
func oneByOne(keys []string) string { return strings.Join(keys, " ") }

// destinationBindings is what leads to the views and what leads to the pages.
func (b *bench) destinationBindings(room size) (all []binding) {
	to := b.destinations()
	act := func(pressed string) move {
		if d, ok := b.destination(pressed); ok {
			return b.lead(d, room)
		}
		return nil
	}
	n := min(len(b.views), len(to))
	all = append(all, bindExplained(keysTo(to[:n], fromTo), "do-view", act))
	pages := min(n+len(b.forms), len(to))
	if pages > n {
		all = append(all, bindExplained(keysTo(to[n:pages], oneByOne), "do-page", act))
	}
	return append(all, deskBindings(to[pages:], act)...)
}

// deskBindings is what leads to the pages of a booth.
func deskBindings(to []destination, act func(string) move) (all []binding) {
	for _, d := range to {
		all = append(all, bindKey(digit(d.key), "do-"+d.does, act))
	}
	return all
}

// lead goes to a destination.
func (b *bench) lead(to destination, room size) move {
	if to.page != nil {
		return open(to.page)
	}
	b.open(to.view, room)
	return nil
}

// viewCache is the screenfuls of a view, which the frame, its help and the keys all ask for.
type viewCache struct {
	of         viewState
	screenfuls [][]string
}

// viewState is all that the screenfuls of a view depend on.
type viewState struct {
	room        size
	kept, tried int // by their ids
	sys         unit.System
	glyphs      draw.Glyphs
	colour      bool
	headlineCut bool
	gaugePinned bool
	notesPinned int
	desk        int // how often what the shop's folder holds has changed
}

// screenfuls is those of a view, at least one.
func (b *bench) screenfuls(n int, room size) [][]string {
	of := viewState{room, b.kept.id, b.tried.id, b.s.sys, b.s.glyphs, b.s.theme.colour, b.headlineCut, b.gaugePinned, b.notesPinned, b.s.desk.changes}
	for len(b.cache) <= n {
		b.cache = append(b.cache, viewCache{})
	}
	c := &b.cache[n]
	if c.screenfuls == nil || c.of != of {
		all := b.views[n].screenfuls(b, room)
		if len(all) == 0 {
			all = [][]string{nil}
		}
		*c = viewCache{of, all}
	}
	return c.screenfuls
}

// open shows a view, or the next screenful of the one that shows.
func (b *bench) open(n int, room size) {
	if n != b.view {
		b.view, b.screenful = n, 0
		return
	}
	b.screenful = (b.screenfulIn(room) + 1) % b.count(room)
}

// count is how many screenfuls the view that shows has in the room of the bench.
func (b *bench) count(room size) int { return len(b.screenfuls(b.view, b.share(room).view)) }

// screenfulIn is the one that shows; a window made smaller or larger may have fewer.
func (b *bench) screenfulIn(room size) int { return min(b.screenful, b.count(room)-1) }

// next is the next screenful, then the next view, and behind the last the way out.
func (b *bench) next(room size) move {
	switch {
	case b.screenfulIn(room)+1 < b.count(room):
		b.screenful++
	case b.view+1 < len(b.views):
		b.view, b.screenful = b.view+1, 0
	default:
		return open(&finish{s: b.s, of: b})
	}
	return nil
}
