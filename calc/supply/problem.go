package supply

import "fmt"

// InputError is an answer that cannot be worked with: which one, the sentence that says
// why, what was given and the bounds, all in Unit.
type InputError struct {
	Field, ID        string
	Given, Low, High float64
	Unit             string
}

func (e *InputError) Error() string {
	return fmt.Sprintf("%s %.4g %s: %s %.4g to %.4g", e.Field, e.Given, e.Unit, e.ID, e.Low, e.High)
}

// within is nil where v lies in low to high, all three in the unit named. NaN lies nowhere.
func within(field string, v, low, high float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	return &InputError{field, "outside-unit", v, low, high, unit}
}

// firstOf is the first error there is, or nil.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// clamp brings v into low to high; an infinity ends at the nearer bound.
func clamp(v, low, high float64) float64 { return min(max(v, low), high) }
