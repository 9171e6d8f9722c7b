//go:build unix

package last

import (
	"io/fs"
	"os"
	"syscall"
)

// tryLock locks an open file for this program alone; false where another one holds it.
func tryLock(f *os.File) (locked bool, err error) {
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if err == syscall.EWOULDBLOCK || err == syscall.EINTR {
		return false, nil
	}
	return err == nil, err
}

// isOwn reports whether what the system tells of a file is that it is ours.
func isOwn(info fs.FileInfo) bool {
	s, ok := info.Sys().(*syscall.Stat_t)
	return !ok || int(s.Uid) == os.Geteuid()
}
