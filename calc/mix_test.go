package calc_test

import (
	"reflect"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// mixRequest is 4 m2 of the application, out of a 0.6 L cup that keeps nothing back.
func mixRequest(change ...func(*calc.MixRequest)) *calc.MixRequest {
	r := &calc.MixRequest{
		Application: application(),
		Panels:      []calc.PanelArea{{Name: "4m2", Low: 4, High: 4}},
		Cup:         calc.Stated[unit.Volume]{Value: unit.Litres(0.6), Ground: estimate},
		Loss:        calc.Stated[unit.Volume]{Ground: estimate},
		Booth:       calc.SheetTemp,
	}
	for _, c := range change {
		c(r)
	}
	return r
}

func mixOf(t require.TestingT, r *calc.MixRequest) calc.MixAnswer {
	a, err := calc.SolveMix(r)
	require.NoError(t, err)
	return a
}

// The jobs are invented, their arithmetic was worked apart from this package.
func TestVolumesOfWorkedJobs(t *testing.T) {
	for _, c := range []struct {
		name                       string
		area, um, solids, te, want float64 // want in L
	}{
		{"clear, 65 % landing", 4, 55, 0.45, 0.65, 0.75},
		{"clear, 50 % landing", 4, 55, 0.45, 0.50, 0.98},
		{"clear, 35 % landing", 4, 55, 0.45, 0.35, 1.40},
		{"base", 4, 15, 0.12, 0.65, 0.77},
		{"sealer", 4, 25, 0.35, 0.65, 0.44},
		{"surfacer", 1, 100, 0.40, 0.65, 0.38},
	} {
		a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
			r.Panels[0].Low, r.Panels[0].High = unit.Area(c.area), unit.Area(c.area)
			r.Dry.Value = unit.Length(c.um) * coat.Micrometre
			r.Solids.Value, r.Held.Class.Value.Transfer = c.solids, c.te
		}))
		assert.InDelta(t, c.want, a.Need.Volume.Litres(), 0.006, c.name)
	}
}

// Paint makers' coverage: 65 % solids at 5 mil cover 208.5 ft2 a gallon, 35 % at 2 mil
// 281 (read), 52 % landing 35 % at 1.5 mil 194.5; so such an area takes a gallon.
func TestAreaThatAGallonCovers(t *testing.T) {
	const ft2 = unit.MetrePerFoot * unit.MetrePerFoot
	for _, c := range []struct{ area, mil, solids, te, share float64 }{
		{208.5 * 0.9, 5, 0.65, 0.9, 1},
		{280.7 * 0.5, 2, 0.35, 0.5, 1},
		{194.5, 1.5, 0.52, 0.35, 1},
	} {
		a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
			r.Panels[0].Low, r.Panels[0].High = unit.Area(c.area*ft2), unit.Area(c.area*ft2)
			r.Dry.Value = unit.Length(c.mil) * coat.Mil
			r.Solids.Value, r.Held.Class.Value.Transfer = c.solids, c.te
		}))
		assert.InDelta(t, c.share, a.Need.Volume.USGallons(), 0.001)
	}
}

// A finishing magazine: the same job takes 0.66 gal at 30 % landing, 0.28 at 70 %.
func TestMoreLandingTakesLess(t *testing.T) {
	at := func(te float64) float64 {
		return mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Held.Class.Value.Transfer = te })).Need.Volume.USGallons()
	}
	assert.InDelta(t, 0.283, 0.66*at(0.7)/at(0.3), 0.0005)
}

func TestWhereTheMixGoesAndWhatItCosts(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.Loss.Value = unit.Litres(0.08)
		r.Ratio = calc.Stated[coat.Ratio]{Value: coat.Ratio{Parts: []float64{4, 1, 1}}, Ground: sheet}
		r.Prices = []float64{60, 90, 30}
	}))
	n := a.Need
	assert.InDelta(t, n.Volume.Litres(), (n.OnPanel + n.Overspray + n.Loss).Litres(), 1e-12)
	require.Len(t, a.Parts, 3)
	assert.InDelta(t, n.Volume.Litres()*4/6, a.Parts[0].Litres(), 1e-12)
	assert.InDelta(t, n.Volume.Litres(), (a.Parts[0] + a.Parts[1] + a.Parts[2]).Litres(), 1e-12)
	assert.InDelta(t, 60*n.Volume.Litres(), a.Cost, 1e-9, "4:1:1 at 60, 90 and 30 is 60 a litre")
	assert.InDelta(t, 60*n.Waste().Litres(), a.WasteCost, 1e-9)
	assert.Equal(t, 2, a.Need.Fillings, "0.83 L from a 0.6 L cup")
}

// Farther out less lands, by the gun class's estimate (5.5/8.5)^0.4 of it; with the
// valve choked nine tenths of that.
func TestWhatWrongSettingsCost(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Prices = []float64{60} }))
	require.Len(t, a.Wrong, 2)
	far, choked := a.Wrong[0], a.Wrong[1]
	assert.InDelta(t, 8.5, far.Distance.Inches(), 1e-9)
	assert.False(t, far.Choked)
	assert.InDelta(t, 0.65*0.8402, far.Transfer, 1e-4)
	assert.InDelta(t, 1/0.8402-1, far.Share, 1e-3)
	assert.InDelta(t, far.Extra.Litres()*60, far.ExtraCost, 1e-9)
	assert.True(t, choked.Choked)
	assert.InDelta(t, far.Transfer*0.9, choked.Transfer, 1e-12)
	assert.Greater(t, choked.Extra, far.Extra)
	as30 := mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Held.Distance = unit.Inches(30) }))
	assert.Empty(t, as30.Wrong, "no gun is held farther")
}

func TestUsualPanelsAreABand(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.Panels = []calc.PanelArea{{Low: 1, High: 1}, {Low: 2, High: 4, Usual: true}}
	}))
	assert.InDelta(t, 4, float64(a.Area), 1e-12)
	assert.InDelta(t, 3, float64(a.AreaLow), 1e-12)
	assert.InDelta(t, 5, float64(a.AreaHigh), 1e-12)
	assert.Contains(t, cautionIDs(a.Cautions), "mix-areas-usual")
	assert.InEpsilon(t, 3.0/4/1.25, float64(a.Low/a.Need.Volume), 1e-9, "least area, most landing")
	assert.InEpsilon(t, 5.0/4/0.75, float64(a.High/a.Need.Volume), 1e-9)
	typed := mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Held.Typed = true }))
	assert.Equal(t, typed.Low, typed.High, "nothing is guessed")
	assert.NotContains(t, cautionIDs(typed.Cautions), "mix-areas-usual")
	assert.False(t, typed.About)
}

// The pot life of the sheet halves for each 10 C (a federal guide specification), and
// the mix must not outlast it.
func TestPotLifeOfTheMix(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.PotLife, r.PotLifeAt, r.Booth, r.Rate = 4*time.Hour, calc.SheetTemp, unit.Celsius(30), coat.MLPerMin(200)
	}))
	assert.Equal(t, 2*time.Hour, a.PotLife.Life)
	assert.Less(t, a.PotLife.Safe, a.PotLife.Life)
	assert.Equal(t, 1, a.Batches)
	assert.InDelta(t, a.Need.Volume.Litres()*1000/200, a.Trigger.Minutes(), 1e-6)
	assert.Contains(t, cautionIDs(a.Cautions), "mix-pot-life-known")
	long := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.Panels[0].Low, r.Panels[0].High = 200, 200
		r.PotLife, r.PotLifeAt, r.Rate = time.Hour, calc.SheetTemp, coat.MLPerMin(100)
	}))
	assert.Equal(t, 8, long.Batches, "188 min of trigger a coat, of the hour three quarters at the most")
	assert.Contains(t, cautionIDs(long.Cautions), "mix-past-pot-life-coat")
	assert.False(t, long.Stopped(), "a caution, not an end")
}

// Coat by coat where the pot life does not cover all. By hand: two coats of 4 m2 at 100 mL/min
// are 3.76 min of trigger each, with the wait between them 17.5 min.
func TestBatchesByTheCoat(t *testing.T) {
	at := func(life time.Duration) calc.MixAnswer {
		return mixOf(t, mixRequest(func(r *calc.MixRequest) { r.PotLife, r.PotLifeAt, r.Rate = life, calc.SheetTemp, coat.MLPerMin(100) }))
	}
	all := at(30 * time.Minute)
	assert.InDelta(t, 17.5, all.Elapsed.Minutes(), 0.1)
	assert.Equal(t, []int{1, 2}, []int{all.Batches, all.BatchCoats})
	assert.InDelta(t, all.Need.Volume.Litres(), all.Batch.Litres(), 1e-12)
	each := at(17 * time.Minute)
	assert.Equal(t, []int{2, 1}, []int{each.Batches, each.BatchCoats}, "17 min are safe")
	assert.InDelta(t, each.Need.Volume.Litres()/2, each.Batch.Litres(), 1e-12)
	assert.Contains(t, cautionIDs(each.Cautions), "mix-past-pot-life")
}

// Panels of their own size each lose past their ends by it: of four square metres in one 7.5 %
// at 75 mm, of two panels of two 10.6 %.
func TestSmallPanelsLoseMorePastTheirEnds(t *testing.T) {
	past := func(n int) float64 {
		a := mixOf(t, mixRequest(func(r *calc.MixRequest) { r.Lead.Value, r.Panels[0].Count = unit.MM(75), n }))
		return float64(a.Need.Lead / (a.Need.OnPanel + a.Need.Overspray))
	}
	assert.InDelta(t, 0.075, past(1), 1e-9)
	assert.InDelta(t, 0.106, past(2), 1e-4)
}

// 4:1:1 by weight, and the VOC of a mix that was thinned: by hand (420 + 0.1 x 880)/1.1 is
// 461.8 g/L.
func TestWeightsAndVOCOfAMix(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.Ratio = calc.Stated[coat.Ratio]{Value: coat.Ratio{Parts: []float64{4, 1, 1}}, Ground: sheet}
		r.Densities = calc.Stated[[]unit.Density]{Value: []unit.Density{980, 1050, 880}, Ground: sheet}
		r.VOC = calc.VOC{Ready: calc.Stated[unit.Density]{Value: 420, Ground: sheet}, Thinner: calc.Stated[unit.Density]{Value: 880, Ground: sheet}, Limit: 440}
		r.Thinned = 0.1
	}))
	require.Len(t, a.Weights, 3)
	for i, d := range []float64{980, 1050, 880} {
		assert.InEpsilon(t, d*float64(a.Parts[i]), float64(a.Weights[i]), 1e-12)
	}
	assert.InDelta(t, 461.8, float64(a.VOC.Sprayed), 0.05)
	assert.Contains(t, cautionIDs(a.Cautions), "voc-over")
	usual := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.VOC = calc.VOC{Ready: calc.Stated[unit.Density]{Value: 420, Ground: estimate}, Limit: 400}
	}))
	assert.Contains(t, cautionIDs(usual.Cautions), "voc-may-be-over")
	same := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.VOC = calc.VOC{Ready: calc.Stated[unit.Density]{Value: 420, Ground: sheet}, Limit: unit.Density(unit.VOC.Of(unit.US, 3.5))}
	}))
	assert.NotContains(t, cautionIDs(same.Cautions), "voc-over", "420 g/L are 3.5 lb/gal")
	water := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.VOC = calc.VOC{Ready: calc.Stated[unit.Density]{Value: 420, Ground: sheet}, Water: true}
		r.Thinned = 0.1
	}))
	assert.Equal(t, unit.Density(420), water.VOC.Sprayed, "told less water")
	assert.Contains(t, reasonIDs(water.Reasons), "voc-water")
}

func TestProblemsOfAMixNameTheirField(t *testing.T) {
	for _, c := range []struct {
		field, why string
		change     func(*calc.MixRequest)
	}{
		{"area", "0 ft2", func(r *calc.MixRequest) { r.Panels = nil }},
		{"area", "", func(r *calc.MixRequest) { r.Panels[0].High = 2000 }},
		{"area", "beyond any mix", func(r *calc.MixRequest) {
			r.Panels[0].Low, r.Panels[0].High, r.Solids.Value = 900, 900, 0.01
		}},
		{"gun", "how much paint lands", func(r *calc.MixRequest) { r.Held.Known = false }},
		{"cup-size", "", func(r *calc.MixRequest) { r.Cup.Value = 0 }},
		{"loss", "", func(r *calc.MixRequest) { r.Loss.Value = -1 }},
		{"lead", "", func(r *calc.MixRequest) { r.Lead.Value = 1 }},
		{"density", "2 densities for 1 part;", func(r *calc.MixRequest) { r.Densities.Value = []unit.Density{980, 880} }},
		{"density", "", func(r *calc.MixRequest) { r.Densities.Value = []unit.Density{1} }},
		{"voc", "", func(r *calc.MixRequest) { r.VOC.Ready = calc.Stated[unit.Density]{Value: -1, Ground: sheet} }},
		{"price", "2 prices for 0 parts", func(r *calc.MixRequest) { r.Prices = []float64{1, 2} }},
		{"price", "", func(r *calc.MixRequest) { r.Prices = []float64{-1} }},
		{"pot-life", "", func(r *calc.MixRequest) { r.PotLife = time.Second }},
		{"temp", "140 F is outside 41 to 104 F", func(r *calc.MixRequest) {
			r.PotLife, r.PotLifeAt, r.Booth = time.Hour, calc.SheetTemp, unit.Celsius(60)
		}},
		{"fluid-rate", "", func(r *calc.MixRequest) { r.Rate = 1 }},
	} {
		_, err := calc.SolveMix(mixRequest(c.change))
		var p *calc.Problem
		require.ErrorAs(t, err, &p, c.field)
		assert.Equal(t, c.field, p.Field, why(p))
		assert.Contains(t, why(p), c.why)
	}
}

// drawMix is any request that a mix may be asked with.
func drawMix(t *rapid.T) *calc.MixRequest {
	f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return mixRequest(func(r *calc.MixRequest) {
		r.Application = drawFilm(t).Application
		low := f("area", 0.001, 500)
		r.Panels[0].Low, r.Panels[0].High = unit.Area(low), unit.Area(low+f("wider", 0, 500))
		r.Cup.Value = unit.Litres(f("cup", 0.06, 5))
		r.Loss.Value = unit.Litres(f("loss", 0, 5))
		r.Lead.Value = unit.Length(f("lead", 0, 0.3))
		r.Ratio.Value.Parts = rapid.SliceOfN(rapid.Float64Range(0.001, 10000), 2, 6).Draw(t, "parts")
		if rapid.Bool().Draw(t, "priced") {
			r.Prices = make([]float64, len(r.Ratio.Value.Parts))
			for i := range r.Prices {
				r.Prices[i] = f("price", 0, 1e5)
			}
		}
		if rapid.Bool().Draw(t, "pot life") {
			r.PotLifeAt = calc.SheetTemp
			r.PotLife = time.Duration(f("life", 1, 600) * float64(time.Minute))
			r.Booth = unit.Celsius(f("booth", 5.001, 39.999))
			r.Rate = coat.MLPerMin(f("rate", 5, 1500))
		}
	})
}

func TestMixesAreFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, err := calc.SolveMix(drawMix(t))
		if err != nil {
			var p *calc.Problem
			require.ErrorAs(t, err, &p)
			require.Contains(t, why(p), "beyond any mix", "nothing else can go wrong in these ranges")
			return
		}
		finite(t, reflect.ValueOf(a), "mix")
		sum := unit.Volume(0)
		for _, p := range a.Parts {
			sum += p
		}
		assert.InEpsilon(t, float64(a.Need.Volume), float64(sum), 1e-9)
		assert.LessOrEqual(t, float64(a.Low), float64(a.Need.Volume)*(1+1e-9))
		assert.GreaterOrEqual(t, float64(a.High), float64(a.Need.Volume)*(1-1e-9))
		assert.GreaterOrEqual(t, a.Need.Fillings, 1)
	})
}

// More landing never takes more paint; more film, more area, more loss or fewer solids
// never less; a wrong setting never wins.
func TestMixesMoveTheRightWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawMix(t)
		r.Prices, r.Panels[0].High = nil, r.Panels[0].Low
		r.Panels[0].Low = min(r.Panels[0].Low, 10)
		r.Panels[0].High = r.Panels[0].Low
		r.Solids.Value = max(r.Solids.Value, 0.2)
		r.Dry.Value = min(r.Dry.Value, 500*coat.Micrometre)
		a := mixOf(t, r)
		changed := func(change func(*calc.MixRequest)) unit.Volume {
			c := *r
			c.Panels = append([]calc.PanelArea(nil), r.Panels...)
			change(&c)
			return mixOf(t, &c).Need.Volume
		}
		assert.LessOrEqual(t, changed(func(r *calc.MixRequest) {
			te := &r.Held.Class.Value.Transfer
			*te = rapid.Float64Range(*te, 0.9).Draw(t, "better")
		}), a.Need.Volume)
		assert.GreaterOrEqual(t, changed(func(r *calc.MixRequest) { r.Dry.Value *= 1.3 }), a.Need.Volume)
		assert.GreaterOrEqual(t, changed(func(r *calc.MixRequest) { r.Solids.Value *= 0.9 }), a.Need.Volume)
		assert.GreaterOrEqual(t, changed(func(r *calc.MixRequest) { r.Panels[0].Low *= 2; r.Panels[0].High *= 2 }), a.Need.Volume)
		assert.GreaterOrEqual(t, changed(func(r *calc.MixRequest) { r.Held.Distance = min(r.Held.Distance*1.3, unit.Inches(30)) }), a.Need.Volume)
		assert.GreaterOrEqual(t, changed(func(r *calc.MixRequest) { r.Held.Pressure = min(r.Held.Pressure*1.3, unit.PSIG(150)) }), a.Need.Volume)
		for _, w := range a.Wrong {
			assert.GreaterOrEqual(t, w.Extra, unit.Volume(0))
		}
	})
}
