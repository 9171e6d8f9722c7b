package tui

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// plainWidth is how wide the plain assistant's rows are at most; a prompt may stand
// before them where what was answered is not on the screen.
const (
	plainWidth  = 78 - len(plainPrompt)
	plainPrompt = "> "
)

// What is typed in a field's or a choice's place, for keys that are no text.
const (
	plainBack  = "<"
	plainHelp  = "?"
	plainClear = "x"
	plainUnits = "u"
	plainQuit  = "q"
)

// dialogue is the assistant in lines of text: it goes over the same pages as the screen, by
// the same answers, asking for each on a line and reading one.
type dialogue struct {
	r   *root
	in  *bufio.Reader // the only one on the input: a second would lose what this has read ahead
	out *bufio.Writer
	// answered is true where the answer was said and only one of its pages was looked at since.
	answered bool
	// prompted is true where a prompt stands on the line: rows have room behind one, not two.
	prompted bool
}

// Plain is the assistant without a screen, for a terminal that cannot be drawn on, for a
// screen reader and for scripts: questions on lines of o.Out, answers from lines of
// o.In. An input that ends before the answer is an *InputError.
func Plain(o Options) (Result, error) {
	s := newSession(o.Reader, o.Words, o.System, None, o.Getenv)
	s.glyphs, s.desk.where, s.atOnce, s.offers = draw.ASCII, o.Shop, true, o.Begins
	r := newRoot(s)
	r.keepIn(o.Kept)
	if o.Practice != nil {
		r.practise(o.Practice)
	}
	p := &dialogue{r: r, in: bufio.NewReader(o.In), out: bufio.NewWriter(o.Out)}
	err := p.run()
	if errOut := p.out.Flush(); err == nil {
		err = errOut
	}
	var unkept error
	if r.started() {
		unkept = r.s.keep.flush(r.draft())
	}
	if err != nil {
		return Result{Unkept: unkept}, err
	}
	left := r.result()
	left.Unkept = unkept
	return left, nil
}

// InputError is an input that ended before the job was answered.
type InputError struct{ At string } // what was asked last

func (e *InputError) Error() string { return "input ended at: " + e.At }

func (p *dialogue) run() error {
	s := p.r.s
	for !p.r.done {
		p.r.reread()
		p.r.learn()
		var err error
		switch page := p.r.page().(type) {
		case *safety:
			p.safety(page)
			forward(p.r)
		case *resume:
			p.paragraphs(page.summary(plainWidth))
			err = p.choose(&page.list, s.say("resume-title"), page.take)
		case *pickPage:
			err = p.pick(page)
		case *stepPage:
			err = p.step(page)
		case *groupPage:
			ask := p.group
			if page.step.id == stepSheet {
				ask = p.sheet
			}
			err = ask(page)
		case *partsPage:
			err = p.parts(page)
		case *bench:
			err = p.bench(page)
		case *form:
			err = p.form(page)
		case *entryPage:
			err = p.entry(page)
		case *toldPage:
			err = p.told(page)
		case *provePage:
			err = p.prove(page)
		case *troublePage:
			err = p.trouble(page)
		default:
			back(p.r)
		}
		if err != nil {
			return err
		}
		if told := p.r.bench.notice; told != "" {
			p.r.bench.notice = ""
			p.say(plain(told))
		}
		p.keep()
	}
	return nil
}

// keep keeps the run as it stands; the last write's fault is said at the end.
func (p *dialogue) keep() {
	if p.r.started() {
		_ = p.r.s.keep.flush(p.r.draft())
	}
}

// row writes a line.
func (p *dialogue) row(text string) {
	fmt.Fprintln(p.out, p.r.s.words.Marked(text))
	p.prompted = false
}

// say writes text in rows.
func (p *dialogue) say(text string) { p.paragraphs(wrap(text, plainWidth)) }

func (p *dialogue) paragraphs(rows []string) {
	for _, row := range rows {
		p.row(row)
	}
}

// wrong writes why what was typed will not do.
func (p *dialogue) wrong(why string) { p.paragraphs(hang("! ", why, plainWidth)) }

// offer writes what nothing typed takes.
func (p *dialogue) offer(what string) { p.say(p.r.s.say("field-offer") + " " + what) }

// read is the next answer. The question is named where the input ends at it; the rows
// tell what can be answered, for who asks.
func (p *dialogue) read(question string, rows []string) (string, error) {
	for {
		if p.prompted {
			p.row("")
		}
		fmt.Fprint(p.out, plainPrompt)
		p.prompted = true
		if err := p.out.Flush(); err != nil {
			return "", err
		}
		text, err := p.line()
		switch {
		case err == io.EOF:
			p.row("")
			return "", &InputError{At: question}
		case errors.Is(err, errNoAnswer):
			p.wrong(p.r.s.text("plain-line", calc.CountFigure("most", longestText)))
		case err != nil:
			return "", err
		case text == plainHelp:
			p.help()
			p.paragraphs(rows)
		default:
			return text, nil
		}
	}
}

// errNoAnswer is a line that is longer than any answer or not of text alone.
var errNoAnswer = errors.New("unanswerable")

// line is the next line of the input without the blanks around it. The last needs no end.
func (p *dialogue) line() (string, error) {
	line, err := p.in.ReadSlice('\n')
	text := strings.TrimFunc(unit.Fold(string(line)), func(c rune) bool { return unicode.IsSpace(c) || c == byteOrderMark })
	whole := utf8.ValidString(text) && utf8.RuneCountInString(text) <= longestText
	for errors.Is(err, bufio.ErrBufferFull) {
		whole = false
		_, err = p.in.ReadSlice('\n')
	}
	switch {
	case err == io.EOF && whole && text == "":
		return "", io.EOF
	case err != nil && err != io.EOF:
		return "", err
	case !whole || strings.ContainsFunc(text, func(c rune) bool { return !unicode.IsPrint(c) }):
		return "", errNoAnswer
	}
	return text, nil
}

// byteOrderMark is what some programs write before the first line.
const byteOrderMark = '\uFEFF'

// safety is what is said before anything else, and how to answer.
func (p *dialogue) safety(page *safety) {
	for _, id := range safetySentences {
		p.paragraphs(hang("- ", p.r.s.say(id), plainWidth))
	}
	if page.s.notice != "" {
		p.wrong(page.s.notice)
	}
	p.row("")
	p.help()
	p.row(page.s.unitsName())
}

// help says how to answer, and what the words of the page mean.
func (p *dialogue) help() {
	p.say(p.r.s.say("plain-help"))
	p.paragraphs(p.r.s.termRows(p.r.page(), plainWidth))
}

// common takes what can be typed anywhere; done is true where that was it.
func (p *dialogue) common(text string) (done bool) {
	switch text {
	case plainBack:
		back(p.r)
	case plainUnits:
		p.r.s.changeUnits()
		p.row(p.r.s.unitsName())
	case plainQuit:
		leave(p.r)
	default:
		return false
	}
	return true
}
