package tui

import (
	"testing"
	"time"

	"boothset/presets/last"
	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// jobsOf is the jobs in the log of a booth of a folder, with what was said of them.
func jobsOf(t test, dir, booth string) []*shop.Record {
	t.Helper()
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	log, faults := f.Log(booth)
	require.Empty(t, faults)
	return shop.Jobs(log)
}

// booths is assistants in booths of a folder, one after the other on one machine.
type booths struct {
	shelf
	dir string
}

func newBooths(t *testing.T) *booths { return &booths{*newShelf(t), shopCopy(t)} }

func (h *booths) open(t *testing.T) *root {
	t.Helper()
	r := h.run(t, look{folder: h.dir})
	r.s.getenv = func(name string) string { return map[string]string{"XDG_STATE_HOME": h.file + ".state"}[name] }
	r.s.atOnce = true
	return r
}

// How a job came out takes two keys at its answer; said again, the last word counts.
func TestTheOutcomeTakesTwoKeys(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, deskAnswer...)
	setup := r.result().Plan.Setup
	typed(r, "d")
	require.Equal(t, "outcome", where(r))
	require.Contains(t, bodyText(r.View()), "Clearcoat, clear 1, in Booth two")
	typed(r, "3", "2")
	require.Equal(t, "bench", where(r))
	require.Contains(t, r.View(), "In the log: orange peel, polish.")
	jobs := jobsOf(t, h.dir, "two")
	require.Len(t, jobs, 1)
	job := jobs[0]
	require.Equal(t, shop.Subject{Coat: "clear", Stage: "full", Gun: "clear-1", Band: "mild"}, job.Subject)
	require.Equal(t, []shop.Outcome{shop.Peel}, job.Outcome)
	require.Equal(t, shop.Polish, job.Then)
	require.Empty(t, job.Painter)
	require.True(t, testDay.Equal(job.At))
	require.InDelta(t, setup.Wall.Flowing.PSI(), job.Answered.Wall.PSI(), 0.06)
	require.Equal(t, []string{"75F"}, job.Asked["temp"])
	require.Equal(t, []string{"100psi"}, job.Asked["supply"], "the booth's")
	require.Equal(t, []string{"1.4mm"}, job.Asked["tip"], "the gun's")

	typed(r, "d", "1", "1")
	jobs = jobsOf(t, h.dir, "two")
	require.Len(t, jobs, 1, "of the same job")
	require.Equal(t, []shop.Outcome{shop.Good}, jobs[0].Outcome)

	r = h.open(t)
	typed(r, "enter")
	require.Equal(t, "resume", where(r), "nothing is asked: it was said")
}

// What was not said is asked at the next start, of each job, and no more once it was answered.
func TestWhatWasNotSaidIsAskedAtTheNextStart(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, deskAnswer...)
	h.now = testDay.Add(time.Hour)
	typed(r, "n", "1", "1", "5")
	for range 4 {
		if where(r) != "bench" {
			typed(r, "enter")
		}
	}
	require.Equal(t, "bench", where(r))
	typed(r, "q")

	h.now = testDay.Add(20 * time.Hour)
	r = h.open(t)
	typed(r, "enter")
	require.Equal(t, "outcome", where(r))
	require.Contains(t, bodyText(r.View()), "Booth one")
	typed(r, "1", "1")
	require.Equal(t, "outcome", where(r), "the other job")
	require.Contains(t, bodyText(r.View()), "Clearcoat, clear 1, in Booth two")
	require.Contains(t, bodyText(r.View()), "20 h ago")
	typed(r, "esc")
	require.Equal(t, "resume", where(r), "later")
	require.Len(t, jobsOf(t, h.dir, "one"), 1)
	require.Empty(t, jobsOf(t, h.dir, "two"))
	typed(r, "4")

	r = h.open(t)
	typed(r, "enter")
	require.Equal(t, "outcome", where(r), "it is asked again")
	typed(r, "0")
	require.NotEqual(t, "outcome", where(r))
	require.Empty(t, jobsOf(t, h.dir, "two"), "it was not sprayed")
	r = h.open(t)
	typed(r, "enter")
	require.NotEqual(t, "outcome", where(r))
	job := jobsOf(t, h.dir, "one")[0]
	require.Equal(t, "metallic-base", job.Coat)
	require.True(t, testDay.Add(time.Hour).Equal(job.At), "when it was answered, not when it was said")
}

// A job that is gone on with is the same job, and is asked once.
func TestAJobThatIsGoneOnWithIsAskedOnce(t *testing.T) {
	h := newBooths(t)
	typed(h.open(t), deskAnswer...)
	r := h.open(t)
	typed(r, "enter", "esc", "1")
	require.Equal(t, "bench", where(r))
	require.Len(t, r.draft().Jobs, 1)
	drafts, err := last.LoadAll(h.file)
	require.NoError(t, err)
	require.Equal(t, drafts[0].Jobs[0].ID, r.draft().Jobs[0].ID)
}

// A job of which something stands in the log by now is not asked for again.
func TestAJobThatWasSaidElsewhereIsNotAskedAgain(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, deskAnswer...)
	other := h.open(t) // another terminal, meanwhile
	typed(other, "enter", "1", "1")
	require.Len(t, jobsOf(t, h.dir, "two"), 1)
	typed(r, "u", "u") // it keeps its answers once more
	r = h.open(t)
	typed(r, "enter")
	require.Equal(t, "resume", where(r))
}

// The painter is asked for only where the shop keeps painters.
func TestWhoSprayed(t *testing.T) {
	h := newBooths(t)
	f, err := shop.At(h.dir)
	require.NoError(t, err)
	defer f.Close()
	id, err := f.AddPainter("RM")
	require.NoError(t, err)
	r := h.open(t)
	typed(r, deskAnswer...)
	typed(r, "d", "1", "1")
	require.Equal(t, "painter", where(r))
	typed(r, "2")
	require.Equal(t, id, jobsOf(t, h.dir, "two")[0].Painter)
}

// From behind the last view leads a way to it before the way out.
func TestTheWayOutOffersTheOutcome(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, deskAnswer...)
	for range 40 {
		if where(r) == "bench" {
			typed(r, "enter")
		}
	}
	require.Equal(t, "finish", where(r))
	typed(r, "1", "1", "1")
	require.Equal(t, "bench", where(r))
	require.Len(t, jobsOf(t, h.dir, "two"), 1)
}

func TestNothingIsSaidOfAJobThatIsStopped(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, then(deskAnswer[:9], "25psi", "enter", "enter", "enter", "d", "1")...)
	require.Equal(t, "outcome", where(r))
	require.Contains(t, r.View(), "there is nothing to say of it")
	require.Empty(t, r.draft().Jobs)
}

// In lines of text the same is asked and kept.
func TestPlainSaysTheOutcome(t *testing.T) {
	h := newBooths(t)
	o := look{folder: h.dir}.options(t)
	env := map[string]string{"XDG_STATE_HOME": h.file + ".state"}
	o.Getenv = func(name string) string { return env[name] }
	o.Kept = h.file
	got := dialogueIn(t, o, lines("2", "2", "8", "75F", "45", "", "", "", "", "", "", "", "", "q"))
	require.NoError(t, got.err)
	got = dialogueIn(t, o, lines("peel", "2", "1", "a", "", "", "", "flat", "d", "good", "1", "q"))
	require.NoError(t, got.err)
	jobs := jobsOf(t, h.dir, "two")
	require.Len(t, jobs, 2)
	require.Equal(t, []shop.Outcome{shop.Peel}, jobs[0].Outcome)
	require.Equal(t, []shop.Outcome{shop.Good}, jobs[1].Outcome)
	require.Equal(t, "flat", agreedInFolder(t, h.dir, "two")[0].Why)
	require.Contains(t, got.out, "In the log: good.")
}

// A booth of the same id in another shop is another booth: neither its jobs are asked for there
// nor is a job gone on with in it.
func TestAnotherShopsJobsAreNotAskedFor(t *testing.T) {
	h := newBooths(t)
	typed(h.open(t), deskAnswer...)
	h.dir = shopCopy(t)
	r := h.open(t)
	typed(r, "enter")
	require.Equal(t, "resume", where(r))
	typed(r, "1")
	require.Nil(t, r.s.desk.booth)
	require.Empty(t, jobsOf(t, h.dir, "two"))
}
