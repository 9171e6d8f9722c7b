package last

import (
	"io/fs"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock locks an open file for this program alone; false where another one holds it.
func tryLock(f *os.File) (locked bool, err error) {
	err = windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &windows.Overlapped{})
	if err == windows.ERROR_LOCK_VIOLATION {
		return false, nil
	}
	return err == nil, err
}

// isOwn is true: folders of one's own hold no links of others there.
func isOwn(fs.FileInfo) bool { return true }
