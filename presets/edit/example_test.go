package edit_test

import (
	"fmt"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// Every input of a job moved by one step: a number to its next mark, a choice along its
// list, a bore to the next that there is.
func Example() {
	r, err := question.Open(func(string) string { return "" }, words.English())
	if err != nil {
		fmt.Println(err)
		return
	}
	a := r.ReadAll(question.Plan, question.Texts{"coat": {"sealer"}, "gun": {"hvlp"}, "temp": {"73F"}, "humidity": {"45%"}, "supply": {"90psi"}}, unit.US)
	request, _ := r.Plan(a, unit.US)
	for _, in := range edit.Inputs(r, a) {
		if b, moved := edit.Step(r, a, request, in, +1, unit.US); moved {
			fmt.Printf("%s: %s\n", in.Field.Name, b.Text(in.Field))
		}
	}
	// Output:
	// coat: solvent-base
	// hardener: isocyanate
	// gun: reduced-pressure
	// temp: 74 F
	// humidity: 50%
	// panel: 74 F
	// altitude: 500 ft
	// supply: 91 psi
	// regulator: none
	// regulator-at: gun
	// filter: point-of-use
	// hose: 30 ft, 3/8in
	// hose: 25ft, 1/2 in
	// coupling: ordinary
	// hose-temp: 74 F
	// gauge: foot
	// gauge-span: 161 psi
	// gauge-class: 5%
	// mark: 2 psi
	// working: 28 psi
}

// What the arrows pick in a field that is typed.
func ExampleSuggestions() {
	r, _ := question.Open(func(string) string { return "" }, words.English())
	for _, item := range edit.Suggestions(r, question.Cup, "4", unit.Metric) {
		fmt.Println(item.ID, "=", item.Name)
	}
	// Output:
	// iso4 = ISO 2431 4 mm
	// din4 = DIN 53211 4 mm
	// ford4 = Ford 4
	// zahn4 = Zahn 4
}
