package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// taken is told where the card was taken along, or why it was not.
type taken struct{ notice string }

// takeBindings is what takes the card of the answer along, as it shows.
func (b *bench) takeBindings() []binding {
	copied := bindExplained(copyKeys, "do-copy", func(string) move { return b.copy })
	if b.s.off.Files {
		return []binding{copied}
	}
	return []binding{bindExplained(writeKeys, "do-write", func(string) move { return b.write }), copied}
}

// card is the whole answer that shows, as text; in a booth its card for the wall.
func (b *bench) card() []byte {
	s, d := b.s, &b.s.desk
	rows := b.tried.Card(s.words, s.sys)
	if d.booth != nil {
		plan := b.tried.Plan
		span, _ := s.counting(b.tried.answers).One(question.GaugeSpan)
		c := card.Card{
			Plan: &plan, Booth: d.booth.Name, Span: unit.Gauge(span.SI[0]), Printed: s.now(),
			Agreed: card.AgreedIn(d.holds.bands, d.agreed, d.holds.painters, &plan),
		}
		rows = c.Rows(s.words, s.sys)
	}
	return answer.Print(rows, answer.Width, s.words)
}

// write writes the card to a file of its own in the folder that the program was started in. The
// screen does not wait for the disk; leaving does.
func (b *bench) write(r *root) {
	s := b.s
	b.notice = s.say("card-writing")
	name := s.cardName(s.counting(b.tried.answers).ID(question.Coat))
	text, sys, done := b.card(), s.sys, make(chan taken, 1)
	s.writing.Add(1)
	go func() {
		defer s.writing.Done()
		path, err := s.writeNew(name, text)
		id, told := "card-written", calc.Figures{calc.TextFigure("file", plain(path))}
		if err != nil {
			id, told = "card-unwritten", append(told, calc.TextFigure("why", reason(err)))
		}
		done <- taken{s.words.Text(sys, id, told)}
	}()
	r.do(func() tea.Msg { return <-done })
}

// copy gives the card to the terminal, which puts it on the clipboard where it is allowed to
// (OSC 52 of xterm's control sequences).
func (b *bench) copy(r *root) {
	b.notice = b.s.say("card-copied")
	text, send := string(b.card()), r.s.send
	r.do(func() tea.Msg {
		send(ansi.SetSystemClipboard(text))
		return nil
	})
}

// cardName is a file's name, without its end, of a coat and today, in a booth with its id.
func (s *session) cardName(coat string) string {
	coat = strings.Map(func(c rune) rune {
		if c == '-' || unicode.IsLetter(c) || unicode.IsDigit(c) {
			return c
		}
		return '-'
	}, coat)
	if s.desk.booth != nil {
		coat += "-" + s.desk.booth.ID
	}
	return coat + "-" + s.now().Format("2006-01-02")
}

// mostCards is how many cards of a coat and a day are told apart by a number.
const mostCards = 99

// writeNew writes a file that is not there yet, "name.txt" or "name-2.txt" and so on, and says
// where it is, or would be.
func writeNew(name string, text []byte) (path string, err error) {
	for n := 1; n <= mostCards; n++ {
		path = name + ".txt"
		if n > 1 {
			path = fmt.Sprintf("%s-%d.txt", name, n)
		}
		if whole, absErr := filepath.Abs(path); absErr == nil {
			path = whole
		}
		if err = create(path, text); !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	return path, err
}

// create writes a file that is not there yet; what cannot be written whole is taken away.
func create(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(text)
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		_ = os.Remove(path) // it is of no use; the first fault is told
	}
	return err
}

// reason is why a file was not written, without the path, which is told beside it.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return err.Error()
}
