package textfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/textfile"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadsPlainFilesAndLinksToThem(t *testing.T) {
	dir := t.TempDir()
	file, link := filepath.Join(dir, "shop.toml"), filepath.Join(dir, "link")
	require.NoError(t, os.WriteFile(file, []byte("[line]\n"), 0o600))
	require.NoError(t, os.Symlink(file, link))
	for _, name := range []string{file, link} {
		data, err := textfile.Read(name, textfile.Most)
		require.NoError(t, err)
		assert.Equal(t, "[line]\n", string(data))
	}
}

func TestAFileMayHaveItsSizeAndNoByteMore(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.toml")
	require.NoError(t, os.WriteFile(file, []byte(strings.Repeat("#", 2048)), 0o600))
	data, err := textfile.Read(file, 2048)
	require.NoError(t, err)
	assert.Len(t, data, 2048)
	assert.Equal(t, "it is larger than 1 kB", why(t, file, 1024))
}

func TestAnAbsentFile(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	for _, name := range []string{filepath.Join(dir, "none"), filepath.Join(file, "below")} {
		_, err := textfile.Read(name, textfile.Most)
		assert.True(t, textfile.Absent(err), "%v", err)
	}
	_, err := textfile.Read(dir, textfile.Most)
	assert.False(t, textfile.Absent(err))
}

// why is what is said of a file that is refused.
func why(t *testing.T, file string, most int) string {
	t.Helper()
	_, err := textfile.Read(file, most)
	var unfit *textfile.Error
	require.True(t, errors.As(err, &unfit), "%v", err)
	assert.Equal(t, file, unfit.File)
	return words.English().Text(unit.US, unfit.ID, unfit.Figures)
}
