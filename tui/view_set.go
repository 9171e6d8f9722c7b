package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
)

// wideColumns is the width from which the settings' texts stand under them.
const wideColumns = 78

// setView is how to set what is pinned, and why: what speaks against spraying, how each of the
// settings is set, what to mind, and where there is room the gauge, the knob and the hand. Nothing
// is set where the job is stopped.
func (b *bench) setView(room size) [][]string {
	against, warns, notes := b.against(room.w), b.cautions(calc.Warn, room.w), b.cautions(calc.Note, room.w)
	if b.headlineCut {
		against = append(b.inFull(room.w), against...)
	}
	if b.tried.Stopped() {
		return shareOut([][]string{against, b.wouldHelp(room.w), warns, notes}, room)
	}
	how := b.how(room.w)
	var pictures []string
	if room.w >= wideColumns {
		pictures = b.pictures(room.w, min(room.h-len(against)-len(how)-len(warns)-3, mostPicture))
	}
	var gauge []string
	if !b.gaugePinned {
		gauge = b.gauge(room.w)
	}
	return shareOut([][]string{against, b.agreedRows(room.w), how, pictures, gauge, warns, b.stage(room.w), wrap(b.atGun(), room.w), notes}, room)
}

// Rows of a picture under a setting.
const (
	leastPicture = 9
	mostPicture  = 18
)

// pictures is the gauge, the knob and the hand under their settings, none where there is no room.
func (b *bench) pictures(w, high int) []string {
	if high < leastPicture {
		return nil
	}
	cols := thirds(w)
	cells := [3][]string{
		atWall:     b.wallGauge().Rows(cols[atWall]-2, high, b.s.glyphs, b.s.ink),
		atValve:    b.knob().Rows(cols[atValve]-2, high, b.s.glyphs, b.s.ink),
		atDistance: b.reach().Rows(cols[atDistance]-1, min(high, reachHigh), b.s.glyphs, b.s.ink),
	}
	if cells[atWall] == nil {
		return nil
	}
	return across(cells, cols)
}

// reachHigh is the most rows of the hand and the panel.
const reachHigh = 10

// how is each setting's strongest reason and what it is, under it where there is room.
func (b *bench) how(w int) (rows []string) {
	cols := thirds(w)
	if b.notesPinned == 0 {
		rows = b.spans(w)
	}
	var cells [3][]string
	for i, n := range b.settings(&b.tried) {
		texts := n.below()
		texts = texts[min(b.notesPinned, len(texts)):]
		if why := b.mainReason(n.about); why != "" {
			texts = append([]string{why}, texts...)
		}
		if w >= wideColumns {
			for _, t := range texts {
				cells[i] = append(cells[i], wrap(t, cols[i]-2)...)
			}
			continue
		}
		rows = append(rows, hang(b.s.theme.Title.Render(n.name)+" ", strings.Join(texts, "; "), w)...)
	}
	if w >= wideColumns {
		return across(cells, cols)
	}
	return rows
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
	blocks = append(blocks, b.agreedRows(w))
	return append(blocks, b.cautions(calc.Note, w))
}

// inFull is what the pinned rows had no room for: what is to be done first, or else what turns
// the verdict.
func (b *bench) inFull(w int) []string {
	text := b.firstText()
	if turn := b.tried.Setup.Turn(); text == "" && turn.ID != "" {
		text = answer.TurnText(b.s.words, b.s.sys, turn)
	}
	return each(hang("> ", text, w), b.s.theme.Focus.Render)
}

// against is what speaks against spraying, each marked with its verdict.
func (b *bench) against(w int) (rows []string) {
	for _, c := range answer.AgainstRows(b.s.words, b.s.sys, &b.tried.Setup.Judgement) {
		rows = append(rows, each(hang(c.Name+" ", c.Text, w), b.s.theme.level[c.Level].Render)...)
	}
	return rows
}

// firstInWords is what is to be done before anything else, none where nothing is.
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

// spans is the range of each setting, where they are not pinned.
func (b *bench) spans(w int) []string {
	var pieces []string
	for _, n := range b.settings(&b.tried) {
		if n.span != "" {
			pieces = append(pieces, n.name+" "+n.span)
		}
	}
	return flow(pieces, "  ", w)
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
