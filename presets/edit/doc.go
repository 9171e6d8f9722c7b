// Package edit moves answers without typing them: an input by its steps, a choice along its
// list, and what a field that is typed may be picked from.
//
//	for _, in := range edit.Inputs(r, answers) { ... }
//	answers, moved := edit.Step(r, answers, request, in, +1, unit.US)
//
// It works on values: nothing is printed to be read again, and nothing is solved. What a
// step leads to is found by solving the answers that come of it.
package edit
