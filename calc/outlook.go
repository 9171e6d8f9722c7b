package calc

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// outlook is what a day does to a coat, worked out on that day and on others: what speaks
// against spraying, and what would turn it.
type outlook struct {
	r        *DayRequest
	flight   evaporation
	inFlight *InFlight // on the request's own day
}

// conditions is what a coat is sprayed in.
type conditions struct {
	Day
	paint unit.Temp
}

// reheated is the conditions with the air brought to t, no water added or taken, and panel
// and paint with it where they were colder.
func (c conditions) reheated(t unit.Temp) conditions {
	c.Humidity = air.Reheated(c.Air, c.Humidity, t)
	c.Air, c.Panel, c.paint = t, max(c.Panel, t), max(c.paint, t)
	return c
}

// cooled is the conditions with the air brought down to t, and panel and paint with it.
func (c conditions) cooled(t unit.Temp) conditions {
	cold := c.reheated(t)
	cold.Panel, cold.paint = min(cold.Panel, t), min(cold.paint, t)
	return cold
}

// Instruments is how far what the day is read off may be off, as two standard deviations.
type Instruments struct{ Thermometer, Hygrometer Tolerance }

// offBy is how far each is taken to be off.
type offBy struct {
	temp     unit.Temp
	humidity float64
}

func (r *DayRequest) error() offBy {
	return offBy{unit.Temp(r.Instruments.Thermometer.Within), r.Instruments.Hygrometer.Within}
}

// hindrances are what speaks against spraying on a day, but for how the coat lands.
type hindrances struct {
	nearDew, damp                 bool // panel; air
	coldAir, coldPanel, coldPaint bool
	hotAir, hotPanel              bool
	wetPaint, slow                bool
}

// hindered is what speaks against spraying in some conditions, with one thermometer or the
// hygrometer off so far, to the side that is worse.
func (o *outlook) hindered(s conditions, off offBy) hindrances {
	cold, hot := coldBench+off.temp, hottest-off.temp
	damper := min(s.Humidity+off.humidity, 1)
	dew := air.DewPoint(s.Air, s.Humidity) + off.temp
	if off.humidity > 0 {
		dew = max(dew, air.DewPoint(s.Air, damper))
	}
	return hindrances{
		nearDew: unit.TempDiff(s.Panel-dew) < LeastPanelMargin, damp: damper >= dampest,
		coldAir: s.Air < cold, coldPanel: s.Panel < cold, coldPaint: s.paint < cold,
		hotAir: s.Air > hot, hotPanel: s.Panel > hot,
		wetPaint: s.paint < dew, slow: o.r.Coat.Waterborne && o.slow(s.Day, off, damper),
	}
}

// slow reports whether the air dries a waterborne coat too slowly.
func (o *outlook) slow(d Day, off offBy, damper float64) bool {
	below := func(d Day) bool {
		drive, err := o.r.drying(d)
		return err != nil || drive < slowest
	}
	damp, cold := d, d
	damp.Humidity = damper
	cold.Air -= off.temp
	return below(damp) || off.temp > 0 && below(cold)
}

// fit reports whether nothing hinders in some conditions, not with an instrument off either,
// and the coat lands less than so many times as dry as on the reference day.
func (o *outlook) fit(s conditions, drier float64) bool {
	return o.hindered(s, o.r.error()) == hindrances{} && o.flight.drierOn(o.inFlight, s.Day) < drier
}
