package practice

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/presets/last"
	"boothset/presets/textfile"
)

// Record is what a person has practised, kept on this machine under initials: nothing else says
// who it is. Whoever deletes its file is forgotten.
type Record struct {
	Format string `json:"format"`
	Jobs   int    `json:"jobs"`  // that were guessed at
	Right  int    `json:"right"` // of them
	Finds  int    `json:"finds"` // badly set booths
	Found  int    `json:"found"` // of them, the cause named
	Due    Due    `json:"due"`   // what was missed
}

// NewRecord is the record of who has not practised yet.
func NewRecord() Record { return Record{Format: format, Due: Due{}} }

// format is the format of a record's file.
const format = "boothset.practice/1"

// mostInitials is how many letters initials are, mostBytes far more than a record takes.
const (
	mostInitials = 4
	mostBytes    = 64 << 10
)

// What can go wrong with a record, as the sentences for it are called.
const (
	BadInitials = "practice-initials"
	Unreadable  = "practice-unreadable"
	Broken      = "practice-broken"
	Foreign     = "practice-foreign" // of another version of the program: it is not overwritten
	Unwritable  = "practice-unwritable"
)

// Error is a record that cannot be kept.
type Error struct {
	File, ID string // ID is BadInitials and so on
	Err      error
	why      calc.Figures
}

func (e *Error) Error() string { return e.File + ": " + e.ID }

func (e *Error) Unwrap() error { return e.Err }

// Figures are what the error's sentence is filled with: file and why.
func (e *Error) Figures() calc.Figures {
	return append(calc.Figures{calc.PathFigure("file", e.File), calc.CountFigure("most", mostInitials)}, e.why...)
}

// File is where the record of initials is kept, beside the last answers; empty where there is
// no such folder. Initials are one to four letters of any alphabet, in either case.
func File(getenv func(string) string, initials string) (string, error) {
	letters := []rune(strings.ToLower(strings.TrimSpace(initials)))
	if len(letters) == 0 || len(letters) > mostInitials || strings.ContainsFunc(string(letters), func(c rune) bool { return !unicode.IsLetter(c) }) {
		return "", &Error{ID: BadInitials}
	}
	kept := last.File(getenv)
	if kept == "" {
		return "", nil
	}
	return filepath.Join(filepath.Dir(kept), "practice-"+string(letters)+".json"), nil
}

// Load is the record in a file, an empty one where there is none or the file's name is empty.
// Errors are *Error.
func Load(file string) (r Record, err error) {
	r = NewRecord()
	if file == "" {
		return r, nil
	}
	data, err := textfile.Read(file, mostBytes)
	var unfit *textfile.Error
	switch {
	case textfile.Absent(err):
		return r, nil
	case errors.As(err, &unfit):
		return r, &Error{File: file, ID: Unreadable, Err: err, why: unfit.Why()}
	case err != nil:
		return r, &Error{File: file, ID: Unreadable, Err: err}
	}
	id := Broken
	if r, id = read(data); id != "" {
		return r, &Error{File: file, ID: id}
	}
	return r, nil
}

// read reads a record's contents; wrong is the id of the sentence of what is wrong with them.
func read(data []byte) (r Record, wrong string) {
	var head struct {
		Format string `json:"format"`
	}
	switch {
	case json.Unmarshal(data, &head) != nil || head.Format == "":
		return r, Broken
	case head.Format != format:
		return r, Foreign
	case json.Unmarshal(data, &r) != nil:
		return r, Broken
	}
	if r.Due == nil {
		r.Due = Due{}
	}
	for of, due := range r.Due {
		if r.Due[of] = min(due, mostDue); !(due >= forgotten) {
			delete(r.Due, of)
		}
	}
	return r, ""
}

// Update changes the record in a file, whoever else does at the same time, and puts it in its
// place in one piece. A file that will not do stays as it is. Nothing is kept where its name is
// empty. Errors are *Error.
func Update(file string, change func(*Record)) error {
	if file == "" {
		return nil
	}
	dir := filepath.Dir(file)
	err := os.MkdirAll(dir, 0o700)
	if err == nil {
		err = last.Locked(dir, func() error {
			r, err := Load(file)
			if err != nil {
				return err
			}
			change(&r)
			data, err := json.MarshalIndent(r, "", "\t")
			if err != nil {
				return err
			}
			return last.Replace(file, append(data, '\n'))
		})
	}
	var known *Error
	if err != nil && !errors.As(err, &known) {
		return &Error{File: file, ID: Unwritable, Err: textfile.Cause(err), why: textfile.Unwritten(err)}
	}
	return err
}
