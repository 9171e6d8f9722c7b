package shop

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What counts is told, by a system that tells as by one that does not; the log, and what is on
// its way to be a file, is not.
func TestWhatChangesInAFolderIsTold(t *testing.T) {
	for name, told := range map[string]bool{"told": true, "looked at": false} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			every := time.Hour
			if !told {
				every = 5 * time.Millisecond
			}
			w := watchEvery(dir, Stamp(dir), every, told)
			defer w.Close()
			for _, file := range []string{"bands.toml", "painters.toml"} {
				require.NoError(t, os.WriteFile(filepath.Join(dir, file), []byte("x"), 0o600))
				require.True(t, w.Wait(), file)
			}
			f, err := At(dir)
			require.NoError(t, err)
			defer f.Close()
			require.NoError(t, f.put("booths/one.toml", []byte("format = \"boothset.booth/1\"\n")))
			require.True(t, w.Wait(), "in a folder that is new")
			require.NoError(t, f.put("settings/one/0001-x.toml", []byte("x")))
			require.True(t, w.Wait())
			w.Close()
			assert.False(t, w.Wait())
			w.Close()
		})
	}
}

func TestTheStampGoesByWhatCounts(t *testing.T) {
	dir := t.TempDir()
	f, err := At(dir)
	require.NoError(t, err)
	defer f.Close()
	require.NoError(t, f.put("booths/one.toml", []byte("one")))
	before := Stamp(dir)
	assert.Equal(t, before, Stamp(dir))
	require.NoError(t, f.put("log/one/2031-03-x.jsonl", []byte("{}")))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "booths", ".x.tmp"), nil, 0o600))
	assert.Equal(t, before, Stamp(dir))
	require.NoError(t, f.put("booths/one.toml", []byte("two!")))
	assert.NotEqual(t, before, Stamp(dir))
	before = Stamp(dir)
	require.NoError(t, os.Remove(filepath.Join(dir, "booths", "one.toml")))
	assert.NotEqual(t, before, Stamp(dir))
	assert.Equal(t, Stamp(filepath.Join(dir, "none")), Stamp(filepath.Join(dir, "none")))
}
