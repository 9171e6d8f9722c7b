package trouble_test

import (
	"fmt"
	"time"

	"boothset/calc/trouble"
)

// A device with two parts that may be at fault, one likelier and one quicker to look at.
func ExampleBook_Rank() {
	b := &trouble.Book{
		Signs:  []trouble.Sign{{ID: "dead", Causes: []trouble.Likely{{Cause: "battery", Band: trouble.Usual}, {Cause: "switch", Band: trouble.Often}}}},
		Causes: []trouble.Cause{{ID: "battery"}, {ID: "switch"}},
		Checks: []trouble.Check{
			{ID: "measure", Takes: 10 * time.Minute, Findings: []trouble.Finding{{ID: "full"}, {ID: "empty", Shows: []string{"battery"}}}},
			{ID: "flip", Takes: time.Minute, Findings: []trouble.Finding{{ID: "stiff"}, {ID: "loose", Shows: []string{"switch"}}}},
		},
	}
	k := &trouble.Known{Signs: []string{"dead"}}
	fmt.Println("look first:", b.Rank(k).Next.ID)
	k.Found = append(k.Found, trouble.Found{Check: "flip", Finding: "loose"})
	r := b.Rank(k)
	fmt.Printf("%s: %s, %.2f\n", r.End, r.Causes[0].ID, r.Causes[0].P)
	// Output:
	// look first: flip
	// told: switch, 0.85
}
