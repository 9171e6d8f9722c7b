package tui

import (
	"math"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"

	"github.com/charmbracelet/x/ansi"
)

// Widths and heights from which the bench shows more.
const (
	sideWindow = 110 // columns with room for the list of inputs beside the view
	sideHigh   = 18  // rows of it
	sideWide   = 40
	lowBench   = 13 // rows from which the hazard line stands in full
)

// shares is how the room of the bench is shared out.
type shares struct {
	verdict, settings, foot []string
	view                    size
	side                    bool
}

func (b *bench) share(room size) shares {
	told := append(b.markRows(room), b.noticeRows(room)...)
	v := shares{verdict: append(b.headline(room), told...), side: room.w >= sideWindow && room.h >= sideHigh, view: room}
	if !b.views[b.view].settings && !b.tried.Stopped() {
		v.settings = b.compact(room.w)
	}
	v.foot = b.foot(room, v.side)
	v.view.h = max(room.h-len(v.verdict)-len(v.settings)-len(v.foot), 1)
	if v.side {
		v.view.w -= sideWide + 2
	}
	return v
}

// under is where keys lead from here, the view that shows in brackets. Where it is too narrow for
// all the names those of the pages stand as their keys, and then all but that of the view
// that shows.
func (b *bench) under(window size) []string {
	names, between := b.tabs(window.w)
	return []string{b.s.theme.Key.Render(cut(strings.Join(names, between), window.w))}
}

// tabs is where keys lead from here as they are named in so many columns, and what stands
// between them.
func (b *bench) tabs(w int) (names []string, between string) {
	all := b.destinations()
	for _, withName := range []int{len(all), len(b.views), 0} {
		between = "  "
		if withName < len(all) {
			between = " "
		}
		names = make([]string, len(all))
		for i, d := range all {
			switch {
			case i == b.view:
				names[i] = "[" + d.key + " " + d.name + "]"
			case i < withName:
				names[i] = d.key + " " + d.name
			default:
				names[i] = d.key
			}
		}
		if ansi.StringWidth(strings.Join(names, between)) <= w {
			break
		}
	}
	return names, between
}

// body is the verdict, the view that shows, the inputs and the hazard line.
func (b *bench) body(room size) []string {
	s := b.s
	if b.err != nil {
		return hang("! ", b.err.Error(), room.w)
	}
	v := b.share(room)
	rows := append(v.verdict, v.settings...)
	shown := b.viewRows(v.view)
	if !v.side {
		return append(append(rows, shown...), v.foot...)
	}
	side := b.sideRows(size{sideWide, v.view.h})
	for y := range v.view.h {
		var left, right string
		if y < len(shown) {
			left = shown[y]
		}
		if y < len(side) {
			right = side[y]
		}
		rows = append(rows, strings.TrimRight(pad(left, v.view.w)+" "+string(s.glyphs.Upright)+right, " "))
	}
	return append(rows, v.foot...)
}

// viewRows is the screenful of the view that shows, filled up to its height.
func (b *bench) viewRows(view size) []string {
	all := b.screenfuls(view)
	at := min(b.screenful, len(all)-1)
	rows := make([]string, view.h)
	copy(rows, all[at])
	if len(all) > 1 {
		id := "screenful"
		if warns := append(b.against(view.w), b.cautions(calc.Warn, view.w)...); b.views[b.view].settings && len(warns) > 0 && !slices.Contains(all[at], warns[0]) {
			id = "screenful-watch"
		}
		text := b.s.text(id, calc.CountFigure("n", at+1), calc.CountFigure("of", len(all)), calc.TextFigure("key", b.viewKey()))
		rows[view.h-1] = toRight(b.s.theme.Note.Render(cut(text, view.w)), view.w)
	}
	return rows
}

// verdictRows is whether to spray, in words, and what turns it.
func (b *bench) verdictRows(w int) []string { return b.verdictIn(w, math.MaxInt) }

// verdictIn is the same in so many rows at most.
func (b *bench) verdictIn(w, most int) []string {
	j := &b.tried.Setup.Judgement
	head := answer.Headline(b.s.words, b.s.sys, j, answer.PlanGoes)
	text := head.Name + ": " + head.Text
	if b.changed() {
		text = b.s.say("tried") + " " + text
	}
	rows := wrap(text, w)
	if len(rows) > most {
		rows[most-1] = cut(strings.Join(rows[most-1:], " "), w)
		rows = rows[:most]
	}
	style := b.s.theme.level[head.Level]
	if j.Verdict == calc.VerdictGo {
		style = b.s.theme.Go
	}
	return each(rows, style.Render)
}

// headlineRows is how many rows of a window the verdict may take, and lowHeadline of a low
// one. What turns it stands in full in the first view where that cuts it off.
const (
	headlineRows = 2
	lowHeadline  = 1
)

// headline is the verdict over the views.
func (b *bench) headline(room size) []string {
	most := headlineRows
	if room.h < lowBench {
		most = lowHeadline
	}
	rows := b.verdictIn(room.w, most)
	b.headlineCut = len(b.verdictRows(room.w)) > len(rows)
	return rows
}

// markRows is what another mark of the gauge did, cut where there is little room.
func (b *bench) markRows(room size) []string {
	text := b.marked.text
	rows := wrap(text, room.w)
	switch {
	case text == "" || !sameAnswers(b.marked.of, b.tried.answers):
		return nil
	case room.h < lowBench:
		rows = []string{cut(text, room.w)}
	}
	return each(rows, b.s.theme.Note.Render)
}

// foot is the input that is moved and the hazard line.
func (b *bench) foot(room size, side bool) (rows []string) {
	s := b.s
	if !side {
		rows = append(rows, b.strip(room.w))
	}
	hazard := wrap(s.say(b.hazard()), room.w)
	if room.h < lowBench {
		hazard = []string{cut(hazard[0], room.w)}
	}
	return append(rows, each(hazard, s.theme.level[calc.Warn].Render)...)
}

// hazard is the id of the sentence of what harms in the coat.
func (b *bench) hazard() string { return answer.Hazard(b.tried.Setup.Cautions) }
