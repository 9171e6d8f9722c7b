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
		return w.appendCounted(dst, "time-s", seconds)
	case seconds < 2*hour:
		return w.appendCounted(dst, "time-min", seconds/60)
	case seconds < 10*hour:
		const step = 5
		n := int(math.Round(seconds/60/step)) * step
		dst = w.appendCounted(dst, "time-h", float64(n/60))
		if n%60 == 0 {
			return dst
		}
		return w.appendCounted(append(dst, ' '), "time-min", float64(n%60))
	case seconds < 2*day:
		return w.appendCounted(dst, "time-h", seconds/hour)
	}
	return w.appendCounted(dst, "time-days", seconds/day)
}

// appendCounted appends a sentence that says how many.
func (w *Words) appendCounted(dst []byte, id string, n float64) []byte {
	return w.Append(dst, unit.US, id, calc.Figures{{Name: "n", Kind: calc.FigureCount, Value: n}})
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
func CupText(seconds float64) string {
	step := 1.0
	if seconds < 30 {
		step = 10
	}
	return strconv.FormatFloat(math.Round(seconds*step)/step, 'f', -1, 64) + " s"
}

// AppendClock appends a time of day to the minute, by twelve hours in US units and by
// twenty-four in metric ones; "next day" follows where it is.
func (w *Words) AppendClock(dst []byte, sys unit.System, c calc.Clock) []byte {
	at := time.Time{}.Add(time.Duration(c).Round(time.Minute))
	format := "3:04 pm"
	if sys == unit.Metric {
		format = "15:04"
	}
	dst = at.AppendFormat(dst, format)
	switch days := at.YearDay() - 1; {
	case days == 1:
		dst = append(append(dst, ' '), w.Say("clock-next-day")...)
	case days > 1:
		dst = w.appendCounted(append(dst, ", "...), "clock-days-on", float64(days))
	}
	return dst
}
