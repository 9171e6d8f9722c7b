package tui

import (
	"strings"
	"time"
	"unicode"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/last"
	"boothset/presets/words"
	"boothset/tui/draw"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// session is what the pages share: what has been answered, and how to show it.
type session struct {
	catalogue *presets.Catalogue
	words     *words.Words
	sys       unit.System
	theme     theme
	glyphs    draw.Glyphs
	sure      func(*calc.Request, *calc.Setup) *spread.Spread // how sure an answer is

	// answers holds what was taken, each quantity with its unit.
	answers  presets.Answers
	worked   int    // how many jobs were worked out
	walkLine bool   // the line is gone through part by part
	check    string // whether the supply is checked: checkSkip, checkKeep or checkChange
	finished bool   // the answer was reached

	entered map[string]time.Time // when each answer was taken

	old    *last.Draft // the last run's answers, where they were taken over
	now    func() time.Time
	keep   *keeper
	notice string // what went wrong before the start, for the first page
}

// What checking the supply can be, as its choices are called.
const (
	checkSkip   = "skip"   // it is not checked
	checkKeep   = "keep"   // it is, as it stands
	checkChange = "change" // it is, gone through part by part
)

func newSession(c *presets.Catalogue, w *words.Words, sys unit.System, getenv func(string) string) *session {
	s := &session{
		catalogue: c, words: w, sys: sys,
		theme: newTheme(coloured(getenv)), glyphs: glyphs(getenv), sure: spread.Of, now: time.Now,
		check: checkSkip, entered: map[string]time.Time{},
	}
	if s.hasCompressor() {
		s.check = checkKeep
	}
	return s
}

// hasCompressor reports whether one is known, so that the supply can be checked.
func (s *session) hasCompressor() bool {
	v := s.value(presets.FieldCompressor)
	return v != "" && v != presets.None
}

// say is a sentence that needs no figures but those that the catalogue assumes, empty
// where there is none.
func (s *session) say(id string) string {
	if !s.words.Has(id) {
		return ""
	}
	if text := s.words.Say(id); !strings.Contains(text, "{") {
		return text
	}
	return s.text(id, presets.Assumed(s.sys))
}

// text is a sentence with its figures.
func (s *session) text(id string, f calc.Figures) string { return s.words.Text(s.sys, id, f) }

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

// usual is the shop's usual answer, read in the shop's own units.
func (s *session) usual(field string) string {
	return complete(field, s.catalogue.Usual(field), s.catalogue.System())
}

// value is the answer that counts: what was taken, else the usual.
func (s *session) value(field string) string {
	if v := s.answers.Field(field); v != "" {
		return v
	}
	return s.usual(field)
}

// complete is answers with the usual ones filled in, each with its unit.
func (s *session) complete(a presets.Answers) presets.Answers {
	for i := range steps {
		if id := steps[i].id; steps[i].field() && a.Field(id) == "" {
			a.Set(id, s.usual(id))
		}
	}
	if s.check == checkSkip {
		a.Set(presets.FieldCompressor, presets.None)
	}
	if a.Field(presets.FieldMark) == "" { // no step asks for it
		a.Set(presets.FieldMark, s.usual(presets.FieldMark))
	}
	return a
}

// typeInto takes a key into a field; false where it brings what cannot be part of it.
func (s *session) typeInto(f *field, name string, k tea.KeyMsg) bool {
	if k.Alt || k.Type != tea.KeyRunes && k.Type != tea.KeySpace {
		f.edit(k)
		return true
	}
	all := true
	var good []rune
	for _, c := range k.Runes {
		r := readings[name]
		switch {
		case r != nil && r.takes(c), r == nil && unicode.IsPrint(c) && ansi.StringWidth(string(c)) == 1:
			good = append(good, c)
		case c != '\n' && c != '\r' && c != '\t':
			all = false
		}
	}
	f.insert(good)
	return all
}

// name is an answer as a person reads it: the name of an entry, or what was typed.
func (s *session) name(field, value string) string {
	for _, item := range s.catalogue.Choices(field) {
		if item.ID == value {
			return plain(item.Name)
		}
	}
	return plain(value)
}

// trail is the answers so far in at most rows of w columns.
func (s *session) trail(w, rows int) []string { return s.answersIn(s.answers, s.check, w, rows) }

// answersIn is answers in at most rows of w columns. Where they are too many the first
// ones go.
func (s *session) answersIn(a presets.Answers, check string, w, rows int) []string {
	var said []string
	for i := range steps {
		st := &steps[i]
		v := a.Field(st.id)
		switch {
		case v == "", st.ofSupply() && check == checkSkip:
		case !st.typed:
			said = append(said, s.name(st.id, v))
		default:
			said = append(said, s.say("short-"+st.id)+" "+plain(v))
		}
	}
	between := " " + string(s.glyphs.Between) + " "
	all := flow(said, between, w)
	for first := 1; len(all) > rows && first < len(said); first++ {
		all = flow(append([]string{"..."}, said[first:]...), between, w)
	}
	if len(all) == 0 {
		return []string{""}
	}
	return all[:min(len(all), rows)]
}

// age is how long ago the last run's answer to a field was given, where it is still what
// stands in it; empty otherwise.
func (s *session) age(field, text string) string {
	if s.old == nil || text == "" || s.old.Answers.Field(field) != text {
		return ""
	}
	return s.text("entered-ago", calc.Figures{named("age", s.since(s.old.EnteredAt(field)))})
}

// since is how long ago a time was, in words.
func (s *session) since(at time.Time) string {
	age := last.Age(at, s.now())
	if age < 2*time.Minute {
		return s.say("age-moment")
	}
	return s.words.Minutes(age)
}
