package last

import (
	"encoding/json"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"boothset/calc"
	"boothset/presets/textfile"
)

const (
	// format is the version of the file; another one is not read.
	format = 1
	// mostBytes is far more than runs can be answered with.
	mostBytes = 256 << 10
	// mostOthers is how many runs are kept beside the last, and keptFor how long before it
	// those may have been saved: they are what else is going on at the time.
	mostOthers = 7
	keptFor    = 24 * time.Hour
)

// record is the drafts as they stand in their file: the last one, and those of other runs, the
// latest first. A program that knows of one alone passes the others over.
type record struct {
	Format int `json:"format"`
	Draft
	Others []Draft `json:"others,omitempty"`
}

// Load is the draft saved last in a file; found is false where there is no file, or its name
// is empty. Fields that are not known are passed over. Every text is cut to what can be
// typed, without what cannot be printed. Errors are *Error.
func Load(file string) (d Draft, found bool, err error) {
	all, err := LoadAll(file)
	if len(all) == 0 {
		return Draft{}, false, err
	}
	return all[0], true, nil
}

// LoadAll is Load of all drafts in a file, the one saved last first.
func LoadAll(file string) ([]Draft, error) {
	if file == "" {
		return nil, nil
	}
	data, err := textfile.Read(file, mostBytes)
	switch {
	case textfile.Absent(err):
		return nil, nil
	case err != nil:
		return nil, unreadable(file, err)
	}
	return Read(data, file)
}

// unreadable is a file that textfile did not read.
func unreadable(file string, err error) error {
	e := &Error{File: file, ID: Unreadable, Err: err}
	var unfit *textfile.Error
	if errors.As(err, &unfit) {
		e.why = unfit.Why()
		if unfit.ID == textfile.Large {
			e.ID = TooLarge
		}
	}
	return e
}

// Read is the drafts in a file's contents, the one saved last first; file is its name for
// errors, which are *Error.
func Read(data []byte, file string) ([]Draft, error) {
	if len(data) > mostBytes {
		return nil, tooLarge(file)
	}
	var version struct {
		Format int `json:"format"`
	}
	if err := json.Unmarshal(data, &version); err != nil {
		return nil, &Error{File: file, ID: Broken, Err: err}
	}
	if version.Format != format {
		return nil, &Error{File: file, ID: Foreign, Err: errors.ErrUnsupported}
	}
	var r record
	if err := json.Unmarshal(data, &r); err != nil {
		return nil, &Error{File: file, ID: Broken, Err: err}
	}
	all := append([]Draft{r.Draft}, r.Others...)
	all = all[:min(len(all), 1+mostOthers)]
	for i, d := range all {
		times := append(slices.Collect(maps.Values(d.Entered)), d.Saved)
		for _, j := range d.Jobs {
			times = append(times, j.At)
		}
		for _, at := range times {
			if _, err := at.MarshalJSON(); err != nil { // it is read and cannot be written
				return nil, &Error{File: file, ID: Broken, Err: err}
			}
		}
		all[i] = tidy(d)
	}
	return all, nil
}

func tooLarge(file string) error { return unreadable(file, textfile.TooLarge(file, mostBytes)) }

// Save puts a draft into a file as the last one, in a folder of its own that it makes where
// there is none. What else the file holds stays in it, but for what was saved of the same run,
// and of the run that this one took the place of. A file that is no such one, or of a later program,
// is set aside under another name. A link of one's own is followed. The file is at every moment
// the one before or the new one, whole, whoever else saves at the same time and whatever stops
// the program. It waits for the disk. Nothing is kept where the file's name is empty. Errors
// are *Error.
func Save(file string, d Draft) error {
	if file == "" {
		return nil
	}
	err := os.MkdirAll(filepath.Dir(file), 0o700)
	if err != nil {
		return unwritable(file, err)
	}
	to, err := followed(file)
	if err == nil {
		err = Locked(filepath.Dir(to), func() error { return save(to, tidy(d)) })
	}
	var known *Error
	switch {
	case errors.As(err, &known):
		known.File = file
		return known
	case err != nil:
		return unwritable(file, err)
	}
	return nil
}

// Said takes a job out of what a file keeps as not said yet, whichever run left it there. A file
// that will not do stays as it is.
func Said(file, job string) error {
	if file == "" {
		return nil
	}
	to, err := followed(file)
	if err == nil {
		err = Locked(filepath.Dir(to), func() error { return said(to, job) })
	}
	if err != nil {
		return unwritable(file, err)
	}
	return nil
}

// said is Said under the lock, of a file that is no link.
func said(file, job string) error {
	all, err := LoadAll(file)
	if err != nil || len(all) == 0 {
		return err
	}
	for i := range all {
		all[i].Jobs = slices.DeleteFunc(all[i].Jobs, func(j Job) bool { return j.ID == job })
	}
	data, err := json.MarshalIndent(record{Format: format, Draft: all[0], Others: all[1:]}, "", "\t")
	if err != nil {
		return err
	}
	return Replace(file, append(data, '\n'))
}

// save is Save under the lock, into a file that is no link.
func save(file string, d Draft) error {
	there, err := LoadAll(file)
	var wrong *Error
	unfit := errors.As(err, &wrong)
	if unfit && wrong.ID == Unreadable && !errors.Is(err, fs.ErrPermission) { // no plain file: it is left alone
		wrong.ID = Unwritable
		return wrong
	}
	data, err := merged(d, there)
	switch {
	case err != nil:
		return err
	case len(data) > mostBytes:
		return tooLarge(file)
	}
	if unfit {
		if err := setAside(file); err != nil {
			return err
		}
	}
	return Replace(file, append(data, '\n'))
}

// merged is the contents of a file with a draft as the last, beside those of others that it
// holds. As many of them are left out, the oldest first, as there is no room for.
func merged(d Draft, there []Draft) ([]byte, error) {
	r := record{Format: format, Draft: d}
	for _, other := range there {
		replaced := other.Run == d.Run || other.Run != "" && other.Run == d.From
		said := len(other.Answers) > 0 || len(other.Jobs) > 0 // else it would only take the place of one
		if !replaced && said && d.Saved.Sub(other.Saved) < keptFor {
			r.Others = append(r.Others, other)
		}
	}
	r.Others = r.Others[:min(len(r.Others), mostOthers)]
	for {
		data, err := json.MarshalIndent(r, "", "\t")
		if err != nil || len(data) <= mostBytes || len(r.Others) == 0 {
			return data, err
		}
		r.Others = r.Others[:len(r.Others)-1]
	}
}

// unwritable is a file that the system did not let be written.
func unwritable(file string, err error) error {
	e := &Error{File: file, ID: Unwritable, Err: textfile.Cause(err), why: textfile.Unwritten(err)}
	if errors.Is(err, errNotOwn) {
		e.why = calc.Figures{calc.SentenceFigure("why", "file-not-own")}
	}
	return e
}
