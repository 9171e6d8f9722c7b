package catalogue

import "boothset/calc/unit"

// A quantity in a file is text with its unit, read as it would be at the bench. Each keeps
// its value in a struct: a plain number type would take a bare TOML number, without a unit,
// as SI.
type (
	pressure    struct{ V unit.Gauge }
	length      struct{ V unit.Length }
	speed       struct{ V unit.Speed }
	flow        struct{ V unit.Flow }
	percent     struct{ V float64 }
	volume      struct{ V unit.Volume }
	density     struct{ V unit.Density }
	voc         struct{ V unit.Density }
	span        struct{ V unit.Seconds }
	minutes     struct{ V unit.Seconds }
	temperature struct{ V unit.Temp }
)

// Of what ships, the library reads each by itself; a shop's file is read by layTable, which
// says what is wrong.
func (q *pressure) UnmarshalText(b []byte) error    { return q.read(string(b)) }
func (q *length) UnmarshalText(b []byte) error      { return q.read(string(b)) }
func (q *speed) UnmarshalText(b []byte) error       { return q.read(string(b)) }
func (q *flow) UnmarshalText(b []byte) error        { return q.read(string(b)) }
func (q *percent) UnmarshalText(b []byte) error     { return q.read(string(b)) }
func (q *volume) UnmarshalText(b []byte) error      { return q.read(string(b)) }
func (q *density) UnmarshalText(b []byte) error     { return q.read(string(b)) }
func (q *voc) UnmarshalText(b []byte) error         { return q.read(string(b)) }
func (q *span) UnmarshalText(b []byte) error        { return q.read(string(b)) }
func (q *minutes) UnmarshalText(b []byte) error     { return q.read(string(b)) }
func (q *temperature) UnmarshalText(b []byte) error { return q.read(string(b)) }

func (q *pressure) read(s string) error    { return read(&q.V, unit.Pressure, s) }
func (q *length) read(s string) error      { return read(&q.V, unit.Distance, s) }
func (q *speed) read(s string) error       { return read(&q.V, unit.Velocity, s) }
func (q *flow) read(s string) error        { return read(&q.V, unit.AirFlow, s) }
func (q *volume) read(s string) error      { return read(&q.V, unit.Tank, s) }
func (q *density) read(s string) error     { return read(&q.V, unit.PaintDensity, s) }
func (q *voc) read(s string) error         { return read(&q.V, unit.VOC, s) }
func (q *span) read(s string) error        { return read(&q.V, unit.CupTime, s) }
func (q *minutes) read(s string) error     { return read(&q.V, unit.Minutes, s) }
func (q *temperature) read(s string) error { return read(&q.V, unit.Temperature, s) }

// read takes a bare number as well: a percentage needs no sign.
func (q *percent) read(s string) (err error) {
	q.V, err = unit.Parse[float64](unit.Share, s, unit.US)
	return err
}

func read[T ~float64](v *T, of *unit.Quantity, s string) (err error) {
	*v, err = unit.Parse[T](of, s, unit.Named)
	return err
}
