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
	for _, l := range answer.Lay(rows[:5], 60, r.Words()) {
		fmt.Println(l.Text)
	}
	// Output:
	// stop true true
	// Waterborne base. Air 20.0 C at 100% humidity, panel 20.0 C,
	// paint 20.0 C.
	//
	//   STOP Warm booth air, panel and paint to 25.0 C: the same
	//        air is then at 74%. From 24.0 C on it will do.
	//
	//   DEW POINT    20.0 C             panel 0.0 C above it;
	//                                   3.0 C above is the least
	//   FLASH-OFF    20 times or more   as long as on a mild day
	//   REDUCER      standard
}
