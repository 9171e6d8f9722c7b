package coat_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

func TestRatiosAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string][]float64{
		"4:1:1":       {4, 1, 1},
		" 4 : 1 : 1 ": {4, 1, 1},
		"2:1+10%":     {2, 1, 0.3},
		"2:1 + 10 %":  {2, 1, 0.3},
		"100:50:30":   {100, 50, 30},
		"10%":         {1, 0.1},
		"2:1:0,5":     {2, 1, 0.5},
		"3:1+5%":      {3, 1, 0.2},
		"1:1":         {1, 1},
		"2:1:0":       {2, 1, 0},
	} {
		r, err := coat.ParseRatio(text)
		require.NoError(t, err, text)
		assert.InDeltaSlice(t, want, r.Parts, 1e-12, text)
	}
}

func TestTextsThatAreNoRatio(t *testing.T) {
	for _, text := range []string{
		"", "4", ":", "4:", "0:1", "a:b", "4:-1", "4:1:1:1:1:1:1", "1e3:1", "0x4:1", "4:1%", "4+1", "10%%", "+10%",
		"2:1+10%+5%", "2:1+300%", "NaN:1", "Inf:1", "1_0:1", "99999:1", "10% 5", strings.Repeat("1:", 90),
	} {
		_, err := coat.ParseRatio(text)
		var bad *coat.RatioError
		require.ErrorAs(t, err, &bad, text)
		assert.Contains(t, err.Error(), `give parts as "4:1:1"`)
		assert.Less(t, len(err.Error()), 300)
	}
}

func TestSplitByRatio(t *testing.T) {
	r, err := coat.ParseRatio("4:1:1")
	require.NoError(t, err)
	v, err := r.Split(unit.Litres(0.9))
	require.NoError(t, err)
	assert.InDeltaSlice(t, []float64{0.6, 0.15, 0.15}, []float64{v[0].Litres(), v[1].Litres(), v[2].Litres()}, 1e-12)
	s, err := r.Solids([]float64{0.48, 0.60})
	require.NoError(t, err)
	assert.InDelta(t, (4*0.48+0.60)/6, s, 1e-12)
	_, err = r.Solids([]float64{0.4, 0.4, 0.4, 0.4})
	assert.ErrorContains(t, err, "parts-with-solids 4 parts: give 0 to 3 parts")
	_, err = coat.Ratio{}.Split(unit.Litres(1))
	assert.EqualError(t, err, "parts 0 parts: give 1 to 6 parts")
	_, err = coat.Ratio{Parts: []float64{1, -1}}.Split(unit.Litres(1))
	assert.ErrorContains(t, err, "part -1 parts")
}

func FuzzParseRatio(f *testing.F) {
	for _, s := range []string{"4:1:1", "2:1+10%", "100:50:30", "10%", "2:1:0,5", "\xff:1", "1:.:1", "10000:10000:10000+20%"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := coat.ParseRatio(s)
		if err != nil {
			var bad *coat.RatioError
			assert.ErrorAs(t, err, &bad)
			return
		}
		back, err := coat.ParseRatio(r.String())
		require.NoError(t, err, "%q gave %q", s, r.String())
		require.Len(t, back.Parts, len(r.Parts))
		assert.InDeltaSlice(t, r.Parts, back.Parts, 1e-4)
		v, err := r.Split(unit.Litres(1))
		require.NoError(t, err)
		sum := 0.0
		for _, part := range v {
			assert.GreaterOrEqual(t, float64(part), 0.0)
			sum += part.Litres()
		}
		assert.InDelta(t, 1, sum, 1e-12)
	})
}
