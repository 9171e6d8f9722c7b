package edit_test

import (
	"fmt"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
)

var bothSystems = []unit.System{unit.US, unit.Metric}

// wholeShop is answers in which everything that can be moved counts.
func wholeShop() question.Texts {
	texts := questiontest.MildDay("clear", "reduced-pressure")
	texts["hose"] = []string{"25ft,3/8in", "6ft,5/16in"}
	texts["wall"], texts["compressor"], texts["receiver"] = []string{"33psi"}, []string{"18cfm"}, []string{"60gal"}
	texts["main"], texts["other"] = []string{"100ft,3/4in"}, []string{"10cfm", "4cfm,50%"}
	texts["pot-life"] = []string{"4h@20C"}
	return texts
}

// read is texts as answers to the plan.
func read(r *question.Reader, texts question.Texts, sys unit.System) question.Answers {
	return r.ReadAll(question.Plan, texts, sys)
}

// step moves one input of answers, with what counts in the request that they come to.
func step(r *question.Reader, a question.Answers, in edit.Input, by int, sys unit.System) (question.Answers, bool) {
	now, _ := r.Plan(a, sys)
	return edit.Step(r, a, now, in, by, sys)
}

// named is inputs by their field, part and piece.
func named(all ...edit.Input) (names []string) {
	for _, in := range all {
		names = append(names, fmt.Sprintf("%s %d.%d", in.Field.Name, in.Part, in.Piece))
	}
	return names
}

// field is the plan's field of a name.
func field(name string) *question.Field {
	row, ok := question.Plan.Field(name)
	if !ok {
		panic(name)
	}
	return row.Field
}
