package drift

import (
	"maps"
	"math"
	"slices"

	"boothset/calc/unit"
)

// Reading is a job's loss against the model.
type Reading struct {
	// Gun is which gun, with its own gauge, it was taken with.
	Gun string
	// Over is what the gauges say that the line lost above what the model says. The gauges' own
	// errors are in it, which stay the same.
	Over unit.Drop
	// Flow is the air that the model says the gun took, as a share of one flow that is the same
	// for all readings.
	Flow float64
}

const (
	// baseline is how many readings with a gun settle what it reads while nothing changes.
	baseline = 20
	// lag is how many more readings with the gun a later one has to wait for, without an alarm,
	// to count among them: more than a change that matters takes to be found.
	lag = 30
	// smallest is the change of the loss, at the one flow, that is looked for.
	smallest = unit.Drop(1 * unit.PascalPerPSI)
	// leastAllowance and mostAllowance bound half of that in standard deviations: where the
	// readings scatter far more than it, or hardly, the charts are made for what can be told.
	leastAllowance, mostAllowance = 0.25, 2.0
	// runLength is how many readings one side of a chart takes on average to an alarm for
	// nothing, were the baseline known exactly. `make drift` prints what that comes to in years.
	runLength = 8000.0
)

// Point is a reading on its chart.
type Point struct {
	// Watched: the baseline of its gun is settled. Nothing else of a point counts where it is not.
	Watched bool
	// Value is how much more is lost than while nothing changes, at the one flow.
	Value unit.Drop
	// Lower and Upper are the limits of the individuals chart for it; Out: it lies outside. One
	// alone is no drift.
	Lower, Upper unit.Drop
	Out          bool
	// Up and Down are the sums of the line's CUSUM, and Decision what they are held to, in
	// standard deviations.
	Up, Down, Decision float64
}

// Alarm is that the loss has changed.
type Alarm struct {
	At    int       // the reading that raised it
	Since int       // the first reading of the change, by the estimate of the CUSUM
	Shift unit.Drop // how much more is lost since then, at the one flow
	Gun   string    // the gun that alone has changed, empty where all have or there is but one
}

// Watched is readings as they were watched.
type Watched struct {
	Points []Point
	Alarms []Alarm
}

// Watch watches readings in the order they were taken. Charts are kept of the line, from the
// readings with each gun against that gun's own baseline, and of each gun where there are
// several. After an alarm the sums begin anew against the same baseline: a change that lasts
// raises another one.
func Watch(readings []Reading) Watched {
	w := Watched{Points: make([]Point, len(readings))}
	guns := map[string]*settled{}
	for _, r := range readings {
		guns[r.Gun] = &settled{}
	}
	line, spread := &chart{}, &spread{}
	var recent []taken
	for i, r := range readings {
		g := guns[r.Gun]
		g.add(float64(r.Over), spread)
		if !g.settled() {
			continue
		}
		sigma := spread.sigma()
		if sigma == 0 {
			continue // readings that never differ are not read
		}
		load := r.Flow * r.Flow
		over := float64(r.Over) - g.mean()
		width := sigma * math.Sqrt(1+1/g.n) // of a reading against the mean of n
		allowance := min(max(float64(smallest)/2/sigma, leastAllowance), mostAllowance)
		decision := DecisionFor(allowance, runLength)
		limits := Individuals{Lower: -widthOfLimits * width / load, Upper: widthOfLimits * width / load}
		u := taken{i, r.Gun, over / width, load}
		recent = append(recent[max(len(recent)-mostRecent, 0):], u)
		alarm := line.add(u, allowance, decision)
		w.Points[i] = Point{
			Watched: true, Value: unit.Drop(over / load), Lower: unit.Drop(limits.Lower), Upper: unit.Drop(limits.Upper), Out: limits.Out(over / load),
			Up: line.sums.Up, Down: line.sums.Down, Decision: decision,
		}
		ofGun := len(guns) > 1 && g.own.add(u, allowance, decision)
		switch {
		case alarm:
			w.Alarms = append(w.Alarms, line.alarm(recent, width))
		case ofGun:
			w.Alarms = append(w.Alarms, g.own.alarm(recent, width))
		default:
			continue
		}
		*line = chart{}
		for _, g := range guns {
			g.own, g.held = chart{}, true
		}
	}
	return w
}

// taken is a reading as charts take it.
type taken struct {
	at   int
	gun  string
	u    float64 // over the mean, in standard deviations
	load float64
}

// chart is a CUSUM with the readings that it took.
type chart struct {
	sums  CUSUM
	taken []taken
}

func (c *chart) add(t taken, allowance, decision float64) bool {
	c.taken = append(c.taken, t)
	c.sums.Allowance, c.sums.Decision = allowance, decision
	return c.sums.Add(t.u)
}

// mostRecent is how many readings are looked back at for which gun has changed.
const mostRecent = 60

// alarm is what the chart tells of the change; recent is the last readings of all guns, and
// width what a standard deviation is.
func (c *chart) alarm(recent []taken, width float64) Alarm {
	by, n := c.sums.Shift()
	since := c.taken[len(c.taken)-n:]
	mean := 0.0
	for _, t := range since {
		mean += t.load / float64(n)
	}
	return Alarm{At: c.taken[len(c.taken)-1].at, Since: since[0].at, Shift: unit.Drop(by * width / mean), Gun: blamed(recent)}
}

// surely is by how much a change of one gun must explain more, as a sum of squares of standard
// deviations, than one of the line: the likelihoods are then as 1 to 7.
const surely = 4.0

// blamed is the gun that alone has changed, where that surely explains more of what readings are
// off by than a change that they all share, each since when it explains most; else empty.
func blamed(readings []taken) (gun string) {
	var n, sum, ofLine float64
	ofGun := map[string]float64{}
	ns, sums := map[string]float64{}, map[string]float64{}
	for _, t := range slices.Backward(readings) {
		n, sum = n+1, sum+t.u
		ns[t.gun]++
		sums[t.gun] += t.u
		ofLine = max(ofLine, sum*sum/n)
		ofGun[t.gun] = max(ofGun[t.gun], sums[t.gun]*sums[t.gun]/ns[t.gun])
	}
	most := ofLine + surely
	for _, g := range slices.Sorted(maps.Keys(ofGun)) {
		if ofGun[g] > most {
			gun, most = g, ofGun[g]
		}
	}
	return gun
}

// settled is what is read with a gun while nothing changes.
type settled struct {
	all    []float64
	n, sum float64 // of those that settle it
	own    chart
	held   bool // an alarm was raised: no later reading settles it
}

func (g *settled) settled() bool { return len(g.all) > baseline }
func (g *settled) mean() float64 { return g.sum / g.n }

// add takes a reading with the gun; the first settle it, and each later one once enough have
// followed.
func (g *settled) add(over float64, s *spread) {
	g.all = append(g.all, over)
	for int(g.n) < len(g.all) && (g.n < baseline || !g.held && int(g.n) < len(g.all)-lag) {
		i := int(g.n)
		if i > 0 {
			s.add(math.Abs(g.all[i] - g.all[i-1]))
		}
		g.n, g.sum = g.n+1, g.sum+g.all[i]
	}
}

// spread is how far readings with the same gun are apart, from their moving ranges.
type spread struct{ n, sum float64 }

func (s *spread) add(between float64) { s.n, s.sum = s.n+1, s.sum+between }

// sigma is the standard deviation of a reading.
func (s *spread) sigma() float64 {
	if s.n == 0 {
		return 0
	}
	return s.sum / s.n / d2
}
