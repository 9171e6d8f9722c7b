package question_test

import (
	"fmt"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// What was typed is read once, into values, and resolved into a request in SI.
func Example() {
	nowhere := func(string) string { return "" } // os.Getenv, where there is a shop's file
	r, err := question.Open(nowhere, words.English())
	if err != nil {
		fmt.Println(err)
		return
	}
	typed := question.Texts{"coat": {"clear"}, "gun": {"HVLP"}, "temp": {"24C"}, "humidity": {"45"}}
	a := r.ReadAll(question.Plan, typed, unit.US)
	_, faults := r.Plan(a, unit.US)
	fmt.Println(faults[0])

	a = a.With(question.Supply, r.Read(question.Supply, "90", unit.US))
	request, _ := r.Plan(a, unit.US)
	fmt.Println(request.Gun.ID, unit.US.Temp(request.Day.Air, unit.Usual), unit.Metric.Gauge(request.Supply, unit.Usual))
	fmt.Println(question.TextOf(r.Completed(question.Supply, a.Get(question.Supply), unit.US)))
	// Output:
	// supply: type a number with psi, bar or kPa, such as 90psi
	// high-volume-low-pressure 75 F 6.21 bar
	// 90 psi
}

// One field can be checked while the others are still empty.
func ExampleReader_Check() {
	r, _ := question.Open(func(string) string { return "" }, words.English())
	for _, typed := range []string{"25ft", "900ft,3/8in", "25ft,3/8in"} {
		fmt.Println(r.Check(question.Hose, r.ReadText(question.Hose, typed, unit.US), unit.US))
	}
	// Output:
	// hose "25ft": type length and bore, such as 25ft,3/8in or 8m,10mm
	// hose "900ft,3/8in": 900 ft long is outside 0.5 to 500 ft
	// <nil>
}

// On the command line a beginning will do that is of one entry alone; a name that is none is
// answered with the nearest.
func ExampleReader_Expand() {
	r, _ := question.Open(func(string) string { return "" }, words.English())
	fmt.Println(r.Expand(question.Coat, "metal"), r.Expand(question.Gun, "high"))
	fmt.Println(r.Check(question.Coat, r.ReadText(question.Coat, "seeler", unit.US), unit.US))
	// Output:
	// metallic-base high
	// coat "seeler": choose epoxy-primer, surfacer, sealer, solvent-base, metallic-base, waterborne-base, single-stage, clear, adhesion-promoter, ultraviolet-primer, pearl-mid, matte-clear or high-solids-clear; nearest is sealer
}
