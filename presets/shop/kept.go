package shop

import (
	"boothset/calc/unit"
	"boothset/presets/last"
	"boothset/presets/question"
)

// KeptJob is a job of which nobody has said yet how it came out, in a booth of the folder of a
// path, as it is kept between runs, in a system's units.
func KeptJob(dir string, r *Record, sys unit.System) last.Job {
	j := last.Job{
		Shop: dir, ID: r.ID, At: r.At, Booth: r.Booth, Coat: r.Coat, Stage: r.Stage, Gun: r.Gun, Band: r.Band,
		Asked: last.Texts(r.Asked), Answered: last.Texts{},
	}
	r.Answered.Each(func(key string, q *unit.Quantity, si float64) {
		decimals := unit.Usual
		if q == unit.Pressure {
			decimals = q.Fine(sys)
		}
		j.Answered[key] = []string{q.Text(sys, si, decimals)}
	})
	return j
}

// JobKept is the job that KeptJob keeps; false where it is none that a log may hold. A value that
// will not do is left out.
func JobKept(r *question.Reader, j *last.Job) (Record, bool) {
	rec := Record{
		ID: j.ID, At: j.At, Booth: j.Booth, Subject: Subject{shownName(j.Coat), shownName(j.Stage), shownName(j.Gun), shownName(j.Band)},
		Asked: shownTexts(j.Asked),
	}
	for key, texts := range j.Answered {
		if len(texts) == 1 {
			_ = rec.Answered.Say(r, key, texts[0], unit.US) // a fault leaves it out
		}
	}
	return rec, isUUID(j.ID) && IsID(j.Booth) && !j.At.IsZero()
}

// Logged reports whether a job stands in a log, or something that was said of it.
func Logged(log []*Record, job string) bool {
	for _, r := range log {
		if r.ID == job || r.Of == job {
			return true
		}
	}
	return false
}
