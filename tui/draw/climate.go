package draw

// Region is what a day is good for.
type Region uint8

// The regions. Nowhere is left blank.
const (
	Nowhere Region = iota
	Go
	Wait
	Stop
)

// Day is a point of the climate with its text.
type Day struct {
	Temperature, Humidity float64
	Text                  string
}

// Climate is a chart of days: temperature across, relative humidity up, in the display
// units of the scales. Each region has a shade, a letter and a word.
//
//	draw.Climate{Temperature: t, Humidity: rh, At: region, Dew: dew, Today: draw.Day{75, 45, "today"}, Go: "Go", Wait: "Wait", Stop: "Stop"}
type Climate struct {
	Temperature, Humidity Scale
	At                    func(temperature, humidity float64) Region // asked once a cell
	Dew                   func(temperature float64) float64          // the humidity of the line at a temperature; NaN where it has none
	DewText               string                                     // names that line; without it none is drawn
	Today, Ghost          Day                                        // ghost: the day before a change
	Go, Wait, Stop        string                                     // words; their first letters stand in the regions
}

// Rows draws the chart. It needs 30 columns and 8 rows.
func (c Climate) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
