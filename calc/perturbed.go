package calc

import (
	"math"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Perturbed works a solved request again with its values off by a little, each within its
// tolerance: what package spread draws from. One Perturbed works any number of deviations,
// one after another, and allocates nothing; two goroutines need one each.
type Perturbed struct {
	base  *Request
	sigma Deviations // of each tolerance, in its unit
	r     Request
	line  [MostParts]line.Part
	job   job
	// wall and sets are the places of the line's regulators.
	wall, sets int
	here       line.Flowing // the line downstream of the wall at the job's flow

	ambient unit.Abs
	weather weatherSlope
	flowing unit.Gauge // as advised
	rounded unit.Drop  // reserve and rounding to a mark, as advised

	stamp       gun.Stamp
	wallOff     unit.Drop // the wall gauge reads this much too high
	gunOff      unit.Drop // so does the gun's
	airOff      unit.TempDiff
	humidityOff float64
}

// Deviations is how many standard deviations each tolerance is off, in the order of
// ToleranceIDs. Values beyond some 6 are outside what the models were made for.
type Deviations [Dimensions]float64

// Outcome is what a perturbed request comes to.
type Outcome struct {
	Wall    unit.Gauge // flowing, as the wall's gauge reads it
	Static  unit.Gauge // the same with no air moving
	Opening float64    // needed with the wall's gauge at what was advised, 0..1
	// Distance is where the push is met, with what the coat is held farther, wherever the
	// class is held.
	Distance unit.Length
	Short    bool // the wall's gauge at what was advised does not give the target, the valve open
}

// Perturb is r ready to be worked with its values off, those of its line as it is described: what
// its readings say counts for nothing. s is r's setup, of a supply that is not short.
func Perturb(r *Request, s *Setup) *Perturbed {
	p := perturbed(r.AsDescribed())
	p.ambient, p.weather, p.flowing, p.rounded = s.Weather.Ambient, weatherSlopeOf(p.base, &s.Weather), s.Wall.Flowing, s.Reserve()
	// The highest pressure is what the painter was given, whatever the gun really takes.
	p.r.Gun.CapLimit = 0
	p.r.Coat.Working.High = min(r.Coat.Working.High, s.Working.Highest)
	// A gun without an inlet valve is given what the wall's mark makes of what is wanted.
	w, off := &p.r.Coat.Working, s.Working.Pressure-s.Working.Wanted
	w.Start, w.Low, w.High = w.Start+off, w.Low+off, w.High+off
	return p
}

// perturbed is r with nothing off.
func perturbed(r *Request) *Perturbed {
	p := &Perturbed{base: r, r: *r}
	p.wall, p.sets = r.Regulators()
	for d := range dimensions {
		p.sigma[d] = dimensions[d].of(&r.Tolerances).Within / 2
	}
	if r.Gauge == NoGauge {
		p.sigma[gunGauge] = 0
	}
	p.r.Line = p.line[:len(r.Line)]
	return p
}

// Off is how far single things of a request are off: as factors of what they pass, all above
// 0, and as what a gauge reads too high.
type Off struct {
	Parts               [MostParts]PartOff // of the request's line, by place
	Valve               float64            // of the inlet valve's conductance
	Flow                float64            // of the stamp's
	WallGauge, GunGauge unit.Drop
}

// PartOff is how far one part of a line is off: what it passes, of a hose by its area, and
// what a hose's end fittings pass besides.
type PartOff struct{ Passes, End float64 }

// Apply puts the part off.
func (o PartOff) Apply(p *line.Part) {
	p.Widen(o.Passes)
	p.Hose.End.C *= unit.Conductance(o.End)
}

// Work solves the request with its values off by d.
func (p *Perturbed) Work(d *Deviations) Outcome {
	p.off(d)
	return p.outcome()
}

// WorkOff solves the request with its values off by d and single things by o besides.
func (p *Perturbed) WorkOff(d *Deviations, o *Off) Outcome {
	p.put(d, o)
	return p.outcome()
}

// put puts everything off by d and single things by o besides.
func (p *Perturbed) put(d *Deviations, o *Off) {
	p.off(d)
	for i := range p.r.Line {
		o.Parts[i].Apply(&p.r.Line[i])
	}
	p.r.Gun.Valve.Full.C *= unit.Conductance(o.Valve)
	p.stamp.Flow *= unit.Flow(o.Flow)
	p.wallOff += o.WallGauge
	if p.r.Gauge != NoGauge {
		p.gunOff += o.GunGauge
	}
}

// Open is the working pressure that the gun gets, its valve wide open, with the wall's gauge
// at what was advised, as the request was last worked.
func (p *Perturbed) Open() unit.Gauge {
	working, _ := p.job.gunAt(p.wall, p.set(), 1)
	return working.Gauge(p.ambient)
}

// off puts everything off by d.
func (p *Perturbed) off(d *Deviations) {
	p.reset()
	for i := range dimensions {
		if off := p.sigma[i] * d[i]; off != 0 {
			dimensions[i].apply(p, off)
		}
	}
}

// outcome is what the request comes to, off as it is.
func (p *Perturbed) outcome() Outcome {
	r := &p.r
	r.Gun.Calibrate(p.stamp)
	j := &p.job
	*j = job{r: r, air: p.air(), wall: p.wall, sets: p.sets}
	j.pressure(p.weather.correction(p.airOff, p.humidityOff))
	j.solveFor(j.target - unit.Gauge(p.gunOff))
	p.here.Prepare(r.Line[j.wall+1:], j.flow, j.air)
	into, _ := r.Gun.Valve.Full.Upstream(j.flow, j.working, j.air)
	open := p.here.Upstream(into)
	wall := open.Gauge(p.ambient) + unit.Gauge(p.rounded)
	return Outcome{
		Wall:     wall + unit.Gauge(p.wallOff),
		Static:   r.regulator(j.wall).Set(wall, j.flow) + unit.Gauge(p.wallOff),
		Opening:  p.opening(),
		Distance: p.distance(),
		Short:    !r.Gun.Valve.None && p.set() < open,
	}
}

// distance is where the push is met, with what the coat is held farther, or what the
// product's sheet says.
func (p *Perturbed) distance() unit.Length {
	j, r := &p.job, &p.r
	if nearest, farthest := r.Held(); nearest == farthest {
		return nearest
	}
	return gun.JetOf(j.flow, j.cap, j.air).Reach(r.Gun.Felt)*unit.Length(r.Coat.Stage.times()) + r.Coat.Farther
}

// set is the pressure behind the wall's regulator with its gauge at what was advised.
func (p *Perturbed) set() unit.Abs { return (p.flowing - unit.Gauge(p.wallOff)).Abs(p.ambient) }

// reset brings every value back to the request's.
func (p *Perturbed) reset() {
	copy(p.line[:], p.base.Line)
	p.r.Gun.Valve, p.r.Gun.Felt = p.base.Gun.Valve, p.base.Gun.Felt
	p.stamp = p.base.Gun.Stamp
	p.wallOff, p.gunOff, p.airOff, p.humidityOff = 0, 0, 0, 0
}

// air is the air in the line: the booth's as the thermometer tells it, or that of the hoses.
func (p *Perturbed) air() line.Air {
	t := p.r.HoseTemp()
	if p.r.HoseAir == 0 {
		t += unit.Temp(p.airOff)
	}
	return line.NewAir(p.ambient, t)
}

// opening is how far the valve must be open with the wall as advised: fully, where a second
// regulator sets what comes to it.
func (p *Perturbed) opening() float64 {
	j := &p.job
	if j.footSets() {
		return 1
	}
	into, _ := p.here.Downstream(p.set())
	x, _, _ := j.r.Gun.Valve.OpeningFor(j.flow, into, j.working, j.air)
	return x
}

// factor is a relative deviation as a factor that can never reach 0.
func factor(off float64) float64 { return math.Exp(off) }

func (p *Perturbed) scaleParts(k line.Kind, off float64) {
	f := factor(off)
	for i := range p.r.Line {
		if part := &p.r.Line[i]; part.Kind == k {
			part.Widen(f)
		}
	}
}

// scaleDroops lets the regulators fall more, at the first flow and after.
func (p *Perturbed) scaleDroops(off float64) {
	f := factor(off)
	for i := range p.r.Line {
		p.r.Line[i].Droop *= f
		p.r.Line[i].LockUp *= unit.Drop(f)
	}
}

// scaleBores widens the hoses by off in m; their end fittings grow with them.
func (p *Perturbed) scaleBores(off float64) {
	for i := range p.r.Line {
		if part := &p.r.Line[i]; part.Kind == line.HoseKind {
			part.Widen(factor(2 * off / float64(part.Hose.Bore)))
		}
	}
}

func (p *Perturbed) scaleEnds(off float64) {
	f := unit.Conductance(factor(off))
	for i := range p.r.Line {
		if part := &p.r.Line[i]; part.Kind == line.HoseKind {
			part.Hose.End.C *= f
		}
	}
}

// scaleFriction makes the hoses rub more: by the flow's equation that is as if they were
// so much longer.
func (p *Perturbed) scaleFriction(off float64) {
	f := unit.Length(factor(off))
	for i := range p.r.Line {
		if part := &p.r.Line[i]; part.Kind == line.HoseKind {
			part.Hose.Length *= f
		}
	}
}

func (p *Perturbed) scaleRatios(off float64) {
	f := factor(off)
	for i := range p.r.Line {
		part := &p.r.Line[i]
		part.Restriction.ScaleRatio(f)
		part.Hose.End.ScaleRatio(f)
	}
	p.r.Gun.Valve.Full.ScaleRatio(f)
}

// missGunGauge makes the gun's gauge read too high, where there is one.
func (p *Perturbed) missGunGauge(off float64) {
	if p.r.Gauge != NoGauge {
		p.gunOff = unit.Drop(off)
	}
}

// MostCapShare is the most that a perturbed cap pressure comes to, as a share of the inlet's.
const MostCapShare = 0.95

// scaleCap moves the stamped cap pressure, which stays below the inlet's.
func (p *Perturbed) scaleCap(off float64) {
	p.stamp.Cap = min(p.stamp.Cap*unit.Gauge(factor(off)), MostCapShare*p.stamp.Inlet)
}

// weatherSlope is how the evaporation in flight moves with the instruments that read the
// day: its logarithm is nearly straight over a degree or a few percent.
type weatherSlope struct {
	inFlight               *InFlight
	perKelvin, perHumidity float64
}

func weatherSlopeOf(r *Request, w *Weather) weatherSlope {
	d := weatherSlope{inFlight: &w.InFlight}
	if !w.InFlight.Known {
		return d
	}
	e := newEvaporation(&r.Coat, &r.Gun, r.Day, w.Ambient)
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

func (d *weatherSlope) correction(dt unit.TempDiff, dh float64) unit.Drop {
	return d.inFlight.correction(d.inFlight.changes + d.perKelvin*float64(dt) + d.perHumidity*dh)
}
