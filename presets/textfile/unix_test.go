//go:build unix

package textfile_test

import (
	"net"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"boothset/presets/textfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is no plain file is refused by what it is, and so is a link to it. Were one opened the
// test would hang, or fill the memory.
func TestWhatIsNoPlainFileIsRefused(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	loop := filepath.Join(dir, "loop")
	require.NoError(t, os.Symlink(loop, loop))
	socket := filepath.Join(dir, "s")
	l, err := net.Listen("unix", socket)
	require.NoError(t, err)
	defer l.Close()
	for file, says := range map[string]string{
		pipe:        "it is a pipe",
		dir:         "it is a folder",
		"/dev/zero": "it is a device",
		"/dev/null": "it is a device",
		socket:      "it is a socket",
		loop:        "it is a link that leads back to itself",
	} {
		assert.Equal(t, says, why(t, file, textfile.Most), file)
		if file != loop {
			link := filepath.Join(t.TempDir(), "link")
			require.NoError(t, os.Symlink(file, link))
			assert.Equal(t, says, why(t, link, textfile.Most), "a link to %s", file)
		}
	}
}

// A file that a pipe takes the place of between the look and the opening is not waited for.
func TestAPipeInAFilesPlaceIsNotWaitedFor(t *testing.T) {
	dir := t.TempDir()
	file, pipe := filepath.Join(dir, "file"), filepath.Join(dir, "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	link := filepath.Join(dir, "link")
	over, done := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(done)
		for i := 0; ; i++ {
			select {
			case <-over:
				return
			default:
			}
			next := filepath.Join(dir, "next")
			if os.Symlink([]string{file, pipe}[i%2], next) == nil {
				_ = os.Rename(next, link)
			}
		}
	}()
	for range 2000 {
		data, err := textfile.Read(link, textfile.Most)
		assert.True(t, err != nil || len(data) == 0)
	}
	close(over)
	<-done
}

func TestAFileThatMayNotBeReadSaysSo(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("the superuser may read everything")
	}
	file := filepath.Join(t.TempDir(), "shop.toml")
	require.NoError(t, os.WriteFile(file, nil, 0))
	assert.Equal(t, "you have no right to read it", why(t, file, textfile.Most))
}
