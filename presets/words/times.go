package words

import (
	"math"
	"strconv"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// appendMinutes prints a time of so many seconds as people say it: in s, min, h and min,
// h or days.
func (w *Words) appendMinutes(dst []byte, seconds float64) []byte {
	const hour, day = 3600.0, 24 * 3600.0
	switch {
	case seconds < 100:
		return w.appendCount(dst, "time-s", seconds)
	case seconds < 2*hour:
		return w.appendCount(dst, "time-min", seconds/60)
	case seconds < 10*hour:
		const step = 5
		n := int(math.Round(seconds/60/step)) * step
		if n%60 == 0 {
			return w.appendCount(dst, "time-h", float64(n/60))
		}
		return w.Append(dst, unit.US, "time-h-min", calc.Figures{countOf("h", float64(n/60)), countOf("min", float64(n%60))})
	case seconds < 2*day:
		return w.appendCount(dst, "time-h", seconds/hour)
	}
	return w.appendCount(dst, "time-days", seconds/day)
}

func countOf(name string, n float64) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureCount, Value: n}
}

// appendCount appends a sentence whose one figure is n, a count.
func (w *Words) appendCount(dst []byte, id string, n float64) []byte {
	return w.Append(dst, unit.US, id, calc.Figures{countOf("n", n)})
}

// Minutes is a time as people say it.
func (w *Words) Minutes(d time.Duration) string {
	return string(w.appendMinutes(nil, d.Seconds()))
}

// TimesText is a rough ratio to two digits: "0.23", "4.3", "18".
func TimesText(v float64) string {
	if v >= 9.95 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 2, 64)
}

// CupText is the seconds of an efflux cup as "18 s" or "16.5 s": to a tenth where they
// are few.
func CupText(seconds float64) string { return CupNumber(seconds) + " s" }

// CupNumber is CupText without the unit.
func CupNumber(seconds float64) string {
	step := 1.0
	if seconds < 30 {
		step = 10
	}
	return strconv.FormatFloat(math.Round(seconds*step)/step, 'f', -1, 64)
}

// AppendClock appends a time of day to the minute, by twelve hours in US units and by
// twenty-four in metric ones, and the day where it is a later one.
func (w *Words) AppendClock(dst []byte, sys unit.System, c calc.Clock) []byte {
	at := time.Time{}.Add(time.Duration(c).Round(time.Minute))
	clock := calc.TextFigure("clock", w.timeOfDay(sys, at))
	switch days := at.YearDay() - 1; {
	case days == 1:
		return w.Append(dst, sys, "clock-next-day", calc.Figures{clock})
	case days > 1:
		return w.Append(dst, sys, "clock-days-on", calc.Figures{clock, countOf("n", float64(days))})
	}
	return append(dst, clock.Text...)
}

// timeOfDay is a time without its day.
func (w *Words) timeOfDay(sys unit.System, at time.Time) string {
	if sys == unit.Metric {
		return at.Format("15:04")
	}
	id := "clock-am"
	if at.Hour() >= 12 {
		id = "clock-pm"
	}
	return w.Text(sys, id, calc.Figures{calc.TextFigure("time", at.Format("3:04"))})
}
