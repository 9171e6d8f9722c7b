// Package practice is jobs to practise on: drawn by a seed from a shop's booths, guessed at,
// and judged by the solver's own answer, with what would have happened on the panel and the
// one idea that explains the miss; and the reverse, a booth that is badly set, whose fault is
// found by readings that cost time.
package practice
