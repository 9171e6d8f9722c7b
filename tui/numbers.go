package tui

import (
	"cmp"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// Widths from which the numbers stand beside each other with room for their ranges, and
// from which they are large and their reasons stand under them.
const (
	narrowColumns = 54
	wideColumns   = 78
)

// number is one of the three with what stands around it.
type number struct {
	name, value, unit string
	moved             string   // what it was and is, where something was moved
	span              string   // the range it likely lies within
	likely            string   // the same in words
	told              []string // what it is, in words
}

// printed is the number with its unit.
func (n number) printed() string {
	if n.unit == "%" || strings.HasPrefix(n.unit, "% ") {
		return n.value + n.unit
	}
	return n.value + " " + n.unit
}

// three is the numbers of a job: wall, distance, inlet valve.
func (b *bench) three(j *job) [3]number {
	s, sys, v := b.s, b.s.sys, j.setup
	n := [3]number{{name: s.say("number-wall")}, {name: s.say("number-distance")}, {name: s.say("number-valve")}}
	if j.request.RegulatorAt == calc.Foot {
		n[0].name = s.say("number-foot")
	}
	flowing, target := sys.Gauge(v.Wall.Flowing, unit.Usual), sys.Small(v.Distance.Target, unit.Usual)
	n[0].value, n[0].unit = bare(flowing), unitOf(flowing)
	n[0].told = []string{s.say("number-flowing"), s.text("number-static", calc.Figures{gaugeFigure("static", v.Wall.Static)})}
	n[1].value, n[1].unit = bare(target), unitOf(target)
	n[1].told = []string{s.text("number-keep", calc.Figures{named("low", bare(sys.Small(v.Distance.Low, unit.Usual))), named("high", sys.Small(v.Distance.High, unit.Usual))}), s.say("number-from")}
	n[2].value, n[2].unit = strings.TrimSuffix(unit.PercentText(v.Valve.Opening, 0), "%"), s.say("number-open")
	n[2].told = []string{
		s.text("number-reserve", calc.Figures{dropFigure("reserve", v.Valve.Reserve)}),
		s.text("number-floor", calc.Figures{shareFigure("floor", v.Valve.Floor)}),
	}
	if v.Short.Is { // what shows is where the supply ends
		n[0].told = []string{s.say("number-no-setting"), s.say("number-flowing")}
		n[2].told = []string{s.say("number-no-setting")}
	}
	if j.spread == nil {
		return n
	}
	likely := func(n *number, low, high string) {
		f := calc.Figures{named("low", bare(low)), named("high", bare(high))}
		n.span, n.likely = s.text("number-span", f), s.text("number-likely", f)
	}
	p := j.spread
	likely(&n[0], sys.Gauge(p.Wall.Low, unit.Usual), sys.Gauge(p.Wall.High, unit.Usual))
	likely(&n[1], sys.Small(p.Distance.Low, unit.Usual), sys.Small(p.Distance.High, unit.Usual))
	likely(&n[2], strings.TrimSuffix(unit.PercentText(p.Opening.Low, 0), "%"), unit.PercentText(p.Opening.High, 0))
	return n
}

// compact is the three in a row, with their units alone where that is too wide.
func (b *bench) compact(w int) []string {
	var full, short, shortest, now []string
	was, is := b.three(&b.kept), b.three(&b.tried)
	for i, n := range is {
		text := n.printed()
		n.unit, _, _ = strings.Cut(n.unit, " ")
		least := n.printed()
		now = append(now, least)
		if was[i].value != n.value {
			text, least = was[i].value+" -> "+text, was[i].value+" -> "+least
		}
		full = append(full, n.name+" "+text)
		short = append(short, text)
		shortest = append(shortest, least)
	}
	row := strings.Join(full, "   ")
	for _, less := range []string{strings.Join(short, "  "), strings.Join(shortest, " "), strings.Join(now, "  ")} {
		if ansi.StringWidth(row) > w {
			row = less
		}
	}
	return []string{b.s.theme.Number.Render(cut(row, w))}
}

// moved3 is the three as they are tried, each with what it was where it was moved.
func (b *bench) moved3() [3]number {
	three, was := b.three(&b.tried), b.three(&b.kept)
	for i := range three {
		if was[i].value != three[i].value {
			three[i].moved = was[i].value + " -> " + three[i].printed()
		}
	}
	return three
}

// numbers is the three, as large as the room allows; whole is false where what they are
// is not told with them.
func (b *bench) numbers(room size) (rows []string, whole bool) {
	three := b.moved3()
	if room.w < wideColumns {
		for _, gap := range []int{1, 0} {
			if rows := b.stacked(three, room.w, gap); len(rows) <= room.h {
				return rows, true
			}
		}
	}
	for size := draw.Large; size >= draw.Small; size-- {
		rows := b.beside(three, room.w, size)
		if rows != nil && (len(rows) <= room.h || size == draw.Small && room.w >= narrowColumns) {
			return rows, true
		}
	}
	if rows := b.tight(three, room.w, draw.Medium); rows != nil && len(rows) <= room.h {
		return rows, false
	}
	return b.tight(three, room.w, draw.Small), false
}

// stacked is the numbers one below the other, large, each with its words beside it.
func (b *bench) stacked(three [3]number, w, gap int) (rows []string) {
	th := b.s.theme
	wide := 0
	var pictures [3][]string
	for i, n := range three {
		pictures[i] = draw.Number(n.value, draw.Large, b.s.glyphs)
		wide = max(wide, ansi.StringWidth(pictures[i][0]))
	}
	for i, n := range three {
		if i > 0 && gap > 0 {
			rows = append(rows, "")
		}
		text := wrap(n.name+"  "+n.unit, w-wide-2)
		text = each(text, th.Title.Render)
		for _, t := range n.below() {
			text = append(text, wrap(t, w-wide-2)...)
		}
		for y := range max(len(pictures[i]), len(text)) {
			var left, right string
			if y < len(pictures[i]) {
				left = pictures[i][y]
			}
			if y < len(text) {
				right = text[y]
			}
			rows = append(rows, strings.TrimRight(th.Number.Render(pad(left, wide))+"  "+right, " "))
		}
	}
	return rows
}

// beside is the numbers in three columns: name and unit, the digits, the range and what
// they are. None where the digits are wider than their column.
func (b *bench) beside(three [3]number, w int, scale draw.Size) []string {
	th := b.s.theme
	col := w / len(three)
	var cells [3][]string
	for i, n := range three {
		digits := draw.Number(n.value, scale, b.s.glyphs)
		if ansi.StringWidth(digits[0]) >= col {
			return nil
		}
		cells[i] = append(each(wrap(n.name+"  "+n.unit, col-1), th.Title.Render), each(digits, th.Number.Render)...)
	}
	level(&cells)
	for i, n := range three {
		for _, t := range n.below() {
			cells[i] = append(cells[i], wrap(t, col-1)...)
		}
	}
	return across(cells, [3]int{col, col, col})
}

// tight is the numbers with their names, each column as wide as it must be, and
// the range or what was moved under them. None where that is too wide.
func (b *bench) tight(three [3]number, w int, scale draw.Size) []string {
	th := b.s.theme
	var cells [3][]string
	var cols [3]int
	free := w
	for i, n := range three {
		unit, _, _ := strings.Cut(n.unit, " ")
		cells[i] = append([]string{th.Title.Render(n.name + " " + unit)}, each(draw.Number(n.value, scale, b.s.glyphs), th.Number.Render)...)
		if n.moved != "" {
			n.moved = strings.TrimSuffix(n.moved, n.unit) + unit
		}
		if below := cmp.Or(n.moved, n.span); below != "" {
			cells[i] = append(cells[i], below)
		}
		for _, row := range cells[i] {
			cols[i] = max(cols[i], ansi.StringWidth(row))
		}
		free -= cols[i]
	}
	gap := free / (len(three) - 1)
	if gap < 1 {
		return nil
	}
	for i := range cols {
		cols[i] += min(gap, widestGap)
	}
	return across(cells, cols)
}

// widestGap is the most between the columns of the numbers that stand tight.
const widestGap = 4

// below is what stands under the digits, the most wanted first.
func (n number) below() []string {
	return slices.DeleteFunc(append([]string{n.moved, n.likely}, n.told...), func(t string) bool { return t == "" })
}

// level fills the cells up to the highest of them.
func level(cells *[3][]string) {
	high := 0
	for i := range cells {
		high = max(high, len(cells[i]))
	}
	for i := range cells {
		for len(cells[i]) < high {
			cells[i] = append(cells[i], "")
		}
	}
}

// across is cells of rows side by side, each in so many columns.
func across(cells [3][]string, cols [3]int) (rows []string) {
	level(&cells)
	for y := range cells[0] {
		var row string
		for i := range cells {
			row += pad(cells[i][y], cols[i]-1) + " "
		}
		rows = append(rows, strings.TrimRight(row, " "))
	}
	return rows
}
