package practice

import (
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// in is a variable environment with a state folder.
func in(dir string) func(string) string {
	return func(name string) string {
		return map[string]string{"XDG_STATE_HOME": dir, "LocalAppData": dir}[name]
	}
}

func TestARecordIsKept(t *testing.T) {
	file, err := File(in(t.TempDir()), " AB ")
	require.NoError(t, err)
	assert.Equal(t, "practice-ab.json", filepath.Base(file))
	r, err := Load(file)
	require.NoError(t, err)
	assert.Equal(t, NewRecord(), r)
	j := jobs()[0]
	change := func(r *Record) { r.Judged(j, &Judged{Idea: Lost}) }
	require.NoError(t, Update(file, change))
	r, err = Load(file)
	require.NoError(t, err)
	assert.Equal(t, 1, r.Jobs)
	assert.Zero(t, r.Right)
	assert.Equal(t, 1.0, r.Due[Lost])
	info, err := os.Stat(file)
	require.NoError(t, err)
	assert.Zero(t, info.Mode().Perm()&0o077, "it is nobody else's")
	require.NoError(t, os.Remove(file), "whoever deletes it is forgotten")
	r, err = Load(file)
	require.NoError(t, err)
	assert.Equal(t, NewRecord(), r)
}

// Two programs at once lose nothing.
func TestRecordsOfTwoAtOnce(t *testing.T) {
	file := filepath.Join(t.TempDir(), "boothset", "practice-ab.json")
	var all sync.WaitGroup
	for range 2 {
		all.Go(func() {
			for range 10 {
				assert.NoError(t, Update(file, func(r *Record) { r.Jobs++ }))
			}
		})
	}
	all.Wait()
	r, err := Load(file)
	require.NoError(t, err)
	assert.Equal(t, 20, r.Jobs)
}

// A file of another program, a torn one and one that is none stay as they are, and are told.
func TestARecordThatWillNotDo(t *testing.T) {
	for text, id := range map[string]string{
		`{"format": "boothset.practice/2", "jobs": 3}`: Foreign, "": Broken, `{"format":`: Broken, "[]": Broken, `{"jobs": 3}`: Broken,
		`{"format": "boothset.practice/1", "jobs": "many"}`: Broken,
	} {
		file := filepath.Join(t.TempDir(), "practice-ab.json")
		require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
		var wrong *Error
		_, err := Load(file)
		require.ErrorAs(t, err, &wrong, text)
		assert.Equal(t, id, wrong.ID, text)
		require.ErrorAs(t, Update(file, func(r *Record) { r.Jobs++ }), &wrong, text)
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, text, string(data))
	}
	dir := filepath.Join(t.TempDir(), "practice-ab.json")
	require.NoError(t, os.Mkdir(dir, 0o700))
	var wrong *Error
	_, err := Load(dir)
	require.ErrorAs(t, err, &wrong)
	assert.Equal(t, Unreadable, wrong.ID)
}

// What is due is held to what it can be, whatever the file says.
func FuzzARecord(f *testing.F) {
	f.Add([]byte(`{"format": "boothset.practice/1", "jobs": 3, "due": {"lost": 1e300, "dew": -1, "fine": 0.5}}`))
	f.Add([]byte(`{"format": "boothset.practice/1", "due": null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		r, wrong := read(data)
		if wrong != "" {
			return
		}
		assert.NotNil(t, r.Due)
		for _, due := range r.Due {
			assert.True(t, due >= forgotten && due <= mostDue)
		}
	})
}

func TestInitials(t *testing.T) {
	for _, good := range []string{"a", "Ñé", "abcd"} {
		_, err := File(in("/x"), good)
		assert.NoError(t, err, good)
	}
	for _, bad := range []string{"", "abcde", "a b", "../x", "a1", "a.", "/"} {
		var wrong *Error
		_, err := File(in("/x"), bad)
		require.ErrorAs(t, err, &wrong, bad)
		assert.Equal(t, BadInitials, wrong.ID)
	}
	file, err := File(in(""), "ab")
	if assert.NoError(t, err) {
		assert.Empty(t, file, "no folder is known: nothing is kept")
	}
	require.NoError(t, Update("", func(*Record) { t.Error("nothing is kept") }))
}
