package calc

import "slices"

// Verdict is what an answer comes to, the mildest first.
type Verdict uint8

// The verdicts.
const (
	VerdictGo    Verdict = iota // spray
	VerdictWatch                // spray, and mind what speaks against it
	VerdictWait                 // wait, or change something first
	VerdictStop                 // never as it stands
)

// String is the verdict as answers name it.
func (v Verdict) String() string { return [...]string{"go", "watch", "wait", "stop"}[v] }

// Turn is one thing to do, by its sentence.
type Turn struct {
	ID string
	Figures
}

// Cause is one thing that speaks against spraying, by its sentence.
type Cause struct {
	Level Verdict
	ID    string
	Figures
	Turn   Turn   // the one thing that makes it milder
	Limit  string // the sentence of the limit that it passes, told with the cause's figures
	Ground        // of the limit
}

// Judgement is what an answer comes to and why. What is only to be known, such as a hazard
// that comes with a coat on any day, is a Caution and does not count.
type Judgement struct {
	Verdict Verdict // the worst of Against
	Against []Cause // the gravest first; of one level in the order in which they are looked for
}

// Stopped reports whether the job must not be done as it stands.
func (j *Judgement) Stopped() bool { return j.Verdict == VerdictStop }

// Turn is the one thing that makes the worst milder; its ID is empty where nothing speaks
// against spraying.
func (j *Judgement) Turn() Turn {
	if len(j.Against) == 0 {
		return Turn{}
	}
	return j.Against[0].Turn
}

// add puts a cause behind those that weigh as much or more.
func (j *Judgement) add(l Verdict, id, limit string, ground Ground, turn Turn, f ...Figure) {
	at := len(j.Against)
	for at > 0 && j.Against[at-1].Level < l {
		at--
	}
	j.Against = slices.Insert(j.Against, at, Cause{Level: l, ID: id, Figures: f, Turn: turn, Limit: limit, Ground: ground})
	j.Verdict = max(j.Verdict, l)
}

// explain gives each limit that is passed as a reason.
func (j *Judgement) explain(why *reasons) {
	for i := range j.Against {
		c := &j.Against[i]
		if !slices.ContainsFunc(j.Against[:i], func(o Cause) bool { return o.Limit == c.Limit }) {
			why.add("verdict", c.Limit, c.Ground, c.Figures...)
		}
	}
}
