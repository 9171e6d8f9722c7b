package line_test

import (
	"math"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func hosePart(h line.Hose) line.Part { return line.Part{Kind: line.HoseKind, Hose: h} }

// python3-fluids 1.0.22, isothermal_gas with Churchill_1977 and ATMOSPHERE_1976: the outlet
// of steel pipe and of hose, and the Mach number G sqrt(RT/gamma)/p2 there.
func TestPipeAndHoseAgainstFluidsLibrary(t *testing.T) {
	for _, c := range []struct {
		bore, feet, scfm, psig, celsius float64
		wall                            unit.Length
		p2, mach                        float64
	}{
		{0.622, 100, 40, 100, 20, line.SteelPipe, 752237.538575223, 0.03768384533939164},
		{0.824, 300, 60, 120, 35, line.SteelPipe, 875121.7479228767, 0.028385430145332336},
		{0.375, 25, 15, 30, 20, line.SmoothRubber, 274010.802297853, 0.10673135723145001},
		{0.3125, 25, 14, 30, 35, line.SmoothRubber, 221669.46573305016, 0.18179806119997335},
	} {
		p := hosePart(line.Hose{Length: unit.Feet(c.feet), Bore: unit.Inches(c.bore), Roughness: c.wall})
		a := line.NewAir(unit.SCFMPressure, unit.Celsius(c.celsius))
		q, p1 := unit.SCFM(c.scfm), unit.PSIG(c.psig).Abs(unit.SCFMPressure)
		p2, ok := p.Downstream(q, p1, a)
		require.True(t, ok)
		assert.InEpsilon(t, c.p2, float64(p2), 1e-8, "%v", c)
		assert.InEpsilon(t, c.mach, p.Mach(q, p1, p2, a), 1e-8, "%v", c)
		back, choked := p.Upstream(q, p2, a)
		assert.InEpsilon(t, float64(p1), float64(back), 1e-9, "%v", c)
		assert.False(t, choked)
	}
}

// The fastest air in a hose is inside the tube's outlet, before the fitting there. By hand:
// at b = 0.5 the ellipse of ISO 6358 is p1 = p2 + u^2/(4 p2), with u = q/C. 15 scfm are
// 0.00717301 m3/s ANR, u = 79700.1 Pa at C = 9 dm3/(s bar), so 200 kPa after the fitting
// are 207940 Pa before it; G = 8.50002e-3/7.12557e-5 = 119.289 kg/(s m2), and
// M = G sqrt(287.05 x 293.15/1.4)/207940 = 0.140644.
func TestMachOfAHoseCountsItsEndFitting(t *testing.T) {
	h := smooth(25, 0.375)
	h.End = line.Restriction{C: unit.DM3PerSBar(9), B: 0.5}
	p, q := hosePart(h), unit.SCFM(15)
	p1, choked := p.Upstream(q, 2e5, still)
	require.False(t, choked)
	assert.InEpsilon(t, 0.140644, p.Mach(q, p1, 2e5, still), 1e-5)

	// A flow that no pressure downstream of the tube can speed up leaves it at Mach 1/sqrt(gamma).
	p1, choked = p.Upstream(unit.SCFM(80), unit.SCFMPressure, still)
	require.True(t, choked)
	p = hosePart(smooth(25, 0.375))
	assert.InEpsilon(t, 1/math.Sqrt(1.4), p.Mach(unit.SCFM(80), p1, unit.SCFMPressure, still), 1e-12)
}

// The fittings at both ends of a hose cost what they would as parts of their own.
func TestEndsOfAHoseAreParts(t *testing.T) {
	end := line.Restriction{C: unit.DM3PerSBar(6), B: 0.4}
	h := smooth(25, 0.375)
	apart := []line.Part{{Kind: line.CouplingKind, Restriction: end}, hosePart(h), {Kind: line.CouplingKind, Restriction: end}}
	h.End = end
	together := []line.Part{hosePart(h)}
	for _, scfm := range []float64{3, 10, 18} {
		q := unit.SCFM(scfm)
		want, _ := line.Upstream(apart, q, 2e5, still)
		got, _ := line.Upstream(together, q, 2e5, still)
		assert.InEpsilon(t, float64(want), float64(got), 1e-12)
		down, limit, ok := line.Downstream(together, q, got, still)
		require.True(t, ok)
		assert.Equal(t, -1, limit)
		assert.InEpsilon(t, 2e5, float64(down), 1e-9)
		var f line.Flowing
		f.Prepare(together, q, still)
		assert.InEpsilon(t, float64(want), float64(f.Upstream(2e5)), 1e-12)
		alone, ok := f.Downstream(got)
		require.True(t, ok)
		assert.InEpsilon(t, 2e5, float64(alone), 1e-9)
	}
	// Air would have to leave faster than an isothermal tube lets it, however short: at
	// G^2 R T = 3 p^2 the equation has roots again, but none that is a flow.
	short := smooth(0.1, 0.5)
	area := math.Pi / 4 * math.Pow(float64(short.Bore), 2)
	q := unit.MassFlow(math.Sqrt(3/(287.05*293.15)) * 5e5 * area).Flow()
	p2, ok := short.Downstream(q, 5e5, still)
	assert.False(t, ok)
	assert.Zero(t, p2)

	// 7 bar absolute feed 4.2e-2 m3/s through C = 6 at most: a flow above it stops at the
	// fitting, one that the inlet's passes but not the outlet's stops as well.
	// The bare tube passes 3.571e-2 from there, by its isothermal choking solved with scipy.
	for _, c := range []struct {
		parts []line.Part
		q     unit.Flow
	}{{together, 4.3e-2}, {together, 3e-2}, {[]line.Part{hosePart(smooth(25, 0.375))}, 4e-2}} {
		_, limit, ok := line.Downstream(c.parts, c.q, 7e5, still)
		assert.False(t, ok)
		assert.Equal(t, 0, limit)
		p2, ok = c.parts[0].Downstream(c.q, 7e5, still)
		assert.False(t, ok)
		assert.Zero(t, p2)
		var f line.Flowing
		f.Prepare(c.parts, c.q, still)
		p2, ok = f.Downstream(7e5)
		assert.False(t, ok)
		assert.Zero(t, p2)
	}
}

// Where a line chokes: the part that cannot pass the flow is named, whichever it is.
func TestTheLimitIsThePartThatChokes(t *testing.T) {
	wide, narrow := of(20, 0.3), of(1, 0.3)
	for at := range 3 {
		parts := []line.Part{{Restriction: wide}, {Restriction: wide}, {Restriction: wide}}
		parts[at].Restriction = narrow
		// u = q/C = 7.5 bar for C = 1 dm3/(s bar): more than there is.
		p2, limit, ok := line.Downstream(parts, 7.5e-3, 7e5, still)
		assert.False(t, ok)
		lost, ok := parts[at].Downstream(7.5e-3, 7e5, still)
		assert.False(t, ok)
		assert.Zero(t, lost)
		assert.Equal(t, at, limit)
		assert.Zero(t, p2)
		_, choked := line.Upstream(parts, 7.5e-3, 1e5, still)
		assert.True(t, choked)
	}
}

// ISO 6358's temperature root by hand: 20 C air is 293.15/313.15 of 40 C air, and its root
// 0.967540 is what hot air carries of the flow; 10 dm3/s from 5 bar through C = 2 are 9.67540.
func TestHotAirCarriesLess(t *testing.T) {
	hot := line.NewAir(unit.SCFMPressure, unit.Celsius(40))
	r := of(2, 0.3)
	assert.InEpsilon(t, 9.67540e-3, float64(r.Flow(5e5, 1e5, hot)), 1e-5)
	p1, choked := r.Upstream(9.67540e-3, 1e5, hot)
	assert.True(t, choked)
	assert.InEpsilon(t, 5e5, float64(p1), 1e-5)
	c, choked, ok := r.Needed(9.67540e-3, 5e5, 1e5, hot)
	assert.True(t, ok && choked)
	assert.InEpsilon(t, 2, c.DM3PerSBar(), 1e-5)
	part := line.Part{Kind: line.CouplingKind, Restriction: r}
	assert.InEpsilon(t, 9.67540e-3, float64(part.Most(5e5, hot)), 1e-5)
}

// No hose passes more than a nozzle of its bore, 0.1565 d2: with 1 % to spare that is
// C = 0.1565 x 1.01 x 9.525^2 = 14.3405 dm3/(s bar) for 3/8 in.
func TestMostOfAHose(t *testing.T) {
	p := hosePart(smooth(25, 0.375))
	assert.InEpsilon(t, 14.3405e-8*5e5, float64(p.Most(5e5, still)), 1e-5)
	_, ok := p.Downstream(p.Most(5e5, still), 5e5, still)
	assert.False(t, ok)
}

// A restriction's own Mach number is that of its throat: 1 where it chokes, 0 without a drop.
func TestMachOfACoupling(t *testing.T) {
	p := line.Part{Kind: line.CouplingKind, Restriction: of(2, 0.3)}
	assert.Equal(t, 1.0, p.Mach(0.01, 5e5, 1.5e5, still))
	assert.Zero(t, p.Mach(0, 5e5, 5e5, still))
	// At b = 0.5 and 0.8 of the inlet's pressure the ellipse gives 0.8 of the choked flow,
	// an area 1.25 times the throat's: Mach 0.5532 by an isentropic table (NACA 1135),
	// between 0.55 (1.25495) and 0.56 (1.24029).
	p.Restriction = of(2, 0.5)
	mach := p.Mach(0.008, 5e5, 4e5, still)
	assert.Greater(t, mach, 0.55)
	assert.Less(t, mach, 0.56)
	assert.InEpsilon(t, 0.8/1.728, mach/math.Pow(1+mach*mach/5, 3), 1e-12, "the mass-flow function itself")
}

func TestNeededWherePressureRises(t *testing.T) {
	for _, p2 := range []unit.Abs{5e5, 6e5} {
		c, choked, ok := of(2, 0.3).Needed(0.01, 5e5, p2, still)
		assert.False(t, ok || choked)
		assert.Zero(t, c)
		assert.Zero(t, of(2, 0.3).Flow(5e5, p2, still))
	}
	// At its own b a part is just choked.
	_, choked, ok := of(2, 0.3).Needed(0.01, 5e5, 1.5e5, still)
	assert.True(t, ok && choked)
	_, choked, _ = of(2, 0.3).Needed(0.01, 5e5, 1.5001e5, still)
	assert.False(t, choked)
}

func TestNoFlowCostsNothing(t *testing.T) {
	h := smooth(25, 0.375)
	h.End = of(6, 0.4)
	parts := []line.Part{hosePart(h), {Kind: line.CouplingKind, Restriction: of(2, 0.3)}}
	p1, choked := line.Upstream(parts, 0, 3e5, still)
	assert.Equal(t, unit.Abs(3e5), p1)
	assert.False(t, choked)
	p2, _, ok := line.Downstream(parts, 0, 3e5, still)
	assert.True(t, ok)
	assert.InEpsilon(t, 3e5, float64(p2), 1e-12)
	var f line.Flowing
	f.Prepare(parts, 0, still)
	p2, ok = f.Downstream(3e5)
	assert.True(t, ok)
	assert.Equal(t, unit.Abs(3e5), p2)
}

// A part that is put in another's place, or left out, leaves the rest as it was.
func TestFlowingWithAPartChanged(t *testing.T) {
	a, b, c := line.Part{Restriction: of(6, 0.3)}, line.Part{Restriction: of(3, 0.2)}, line.Part{Restriction: of(8, 0.4)}
	var f line.Flowing
	q := unit.SCFM(10)
	f.Prepare([]line.Part{a, b}, q, still)
	f.Put(1, &c, q, still)
	want, _ := line.Upstream([]line.Part{a, c}, q, 2e5, still)
	assert.Equal(t, want, f.Upstream(2e5))
	f.TakeOut(0)
	want, _ = line.Upstream([]line.Part{c}, q, 2e5, still)
	assert.Equal(t, want, f.Upstream(2e5))
}

// A good fitting of 8 mm has C = 0.125 x 8^2 = 8 dm3/(s bar) (the published factor), an ideal
// nozzle 0.1565 x 8^2 = 10.016; C goes with Cv and falls as b rises: 2 x 4.7288 x sqrt(0.5).
func TestConductancesByHand(t *testing.T) {
	assert.InEpsilon(t, 8, line.OfBore(unit.MM(8), line.FullBore).DM3PerSBar(), 1e-12)
	assert.InEpsilon(t, 10.016, line.OfBore(unit.MM(8), line.IdealNozzle).DM3PerSBar(), 1e-12)
	assert.InEpsilon(t, 6.687535, line.FromValveFlow(2, 0.5).DM3PerSBar(), 1e-6)
}

// A line of as many parts as there is room for.
func TestTheMostPartsMarch(t *testing.T) {
	parts := make([]line.Part, line.MostParts)
	for i := range parts {
		parts[i].Restriction = of(6, 0.3)
	}
	var f line.Flowing
	f.Prepare(parts, unit.SCFM(10), still)
	want, _ := line.Upstream(parts, unit.SCFM(10), 2e5, still)
	assert.Equal(t, want, f.Upstream(2e5))
}

func TestKindsAreTheTradesWords(t *testing.T) {
	for k, want := range map[line.Kind]string{
		line.RegulatorKind: "regulator", line.FilterKind: "filter", line.DryerKind: "dryer", line.CouplingKind: "coupling", line.HoseKind: "hose",
		line.ValveKind: "valve", line.PassagesKind: "passages", line.CapKind: "cap",
	} {
		assert.Equal(t, want, k.String())
	}
}

// Roots known beforehand: cos x = x at 0.7390851332151607, x^3 = 2 at
// 1.2599210498948732, e^x = 100 at 4.605170185988092 and e^-x = 1/2 at ln 2, from far off
// on either side. Anderson and Bjorck's pull at the end that stays put is what makes it
// quick: bisection to the last bit takes some 55 calls, plain false position hundreds.
func TestFalsePositionFindsKnownRoots(t *testing.T) {
	for _, c := range []struct {
		f          func(float64) float64
		a, b, root float64
		most       int // calls
	}{
		{func(x float64) float64 { return x - math.Cos(x) }, 0, 10, 0.7390851332151607, 9},
		{func(x float64) float64 { return x*x*x - 2 }, -1, 30, 1.2599210498948732, 16},
		{func(x float64) float64 { return math.Exp(x) - 100 }, -50, 5, 4.605170185988092, 16},
		{func(x float64) float64 { return 1 - math.Exp(-x) - 0.5 }, 0, 200, math.Ln2, 18},
	} {
		calls := 0
		got := line.FalsePosition(func(x float64) float64 { calls++; return c.f(x) }, c.a, c.b, 0)
		assert.InEpsilon(t, c.root, got, 1e-13)
		assert.LessOrEqual(t, calls, c.most, "root %v", c.root)
	}
	up := func(x float64) float64 { return x - 5 }
	assert.Equal(t, 5.5, line.FalsePosition(up, 5.5, 9, 0), "above it from the start")
	assert.Equal(t, 4.5, line.FalsePosition(up, 1, 4.5, 0), "below it to the end")
	assert.Equal(t, 5.0, line.FalsePosition(up, 5, 9, 0))
	assert.Equal(t, 5.0, line.FalsePosition(up, 1, 5, 0))
}
