package presets

import (
	"maps"
	"slices"
	"strings"

	"boothset/calc/unit"
	"boothset/presets/words"
)

// The systems of units as answers and the shop's file name them.
const (
	UnitsUS     = "us"
	UnitsMetric = "metric"
)

// System is the system of units: the shop's own, else the locale's, else US.
func (c *Catalogue) System() unit.System {
	switch units := c.entries.Line.Units; {
	case units == UnitsMetric, units == "" && c.locale.HasSystem && c.locale.System == unit.Metric:
		return unit.Metric
	}
	return unit.US
}

// Words is the sentences of the catalogue's language.
func (c *Catalogue) Words() *words.Words { return c.words }

// Usual is the shop's usual answer for a field, empty where it has none.
func (c *Catalogue) Usual(field string) string {
	l := &c.entries.Line
	switch field {
	case FieldHose:
		return strings.Join(l.Hose, " + ")
	case FieldCoupling:
		return l.Coupling
	case FieldFilter:
		return l.Filter
	case FieldRegulator:
		return l.Regulator
	case FieldRegulatorAt:
		return l.RegulatorAt
	case FieldGauge:
		return l.Gauge
	case FieldSupply:
		return l.Supply
	case FieldAltitude:
		return l.Altitude
	case FieldMark:
		return l.Mark
	case FieldCompressor:
		return l.Compressor
	case FieldReceiver:
		return l.Receiver
	case FieldCutIn:
		return l.CutIn
	case FieldCutOut:
		return l.CutOut
	case FieldMain:
		return l.Main
	case FieldOther:
		return strings.Join(l.Other, " + ")
	case FieldSprayTime:
		return l.SprayTime
	case FieldReceiverTemp:
		return l.ReceiverTemp
	case FieldLineTemp:
		return l.LineTemp
	}
	return ""
}

// Choices is what may be answered to a field that is chosen from a list, nil for one
// that is typed.
func (c *Catalogue) Choices(field string) []Item {
	switch field {
	case FieldCoat:
		return items(c, field, c.entries.Coat)
	case FieldGun:
		return items(c, field, c.entries.Gun)
	case FieldCoupling:
		return append(items(c, field, c.entries.Coupling), Item{ID: None, Name: c.words.Say("choice-no-coupling")})
	case FieldRegulator:
		return append(items(c, field, c.entries.Regulator), Item{ID: None, Name: c.words.Say("choice-no-regulator")})
	case FieldFilter:
		return append([]Item{{ID: None, Name: c.words.Say("choice-no-filter")}}, items(c, field, c.entries.Filter)...)
	case FieldRegulatorAt:
		return []Item{{ID: AtWall, Name: c.words.Say("choice-regulator-wall")}, {ID: AtGun, Name: c.words.Say("choice-regulator-foot")}}
	case FieldGauge:
		return []Item{{ID: InHandle, Name: c.words.Say("choice-gauge-handle")}, {ID: AtFoot, Name: c.words.Say("choice-gauge-foot")}, {ID: None, Name: c.words.Say("choice-gauge-none")}}
	}
	return nil
}

func items[E based](c *Catalogue, field string, t table[E]) []Item {
	list := make([]Item, 0, len(t)+1)
	for i := range t {
		o := t[i].e.base()
		list = append(list, Item{ID: t[i].id, Name: o.name(field, t[i].id, c.words), Standing: o.standing()})
	}
	return list
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

func texts[S ~string](list []S) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = string(s)
	}
	return out
}
