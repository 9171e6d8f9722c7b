package calc

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// designAir is the air that products are made for, at its warm end: paint makers print
// 20 to 25 C.
const designAir = unit.Temp(25 + unit.ZeroCelsius)

// spare goes on top of a temperature that is to be reached, so that it still does once
// it is printed to a whole degree Fahrenheit.
const spare = unit.Temp(0.3)

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

// remedy finds the one thing that clears the conditions of all that makes them wait or stop,
// or, where nothing does, go; also with an instrument off by its error. The least trouble
// comes first: panel or paint, then the air, then waiting for better air.
func (o *outlook) remedy(now conditions, level Verdict) (m DayRemedy) {
	drier := dryWatch
	if level >= VerdictWait {
		drier = dryWait
	}
	off := o.r.error()
	cold, hot := coldBench+off.temp+spare, hottest-off.temp-spare
	dew := max(air.DewPoint(now.Air, now.Humidity)+off.temp, air.DewPoint(now.Air, min(now.Humidity+off.humidity, 1)))
	panelTo, paintTo := max(cold, dew+unit.Temp(LeastPanelMargin)+spare), max(cold, dew+spare)
	s := now
	try := func(id string, from, to unit.Temp, then conditions) bool {
		if !o.fit(then, drier) {
			return false
		}
		s, m.ID, m.To, m.By = then, id, to, unit.TempDiff(max(to-from, from-to))
		return true
	}
	panel, paint, both, cooled := now, now, now, now
	panel.Panel = max(now.Panel, panelTo)
	paint.paint = max(now.paint, paintTo)
	both.Panel, both.paint = max(now.Panel, panelTo), max(now.paint, panelTo)
	cooled.Panel = min(now.Panel, hot)
	switch {
	case try("turn-warm-panel", now.Panel, panelTo, panel):
	case try("turn-warm-paint", now.paint, paintTo, paint):
	case try("turn-warm-both", min(now.Panel, now.paint), panelTo, both):
	case try("turn-cool-panel", now.Panel, hot, cooled):
	default:
		if least := o.nearest(now, hot-spare, drier, conditions.reheated); now.Air < hot-spare && least > 0 {
			m.Least = least + spare
			to := max(m.Least, designAir)
			if !try("turn-warm-air", now.Air, to, now.reheated(to)) {
				try("turn-warm-air", now.Air, m.Least, now.reheated(m.Least))
			}
		} else if most := o.nearest(now, cold+spare, drier, conditions.cooled); now.Air > cold+spare && most > 0 {
			try("turn-cool-air", now.Air, most-spare, now.cooled(most-spare))
		}
	}
	if m.ID == "" {
		return o.wait(now, drier)
	}
	m.Humidity = s.Humidity
	m.lift(o.r, s, now.Day)
	return m
}

// lift is what the remedy does to how the coat dries.
func (m *DayRemedy) lift(r *DayRequest, s conditions, now Day) {
	drive, err := r.drying(s.Day)
	if err != nil {
		return // cannot be: the conditions lie between ones that were worked
	}
	m.Drying, m.Waterborne = drive, r.Coat.Waterborne
	if was, err := r.drying(now); err == nil && was > 0 {
		m.Lift = drive / was
	}
}

// How finely the nearest air that is fit is looked for: in steps of the way to the farthest,
// then the step halved so often.
const (
	remedySteps    = 8
	remedyHalvings = 9
)

// nearest is the temperature on the way from today's air to end at which the air made so is
// fit, and is so a printed degree farther on; 0 where there is none.
func (o *outlook) nearest(now conditions, end unit.Temp, drier float64, made func(conditions, unit.Temp) conditions) unit.Temp {
	on := spare
	if end < now.Air {
		on = -spare
	}
	fit := func(t unit.Temp) bool { return o.fit(made(now, t), drier) && o.fit(made(now, t+2*on), drier) }
	unfit, step := now.Air, (end-now.Air)/remedySteps
	for range remedySteps {
		t := unfit + step
		if !fit(t) {
			unfit = t
			continue
		}
		for range remedyHalvings {
			if mid := (unfit + t) / 2; fit(mid) {
				t = mid
			} else {
				unfit = mid
			}
		}
		return t
	}
	return 0
}

// wait is for air that nothing in the booth mends: how dry it would have to be, with
// panel and paint as warm as it.
func (o *outlook) wait(now conditions, drier float64) (m DayRemedy) {
	off := o.r.error()
	m.ID = "turn-drier"
	if now.Air > designAir {
		m.ID = "turn-cooler-drier"
	}
	m.To = min(max(now.Air, coldBench+off.temp+spare), designAir)
	m.By = unit.TempDiff(max(m.To-now.Air, now.Air-m.To))
	s := conditions{Day{Air: m.To, Panel: m.To, Altitude: now.Altitude}, m.To}
	fit := func(humidity float64) bool {
		s.Humidity = humidity
		return o.fit(s, drier)
	}
	const step = 0.05
	low := dampest - step
	for low > step && !fit(low) {
		low -= step
	}
	for high := low + step; high-low > HumidityStep; {
		if mid := (low + high) / 2; fit(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	m.Humidity, s.Humidity = low, low
	m.lift(o.r, s, now.Day)
	m.Lift = 0 // it is other air
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

// On is a day with the remedy done: what it warms, cools or waits for is there.
func (m *DayRemedy) On(d Day) Day {
	switch m.ID {
	case "":
	case "turn-warm-panel", "turn-warm-both", "turn-cool-panel":
		d.Panel = m.To
	case "turn-warm-paint":
	case "turn-warm-air":
		d.Air, d.Humidity, d.Panel = m.To, m.Humidity, max(d.Panel, m.To)
	case "turn-cool-air":
		d.Air, d.Humidity, d.Panel = m.To, m.Humidity, min(d.Panel, m.To)
	default: // other air is waited for
		d.Air, d.Humidity, d.Panel = m.To, m.Humidity, m.To
	}
	return d
}
