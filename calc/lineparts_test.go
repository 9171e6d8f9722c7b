package calc

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyLine is any parts in any order, with at most two regulators among them.
func anyLine(t *rapid.T) (parts []line.Part) {
	f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	kinds := []line.Kind{line.RegulatorKind, line.FilterKind, line.DryerKind, line.CouplingKind, line.HoseKind, line.ValveKind}
	regulators := 0
	for i := range rapid.IntRange(0, 9).Draw(t, "parts") {
		p := line.Part{Kind: rapid.SampledFrom(kinds).Draw(t, "kind")}
		p.Name = fmt.Sprintf("%s %d", p.Kind, i)
		squeeze := line.Restriction{C: unit.DM3PerSBar(f(0.5, 15, "conductance")), B: f(0, 0.6, "b")}
		switch p.Kind {
		case line.RegulatorKind:
			if regulators++; regulators > MostRegulators {
				continue
			}
			p.Regulate(line.Regulator{Seat: squeeze, Droop: line.DroopOf(unit.PSIDrop(f(0, 10, "droop")), unit.SCFM(60))})
		case line.HoseKind:
			p.Hose = line.Hose{Length: unit.Feet(f(0.5, 100, "feet")), Bore: unit.MM(f(4, 20, "bore")), Roughness: line.SmoothRubber}
			p.Hose.End = line.Restriction{C: line.OfBore(p.Hose.Bore*0.9, line.FullBore), B: 0.5}
		default:
			p.Restriction = squeeze
		}
		parts = append(parts, p)
	}
	return parts
}

// twoRegulators is mildClear with a second regulator at the gun's foot.
func twoRegulators(t require.TestingT) Request {
	r := mildClear(t)
	r.Line = append(r.Line, line.Part{Name: "foot regulator", Kind: line.RegulatorKind,
		Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}, Droop: line.DroopOf(unit.PSIDrop(5), unit.SCFM(60)),
	})
	return r
}

// Of two regulators the one nearer the gun sets what the open valve needs, and the wall holds
// what that one asks for at the gun's flow, and a reserve, at the next mark.
func TestTheFootSetsAndTheWallFeedsIt(t *testing.T) {
	r := twoRegulators(t)
	s := solved(t, r)
	require.True(t, s.Foot.Is)
	alone := r
	alone.Line = r.Line[4:] // the foot regulator with nothing before it
	foot := solved(t, alone)
	assert.InDelta(t, foot.Wall.Open.PSI(), s.Foot.Flowing.PSI(), 1e-9, "as without the rest of the line")
	assert.Equal(t, s.Foot.Open, s.Foot.Flowing)
	assert.Equal(t, 1.0, s.Valve.Opening)
	assert.Zero(t, s.Valve.Reserve)

	j := newJob(&r, s.Weather.Ambient)
	needed, _ := line.Upstream(r.Line[1:], s.Working.Flow, s.Foot.Flowing.Abs(j.air.Ambient), j.air)
	assert.InDelta(t, needed.Gauge(j.air.Ambient).PSI(), s.Wall.Open.PSI(), 1e-9)
	assert.Greater(t, s.Wall.Flowing, s.Wall.Open+unit.Gauge(LeastReserve)-1)
	assert.Less(t, s.Wall.Flowing, s.Wall.Open+unit.Gauge(LeastReserve)+unit.PSIG(1))
	assert.InDelta(t, float64(s.Wall.Flowing-s.Wall.Open), float64(s.Reserve()), 1e-6)
	assert.InDelta(t, math.Round(5*worked(t)["flow"]/60), (s.Foot.Static - s.Foot.Flowing).PSI(), 1e-6, "its own droop, in whole marks")
	assert.False(t, s.Comparison.Given, "no wall makes the valve close")
}

// A wall as it stands that is higher than the foot needs changes nothing at the gun; one that
// is lower lets the foot's seat stand open.
func TestNowWithTwoRegulators(t *testing.T) {
	r := twoRegulators(t)
	r.HasNow, r.Now = true, unit.PSIG(70)
	s := solved(t, r)
	assert.True(t, s.Now.Enough)
	assert.Equal(t, 1.0, s.Now.Opening)
	assert.InDelta(t, s.Working.Pressure.PSI(), s.Now.GunIfOpen.PSI(), 1e-9)
	r.Now = unit.PSIG(20)
	s = solved(t, r)
	assert.False(t, s.Now.Enough)
	j := newJob(&r, s.Weather.Ambient)
	parts := slices.Clone(r.Line[1:])
	parts[3].Kind = line.FilterKind // its seat as a restriction
	alike := r
	alike.Line = append(slices.Clone(r.Line[:1]), parts...)
	want, _ := newJobOf(&alike, s.Weather.Ambient).gunAt(0, r.Now.Abs(j.air.Ambient), 1)
	assert.InDelta(t, want.Gauge(j.air.Ambient).PSI(), s.Now.GunIfOpen.PSI(), 1e-9)
}

func newJobOf(r *Request, ambient unit.Abs) *job {
	j := newJob(r, ambient)
	return &j
}

// Where a regulator sits is read off the order of the parts.
func TestWhereARegulatorSits(t *testing.T) {
	k := func(kinds ...line.Kind) (parts []line.Part) {
		for _, kind := range kinds {
			parts = append(parts, line.Part{Kind: kind})
		}
		return parts
	}
	reg, coupling, hose := line.RegulatorKind, line.CouplingKind, line.HoseKind
	for _, c := range []struct {
		parts      []line.Part
		wall, sets int
		at         Place
	}{
		{nil, -1, -1, Nowhere},
		{k(hose, coupling), -1, -1, Nowhere},
		{k(reg), 0, 0, Wall},
		{k(reg, hose), 0, 0, Wall},
		{k(line.DryerKind, reg, hose), 1, 1, Wall},
		{k(coupling, hose, reg), 2, 2, Foot},
		{k(coupling, hose, reg, coupling), 2, 2, Foot},
		{k(reg, hose, reg), 0, 2, Wall},
		{k(hose, reg, reg), 1, 2, Foot},
	} {
		r := Request{Line: c.parts}
		wall, sets := r.Regulators()
		assert.Equal(t, []int{c.wall, c.sets}, []int{wall, sets})
		assert.Equal(t, c.at, r.RegulatorAt())
	}
}

// Any line asks for no less where a hose is longer or narrower, or a part narrower; the gun
// gets no more.
func TestAnyLineIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		if len(r.Line) == 0 {
			return
		}
		worse := r
		worse.Line = slices.Clone(r.Line)
		by := rapid.Float64Range(1, 2).Draw(t, "by")
		switch p := &worse.Line[rapid.IntRange(0, len(r.Line)-1).Draw(t, "part")]; {
		case p.Kind == line.RegulatorKind:
			p.Restriction.C /= unit.Conductance(by)
		case p.Kind != line.HoseKind:
			p.Restriction.C /= unit.Conductance(by)
		case rapid.Bool().Draw(t, "longer"):
			p.Hose.Length = min(p.Hose.Length*unit.Length(by), LongestHose)
		default:
			narrower := max(p.Hose.Bore/unit.Length(by), NarrowestHose)
			p.Hose.End.C *= unit.Conductance((narrower / p.Hose.Bore) * (narrower / p.Hose.Bore))
			p.Hose.Bore = narrower
		}
		before, after := newJobOf(&r, unit.SCFMPressure), newJobOf(&worse, unit.SCFMPressure)
		best, _, _ := before.best()
		worst, _, _ := after.best()
		assert.LessOrEqual(t, float64(worst), float64(best)*(1+1e-9))
		was, is := solved(t, r), solved(t, worse)
		assert.GreaterOrEqual(t, float64(is.Wall.Open), float64(was.Wall.Open)*(1-1e-9)-1e-6)
		assert.False(t, was.Short.Is && !is.Short.Is, "a worse line is not short where a better one is")
	})
}

// What stands before the wall's regulator is the supply's to bear: the wall is as without it.
func TestPartsBeforeTheWallLeaveItAlone(t *testing.T) {
	r := mildClear(t)
	want := solved(t, r)
	r.Line = append([]line.Part{{Name: "dryer", Kind: line.DryerKind, Restriction: line.Restriction{C: unit.DM3PerSBar(5), B: 0.3}}}, r.Line...)
	got := solved(t, r)
	assert.Equal(t, want.Wall, got.Wall)
	assert.Equal(t, want.Valve, got.Valve)
	assert.Less(t, got.Line[1].In, want.Line[0].In, "less comes to the regulator")
	r.Supply = unit.PSIG(30)
	starved := solved(t, r)
	require.True(t, starved.Short.Is)
	assert.Greater(t, starved.Short.Needed.PSI(), 31.0)
}

// Air in the hose that is warmer takes more pressure for the same flow, and less of it flows.
func TestWarmerHosesPassLess(t *testing.T) {
	r := mildClear(t)
	cool := solved(t, r)
	r.HoseAir = unit.Celsius(50)
	warm := solved(t, r)
	assert.Less(t, float64(warm.Working.Flow), float64(cool.Working.Flow))
	assert.InEpsilon(t, float64(cool.Working.Flow)*math.Sqrt(float64(r.Day.Air)/float64(r.HoseAir)), float64(warm.Working.Flow), 1e-9)
	assert.Equal(t, cool.Working.Pressure, warm.Working.Pressure)
	r.HoseAir = r.Day.Air
	assert.Equal(t, cool, solved(t, r))
}
