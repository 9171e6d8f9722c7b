// Package question holds what can be asked: a table of fields for each question (the plan,
// the day, thinning, film, mix), the reading of what people typed into values, and the
// turning of values into a complete request of calc.
//
//	r, err := question.Open(os.Getenv, words.English())
//	a := r.ReadAll(question.Plan, question.Texts{"coat": {"clear"}, "temp": {"75F"}}, unit.US)
//	request, faults := r.Plan(a, unit.US)
//
// A field is one row: how it is read, its bounds and step, where its default comes from,
// and by its name the sentences it is asked with. The rows stand beside what turns them
// into a request: weather.go has those of the day, airline.go those of the line, and so on.
package question
