package spread_test

import (
	"fmt"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/spread"
)

// A clear on a mild day down 25 ft of 3/8 in hose, with a wall gauge that may be 4 psi off.
func ExampleOf() {
	request := calctest.MildClear(failing{})
	setup, err := calc.Solve(&request)
	if err != nil {
		fmt.Println(err)
		return
	}
	s := spread.Of(&request, setup)
	first := s.Causes[0]
	fmt.Printf("wall %.0f to %.0f psi, mostly by %s\n", s.Wall.Low.PSI(), s.Wall.High.PSI(), first.ID)
	fmt.Printf("were that known: %.0f to %.0f psi\n", first.Known.Low.PSI(), first.Known.High.PSI())
	// Output:
	// wall 28 to 34 psi, mostly by wall-gauge
	// were that known: 30 to 33 psi
}

// failing is a test that an example has not: it panics.
type failing struct{}

func (failing) Errorf(format string, args ...any) { panic(fmt.Sprintf(format, args...)) }
func (failing) FailNow()                          { panic("failed") }
