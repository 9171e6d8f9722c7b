package coat_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// The arithmetic of these was worked apart from this package; the jobs are invented.
func TestVolumesOfWorkedJobs(t *testing.T) {
	for _, c := range []struct {
		name                           string
		area, um, solids, te, want, up float64
	}{
		{"clear, 65 % landing", 4, 55, 0.45, 0.65, 0.75, 0.005},
		{"clear, 50 % landing", 4, 55, 0.45, 0.50, 0.98, 0.005},
		{"clear, 35 % landing", 4, 55, 0.45, 0.35, 1.40, 0.005},
		{"base", 4, 15, 0.12, 0.65, 0.77, 0.005},
		{"sealer", 4, 25, 0.35, 0.65, 0.44, 0.005},
		{"surfacer", 1, 100, 0.40, 0.65, 0.38, 0.006},
	} {
		n, err := coat.Job{Area: unit.Area(c.area), Dry: um(c.um), Solids: c.solids, Transfer: c.te}.Need()
		require.NoError(t, err)
		assert.InDelta(t, c.want, n.Volume.Litres(), c.up, c.name)
	}
}

// A finishing magazine: the same job takes 0.66 gal at 30 % transfer and 0.28 at 70 %.
// A corrosion glossary: 30 lb on the part at 75 % need 40 lb.
func TestVolumeScalesAsOneOverTransfer(t *testing.T) {
	at := func(te float64) float64 {
		n, err := coat.Job{Area: 10, Dry: um(50), Solids: 0.4, Transfer: te}.Need()
		require.NoError(t, err)
		return n.Volume.USGallons()
	}
	assert.InDelta(t, 0.283, 0.66*at(0.7)/at(0.3), 0.0005)
	n, err := coat.Job{Area: 10, Dry: um(50), Solids: 0.4, Transfer: 0.75}.Need()
	require.NoError(t, err)
	assert.InDelta(t, 40.0, 30*float64(n.Volume/n.OnPanel), 1e-9)
}

func TestWhereTheMixGoes(t *testing.T) {
	j := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65, Loss: unit.Litres(0.08)}
	n, err := j.Need()
	require.NoError(t, err)
	assert.InDelta(t, n.Volume.Litres(), (n.OnPanel + n.Overspray + n.Loss).Litres(), 1e-12)
	assert.InDelta(t, n.Volume.Litres()-n.OnPanel.Litres(), n.Waste().Litres(), 1e-12)
	assert.Equal(t, 1, n.Fillings)
	cost, err := coat.Cost([]unit.Volume{unit.Litres(0.6), unit.Litres(0.3)}, []float64{50, 80})
	require.NoError(t, err)
	assert.InDelta(t, 54, cost, 1e-9)
	_, err = coat.Cost([]unit.Volume{unit.Litres(1)}, nil)
	assert.EqualError(t, err, "prices 0 prices: give 1 to 1 prices")
	_, err = coat.Cost([]unit.Volume{unit.Litres(1)}, []float64{-1})
	assert.EqualError(t, err, "price -1: give 0 to 1e+05")
}

func TestCostOfAWrongSetting(t *testing.T) {
	j := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65}
	w, err := j.CompareTransfer(0.50, 60)
	require.NoError(t, err)
	assert.InDelta(t, 0.30, w.Share, 1e-9)
	assert.InDelta(t, 0.2256, w.Extra.Litres(), 1e-3)
	assert.InDelta(t, 60*w.Extra.Litres(), w.ExtraCost, 1e-9)
	same, err := j.CompareTransfer(0.65, 60)
	require.NoError(t, err)
	assert.Zero(t, same.Extra)
	_, err = j.CompareTransfer(0, 60)
	assert.EqualError(t, err, "transfer-efficiency 0 %: give 1 to 100 %")
}

// Common practice, no published source: a mid-size car is reckoned at 90 to 110 ft2, a large
// sport utility vehicle at more.
func TestUsualPanels(t *testing.T) {
	of := map[string]coat.Panel{}
	for _, p := range coat.Panels() {
		assert.Less(t, p.Low, p.High, p.ID)
		of[p.ID] = p
	}
	assert.InDelta(t, 15, float64(of["hood"].Low)/squareFoot, 1e-9)
	assert.InDelta(t, 90, float64(of["whole"].Low)/squareFoot, 1e-9)
	assert.InDelta(t, 110, float64(of["whole"].High)/squareFoot, 1e-9)
	assert.Greater(t, of["whole-suv"].Low, of["whole"].High)
}

// By hand: 0.75 L out of a 0.6 L cup that keeps 80 mL back each time takes two fillings, of
// 1.5 L three; each loses its own.
func TestEachFillingLosesItsOwn(t *testing.T) {
	j := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65, Loss: unit.Litres(0.08), Cup: unit.Litres(0.6)}
	n, err := j.Need()
	require.NoError(t, err)
	assert.Equal(t, 2, n.Fillings)
	assert.InDelta(t, 0.16, n.Loss.Litres(), 1e-12)
	assert.InDelta(t, n.Sprayed().Litres()+0.16, n.Volume.Litres(), 1e-12)
	j.Area = 8
	n, err = j.Need()
	require.NoError(t, err)
	assert.Equal(t, 3, n.Fillings)
	j.Cup = unit.Litres(0.08)
	n, err = j.Need()
	require.NoError(t, err)
	assert.Equal(t, int(math.Ceil(n.Sprayed().Litres()/0.008)), n.Fillings, "a tenth of each comes out")
}

// By hand: passes over a square metre, 75 mm past either end, spray 15 % past it; over four
// 7.5 %.
func TestWhatGoesPastTheEnds(t *testing.T) {
	for area, want := range map[unit.Area]float64{1: 0.15, 4: 0.075} {
		s, err := coat.LeadShare(area, unit.MM(75))
		require.NoError(t, err)
		assert.InDelta(t, want, s, 1e-12)
		n, err := coat.Job{Area: area, Dry: um(50), Solids: 0.5, Transfer: 0.5, Lead: s}.Need()
		require.NoError(t, err)
		assert.InDelta(t, want, float64(n.Lead/(n.OnPanel+n.Overspray)), 1e-12)
		assert.InDelta(t, n.Volume.Litres(), (n.OnPanel + n.Overspray + n.Lead).Litres(), 1e-12)
	}
}

func TestMoreTransferNeverNeedsMorePaint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := coat.Job{
			Area:     unit.Area(rapid.Float64Range(0.01, 50).Draw(t, "area")),
			Dry:      um(rapid.Float64Range(5, 300).Draw(t, "dry")),
			Solids:   rapid.Float64Range(0.05, 1).Draw(t, "solids"),
			Transfer: rapid.Float64Range(0.05, 0.9).Draw(t, "te"),
			Loss:     unit.Litres(rapid.Float64Range(0, 0.2).Draw(t, "loss")),
		}
		less, err := j.Need()
		require.NoError(t, err)
		better := j
		better.Transfer = rapid.Float64Range(j.Transfer, 1).Draw(t, "better")
		more, err := better.Need()
		require.NoError(t, err)
		assert.LessOrEqual(t, more.Volume, less.Volume)
		assert.Equal(t, less.OnPanel, more.OnPanel)
		w, err := j.CompareTransfer(better.Transfer, 10)
		require.NoError(t, err)
		assert.LessOrEqual(t, w.Extra.Litres(), 0.0)
	})
}
