//go:build unix

package last_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"boothset/presets/last"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A link of one's own leads to where the answers are kept, whether they are there yet or not.
func TestALinkIsFollowed(t *testing.T) {
	kept, dir := t.TempDir(), t.TempDir()
	to, file := filepath.Join(kept, "answers.json"), filepath.Join(dir, "last.json")
	require.NoError(t, os.Symlink(to, filepath.Join(dir, "way")))
	require.NoError(t, os.Symlink("way", file))
	for range 2 {
		require.NoError(t, last.Save(file, run("a", 0)))
		info, err := os.Lstat(file)
		require.NoError(t, err)
		assert.NotZero(t, info.Mode()&os.ModeSymlink, "it is still a link")
		info, err = os.Lstat(to)
		require.NoError(t, err)
		assert.True(t, info.Mode().IsRegular())
		assert.Equal(t, []string{"a"}, names(t, file))
	}
	require.NoError(t, os.WriteFile(to, []byte("torn"), 0o600))
	require.NoError(t, last.Save(file, run("b", 0)))
	aside, err := os.ReadFile(filepath.Join(kept, "last-aside-1.json"))
	require.NoError(t, err, "beside what the link leads to")
	assert.Equal(t, "torn", string(aside))
}

// A pipe or a device in the file's place, or behind a link, is neither waited for nor replaced.
func TestWhatIsNoPlainFileIsLeftAlone(t *testing.T) {
	dir := t.TempDir()
	pipe, link := filepath.Join(dir, "pipe"), filepath.Join(dir, "link")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	require.NoError(t, os.Symlink("/dev/zero", link))
	for _, file := range []string{pipe, link} {
		_, _, err := last.Load(file)
		isError(t, err, file, last.Unreadable)
		isError(t, last.Save(file, run("a", 0)), file, last.Unwritable)
	}
	info, err := os.Lstat(pipe)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeNamedPipe)
}

// Another person's link is not followed.
func TestAnothersLinkIsNotFollowed(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("only the superuser can give a link away")
	}
	dir := t.TempDir()
	to, file := filepath.Join(dir, "to"), filepath.Join(dir, "last.json")
	require.NoError(t, os.Symlink(to, file))
	require.NoError(t, os.Lchown(file, 12345, 12345))
	isError(t, last.Save(file, run("a", 0)), file, last.Unwritable)
	assert.NoFileExists(t, to)
}
