// Package calc is the answer: a Request goes in, complete and in SI, and Solve gives
// the Setup: what to set at the wall, how far to hold the gun, how far to open its
// inlet valve, what each part of the line costs, and why.
//
//	setup, err := calc.Solve(request)
//
// Reasons and cautions come as ids with their figures; the sentences are elsewhere.
// Nothing here knows a file, a clock or a screen.
package calc
