package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"boothset/tui/draw"
	"boothset/tui/golden"

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
	d := draw.Weather{Temperature: anyScale(t), Humidity: anyScale(t), TemperatureUnit: anyText().Draw(t, "F"), HumidityUnit: anyText().Draw(t, "%"), DewText: anyText().Draw(t, "dew text"),
		Today: anyDay(t), Ghost: anyDay(t), TemperatureError: anyNumber().Draw(t, "error"), HumidityError: anyNumber().Draw(t, "error"),
		Go: anyText().Draw(t, "go"), Wait: anyText().Draw(t, "wait"), Stop: anyText().Draw(t, "stop")}
	if rapid.Bool().Draw(t, "regions") {
		d.At = func(x, y float64) draw.Region { return draw.Region(math.Mod(math.Abs(x+y), 7)) }
	}
	if rapid.Bool().Draw(t, "has dew") {
		v, k := anyNumber().Draw(t, "dew"), anyNumber().Draw(t, "slope")
		d.Dew = func(x float64) float64 { return v + k*x }
	}
	return d
}

func anyBands(t *rapid.T) picture {
	b := draw.Bands{Title: anyText().Draw(t, "title"), Others: anyText().Draw(t, "others")}
	if rapid.Bool().Draw(t, "figures") {
		b.Figure = percent
	}
	for range rapid.IntRange(0, 4).Draw(t, "bands") {
		b.Bands = append(b.Bands, draw.Band{Name: anyText().Draw(t, "name"), Text: anyText().Draw(t, "text"), Scale: anyScale(t), Low: anyNumber().Draw(t, "low"), High: anyNumber().Draw(t, "high"),
			At: anyNumber().Draw(t, "at"), LowText: anyText().Draw(t, "low text"), HighText: anyText().Draw(t, "high text")})
	}
	for range rapid.IntRange(0, 8).Draw(t, "shares") {
		b.Shares = append(b.Shares, draw.Share{Name: anyText().Draw(t, "cause"), Share: anyNumber().Draw(t, "share")})
	}
	return b
}

func anyPoint(t *rapid.T) draw.Point {
	return draw.Point{X: anyNumber().Draw(t, "x"), Y: anyNumber().Draw(t, "y")}
}

func anyCurve(t *rapid.T) picture {
	k := draw.Curve{X: anyScale(t), Y: anyScale(t), XTitle: anyText().Draw(t, "x title"), YTitle: anyText().Draw(t, "y title"), WantedX: anyBand(t), WantedY: anyBand(t)}
	for range rapid.IntRange(0, 5).Draw(t, "lines") {
		l := draw.CurveLine{Text: anyText().Draw(t, "line"), Role: draw.Role(rapid.IntRange(0, 10).Draw(t, "role"))}
		for range rapid.IntRange(0, 6).Draw(t, "points") {
			l.Points = append(l.Points, anyPoint(t))
		}
		k.Lines = append(k.Lines, l)
	}
	for range rapid.IntRange(0, 4).Draw(t, "spots") {
		k.Spots = append(k.Spots, draw.Spot{Point: anyPoint(t), Text: anyText().Draw(t, "spot"), Role: draw.RoleMark})
	}
	return k
}

func anyLayers(t *rapid.T) picture {
	l := draw.Layers{Scale: anyScale(t), Unit: anyText().Draw(t, "unit")}
	for range rapid.IntRange(0, 3).Draw(t, "stacks") {
		s := draw.Stack{Name: anyText().Draw(t, "name"), Low: anyMark(t), High: anyMark(t)}
		for range rapid.IntRange(0, 4).Draw(t, "coats") {
			s.Coats = append(s.Coats, draw.Coat{Thick: anyNumber().Draw(t, "thick"), Text: anyText().Draw(t, "coat")})
		}
		l.Stacks = append(l.Stacks, s)
	}
	return l
}

func anyCup(t *rapid.T) picture {
	u := draw.Cup{Holds: anyNumber().Draw(t, "holds")}
	for range rapid.IntRange(0, 5).Draw(t, "pours") {
		u.Pours = append(u.Pours, draw.Pour{Name: anyText().Draw(t, "name"), Amount: anyNumber().Draw(t, "amount"), Text: anyText().Draw(t, "text"), Mark: anyText().Draw(t, "level")})
	}
	return u
}

func anyClock(t *rapid.T) picture {
	k := draw.Clock{Scale: anyScale(t), Unit: anyText().Draw(t, "unit"), Now: anyMark(t)}
	for range rapid.IntRange(0, 4).Draw(t, "lanes") {
		l := draw.Lane{Name: anyText().Draw(t, "name")}
		for range rapid.IntRange(0, 4).Draw(t, "stages") {
			l.Stages = append(l.Stages, draw.Stage{From: anyNumber().Draw(t, "from"), To: anyNumber().Draw(t, "to"), Text: anyText().Draw(t, "text"), Look: draw.Look(rapid.IntRange(0, 3).Draw(t, "look")), Role: draw.RoleKeep})
		}
		k.Lanes = append(k.Lanes, l)
	}
	return k
}

func anyPattern(t *rapid.T) picture {
	n := func() float64 { return anyNumber().Draw(t, "n") }
	return draw.Pattern{Wide: n(), High: n(), Wet: n(), Ends: n(), Lean: n(), Bend: n(), Sputter: n()}
}

// makers make any of each picture.
var makers = map[string]func(*rapid.T) picture{
	"frame": anyFrame, "gauge": anyGauge, "knob": anyKnob, "reach": anyReach, "pipe": anyPipe, "weather": anyWeather, "bands": anyBands, "curve": anyCurve,
	"layers": anyLayers, "cup": anyCup, "clock": anyClock, "pattern": anyPattern,
}

// leastRooms are the sizes below which a picture is not drawn, as their comments say.
var leastRooms = []struct {
	p    picture
	w, h int
}{
	{draw.Frame{}, 5, 3}, {gauge(31), 20, 8}, {knob(0.375), 18, 8}, {reach(5.5), 24, 5}, {pipe(), 30, 9}, {weather(75, 45), 30, 8}, {bands(31), 30, 6}, {thin(), 30, 8},
	{layers(), 31, 7}, {cup(), 24, 5}, {clock(22), 30, 6}, {spray[0].Pattern, 7, 4},
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

// A few of the gallery are kept as a person has looked at them, in both sets of glyphs.
func TestGoldenPictures(t *testing.T) {
	kept := map[string]bool{"gauge": true, "knob": true, "reach": true, "pipe": true, "weather": true, "bands": true, "curve-thin": true, "layers": true, "cup": true, "clock": true}
	const w, h = 60, 18
	for _, s := range gallery() {
		if kept[s.name] {
			golden.Equal(t, fmt.Sprintf("%s-%dx%d.txt", s.name, w, h),
				strings.Join(s.p.Rows(w, h, draw.Blocks, nil), "\n")+"\n\n"+strings.Join(s.p.Rows(w, h, draw.ASCII, nil), "\n")+"\n")
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
		require.NotEmpty(t, c.p.Rows(math.MaxInt, math.MaxInt, draw.Blocks, nil), "%T in a huge room", c.p)
	}
}

func TestNothingIsNoPicture(t *testing.T) {
	for _, p := range []picture{draw.Gauge{}, draw.Gauge{Scale: draw.Scale{Low: 60}}, draw.Gauge{Scale: draw.Scale{High: math.NaN()}}, draw.Knob{}, knob(math.NaN()), draw.Reach{}, reach(math.NaN()), draw.Pipe{}, draw.Pipe{Parts: pipe().Parts}, draw.Weather{}, draw.Bands{}, draw.Curve{},
		draw.Layers{}, draw.Cup{}, draw.Clock{}, draw.Pattern{}, draw.Pattern{Wide: math.NaN(), High: 1, Wet: 1}} {
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
