package shop

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"runtime"
	"strings"
	"syscall"

	"github.com/google/uuid"

	"boothset/presets/textfile"
)

// aside is what the name of a file on its way to being another begins and ends with.
const asideBegin, asideEnd = ".", ".tmp"

// NewID is an id that no two machines invent.
func NewID() (string, error) {
	id, err := uuid.NewV7()
	return id.String(), err
}

// put puts a file in its place in one piece: written aside, synced, renamed. At every moment
// there is the one before or the new one, whole, whatever stops the program; an error leaves
// the one before. It waits for the disk.
//
// The standard library's os.Root is used for it rather than a library for atomic writes: it
// keeps every name within the folder, through links too, and does so on each system.
func (f *Folder) put(name string, data []byte) error {
	err := f.make(path.Dir(name))
	if err == nil {
		err = f.replace(name, data)
	}
	if err != nil {
		return f.unwritten(name, err)
	}
	return nil
}

func (f *Folder) unwritten(name string, err error) error {
	return &Error{path.Join(f.Path, name), "shop-unwritable", textfile.Cause(err)}
}

// make makes a folder of the folder, and that itself.
func (f *Folder) make(dir string) error {
	if f.root == nil {
		if err := os.MkdirAll(f.Path, ownFolder); err != nil {
			return err
		}
		made, err := At(f.Path)
		if err != nil {
			return err
		}
		f.root, f.mode = made.root, made.mode
	}
	if _, err := f.root.Stat(dir); err == nil {
		return nil
	}
	for at := range ancestors(dir) {
		err := f.root.Mkdir(at, f.mode)
		switch {
		case errors.Is(err, fs.ErrExist):
		case err != nil:
			return err
		default:
			f.root.Chmod(at, f.mode) //nolint:errcheck // what the umask took away: see permit
		}
	}
	return nil
}

// ancestors is a path's folders from the first on, the path itself last.
func ancestors(dir string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		for i, c := range dir {
			if c == '/' && !yield(dir[:i]) {
				return
			}
		}
		yield(dir)
	}
}

func (f *Folder) replace(name string, data []byte) error {
	id, err := NewID()
	if err != nil {
		return err
	}
	aside := path.Join(path.Dir(name), asideBegin+id+asideEnd)
	err = f.writeNew(aside, data)
	if err == nil {
		err = f.root.Rename(aside, name)
	}
	if err != nil {
		f.root.Remove(aside) // what is left of it is named by Check
		return err
	}
	return f.syncFolder(path.Dir(name))
}

func (f *Folder) writeNew(name string, data []byte) error {
	file, err := f.root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, f.fileMode())
	if err != nil {
		return err
	}
	_, err = file.Write(data)
	f.permit(file)
	return errors.Join(err, file.Sync(), file.Close())
}

// permit gives a file that was made the mode that the folder's says, which the umask may have
// narrowed. Where the system keeps modes of its own, as on a share, it stays as it was made.
func (f *Folder) permit(file *os.File) {
	file.Chmod(f.fileMode()) //nolint:errcheck // see above
}

// syncFolder makes a folder's entries last. Windows, and some shares, have no such thing for
// folders.
func (f *Folder) syncFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := f.root.Open(dir)
	if err != nil {
		return err
	}
	err = d.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		err = nil
	}
	return errors.Join(err, d.Close())
}

// isAside reports whether a name is that of a file on its way to being another.
func isAside(name string) bool {
	return strings.HasPrefix(name, asideBegin) && strings.HasSuffix(name, asideEnd)
}
