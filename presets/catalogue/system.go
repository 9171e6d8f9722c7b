package catalogue

import (
	"strings"

	"boothset/calc/unit"
)

// The systems of units as answers and files name them.
const (
	UnitsUS     = "us"
	UnitsMetric = "metric"
)

// UnitsKey is the key of the shop's units in its file.
const UnitsKey = "units"

var systemNames = [...]string{unit.US: UnitsUS, unit.Metric: UnitsMetric}

// SystemNames is the name of every system.
func SystemNames() []string { return append([]string(nil), systemNames[:]...) }

// SystemName is a system by its name.
func SystemName(sys unit.System) string { return systemNames[sys] }

// SystemOf is the system of a name, in any case of letters; false where there is none.
func SystemOf(name string) (unit.System, bool) {
	for sys, n := range systemNames {
		if strings.EqualFold(n, name) {
			return unit.System(sys), true
		}
	}
	return unit.US, false
}

// System is the system of units: the shop's own, else the locale's, else US.
func (c *Catalogue) System() unit.System {
	name, _ := c.line[UnitsKey].(string)
	if sys, ok := SystemOf(name); ok {
		return sys
	}
	if name == "" && c.locale.HasSystem {
		return c.locale.System
	}
	return unit.US
}
