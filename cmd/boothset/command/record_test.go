package command

import (
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// jobJSON is a job of the log as a reader of JSON sees it.
type jobJSON struct {
	Schema, ID, At, Booth, Coat, Stage, Gun, Band, Then, Painter, Note string
	Asked                                                              map[string][]string
	Said, Set, Read                                                    struct {
		Supply, Wall, Gun, Flow, Distance both
		Opening                           float64
	}
	Outcome []string
}

type recordJSON struct {
	Schema, Record string
	Kept           bool
	Job            jobJSON
}

// recordJob is a job in booth two.
var recordJob = []string{"log", "record", "--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "72", "--humidity", "45"}

func recorded(t testing.TB, env func(string) string, args ...string) (r recordJSON) {
	t.Helper()
	ran := boothsetIn(env, "", append(args, "--json")...)
	require.Equal(t, ExitAnswered, ran.code, ran.err)
	require.NoError(t, json.Unmarshal([]byte(ran.out), &r))
	assert.Equal(t, "boothset.record/1", r.Schema)
	return r
}

func jobsOfLog(t testing.TB, env func(string) string) []jobJSON {
	t.Helper()
	var l struct{ Jobs []jobJSON }
	r := boothsetIn(env, "", "log", "--json")
	require.NoError(t, json.Unmarshal([]byte(r.out), &l), r.err)
	return l.Jobs
}

// A job is logged as it was really set and read, with what was asked and answered; how it came
// out is said then, or later.
func TestAJobIsLogged(t *testing.T) {
	_, env := quarryLane(t)
	dry := recorded(t, env, append(recordJob, "--dry-run")...)
	assert.False(t, dry.Kept)
	assert.Empty(t, jobsOfLog(t, env))

	first := recorded(t, env, append(recordJob, "--set", "wall=50psi", "--set", "opening=75", "--read", "wall=49psi", "--read", "gun=24.5", "--note", "slow\n\x1b[2J")...)
	assert.True(t, first.Kept)
	second := recorded(t, env, append(recordJob, "--outcome", "Good", "--then", "none", "--at", "2025-03-04 09:30")...)
	assert.True(t, strings.HasPrefix(second.Job.At, "2025-03-0"), second.Job.At)
	jobs := jobsOfLog(t, env)
	require.Len(t, jobs, 2)
	of := jobs[0]
	if of.ID != first.Record {
		of = jobs[1]
	}
	plan := decoded(t, boothsetIn(env, "", append([]string{"plan", "--json"}, recordJob[2:]...)...).out)
	assert.InDelta(t, plan.Wall.Flowing["psi"], of.Said.Wall["psi"], 0.05)
	assert.InDelta(t, plan.Gun.Flow["cfm"], of.Said.Flow["cfm"], 0.06)
	assert.InDelta(t, 50, of.Set.Wall["psi"], 1e-6)
	assert.InDelta(t, 0.75, of.Set.Opening, 1e-6)
	assert.InDelta(t, 24.5, of.Read.Gun["psi"], 1e-6)
	assert.Equal(t, `slow \x1b[2J`, of.Note)
	assert.Equal(t, []string{"72 F"}, of.Asked["temp"])
	assert.Equal(t, []string{"95psi"}, of.Asked["supply"], "the booth's")
	assert.Equal(t, "mild", of.Band)

	said := recorded(t, env, "log", "outcome", first.Record[:20], "--outcome", "orange peel", "--outcome", "dirt", "--then", "polish", "--read", "gun=24psi")
	assert.Equal(t, []string{"peel", "dirt"}, said.Job.Outcome)
	assert.Equal(t, "polish", said.Job.Then)
	assert.InDelta(t, 24, said.Job.Read.Gun["psi"], 1e-6)
	assert.NotEqual(t, first.Record, said.Record)
	assert.Equal(t, first.Record, said.Job.ID)
	text := boothsetIn(env, "", "log").out
	assert.Contains(t, text, "orange peel, dirt, polish")
	assert.Contains(t, text, first.Record[:13])
}

// Without an id the last job that nobody spoke of is meant.
func TestTheOutcomeOfTheLastJob(t *testing.T) {
	_, env := quarryLane(t)
	recorded(t, env, append(recordJob, "--at", time.Now().AddDate(0, 0, -2).Format(time.DateOnly))...)
	last := recorded(t, env, recordJob...)
	first := boothsetIn(env, "", "log", "outcome", "--outcome", "run", "--dry-run", "--json")
	assert.Contains(t, first.out, last.Record)
	assert.Equal(t, last.Record, recorded(t, env, "log", "outcome", "--booth", "two", "--outcome", "run").Job.ID)
	assert.NotEqual(t, last.Record, recorded(t, env, "log", "outcome", "--outcome", "sag").Job.ID)
	r := boothsetIn(env, "", "log", "outcome", "--outcome", "sag")
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "each job has its outcome")
}

func TestWhatCannotBeLogged(t *testing.T) {
	dir, env := quarryLane(t)
	kept := recorded(t, env, recordJob...)
	for _, c := range []struct {
		args []string
		says string
	}{
		{append(recordJob, "--outcome", "shiny"), `outcome "shiny": choose good, dry`},
		{append(recordJob, "--then", "polish"), "with --outcome"},
		{append(recordJob, "--outcome", "good", "--then", "sand"), `then "sand": choose none, polish or redo`},
		{append(recordJob, "--at", "2999-01-01"), "yet to come"},
		{append(recordJob, "--at", "lately"), "give a day as"},
		{append(recordJob, "--read", "wall=9999psi"), "is outside 0 to 300 psi"},
		{append(recordJob, "--read", "wall=-1psi"), "must be above 0"},
		{append(recordJob, "--by", "MK"), "no painter of those initials"},
		{append(recordJob, "--coat", "varnish"), `coat "varnish"`},
		{[]string{"log", "record", "--coat", "clear"}, "booth: choose"},
		{[]string{"log", "outcome"}, "outcome: choose good"},
		{[]string{"log", "outcome", "zz", "--outcome", "good"}, "no job of that id"},
		{[]string{"log", "outcome", kept.Record, "other", "--outcome", "good"}, "other"},
		{[]string{"log", "outcome", "--booth", "..", "--outcome", "good"}, `booth "..": choose`},
	} {
		r := boothsetIn(env, "", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says, c.args)
	}
	assert.Len(t, jobsOfLog(t, env), 1)
	noState := func(name string) string {
		return map[string]string{"BOOTHSET_SHOP": dir}[name]
	}
	r := boothsetIn(noState, "", recordJob...)
	assert.Equal(t, ExitFailed, r.code)
	assert.Contains(t, r.err, "XDG_STATE_HOME")
	files, err := filepath.Glob(filepath.Join(dir, "log", "two", "*"))
	require.NoError(t, err)
	assert.Len(t, files, 1)
}
