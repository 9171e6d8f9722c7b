// Package questiontest holds what tests of the questions, and of what is made of them, share:
// readers of an invented shop, answers that will do, drawn at random or plain. Only tests use
// it.
//
//	r := questiontest.Open(t)
//	a := r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
package questiontest
