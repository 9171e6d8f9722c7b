package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/tui/draw"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
)

// The glance is what is pinned on every view and page of the answer, in the same place: the
// verdict, what is to be done first, and the three settings in digits, in the order of doing.
// Its rows go by the window alone, so that no prose pushes them about.

// Heights of a window from which the settings stand in digits of so many rows.
const (
	digits3Window = 20
	digits5Window = 32
	digits7Window = 46
	digits9Window = 56
)

// leastPlaces is the width from which the settings stand side by side with their ranges.
const leastPlaces = 57

// glanceSize is how the glance is made in a window.
type glanceSize struct {
	digits int // rows of digits; 1 is a line of text
	notes  int // rows under them
	band   bool
}

func glanceIn(window size) glanceSize {
	switch {
	case window.h < digits3Window || window.w < leastPlaces:
		return glanceSize{digits: 1}
	case window.h < digits5Window:
		return glanceSize{digits: 3, notes: 1}
	case window.h < digits7Window:
		return glanceSize{digits: 5, notes: 2, band: true}
	case window.h < digits9Window:
		return glanceSize{digits: 7, notes: 2, band: true}
	}
	return glanceSize{digits: 9, notes: 3, band: true}
}

// glance is the rows that are pinned.
func (b *bench) glance(window size) []string {
	if b.err != nil {
		return nil
	}
	g := glanceIn(window)
	b.notesPinned = g.notes
	rows := b.headline(window, g)
	switch {
	case b.tried.Stopped():
		return append(rows, b.cureInPlace(window.w, g)...)
	case g.digits == 1:
		return append(rows, b.compact(window.w)...)
	}
	return append(rows, b.places(window.w, g)...)
}

// headline is the verdict and its cure; in a second row, where there is one, what is to be done
// first, what another mark did, what was agreed on or what was read, or what the gun's gauge then
// shows.
func (b *bench) headline(window size, g glanceSize) []string {
	th, v := b.s.theme, b.tried.Setup.Judgement.Verdict
	head := answer.Headline(b.s.words, b.s.sys, &b.tried.Setup.Judgement, answer.PlanGoes)
	badge, text, second := b.badge(head.Name, v), head.Text, b.second()
	if b.tried.Stopped() { // its cure stands where the settings would
		text = b.s.say("stopped-brief")
	}
	if b.changed() {
		text = b.s.say("tried") + " " + text
	}
	wide := ansi.StringWidth(badge) + 1
	lines := wrap(text, window.w-wide)
	if b.gaugePinned = false; g.digits == 1 {
		switch {
		case b.notice != "":
			lines = []string{tail(b.notice, window.w-wide)}
		case second.pressing:
			lines = wrap(second.text, window.w-wide)
		}
		b.headlineCut = len(lines) > 1
		return []string{badge + " " + th.verdict(v).Render(more(lines, window.w-wide))}
	}
	under, style := more(hang(second.mark, second.text, window.w), window.w), second.style
	if b.notice != "" { // its end is a file's name
		under = tail(b.notice, window.w)
	}
	b.gaugePinned = !second.pressing && second.text != "" && len(lines) == 1 && !strings.HasSuffix(under, cutMark)
	if !second.pressing && len(lines) > 1 {
		under, style = strings.Repeat(" ", wide)+more(lines[1:], window.w-wide), th.verdict(v)
		lines = lines[:1]
	}
	b.headlineCut = len(lines) > 1 || strings.HasSuffix(under, cutMark)
	return []string{badge + " " + th.verdict(v).Render(more(lines, window.w-wide)), style.Render(under)}
}

// badge is the verdict in its box, or in brackets where there is no colour for one.
func (b *bench) badge(name string, v calc.Verdict) string {
	if b.s.theme.colour {
		return b.s.theme.Badge[v].Render(" " + name + " ")
	}
	return "[" + name + "]"
}

// clip is the first of some rows, with a mark where others follow.
func clip(rows []string, most, w int) []string {
	if len(rows) <= most {
		return rows
	}
	return append(slices.Clone(rows[:most-1]), more(rows[most-1:], w))
}

// secondRow is what stands under the verdict; what is not pressing gives way to the rest of the
// verdict.
type secondRow struct {
	mark, text string
	style      lipgloss.Style
	pressing   bool
}

func (b *bench) second() secondRow {
	th := b.s.theme
	switch first := b.firstText(); {
	case b.notice != "":
		return secondRow{"", b.notice, th.Note, true}
	case b.tried.Stopped():
		return secondRow{}
	case first != "":
		return secondRow{"> ", first, th.Focus, true}
	case b.marked.text != "" && sameAnswers(b.marked.of, b.tried.answers):
		return secondRow{"", b.marked.text, th.Moved, true}
	}
	if row, standing := b.agreedRow(); standing {
		return row
	}
	if row, ok := b.tried.LearntRow(b.s.words, b.s.sys); ok {
		return secondRow{"", row.Text, th.Moved, true}
	}
	n := b.tried.GaugeRow(b.s.words, b.s.sys)
	return secondRow{"", n.Name + " " + n.Text + "  " + n.More, th.Caption, false}
}

// more is the first of some rows, with a mark where others follow.
func more(rows []string, w int) string {
	if len(rows) == 0 {
		return ""
	}
	if len(rows) == 1 {
		return rows[0]
	}
	return wrap(rows[0], w-len(cutMark))[0] + cutMark
}

// firstText is what is to be done before anything else, empty where nothing is.
func (b *bench) firstText() string {
	for _, r := range answer.FirstRows(b.s.words, b.s.sys, b.tried.Setup) {
		return r.Text
	}
	return ""
}

// places is the three settings side by side.
func (b *bench) places(w int, g glanceSize) (rows []string) {
	th := b.s.theme
	three := b.changedSettings()
	cols := thirds(w)
	var cells [3][]string
	tall := b.tallest(three, cols, g.digits)
	for i, n := range three {
		cells[i] = append(b.digits(&n, cols[i]-1, g.digits, tall), b.notes(&n, cols[i]-2, g)...)
	}
	title := ""
	for i, n := range three {
		name := th.Title.Render(string(rune('1'+i)) + " " + n.name)
		title += pad(b.s.ruled(name, cols[i]), cols[i])
	}
	return append([]string{title}, across(cells, cols)...)
}

// thirds parts a width in three.
func thirds(w int) [3]int { return [3]int{w / 3, w / 3, w - 2*(w/3)} }

// tallest is the height of digits in which all three settings fit beside each other.
func (b *bench) tallest(three [3]setting, cols [3]int, most int) int {
	for i, n := range three {
		most = min(most, len(draw.FitDigits(n.value, cols[i]-1, most, b.s.glyphs)))
	}
	return max(most, 1)
}

// digits is a value in digits of at most a height, at the foot of so many rows, with its unit
// beside it.
func (b *bench) digits(n *setting, w, high, tall int) []string {
	th := b.s.theme
	picture := draw.FitDigits(n.value, w, tall, b.s.glyphs)
	if picture == nil {
		picture = []string{cut(n.value, w)}
	}
	rows := make([]string, high)
	top := high - len(picture)
	style := th.Value
	if n.change != "" {
		style = th.Moved
	}
	wide := ansi.StringWidth(picture[0])
	for y, row := range picture {
		rows[top+y] = style.Render(row)
	}
	if n.value == n.unit { // a word, not a number
		return rows
	}
	for y, word := range besideDigits(w-wide-1, len(picture), n.unit, n.label) {
		at := high - 1 - y
		rows[at] = pad(rows[at], wide) + " " + th.Caption.Render(word)
	}
	return rows
}

// besideDigits is the first of some texts that fits beside digits with no word cut, its rows from
// the lowest up; nothing where none does.
func besideDigits(w, high int, texts ...string) []string {
	for _, text := range texts {
		longest := 0
		for _, word := range strings.Fields(text) {
			longest = max(longest, ansi.StringWidth(word))
		}
		if longest > w {
			continue
		}
		if rows := wrap(text, w); len(rows) <= high {
			slices.Reverse(rows)
			return rows
		}
	}
	return nil
}

// notes is what stands under the digits: what was moved or the range, and what it is.
func (b *bench) notes(n *setting, w int, g glanceSize) (rows []string) {
	th := b.s.theme
	if g.band {
		rows = append(rows, n.band.Row(w, b.s.glyphs, b.s.ink))
	}
	for _, t := range n.below() {
		if t == n.likely && ansi.StringWidth(t) > w {
			t = n.span
		}
		if len(rows) > 0 && t != n.change { // no sentence begins that has no room
			if len(rows)+len(wrap(t, w)) > g.rows() {
				continue
			}
		}
		style := th.Caption
		if t == n.change {
			style = th.Moved
		}
		rows = append(rows, each(wrap(t, w), style.Render)...)
	}
	if len(rows) > g.rows() {
		rows = rows[:g.rows()]
	}
	for len(rows) < g.rows() {
		rows = append(rows, "")
	}
	return rows
}

// rows is how many stand under the digits.
func (g glanceSize) rows() int {
	if g.band {
		return g.notes + 1
	}
	return g.notes
}

// cureInPlace is what turns the verdict of a job that is stopped, where the settings would be.
func (b *bench) cureInPlace(w int, g glanceSize) []string {
	th, high := b.s.theme, 1
	if g.digits > 1 {
		high = 1 + g.digits + g.rows()
	}
	text := answer.TurnText(b.s.words, b.s.sys, b.tried.Setup.Turn())
	rows := make([]string, 0, high)
	if high > 1 {
		rows = append(rows, b.s.ruled(th.Title.Render(b.s.say("cure-title")), w))
		left := b.cureDigits(w/2, g.digits)
		wide := 0
		for _, row := range left {
			wide = max(wide, ansi.StringWidth(row))
		}
		right := each(wrap(text, w-wide-3), th.Value.Render)
		rows = append(rows, joined(left, right, wide+3)...)
	} else {
		rows = append(rows, th.Value.Render(more(hang("> ", text, w), w)))
	}
	rows = rows[:min(len(rows), high)]
	for len(rows) < high {
		rows = append(rows, "")
	}
	return rows
}

// cureFigures is the figures of a cure that may stand in digits, the most telling first.
var cureFigures = []string{"to", "needed", "delivered", "receiver", "pause", "humidity"}

// cureDigits is the figure that the cure leads to, none where it has none.
func (b *bench) cureDigits(w, high int) []string {
	t := b.tried.Setup.Turn()
	for _, name := range cureFigures {
		for _, f := range t.Figures {
			number, of, ok := strings.Cut(b.s.words.Marked(b.s.words.FigureText(b.s.sys, f)), " ")
			if f.Name != name || !ok {
				continue
			}
			return b.digits(&setting{value: number, unit: of}, w, high, high)
		}
	}
	return nil
}
