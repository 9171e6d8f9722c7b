package supply

import (
	"time"

	"boothset/calc/unit"
)

// Series is whether panels sprayed one after another, with a pause between, find the air that
// the first had.
type Series struct {
	Fall     unit.Drop // of the receiver while a panel is sprayed
	Regained unit.Drop // in a pause; negative where the others draw more than is made
	Recovers bool      // a pause gives back what a panel took
	Held     int       // panels that the regulator has what it needs for, up to those asked for
	Enough   Span      // the pause that gives all of it back; Endless where none would
}

// MostPanels bounds a series.
const MostPanels = 100

// InSeries works out panels sprayed one after another, each for the time spray, with a pause
// after each in which the gun rests and the others go on. needed and the start are those of
// Check: the first panel finds the receiver at cut-in and the compressor running, which it
// does until cut-out. Errors are those of Check; panels from 1 to 100, a pause up to a day.
func InSeries(sys System, gun unit.Flow, needed unit.Gauge, spray, pause time.Duration, panels int) (s Series, err error) {
	v, err := Check(sys, gun, needed, spray)
	if err == nil {
		err = firstOf(
			within(FieldPause, pause.Minutes(), 0, MaxSpan.Minutes(), "min"),
			within(FieldPanels, float64(panels), 1, MostPanels, "panels"),
		)
	}
	if err != nil {
		return s, err
	}
	others := v.Demand.Mean - gun
	moved := func(net unit.Flow, t time.Duration) unit.Drop {
		return unit.Drop(float64(net) * t.Seconds() / sys.Receiver.capacity())
	}
	s.Fall = max(0, moved(v.Demand.Mean-v.Delivered, spray))
	s.Regained = moved(v.Delivered-others, pause)
	const rounding = 1 // Pa
	s.Recovers = s.Fall == 0 || s.Regained >= s.Fall-rounding
	s.Enough = sys.Receiver.PumpUp(s.Fall, v.Delivered, others)
	ambient := sys.Inlet.Ambient
	floor := sys.Main.inletFor(v.Demand.Peak, needed.Abs(ambient)).Gauge(ambient)
	for at := sys.CutIn; s.Held < panels; s.Held++ {
		end := at - unit.Gauge(s.Fall)
		if min(at, end) < floor-rounding {
			break
		}
		at = min(sys.CutOut, end+unit.Gauge(s.Regained))
	}
	return s, nil
}
