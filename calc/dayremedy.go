package calc

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// When a day is not for spraying. dampest is published in guides to coating inspection;
// hottest and slowest are judgement; coldBench and LeastPanelMargin have their
// sources beside them elsewhere.
const (
	dampest = 0.85
	hottest = unit.Temp(35 + unit.ZeroCelsius)
	// slowest is the drying of a waterborne coat, relative to the reference day, below
	// which it is not worth starting.
	slowest = 0.4
)

// designAir is the air that products are made for, at its warm end: paint makers print
// 20 to 25 C.
const designAir = unit.Temp(25 + unit.ZeroCelsius)

// spare goes on top of a temperature that is to be reached, so that it still does once
// it is printed to a whole degree Fahrenheit.
const spare = unit.Temp(0.3)

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
	cold.Panel, cold.paint = min(c.Panel, t), min(c.paint, t)
	return cold
}

// hindrances are what speaks against spraying.
type hindrances struct {
	nearDew                       bool // panel
	coldAir, coldPanel, coldPaint bool
	hotAir, hotPanel              bool
	wetPaint, damp, slow          bool
}

func (r *DayRequest) hindered(s conditions) hindrances {
	dew := air.DewPoint(s.Air, s.Humidity)
	drive, err := r.drying(s.Day)
	return hindrances{
		nearDew: unit.TempDiff(s.Panel-dew) < LeastPanelMargin,
		coldAir: s.Air < coldBench, coldPanel: s.Panel < coldBench, coldPaint: s.paint < coldBench,
		hotAir: s.Air > hottest, hotPanel: s.Panel > hottest,
		wetPaint: s.paint < dew, damp: s.Humidity >= dampest,
		slow: r.Waterborne && (err != nil || drive < slowest),
	}
}

func (r *DayRequest) clear(s conditions) bool { return r.hindered(s) == hindrances{} }

// DayRemedy is the one thing that makes a day fit for spraying, with what it brings.
type DayRemedy struct {
	ID string        // empty on a day that goes
	To unit.Temp     // what is warmed or cooled comes to this
	By unit.TempDiff // from where it is, never negative
	// Least is from where on warmer air will do; 0 where not the air is warmed.
	Least    unit.Temp
	Humidity float64 // the air's after it, or, for drier air, the most it may have
	Drying   float64 // relative to the reference day, after it
	Lift     float64 // Drying over what it was; 0 where it was none
	// Waterborne tells of the coat that the air is to dry it.
	Waterborne bool
}

// remedy finds the one thing that clears the conditions of all that hinders, the least trouble
// first: panel or paint, then the air, then waiting for better air.
func (r *DayRequest) remedy(now conditions, drying float64) (m DayRemedy) {
	if r.clear(now) {
		return m
	}
	dew := air.DewPoint(now.Air, now.Humidity)
	panelTo := max(coldBench, dew+unit.Temp(LeastPanelMargin)) + spare
	paintTo := max(coldBench, dew) + spare
	s := now
	try := func(id string, from, to unit.Temp, then conditions) bool {
		if !r.clear(then) {
			return false
		}
		s, m.ID, m.To, m.By = then, id, to, unit.TempDiff(max(to-from, from-to))
		return true
	}
	panel, paint, both, cooled := now, now, now, now
	panel.Panel = max(now.Panel, panelTo)
	paint.paint = max(now.paint, paintTo)
	both.Panel, both.paint = max(now.Panel, panelTo), max(now.paint, panelTo)
	cooled.Panel = min(now.Panel, hottest-spare)
	switch {
	case try("turn-warm-panel", now.Panel, panelTo, panel):
	case try("turn-warm-paint", now.paint, paintTo, paint):
	case try("turn-warm-both", min(now.Panel, now.paint), panelTo, both):
	case try("turn-cool-panel", now.Panel, hottest-spare, cooled):
	case now.Air < hottest-2*spare && r.clear(now.reheated(hottest-2*spare)):
		m.Least = r.leastAir(now) + spare
		to := max(m.Least, designAir)
		try("turn-warm-air", now.Air, to, now.reheated(to))
	case now.Air > hottest && r.clear(now.cooled(hottest-2*spare)) && try("turn-cool-air", now.Air, hottest-spare, now.cooled(hottest-spare)):
	default:
		return r.wait(now)
	}
	m.Humidity = s.Humidity
	m.lift(r, s, drying)
	return m
}

func (m *DayRemedy) lift(r *DayRequest, s conditions, was float64) {
	drive, err := r.drying(s.Day)
	if err != nil {
		return // cannot be: the conditions lie between ones that were worked
	}
	m.Drying, m.Waterborne = drive, r.Waterborne
	if was > 0 {
		m.Lift = drive / was
	}
}

// leastAir is the coldest that the air can be made so that nothing hinders; it is at
// the warmest that is asked for.
func (r *DayRequest) leastAir(now conditions) unit.Temp {
	low, high := now.Air, hottest-2*spare
	for range 40 {
		if mid := (low + high) / 2; r.clear(now.reheated(mid)) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// wait is for air that nothing in the booth mends: how dry it would have to be, with
// panel and paint as warm as it.
func (r *DayRequest) wait(now conditions) (m DayRemedy) {
	id := "turn-drier"
	if now.Air > hottest {
		id = "turn-cooler-drier"
	}
	to := min(max(now.Air, coldBench+spare), hottest-spare)
	s := conditions{Day{Air: to, Panel: to, Altitude: now.Altitude}, to}
	low, high := 0.0, 1.0
	for range 40 {
		if s.Humidity = (low + high) / 2; r.clear(s) {
			low = s.Humidity
		} else {
			high = s.Humidity
		}
	}
	s.Humidity = low
	m = DayRemedy{ID: id, To: to, By: unit.TempDiff(max(to-now.Air, now.Air-to)), Humidity: low}
	m.lift(r, s, 0)
	return m
}

// Sentence is the id of the remedy's sentence, empty on a day that goes.
func (m *DayRemedy) Sentence() string {
	if m.ID == "turn-warm-air" && m.Waterborne && m.Lift > 0 {
		return "turn-warm-air-water"
	}
	return m.ID
}

// Figures is what the sentence of the remedy names.
func (m *DayRemedy) Figures() Figures {
	return Figures{temp("to", m.To), degrees("by", m.By), temp("least", m.Least), share("humidity", m.Humidity), times("drying", m.Drying), times("lift", m.Lift)}
}
