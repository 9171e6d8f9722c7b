package tui

import (
	"strings"

	"boothset/calc"
	"boothset/tui/draw"
)

// setView is what to set: what forbids it, the numbers, what to mind and why. Where not
// all of it fits, what to mind comes before why.
func (b *bench) setView(room size) [][]string {
	stops, warns := b.cautions(calc.Stop, room.w), b.cautions(calc.Warn, room.w)
	now, why := b.now(inFull, room.w), b.mainReasons(room.w)
	free := size{room.w, room.h - 1 - len(stops) - len(warns) - len(now)} // a row to say that there is more
	if len(now) == 0 && room.w >= wideColumns {
		free.h -= len(why)
	}
	numbers, whole := b.numbers(free)
	fits := func() bool { return len(stops)+len(numbers)+len(now) < room.h }
	if !fits() {
		now = b.now(inBrief, room.w)
	}
	if !fits() {
		numbers, whole = b.tight(b.moved3(), room.w, draw.Small), false
	}
	if !fits() || len(numbers) == 0 {
		numbers = b.compact(room.w)
	}
	atGun, notes := wrap(b.atGun(), room.w), b.cautions(calc.Note, room.w)
	switch {
	case !whole:
		return leaves([][]string{stops, numbers, now, warns, b.numbersInWords(room.w), why, atGun, notes}, room)
	case len(now) > 0 || len(stops)+len(numbers)+len(why)+len(warns) >= room.h:
		return leaves([][]string{stops, numbers, now, warns, why, atGun, notes}, room)
	}
	return leaves([][]string{stops, numbers, why, warns, atGun, notes}, room)
}

// cautions are those of a level, each marked with its word.
func (b *bench) cautions(level calc.Level, w int) (rows []string) {
	s := b.s
	for _, c := range b.tried.cautions() {
		if c.Level == level {
			rows = append(rows, each(hang(s.say("level-"+string(level))+" ", s.text(c.ID, c.Figures), w), s.theme.level[level].Render)...)
		}
	}
	return rows
}

// abouts is what the reasons of the three are about.
var abouts = [3]string{"wall", "distance", "valve"}

// mainReasons is the strongest reason of each number in brief, under it where there is
// room.
func (b *bench) mainReasons(w int) (rows []string) {
	var cells [3][]string
	for i, n := range b.three(&b.tried) {
		text := b.first(abouts[i])
		if w >= wideColumns {
			cells[i] = wrap(text, w/len(abouts)-2)
		}
		rows = append(rows, hang(b.s.theme.Title.Render(n.name)+" ", text, w)...)
	}
	if col := w / len(abouts); w >= wideColumns {
		return across(cells, [3]int{col, col, col})
	}
	return rows
}

// isNow reports whether a reason speaks of the wall as it stands.
func isNow(id string) bool { return strings.HasPrefix(id, "now-") }

// now is what the wall as it stands does, in sentences under a form of their ids.
func (b *bench) now(form string, w int) (rows []string) {
	for _, r := range b.tried.setup.Reasons {
		if isNow(r.ID) {
			rows = append(rows, each(hang("> ", b.s.text(form+r.ID, r.Figures), w), b.s.theme.Focus.Render)...)
		}
	}
	return rows
}

// The forms of a reason's sentence.
const (
	inFull  = ""
	inBrief = "brief-"
)

// first is the first reason of what it is about, in brief, empty where there is none.
func (b *bench) first(about string) string {
	for _, r := range b.tried.setup.Reasons {
		if r.About == about && !isNow(r.ID) {
			return b.s.text(inBrief+r.ID, r.Figures)
		}
	}
	return ""
}

// atGun is the gun with the trigger pulled.
func (b *bench) atGun() string {
	s, v := b.s, b.tried.setup
	w := v.Working
	f := calc.Figures{
		gaugeFigure("working", w.Pressure), gaugeFigure("reads", w.Reads), gaugeFigure("best", v.Short.Best),
		gaugeFigure("cap", w.Cap), flowFigure("flow", w.Flow),
	}
	switch {
	case v.Short.Is:
		return s.text("gun-short", f)
	case b.tried.request.Gauge == calc.AtFoot:
		return s.text("gun-at-foot", f)
	}
	return s.text("gun-now", f)
}
