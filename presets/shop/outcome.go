package shop

import (
	"slices"
	"strings"

	"boothset/presets/words"
)

// OutcomeNamed is the outcome that is typed, by its name or as the words say it; false where
// there is no such.
func OutcomeNamed(w *words.Words, typed string) (Outcome, bool) {
	return named(Outcomes(), typed, func(o Outcome) string { return o.In(w) })
}

// ThenNamed is OutcomeNamed of what had to be done.
func ThenNamed(w *words.Words, typed string) (Then, bool) {
	return named(Thens(), typed, func(t Then) string { return t.In(w) })
}

func named[T ~string](all []T, typed string, in func(T) string) (T, bool) {
	typed = strings.TrimSpace(typed)
	n := slices.IndexFunc(all, func(x T) bool { return strings.EqualFold(string(x), typed) || strings.EqualFold(in(x), typed) })
	if n < 0 {
		return "", false
	}
	return all[n], true
}

// In is the outcome in a language; one that a later program wrote is as that wrote it.
func (o Outcome) In(w *words.Words) string { return sayOr(w, "outcome-", string(o)) }

// In is Outcome.In.
func (t Then) In(w *words.Words) string { return sayOr(w, "then-", string(t)) }

func sayOr(w *words.Words, prefix, id string) string {
	if w.Has(prefix + id) {
		return w.Say(prefix + id)
	}
	return id
}

// Unsaid is the jobs of which nobody has said how they came out, in the order given.
func Unsaid(jobs []*Record) []*Record {
	return slices.DeleteFunc(slices.Clone(jobs), func(r *Record) bool { return len(r.Outcome) > 0 })
}

// Begun is the jobs whose id begins as is typed: one is meant, several are to be told apart.
func Begun(jobs []*Record, typed string) []*Record {
	typed = strings.ToLower(strings.TrimSpace(typed))
	return slices.DeleteFunc(slices.Clone(jobs), func(r *Record) bool { return !strings.HasPrefix(r.ID, typed) })
}

// LaterOf is a record that says more of a job, of which nothing is said yet.
func LaterOf(job *Record) Record { return Record{Of: job.ID, Booth: job.Booth} }
