package question

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// The day.
var (
	Temp = &Field{
		Name: "temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound},
		Part: PartDay, Begin: [2]string{"70 F", "20 C"},
	}
	Humidity = &Field{
		Name: "humidity", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Bounds: [2]*calc.Bound{&calc.HumidityBound},
		Part: PartDay, Begin: [2]string{"50%", "50%"},
	}
	Panel = &Field{
		Name: "panel", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound},
		Default: OfOther, Part: PartDay, Counts: func(q *calc.Request) float64 { return float64(q.Day.Panel) },
	}
	Altitude = &Field{
		Name: "altitude", Read: amount, Of: [2]*unit.Quantity{unit.Run}, Bounds: [2]*calc.Bound{&calc.AltitudeBound},
		Default: ShopOrOut, Part: PartDay, Step: [2][2]float64{{500, 100}}, Counts: func(q *calc.Request) float64 { return float64(q.Day.Altitude) },
	}
)

// Readings is what is read anew every day: one that is assumed makes the verdict no better
// than watch.
var Readings = []*Field{Temp, Humidity}

// weatherRows is what a plan asks of the day, in that order.
var weatherRows = []Row{{Field: Temp}, {Field: Humidity}, {Field: Panel}, {Field: Altitude}}

// weather resolves the day; the panel is as warm as the air where it was not answered.
func (v *resolver) weather(d *calc.Day) {
	d.Air = si[unit.Temp](v, Temp)
	d.Humidity = si[float64](v, Humidity)
	d.Panel = or(v, Panel, d.Air)
	d.Altitude = or(v, Altitude, unit.Length(0))
	for _, f := range Readings {
		x, _ := v.a.One(f)
		d.Assumed = d.Assumed || x.Assumed
	}
}
