package practice

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/demo"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The same seed deals the same jobs and booths.
func TestASeedIsRepeatable(t *testing.T) {
	one, same, another := invented(t, 5, NewRecord()), invented(t, 5, NewRecord()), invented(t, 6, NewRecord())
	differs := false
	for range 5 {
		a, b, c := one.Job(), same.Job(), another.Job()
		assert.Equal(t, a.Answers, b.Answers)
		assert.Equal(t, a.Booth.ID, b.Booth.ID)
		differs = differs || !assert.ObjectsAreEqual(a.Answers, c.Answers)
		f, g := one.Find(), same.Find()
		assert.Equal(t, f.truth, g.truth)
		assert.Equal(t, f.shows, g.shows)
	}
	assert.True(t, differs)
}

// What was missed comes more often.
func TestJobsLeanOnWhatWasMissed(t *testing.T) {
	share := func(of Record, idea Idea) (n int) {
		d := invented(t, 2, of)
		for range 60 {
			for _, lesson := range d.Job().Lessons() {
				if lesson == idea {
					n++
				}
			}
		}
		return n
	}
	missed := NewRecord()
	missed.Due[Eased] = mostDue
	usual, leaned := share(NewRecord(), Eased), share(missed, Eased)
	assert.Positive(t, usual)
	assert.Greater(t, leaned, usual*3/2)
}

// An idea that was missed is due until it was right a few times.
func TestWhatIsDueIsForgotten(t *testing.T) {
	d := Due{}
	d.learned([]Idea{Lost, Fine}, Lost)
	assert.Equal(t, Due{Lost: 1}, d)
	for range 20 {
		d.learned([]Idea{Lost}, Lost)
	}
	assert.LessOrEqual(t, d[Lost], float64(mostDue))
	for range 5 {
		d.learned([]Idea{Lost, Fine}, "")
	}
	assert.Empty(t, d)
}

// Jobs are drawn from a shop's own booths and guns where it has some, and from the invented shop
// where it has none.
func TestOfAShop(t *testing.T) {
	r := questiontest.Open(t)
	dir := filepath.Join(t.TempDir(), "shop")
	require.NoError(t, demo.Make(dir, r, time.Date(2031, 3, 9, 0, 0, 0, 0, time.UTC)))
	require.NoError(t, os.Remove(filepath.Join(dir, "booths", "three.toml")))
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	s, faults, err := Of(r, f)
	require.NoError(t, err)
	assert.Empty(t, faults)
	assert.False(t, s.Invented)
	assert.Equal(t, []string{"one", "two"}, s.Booths())
	assert.False(t, s.Only("three"))
	require.True(t, s.Only("two"))
	d := NewDeck(s, unit.Metric, 3, NewRecord())
	for range 10 {
		j := d.Job()
		require.NotNil(t, j)
		assert.Equal(t, "two", j.Booth.ID)
		assert.Contains(t, s.guns, j.Request.Gun.ID)
		assert.Contains(t, []string{"base-1", "base-2", "clear-1", "clear-2", "primer-3"}, j.Request.Gun.ID)
	}
	none, err := shop.At(filepath.Join(t.TempDir(), "none"))
	require.NoError(t, err)
	s, _, err = Of(r, none)
	require.NoError(t, err)
	assert.True(t, s.Invented)
	assert.Equal(t, []string{"one", "two", "three"}, s.Booths())
}
