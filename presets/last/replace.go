package last

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// How long another program's save is waited for: far longer than one takes. One that is stopped
// in the middle of its own does not keep others from theirs.
const (
	lockWait  = 2 * time.Second
	lockPause = 5 * time.Millisecond
)

// Locked does something with a folder's file while no other program does. Where the folder's
// disk knows no locks it is done all the same.
func Locked(dir string, do func() error) error {
	f, err := os.OpenFile(filepath.Join(dir, "last.lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return err
	}
	defer f.Close() // which unlocks it
	for waited := time.Duration(0); waited < lockWait; waited += lockPause {
		if ours, err := tryLock(f); ours || err != nil {
			break
		}
		time.Sleep(lockPause)
	}
	return do()
}

// errNotOwn is that a link is another person's.
var errNotOwn = errors.New("file-not-own")

// followed is the file that a name leads to by links of one's own, whether it is there or not.
func followed(file string) (string, error) {
	const most = 40 // links on the way, as the system has it
	for range most {
		info, err := os.Lstat(file)
		if err != nil || info.Mode()&fs.ModeSymlink == 0 {
			return file, nil
		}
		if !isOwn(info) {
			return "", errNotOwn
		}
		to, err := os.Readlink(file)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(file), to)
		}
		file = to
	}
	return file, nil
}

// setAside gives a file another name in its folder, one that no file has.
func setAside(file string) error {
	for n := 1; ; n++ {
		aside := filepath.Join(filepath.Dir(file), fmt.Sprintf("last-aside-%d.json", n))
		if _, err := os.Lstat(aside); errors.Is(err, fs.ErrNotExist) {
			return os.Rename(file, aside)
		} else if err != nil {
			return err
		}
	}
}

// temporary is the names of files on their way to being the file.
const temporary = "last-*.tmp"

// Replace puts data in a file's place in one piece.
func Replace(file string, data []byte) error {
	dir := filepath.Dir(file)
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
