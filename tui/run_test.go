package tui

import (
	"io"
	"os"
	"syscall"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"
)

// A closed window can be seen by what it cannot be read with before its signal comes: it stops
// the assistant all the same, while another fault of the terminal is told.
func TestAClosedWindowIsNoFault(t *testing.T) {
	o := look{}.options(t)
	o.Out = io.Discard
	o.In = iotest.ErrReader(&os.PathError{Op: "read", Path: "/dev/tty", Err: syscall.EIO})
	got, err := Run(o)
	require.NoError(t, err)
	require.True(t, got.Stopped)

	o.In = iotest.ErrReader(syscall.EBADF)
	_, err = Run(o)
	require.ErrorIs(t, err, syscall.EBADF)
}
