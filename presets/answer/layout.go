package answer

import (
	"strings"

	"boothset/calc"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
)

// Width is how wide a printed answer may be.
const Width = 80

// Line is a line of an answer laid out, with the role of the row it is of.
type Line struct {
	Role  Role
	Level calc.Level
	Text  string
}

// Lay lays rows out in a width, blocks parted by empty lines.
func Lay(rows []Row, width int, w *words.Words) []Line {
	l := layout{width: width, words: w}
	for i := 0; i < len(rows); i++ {
		if rows[i].Begins && len(l.lines) > 0 {
			l.line(Row{}, "")
		}
		same := func(r Row) bool { return r.Role == rows[i].Role }
		switch r := rows[i]; r.Role {
		case Heading, First, Together, Title:
			l.paragraph(r, r.Text)
		case Verdict:
			mark := "  " + r.Name
			if i == 0 {
				mark = r.Name + ":" // it heads the answer
			}
			l.hang(r, mark, r.Text)
		case Setting, Value:
			block := run(rows[i:], same)
			l.values(block)
			i += len(block) - 1
		case Caution:
			l.hang(r, LevelMark(l.words, r.Level), r.Grounded())
		case Reason:
			l.hang(r, "-", r.Grounded())
		case Against:
			l.hang(r, r.Name, r.Text)
		case Head:
			block := append([]Row{r}, run(rows[i+1:], func(r Row) bool { return r.Role == Part })...)
			l.table(block)
			i += len(block) - 1
		default:
			l.hang(r, "-", r.Text)
		}
	}
	return l.lines
}

// Print is rows laid out as text.
func Print(rows []Row, width int, w *words.Words) []byte {
	var b []byte
	for _, l := range Lay(rows, width, w) {
		b = append(append(b, w.Marked(l.Text)...), '\n')
	}
	return b
}

// run is the rows from the first on that are alike and of one block.
func run(rows []Row, same func(Row) bool) []Row {
	n := 0
	for n < len(rows) && same(rows[n]) && (n == 0 || !rows[n].Begins) {
		n++
	}
	return rows[:n]
}

// layout writes lines in a width.
type layout struct {
	width int
	words *words.Words
	lines []Line
}

func (l *layout) line(r Row, t string) { l.lines = append(l.lines, Line{r.Role, r.Level, t}) }

// paragraph writes text, wrapped.
func (l *layout) paragraph(r Row, t string) {
	for _, row := range wrap(t, l.width) {
		l.line(r, row)
	}
}

// leastRoom is the room that text must have behind its mark; with less it stands below.
const leastRoom = 20

// hang writes text behind a mark, wrapped so that its lines stand under each other.
func (l *layout) hang(r Row, mark, t string) {
	indent := displaywidth.String(mark) + 1
	if l.width-indent < leastRoom {
		indent = 4
		if mark = strings.TrimRight(mark, " "); mark != "" {
			l.paragraph(r, mark)
		}
		mark = strings.Repeat(" ", indent-1)
	}
	for i, row := range wrap(t, l.width-indent) {
		if i > 0 {
			mark = strings.Repeat(" ", indent-1)
		}
		l.line(r, mark+" "+row)
	}
}

// LevelMark is what stands before a caution.
func LevelMark(w *words.Words, level calc.Level) string {
	switch level {
	case calc.Stop:
		return w.Say("verdict-stop")
	case calc.Warn:
		return "!"
	}
	return "-"
}

// Columns of values are as wide as what stands in them, but no narrower than this; what is
// to be set stands nearer to its name.
const (
	leastName    = 12
	leastValue   = 18
	leastSetting = 10
	leastMore    = 24
)

// values writes values under each other. What belongs to a value goes on below where the
// line is full, and altogether where the width is small.
func (l *layout) values(all []Row) {
	names, values := leastName, leastValue
	if all[0].Role == Setting {
		values = leastSetting
	}
	for _, r := range all {
		names, values = max(names, displaywidth.String(r.Name)), max(values, displaywidth.String(r.Text))
	}
	for _, r := range all {
		name := "  " + pad(r.Name, names)
		head := name + " " + pad(r.Text, values)
		if l.width-displaywidth.String(head)-1 >= leastMore && r.More != "" {
			l.hang(r, head, r.More)
			continue
		}
		l.hang(r, name, r.Text)
		if r.More != "" {
			l.hang(r, strings.Repeat(" ", 2+names), r.More)
		}
	}
}

// pad fills text up with blanks to a width.
func pad(t string, width int) string {
	return t + strings.Repeat(" ", max(0, width-displaywidth.String(t)))
}

// leastFirst is the room that the first column of a table must have.
const leastFirst = 20

// leastCells is how wide the columns of a table are at the least.
var leastCells = [...]int{0, 9, 9, 9, 5, 4}

// table writes a head and its rows in columns, or, where the width is too small, the rows
// in sentences. The row that counts most is marked.
func (l *layout) table(all []Row) {
	widths := leastCells
	figures := 0
	for column := 1; column < len(widths); column++ {
		for _, r := range all {
			widths[column] = max(widths[column], displaywidth.String(r.Cells[column]))
		}
		figures += 1 + widths[column]
	}
	widths[0] = min(l.width, Width) - figures
	if widths[0] < leastFirst {
		l.inSentences(all)
		return
	}
	for _, r := range all {
		mark := ""
		if r.Marked {
			mark = " <"
		}
		t := pad(displaywidth.TruncateString(r.Cells[0], widths[0]-len(mark), "...")+mark, widths[0])
		for column := 1; column < len(widths); column++ {
			t += " " + strings.Repeat(" ", widths[column]-displaywidth.String(r.Cells[column])) + r.Cells[column]
		}
		l.line(r, t)
	}
}

func (l *layout) inSentences(all []Row) {
	for _, r := range all {
		switch {
		case r.Role == Head:
			l.line(r, r.Cells[0])
		case r.Marked:
			l.hang(r, "<", r.Text)
		default:
			l.hang(r, "-", r.Text)
		}
	}
}

// wrap breaks text at blanks alone, so that "6358-1" stays whole, and not between a number
// and its unit, into rows of at most width columns where its words allow.
func wrap(t string, width int) (rows []string) {
	row := ""
	blank := func(c rune) bool { return c == ' ' || c == '\n' }
	for word := range strings.FieldsFuncSeq(words.Bound(t), blank) {
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
