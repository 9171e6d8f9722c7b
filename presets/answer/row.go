package answer

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Role is what a row is.
type Role uint8

// The roles.
const (
	Heading  Role = iota // what was asked
	Verdict              // what it comes to, with what turns it
	Against              // what speaks against it, with its ground
	First                // what is to be done before anything else
	Setting              // a value to set
	Value                // a value to know
	Range                // how sure the values are
	Caution              // to know before spraying, with its level
	Title                // over the rows that follow
	Remark               // a row of a list under a title
	Reason               // why, with its ground
	Head                 // the heads of a table's columns
	Part                 // a row of a table
	Together             // the values to set, in one line
)

// String is what a role is called in JSON.
func (r Role) String() string {
	return [...]string{
		Heading: "heading", Verdict: "verdict", Against: "against", First: "first", Setting: "setting", Value: "value", Range: "range", Caution: "caution",
		Title: "title", Remark: "remark", Reason: "reason", Head: "head", Part: "part", Together: "together",
	}[r]
}

// Row is one thing that an answer says.
type Row struct {
	Role Role
	// Level is that of a caution, and of a verdict and what speaks against it how much it weighs.
	Level calc.Level
	// About is what the row is of, "wall", and ID the sentence it is said in.
	About, ID string
	Name      string // what a value or a verdict is called
	Text      string // the value, or the sentence
	More      string // what belongs to a value
	Ground    string // what a reason rests on, or a caution that has one
	Cells     []string
	Marked    bool // the row of a table that counts most
	// Begins: a new block begins here.
	Begins bool
}

// Grounded is the text with what it rests on, where it has that.
func (r *Row) Grounded() string {
	if r.Ground == "" {
		return r.Text
	}
	return r.Text + " [" + r.Ground + "]"
}

// speaker says rows in a language and a system's units.
type speaker struct {
	words *words.Words
	sys   unit.System
	rows  []Row
}

func (p *speaker) add(rows ...Row) { p.rows = append(p.rows, rows...) }

// block adds rows as a block of their own.
func (p *speaker) block(rows ...Row) {
	if len(rows) > 0 {
		rows[0].Begins = true
		p.add(rows...)
	}
}

// say is the sentence of an id with its figures.
func (p *speaker) say(id string, f ...calc.Figure) string { return p.words.Text(p.sys, id, f) }

// about is text that rests on estimates, where it does.
func (p *speaker) about(rough bool, t string) string {
	if !rough {
		return t
	}
	return p.say("about", calc.TextFigure("value", t))
}

// span is from one text to another.
func (p *speaker) span(low, high string) string {
	return p.say("span", calc.TextFigure("low", low), calc.TextFigure("high", high))
}

// CautionRows is cautions as rows.
func CautionRows(w *words.Words, sys unit.System, all []calc.Caution) []Row {
	rows := make([]Row, len(all))
	for i, c := range all {
		rows[i] = Row{Role: Caution, Level: c.Level, ID: c.ID, Text: w.Text(sys, c.ID, c.Figures)}
		if c.Basis != "" {
			rows[i].Ground = w.Ground(c.Ground)
		}
	}
	return rows
}

// General is the caution that holds for every job. A run says it once: it is in no answer.
var General = calc.Caution{Level: calc.Note, ID: "safety", Safety: true}

// GeneralRows is the general caution as a block of its own, for the end of an answer.
func GeneralRows(w *words.Words, sys unit.System) []Row {
	rows := CautionRows(w, sys, []calc.Caution{General})
	rows[0].Begins = true
	return rows
}

// ReasonRows is reasons as rows.
func ReasonRows(w *words.Words, sys unit.System, all []calc.Reason) []Row {
	rows := make([]Row, len(all))
	for i, r := range all {
		rows[i] = Row{Role: Reason, About: r.About, ID: r.ID, Text: w.Text(sys, r.ID, r.Figures), Ground: w.Ground(r.Ground)}
	}
	return rows
}

// verdict adds what an answer comes to and what speaks against spraying.
func (p *speaker) verdict(j *calc.Judgement, going string) {
	p.block(append([]Row{Headline(p.words, p.sys, j, going)}, AgainstRows(p.words, p.sys, j)...)...)
}

// cautions and why add what ends every answer.
func (p *speaker) cautions(all []calc.Caution) { p.block(CautionRows(p.words, p.sys, all)...) }

func (p *speaker) why(all []calc.Reason) {
	p.block(append([]Row{{Role: Title, ID: "card-why", Text: p.say("card-why")}}, ReasonRows(p.words, p.sys, all)...)...)
}

// heading adds what was asked.
func (p *speaker) heading(t string) { p.block(Row{Role: Heading, Text: t}) }
