package supply

import "fmt"

// InputError is an answer that cannot be worked with: which one, and what would do.
type InputError struct{ Field, Why string }

func (e *InputError) Error() string { return e.Field + ": " + e.Why }

// within is nil where v lies in low to high, all three in the unit named. NaN lies nowhere.
func within(field string, v, low, high float64, unit string) error {
	if v >= low && v <= high {
		return nil
	}
	return &InputError{field, fmt.Sprintf("%.4g %s is outside %.4g to %.4g %s", v, unit, low, high, unit)}
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
