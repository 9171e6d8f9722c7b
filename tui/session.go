package tui

import (
	"strings"
	"sync"
	"time"
	"unicode"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
	"boothset/tui/draw"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// session is what the pages share: what has been answered, and how to show it.
type session struct {
	reader *question.Reader
	words  *words.Words
	sys    unit.System
	theme  theme
	glyphs draw.Glyphs
	steps  []step
	usual  question.Answers // the shop's, each quantity with its unit

	// What answers are worked out with.
	resolve func(question.Answers, unit.System) (*calc.Request, []*question.Fault)
	solve   func(*calc.Request) (*calc.Setup, error)
	sure    func(*calc.Request, *calc.Setup) *spread.Spread
	// setup is what answers with the usual ones filled in come to besides, false where to nothing
	// that could be set.
	setup func(question.Answers, unit.System) (*calc.Setup, bool)

	// answers holds what was taken, each quantity with its unit.
	answers  question.Answers
	worked   int    // how many jobs were worked out
	walkLine bool   // the line is gone through part by part
	check    string // whether the supply is checked: checkSkip, checkKeep or checkChange
	finished bool   // the answer was reached
	asBefore bool   // what was answered is not asked again

	entered map[string]time.Time // when each answer was taken

	off      Off
	mouse    bool                  // the terminal tells of it
	send     func(sequence string) // to the terminal, past the frame
	title    titler                // of the window
	writeNew func(name string, text []byte) (path string, err error)
	inFolder func(where string, write func(*shop.Folder) (told string, err error)) (told string, err error)
	writing  sync.WaitGroup // of files that are not written yet
	atOnce   bool           // the disk is waited for: what it said is told before what is asked next

	desk   desk
	unsaid unsaid
	// ownReadings is the readings of gauges that were taken in this run and count.
	ownReadings []shop.GaugeReading
	lines       learntLines

	getenv func(string) string
	old    *lastRun // where its answers were taken over
	now    func() time.Time
	keep   *keeper
	notice string // what went wrong before the start, for the first page
	offers bool   // somebody who has nothing set up is offered ways to begin
	fresh  bool   // no answers are kept, and that is so
}

// What checking the supply can be, as its choices are called.
const (
	checkSkip   = "skip"   // it is not checked
	checkKeep   = "keep"   // it is, as it stands
	checkChange = "change" // it is, gone through part by part
)

func newSession(r *question.Reader, w *words.Words, sys unit.System, look Colours, getenv func(string) string) *session {
	s := &session{
		words: w, sys: sys, steps: stepsOf(question.Plan), desk: desk{base: r, holds: holding{reader: r}},
		theme: newTheme(look), glyphs: glyphs(getenv), getenv: getenv,
		solve: calc.Solve, sure: spread.Of, now: time.Now,
		send: func(string) {}, writeNew: writeNew, inFolder: inFolder,
		check: checkSkip, entered: map[string]time.Time{},
	}
	s.useReader(r)
	s.resolve = func(a question.Answers, sys unit.System) (*calc.Request, []*question.Fault) {
		return s.reader.Plan(a, sys)
	}
	if question.Supplied(s.current()) {
		s.check = checkKeep
	}
	s.setup = func(a question.Answers, sys unit.System) (*calc.Setup, bool) {
		q, faults := s.reader.Plan(a, sys)
		if len(faults) > 0 {
			return nil, false
		}
		setup, err := calc.Solve(q)
		return setup, err == nil && !setup.Stopped()
	}
	return s
}

// current is the answers that were taken, the usual ones where there are none.
func (s *session) current() question.Answers { return s.answers.Or(s.usualWith(s.answers)) }

// counting is answers as they count: with the usual ones filled in, and without the supply
// where it is not to be checked.
func (s *session) counting(a question.Answers) question.Answers {
	a = s.dated(a).Or(s.usualWith(a))
	if s.check == checkSkip {
		a = a.With(question.Compressor, question.Value{Text: question.None, ID: question.None})
	}
	return a
}

// say is a sentence that needs no figures but those that are assumed, empty where there is
// none.
func (s *session) say(id string) string {
	if !s.words.Has(id) {
		return ""
	}
	if text := s.words.Say(id); !strings.Contains(text, "{") {
		return text
	}
	return s.text(id, question.Assumed(s.sys)...)
}

// text is a sentence with its figures.
func (s *session) text(id string, f ...calc.Figure) string { return s.words.Text(s.sys, id, f) }

func (s *session) changeUnits() {
	if s.sys == unit.Metric {
		s.sys = unit.US
	} else {
		s.sys = unit.Metric
	}
}

// unitsName is what the units are called at the top of the screen.
func (s *session) unitsName() string {
	if s.sys == unit.Metric {
		return s.say("units-metric")
	}
	return s.say("units-us")
}

// completed is the text of a field read in a system, with the units named that it left out.
func (s *session) completed(f *question.Field, text string, sys unit.System) ([]question.Value, string) {
	done := s.reader.Completed(f, s.reader.ReadText(f, strings.TrimSpace(text), sys), sys)
	return done, question.TextOf(done)
}

// fault is what is wrong with an answer among the others, which may be incomplete; nil
// where nothing is.
func (s *session) fault(f *question.Field, a question.Answers) *question.Fault {
	_, faults := s.resolve(a, s.sys)
	for _, fault := range faults {
		if fault.Field == f.Name {
			return fault
		}
	}
	return s.reader.Check(f, a.Get(f), s.sys)
}

// typeInto takes a key into the text of a field; false where it brings what cannot be part
// of that.
func (s *session) typeInto(box *field, f *question.Field, k tea.KeyMsg) bool {
	if k.Alt || k.Type != tea.KeyRunes && k.Type != tea.KeySpace {
		box.edit(k)
		return true
	}
	all := true
	var good []rune
	for _, c := range unit.Fold(string(k.Runes)) {
		switch {
		case f.Takes(c) && unicode.IsPrint(c) && ansi.StringWidth(string(c)) == 1:
			good = append(good, c)
		case c != '\n' && c != '\r' && c != '\t':
			all = false
		}
	}
	box.insert(good)
	return all
}

// label is a field's name in words.
func (s *session) label(f *question.Field) string { return s.say(f.Sentence(question.SayLabel)) }

// called is an answer as a person reads it: the name of an entry, or what was typed.
func (s *session) called(f *question.Field, a question.Answers) string {
	return plain(s.reader.Shown(f, a.Get(f), s.sys))
}

// trail is the answers so far in at most rows of w columns.
func (s *session) trail(w, rows int) []string {
	return s.answersIn(s.desk.boothName(), s.answers, s.check, w, rows)
}

// answersIn is answers in a booth, empty for none, in at most rows of w columns. Where they are
// too many the first ones go.
func (s *session) answersIn(booth string, a question.Answers, check string, w, rows int) []string {
	items := []string{}
	if booth != "" {
		items = append(items, booth)
	}
	for _, row := range question.Plan.Fields {
		f := row.Field
		switch {
		case f.Part == "" || !a.Has(f), f.Part == question.PartSupply && check == checkSkip:
		case f.Listed():
			items = append(items, s.called(f, a))
		default:
			items = append(items, s.label(f)+" "+s.called(f, a))
		}
	}
	between := " " + string(s.glyphs.Between) + " "
	all := flow(items, between, w)
	for first := 1; len(all) > rows && first < len(items); first++ {
		all = flow(append([]string{"..."}, items[first:]...), between, w)
	}
	if len(all) == 0 {
		return []string{""}
	}
	return all[:min(len(all), rows)]
}

// age is how long ago the last run's answer to a field was given, where it is still what
// stands in it; empty otherwise.
func (s *session) age(f *question.Field, text string) string {
	if s.old == nil || text == "" || s.old.answers.Text(f) != text || s.entered[f.Name].After(s.old.EnteredAt(f.Name)) {
		return ""
	}
	return s.text("entered-ago", calc.TextFigure("age", s.since(s.old.EnteredAt(f.Name))))
}

// since is how long ago a time was, in words.
func (s *session) since(at time.Time) string {
	age := last.Age(at, s.now())
	if age < 2*time.Minute {
		return s.say("age-moment")
	}
	return s.words.Minutes(age)
}

// choice is something that can be done, as a list shows it.
func (s *session) choice(id, sentence string) catalogue.Choice {
	return catalogue.Choice{ID: id, Name: s.say(sentence)}
}
