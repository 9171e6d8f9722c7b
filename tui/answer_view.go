package tui

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// section is a part of the answer that can be gone to.
type section int

const (
	sectionReasons section = iota
	sectionLine
	sectionNow
	sectionBottleneck
)

// body is the answer in a window that scrolls, over the safety line that stays.
func (a *answer) body(room size) []string {
	s := a.s
	if a.err != nil {
		return hang("! ", a.err.Error(), room.w)
	}
	foot := wrap(s.say("safety-line"), room.w)
	a.room = size{room.w, room.h - len(foot)}
	rows, _ := a.rows(a.room)
	shown := a.scroll.window(s, rows, a.room)
	for len(shown) < a.room.h {
		shown = append(shown, "")
	}
	return append(shown, each(foot, s.theme.level[calc.Warn].Render)...)
}

// rows is the whole answer, and the row each section begins at.
func (a *answer) rows(room size) (rows []string, at map[section]int) {
	setup := a.shown()
	at = map[section]int{}
	add := func(more ...string) { rows = append(rows, more...) }
	space := func() {
		if len(rows) > 0 {
			add("")
		}
	}
	add(a.cautions(calc.Stop, room.w)...)
	add(a.numbers(room)...)
	add(wrap(a.atGun(), room.w)...)
	at[sectionNow] = len(rows)
	add(a.now(room.w)...)
	at[sectionBottleneck] = len(rows)
	add(wrap(a.first("line"), room.w)...)
	add(a.cautions(calc.Warn, room.w)...)
	space()
	add(a.howSure(room.w)...)
	space()
	if help := a.wouldHelp(room.w); len(help) > 0 {
		add(help...)
		space()
	}
	at[sectionReasons] = len(rows)
	switch {
	case a.all:
		add(a.allReasons(room.w)...)
	case room.w >= wideColumns:
		add(columns(a.mainReasons(), room.w)...)
	default:
		for i, text := range a.mainReasons() {
			add(wrap(a.s.theme.Title.Render(numberNames[i])+" "+text, room.w)...)
		}
	}
	space()
	at[sectionLine] = len(rows)
	add(a.line(setup, room.w)...)
	space()
	if !a.all {
		add(a.supply(room.w)...)
		space()
	}
	add(a.cautions(calc.Note, room.w)...)
	return rows, at
}

// cautions are those of a level, each marked with its word.
func (a *answer) cautions(level calc.Level, w int) (rows []string) {
	st := a.s.theme.level[level]
	for _, c := range a.shown().Cautions {
		if c.Level == level {
			rows = append(rows, each(hang(levelWord[level]+" ", a.s.words.Text(a.s.sys, c.ID, c.Figures), w), st.Render)...)
		}
	}
	return rows
}

// Widths from which numbers stand beside each other, and from which they are large and
// their reasons stand under them.
const (
	narrowColumns = 54
	wideColumns   = 78
)

// Heights from which the digits are drawn.
const (
	smallDigits = 12
	largeDigits = 17
)

var numberNames = [3]string{"WALL", "DISTANCE", "INLET VALVE"}

// likelyMark stands before the bounds that a number lies within eight times in ten.
const likelyMark = "likely "

// number is one of the three with what stands around it.
type number struct{ name, value, unit, likely, below, below2 string }

func (a *answer) three() [3]number {
	sys, v := a.s.sys, a.shown()
	cutUnit := func(printed string) (value, unit string) {
		unit = unitOf(printed)
		return strings.TrimSuffix(printed, " "+unit), unit
	}
	n := [3]number{{name: numberNames[0]}, {name: numberNames[1]}, {name: numberNames[2]}}
	n[0].value, n[0].unit = cutUnit(sys.Gauge(v.Wall.Flowing, unit.Usual))
	n[0].below = "trigger pulled"
	n[0].below2 = sys.Gauge(v.Wall.Static, unit.Usual) + " at rest"
	if a.request.RegulatorAt == calc.Foot {
		n[0].name = "GUN'S FOOT"
	}
	n[1].value, n[1].unit = cutUnit(sys.Small(v.Distance.Target, unit.Usual))
	low, _ := cutUnit(sys.Small(v.Distance.Low, unit.Usual))
	n[1].below = "keep " + low + " to " + sys.Small(v.Distance.High, unit.Usual)
	n[1].below2 = "cap to panel"
	n[2].value, n[2].unit = strings.TrimSuffix(unit.PercentText(v.Valve.Opening, 0), "%"), "% open"
	n[2].below = sys.Drop(v.Valve.Reserve, unit.Usual) + " in hand"
	n[2].below2 = "not below " + unit.PercentText(v.Valve.Floor, 0)
	if v.Short.Is {
		return n // what shows is where the supply ends, and that is no setting
	}
	likely := func(low, high string) string {
		low, _ = cutUnit(low)
		high, _ = cutUnit(high)
		return likelyMark + low + " to " + high
	}
	p := a.spread
	n[0].likely = likely(sys.Gauge(p.Wall.Low, unit.Usual), sys.Gauge(p.Wall.High, unit.Usual))
	n[1].likely = likely(sys.Small(p.Distance.Low, unit.Usual), sys.Small(p.Distance.High, unit.Usual))
	n[2].likely = likely(strings.TrimSuffix(unit.PercentText(p.Opening.Low, 0), "%"), unit.PercentText(p.Opening.High, 0))
	return n
}

// numbers is the three, as large as the room allows.
func (a *answer) numbers(room size) []string {
	th, three := a.s.theme, a.three()
	if room.w < narrowColumns || room.h < smallDigits {
		var rows []string
		for _, n := range three {
			sep := " "
			if n.unit == "% open" {
				sep = ""
			}
			row := pad(n.name, 12) + th.Number.Render(pad(n.value+sep+n.unit, 9)) + " "
			if ansi.StringWidth(row+n.likely) > room.w {
				n.likely = strings.TrimPrefix(n.likely, likelyMark)
			}
			rows = append(rows, strings.TrimRight(row+n.likely, " "), margin+n.below+", "+n.below2)
		}
		for i := range rows {
			rows[i] = cut(rows[i], room.w)
		}
		return rows
	}
	scale := draw.Small
	if room.w >= wideColumns && room.h >= largeDigits {
		scale = draw.Large
	}
	col := room.w / len(three)
	var pictures [3][]string
	for i, n := range three {
		pictures[i] = draw.Number(n.value, scale, a.s.glyphs)
	}
	across := func(cell func(i int) string) string {
		var row string
		for i := range three {
			row += pad(cell(i), col-1) + " "
		}
		return strings.TrimRight(row, " ")
	}
	rows := []string{across(func(i int) string { return th.Title.Render(three[i].name) + "  " + three[i].unit })}
	for y := range pictures[0] {
		rows = append(rows, across(func(i int) string {
			if y >= len(pictures[i]) {
				return ""
			}
			return th.Number.Render(strings.TrimRight(pictures[i][y], " "))
		}))
	}
	if three[0].likely != "" {
		rows = append(rows, across(func(i int) string { return three[i].likely }))
	}
	return append(rows, across(func(i int) string { return three[i].below }), across(func(i int) string { return three[i].below2 }))
}

// columns puts texts side by side, wrapped.
func columns(texts [3]string, w int) (rows []string) {
	col := w / len(texts)
	var cells [3][]string
	high := 0
	for i, text := range texts {
		cells[i] = wrap(text, col-2)
		high = max(high, len(cells[i]))
	}
	for y := range high {
		var row string
		for i := range cells {
			var cell string
			if y < len(cells[i]) {
				cell = cells[i][y]
			}
			row += pad(cell, col)
		}
		rows = append(rows, strings.TrimRight(row, " "))
	}
	return rows
}
