package textfile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"strconv"
	"syscall"

	"boothset/calc"
)

// Most is the largest file that a person's own may be, in bytes.
const Most = 1 << 20

// Large is the sentence of a file that is larger than it may be.
const Large = "file-is-large"

// Error is a file that is not read.
type Error struct {
	File string
	// ID is of the sentence that says why, which stands inside another one, and Figures
	// what it speaks of.
	ID string
	calc.Figures
	Err error // of the system, nil where it let the file be read
}

func (e *Error) Error() string { return e.ID }

func (e *Error) Unwrap() error { return e.Err }

// Why is the sentence as the figure of another one.
func (e *Error) Why() calc.Figures {
	return append(calc.Figures{calc.SentenceFigure("why", e.ID)}, e.Figures...)
}

// Absent reports whether an error is that there is no file.
func Absent(err error) bool {
	return errors.Is(err, fs.ErrNotExist) || errors.Is(err, syscall.ENOTDIR) // the last where home is no folder
}

// Files is where files are read from: a folder that an os.Root holds, or anywhere.
type Files interface {
	Stat(name string) (fs.FileInfo, error)
	OpenFile(name string, flag int, mode fs.FileMode) (*os.File, error)
}

// anywhere is the files of the system.
type anywhere struct{}

func (anywhere) Stat(name string) (fs.FileInfo, error) { return os.Stat(name) }

func (anywhere) OpenFile(name string, flag int, mode fs.FileMode) (*os.File, error) {
	return os.OpenFile(name, flag, mode)
}

// Read is the contents of a plain file, or of one that a link leads to, of at most so many
// bytes. Errors are *Error. Nothing is waited for: a pipe is not opened, and should one be put
// in the file's place meanwhile, opening it does not wait for a writer.
func Read(file string, most int) ([]byte, error) { return ReadIn(anywhere{}, file, most) }

// ReadIn is Read of a file of some.
func ReadIn(of Files, file string, most int) ([]byte, error) {
	info, err := of.Stat(file)
	if err != nil {
		return nil, unread(file, err)
	}
	if e := unfit(file, info, most); e != nil {
		return nil, e
	}
	f, err := of.OpenFile(file, os.O_RDONLY|syscall.O_NONBLOCK|syscall.O_NOCTTY, 0)
	if err != nil {
		return nil, unread(file, err)
	}
	defer f.Close()
	if info, err = f.Stat(); err != nil {
		return nil, unread(file, err)
	}
	if e := unfit(file, info, most); e != nil {
		return nil, e
	}
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	switch {
	case err != nil:
		return nil, unread(file, err)
	case len(data) > most: // it grew, or does not tell its size
		return nil, TooLarge(file, most)
	}
	return data, nil
}

// unfit is what is wrong with a file by what the system tells of it, nil where nothing is.
func unfit(file string, info fs.FileInfo, most int) error {
	kind := ""
	switch mode := info.Mode(); {
	case mode.IsDir():
		kind = "file-is-folder"
	case mode&fs.ModeNamedPipe != 0:
		kind = "file-is-pipe"
	case mode&fs.ModeSocket != 0:
		kind = "file-is-socket"
	case !mode.IsRegular():
		kind = "file-is-device"
	case info.Size() > int64(most):
		return TooLarge(file, most)
	default:
		return nil
	}
	return &Error{File: file, ID: kind}
}

// TooLarge is the error of a file that has more than so many bytes.
func TooLarge(file string, most int) error {
	return &Error{File: file, ID: Large, Figures: calc.Figures{calc.TextFigure("most", Size(most))}}
}

// Unwritten is why a file could not be written, as the figure "why" of a sentence.
func Unwritten(err error) calc.Figures {
	switch {
	case errors.Is(err, fs.ErrPermission):
		return calc.Figures{calc.SentenceFigure("why", "file-no-right")}
	case errors.Is(err, syscall.ENOSPC):
		return calc.Figures{calc.SentenceFigure("why", "file-no-room")}
	case errors.Is(err, syscall.EROFS):
		return calc.Figures{calc.SentenceFigure("why", "file-read-only")}
	}
	return calc.Figures{calc.SentenceFigure("why", "file-is-unread"), calc.GivenFigure("error", Cause(err).Error())}
}

// Size is a number of bytes as people say it, a whole number of kB or MB.
func Size(bytes int) string {
	if bytes >= 1<<20 {
		return strconv.Itoa(bytes>>20) + " MB"
	}
	return strconv.Itoa(bytes>>10) + " kB"
}

// unread is a file that the system does not let be read.
func unread(file string, err error) error {
	e := &Error{File: file, Err: err}
	switch {
	case errors.Is(err, fs.ErrPermission):
		e.ID = "file-is-shut"
	case errors.Is(err, syscall.ELOOP):
		e.ID = "file-is-loop"
	default:
		e.ID, e.Figures = "file-is-unread", calc.Figures{calc.GivenFigure("error", Cause(err).Error())}
	}
	return e
}

// Cause is an error of the system without the path, which is told beside it.
func Cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
