package learn

import (
	"slices"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"gonum.org/v1/gonum/stat"
)

// settled is how many lines the settings are worked of, drawn among the draws.
const settled = 4000

// Settings is what there is to set, and what it gives: bounds at 10 and 90 %.
type Settings struct {
	Wall     spread.GaugeRange // flowing, as its gauge reads it
	Static   spread.GaugeRange // the same with no air moving
	Gun      spread.GaugeRange // what the gun gets, its valve wide open and the wall's gauge at what was advised
	Opening  spread.Range      // of the inlet valve, with the wall's gauge at what was advised
	Distance spread.LengthRange
	// Middle is the wall's, flowing: as often too low as too high.
	Middle unit.Gauge
	// Short is how often, 0..1, the gun gets less than its target with the valve wide open.
	Short float64
}

// outcome is a line's settings.
type outcome struct {
	calc.Outcome
	gun unit.Gauge
}

// Settings works the settings of what the readings left.
func (l *Learner) Settings() Settings {
	all := l.outcomes(l.sample(min(settled, len(l.draws))))
	of := func(value func(*outcome) float64) []float64 {
		v := make([]float64, len(all))
		for i := range all {
			v[i] = value(&all[i])
		}
		slices.Sort(v)
		return v
	}
	wall := of(func(o *outcome) float64 { return float64(o.Wall) })
	gauges := func(v []float64) spread.GaugeRange {
		low, high := bounds(v, nil)
		return spread.GaugeRange{Low: unit.Gauge(low), High: unit.Gauge(high)}
	}
	s := Settings{Wall: gauges(wall), Middle: unit.Gauge(stat.Quantile(0.5, stat.LinInterp, wall, nil))}
	s.Static = gauges(of(func(o *outcome) float64 { return float64(o.Static) }))
	s.Gun = gauges(of(func(o *outcome) float64 { return float64(o.gun) }))
	s.Opening = openings(all)
	low, high := bounds(of(func(o *outcome) float64 { return float64(o.Distance) }), nil)
	s.Distance = spread.LengthRange{Low: unit.Length(low), High: unit.Length(high)}
	for i := range all {
		if all[i].Short {
			s.Short += 1 / float64(len(all))
		}
	}
	return s
}

// openings is how far the inlet valve is to be open.
func openings(all []outcome) (r spread.Range) {
	v := make([]float64, len(all))
	for i := range all {
		v[i] = all[i].Opening
	}
	slices.Sort(v)
	r.Low, r.High = bounds(v, nil)
	return r
}

// bounds are what a tenth of what is sorted is below, and above.
func bounds(sorted, weights []float64) (low, high float64) {
	return stat.Quantile(0.1, stat.LinInterp, sorted, weights), stat.Quantile(0.9, stat.LinInterp, sorted, weights)
}

// sample is the numbers of n draws by their weights, systematically.
func (l *Learner) sample(n int) []int {
	chosen := make([]int, n)
	at, sum := 0, l.weights[0]
	for i := range chosen {
		for (float64(i)+0.5)/float64(n) > sum && at < len(l.weights)-1 {
			at++
			sum += l.weights[at]
		}
		chosen[i] = at
	}
	return chosen
}

// settling is the generation of chance that settings are worked with.
const settling = 1<<31 - 1

// outcomes works the settings of draws, each with gauges drawn off as it has them.
func (l *Learner) outcomes(of []int) []outcome {
	all := make([]outcome, len(of))
	l.each(len(of), func(w *worker, i int) {
		if w.settings == nil {
			w.settings = calc.Perturb(l.Request, l.Setup)
		}
		d := &l.draws[of[i]]
		random := w.at(l.seed, settling, i)
		off := d.offsets.drawn(len(l.instruments), random)
		z, o := l.offs(d)
		for _, k := range l.unread {
			z[k] = random.NormFloat64()
		}
		o.WallGauge, o.GunGauge = unit.Drop(off[WallGauge]), unit.Drop(off[GunGauge])
		all[i] = outcome{w.settings.WorkOff(&z, &o), w.settings.Open()}
	})
	return all
}

// offs is a draw as package calc works it, the line as it stands.
func (l *Learner) offs(d *draw) (z calc.Deviations, o calc.Off) {
	for k, at := range sharedPlaces {
		z[at] = d.shared[k]
	}
	for i := range o.Parts {
		o.Parts[i] = calc.PartOff{Passes: 1, End: 1}
	}
	for i, p := range l.stands {
		o.Parts[l.wall+1+i] = l.off(d, p)
	}
	o.Valve, o.Flow = 1, 1
	for i := range l.pieces {
		if p := &l.pieces[i]; p.Role != InLine && p.Gun == 0 {
			off := l.off(d, i).Passes
			if p.Role == InletValve {
				o.Valve, z[shapePlace] = off, d.own[i].end
			} else {
				o.Flow, z[capPlace] = off, d.own[i].end
			}
		}
	}
	return z, o
}
