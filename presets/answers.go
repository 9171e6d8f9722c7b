package presets

import (
	"fmt"
	"strings"
)

// Answers is what a person typed or chose, field by field; an empty field takes the
// shop's usual. The json names are those of a request line.
type Answers struct {
	Coat        Typed   `json:"coat"`
	Gun         Typed   `json:"gun"`
	Temp        Typed   `json:"temp"`
	Humidity    Typed   `json:"humidity"`
	Panel       Typed   `json:"panel,omitempty"`
	Altitude    Typed   `json:"altitude,omitempty"`
	Supply      Typed   `json:"supply"`
	Hose        []Typed `json:"hose,omitempty"` // each "25ft,3/8in"; a whip hose follows the main one
	Coupling    Typed   `json:"coupling,omitempty"`
	Filter      Typed   `json:"filter,omitempty"`
	Regulator   Typed   `json:"regulator,omitempty"`
	RegulatorAt Typed   `json:"regulator_at,omitempty"`
	Gauge       Typed   `json:"gauge,omitempty"`
	Wall        Typed   `json:"wall,omitempty"` // as it stands now
	Mark        Typed   `json:"mark,omitempty"`
}

// Typed is a piece of an answer as typed. In JSON it may also be a bare number.
type Typed string

// UnmarshalJSON takes a string, a number or null.
func (t *Typed) UnmarshalJSON(b []byte) error {
	s := string(b)
	switch {
	case s == "null":
		return nil
	case strings.HasPrefix(s, `"`):
		v, err := unquote(b)
		*t = Typed(v)
		return err
	case s != "" && strings.Contains("-0123456789", s[:1]):
		*t = Typed(s)
		return nil
	}
	return fmt.Errorf("%s: give text or a number", s)
}

// The fields of Answers by the name that flags, requests and messages use.
const (
	FieldCoat        = "coat"
	FieldGun         = "gun"
	FieldTemp        = "temp"
	FieldHumidity    = "humidity"
	FieldPanel       = "panel"
	FieldAltitude    = "altitude"
	FieldSupply      = "supply"
	FieldHose        = "hose"
	FieldCoupling    = "coupling"
	FieldFilter      = "filter"
	FieldRegulator   = "regulator"
	FieldRegulatorAt = "regulator-at"
	FieldGauge       = "gauge"
	FieldWall        = "wall"
	FieldMark        = "mark"
	FieldUnits       = "units"
)

// FieldError is an answer that will not do: which, what was given, what would do.
type FieldError struct{ Field, Given, Want string }

func (e *FieldError) Error() string {
	if e.Given == "" {
		return e.Field + ": " + e.Want
	}
	return fmt.Sprintf("%s %q: %s", e.Field, e.Given, e.Want)
}
