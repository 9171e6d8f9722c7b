// Package print puts a card on one page: as HTML that prints on Letter and A4, and as PDF.
// What either says is the card's rows, word by word; the pictures come beside them.
package print

import (
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/words"
)

// Page is what is put on paper.
type Page struct {
	Title    string
	Rows     []answer.Row
	Pictures []card.Picture // they stand after the day's settings
	Words    *words.Words
	Paper    *Paper
	Printed  time.Time
}

// Paper is a size of paper, in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers is those that a page can be laid out for: Letter by ANSI/ASME Y14.1, A4 by ISO 216.
var Papers = []*Paper{{"letter", 215.9, 279.4}, {"a4", 210, 297}}

// margin is left free on each side of a page, in millimetres.
const margin = 12

// block is rows that are laid out alike.
type block struct {
	Kind  kind
	Items []item
	// Pictures stand after it.
	Pictures []card.Picture
}

// kind is how a block is laid out: text behind marks, names with values, the same large, a
// table.
type kind string

const (
	textKind    kind = "text"
	valueKind   kind = "values"
	settingKind kind = "settings"
	tableKind   kind = "table"
)

// item is a row on its way to paper, its texts printable.
type item struct {
	Mark, Name, Text, More string
	Cells                  []string
	Large, Strong          bool
}

// kinds is how the rows of a role are laid out, as text where it is not said.
var kinds = map[answer.Role]kind{
	answer.Setting: settingKind, answer.Value: valueKind, answer.Head: tableKind, answer.Part: tableKind,
}

// blocks is the rows of a page in blocks.
func (p *Page) blocks() (all []block) {
	settings := -1
	for i := range p.Rows {
		r := &p.Rows[i]
		k := kinds[r.Role]
		if k == "" {
			k = textKind
		}
		if last := len(all) - 1; last < 0 || r.Begins || all[last].Kind != k {
			all = append(all, block{Kind: k})
		}
		last := &all[len(all)-1]
		last.Items = append(last.Items, p.item(r))
		if r.About == answer.AboutWall && (r.Role == answer.Setting || r.Role == answer.Value) {
			settings = len(all) - 1 // the day's own, which stand after what was agreed
		}
	}
	if settings >= 0 {
		all[settings].Pictures = p.drawn()
	}
	return all
}

func (p *Page) item(r *answer.Row) item {
	it := item{Text: p.plain(r.Text)}
	switch r.Role {
	case answer.Verdict:
		it.Mark, it.Large, it.Strong = p.plain(r.Name)+":", true, true
	case answer.Against:
		it.Mark, it.Strong = p.plain(r.Name), r.Level == calc.Stop
	case answer.Caution:
		it.Mark, it.Text, it.Strong = p.plain(answer.LevelMark(p.Words, r.Level)), p.plain(r.Grounded()), r.Level != calc.Note
	case answer.Setting, answer.Value:
		it.Name, it.Text, it.More = p.plain(r.Name), p.plain(r.Text), p.plain(r.More)
	case answer.Head, answer.Part:
		it = item{Strong: r.Role == answer.Head || r.Marked}
		for _, c := range r.Cells {
			it.Cells = append(it.Cells, p.plain(c))
		}
	case answer.Reason:
		it.Mark, it.Text = "-", p.plain(r.Grounded())
	case answer.Remark, answer.Range:
		it.Mark = "-"
	case answer.First, answer.Title:
		it.Strong = true
	}
	return it
}

// plain is a text as it may stand on paper: on one line, with the language's decimal mark,
// without anything that steers or turns what is printed.
func (p *Page) plain(t string) string {
	t = strings.Join(strings.Fields(strings.ReplaceAll(t, words.NoBreak, " ")), " ")
	return words.Printable(p.Words.Marked(t))
}

// drawn is the pictures with their texts as they may stand on paper.
func (p *Page) drawn() (all []card.Picture) {
	for _, x := range p.Pictures {
		x.Shapes = slices.Clone(x.Shapes)
		for i := range x.Shapes {
			x.Shapes[i].Text = p.plain(x.Shapes[i].Text)
		}
		all = append(all, x)
	}
	return all
}
