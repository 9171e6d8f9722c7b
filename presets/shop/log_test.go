package shop_test

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// job is a record as a job leaves it.
func job(n int) shop.Record {
	return shop.Record{
		Booth: "two", At: aDay.Add(time.Duration(n) * time.Hour), Subject: clearMild,
		Asked:    map[string][]string{"temp": {"72F"}, "humidity": {"45%"}},
		Answered: shop.Values{Wall: unit.PSIG(31), Gun: unit.PSIG(26), Flow: unit.SCFM(9.5)},
		Set:      shop.Values{Wall: unit.PSIG(32)},
		Read:     shop.Values{Wall: unit.PSIG(32), Gun: unit.PSIG(26.5)},
		Note:     fmt.Sprint("job ", n),
	}
}

func logFile(t testing.TB, f *shop.Folder) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(f.Path, "log", "two", "*.jsonl"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	return files[0]
}

func TestARecordComesBack(t *testing.T) {
	f, m := folder(t), machine(t)
	kept, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	all, faults := f.Log("two")
	require.Empty(t, faults)
	require.Len(t, all, 1)
	assert.InDelta(t, 26.5, all[0].Read.Gun.PSI(), 1e-6)
	assert.InDelta(t, 9.5, float64(all[0].Answered.Flow)/unit.ANRPerSCFM, 1e-6)
	all[0].Answered, all[0].Set, all[0].Read = kept.Answered, kept.Set, kept.Read
	assert.Equal(t, kept, all[0])
	assert.Regexp(t, `/2031-03-[0-9a-f-]{36}\.jsonl$`, filepath.ToSlash(logFile(t, f)))
	assert.Contains(t, logFile(t, f), m.ID)
	host, err := os.Hostname()
	require.NoError(t, err)
	assert.NotContains(t, logFile(t, f), host)
}

func TestTheMachineIsDrawnOnce(t *testing.T) {
	state := t.TempDir()
	assert.Equal(t, machineAt(t, state).ID, machineAt(t, state).ID)
	assert.NotEqual(t, machine(t).ID, machine(t).ID)
	_, err := shop.MachineOf(func(string) string { return "" })
	assert.ErrorContains(t, err, "XDG_STATE_HOME")
}

// Torn lines, wherever they stand, are named and passed over, and the next record stands on a
// line of its own.
func TestTornLinesCostThemselvesAlone(t *testing.T) {
	whole := func(n int) string {
		f := folder(t)
		_, err := f.Keep(machine(t), job(n), unit.US)
		require.NoError(t, err)
		data, err := os.ReadFile(logFile(t, f))
		require.NoError(t, err)
		return string(data)
	}
	a, b, c := whole(1), whole(2), whole(3)
	for name, x := range map[string]struct {
		contents string
		torn     []int
	}{
		"none":             {a + b + c, nil},
		"the first":        {a[:50] + "\n" + b + c, []int{1}},
		"in the middle":    {a + b[10:] + c, []int{2}},
		"the last":         {a + b + c[:80], []int{3}},
		"the last unended": {a + b + strings.TrimSpace(c), nil},
		"each":             {a[:9] + "\n" + b[9:] + c[:9], []int{1, 2, 3}},
		"zeros":            {a + strings.Repeat("\x00", 200) + "\n" + c, []int{2}},
		"CRLF":             {strings.ReplaceAll(a+b+c, "\n", "\r\n"), nil},
		"git's lines":      {"<<<<<<< HEAD\n" + a + "=======\n" + b + ">>>>>>> north\n" + c, []int{1, 5}},
		"a later version":  {a + strings.Replace(b, "record/1", "record/2", 1) + c, []int{2}},
		"no quantity":      {a + strings.Replace(b, "psi", "potatoes", 1) + c, []int{2}},
		"no sense":         {a + "{}\n[]\nnull\n7\n" + c, []int{2, 3, 4, 5}},
	} {
		t.Run(name, func(t *testing.T) {
			m := machine(t)
			f := folder(t, "log/two/2031-03-"+m.ID+".jsonl", x.contents)
			before, faults := f.Log("two")
			var torn []int
			for _, fault := range faults {
				torn = append(torn, fault.Line)
				assert.Equal(t, shop.Broken, fault.Weight)
			}
			assert.Equal(t, x.torn, torn)
			kept, err := f.Keep(m, job(4), unit.US)
			require.NoError(t, err)
			after, again := f.Log("two")
			assert.Len(t, after, len(before)+1)
			assert.Equal(t, kept.ID, after[len(after)-1].ID)
			assert.Len(t, again, len(faults))
			data, err := os.ReadFile(logFile(t, f))
			require.NoError(t, err)
			assert.True(t, strings.HasPrefix(string(data), x.contents), "what was there stays")
		})
	}
}

// A record longer than any job's is refused, and leaves nothing.
func TestARecordThatIsTooLong(t *testing.T) {
	f, r := folder(t), job(1)
	r.Note = strings.Repeat("x", 1<<20)
	_, err := f.Keep(machine(t), r, unit.US)
	assert.ErrorContains(t, err, "too large")
	all, _ := f.Log("two")
	assert.Empty(t, all)
}

// A file that is full is followed by another one of the month.
func TestAFullFileIsFollowedByAnother(t *testing.T) {
	m := machine(t)
	f := folder(t, "log/two/2031-03-"+m.ID+".jsonl", strings.Repeat("x", 1<<20-10)+"\n")
	kept, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	all, faults := f.Log("two")
	require.Len(t, all, 1)
	assert.Equal(t, kept.ID, all[0].ID)
	assert.Equal(t, []string{"shop-torn"}, ids(faults))
	assert.FileExists(t, filepath.Join(f.Path, "log", "two", "2031-03-"+m.ID+"-2.jsonl"))
}

func TestWhatIsSaidOfAJobLater(t *testing.T) {
	f, m := folder(t), machine(t)
	kept, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	later := shop.Record{Booth: "two", Of: kept.ID, At: aDay.Add(3 * time.Hour), Outcome: []shop.Outcome{shop.Dry, shop.Dirt}, Then: shop.Polish}
	_, err = f.Keep(machine(t), later, unit.US)
	require.NoError(t, err)
	log, faults := f.Log("two")
	require.Empty(t, faults)
	jobs := shop.Jobs(log)
	require.Len(t, jobs, 1)
	assert.Equal(t, []shop.Outcome{shop.Dry, shop.Dirt}, jobs[0].Outcome)
	assert.Equal(t, shop.Polish, jobs[0].Then)
	assert.Equal(t, "job 1", jobs[0].Note)
	assert.InDelta(t, 26.5, jobs[0].Read.Gun.PSI(), 1e-6)
}

// A copy of a log that synchronising left is no log; the same record in two files counts once.
func TestTheSameRecordCountsOnce(t *testing.T) {
	f, m := folder(t), machine(t)
	_, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	data, err := os.ReadFile(logFile(t, f))
	require.NoError(t, err)
	put(t, f.Path, "log/two/2031-04-"+m.ID+".jsonl", string(data), "log/two/2031-03-"+m.ID+" (1).jsonl", string(data))
	all, faults := f.Log("two")
	assert.Len(t, all, 1)
	assert.Empty(t, faults)
}

// What is made is for its owner alone, unless the folder's own mode says more.
func TestModes(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no such modes")
	}
	modes := func(f *shop.Folder) (all []string) {
		require.NoError(t, filepath.Walk(f.Path, func(path string, info os.FileInfo, err error) error {
			if err == nil && path != f.Path {
				all = append(all, info.Mode().Perm().String())
			}
			return err
		}))
		return all
	}
	f := at(t, filepath.Join(t.TempDir(), "new", "shop"))
	_, err := f.Keep(machine(t), job(1), unit.US)
	require.NoError(t, err)
	assert.Equal(t, []string{"-rwx------", "-rwx------", "-rw-------"}, modes(f))
	info, err := os.Stat(f.Path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o700), info.Mode().Perm())

	shared := t.TempDir()
	require.NoError(t, os.Chmod(shared, 0o770))
	f = at(t, shared)
	_, err = f.Keep(machine(t), job(1), unit.US)
	require.NoError(t, err)
	assert.Equal(t, []string{"-rwxrwx---", "-rwxrwx---", "-rw-rw----"}, modes(f))
}

// The painters' file is the only place that names anyone, and whoever takes out a line is
// forgotten; what a person wrote in it stays.
func TestPainters(t *testing.T) {
	f := folder(t)
	none, faults := f.Painters()
	assert.Empty(t, none)
	assert.Empty(t, faults, "off, until somebody is named")
	first, err := f.AddPainter("R\u202eM")
	require.NoError(t, err)
	file := filepath.Join(f.Path, "painters.toml")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, append(data, "# the new one"...), 0o600))
	second, err := f.AddPainter("JL")
	require.NoError(t, err)
	all, faults := f.Painters()
	require.Empty(t, faults)
	assert.Equal(t, shop.Painters{first: `R\u202eM`, second: "JL"}, all)
	data, err = os.ReadFile(file)
	require.NoError(t, err)
	assert.Contains(t, string(data), "# the new one\n")
	require.NoError(t, os.WriteFile(file, []byte("format = \"boothset.painters/2\"\n"), 0o600))
	_, err = f.AddPainter("XY")
	assert.ErrorContains(t, err, "newer")
}

// Words of a later program are kept as they may be shown, each of them, and cost nothing else of
// the record.
func TestOutcomesOfALaterProgram(t *testing.T) {
	const line = `{"format":"boothset.record/1","id":"01a22a44-c89f-79fe-8818-85f0feeca52e","at":"2031-03-04T09:30:00Z","read":{"wall":"31 psi"},"outcome":["glow","\u001bgleam"],"then":"\u001bwax"}`
	all, faults := shop.ReadLog("two", "log/two/x.jsonl", []byte(line))
	require.Len(t, all, 1)
	assert.Equal(t, []string{"shop-outcome"}, ids(faults))
	assert.Equal(t, []shop.Outcome{"glow", `\x1bgleam`}, all[0].Outcome)
	assert.Equal(t, shop.Then(`\x1bwax`), all[0].Then)
	assert.InDelta(t, 31, all[0].Read.Wall.PSI(), 1e-9)
}
