package calc

import (
	"math"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// perturbed is a request with everything off by a little, and the job that works it. One
// perturbed serves all draws: reset brings it back to the request.
type perturbed struct {
	base *Request
	r    Request
	line [MostParts]line.Part
	job  job
	here line.Flowing // the line downstream of the set pressure at the job's flow

	ambient unit.Abs
	drift   drift
	flowing unit.Gauge // as advised
	rounded unit.Drop  // reserve and rounding to a mark, as advised

	stamp       gun.Stamp
	wallOff     unit.Drop // the wall gauge reads this much too high
	gunOff      unit.Drop // so does the gun's
	airOff      unit.TempDiff
	humidityOff float64
}

// outcome is what a perturbed request comes to.
type outcome struct {
	wall     float64 // Pa gauge, flowing, as the wall's gauge reads it
	static   float64 // the same with no air moving
	opening  float64 // needed with the wall's gauge at what was advised
	distance float64 // m
}

// factor is a relative deviation as a factor that can never reach 0.
func factor(off float64) float64 { return math.Exp(off) }

func newPerturbed(r *Request, s *Setup) *perturbed {
	t := &perturbed{base: r, r: *r, ambient: s.Weather.Ambient, drift: driftOf(r, &s.Weather), flowing: s.Wall.Flowing, rounded: s.Valve.Reserve}
	t.r.Line = t.line[:len(r.Line)]
	// The highest pressure is what the painter was given, whatever the gun really takes.
	t.r.Gun.CapLimit = 0
	t.r.Coat.Working.High = min(r.Coat.Working.High, s.Working.Highest)
	return t
}

func (t *perturbed) reset() {
	copy(t.line[:], t.base.Line)
	t.r.Gun.Valve.Full = t.base.Gun.Valve.Full
	t.r.Regulator = t.base.Regulator
	t.stamp = t.base.Gun.Stamp
	t.wallOff, t.gunOff, t.airOff, t.humidityOff = 0, 0, 0, 0
}

func (t *perturbed) scaleParts(k line.Kind, off float64) {
	f := unit.Conductance(factor(off))
	for i := range t.r.Line {
		if p := &t.r.Line[i]; p.Kind == k {
			p.Restriction.C *= f
		}
	}
}

// scaleBores widens the hoses; their end fittings grow with them.
func (t *perturbed) scaleBores(off float64) {
	f := factor(off)
	for i := range t.r.Line {
		if p := &t.r.Line[i]; p.Kind == line.HoseKind {
			p.Hose.Bore *= unit.Length(f)
			p.Hose.End.C *= unit.Conductance(f * f)
		}
	}
}

func (t *perturbed) scaleEnds(off float64) {
	f := factor(off)
	for i := range t.r.Line {
		if p := &t.r.Line[i]; p.Kind == line.HoseKind {
			p.Hose.End.C *= unit.Conductance(f)
		}
	}
}

// scaleCap moves the stamped cap pressure, which stays below the inlet's.
func (t *perturbed) scaleCap(off float64) {
	t.stamp.Cap = min(t.stamp.Cap*unit.Gauge(factor(off)), 0.95*t.stamp.Inlet)
}

// run works the request.
func (t *perturbed) run() outcome {
	r := &t.r
	r.Gun.Fix(t.stamp)
	j := &t.job
	*j = job{r: r, air: line.NewAir(t.ambient, r.Day.Air+unit.Temp(t.airOff))}
	j.pressure(t.drift.correction(t.airOff, t.humidityOff))
	j.solveFor(j.target - unit.Gauge(t.gunOff))
	t.here.Fix(j.after(), j.flow, j.air)
	into, _ := r.Gun.Valve.Full.Upstream(j.flow, j.working, j.air)
	j.open = t.here.Upstream(into)
	wall := j.open.Gauge(t.ambient) + unit.Gauge(t.rounded)
	j.setAt(t.flowing - unit.Gauge(t.wallOff))
	jet := gun.JetOf(j.flow, j.cap, j.air)
	return outcome{
		wall:     float64(wall) + float64(t.wallOff),
		static:   float64(r.Regulator.Set(wall, j.flow)) + float64(t.wallOff),
		opening:  t.opening(),
		distance: float64(distance(r, jet).Target),
	}
}

// opening is how far the valve must be open at the set pressure taken.
func (t *perturbed) opening() float64 {
	j := &t.job
	into, _ := t.here.Downstream(j.set)
	x, _, _ := j.r.Gun.Valve.OpeningFor(j.flow, into, j.working, j.air)
	return x
}

// drift is how the evaporation in flight moves with the instruments that read the day: its
// logarithm is nearly straight over a degree or a few percent.
type drift struct {
	inFlight               *InFlight
	perKelvin, perHumidity float64
}

func driftOf(r *Request, w *Weather) drift {
	d := drift{inFlight: &w.InFlight}
	e := newEvaporation(r, w.Ambient)
	at := func(dt unit.Temp, dh float64) float64 {
		day := r.Day
		day.Air += dt
		day.Humidity = math.Min(math.Max(day.Humidity+dh, 0.01), 1)
		lost, _, err := e.loss(flightCase{pressure: r.Coat.Working.Start, day: day})
		if err != nil || lost <= 0 {
			return 0
		}
		return math.Log(lost)
	}
	const dt, dh = 0.5, 0.01
	d.perKelvin = (at(dt, 0) - at(-dt, 0)) / (2 * dt)
	d.perHumidity = (at(0, dh) - at(0, -dh)) / (2 * dh)
	return d
}

func (d drift) correction(dt unit.TempDiff, dh float64) unit.Drop {
	return d.inFlight.correction(d.inFlight.changes + d.perKelvin*float64(dt) + d.perHumidity*dh)
}
