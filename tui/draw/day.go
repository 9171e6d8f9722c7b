package draw

import "math"

// Region is what a day is good for.
type Region uint8

// The regions. Nowhere is left blank.
const (
	Nowhere Region = iota
	Go
	Watch
	Wait
	Stop
)

// DayPoint is a point of the climate with its text.
type DayPoint struct {
	Temperature, Humidity float64
	Text                  string
}

// shown reports whether a day is drawn.
func (d DayPoint) shown() bool {
	return d.Text != "" && !math.IsNaN(d.Temperature) && !math.IsNaN(d.Humidity)
}
