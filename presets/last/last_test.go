package last_test

import (
	"io/fs"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/last"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func env(m map[string]string) func(string) string { return func(k string) string { return m[k] } }

func TestWhereTheLastAnswersAreKept(t *testing.T) {
	if runtime.GOOS == "windows" {
		local := t.TempDir()
		assert.Equal(t, filepath.Join(local, "boothset", "last.json"), last.File(env(map[string]string{"LocalAppData": local, "HOME": `C:\else`})))
		assert.Empty(t, last.File(env(map[string]string{"HOME": local})))
		return
	}
	for _, c := range []struct {
		env  map[string]string
		want string
	}{
		{map[string]string{"XDG_STATE_HOME": "/s", "HOME": "/h"}, "/s/boothset/last.json"},
		{map[string]string{"XDG_STATE_HOME": "s", "HOME": "/h"}, "/h/.local/state/boothset/last.json"},
		{map[string]string{"HOME": "/h"}, "/h/.local/state/boothset/last.json"},
		{map[string]string{"HOME": "h"}, ""},
		{map[string]string{"LocalAppData": "/l"}, ""},
		{nil, ""},
	} {
		assert.Equal(t, c.want, last.File(env(c.env)), c.env)
	}
}

func TestNothingIsKeptWithoutAFile(t *testing.T) {
	require.NoError(t, last.Save("", last.Draft{At: "gun"}))
	d, found, err := last.Load("")
	require.NoError(t, err)
	assert.False(t, found)
	assert.Equal(t, last.Draft{}, d)
}

func TestAge(t *testing.T) {
	saved := time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC)
	for after, want := range map[time.Duration]time.Duration{
		-time.Hour:                      0,
		0:                               0,
		29 * time.Second:                0,
		31 * time.Second:                time.Minute,
		59*time.Minute + 40*time.Second: time.Hour,
		time.Hour + 29*time.Minute:      time.Hour,
		5*time.Hour + 31*time.Minute:    6 * time.Hour,
		23*time.Hour + 45*time.Minute:   24 * time.Hour,
		26 * time.Hour:                  26 * time.Hour,
		47*time.Hour + 45*time.Minute:   48 * time.Hour,
		61 * time.Hour:                  72 * time.Hour,
		400*24*time.Hour + time.Minute:  400 * 24 * time.Hour,
	} {
		assert.Equal(t, want, last.Age(saved, saved.Add(after)), after)
	}
}

// Each kind of error has its sentence, and the figures for it.
func TestEveryErrorCanBeSaid(t *testing.T) {
	for _, lang := range words.Languages() {
		w, ok := words.For(lang)
		require.True(t, ok)
		for _, id := range []string{last.Unreadable, last.TooLarge, last.Broken, last.Foreign, last.Unwritable} {
			require.True(t, w.Has(id), id)
			e := &last.Error{File: "/s/last.json", ID: id, Err: fs.ErrPermission}
			said := w.Text(unit.US, id, e.Figures())
			assert.Contains(t, said, "/s/last.json")
			if says := w.Needs(id); slices.Contains(says, "why") {
				assert.Contains(t, said, "(permission denied)")
			}
			assert.NotContains(t, said, "{")
			assert.ErrorIs(t, e, fs.ErrPermission)
			assert.Equal(t, "/s/last.json: "+id+": permission denied", e.Error())
		}
	}
}

// isError asserts that an error is of a kind and names the file.
func isError(t require.TestingT, err error, file, id string) {
	var e *last.Error
	require.ErrorAs(t, err, &e)
	assert.Equal(t, file, e.File)
	assert.Equal(t, id, e.ID)
	assert.NotContains(t, e.Err.Error(), file, "the file is named once")
}
