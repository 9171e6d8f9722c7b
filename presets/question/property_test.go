package question_test

import (
	"fmt"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// gets is the pressure at the gun that the supply can give, up to the target.
func gets(s *calc.Setup) unit.Gauge {
	if s.Short.Is {
		return s.Short.Best
	}
	return s.Working.Pressure
}

// notLower asserts b >= a, but for the last digits of the root finding.
func notLower[T ~float64](t *rapid.T, a, b T, what string) {
	if float64(b) < float64(a)-1e-6 { // of a pascal
		t.Fatalf("%s: %v Pa fell to %v Pa", what, float64(a), float64(b))
	}
}

func TestEveryAnswerIsFiniteAndWithinItself(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		q, s := solved(t, r, questiontest.Drawer{T: t}.AnyLine(r, false))
		require.Empty(t, questiontest.Unsound(s, "setup"))
		assert.GreaterOrEqual(t, float64(s.Valve.Opening), 0.0)
		assert.LessOrEqual(t, s.Valve.Opening, 1.0)
		nearest, farthest := q.Held()
		assert.GreaterOrEqual(t, s.Distance.Target, nearest)
		assert.LessOrEqual(t, s.Distance.Target, farthest)
		assert.LessOrEqual(t, s.Distance.Low, s.Distance.Target)
		assert.GreaterOrEqual(t, s.Distance.High, s.Distance.Target)
		assert.LessOrEqual(t, s.Working.Pressure, s.Working.Highest+1e-6)
		if q.Gun.CapLimit > 0 {
			assert.LessOrEqual(t, float64(s.Working.Cap), float64(q.Gun.CapLimit)*(1+1e-9))
		}
		if !s.Short.Is {
			assert.LessOrEqual(t, float64(s.Wall.Open), float64(s.Wall.Flowing)+1e-6)
			assert.LessOrEqual(t, float64(s.Wall.Flowing), float64(s.Wall.Static)+1e-6)
		} else {
			assert.Less(t, s.Short.Best, s.Working.Pressure)
			assert.Greater(t, s.Short.Needed, q.Supply)
			assert.GreaterOrEqual(t, s.Verdict, calc.VerdictWait)
			assert.True(t, s.Stopped() || s.Short.Best >= q.Coat.Working.Low, "under the coat's band nothing is sprayed")
		}
		if q.Gauge == calc.NoGauge {
			assert.Zero(t, s.Working.Reads)
		} else {
			assert.GreaterOrEqual(t, float64(s.Working.Reads), float64(gets(s))-1e-6)
		}
	})
}

func TestTheShopsAirIsAnsweredInFiniteFigures(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		d := questiontest.Drawer{T: t}
		texts := d.AnyLine(r, true)
		q, s := solved(t, r, texts)
		require.Empty(t, questiontest.Unsound(s, "setup"))
		// Where the line itself cannot be fed there is one verdict, and it is that.
		require.Equal(t, !s.Short.Is, s.Supplied.Checked)
		if s.Short.Is {
			return
		}
		v := s.Supplied.Verdict
		assert.True(t, v.FromFull.Endless || !v.Hold.Endless && v.Hold.Time <= v.FromFull.Time, "a full receiver holds as long at least")
		assert.Equal(t, v.OK, v.Hold.Endless || v.Hold.Time >= q.Shop.Spraying)
	})
}

// Each part takes in what the one before lets out, no part gives pressure, and the
// shares of what is lost up to the gun add to the whole.
func TestTheLineHangsTogether(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		_, s := solved(t, r, questiontest.Drawer{T: t}.AnyLine(r, false))
		var shares float64
		for i, p := range s.Line {
			assert.InDelta(t, float64(p.In-p.Out), float64(p.Loss), 1e-6, p.Name)
			assert.GreaterOrEqual(t, float64(p.Loss), -1e-6, p.Name)
			assert.GreaterOrEqual(t, p.Mach, 0.0, p.Name)
			assert.LessOrEqual(t, p.Mach, 1.0, p.Name)
			if i > 0 && s.Line[i-1].Kind != line.RegulatorKind && p.Kind != line.RegulatorKind {
				assert.InDelta(t, float64(s.Line[i-1].Out), float64(p.In), 1e-3, "%s after %s", p.Name, s.Line[i-1].Name)
			}
			shares += p.Share
		}
		assert.InDelta(t, 1, shares, 1e-9)
		assert.Equal(t, line.CapKind, s.Line[len(s.Line)-1].Kind)
		assert.InDelta(t, 0, float64(s.Line[len(s.Line)-1].Out), 1e-6, "the cap blows into the booth")
		worst := s.Line[s.Bottleneck].Kind
		assert.NotContains(t, []line.Kind{line.PassagesKind, line.CapKind}, worst)
	})
}

func TestMoreSupplyNeverLowersWhatTheGunCanGet(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		texts := questiontest.Drawer{T: t}.AnyLine(r, false)
		low := rapid.Float64Range(1, 90).Draw(t, "lower supply")
		high := low + rapid.Float64Range(0, 60).Draw(t, "more")
		_, before := solved(t, r, questiontest.With(texts, "supply", fmt.Sprintf("%.4fpsi", low)))
		_, after := solved(t, r, questiontest.With(texts, "supply", fmt.Sprintf("%.4fpsi", high)))
		notLower(t, gets(before), gets(after), "at the gun")
		if !before.Short.Is {
			assert.False(t, after.Short.Is)
		}
		assert.InDelta(t, float64(before.Wall.Open), float64(after.Wall.Open), 1e-6, "what the open valve needs is not the supply's")
	})
}

// worse asserts that a line which passes less air never lowers the wall needed nor
// raises what the gun can get.
func worse(t *rapid.T, r *question.Reader, better, worse question.Texts) {
	_, b := solved(t, r, better)
	_, w := solved(t, r, worse)
	notLower(t, b.Wall.Open, w.Wall.Open, "wall needed")
	notLower(t, gets(w), gets(b), "at the gun, the worse line first")
	notLower(t, b.Now.GunIfOpen*-1, w.Now.GunIfOpen*-1, "at the gun from the wall as it stands, with its sign turned")
}

func TestLongerOrThinnerHoseIsNeverBetter(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		texts := questiontest.Drawer{T: t}.Plan(r)
		feet := rapid.Float64Range(0.5, 100).Draw(t, "feet")
		mm := rapid.Float64Range(4, 15).Draw(t, "mm")
		hose := func(feet, mm float64) question.Texts {
			with := questiontest.With(texts, "hose", fmt.Sprintf("%.4fft,%.4fmm", feet, mm))
			with["hose"] = append(with["hose"], texts["hose"][1:]...)
			return with
		}
		worse(t, r, hose(feet, mm), hose(feet+rapid.Float64Range(0, 100).Draw(t, "longer"), mm))
		worse(t, r, hose(feet, mm), hose(feet, mm-rapid.Float64Range(0, 1).Draw(t, "thinner")))
	})
}

// One coupling is smaller than another where neither its conductance nor its critical ratio
// is greater (ISO 6358); the shipped ones that are, and any beside none.
func TestSmallerCouplingIsNeverBetter(t *testing.T) {
	r := questiontest.Open(t)
	pairs := [][2]string{}
	for _, c := range r.Catalogue.Couplings {
		pairs = append(pairs, [2]string{"none", c.ID})
		for _, d := range r.Catalogue.Couplings {
			big, small := c.Of.Restriction(), d.Of.Restriction()
			if c.ID != d.ID && small.C <= big.C && small.B <= big.B {
				pairs = append(pairs, [2]string{c.ID, d.ID})
			}
		}
	}
	require.Greater(t, len(pairs), len(r.Catalogue.Couplings), "some are smaller than others")
	rapid.Check(t, func(t *rapid.T) {
		texts := questiontest.Drawer{T: t}.Plan(r)
		for _, p := range pairs {
			worse(t, r, questiontest.With(texts, "coupling", p[0]), questiontest.With(texts, "coupling", p[1]))
		}
	})
}

func TestSmallerRegulatorOrDirtierFilterNeverGivesTheGunMore(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		texts := questiontest.Drawer{T: t}.Plan(r)
		check := func(field string, sizes ...string) {
			var before unit.Gauge
			for i, size := range sizes {
				texts = questiontest.With(texts, field, size)
				_, s := solved(t, r, texts)
				if i > 0 {
					notLower(t, gets(s), before, "at the gun, the worse line first: "+size)
				}
				before = gets(s)
			}
		}
		check("filter", "none", "point-of-use", "clogged")
		check("regulator", "none", "1/2in", "3/8in", "1/4in")
	})
}
