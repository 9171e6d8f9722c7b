package shop

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"

	"boothset/calc"
	"boothset/presets/textfile"
	"boothset/presets/words"
)

// Environment names the folder where no flag does.
const Environment = "BOOTHSET_SHOP"

// What the folder holds.
const (
	boothsDir    = "booths"
	gunsDir      = "guns"
	settingsDir  = "settings"
	logDir       = "log"
	readingsDir  = "readings"
	bandsFile    = "bands.toml"
	paintersFile = "painters.toml"
)

// Where is the shop's folder: the one that is given, else $BOOTHSET_SHOP, else boothset/shop
// in $XDG_DATA_HOME, else in .local/share in the home folder, on Windows in %LocalAppData%. It
// is empty where none of them is known. Nothing is looked up on the disk.
func Where(getenv func(string) string, given string) string {
	return whereOn(runtime.GOOS, getenv, given)
}

func whereOn(goos string, getenv func(string) string, given string) string {
	if given != "" {
		return given
	}
	if dir := getenv(Environment); dir != "" {
		return dir
	}
	dir := textfile.Own(goos, getenv, "XDG_DATA_HOME", ".local", "share")
	if dir == "" {
		return ""
	}
	return filepath.Join(dir, "boothset", "shop")
}

// Folder is a shop's folder, which need not be there yet.
type Folder struct {
	Path string
	root *os.Root // nil where it is not there
	mode fs.FileMode
}

// The modes of what is made, unless the folder's own says more.
const (
	ownFolder = fs.FileMode(0o700)
	ownFile   = fs.FileMode(0o600)
)

// At opens the folder of a path. One that is not there is empty, and made by the first that
// is kept in it; one that is none, or that the system does not let be opened, is an Error.
func At(path string) (*Folder, error) {
	f := &Folder{Path: path, mode: ownFolder}
	if path == "" {
		return nil, &Error{ID: "shop-nowhere"}
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return f, nil
	case err != nil:
		return nil, unopened(path, err)
	case !info.IsDir():
		return nil, &Error{path, "shop-no-folder", nil}
	}
	if f.root, err = os.OpenRoot(path); err != nil {
		return nil, unopened(path, err)
	}
	f.mode = info.Mode().Perm() | ownFolder
	return f, nil
}

func unopened(path string, err error) error {
	return &Error{path, "shop-unreadable", textfile.Cause(err)}
}

// Found reports whether the folder is there.
func (f *Folder) Found() bool { return f.root != nil }

// Close lets go of the folder.
func (f *Folder) Close() error {
	if f.root == nil {
		return nil
	}
	return f.root.Close()
}

// fileMode is the mode of a file that is made: what the folder's says, without running it.
func (f *Folder) fileMode() fs.FileMode { return f.mode&0o666 | ownFile }

// Error is why a folder cannot be used, or a file of it not be written.
type Error struct {
	Path string
	ID   string // of its sentence
	Err  error
}

// Figures are what the error's sentence is filled with: file and why.
func (e *Error) Figures() calc.Figures {
	why := ""
	if e.Err != nil {
		why = e.Err.Error()
	}
	return calc.Figures{calc.TextFigure("file", shown(e.Path)), calc.TextFigure("why", why)}
}

func (e *Error) Error() string { return words.English().Text(0, e.ID, e.Figures()) }

func (e *Error) Unwrap() error { return e.Err }
