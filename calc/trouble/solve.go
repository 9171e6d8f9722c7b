package trouble

import "boothset/calc"

// Request is a case as it is asked: what is seen, what checks found, and as much of the job as
// is known.
type Request struct {
	Signs []string // of the book, one or more, none twice
	Found []Found  // of the book, no check twice
	// Plan is the job's, nil where it is not known; the rest as Job has it, of which Mix and
	// Film may be known without it. What its line's readings left of that counts.
	Plan *calc.Request
	Job
}

// Answer is the answer to a Request.
type Answer struct {
	*Ranking
	Job *Job // solved; without a setup where the request has no plan
	// After is the job once the likeliest cause is mended, nil where nothing of that is worked
	// out.
	After *Job
}

// Solve works a request. It fails, with a *calc.Problem, where the job cannot be solved.
func (b *Book) Solve(q *Request) (*Answer, error) {
	j := q.Job
	odd := oddities(q.Plan)
	j.read = len(odd) > 0
	if q.Plan != nil {
		s, err := calc.Solve(q.Plan)
		if err != nil {
			return nil, err
		}
		j.Request, j.Setup = q.Plan, s
	}
	if j.Mix != nil {
		timed, err := calc.SolveThin(j.Mix)
		if err != nil {
			return nil, err
		}
		j.Timed = &timed
	}
	if j.Film != nil {
		laid, err := calc.SolveFilm(j.Film)
		if err != nil {
			return nil, err
		}
		j.Laid = &laid
	}
	a := &Answer{Job: &j}
	a.Ranking = b.Rank(&Known{Signs: q.Signs, Facts: j.Facts(), Odd: odd, Found: q.Found})
	if after, ok := j.After(a.Causes[0].Cause); ok {
		a.After = after
	}
	return a, nil
}

// finestOdd is what no probability of draws is told finer than from none or all.
const finestOdd = 0.005

// oddities is how likely each part of a job's line is not what it is called, by its readings.
func oddities(plan *calc.Request) (all []Oddity) {
	if plan == nil || !plan.AsRead() {
		return nil
	}
	for _, p := range plan.Learnt.Odds {
		all = append(all, Oddity{Part: p.Name, Kind: p.Kind.String(), Prior: p.Before, Now: min(max(p.Odd, finestOdd), 1-finestOdd)})
	}
	return all
}

// Stopped reports whether the job must not be done as it stands.
func (a *Answer) Stopped() bool { return a.Job.Setup != nil && a.Job.Setup.Stopped() }

// Turn is what makes day or supply fit, where that is the likeliest cause's move; false
// elsewhere, and where nothing speaks against them.
func (a *Answer) Turn() (t calc.Turn, ok bool) {
	j := a.Job
	if j.Setup == nil {
		return t, false
	}
	switch a.Causes[0].Move {
	case MoveDay:
		m, ok := j.remedy()
		return calc.Turn{ID: m.Sentence(), Figures: m.Figures()}, ok
	case MoveSupply:
		for _, c := range j.Setup.Against {
			if c.ID == "supply-gives-out" || c.ID == "supply-from-full" || c.ID == "supply-series" || c.ID == "supply-deficit" {
				return c.Turn, true
			}
		}
	}
	return t, false
}

// Still is the facts that speak for the likeliest cause even with its move made.
func (a *Answer) Still() (all []Fact) {
	if a.After == nil {
		return nil
	}
	for _, f := range a.After.Facts() {
		for _, was := range a.Causes[0].Raised {
			if was.ID == f.ID {
				all = append(all, f)
			}
		}
	}
	return all
}
