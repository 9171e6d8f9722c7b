package trouble

import (
	"cmp"
	"slices"

	"boothset/calc"
)

// Known is what is known of a case.
type Known struct {
	Signs []string // of the book, one or more
	Facts []Fact   // of the setup
	Odd   []Oddity // of the line
	Found []Found  // what checks found, in order
}

// Fact is something that the setup's own figures say.
type Fact struct {
	ID string
	// Steps is by how many bands it makes its causes likelier or less so: one near a bound,
	// two past it.
	Steps int
	calc.Figures
}

// Oddity is how likely a part of the line is not what it is called, and how likely that was
// before its readings; both above 0 and below 1.
type Oddity struct {
	Part, Kind string
	Prior, Now float64
}

// Found is what a check found; without a finding it was passed by.
type Found struct{ Check, Finding string }

// Ranked is a cause with its probability, and what made it likelier or less so.
type Ranked struct {
	*Cause
	P       float64
	Raised  []Fact
	Lowered []Fact
	Odd     []Oddity
}

// End is how far a case has come.
type End uint8

// A cause stands out; none does and there is more to look at; none does, and no check is left
// that would tell.
const (
	Told End = iota
	Open
	NotTold
)

// String is the end as answers name it.
func (e End) String() string { return [...]string{"told", "open", "not-told"}[e] }

// toldFrom is the probability from which on a cause counts as told: judgement, four to one.
const toldFrom = 0.8

// Ranking is the causes of a case.
type Ranking struct {
	Causes []Ranked // of the signs, the likeliest first
	None   float64  // the probability that it is none of them
	End    End
	Next   *Next // what to look at next, nil where nothing would tell more
}

// Rank ranks the causes of a case: a band's weight for each sign, a step for each fact, the
// odds of an odd part for its readings, and for each finding how often it is found where the
// cause is at work. "None of these" weighs as much as a cause that is seldom.
func (b *Book) Rank(k *Known) *Ranking {
	r := &Ranking{}
	weights := b.before(k, r)
	for _, f := range k.Found {
		c := b.Check(f.Check)
		if c == nil || c.Finding(f.Finding) == nil {
			continue
		}
		for i := range r.Causes {
			weights[i] *= c.Finds(f.Finding, r.Causes[i].ID)
		}
		weights[len(r.Causes)] *= c.Finds(f.Finding, "")
	}
	normalise(weights)
	for i := range r.Causes {
		r.Causes[i].P = weights[i]
	}
	r.None = weights[len(r.Causes)]
	slices.SortStableFunc(r.Causes, func(x, y Ranked) int { return cmp.Compare(y.P, x.P) })
	r.Next = b.next(k, r)
	switch {
	case r.Causes[0].P >= toldFrom:
		r.End = Told
	case r.Next == nil:
		r.End = NotTold
	default:
		r.End = Open
	}
	return r
}

// before fills in the causes of the signs and gives the weight of each before any check, that
// of none of them last.
func (b *Book) before(k *Known, r *Ranking) (weights []float64) {
	at := map[string]int{}
	for n, id := range k.Signs {
		for _, l := range b.Sign(id).Causes {
			i, ok := at[l.Cause]
			if !ok {
				i = len(weights)
				at[l.Cause] = i
				r.Causes = append(r.Causes, Ranked{Cause: b.Cause(l.Cause)})
				weights = append(weights, unlisted(n))
			}
			weights[i] *= l.Band.weight()
		}
		for i := range weights {
			if !b.Sign(id).Has(r.Causes[i].ID) {
				weights[i] /= apart
			}
		}
	}
	for i := range r.Causes {
		weights[i] *= b.ofSetup(k, &r.Causes[i])
	}
	return append(weights, 1)
}

// unlisted is the weight that so many signs give a cause that none of them has: a step below
// one that is seldom, each.
func unlisted(signs int) float64 {
	w := 1.0
	for range signs {
		w /= apart
	}
	return w
}

// Has reports whether the sign can be due to a cause.
func (s *Sign) Has(cause string) bool {
	return slices.ContainsFunc(s.Causes, func(l Likely) bool { return l.Cause == cause })
}

// ofSetup is by how much the setup's facts and the line's readings move a cause, and keeps
// what did.
func (b *Book) ofSetup(k *Known, c *Ranked) float64 {
	w := 1.0
	for _, f := range k.Facts {
		for range f.Steps {
			switch {
			case slices.Contains(b.Raised[f.ID], c.ID):
				w *= apart
			case slices.Contains(b.Lowered[f.ID], c.ID):
				w /= apart
			}
		}
		if slices.Contains(b.Raised[f.ID], c.ID) {
			c.Raised = append(c.Raised, f)
		}
		if slices.Contains(b.Lowered[f.ID], c.ID) {
			c.Lowered = append(c.Lowered, f)
		}
	}
	now, prior := 0.0, 0.0 // readings know that one is: which, their probabilities add up to
	for _, o := range k.Odd {
		if slices.Contains(b.Odd[o.Kind], c.ID) {
			now, prior = now+o.Now, prior+o.Prior
			c.Odd = append(c.Odd, o)
		}
	}
	if len(c.Odd) > 0 {
		w *= odds(now) / odds(prior)
	}
	return w
}

// surest is the most that a probability which was added up is taken for.
const surest = 0.99

func odds(p float64) float64 {
	p = min(p, surest)
	return p / (1 - p)
}

// Finds is how often the check finds something where a cause is at work: what shows the cause
// as often as the check is right, and where nothing shows it, that nothing is wrong. What is
// left is as likely for each of its other findings.
func (c *Check) Finds(finding, cause string) float64 {
	shows := 0
	hit := false
	for i := range c.Findings {
		if slices.Contains(c.Findings[i].Shows, cause) {
			shows++
			hit = hit || c.Findings[i].ID == finding
		}
	}
	right := c.Trust.right()
	if shows == 0 {
		shows, hit = 1, c.Findings[0].ID == finding
	}
	if hit {
		return right / float64(shows)
	}
	return (1 - right) / float64(len(c.Findings)-shows)
}

// normalise makes weights add up to 1.
func normalise(weights []float64) {
	sum := 0.0
	for _, w := range weights {
		sum += w
	}
	for i := range weights {
		weights[i] /= sum
	}
}
