package trouble

import (
	"time"

	"boothset/calc"
)

// Band is how likely a cause is behind a sign, beside the sign's other causes. Guides put
// causes in an order and give no shares, so a band is all that is said; each is an estimate.
type Band uint8

// The bands, three times as likely from one to the next.
const (
	Seldom Band = iota + 1
	Often
	Usual
)

// apart is how many times as likely a cause is of the next band: an estimate.
const apart = 3

// weight is a band as a number; only ratios of weights count.
func (b Band) weight() float64 {
	w := 1.0
	for range b - Seldom {
		w *= apart
	}
	return w
}

// Trust is how often a check finds what is there.
type Trust uint8

// The trusts: a look or a gauge; a comparison by eye, or a trial that other things move as well.
const (
	Sure Trust = iota
	Fair
)

// right is how often a check is right: estimates.
func (t Trust) right() float64 { return [...]float64{Sure: 0.95, Fair: 0.85}[t] }

// Book is every sign, cause and check.
type Book struct {
	Signs  []Sign
	Causes []Cause
	Checks []Check
	// Raised and Lowered are the causes that a fact of the setup makes likelier or less so.
	Raised, Lowered map[string][]string
	// Odd is the causes that a part of the line is behind which is not what it is called, by
	// the part's kind.
	Odd map[string][]string
}

// Sign is what is seen.
type Sign struct {
	ID string
	// Wet is what is to be done with the panel as it is, by its sentence wet-; empty where the
	// sign is seen on paper or at the gun.
	Wet    string
	Causes []Likely
	calc.Ground
}

// Likely is a cause of a sign.
type Likely struct {
	Cause string
	Band  Band
}

// Cause is what a sign can be due to.
type Cause struct {
	ID   string
	Move Move
}

// Check is something to look at or to try, and what it can find, the first where nothing is
// wrong.
type Check struct {
	ID       string
	Takes    time.Duration
	Trust    Trust
	Findings []Finding
}

// Finding is what a check can find, and the causes that it shows.
type Finding struct {
	ID    string
	Shows []string
}

// Sign is the sign of an id, nil where there is none.
func (b *Book) Sign(id string) *Sign { return find(b.Signs, func(s *Sign) bool { return s.ID == id }) }

// Cause is the cause of an id, nil where there is none.
func (b *Book) Cause(id string) *Cause {
	return find(b.Causes, func(c *Cause) bool { return c.ID == id })
}

// Check is the check of an id, nil where there is none.
func (b *Book) Check(id string) *Check {
	return find(b.Checks, func(c *Check) bool { return c.ID == id })
}

// Finding is the finding of an id, nil where there is none.
func (c *Check) Finding(id string) *Finding {
	return find(c.Findings, func(f *Finding) bool { return f.ID == id })
}

func find[T any](all []T, is func(*T) bool) *T {
	for i := range all {
		if is(&all[i]) {
			return &all[i]
		}
	}
	return nil
}
