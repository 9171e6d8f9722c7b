package answer_test

import (
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
)

// A day asked about, and what is said of it: rows with roles, laid out or looked at.
func Example() {
	r, err := question.Open(func(string) string { return "" }, words.English())
	if err != nil {
		fmt.Println(err)
		return
	}
	typed := question.Texts{"coat": {"waterborne-base"}, "temp": {"20C"}, "humidity": {"100"}}
	a, err := answer.Ask(r, question.Day, r.ReadAll(question.Day, typed, unit.Metric), unit.Metric)
	if err != nil {
		fmt.Println(err)
		return
	}
	rows := a.Rows(r.Words(), unit.Metric)
	for _, row := range rows {
		if row.Role == answer.Verdict {
			fmt.Println(row.ID, row.Level == calc.Stop, a.Stopped())
		}
	}
	for _, l := range answer.Lay(rows[:3], 60, r.Words()) {
		fmt.Println(l.Text)
	}
	// Output:
	// stop true true
	// STOP: do not spray. Warm booth air, panel and paint to
	//       25.0 C: the same air is then at 74%. 25.0 C or more
	//       will do.
	// STOP The panel at 20.0 C is at or below the dew point of
	//      20.0 C: water forms on it. It should be 3.0 C above.
	// STOP The air is at 100% humidity: do not spray at 85% or
	//      above.
}
