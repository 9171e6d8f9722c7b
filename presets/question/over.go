package question

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// ShopFields is every field that a shop's usual line, or a booth, may answer.
func ShopFields() []*Field {
	fields := make([]*Field, len(shopRows))
	for i, row := range shopRows {
		fields[i] = row.Field
	}
	return fields
}

// Over is a reader whose usual answers are those given, and the ones it had where they say
// nothing: what is typed beats a booth, a booth the shop's file, and that the catalogue.
func (r *Reader) Over(a Answers) *Reader {
	over := *r
	over.usual = a.Or(r.usual)
	return &over
}

// AnyJob is answers that make a plan of the usual ones alone: a coat and a gun that go
// together, a mild day, and a supply where the usual answers have none.
func (r *Reader) AnyJob() Answers {
	sys := unit.Metric
	coat, gun := r.goTogether("", "")
	var a Answers
	for f, t := range map[*Field]string{Coat: coat, Gun: gun, Temp: "20C", Humidity: "50%", Supply: "100psi"} {
		if !r.usual.Has(f) {
			a = a.With(f, r.Read(f, t, sys))
		}
	}
	return a
}

// In is a reader of another catalogue that keeps its usual answers.
func (r *Reader) In(c *catalogue.Catalogue) *Reader {
	in := *r
	in.Catalogue = c
	return &in
}

// WithLearnt is a reader whose plans are worked on their lines as these were read: learnt is what the
// readings left of a plan's line, nil where there are none of it. It must be fit to be called by
// several at once where the reader is.
func (r *Reader) WithLearnt(learnt func(described *calc.Request) *calc.Learnt) *Reader {
	with := *r
	with.learnt = learnt
	return &with
}

// SaidTwice is the fault of the first answer that says something of the line beside a list of
// all its parts; nil where none does.
func (r *Reader) SaidTwice(a Answers, sys unit.System) *Fault {
	if !Whole(a) {
		return nil
	}
	for _, f := range usualLine {
		if a.Has(f) {
			return r.Fault(f.Name, a.Text(f), sys, "line-said-twice", calc.TextFigure("field", f.Name), calc.TextFigure("line", Line.Name))
		}
	}
	return nil
}
