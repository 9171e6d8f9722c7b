package main

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/charmbracelet/x/ansi"
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

// paragraph writes text, wrapped, beginning with a capital even where it begins with a
// name.
func (p *printer) paragraph(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if text != "" && 'a' <= text[0] && text[0] <= 'z' {
		text = string(text[0]-'a'+'A') + text[1:]
	}
	for _, row := range wrap(text, p.width) {
		p.line("%s", row)
	}
}

// hang writes text behind a mark, wrapped so that its rows stand under each other.
func (p *printer) hang(mark, text string) {
	indent := ansi.StringWidth(mark) + 1
	for i, row := range wrap(text, p.width-indent) {
		if i > 0 {
			mark = strings.Repeat(" ", indent-1)
		}
		p.line("%s %s", mark, row)
	}
}

// leastMore is how much room a row must leave for what stands behind its figure.
const leastMore = 24

// row writes a figure with its name before it and what belongs to it behind, which goes
// on below where the row is full, and altogether where the width is small.
func (p *printer) row(name, value, more string) {
	const names = 12
	head := fmt.Sprintf("  %-*s %-18s", names, name, value)
	if room := p.width - ansi.StringWidth(head) - 1; room < leastMore || more == "" {
		p.line("%s", strings.TrimRight(head, " "))
		if more != "" {
			p.hang(strings.Repeat(" ", 2+names), more)
		}
		return
	}
	p.hang(head, more)
}

// sentence is the sentence of an id.
func (p *printer) sentence(id string, f calc.Figures) string { return p.words.Text(p.sys, id, f) }

var levelMark = map[calc.Level]string{calc.Stop: "STOP", calc.Warn: "!", calc.Note: "-"}

func (p *printer) cautions(all []calc.Caution) {
	for _, c := range all {
		p.hang(levelMark[c.Level], p.sentence(c.ID, c.Figures))
	}
}

func (p *printer) reasons(all []calc.Reason) {
	p.line("Why")
	for _, r := range all {
		p.hang("-", p.sentence(r.ID, r.Figures)+" ["+p.words.Standing(r.Standing)+"]")
	}
}

// wrap breaks text at blanks alone, so that "6358-1" stays whole, into rows of at most
// width columns where its words allow.
func wrap(text string, width int) (rows []string) {
	row := ""
	for _, word := range strings.Fields(text) {
		if row != "" && ansi.StringWidth(row)+1+ansi.StringWidth(word) > width {
			rows, row = append(rows, row), ""
		}
		if row != "" {
			row += " "
		}
		row += word
	}
	return append(rows, row)
}
