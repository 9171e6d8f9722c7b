package presets

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
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

	// The air behind the regulator; without a compressor it is not checked.
	Compressor   Typed   `json:"compressor,omitempty"` // free air, or power as "5hp"
	Receiver     Typed   `json:"receiver,omitempty"`
	CutIn        Typed   `json:"cut_in,omitempty"`
	CutOut       Typed   `json:"cut_out,omitempty"`
	Main         Typed   `json:"main,omitempty"`  // "100ft,3/4in"
	Other        []Typed `json:"other,omitempty"` // each "10cfm" or "10cfm,50%"
	SprayTime    Typed   `json:"spray_time,omitempty"`
	ReceiverTemp Typed   `json:"receiver_temp,omitempty"`
	LineTemp     Typed   `json:"line_temp,omitempty"`
}

// Typed is a piece of an answer as typed. In JSON it may also be a bare number.
type Typed string

// UnmarshalJSON takes a string, a number or null.
func (t *Typed) UnmarshalJSON(b []byte) error {
	switch s := string(b); s[0] {
	case 'n': // null
		return nil
	case '"':
		return json.Unmarshal(b, (*string)(t))
	case 't', 'f':
		return &json.UnmarshalTypeError{Value: "bool", Type: reflect.TypeFor[Typed]()}
	case '[':
		return &json.UnmarshalTypeError{Value: "array", Type: reflect.TypeFor[Typed]()}
	case '{':
		return &json.UnmarshalTypeError{Value: "object", Type: reflect.TypeFor[Typed]()}
	default:
		*t = Typed(s)
		return nil
	}
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

	FieldCompressor   = "compressor"
	FieldReceiver     = "receiver"
	FieldCutIn        = "cut-in"
	FieldCutOut       = "cut-out"
	FieldMain         = "main"
	FieldOther        = "other"
	FieldSprayTime    = "spray-time"
	FieldReceiverTemp = "receiver-temp"
	FieldLineTemp     = "line-temp"
)

// at is the field of answers with a name, nil for one that is a list and for names that
// are no field.
func (a *Answers) at(field string) *Typed {
	switch field {
	case FieldCoat:
		return &a.Coat
	case FieldGun:
		return &a.Gun
	case FieldTemp:
		return &a.Temp
	case FieldHumidity:
		return &a.Humidity
	case FieldPanel:
		return &a.Panel
	case FieldAltitude:
		return &a.Altitude
	case FieldSupply:
		return &a.Supply
	case FieldCoupling:
		return &a.Coupling
	case FieldFilter:
		return &a.Filter
	case FieldRegulator:
		return &a.Regulator
	case FieldRegulatorAt:
		return &a.RegulatorAt
	case FieldGauge:
		return &a.Gauge
	case FieldWall:
		return &a.Wall
	case FieldMark:
		return &a.Mark
	case FieldCompressor:
		return &a.Compressor
	case FieldReceiver:
		return &a.Receiver
	case FieldCutIn:
		return &a.CutIn
	case FieldCutOut:
		return &a.CutOut
	case FieldMain:
		return &a.Main
	case FieldSprayTime:
		return &a.SprayTime
	case FieldReceiverTemp:
		return &a.ReceiverTemp
	case FieldLineTemp:
		return &a.LineTemp
	}
	return nil
}

// list is the field of answers with a name that may hold several, nil for others.
func (a *Answers) list(field string) *[]Typed {
	switch field {
	case FieldHose:
		return &a.Hose
	case FieldOther:
		return &a.Other
	}
	return nil
}

// Set puts text into a field; in one that is a list "+" parts several.
func (a *Answers) Set(field, text string) {
	if list := a.list(field); list != nil {
		*list = parted(text)
	} else if to := a.at(field); to != nil {
		*to = Typed(text)
	}
}

// Add puts text into a field as one value: another one where the field is a list.
func (a *Answers) Add(field, text string) {
	if list := a.list(field); list != nil {
		*list = append(*list, Typed(text))
	} else if to := a.at(field); to != nil {
		*to = Typed(text)
	}
}

// Field is the text of a field.
func (a *Answers) Field(field string) string {
	if list := a.list(field); list != nil {
		s := make([]string, len(*list))
		for i, h := range *list {
			s[i] = string(h)
		}
		return strings.Join(s, " + ")
	}
	if at := a.at(field); at != nil {
		return string(*at)
	}
	return ""
}

// Refused is an error of solving in words, where it is a problem of an answer: given is
// a field's text, sys the units it is told in. Another error stays as it is.
func (c *Catalogue) Refused(err error, sys unit.System, given func(field string) string) error {
	var p *calc.Problem
	if errors.As(err, &p) {
		return &FieldError{p.Field, given(p.Field), c.words.Text(sys, p.ID, p.Figures)}
	}
	return err
}

// FieldError is an answer that will not do: which, what was given, what would do.
type FieldError struct{ Field, Given, Want string }

func (e *FieldError) Error() string {
	if e.Given == "" {
		return e.Field + ": " + e.Want
	}
	return fmt.Sprintf("%s %q: %s", e.Field, e.Given, e.Want)
}
