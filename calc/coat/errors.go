package coat

import (
	"fmt"
	"math"
	"strings"
)

// OutOfRange says that a figure cannot be used: the id of what it is of, what was given, and
// the lowest and highest that are possible, all in Unit.
type OutOfRange struct {
	Quantity         string
	Given, Low, High float64
	Unit             string
}

func (e *OutOfRange) Error() string {
	s := fmt.Sprintf("%s %.4g %s: give %.4g to %.4g %s",
		e.Quantity, e.Given, e.Unit, e.Low, e.High, e.Unit)
	return strings.TrimSpace(strings.ReplaceAll(s, " : ", ": "))
}

// within is nil where low <= given <= high, but for the rounding of units, else an
// OutOfRange. NaN is out of range.
func within(quantity string, given, low, high float64, unit string) error {
	const rounding = 1e-12
	if given >= low-rounding*math.Abs(low) && given <= high+rounding*math.Abs(high) {
		return nil
	}
	return &OutOfRange{quantity, given, low, high, unit}
}

// share is within for a fraction, given in percent.
func share(quantity string, given, low, high float64) error {
	return within(quantity, given*100, low*100, high*100, "%")
}

// first is the first error there is.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
