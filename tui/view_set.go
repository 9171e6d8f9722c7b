package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// setView is what to set: what forbids it, the numbers, what to mind and why. Where not
// all of it fits, what to mind comes before why.
func (b *bench) setView(room size) [][]string {
	stops, warns := b.cautions(calc.Stop, room.w), b.cautions(calc.Warn, room.w)
	now, why := b.now(inFull, room.w), b.mainReasons(room.w)
	gauge := b.gauge(room.w)
	free := size{room.w, room.h - 1 - len(stops) - len(gauge) - len(warns) - len(now)} // a row to say that there is more
	if len(now) == 0 && room.w >= wideColumns {
		free.h -= len(why)
	}
	numbers, whole := b.numbers(free)
	fits := func() bool { return len(stops)+len(numbers)+len(now) < room.h }
	if !fits() {
		now = b.now(inBrief, room.w)
	}
	if !fits() {
		numbers, whole = b.tight(b.changedSettings(), room.w, draw.Small), false
	}
	if !fits() || len(numbers) == 0 {
		numbers = b.compact(room.w)
	}
	atGun, notes := wrap(b.atGun(), room.w), b.cautions(calc.Note, room.w)
	switch {
	case !whole:
		return shareOut([][]string{stops, numbers, gauge, now, warns, b.settingsInWords(room.w), why, atGun, notes}, room)
	case len(now) > 0 || len(stops)+len(numbers)+len(why)+len(warns) >= room.h:
		return shareOut([][]string{stops, numbers, gauge, now, warns, why, atGun, notes}, room)
	}
	return shareOut([][]string{stops, numbers, gauge, why, warns, atGun, notes}, room)
}

// setInWords is the view without its pictures.
func (b *bench) setInWords(w int) [][]string {
	return [][]string{
		b.verdictRows(w), b.cautions(calc.Stop, w), b.allInWords(w), b.nowInWords(w),
		b.cautions(calc.Warn, w), wrap(b.atGun(), w), b.cautions(calc.Note, w),
	}
}

// cautions are those of a level, each marked with its word.
func (b *bench) cautions(level calc.Level, w int) (rows []string) {
	s := b.s
	all := slices.DeleteFunc(b.tried.AllCautions(), func(c calc.Caution) bool { return c.Level != level })
	for _, c := range answer.CautionRows(s.words, s.sys, all) {
		rows = append(rows, each(hang(s.say("level-"+string(level))+" ", c.Grounded(), w), s.theme.level[c.Level].Render)...)
	}
	return rows
}

// gauge is what the gun's gauge shows once all is set.
func (b *bench) gauge(w int) []string {
	th, n := b.s.theme, b.tried.GaugeRow(b.s.words, b.s.sys)
	return hang(th.Title.Render(n.Name)+" ", th.Number.Render(n.Text)+"  "+n.More, w)
}

// settingsInWords is the three, each with what it was where something was moved, its range,
// what it is and its strongest reason.
func (b *bench) settingsInWords(w int) (rows []string) {
	was := b.settings(&b.kept)
	for i, n := range b.settings(&b.tried) {
		text := n.name + " " + n.text
		if n.value != was[i].value {
			text += ", " + b.s.say("mark-was") + " " + was[i].text
		}
		for _, t := range n.below() {
			text += "; " + t
		}
		text += "."
		if why := b.mainReason(n.about); why != "" {
			text += " " + b.s.say(b.leads(n.about)) + " " + why + "."
		}
		rows = append(rows, wrap(text, w)...)
	}
	return rows
}

// allInWords is the three and what the gun's gauge shows.
func (b *bench) allInWords(w int) []string {
	return append(b.settingsInWords(w), b.gaugeInWords(w)...)
}

// leads is the word before the first reason of what it is about: that of the valve says how
// it is set.
func (b *bench) leads(about string) string {
	if about == answer.AboutValve && !b.tried.Setup.Short.Is && !b.tried.Setup.Foot.Is {
		return "plain-how"
	}
	return "plain-why"
}

// gaugeInWords is the same as gauge without its marks.
func (b *bench) gaugeInWords(w int) []string {
	n := b.tried.GaugeRow(b.s.words, b.s.sys)
	return wrap(n.Name+" "+n.Text+"; "+n.More+".", w)
}

// mainReasons is the strongest reason of each number in brief, under it where there is
// room.
func (b *bench) mainReasons(w int) (rows []string) {
	var cells [3][]string
	col := w / len(cells)
	for i, n := range b.settings(&b.tried) {
		text := b.mainReason(n.about)
		if w >= wideColumns {
			cells[i] = wrap(text, col-2)
		}
		rows = append(rows, hang(b.s.theme.Title.Render(n.name)+" ", text, w)...)
	}
	if w >= wideColumns {
		return across(cells, [3]int{col, col, col})
	}
	return rows
}

// mainReason is the first reason of what it is about, in brief, empty where there is none.
func (b *bench) mainReason(about string) string {
	for _, r := range b.tried.Setup.Reasons {
		if r.About == about && !isNow(r.ID) {
			return b.s.text(inBrief+r.ID, r.Figures...)
		}
	}
	return ""
}

// isNow reports whether a reason speaks of the wall as it stands, by its id.
func isNow(id string) bool { return strings.HasPrefix(id, "now-") }

// The forms of a reason's sentence, before its id.
const (
	inFull  = ""
	inBrief = "brief-"
)

// now is what the wall as it stands does, in sentences of a form.
func (b *bench) now(form string, w int) (rows []string) {
	for _, r := range b.tried.Setup.Reasons {
		if isNow(r.ID) {
			rows = append(rows, each(hang("> ", b.s.text(form+r.ID, r.Figures...), w), b.s.theme.Focus.Render)...)
		}
	}
	return rows
}

// nowInWords is the same without its marks.
func (b *bench) nowInWords(w int) (rows []string) {
	for _, r := range b.tried.Setup.Reasons {
		if isNow(r.ID) {
			rows = append(rows, wrap(b.s.text(r.ID, r.Figures...), w)...)
		}
	}
	return rows
}

// atGun is the gun with the trigger pulled.
func (b *bench) atGun() string {
	s, v := b.s, b.tried.Setup
	f := []calc.Figure{
		calc.FigureOf("working", calc.FigureGauge, v.Working.Pressure),
		calc.FigureOf("best", calc.FigureGauge, v.Short.Best), calc.FigureOf("cap", calc.FigureGauge, v.Working.Cap),
		calc.FigureOf("flow", calc.FigureFlow, v.Working.Flow),
	}
	switch {
	case v.Short.Is:
		return s.text("gun-short", f...)
	}
	return s.text("gun-now", f...)
}
