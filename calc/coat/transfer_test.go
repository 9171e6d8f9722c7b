package coat_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

var hvlp = coat.GunTransfer{Transfer: 0.65, Pressure: unit.PSIG(25), Distance: unit.Inches(6)}

func TestTransferAtTheReferenceIsTheClasss(t *testing.T) {
	te, err := hvlp.At(hvlp.Pressure, hvlp.Distance)
	require.NoError(t, err)
	assert.InDelta(t, 0.65, te.Value, 1e-12)
	assert.InDelta(t, 0.4875, te.Low, 1e-12)
	assert.InDelta(t, 0.8125, te.High, 1e-12)
}

func TestThreeInchesFartherCosts(t *testing.T) {
	te, err := hvlp.At(hvlp.Pressure, unit.Inches(9))
	require.NoError(t, err)
	assert.InDelta(t, 0.65*0.850, te.Value, 1e-3) // 1.5^-0.4
	w, err := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65}.CompareTransfer(te.Value, 0)
	require.NoError(t, err)
	assert.InDelta(t, 0.176, w.Share, 1e-3)
}

func TestTransferGivenNonsense(t *testing.T) {
	_, err := hvlp.At(0, unit.Inches(6))
	assert.EqualError(t, err, "pressure 0 psi: give 1 to 150 psi")
	_, err = hvlp.At(unit.PSIG(25), unit.Inches(60))
	assert.EqualError(t, err, "distance 60 in: give 2 to 30 in")
	_, err = coat.GunTransfer{}.At(unit.PSIG(25), unit.Inches(6))
	assert.ErrorContains(t, err, "class-transfer 0 %")
}

func TestFartherOrHarderNeverTransfersMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := coat.GunTransfer{
			Transfer: rapid.Float64Range(0.1, 0.9).Draw(t, "te"),
			Pressure: unit.PSIG(rapid.Float64Range(10, 60).Draw(t, "p0")),
			Distance: unit.Inches(rapid.Float64Range(4, 12).Draw(t, "d0")),
		}
		p := rapid.Float64Range(1, 150).Draw(t, "p")
		d := rapid.Float64Range(2, 30).Draw(t, "d")
		here, err := g.At(unit.PSIG(p), unit.Inches(d))
		require.NoError(t, err)
		harder, err := g.At(unit.PSIG(rapid.Float64Range(p, 150).Draw(t, "harder")), unit.Inches(d))
		require.NoError(t, err)
		farther, err := g.At(unit.PSIG(p), unit.Inches(rapid.Float64Range(d, 30).Draw(t, "farther")))
		require.NoError(t, err)
		assert.LessOrEqual(t, harder.Value, here.Value)
		assert.LessOrEqual(t, farther.Value, here.Value)
		assert.LessOrEqual(t, here.Low, here.Value)
		assert.GreaterOrEqual(t, here.High, here.Value)
		assert.GreaterOrEqual(t, here.Low, 0.1)
		assert.LessOrEqual(t, here.High, 0.9)
	})
}
