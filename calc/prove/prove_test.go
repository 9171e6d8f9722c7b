package prove_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/learn"
	"boothset/calc/prove"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// held is a reading with the trigger held, the valve wide open.
func held(wall, gun float64) learn.Taken {
	return learn.Taken{Reading: learn.Reading{Opening: 1, Shows: []learn.Shown{{Gauge: learn.WallGauge, Pressure: unit.PSIG(wall)}, {Gauge: learn.GunGauge, Pressure: unit.PSIG(gun)}}}}
}

// found is what nothing but the plan says of a line.
func found(t require.TestingT, r *calc.Request) *learn.Answer {
	a, err := learn.Solve(&learn.Request{Plan: r, Draws: 500, Seed: 1})
	require.NoError(t, err)
	return a
}

// A gun's gauge that falls while the trigger is held says what does not keep up: the wall's own
// gauge whether it lies before or after the wall, the gauge before the regulator whether that is
// fed. Two readings of one gauge differ by 3 x 1.414 x 0.3 = 1.27 psi without anything falling.
func TestWhatFallsWhileTheTriggerIsHeld(t *testing.T) {
	r := calctest.MildClear(t)
	a := found(t, &r)
	needed := r.SupplyFor(a.Setup, unit.PSIG(35), unit.PSIG(30)).PSI() // the wall fell by no less than the gun
	require.Greater(t, needed, 35.0, "the regulator takes some of it, wide open")
	require.Less(t, needed, 60.0)
	for name, c := range map[string]struct {
		first, wall, supply float64
		after               learn.Taken
		is                  bool
		of                  prove.Faller
	}{
		"it holds":                     {first: 30, after: held(34, 30), of: prove.Holds},
		"by no more than a reading":    {first: 31.2, after: held(34, 30), of: prove.Holds},
		"it rises":                     {first: 28, after: held(34, 30), of: prove.Holds},
		"nothing tells of what":        {first: 30, after: held(31, 26), is: true, of: prove.Untold},
		"the supply is low":            {first: 30, after: held(31, 26), supply: needed - 2, is: true, of: prove.Supply},
		"the regulator is fed":         {first: 30, after: held(31, 26), supply: needed + 20, is: true, of: prove.Regulator},
		"the wall holds":               {first: 30, wall: 34, after: held(34, 26), is: true, of: prove.AfterWall},
		"the wall falls with it, fed":  {first: 30, wall: 34, after: held(30, 26), supply: needed + 20, is: true, of: prove.Regulator},
		"the wall falls, nothing else": {first: 30, wall: 34, after: held(30, 26), is: true, of: prove.Untold},
	} {
		t.Run(name, func(t *testing.T) {
			s := prove.Seen{First: unit.PSIG(c.first), FirstWall: unit.PSIG(c.wall), Supply: unit.PSIG(c.supply)}
			f := prove.Judge(&r, a, []learn.Taken{held(20, 15), c.after}, &s).Fall
			require.NotNil(t, f)
			assert.Equal(t, c.is, f.Is)
			assert.Equal(t, c.of, f.Of, f.Of.String())
		})
	}
	closed := held(34, 26)
	closed.Opening = 0.5
	assert.Nil(t, prove.Judge(&r, a, []learn.Taken{closed}, &prove.Seen{First: unit.PSIG(30)}).Fall, "only the open valve shows what the line gives")
}

// The regulator of a supply that its compressor cannot hold is not what falls.
func TestTheCompressorsFiguresTellOfTheSupply(t *testing.T) {
	r := calctest.MildClear(t)
	a := found(t, &r)
	a.Setup.Supplied.Checked = true
	f := prove.Judge(&r, a, []learn.Taken{held(31, 26)}, &prove.Seen{First: unit.PSIG(30)}).Fall
	assert.Equal(t, prove.Supply, f.Of)
	a.Setup.Supplied.Verdict.OK = true
	f = prove.Judge(&r, a, []learn.Taken{held(31, 26)}, &prove.Seen{First: unit.PSIG(30)}).Fall
	assert.Equal(t, prove.Untold, f.Of)
}

// What the regulator must be fed by a gauge before the inlet valve: as for the same gun by one
// after it, which shows less.
func TestTheSupplyNeededByEitherGauge(t *testing.T) {
	r := calctest.MildClear(t)
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	working := s.Working.Pressure
	want := r.SupplyFor(s, s.Wall.Flowing, working)
	for _, step := range s.Line {
		if step.Kind.String() == "regulator" {
			assert.GreaterOrEqual(t, want, step.Out, "no less than it lets through")
		}
	}
	atFoot := r
	atFoot.Gauge = calc.AtFoot
	foot, err := calc.Solve(&atFoot)
	require.NoError(t, err)
	assert.InDelta(t, want.PSI(), atFoot.SupplyFor(foot, s.Wall.Flowing, foot.Working.ReadsOpen).PSI(), 1e-3)
}

// The push is expected where the plan's settings hold the gun, and the gun is held where it is
// felt, but no nearer and no farther than its class is held.
func TestTheGunIsHeldWhereThePushIsFelt(t *testing.T) {
	r := calctest.MildClear(t)
	a := found(t, &r)
	for inches, want := range map[float64]float64{5.4: 5.4, 3: 5, 9: 6} {
		p := prove.Judge(&r, a, nil, &prove.Seen{Felt: unit.Inches(inches)}).Push
		require.NotNil(t, p)
		assert.True(t, p.Known)
		assert.InDelta(t, want, p.Hold.Target.Inches(), 1e-9)
	}
	p := prove.PushOf(&r, a)
	assert.Less(t, p.Low, p.High)
	p.Felt = p.Low - unit.Inches(1)
	assert.InDelta(t, -1, p.Off().Inches(), 1e-9)
	p.Felt = p.High + unit.Inches(1)
	assert.InDelta(t, 1, p.Off().Inches(), 1e-9)
	p.Felt = p.Low
	assert.Zero(t, p.Off())
}

// A stage that is held at twice the distance is held at twice where the push is felt, and the
// push is expected at half of where it is held.
func TestAStageHeldAtTwiceTheDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := calctest.MildClear(t)
		r.Coat.Stage.Times = rapid.Float64Range(1, 3).Draw(t, "times")
		r.Coat.Farther = unit.Inches(rapid.Float64Range(0, 1).Draw(t, "farther"))
		held := unit.Inches(rapid.Float64Range(5, 6).Draw(t, "held") * r.Coat.Stage.Times)
		assert.InDelta(t, float64(held), float64(r.DistanceFelt(r.PushFor(held)).Target), 1e-12)
	})
}

// A distance that the sheet gives is held whatever is felt, and nothing is expected of the push.
func TestASheetsDistanceStands(t *testing.T) {
	r := calctest.MildClear(t)
	r.Coat.Stage.Held = calc.Between[unit.Length]{Low: unit.Inches(7), High: unit.Inches(7), Ground: calc.Ground{Basis: calc.Sheet}}
	p := prove.Judge(&r, found(t, &r), nil, &prove.Seen{Felt: unit.Inches(5)}).Push
	assert.False(t, p.Known)
	assert.Zero(t, p.Off())
	assert.InDelta(t, 7, p.Hold.Target.Inches(), 1e-9)
}

// film is two coats of 1 mil dry each at half solids, 0.9 to 1.2 mil a coat: 1.8 to 2.4 mil wet.
func film(combs ...calc.CombReading) *calc.FilmRequest {
	r := &calc.FilmRequest{Combs: combs}
	r.Solids.Value, r.Dry.Value, r.Coats.Value = 0.5, mil(2), 2
	r.Usual = calc.UsualCoats{Coats: 2, Low: mil(0.9), High: mil(1.2)}
	r.Wants = calc.FilmWants{Known: true, Low: mil(1.5), High: mil(3)}
	return r
}

func mil(n float64) unit.Length { return unit.Length(n * 25.4e-6) }

// A comb in the range will do; one over it asks for a hand as much faster as the film is thick,
// since a film falls as one over the gun's speed, one under it for a slower one.
func TestTheCombAgainstWhatACoatIsLaidAt(t *testing.T) {
	r := calctest.MildClear(t)
	r.Coat.Stage.Film = calc.Between[unit.Length]{}
	a := found(t, &r)
	judge := func(f *calc.FilmRequest) *prove.Film { return prove.Judge(&r, a, nil, &prove.Seen{Film: f}).Film }
	f := judge(film())
	assert.InDeltaSlice(t, []float64{1.8, 2.4, 2}, []float64{float64(f.Low / mil(1)), float64(f.High / mil(1)), float64(f.Usual / mil(1))}, 1e-9)
	for _, c := range []struct{ wet, next, times, off float64 }{{2, 2.5, 1, 0}, {1.5, 2, 1, 0}, {3, 3, 1.5, 0.6}, {3, 4, 1.75, 0.6}, {1, 1.5, 0.625, -0.3}} {
		f := judge(film(calc.CombReading{Wetted: mil(c.wet), Next: mil(c.next)}))
		assert.InDelta(t, c.times, f.Times, 1e-9, c)
		assert.InDelta(t, c.off, float64(f.Off()/mil(1)), 1e-9, c)
	}
	r.Coat.Stage.Film = calc.Between[unit.Length]{Low: mil(0.4), High: mil(0.6), Ground: calc.Ground{Basis: calc.CommonPractice}}
	f = judge(film())
	assert.InDeltaSlice(t, []float64{0.8, 1.2}, []float64{float64(f.Low / mil(1)), float64(f.High / mil(1))}, 1e-9, "the stage's own")
	assert.Nil(t, judge(&calc.FilmRequest{}), "a film of nothing is no film")
}

// Each thing wrong with a pattern is one sign, told once.
func TestSignsOfThePatterns(t *testing.T) {
	for _, c := range []struct {
		pattern, flood string
		want           []string
	}{{"", "", nil}, {"even", "even", nil}, {"split", "even", []string{"split"}}, {"split", "split", []string{"split"}}, {"narrow", "split", []string{"narrow", "split"}}} {
		s := prove.Seen{Pattern: c.pattern, Flood: c.flood}
		assert.Equal(t, c.want, s.Signs())
	}
}
