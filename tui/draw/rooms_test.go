package draw_test

import (
	"math"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func anyFrame(t *rapid.T) picture {
	f := draw.Frame{Title: anyText().Draw(t, "title"), Right: anyText().Draw(t, "right")}
	for range rapid.IntRange(0, 4).Draw(t, "rows") {
		f.Inside = append(f.Inside, rapid.SampledFrom([]string{"", "set", "válvula · 31 psi", "█████████████████████"}).Draw(t, "row"))
	}
	return f
}

func anyGauge(t *rapid.T) picture {
	return draw.Gauge{Scale: anyScale(t), Minor: rapid.IntRange(-2, 300).Draw(t, "minor"), Set: anyMark(t), Rest: anyMark(t), Ghost: anyMark(t), Likely: anyBand(t),
		Limit: anyMark(t), Name: anyText().Draw(t, "name"), Value: anyText().Draw(t, "value")}
}

func anyKnob(t *rapid.T) picture {
	return draw.Knob{Shut: anyNumber().Draw(t, "shut"), Anticlock: rapid.Bool().Draw(t, "anticlock"), Set: anyMark(t), Ghost: anyMark(t), Limit: anyMark(t),
		Open: anyText().Draw(t, "open"), Closed: anyText().Draw(t, "closed")}
}

func anyReach(t *rapid.T) picture {
	return draw.Reach{Scale: anyScale(t), Unit: anyText().Draw(t, "unit"), Set: anyMark(t), Ghost: anyMark(t), Keep: anyBand(t), Likely: anyBand(t),
		Gun: anyText().Draw(t, "gun"), Panel: anyText().Draw(t, "panel")}
}

func anyPipe(t *rapid.T) picture {
	p := draw.Pipe{Pressure: anyScale(t), Title: anyText().Draw(t, "title"), Worst: anyText().Draw(t, "worst")}
	for range rapid.IntRange(0, 20).Draw(t, "parts") {
		p.Parts = append(p.Parts, draw.PipePart{Name: anyText().Draw(t, "name"), In: anyNumber().Draw(t, "in"), Out: anyNumber().Draw(t, "out"), Bore: anyNumber().Draw(t, "bore"),
			Length: anyNumber().Draw(t, "length"), Own: rapid.Bool().Draw(t, "own"), Worst: rapid.Bool().Draw(t, "is worst")})
	}
	return p
}

func anyWeather(t *rapid.T) picture {
	old := anyClimate(t).(draw.Climate)
	return draw.Weather{Temperature: old.Temperature, Humidity: old.Humidity, TemperatureUnit: anyText().Draw(t, "F"), HumidityUnit: anyText().Draw(t, "%"), At: old.At, Dew: old.Dew, DewText: old.DewText,
		Today: old.Today, Ghost: old.Ghost, TemperatureError: anyNumber().Draw(t, "error"), HumidityError: anyNumber().Draw(t, "error"), Go: old.Go, Wait: old.Wait, Stop: old.Stop}
}

// makers make any of each picture.
var makers = map[string]func(*rapid.T) picture{"frame": anyFrame, "gauge": anyGauge, "knob": anyKnob, "reach": anyReach, "pipe": anyPipe, "weather": anyWeather}

// leastRooms are the sizes below which a picture is not drawn, as their comments say.
var leastRooms = []struct {
	p    picture
	w, h int
}{
	{draw.Frame{}, 5, 3}, {gauge(31), 20, 8}, {knob(0.375), 18, 8}, {reach(5.5), 24, 5}, {pipe(), 30, 9}, {weather(75, 45), 30, 8},
}

func TestPicturesKeepToTheirRoom(t *testing.T) {
	for name, makeAny := range makers {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			p := makeAny(t)
			side := rapid.OneOf(rapid.IntRange(-2, 130), rapid.IntRange(5, 45))
			w, h := side.Draw(t, "w"), side.Draw(t, "h")
			for _, g := range sets {
				for _, r := range strings.Join(requireRows(t, p, w, h, g), "") {
					require.Equal(t, 1, ansi.StringWidth(string(r)))
				}
			}
		}))
	}
}

func TestGalleryInASCIIIsASCII(t *testing.T) {
	for _, s := range gallery() {
		for _, size := range s.sizes {
			for _, r := range strings.Join(requireRows(t, s.p, size[0], size[1], draw.ASCII), "") {
				require.True(t, r >= ' ' && r <= '~', "%q in %s", r, s.name)
			}
			require.NotEmpty(t, requireRows(t, s.p, size[0], size[1], draw.Blocks))
		}
	}
}

func TestLeastRooms(t *testing.T) {
	for _, c := range leastRooms {
		for _, g := range sets {
			require.NotEmpty(t, requireRows(t, c.p, c.w, c.h, g), "%T", c.p)
			require.Nil(t, c.p.Rows(c.w-1, c.h, g, nil), "%T", c.p)
			require.Nil(t, c.p.Rows(c.w, c.h-1, g, nil), "%T", c.p)
		}
		require.NotEmpty(t, requireRows(t, c.p, math.MaxInt, math.MaxInt, draw.Blocks), "%T", c.p)
	}
}

func TestNothingIsNoPicture(t *testing.T) {
	for _, p := range []picture{draw.Gauge{}, draw.Gauge{Scale: draw.Scale{Low: 60}}, draw.Gauge{Scale: draw.Scale{High: math.NaN()}}, draw.Knob{}, knob(math.NaN()), draw.Reach{}, reach(math.NaN()), draw.Pipe{}, draw.Pipe{Parts: pipe().Parts}, draw.Weather{}} {
		require.Nil(t, p.Rows(80, 24, draw.Blocks, nil), "%T", p)
	}
}

// BenchmarkRoom is each picture of the gallery in 60 x 20 cells.
func BenchmarkRoom(b *testing.B) {
	for _, s := range gallery() {
		b.Run(s.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				s.p.Rows(60, 20, draw.Blocks, nil)
			}
		})
	}
}
