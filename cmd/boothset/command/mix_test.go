package command

import (
	"encoding/json"
	"strings"
	"testing"

	"boothset/presets/answer"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

type mixJSON struct {
	layJSON
	Coats struct{ All int }
	Area  struct {
		Value, Low, High both
		Panels           []struct {
			Name      string
			UsualSize bool `json:"usual_size"`
		}
	}
	Transfer struct{ Value, Low, High float64 }
	Volume   struct {
		Mix, Low, High, Overspray, Loss, Waste both
		OnPanel                                both `json:"on_panel"`
	}
	Ratio *struct {
		Text, Basis string
		Parts       []struct{ Volume both }
	}
	Cups  struct{ Fillings int }
	Cost  *struct{ Mix, Waste float64 }
	Wrong []struct {
		Distance    both
		ValveChoked bool `json:"valve_choked"`
		Transfer    float64
		Extra       both
		Share       float64
		Cost        *float64
	}
	PotLife *struct {
		Life    float64 `json:"life_s"`
		Safe    float64 `json:"safe_s"`
		Batches *int
	} `json:"pot_life"`
}

func mixArgs(more ...string) []string {
	return append([]string{"mix", "--coat", "clear", "--gun", "reduced-pressure"}, more...)
}

// The worked job, its arithmetic apart from this program: clear on 4 m2 at 55 um and
// 45 % solids, 65 % landing, takes 0.75 L.
func TestMixAsJSON(t *testing.T) {
	var a mixJSON
	answered(t, ExitAnswered, &a, mixArgs("--area", "4m2", "--film", "55um", "--solids", "45", "--loss", "0mL", "--lead", "0", "--ratio", "4:1:1", "--price", "60/L")...)
	assert.Equal(t, "boothset.mix/1", a.Schema)
	assert.InDelta(t, 752.1, a.Volume.Mix["ml"], 0.1)
	assert.InDelta(t, 25.43, a.Volume.Mix["fl_oz"], 0.01)
	assert.InDelta(t, a.Volume.Mix["ml"], a.Volume.OnPanel["ml"]+a.Volume.Waste["ml"], 1e-9)
	assert.Less(t, a.Volume.Low["ml"], a.Volume.Mix["ml"])
	require.NotNil(t, a.Ratio)
	assert.Equal(t, "4:1:1", a.Ratio.Text)
	require.Len(t, a.Ratio.Parts, 3)
	assert.InDelta(t, a.Volume.Mix["ml"]/6, a.Ratio.Parts[1].Volume["ml"], 1e-9)
	assert.Equal(t, 2, a.Cups.Fillings)
	require.NotNil(t, a.Cost)
	assert.InDelta(t, 45.13, a.Cost.Mix, 0.01)
	require.Len(t, a.Wrong, 2)
	assert.InDelta(t, 8.5, a.Wrong[0].Distance["in"], 1e-9)
	assert.False(t, a.Wrong[0].ValveChoked)
	assert.True(t, a.Wrong[1].ValveChoked)
	assert.Greater(t, a.Wrong[1].Extra["ml"], a.Wrong[0].Extra["ml"])
	require.NotNil(t, a.Wrong[0].Cost)
	assert.InDelta(t, a.Wrong[0].Extra["ml"]*0.06, *a.Wrong[0].Cost, 1e-9)
	assert.Nil(t, a.PotLife)
	assert.Equal(t, "safety", a.Cautions[len(a.Cautions)-1].ID)
	assert.True(t, a.About, "what lands is an estimate")
}

// Weights by densities as typed, by hand: 752.1 mL in 4:1:1 are 501.4, 125.4 and 125.4 mL; and
// a VOC over the limit that was set.
func TestMixByWeightAndItsVOC(t *testing.T) {
	var a struct {
		Ratio struct {
			Parts []struct {
				G       float64
				Density both
			}
		}
		Weight struct {
			G     float64
			Basis string
		}
		VOC struct {
			Ready struct {
				Value both
				Basis string
			}
			Sprayed, Limit both
			About, Over    bool
		}
		Cautions []struct{ ID string }
	}
	job := mixArgs("--area", "4m2", "--film", "55um", "--solids", "45", "--loss", "0mL", "--lead", "0", "--ratio", "4:1:1")
	answered(t, ExitAnswered, &a, append(job, "--density", "0.98kg/L", "--density", "1.05kg/L", "--density", "880g/L", "--voc", "3.6lb/gal", "--voc-limit", "3.5lb/gal")...)
	require.Len(t, a.Ratio.Parts, 3)
	for i, g := range []float64{491.4, 131.6, 110.3} {
		assert.InDelta(t, g, a.Ratio.Parts[i].G, 0.1)
	}
	assert.InDelta(t, 733.3, a.Weight.G, 0.1)
	assert.Equal(t, "the product's sheet, as typed", a.Weight.Basis)
	assert.InDelta(t, 3.6*119.826, a.VOC.Ready.Value["g_l"], 0.01)
	assert.True(t, a.VOC.Over)
	assert.False(t, a.VOC.About)
	assert.Equal(t, "voc-over", a.Cautions[0].ID)
	answered(t, ExitAnswered, &a, append(job, "--thinner", "10", "--voc-limit", "440g/L")...)
	assert.Equal(t, "estimate", a.Weight.Basis)
	assert.InDelta(t, (420+88)/1.1, a.VOC.Sprayed["g_l"], 0.01)
	assert.True(t, a.VOC.About)
	assert.Equal(t, "voc-may-be-over", a.Cautions[0].ID)
}

func TestMixOfUsualPanels(t *testing.T) {
	var a mixJSON
	answered(t, ExitAnswered, &a, mixArgs("--area", "hood", "--area", "2 door", "--pot-life", "4h", "--temp", "86F", "--fluid-rate", "200")...)
	assert.InDelta(t, 40.5, a.Area.Value["ft2"], 1e-9)
	assert.InDelta(t, 35, a.Area.Low["ft2"], 1e-9)
	require.Len(t, a.Area.Panels, 2)
	assert.True(t, a.Area.Panels[1].UsualSize)
	assert.Nil(t, a.Ratio)
	assert.Nil(t, a.Cost)
	assert.Nil(t, a.Wrong[0].Cost)
	require.NotNil(t, a.PotLife)
	assert.InDelta(t, 2*3600, a.PotLife.Life, 1)
	assert.Less(t, a.PotLife.Safe, a.PotLife.Life)
	var ids []string
	for _, c := range a.Cautions {
		ids = append(ids, c.ID)
	}
	assert.Contains(t, ids, "mix-areas-usual")
	assert.Contains(t, ids, "mix-pot-life-known")
}

func TestMixText(t *testing.T) {
	metric := boothset("", mixArgs("--area", "4", "--film", "55", "--solids", "45", "--loss", "0", "--lead", "0", "--ratio", "2:1+10%", "--price", "50/L", "--price", "80/L", "--price", "20/L", "--units", "metric")...)
	require.Equal(t, ExitAnswered, metric.code, metric.err)
	for _, s := range []string{"MIX          about 760 mL", "602 mL to 1.00 L", "POUR         461 mL             2:1:0.3", "up to 691 mL", "up to 760 mL", "FILLINGS     2", "What a wrong setting costs\n- Held 76 mm farther out", "valve choked as well", "[the product's sheet, as typed]"} {
		assert.Contains(t, metric.out, s)
	}
	us := boothset("", mixArgs("--area", "hood", "--area", "12ft2", "--lead", "0", "--price", "200/gal")...)
	require.Equal(t, ExitAnswered, us.code, us.err)
	for _, s := range []string{"about 30 ft2", "MIX          about 21 fl oz", "COST         about 31.6", "measure length by width"} {
		assert.Contains(t, us.out, s)
	}
	for _, row := range strings.Split(us.out+metric.out, "\n") {
		assert.LessOrEqual(t, ansi.StringWidth(row), answer.Width, row)
	}
}

func TestMixBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--area", "4m2", "--coat", "clear"}, "gun: needed for how much paint lands"},
		{[]string{"--coat", "clear", "--gun", "reduced-pressure"}, "area: type an area"},
		{[]string{"--coat", "clear", "--gun", "reduced-pressure", "--area", "900m2", "--solids", "1", "--film", "1900um"}, "beyond any mix"},
	} {
		r := boothset("", append([]string{"mix"}, c.args...)...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Empty(t, r.out)
		assert.Contains(t, r.err, c.says)
	}
	help := boothset("", "mix", "--help")
	for _, f := range question.Mix.Fields {
		assert.Contains(t, help.out, "--"+f.Name+" ")
	}
	assert.Equal(t, ExitCannot, boothset("", mixArgs("--area", "4m2", "--film", "3.2mil")...).code, "clear fails there")
}

func TestMixBatch(t *testing.T) {
	r := boothset(`{"coat":"clear","gun":"reduced-pressure","area":["hood","2 door"],"price":["60/L"]}
{"coat":"clear","gun":"reduced-pressure","area":"4m2","units":"metric"}
`, "mix", "--batch")
	require.Equal(t, ExitAnswered, r.code, r.err)
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 2)
	for _, l := range lines {
		var a mixJSON
		require.NoError(t, json.Unmarshal([]byte(l), &a))
		assert.Positive(t, a.Volume.Mix["ml"])
	}
	assert.Contains(t, lines[1], "at 216 mm", "metric in its sentences")
}
