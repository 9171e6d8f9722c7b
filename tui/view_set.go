package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// setView is what to set: what to do first, the numbers, what speaks against spraying, what
// to mind and why. Where not all of it fits, what to mind comes before why. Nothing is set
// where the job is stopped.
func (b *bench) setView(room size) [][]string {
	against, warns, notes := b.against(room.w), b.cautions(calc.Warn, room.w), b.cautions(calc.Note, room.w)
	if b.headlineCut {
		against = append(b.cure(room.w), against...)
	}
	if b.tried.Stopped() {
		return shareOut([][]string{against, b.wouldHelp(room.w), warns, notes}, room)
	}
	first, gauge, why := b.first(room.w), b.gauge(room.w), b.mainReasons(room.w)
	free := size{room.w, room.h - 1 - len(first) - len(gauge) - len(against) - len(warns)} // a row to say that there is more
	if len(first) == 0 && room.w >= wideColumns {
		free.h -= len(why)
	}
	numbers, whole := b.numbers(free)
	fits := func() bool { return len(first)+len(numbers) < room.h }
	if !fits() {
		numbers, whole = b.tight(b.changedSettings(), room.w, draw.Small), false
	}
	if !fits() || len(numbers) == 0 {
		numbers = b.compact(room.w)
	}
	stage, atGun := b.stage(room.w), wrap(b.atGun(), room.w)
	switch {
	case !whole:
		return shareOut([][]string{first, numbers, gauge, against, warns, b.settingsInWords(room.w), why, stage, atGun, notes}, room)
	case len(first)+len(against) > 0 || len(numbers)+len(why)+len(warns) >= room.h:
		return shareOut([][]string{first, numbers, gauge, against, warns, why, stage, atGun, notes}, room)
	}
	return shareOut([][]string{numbers, gauge, why, warns, stage, atGun, notes}, room)
}

// setInWords is the view without its pictures.
func (b *bench) setInWords(w int) [][]string {
	blocks := [][]string{b.verdictRows(w), b.against(w), b.firstInWords(w), nil}
	if !b.tried.Stopped() {
		blocks[3] = b.allInWords(w)
	}
	blocks = append(blocks, b.cautions(calc.Warn, w))
	if !b.tried.Stopped() {
		blocks = append(blocks, b.stage(w), wrap(b.atGun(), w))
	}
	return append(blocks, b.cautions(calc.Note, w))
}

// cure is what turns the verdict, in full; there is none on one that goes.
func (b *bench) cure(w int) []string {
	turn := answer.TurnText(b.s.words, b.s.sys, b.tried.Setup.Turn())
	return each(hang("> ", turn, w), b.s.theme.Focus.Render)
}

// against is what speaks against spraying, each marked with its verdict.
func (b *bench) against(w int) (rows []string) {
	for _, c := range answer.AgainstRows(b.s.words, b.s.sys, &b.tried.Setup.Judgement) {
		rows = append(rows, each(hang(c.Name+" ", c.Text, w), b.s.theme.level[c.Level].Render)...)
	}
	return rows
}

// first is what is to be done before anything else, none where nothing is.
func (b *bench) first(w int) (rows []string) {
	for _, r := range answer.FirstRows(b.s.words, b.s.sys, b.tried.Setup) {
		rows = append(rows, each(hang("> ", r.Text, w), b.s.theme.Focus.Render)...)
	}
	return rows
}

// firstInWords is the same without its mark.
func (b *bench) firstInWords(w int) (rows []string) {
	for _, r := range answer.FirstRows(b.s.words, b.s.sys, b.tried.Setup) {
		rows = append(rows, wrap(r.Text, w)...)
	}
	return rows
}

// stage is how the stage is laid, and what the coat's other stages come to.
func (b *bench) stage(w int) (rows []string) {
	laid := ""
	for _, r := range b.tried.StageRows(b.s.words, b.s.sys) {
		switch r.Role {
		case answer.Value:
			text := r.Text
			if r.More != "" {
				text += " (" + r.More + ")"
			}
			if laid != "" {
				laid += "; "
			}
			laid += r.Name + " " + text
		case answer.Part:
			if !r.Marked {
				rows = append(rows, hang("- ", r.Text, w)...)
			}
		}
	}
	if laid == "" {
		return rows
	}
	return append(wrap(laid+".", w), rows...)
}

// cautions are those of a level, each marked with its word.
func (b *bench) cautions(level calc.Level, w int) (rows []string) {
	s := b.s
	all := slices.DeleteFunc(slices.Clone(b.tried.Setup.Cautions), func(c calc.Caution) bool { return c.Level != level })
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
		if n.value != was[i].value && !b.kept.Stopped() {
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
		if r.About == about {
			return b.s.text(inBrief+r.ID, r.Figures...)
		}
	}
	return ""
}

// inBrief stands before the id of a reason's sentence that is brief.
const inBrief = "brief-"

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
