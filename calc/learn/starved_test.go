package learn

import (
	"math"
	"testing"

	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// What a starved gun's gauge shows is as likely as the integral over all that the wall's gauge may
// be off by has it, each pressure of the wall worked forward to the gun: the curve from one to the
// other bends too much there to be taken as straight within what the gun's gauge is off by.
func TestAStarvedGunIsAsLikelyAsByTheIntegral(t *testing.T) {
	r := calctest.MildClear(t)
	l := learner(t, r, 10)
	const psi = unit.PascalPerPSI
	const hose = 1
	const wall = 41.0
	wallOff := distuv.Normal{Sigma: math.Hypot(2, 0.3)}
	gunOff := distuv.Normal{Sigma: math.Hypot(0.75, 0.3)}
	for _, by := range []float64{0, 0.15} {
		for _, gun := range []float64{0, 1, 2, 3, 5} {
			d := draw{offsets: newOffsets(l.instruments)}
			d.own[hose] = own{odd: true, by: by}
			taken := l.takes(Reading{Opening: 1, Shows: wallAndGun(wall, gun)})
			var got, want float64
			l.each(1, func(w *worker, _ int) {
				w.put(&d)
				c := w.solve(&taken)
				got = d.offsets.learn(&taken, &c, l.model)
				w.arrange(&taken)
				want = quad.Fixed(func(off float64) float64 {
					at := w.march(w.forward(unit.PSIG(wall - off).Abs(w.ambient)))
					return wallOff.Prob(off) * gunOff.Prob(gun-at[atWorking]/psi)
				}, -8*wallOff.Sigma, 8*wallOff.Sigma, 200, nil, 0)
			})
			// The density that is learnt of is in Pa, without the roots of 2 pi; that of the wall's
			// own pressure, which may be anything, is one and the same.
			got += (math.Log(anywhere) + math.Log(psi*psi)) / 2
			want = math.Log(want * math.Sqrt(2*math.Pi))
			assert.InDelta(t, want, got, max(0.05, 0.03*math.Abs(want)), "hose %g, gun %g", by, gun)
		}
	}
}
