package calc

import (
	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// DayLimits is where on the scale of relative humidity, 0 to 1, a day of some temperature
// changes its verdict.
type DayLimits struct {
	// Watch, Wait and Stop are where it grows too damp, each at most the next: at 0 no air
	// is drier, at 1 only saturated air would be damper.
	Watch, Wait, Stop float64
	// DryWait and DryWatch are below which a coat lands too dry; 0 where it never does, 1
	// where it always does.
	DryWait, DryWatch float64
	// Dew is where the panel stands LeastPanelMargin above the dew point.
	Dew float64
}

// HumidityStep is how finely the limits are found: half of what a hygrometer shows.
const HumidityStep = 0.005

// At is the verdict of the day at a humidity.
func (l *DayLimits) At(humidity float64) Verdict {
	switch {
	case humidity >= l.Stop:
		return VerdictStop
	case humidity >= l.Wait || humidity < l.DryWait:
		return VerdictWait
	case humidity >= l.Watch || humidity < l.DryWatch:
		return VerdictWatch
	}
	return VerdictGo
}

// Chart is a day beside others as the chart of days has them.
type Chart struct{ o outlook }

// NewChart is the chart of a request.
func NewChart(r *DayRequest) *Chart {
	c := &Chart{outlook{r: r, flight: newEvaporation(&r.Coat, &r.Gun, r.Day, air.AtAltitude(r.Altitude))}}
	landing := c.o.flight.atStart()
	c.o.inFlight = &landing
	return c
}

// Limits is what the request comes to in air of another temperature, 0 to 60 C, with
// panel and paint as far from it as they are from today's.
func (c *Chart) Limits(at unit.Temp) (l DayLimits) {
	r, off := c.o.r, c.o.r.error()
	s := conditions{r.Day, r.Paint + at - r.Air}
	s.Air, s.Panel = at, r.Panel+at-r.Air
	dew := func(t unit.Temp) float64 { return air.Reheated(t, 1, at) } // the humidity whose dew point is t
	floor := s.Panel - unit.Temp(LeastPanelMargin)
	l.Dew = dew(floor)
	wet := dew(s.paint)
	slow, slowCold := c.slowFrom(s.Day), c.slowFrom(s.Day)
	if off.temp > 0 {
		cold := s.Day
		cold.Air -= off.temp
		slowCold = c.slowFrom(cold)
	}
	l.Stop = min(l.Dew, dampest)
	l.Wait = min(l.Stop, wet, slow)
	l.Watch = max(min(l.Wait, dew(floor-off.temp), dew(s.paint-off.temp), slowCold, l.Dew-off.humidity, dampest-off.humidity, wet-off.humidity, slow-off.humidity), 0)
	if s.outside(offBy{}) {
		l.Wait = 0
	}
	if s.outside(off) {
		l.Watch = 0
	}
	l.DryWait, l.DryWatch = c.dryBelow(s.Day, dryWait), c.dryBelow(s.Day, dryWatch)
	return l
}

// outside reports whether anything is too cold or too hot, with a thermometer off by so much.
func (c conditions) outside(off offBy) bool {
	return min(c.Air, c.Panel, c.paint) < coldBench+off.temp || max(c.Air, c.Panel) > hottest-off.temp
}

// slowFrom is the humidity from which on a waterborne coat dries too slowly.
func (c *Chart) slowFrom(d Day) float64 {
	if !c.o.r.Coat.Waterborne {
		return 1
	}
	return line.FalsePosition(func(humidity float64) float64 {
		d.Humidity = humidity
		drive, _ := c.o.r.drying(d)
		return slowest - drive
	}, HumidityBound.Low, HumidityBound.High, HumidityStep)
}

// dryBelow is the humidity below which the coat lands so many times as dry or more.
func (c *Chart) dryBelow(d Day, drier float64) float64 {
	h := line.FalsePosition(func(humidity float64) float64 {
		d.Humidity = humidity
		return drier - c.o.flight.drierOn(c.o.inFlight, d)
	}, HumidityBound.Low, HumidityBound.High, HumidityStep)
	if h <= HumidityBound.Low {
		return 0
	}
	return h
}
