package calc

import (
	"math"
	"slices"
	"testing"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// roughly is tolerances of the size a shop's have.
var roughly = Tolerances{
	Coupling: Tolerance{Within: 0.3}, Filter: Tolerance{Within: 0.3}, Valve: Tolerance{Within: 0.3}, ValveShape: Tolerance{Within: math.Log(4.5)},
	HoseBore: Tolerance{Within: 0.8e-3}, HoseEnd: Tolerance{Within: 0.2}, Friction: Tolerance{Within: 0.2}, CriticalRatio: Tolerance{Within: 0.33},
	Felt:      Tolerance{Within: 0.2},
	StampFlow: Tolerance{Within: 0.1}, StampCap: Tolerance{Within: 0.15}, Droop: Tolerance{Within: 0.5},
	WallGauge: Tolerance{Within: unit.PascalPerPSI * 4}, GunGauge: Tolerance{Within: unit.PascalPerPSI * 1.5},
	Thermometer: Tolerance{Within: 1}, HygrometerShare: Tolerance{Within: 0.05},
}

// With nothing off, a perturbed request comes to what its setup says.
func TestNothingOffIsTheSetup(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		r.Tolerances = roughly
		s, err := Solve(&r)
		require.NoError(t, err)
		if s.Short.Is {
			t.Skip("nothing to perturb")
		}
		o := Perturb(&r, s).Work(&Deviations{})
		assert.InDelta(t, float64(s.Wall.Flowing), float64(o.Wall), 1e-3)
		assert.InDelta(t, s.Valve.Opening, o.Opening, 1e-6)
		held := min(max(o.Distance, r.Gun.Nearest), r.Gun.Farthest)
		assert.InDelta(t, float64(s.Distance.Target), float64(held), 1e-9)
		assert.Equal(t, s.Wall.Flowing < s.Wall.Open, o.Short)
	})
}

// Each tolerance one standard deviation off is the same as the request with that value
// changed, solved by itself: half of what it is within, as a power of e where relative.
func TestOneOffIsTheChangedRequest(t *testing.T) {
	scale := func(kind line.Kind, by float64) func(*Request) {
		return func(r *Request) {
			for i := range r.Line {
				if r.Line[i].Kind == kind {
					r.Line[i].Restriction.C *= unit.Conductance(by)
				}
			}
		}
	}
	stamped := func(change func(*gun.Stamp)) func(*Request) {
		return func(r *Request) {
			s := r.Gun.Stamp
			change(&s)
			g, err := gun.New(s, 0, r.Gun.Valve)
			require.NoError(t, err)
			r.Gun.Gun = g
		}
	}
	for id, change := range map[string]func(*Request){
		"coupling": scale(line.CouplingKind, math.Exp(0.15)),
		"filter":   scale(line.FilterKind, math.Exp(0.15)),
		"hose-bore": func(r *Request) {
			h := &r.Line[2].Hose
			f := math.Exp(0.4e-3 / float64(h.Bore))
			h.Bore *= unit.Length(f)
			h.End.C *= unit.Conductance(f * f) // as its area
		},
		"friction": func(r *Request) { r.Line[2].Hose.Length *= unit.Length(math.Exp(0.1)) }, // f L/D
		"critical-ratio": func(r *Request) {
			for i := range r.Line {
				r.Line[i].Restriction.B *= math.Exp(0.165)
				r.Line[i].Hose.End.B *= math.Exp(0.165)
			}
			r.Gun.Valve.Full.B *= math.Exp(0.165)
		},
		"felt":       func(r *Request) { r.Gun.Felt.Distance *= unit.Length(math.Exp(0.1)) },
		"hose-end":   func(r *Request) { r.Line[2].Hose.End.C *= unit.Conductance(math.Exp(0.1)) },
		"valve":      func(r *Request) { r.Gun.Valve.Full.C *= unit.Conductance(math.Exp(0.15)) },
		"stamp-flow": stamped(func(s *gun.Stamp) { s.Flow *= unit.Flow(math.Exp(0.05)) }),
		"stamp-cap":  stamped(func(s *gun.Stamp) { s.Cap *= unit.Gauge(math.Exp(0.075)) }),
		"droop":      func(r *Request) { r.Line[0].Droop *= math.Exp(0.25) },
		"gun-gauge":  func(r *Request) { r.Coat.Working.Start -= unit.PSIG(0.75) },
		"thermometer": func(r *Request) {
			r.Day.Air += 0.5
		},
		"hygrometer": func(r *Request) { r.Day.Humidity += 0.025 },
	} {
		t.Run(id, func(t *testing.T) {
			r := mildClear(t)
			r.Tolerances = roughly
			r.Line = append(slices.Clone(r.Line), line.Part{Name: "filter", Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}})
			s, err := Solve(&r)
			require.NoError(t, err)
			ids := ToleranceIDs()
			var one Deviations
			d := slices.Index(ids[:], id)
			require.GreaterOrEqual(t, d, 0)
			one[d] = 1
			got := Perturb(&r, s).Work(&one)

			changed := r
			changed.Gun.Farthest = unit.Inches(20)
			changed.Line = slices.Clone(r.Line)
			change(&changed)
			want, err := Solve(&changed)
			require.NoError(t, err)
			wall := want.Wall.Open + s.Wall.Flowing - s.Wall.Open // with the same reserve
			assert.InDelta(t, wall.PSI(), got.Wall.PSI(), 1e-3)
			assert.InDelta(t, changed.regulator(0).Set(wall, want.Working.Flow).PSI(), got.Static.PSI(), 1e-3)
			assert.InDelta(t, want.Distance.Target.Inches(), got.Distance.Inches(), 1e-4)
		})
	}
}

// A wall gauge that reads 2 psi high has to be set 2 psi higher, and the valve opened for
// 2 psi less than it shows.
func TestWallGaugeOff(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = roughly
	s, err := Solve(&r)
	require.NoError(t, err)
	p := Perturb(&r, s)
	var one Deviations
	ids := ToleranceIDs()
	one[slices.Index(ids[:], "wall-gauge")] = 1
	right, off := p.Work(&Deviations{}), p.Work(&one)
	assert.InDelta(t, 2, (off.Wall - right.Wall).PSI(), 1e-9)
	assert.InDelta(t, 2, (off.Static - right.Static).PSI(), 1e-9)
	assert.Equal(t, right.Distance, off.Distance)
	lower := r
	lower.HasNow, lower.Now = true, s.Wall.Flowing-unit.PSIG(2)
	set, err := Solve(&lower)
	require.NoError(t, err)
	assert.InDelta(t, set.Now.Opening, off.Opening, 1e-9)
}

// However far a stamped cap pressure is off, it stays at 95 % of the inlet's or less.
func TestAStampedCapStaysBelowItsInlet(t *testing.T) {
	stamped := func(cap float64) Request {
		r := mildClear(t)
		g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(cap)}, 0, r.Gun.Valve)
		require.NoError(t, err)
		r.Gun.Gun = g
		r.Tolerances = Tolerances{StampCap: Tolerance{Within: 0.4}}
		return r
	}
	r, most := stamped(30), stamped(0.95*32)
	s, held := solved(t, r), solved(t, most)
	ids := ToleranceIDs()
	var one Deviations
	one[slices.Index(ids[:], "stamp-cap")] = 1
	got := Perturb(&r, s).Work(&one)
	assert.InDelta(t, (held.Wall.Open + s.Wall.Flowing - s.Wall.Open).PSI(), got.Wall.PSI(), 1e-6)
}

// A gun's gauge that is not there is not off.
func TestNoGunGaugeIsNotOff(t *testing.T) {
	r := mildClear(t)
	r.Tolerances, r.Gauge = roughly, NoGauge
	s := solved(t, r)
	ids := ToleranceIDs()
	var one Deviations
	one[slices.Index(ids[:], "gun-gauge")] = 2
	p := Perturb(&r, s)
	right, off := p.Work(&Deviations{}), p.Work(&one)
	assert.Equal(t, right, off)
}

// However far it is off, a critical ratio stays below 1.
func TestACriticalRatioStaysBelowOne(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = Tolerances{CriticalRatio: Tolerance{Within: 1}}
	s := solved(t, r)
	ids := ToleranceIDs()
	var one Deviations
	one[slices.Index(ids[:], "critical-ratio")] = 6
	p := Perturb(&r, s)
	got := p.Work(&one)
	assert.Less(t, got.Wall, s.Wall.Flowing, "what chokes later loses less")
	assert.Greater(t, got.Wall, s.Working.Pressure)
	assert.Equal(t, 0.9, p.r.Line[0].Restriction.B)
}

// EN 837-1: a gauge of class 2.5 to 160 psi may be 4 psi off; a mark of 1 psi read to its
// half adds 1/sqrt(3) psi as two standard deviations, by hand 4.0415 in all.
func TestAGaugeIsOffByClassAndMark(t *testing.T) {
	got := GaugeTolerance(unit.PSIG(160), 0.025, unit.PSIDrop(1))
	assert.InDelta(t, 4.0415, got.Within/unit.PascalPerPSI, 1e-4)
	assert.InDelta(t, 0.6, GaugeTolerance(unit.BarG(6), 0.1, 0).Within/unit.PascalPerBar, 1e-12)
}

func TestPerturbedAllocatesNothing(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = roughly
	s, err := Solve(&r)
	require.NoError(t, err)
	p := Perturb(&r, s)
	var one Deviations
	for d := range one {
		one[d] = 1
	}
	var o Outcome
	assert.Zero(t, testing.AllocsPerRun(100, func() { o = p.Work(&one) }))
	assert.Positive(t, o.Wall)
}

func TestEveryToleranceHasItsID(t *testing.T) {
	var all Tolerances
	seen := map[*Tolerance]bool{}
	for _, id := range ToleranceIDs() {
		found, _ := all.Of(id)
		require.NotNil(t, found, id)
		seen[found] = true
	}
	assert.Len(t, seen, Dimensions)
	none, _ := all.Of("no such")
	assert.Nil(t, none)
}
