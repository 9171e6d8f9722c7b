package demo_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"boothset/presets/demo"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever day it is made on, the shop's drift is found in the two booths where something
// happened, with its cause and near its day, and in no other; and all of the folder will do.
func TestTheDriftOfTheDemo(t *testing.T) {
	r := questiontest.Open(t)
	for month := time.January; month <= time.December; month += 3 {
		today := time.Date(2031, month, 9, 0, 0, 0, 0, time.UTC)
		dir := filepath.Join(t.TempDir(), "demo")
		require.NoError(t, demo.Make(dir, r, today))
		f, err := shop.At(dir)
		require.NoError(t, err)
		defer f.Close()
		assert.FileExists(t, filepath.Join(dir, ".gitattributes"), "git leaves the files as they are")
		n, faults := f.Check(r, today)
		assert.Empty(t, faults, month)
		assert.Equal(t, 3, n.Booths)
		assert.Equal(t, 5, n.Guns)
		assert.Equal(t, 6, n.Settings)
		for id, want := range map[string]struct {
			since time.Time
			cause shop.Cause
		}{
			demo.One: {demo.Swapped(today), shop.CausePart}, demo.Two: {demo.Clogs(today), shop.CauseFilter}, demo.Three: {},
		} {
			b, _ := f.Booth(r, id)
			log, faults := f.Log(id)
			require.Empty(t, faults)
			d := shop.DriftOf(b, shop.Jobs(log))
			if want.cause == "" {
				assert.Empty(t, d.Changes, "%s in %s", id, month)
				continue
			}
			if !assert.Len(t, d.Changes, 1, "%s in %s: %+v", id, month, d.Changes) {
				continue
			}
			assert.InDelta(t, 0, d.Jobs[d.Changes[0].Since].At.Sub(want.since).Hours()/24, 14, "%s in %s", id, month)
			assert.Equal(t, want.cause, d.Changes[0].Cause, "%s in %s", id, month)
		}
	}
}

func TestADemoOnlyWhereNothingIs(t *testing.T) {
	dir := t.TempDir()
	kept := filepath.Join(dir, "kept.txt")
	require.NoError(t, os.WriteFile(kept, []byte("mine"), 0o600))
	var full *shop.Error
	require.ErrorAs(t, demo.Make(dir, questiontest.Open(t), time.Now()), &full)
	assert.Equal(t, demo.NotEmpty, full.ID)
	all, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, all, 1)
	assert.Error(t, demo.Make(kept, questiontest.Open(t), time.Now()), "a file")
}
