package calc

// Problem is a request that cannot be worked: which part of it, and the sentence that
// says why.
type Problem struct {
	Field, ID string
	Figures
}

func (p *Problem) Error() string { return p.Field + ": " + p.ID }

// problems gathers what is wrong with a request.
type problems []Problem

func (p *problems) add(field, id string, f ...Figure) { *p = append(*p, Problem{field, id, f}) }
