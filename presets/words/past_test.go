package words_test

import (
	"math"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// A value that is past a bound never prints like it: nobody is told that 100% is outside 1 to
// 100%.
func TestAValuePastItsBoundPrintsOtherwise(t *testing.T) {
	w := words.English()
	assert.Equal(t, "100.2% is outside 1 to 100%", w.Text(unit.US, "outside", calc.HumidityBound.Figures(1.002)))
	assert.Equal(t, "0.99% is outside 1 to 100%", w.Text(unit.US, "outside", calc.HumidityBound.Figures(0.0099)))
	assert.Equal(t, "450% is outside 1 to 100%", w.Text(unit.US, "outside", calc.HumidityBound.Figures(4.5)))
	assert.Equal(t, "20.69 bar is outside 0.0689 to 20.68 bar", w.Text(unit.Metric, "outside", calc.SupplyBound.Figures(float64(unit.BarG(20.69)))))
	assert.Equal(t, "9999 psi is outside 1 to 300 psi", w.Text(unit.US, "outside", calc.SupplyBound.Figures(float64(unit.PSIG(9999)))), "as it was typed")
	bounds := []*calc.Bound{&calc.HumidityBound, &calc.SupplyBound, &calc.AirTempBound, &calc.AltitudeBound, &calc.FilmBound, &calc.MarkBound, &calc.PanelsBound, &calc.PriceBound, &calc.CupVolumeBound, &calc.DistanceBound}
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.SampledFrom(bounds).Draw(t, "bound")
		sys := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
		v := b.High + (b.High-b.Low)*math.Pow(10, rapid.Float64Range(-6, 2).Draw(t, "past"))
		end := "high"
		if rapid.Bool().Draw(t, "below") {
			v, end = b.Low-(b.High-b.Low)*math.Pow(10, rapid.Float64Range(-6, 2).Draw(t, "below")), "low"
		}
		texts := map[string]string{}
		for _, f := range b.Figures(v) {
			f.WithoutUnit = true
			texts[f.Name] = w.FigureText(sys, f)
		}
		if texts["given"] == texts[end] {
			t.Fatalf("%s is outside %s to %s", texts["given"], texts["low"], texts["high"])
		}
		if strings.Contains(texts["given"], "e") {
			t.Fatal(texts["given"])
		}
	})
}
