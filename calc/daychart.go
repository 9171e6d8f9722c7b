package calc

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// DayLimits is the relative humidities, 0 to 1, from which on a coat waits and from which
// on it must not be sprayed; Wait is 0 where no air of that temperature will do, and
// either is 1 where only saturated air would be too much.
type DayLimits struct{ Wait, Stop float64 }

// HumidityStep is how finely the limits are found: half of what a hygrometer shows.
const HumidityStep = 0.005

// Limits is what the request comes to in air of another temperature, 0 to 60 C, with
// panel and paint as far from it as they are from today's. The panel's limit is where it
// stands LeastPanelMargin above the dew point.
func (r *DayRequest) Limits(at unit.Temp) (l DayLimits) {
	by := at - r.Air
	s := conditions{r.Day, r.Paint + by}
	s.Air, s.Panel = at, r.Panel+by
	clear := func(humidity float64) bool {
		s.Humidity = humidity
		return r.clear(s)
	}
	l.Stop = min(air.Reheated(s.Panel-unit.Temp(LeastPanelMargin), 1, at), 1)
	low, high := HumidityStep, l.Stop
	switch {
	case !clear(low):
		return l
	case clear(high):
		l.Wait = l.Stop
		return l
	}
	for high-low > HumidityStep {
		if mid := (low + high) / 2; clear(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	l.Wait = high
	return l
}
