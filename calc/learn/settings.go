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

// Settings is what there is to set of what the readings left, and how sure that is, for what is
// advised of the line as it was described; its supply must not be short.
func (l *Learner) Settings() *spread.Spread { return spread.Of(l.asRead(), l.Setup) }

// asRead is the request on the line as it was read.
func (l *Learner) asRead() *calc.Request {
	return (&calc.Learnt{Unread: l.unread, Middle: l.middle(), Lines: l.lines()}).Of(l.Request)
}

// gets is what the gun gets, its valve wide open and the wall's gauge at what a setup advises of a
// request on the line as it was read.
func (m *model) gets(r *calc.Request, s *calc.Setup) spread.GaugeRange {
	lines := r.Learnt.Lines
	gun := make([]float64, len(lines))
	m.each(len(lines), func(w *worker, i int) {
		if w.settings == nil {
			w.settings = calc.Perturb(r, s)
		}
		w.settings.WorkOff(&lines[i].Deviations, &lines[i].Off)
		gun[i] = float64(w.settings.Open())
	})
	slices.Sort(gun)
	low, high := bounds(gun, nil)
	return spread.GaugeRange{Low: unit.Gauge(low), High: unit.Gauge(high)}
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
