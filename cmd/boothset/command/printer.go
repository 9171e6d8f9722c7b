package command

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
)

// printer writes an answer for people: in a width, a system of units and a language.
type printer struct {
	b     []byte
	width int
	sys   unit.System
	words *words.Words
}

// line writes a row as it is.
func (p *printer) line(format string, args ...any) {
	p.b = append(fmt.Appendf(p.b, format, args...), '\n')
}

// paragraph writes text, wrapped.
func (p *printer) paragraph(text string) {
	for _, row := range wrap(text, p.width) {
		p.line("%s", row)
	}
}

// leastRoom is the room that text must have behind its mark; with less it stands below.
const leastRoom = 20

// hang writes text behind a mark, wrapped so that its rows stand under each other.
func (p *printer) hang(mark, text string) {
	indent := displaywidth.String(mark) + 1
	if p.width-indent < leastRoom {
		indent = 4
		if mark = strings.TrimRight(mark, " "); mark != "" {
			p.paragraph(mark)
		}
		mark = strings.Repeat(" ", indent-1)
	}
	for i, row := range wrap(text, p.width-indent) {
		if i > 0 {
			mark = strings.Repeat(" ", indent-1)
		}
		p.line("%s %s", mark, row)
	}
}

// row is a figure with its name before it and what belongs to it behind.
type row struct{ name, value, more string }

// Columns of rows are as wide as what stands in them, but no narrower than this.
const (
	leastName  = 12
	leastValue = 18
	leastMore  = 24
)

// rows writes rows under each other, values in a column of at least a width. What belongs
// to a figure goes on below where the row is full, and altogether where the width is
// small.
func (p *printer) rows(values int, all ...row) {
	names := leastName
	for _, r := range all {
		names, values = max(names, displaywidth.String(r.name)), max(values, displaywidth.String(r.value))
	}
	for _, r := range all {
		name := "  " + pad(r.name, names)
		head := name + " " + pad(r.value, values)
		if p.width-displaywidth.String(head)-1 >= leastMore && r.more != "" {
			p.hang(head, r.more)
			continue
		}
		p.hang(name, r.value)
		if r.more != "" {
			p.hang(strings.Repeat(" ", 2+names), r.more)
		}
	}
}

// pad fills text up with blanks to a width.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-displaywidth.String(text)))
}

// say is the sentence of an id with its figures.
func (p *printer) say(id string, f ...calc.Figure) string { return p.words.Text(p.sys, id, f) }

// about is text that rests on estimates, where it does.
func (p *printer) about(rough bool, text string) string {
	if !rough {
		return text
	}
	return p.say("about", said("value", text))
}

// span is from one text to another.
func (p *printer) span(low, high string) string {
	return p.say("span", said("low", low), said("high", high))
}

func (p *printer) cautions(all []calc.Caution) {
	for _, c := range all {
		p.hang(p.levelMark(c.Level), p.say(c.ID, c.Figures...))
	}
}

// levelMark stands before a caution.
func (p *printer) levelMark(l calc.Level) string {
	switch l {
	case calc.Stop:
		return p.say("verdict-stop")
	case calc.Warn:
		return "!"
	}
	return "-"
}

func (p *printer) reasons(all []calc.Reason) {
	p.line("%s", p.say("card-why"))
	for _, r := range all {
		p.hang("-", p.say(r.ID, r.Figures...)+" ["+p.words.Standing(r.Ground)+"]")
	}
}

// wrap breaks text at blanks alone, so that "6358-1" stays whole, and not between a number
// and its unit, into rows of at most width columns where its words allow.
func wrap(text string, width int) (rows []string) {
	row := ""
	blank := func(c rune) bool { return c == ' ' || c == '\n' }
	for word := range strings.FieldsFuncSeq(words.Bound(text), blank) {
		word = strings.ReplaceAll(word, words.NoBreak, " ")
		if row != "" && displaywidth.String(row)+1+displaywidth.String(word) > width {
			rows, row = append(rows, row), ""
		}
		if row != "" {
			row += " "
		}
		row += word
	}
	return append(rows, row)
}
