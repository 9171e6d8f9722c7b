package draw_test

import (
	"math"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func anyTexts(t *rapid.T) []string { return rapid.SliceOfN(anyText(), 0, 4).Draw(t, "texts") }

func anyDial(t *rapid.T) picture {
	return draw.Dial{Scale: anyScale(t), Set: anyMark(t), Rest: anyMark(t), Ghost: anyMark(t), Likely: anyBand(t), Limit: anyMark(t), Label: anyText().Draw(t, "label")}
}

func anyFall(t *rapid.T) picture {
	f := draw.Fall{Worst: anyText().Draw(t, "worst"), Others: anyText().Draw(t, "others"), End: anyText().Draw(t, "end")}
	if rapid.IntRange(0, 9).Draw(t, "figures") > 0 {
		f.Text = tenths
	}
	for range rapid.IntRange(0, 14).Draw(t, "parts") {
		f.Parts = append(f.Parts, draw.Segment{Name: anyText().Draw(t, "name"), In: anyNumber().Draw(t, "in"), Out: anyNumber().Draw(t, "out"),
			Worst: rapid.Bool().Draw(t, "is worst"), Note: anyText().Draw(t, "note")})
	}
	return f
}

func anyBore(t *rapid.T) picture {
	return draw.Bore{Now: draw.Opening{Share: anyNumber().Draw(t, "now"), Texts: anyTexts(t)}, Else: draw.Opening{Share: anyNumber().Draw(t, "else"), Texts: anyTexts(t)},
		Open: anyText().Draw(t, "open"), Closed: anyText().Draw(t, "closed")}
}

func anyRuler(t *rapid.T) picture {
	return draw.Ruler{Scale: anyScale(t), Target: anyMark(t), Ghost: anyMark(t), Keep: anyBand(t), Likely: anyBand(t), Gun: anyText().Draw(t, "gun"), Panel: anyText().Draw(t, "panel")}
}

func anyClimate(t *rapid.T) picture {
	c := draw.Climate{Temperature: anyScale(t), Humidity: anyScale(t), DewText: anyText().Draw(t, "dew text"), Today: anyDay(t), Ghost: anyDay(t),
		Go: anyText().Draw(t, "go"), Wait: anyText().Draw(t, "wait"), Stop: anyText().Draw(t, "stop")}
	if rapid.Bool().Draw(t, "regions") {
		c.At = func(x, y float64) draw.Region { return draw.Region(math.Mod(math.Abs(x+y), 6)) }
	}
	if rapid.Bool().Draw(t, "has dew") {
		v, k := anyNumber().Draw(t, "dew"), anyNumber().Draw(t, "slope")
		c.Dew = func(x float64) float64 { return v + k*x }
	}
	return c
}

func anyRanges(t *rapid.T) picture {
	r := draw.Ranges{Title: anyText().Draw(t, "title"), Others: anyText().Draw(t, "others")}
	if rapid.Bool().Draw(t, "figures") {
		r.Text = percent
	}
	for range rapid.IntRange(0, 4).Draw(t, "answers") {
		r.Answers = append(r.Answers, draw.Answer{Name: anyText().Draw(t, "name"), Scale: anyScale(t), Low: anyNumber().Draw(t, "low"), High: anyNumber().Draw(t, "high"), At: anyNumber().Draw(t, "at"),
			LowText: anyText().Draw(t, "low text"), HighText: anyText().Draw(t, "high text"), Text: anyText().Draw(t, "text")})
	}
	for range rapid.IntRange(0, 8).Draw(t, "causes") {
		r.Causes = append(r.Causes, draw.Cause{Name: anyText().Draw(t, "cause"), Share: anyNumber().Draw(t, "share")})
	}
	return r
}

func TestAnyPictureKeepsToItsRoom(t *testing.T) {
	for name, makeAny := range map[string]func(*rapid.T) picture{
		"dial": anyDial, "fall": anyFall, "bore": anyBore, "ruler": anyRuler, "climate": anyClimate, "ranges": anyRanges,
	} {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			p := makeAny(t)
			side := rapid.OneOf(rapid.IntRange(-2, 130), rapid.IntRange(5, 45))
			w, h := side.Draw(t, "w"), side.Draw(t, "h")
			for _, g := range sets {
				requireRows(t, p, w, h, g)
			}
		}))
	}
}

// leasts are the sizes below which a picture is not drawn, as their comments say.
var leasts = []struct {
	p    picture
	w, h int
}{
	{dial(29), 20, 8}, {fall(), 30, 3}, {bore(0.5, 0.5), 14, 6}, {ruler(5.5), 24, 4}, {climate(75, 45), 30, 8}, {ranges(31), 30, 3},
}

func TestLeastSizes(t *testing.T) {
	for _, c := range leasts {
		for _, g := range sets {
			require.NotEmpty(t, requireRows(t, c.p, c.w, c.h, g), "%T", c.p)
			require.Nil(t, c.p.Rows(c.w-1, c.h, g, nil), "%T", c.p)
			require.Nil(t, c.p.Rows(c.w, c.h-1, g, nil), "%T", c.p)
		}
	}
}

func TestHugeRoomIsNoTrouble(t *testing.T) {
	for _, c := range leasts {
		require.NotEmpty(t, requireRows(t, c.p, math.MaxInt, math.MaxInt, draw.Blocks), "%T", c.p)
	}
}

func TestNothingToDrawIsNoPicture(t *testing.T) {
	for _, p := range []picture{draw.Dial{}, draw.Fall{}, draw.Bore{}, draw.Ruler{}, draw.Climate{}, draw.Ranges{},
		draw.Dial{Scale: draw.Scale{Low: 60}}, draw.Dial{Scale: draw.Scale{High: math.NaN()}}, draw.Dial{Scale: draw.Scale{Low: -math.MaxFloat64, High: math.MaxFloat64}},
		bore(math.NaN(), 1), ruler(math.NaN())} {
		require.Nil(t, p.Rows(80, 24, draw.Blocks, nil), "%T", p)
	}
}
