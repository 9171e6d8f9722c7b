//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// inventedShop is a copy of the invented shop of the assistant's tests, without the booth that
// will not do.
func inventedShop(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(filepath.Join("..", "..", "tui", "testdata", "shop"))))
	require.NoError(t, os.Remove(filepath.Join(dir, "booths", "torn.toml")))
	return dir
}

// inBooth is the keys from the start to an answer in booth two.
var inBooth = []string{
	"before you spray", "\r", "Which booth", "2", "Which gun", "2", "What are you spraying", "8", "How warm is the air", "75F\r",
	"How humid", "45\r", "How warm is the panel", "\r", "gauge before the regulator", "\r", "sheet say otherwise", "\r",
}

// Two terminals on one folder: what is agreed on in one shows in the other, and so does a booth
// that is changed by hand, without a key.
func TestTwoTerminalsOnOneShop(t *testing.T) {
	dir := inventedShop(t)
	one, two := homed(t, t.TempDir(), "--shop", dir), homed(t, t.TempDir(), "--shop", dir)
	one.keys(inBooth...)
	one.await("INLET VALVE")
	require.NotContains(t, one.shown(), "Agreed:")
	two.keys(inBooth...)
	two.keys("INLET VALVE", "a", "Agree on the setting", "\r", "at the wall in Booth two", "x")
	one.await("Agreed: ")
	require.Contains(t, one.shown(), "Nothing has moved it.")

	file := filepath.Join(dir, "booths", "two.toml")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, []byte(strings.ReplaceAll(string(data), "coupling=slim", "coupling=large-bore")), 0o600))
	for _, s := range []*session{one, two} {
		s.await("was changed from elsewhere")
		s.keys("was changed", "x", "Void until it is agreed anew", "q")
		require.Zero(t, s.code())
		s.requireClean()
	}
}

// What is said at the end of the job is in the log when the program has left, and what was not
// is asked at the next start.
func TestTheOutcomeIsInTheLogWhenTheProgramHasLeft(t *testing.T) {
	dir, home := inventedShop(t), t.TempDir()
	s := homed(t, home, "--shop", dir)
	s.keys(inBooth...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	s = homed(t, home, "--shop", dir)
	s.keys("before you spray", "\r", "How did it come out", "3", "What had to be done", "2", "the last answers", "q")
	require.Zero(t, s.code())
	s.requireClean()
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	log, faults := f.Log("two")
	require.Empty(t, faults)
	require.Len(t, log, 1)
	require.Equal(t, []shop.Outcome{shop.Peel}, log[0].Outcome)
	require.Equal(t, shop.Polish, log[0].Then)
}
