package tui

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/presets"
	"boothset/tui/draw"
)

// plainWidth is how wide the plain assistant's rows are at most.
const plainWidth = 78

// plainBack is what is typed to go back; the escape key is no text.
const plainBack = "<"

// plainHelp is what is typed to be told how to answer.
const plainHelp = "?"

// teller is the assistant in lines of text: it goes over the same pages as the screen, by
// the same answers, asking for each on a line and reading one.
type teller struct {
	r   *root
	in  *bufio.Reader // the only one on the input: a second would lose what this has read ahead
	out *bufio.Writer
}

// errInputEnded is the end of the input before the job was answered.
var errInputEnded = errors.New("input ended")

// Plain is the assistant without a screen, for a terminal that cannot be drawn on, for a
// screen reader and for scripts: questions on lines of o.Out, answers from lines of
// o.In. An input that ends before the answer is an *InputError.
func Plain(o Options) (Result, error) {
	s := newSession(o.Catalogue, o.Words, o.System, o.Getenv)
	s.theme, s.glyphs = newTheme(false), draw.ASCII
	r := newRoot(s, o.Questions)
	r.keepIn(o.Kept)
	p := &teller{r: r, in: bufio.NewReader(o.In), out: bufio.NewWriter(o.Out)}
	err := p.run()
	if errOut := p.out.Flush(); err == nil {
		err = errOut
	}
	var unkept error
	if r.started() {
		unkept = r.s.keep.flush(r.draft())
	}
	if errors.Is(err, errInputEnded) {
		err = &InputError{At: p.where()}
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

// where is what is asked now.
func (p *teller) where() string {
	switch page := p.r.page().(type) {
	case *question:
		return p.r.s.say("ask-" + page.step.id)
	case *form:
		return page.label(&page.boxes[min(page.at, len(page.boxes)-1)])
	}
	left, _ := p.r.page().heading()
	return left
}

func (p *teller) run() error {
	for !p.r.done {
		var err error
		switch page := p.r.page().(type) {
		case *safety:
			p.safety(page)
			forward(p.r)
		case *resume:
			p.paragraphs(page.told(plainWidth))
			err = p.choose(&page.list, page.take, false)
		case *question:
			err = p.question(page)
		case *bench:
			err = p.bench(page)
		case *form:
			err = p.form(page)
		default:
			back(p.r)
		}
		if err != nil {
			return err
		}
		if p.r.started() {
			_ = p.r.s.keep.flush(p.r.draft()) // the last write's fault is told at the end
		}
	}
	return nil
}

// row writes a line.
func (p *teller) row(text string) { fmt.Fprintln(p.out, text) }

// say writes text in rows.
func (p *teller) say(text string) { p.paragraphs(wrap(text, plainWidth)) }

func (p *teller) paragraphs(rows []string) {
	for _, row := range rows {
		p.row(row)
	}
}

// read is the next line, without the blanks around it.
func (p *teller) read() (string, error) {
	fmt.Fprint(p.out, "> ")
	if err := p.out.Flush(); err != nil {
		return "", err
	}
	line, err := p.in.ReadString('\n')
	switch {
	case err == io.EOF && strings.TrimSpace(line) == "":
		p.row("")
		return "", errInputEnded
	case err != nil && err != io.EOF:
		return "", err
	}
	return strings.TrimSpace(line), nil
}

// safety is what is said before anything else, and how to answer.
func (p *teller) safety(page *safety) {
	for _, id := range safetySentences {
		p.paragraphs(hang("- ", p.r.s.say(id), plainWidth))
	}
	if page.s.notice != "" {
		p.paragraphs(hang("! ", page.s.notice, plainWidth))
	}
	p.row("")
	p.help()
}

func (p *teller) help() { p.say(p.r.s.say("plain-help")) }

// common takes what can be typed anywhere; done is true where that was it.
func (p *teller) common(text string) (done bool) {
	switch text {
	case plainBack:
		back(p.r)
	case plainHelp:
		p.help()
	case "u":
		p.r.s.changeUnits()
		p.row(p.r.s.unitsName())
	case "q":
		leave(p.r)
	default:
		return false
	}
	return true
}

// choose reads one of a list by its number, its id or its name and does what taking it
// does. Nothing typed takes the marked one.
func (p *teller) choose(l *list, take func(string) move, marked bool) error {
	s := p.r.s
	for i, item := range l.items {
		p.row(fmt.Sprintf("%3d  %s", i+1, plain(item.Name)))
	}
	if marked {
		p.row(s.say("field-offer") + " " + strconv.Itoa(l.at+1))
	}
	text, err := p.read()
	if err != nil || p.common(text) {
		return err
	}
	at, ok := pickItem(l.items, text)
	switch {
	case text == "":
		at = l.at
	case !ok:
		p.row("! " + s.text("plain-pick", calc.Figures{whole("most", len(l.items))}))
		return nil
	}
	l.at = at
	if m := take(""); m != nil {
		m(p.r)
	}
	return nil
}

// pickItem finds an entry by its number, its id or its name.
func pickItem(items []presets.Item, text string) (int, bool) {
	if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= len(items) {
		return n - 1, true
	}
	for i := range items {
		if strings.EqualFold(items[i].ID, text) || strings.EqualFold(items[i].Name, text) {
			return i, true
		}
	}
	return 0, false
}

// question asks one step.
func (p *teller) question(q *question) error {
	s := p.r.s
	left, right := q.heading()
	p.row("")
	p.row(left + ", " + right)
	p.say(s.say("ask-" + q.step.id))
	p.say(s.say("why-" + q.step.id))
	p.paragraphs(q.shown(size{plainWidth, 1}))
	if q.fault != "" {
		p.paragraphs(hang("! ", q.fault, plainWidth))
	}
	var err error
	if !q.step.typed {
		if old := s.age(q.step.id, q.picked()); old != "" {
			p.row(old)
		}
		err = p.choose(&q.list, q.accept, true)
	} else {
		err = p.typed(q)
	}
	return err
}

// typed reads the answer to a question that is typed.
func (p *teller) typed(q *question) error {
	p.paragraphs(q.row(plainWidth)[1:])
	if have := q.field.String(); have != "" {
		p.row(p.r.s.say("field-offer") + " " + have)
	}
	text, err := p.read()
	if err != nil || p.common(text) {
		return err
	}
	if text != "" {
		q.field.set(text)
	}
	if m := q.accept(""); m != nil {
		m(p.r)
	}
	return nil
}
