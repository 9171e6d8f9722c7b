package last

import (
	"math/rand/v2"
	"path/filepath"
	"runtime"
	"strconv"
	"time"

	"boothset/calc"
	"boothset/presets/textfile"
)

// Draft is a run of the assistant as it stood.
type Draft struct {
	Run      string               `json:"run,omitempty"`  // which run it is of; empty of a program that does not say
	From     string               `json:"from,omitempty"` // the run that this one took the place of
	Saved    time.Time            `json:"saved"`
	Finished bool                 `json:"finished"`          // it came to its answer
	At       string               `json:"at"`                // the step or view it was on
	Typed    string               `json:"typed,omitempty"`   // in that step, not taken yet
	Shop     string               `json:"shop,omitempty"`    // the shop's folder that its booth is of
	Booth    string               `json:"booth,omitempty"`   // that it is in, by its id
	Answers  Texts                `json:"answers"`           // to the plan, with their units named
	Entered  map[string]time.Time `json:"entered,omitempty"` // when each answer was taken, by field
	Assumed  []string             `json:"assumed,omitempty"` // the fields whose answer was assumed
	Sheets   map[string]Texts     `json:"sheets,omitempty"`  // what was typed on the coat's own pages, by page
	Read     map[string]string    `json:"read,omitempty"`    // the units that a page's bare numbers were typed in
	Page     string               `json:"page,omitempty"`    // the one of them that was open
	Units    string               `json:"units"`             // those shown
	Walk     bool                 `json:"walk"`              // the line was gone through part by part
	Check    string               `json:"check"`             // how the supply was to be checked
	Jobs     []Job                `json:"jobs,omitempty"`    // of which it was not said how they came out
}

// Job is a job in a booth of a shop's folder of which nobody has said yet how it came out.
type Job struct {
	ID       string    `json:"id"`
	At       time.Time `json:"at"`
	Shop     string    `json:"shop"` // the folder that the booth is of
	Booth    string    `json:"booth"`
	Coat     string    `json:"coat"`
	Stage    string    `json:"stage,omitempty"`
	Gun      string    `json:"gun"`
	Band     string    `json:"band,omitempty"`
	Asked    Texts     `json:"asked"`
	Answered Texts     `json:"answered"` // with their units named
}

// NewRun is the name of a run, like no other's.
func NewRun() string {
	const digits = 36
	return strconv.FormatUint(rand.Uint64(), digits)
}

// EnteredAt is when the answer to a field was taken; where it is not known, when the draft
// was saved.
func (d *Draft) EnteredAt(field string) time.Time {
	if at, ok := d.Entered[field]; ok {
		return at
	}
	return d.Saved
}

// UnitsOf is the units that a page's bare numbers were typed in, the draft's where it is
// not said.
func (d *Draft) UnitsOf(page string) string {
	if units := d.Read[page]; units != "" {
		return units
	}
	return d.Units
}

// Age is how long ago a draft was saved: in whole minutes below an hour, in whole hours
// below two days, in whole days from there; 0 where the clock has gone back since.
func Age(saved, now time.Time) time.Duration {
	const day = 24 * time.Hour
	switch age := now.Sub(saved); {
	case age <= 0:
		return 0
	case age < time.Hour:
		return age.Round(time.Minute)
	case age < 2*day:
		return age.Round(time.Hour)
	default:
		return age.Round(day)
	}
}

// File is where the last answers are kept: boothset/last.json in $XDG_STATE_HOME, else in
// .local/state in the home folder, on Windows in %LocalAppData%. It is empty where none of
// them is known, and nothing is kept then.
func File(getenv func(string) string) string { return fileOn(runtime.GOOS, getenv) }

func fileOn(goos string, getenv func(string) string) string {
	dir := textfile.Own(goos, getenv, "XDG_STATE_HOME", ".local", "state")
	if dir == "" {
		return ""
	}
	return filepath.Join(dir, "boothset", "last.json")
}

// What can go wrong with the file, as the sentences for it are called.
const (
	Unreadable = "last-unreadable" // the system does not let it be read
	TooLarge   = "last-too-large"
	Broken     = "last-broken"  // torn, empty or not of this kind
	Foreign    = "last-foreign" // of another version of the program
	Unwritable = "last-unwritable"
)

// Error is a file of last answers that will not do, or cannot be written.
type Error struct {
	File string
	ID   string // Unreadable and so on
	Err  error
	why  calc.Figures // of a file that is not read
}

func (e *Error) Error() string { return e.File + ": " + e.ID + ": " + e.Err.Error() }

func (e *Error) Unwrap() error { return e.Err }

// Figures are what the error's sentence is filled with: file and why.
func (e *Error) Figures() calc.Figures {
	file := calc.PathFigure("file", e.File)
	if e.why == nil {
		return calc.Figures{file, calc.GivenFigure("why", e.Err.Error())}
	}
	return append(calc.Figures{file}, e.why...)
}
