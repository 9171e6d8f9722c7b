package last_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"boothset/presets/last"
	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// write puts contents into a file of last answers and gives its name.
func write(t testing.TB, contents string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "last.json")
	require.NoError(t, os.WriteFile(file, []byte(contents), 0o600))
	return file
}

func TestFilesThatWillNotDo(t *testing.T) {
	whole := `{"format": 1, "saved": "2031-03-04T09:30:00Z", "at": "gun", "answers": {"coat": "clear"}}`
	for name, c := range map[string]struct{ contents, id string }{
		"empty":              {"", last.Broken},
		"blank":              {" \n", last.Broken},
		"zeros":              {strings.Repeat("\x00", 300), last.Broken},
		"torn":               {whole[:60], last.Broken},
		"one on the other":   {whole + whole[40:], last.Broken},
		"not an object":      {`["clear"]`, last.Broken},
		"another text":       {"coat = \"clear\"\n", last.Broken},
		"a list of answers":  {`{"format": 1, "answers": ["coat", "clear"]}`, last.Broken},
		"a truth for a coat": {`{"format": 1, "answers": {"coat": true}}`, last.Broken},
		"no time":            {`{"format": 1, "saved": "yesterday"}`, last.Broken},
		"no such zone":       {`{"format": 1, "saved": "2031-03-04T09:30:00-24:00"}`, last.Broken},
		"nor of an answer":   {`{"format": 1, "entered": {"gun": "2031-03-04T09:30:00-24:00"}}`, last.Broken},
		"a later version":    {`{"format": 2, "answers": ["other", "kind"]}`, last.Foreign},
		"no version":         {`{"answers": {}}`, last.Foreign},
		"nothing":            {`null`, last.Foreign},
		"huge":               {`{"format": 1, "at": "` + strings.Repeat("x", 1<<20) + `"}`, last.TooLarge},
		"huge with no end":   {strings.Repeat("[", 1<<20), last.TooLarge},
		"deep":               {`{"format": 1, "more": ` + strings.Repeat("[", 100_000), last.Broken},
		"a word for a truth": {`{"format": 1, "walk": "yes"}`, last.Broken},
	} {
		t.Run(name, func(t *testing.T) {
			file := write(t, c.contents)
			d, found, err := last.Load(file)
			isError(t, err, file, c.id)
			assert.False(t, found)
			assert.Equal(t, last.Draft{}, d)
		})
	}
	file := write(t, whole)
	d, found, err := last.Load(file)
	require.NoError(t, err)
	assert.True(t, found)
	assert.Equal(t, last.Texts{"coat": {"clear"}}, d.Answers)
}

func TestWhatIsNoFileIsNotRead(t *testing.T) {
	dir := t.TempDir()
	_, _, err := last.Load(dir)
	isError(t, err, dir, last.Unreadable)

	_, found, err := last.Load(filepath.Join(dir, "none", "last.json"))
	require.NoError(t, err)
	assert.False(t, found)
	_, found, err = last.Load(filepath.Join(write(t, "x"), "last.json"))
	require.NoError(t, err, "a home that is no folder")
	assert.False(t, found)
}

// Fields of a later program are passed over, control codes do not reach the screen and
// texts are no longer than what can be typed.
func TestWhatIsReadIsTidy(t *testing.T) {
	file := write(t, `{"format": 1, "later": {"x": [1]}, "at": "gun\u001b[2J\u0000", "units": "us\u202e",
		"answers": {"temp": 24, "coat": "`+strings.Repeat("é", 1000)+`", "wind": "none", "hose": [`+strings.Repeat(`"8m,10mm",`, 99)+`""]},
		"sheets": {"day\n": {"pa\tint": "20\u0007C\ufffd", "panels": null}, "film": null}}`)
	d, found, err := last.Load(file)
	require.NoError(t, err)
	require.True(t, found)
	assert.Equal(t, "gun[2J", d.At)
	assert.Equal(t, "us", d.Units)
	assert.Equal(t, []string{"24"}, d.Answers["temp"])
	assert.Equal(t, []string{strings.Repeat("é", 200)}, d.Answers["coat"])
	assert.Len(t, d.Answers["hose"], 64)
	assert.Equal(t, map[string]last.Texts{"day": {"paint": {"20C"}}, "film": nil}, d.Sheets)
}

func TestAFileThatCannotBeWritten(t *testing.T) {
	file := filepath.Join(write(t, "x"), "boothset", "last.json") // below a file
	isError(t, last.Save(file, last.Draft{}), file, last.Unwritable)

	file = filepath.Join(t.TempDir(), "last.json") // in the way: a folder with something in it
	require.NoError(t, os.MkdirAll(filepath.Join(file, "full"), 0o700))
	isError(t, last.Save(file, last.Draft{}), file, last.Unwritable)
	assert.Empty(t, temporaries(t, filepath.Dir(file)))

	file = filepath.Join(t.TempDir(), "last.json")
	isError(t, last.Save(file, last.Draft{Saved: time.Date(12345, 1, 1, 0, 0, 0, 0, time.UTC)}), file, last.Unwritable)
	full := last.Draft{Sheets: map[string]last.Texts{}}
	for i := range 32 {
		sheet := last.Texts{}
		for j := range 32 {
			sheet[fmt.Sprint(j)] = []string{strings.Repeat("界", 200)}
		}
		full.Sheets[fmt.Sprint(i)] = sheet
	}
	isError(t, last.Save(file, full), file, last.TooLarge)
	assert.NoFileExists(t, file)
}

// A folder that may only be read keeps what is in it.
func TestAReadOnlyFolder(t *testing.T) {
	if os.Geteuid() <= 0 {
		t.Skip("whoever runs this may write anywhere")
	}
	file := filepath.Join(t.TempDir(), "boothset", "last.json")
	require.NoError(t, last.Save(file, last.Draft{At: "gun"}))
	require.NoError(t, os.Chmod(filepath.Dir(file), 0o500))
	t.Cleanup(func() { os.Chmod(filepath.Dir(file), 0o700) })
	isError(t, last.Save(file, last.Draft{At: "wall"}), file, last.Unwritable)
	d, _, err := last.Load(file)
	require.NoError(t, err)
	assert.Equal(t, "gun", d.At)
}

func temporaries(t *testing.T, dir string) []string {
	t.Helper()
	left, err := filepath.Glob(filepath.Join(dir, "*.tmp"))
	require.NoError(t, err)
	return left
}

// The file and its folder are for their owner alone, and nothing stays beside the file.
func TestOnlyTheOwnerReadsIt(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state", "boothset")
	file := filepath.Join(dir, "last.json")
	require.NoError(t, last.Save(file, last.Draft{At: "gun"}))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "last-1.tmp"), nil, 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "last-2.tmp"), nil, 0o600))
	old := time.Now().Add(-2 * time.Hour)
	require.NoError(t, os.Chtimes(filepath.Join(dir, "last-1.tmp"), old, old))
	require.NoError(t, last.Save(file, last.Draft{At: "wall"}))
	assert.Equal(t, []string{filepath.Join(dir, "last-2.tmp")}, temporaries(t, dir), "another program may be at it; what is old was left by one that was killed")
	if runtime.GOOS == "windows" {
		return
	}
	for path, want := range map[string]os.FileMode{file: 0o600, dir: 0o700} {
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, want, info.Mode().Perm(), path)
	}
}

// draftOf is a draft that says the same everywhere, so that a mixture of two shows.
func draftOf(text string) last.Draft {
	d := last.Draft{At: text, Units: text, Check: text, Answers: last.Texts{}, Sheets: map[string]last.Texts{}}
	for _, row := range question.Plan.Fields {
		d.Answers[row.Name] = []string{text}
	}
	for i := range 8 {
		d.Sheets[fmt.Sprint(i)] = last.Texts{"paint": {text}}
	}
	return d
}

func TestRacingProgramsNeverTearTheFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "boothset", "last.json")
	require.NoError(t, last.Save(file, draftOf("first")))
	var writers, readers sync.WaitGroup
	done := make(chan struct{})
	for w := range 4 {
		writers.Go(func() {
			for i := range 25 {
				assert.NoError(t, last.Save(file, draftOf(strings.Repeat(fmt.Sprint(w), 1+i*5))))
			}
		})
	}
	for range 3 {
		readers.Go(func() {
			for {
				d, found, err := last.Load(file)
				if !assert.NoError(t, err) || !assert.True(t, found) || !assert.Equal(t, draftOf(d.At), d) {
					return
				}
				select {
				case <-done:
					return
				default:
				}
			}
		})
	}
	writers.Wait()
	close(done)
	readers.Wait()
	assert.Empty(t, temporaries(t, filepath.Dir(file)))
}

// killedSaving is set for the program that saves until it is killed.
const killedSaving = "LAST_SAVES_TO"

func TestMain(m *testing.M) {
	if file := os.Getenv(killedSaving); file != "" {
		for i := 0; ; i++ {
			if err := last.Save(file, draftOf(strings.Repeat("x", 1+i%150))); err != nil {
				panic(err)
			}
		}
	}
	os.Exit(m.Run())
}

func TestAKilledProgramLeavesAWholeFile(t *testing.T) {
	file := filepath.Join(t.ArtifactDir(), "boothset", "last.json")
	for range 5 {
		require.NoError(t, os.RemoveAll(file))
		saves := exec.Command(os.Args[0])
		saves.Env = append(os.Environ(), killedSaving+"="+file)
		require.NoError(t, saves.Start())
		require.Eventually(t, func() bool { _, found, _ := last.Load(file); return found }, time.Minute, time.Millisecond)
		time.Sleep(time.Duration(rand.IntN(20)) * time.Millisecond)
		require.NoError(t, saves.Process.Kill())
		saves.Wait() // it says that it was killed
		d, found, err := last.Load(file)
		require.NoError(t, err)
		require.True(t, found)
		assert.Equal(t, draftOf(d.At), d)
	}
}

// What a program before this one wrote is read: fields of more words had an underscore there.
func TestAFileOfAnEarlierProgram(t *testing.T) {
	d, found, err := last.Load(filepath.Join("testdata", "format1.json"))
	require.NoError(t, err)
	require.True(t, found)
	assert.Equal(t, []string{"wall"}, d.Answers["regulator-at"])
	assert.Equal(t, []string{"95F"}, d.Answers["receiver-temp"])
	assert.Equal(t, []string{"8 m, 10 mm", "2m, 8mm"}, d.Answers["hose"])
	assert.Equal(t, []string{"hood + 2 door"}, d.Sheets["mix"]["area"], "as it was typed")
	for field := range d.Answers {
		_, known := question.Plan.Field(field)
		assert.True(t, known, field)
	}
	for page, texts := range d.Sheets {
		for _, q := range question.Questions() {
			for field := range texts {
				_, known := q.Field(field)
				assert.True(t, known || q.Name != page, field)
			}
		}
	}
	assert.Equal(t, d.Saved.Add(-time.Minute), d.EnteredAt("temp"))
	assert.Equal(t, d.Saved, d.EnteredAt("hose"), "where it is not known")
	assert.Equal(t, "metric", d.UnitsOf("thin"))
	assert.Equal(t, d.Units, d.UnitsOf("day"), "where it is not said")

	file := filepath.Join(t.TempDir(), "last.json")
	require.NoError(t, last.Save(file, d))
	again, _, err := last.Load(file)
	require.NoError(t, err)
	assert.Equal(t, d, again)
}

func TestWhatIsSavedComesBack(t *testing.T) {
	file := filepath.Join(t.TempDir(), "last.json")
	text := rapid.StringMatching(`[ -~é界°½]{1,60}`)
	texts := rapid.Map(rapid.MapOfN(rapid.StringMatching(`[a-z][a-z0-9-]{0,20}`), rapid.SliceOfN(text, 1, 4), 1, 5),
		func(m map[string][]string) last.Texts { return m })
	rapid.Check(t, func(t *rapid.T) {
		d := last.Draft{
			Saved:    time.Unix(rapid.Int64Range(0, 4e9).Draw(t, "saved"), rapid.Int64Range(0, 999999999).Draw(t, "ns")).UTC(),
			Finished: rapid.Bool().Draw(t, "finished"), Walk: rapid.Bool().Draw(t, "walk"),
			At: text.Draw(t, "at"), Units: text.Draw(t, "units"), Check: text.Draw(t, "check"),
			Answers: texts.Draw(t, "answers"),
			Sheets:  rapid.MapOfN(text, texts, 1, 4).Draw(t, "sheets"),
		}
		require.NoError(t, last.Save(file, d))
		got, found, err := last.Load(file)
		require.NoError(t, err)
		require.True(t, found)
		require.Equal(t, d, got)
	})
}

// FuzzRead reads anything at all as last answers: it is refused by name, or it gives a
// draft that can be saved and comes back the same.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		"", "null", `{"format": 1}`, `{"format": 2}`, `{"format": 1, "answers": {"temp": 1e400, "hose": [null, 3]}}`,
		`{"format": 1, "saved": "9999-12-31T23:59:59-14:00", "sheets": {"\u0001": {"a": "b"}, "": {}}}`,
		`{"format": 1, "run": "a", "others": [{"run": "a"}, {"run": "b", "saved": "2031-03-04T09:30:00Z"}, null]}`,
		`{"format": 1, "at": "\ud800", "units": "metric", "answers": {"hose": ["7,5,10", "+"], "coat": "gone"}}`, "{\"format\":1,\"AT\":\"\xff\"}",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		all, err := last.Read(data, "last.json")
		if err != nil {
			require.Contains(t, []string{last.Broken, last.Foreign, last.TooLarge}, err.(*last.Error).ID)
			require.Empty(t, all)
			return
		}
		d := all[0]
		file := filepath.Join(t.TempDir(), "last.json")
		require.NoError(t, last.Save(file, d))
		back, _, err := last.Load(file)
		require.NoError(t, err)
		require.True(t, d.Saved.Equal(back.Saved))
		back.Saved = d.Saved
		require.Equal(t, d, back)
	})
}
