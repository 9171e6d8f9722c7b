package supply

import "fmt"

// What an InputError can be about: the ids of its Field.
const (
	FieldAllAir           = "all-air"
	FieldCutIn            = "cut-in"
	FieldCutOut           = "cut-out"
	FieldDryerDewPoint    = "dryer-dew-point"
	FieldDryerPressure    = "dryer-pressure"
	FieldFall             = "fall"
	FieldFreeAir          = "free-air"
	FieldGunAir           = "gun-air"
	FieldHoseTemp         = "hose-temperature"
	FieldHumidity         = "humidity"
	FieldInlet            = "inlet"
	FieldMain             = "main"
	FieldMainBore         = "main-bore"
	FieldMainFlow         = "main-flow"
	FieldMainInlet        = "main-inlet"
	FieldMainLength       = "main-length"
	FieldMainTemp         = "main-temperature"
	FieldNeeded           = "pressure-needed"
	FieldPanels           = "panels"
	FieldPause            = "pause"
	FieldPower            = "power"
	FieldPumpUp           = "pump-up-time"
	FieldRatedInlet       = "rated-inlet"
	FieldReceiver         = "receiver"
	FieldReceiverPressure = "receiver-pressure"
	FieldReceiverTemp     = "receiver-temperature"
	FieldRise             = "rise"
	FieldSprayingPressure = "spraying-pressure"
	FieldSprayingTime     = "spraying-time"
	FieldUserAir          = "user-air"
	FieldUserDuty         = "user-duty"
)

// InputError is an answer that cannot be worked with: the id of which one, the sentence
// that says why, what was given and the bounds, all in Unit.
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
