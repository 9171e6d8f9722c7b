package last

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"boothset/presets/textfile"
)

const (
	// format is the version of the file; another one is not read.
	format = 1
	// mostBytes is far more than a run can be answered with.
	mostBytes = 256 << 10
)

// record is a draft as it stands in its file.
type record struct {
	Format int `json:"format"`
	Draft
}

// Load is the draft in a file; found is false where there is no file, or its name is
// empty. Fields that are not known are passed over. Every text is cut to what can be
// typed, without what cannot be printed. Errors are *Error.
func Load(file string) (d Draft, found bool, err error) {
	if file == "" {
		return Draft{}, false, nil
	}
	data, err := textfile.Read(file, mostBytes)
	switch {
	case textfile.Absent(err):
		return Draft{}, false, nil
	case err != nil:
		return Draft{}, false, unreadable(file, err)
	}
	d, err = Read(data, file)
	return d, err == nil, err
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

// Read is the draft in a file's contents; file is its name for errors, which are *Error.
func Read(data []byte, file string) (Draft, error) {
	if len(data) > mostBytes {
		return Draft{}, tooLarge(file)
	}
	var version struct {
		Format int `json:"format"`
	}
	if err := json.Unmarshal(data, &version); err != nil {
		return Draft{}, &Error{File: file, ID: Broken, Err: err}
	}
	if version.Format != format {
		return Draft{}, &Error{File: file, ID: Foreign, Err: fmt.Errorf("format %d, not %d", version.Format, format)}
	}
	var r record
	if err := json.Unmarshal(data, &r); err != nil {
		return Draft{}, &Error{File: file, ID: Broken, Err: err}
	}
	for _, at := range append(slices.Collect(maps.Values(r.Entered)), r.Saved) {
		if _, err := at.MarshalJSON(); err != nil { // it is read and cannot be written
			return Draft{}, &Error{File: file, ID: Broken, Err: err}
		}
	}
	return tidy(r.Draft), nil
}

func tooLarge(file string) error {
	return &Error{File: file, ID: TooLarge, Err: fmt.Errorf("over %d kB", mostBytes>>10)}
}

// Save puts a draft into a file, in a folder of its own that it makes where there is none.
// The file is at every moment the one before or the new one, whole, whoever else saves at
// the same time and whatever stops the program. It waits for the disk. Nothing is kept
// where the file's name is empty. Errors are *Error.
func Save(file string, d Draft) error {
	if file == "" {
		return nil
	}
	d = tidy(d)
	data, err := json.MarshalIndent(record{format, d}, "", "\t")
	switch {
	case err != nil:
		return &Error{File: file, ID: Unwritable, Err: err}
	case len(data) > mostBytes:
		return tooLarge(file)
	}
	if err := replace(file, append(data, '\n')); err != nil {
		return &Error{File: file, ID: Unwritable, Err: textfile.Cause(err)}
	}
	return nil
}

// temporary is the names of files on their way to being the file.
const temporary = "last-*.tmp"

// replace puts data in a file's place in one piece.
func replace(file string, data []byte) error {
	dir := filepath.Dir(file)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, temporary) // 0600
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Sync())
	written, errStat := f.Stat()
	err = errors.Join(err, errStat, f.Close())
	if err == nil {
		err = os.Rename(f.Name(), file)
	}
	if err != nil {
		os.Remove(f.Name())
		return err
	}
	sweep(dir, written.ModTime())
	return syncFolder(dir)
}

// sweep removes what killed programs left on its way, once it is far older than a save
// takes. What it cannot remove does no harm.
func sweep(dir string, now time.Time) {
	left, _ := filepath.Glob(filepath.Join(dir, temporary))
	for _, f := range left {
		if info, err := os.Stat(f); err == nil && now.Sub(info.ModTime()) > time.Hour {
			os.Remove(f)
		}
	}
}

// syncFolder makes a folder's entries last. Windows has no such thing for folders.
func syncFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
