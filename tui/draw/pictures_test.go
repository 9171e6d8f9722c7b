package draw_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"boothset/tui/draw"
	"boothset/tui/golden"

	"github.com/stretchr/testify/require"
)

func dial(set float64) draw.Dial {
	return draw.Dial{
		Scale: draw.NewScale(0, 60, 7, whole), Set: draw.Mark{At: set, Text: "set " + whole(set)},
		Rest: draw.Mark{At: set + 5, Text: "at rest " + whole(set+5)}, Ghost: draw.Mark{At: 14, Text: "was 14"},
		Likely: draw.Span{Low: set - 3, High: set + 4, Text: "likely " + whole(set-3) + " to " + whole(set+4)},
		Limit:  draw.Mark{At: 50, Text: "stamp 50"}, Label: "WALL " + whole(set) + " psi",
	}
}

func fall() draw.Fall {
	f := draw.Fall{Text: tenths, Worst: "costs most", Others: "others", End: "at the cap"}
	at := 60.0
	for _, p := range []struct {
		name string
		loss float64
		note string
	}{{"Main line 3/4", 1.1, ""}, {"Filter", 0.6, ""}, {"Regulator", 24, "sets it"}, {"Main hose 25 ft", 4.3, ""},
		{"Coupling", 0.4, ""}, {"Whip hose", 1.2, ""}, {"Gun inlet valve", 2.5, ""}, {"Gun passages", 8, ""}} {
		f.Parts = append(f.Parts, draw.Segment{Name: p.name, In: at, Out: at - p.loss, Worst: p.loss == 4.3, Note: p.note})
		at -= p.loss
	}
	return f
}

func bore(now, other float64) draw.Bore {
	return draw.Bore{
		Now: draw.Opening{Share: now, Texts: []string{"as set", percent(now) + " open"}}, Open: "open", Closed: "closed",
		Else: draw.Opening{Share: other, Texts: []string{"wall left at 40", percent(other) + " open"}},
	}
}

func ruler(target float64) draw.Ruler {
	return draw.Ruler{
		Scale: draw.NewScale(0, 8, 9, whole), Target: draw.Mark{At: target, Text: "set " + whole(target) + " in"},
		Keep:   draw.Span{Low: target - 0.5, High: target + 0.5, Text: "keep " + whole(target-0.5) + " to " + whole(target+0.5)},
		Likely: draw.Span{Low: target - 0.2, High: target + 0.2, Text: "likely " + tenths(target-0.2) + " to " + tenths(target+0.2)},
		Ghost:  draw.Mark{At: 6.5, Text: "was 6.5"}, Gun: "cap", Panel: "panel",
	}
}

func climate(temperature, humidity float64) draw.Climate {
	return draw.Climate{
		Temperature: draw.NewScale(50, 110, 7, whole), Humidity: draw.NewScale(0, 100, 6, whole),
		At: func(t, rh float64) draw.Region {
			switch {
			case t < 55 || t > 105 || rh > 85:
				return draw.Stop
			case t < 65 || t > 90 || rh > 70:
				return draw.Wait
			case t > 80:
				return draw.Watch
			}
			return draw.Go
		},
		Dew: func(t float64) float64 { return 100 * math.Exp((55-t)/29) }, DewText: "dew point",
		Today: draw.DayPoint{Temperature: temperature, Humidity: humidity, Text: "today"}, Ghost: draw.DayPoint{Temperature: 68, Humidity: 60, Text: "was"},
		Go: "Go", Watch: "watch", Wait: "Wait", Stop: "Stop",
	}
}

func ranges(wall float64) draw.Ranges {
	return draw.Ranges{
		Answers: []draw.Answer{
			{Name: "WALL", Scale: draw.NewScale(20, 40, 5, whole), Low: wall - 3, High: wall + 3, At: wall, LowText: tenths(wall - 3), HighText: tenths(wall + 3), Text: whole(wall) + " psi"},
			{Name: "DISTANCE", Scale: draw.NewScale(4, 7, 4, whole), Low: 5.3, High: 5.7, At: 5.5, LowText: "5.3", HighText: "5.7", Text: "5.5 in"},
			{Name: "INLET VALVE", Scale: draw.NewScale(0, 100, 6, whole), Low: 48, High: 100, At: 81, LowText: "48", HighText: "100", Text: "81%"},
		},
		Title: "what makes it unsure", Others: "others", Text: percent,
		Causes: []draw.Cause{{Name: "the gun's valve", Share: 0.52}, {Name: "gauge", Share: 0.21}, {Name: "hose's bore", Share: 0.14},
			{Name: "temperature", Share: 0.08}, {Name: "humidity", Share: 0.05}},
	}
}

// pictures are looked at by a person, in both sets of glyphs, at the sizes named.
var pictures = []struct {
	name  string
	p     picture
	sizes [][2]int
}{
	{"dial", dial(29), [][2]int{{20, 8}, {26, 9}, {40, 14}, {60, 12}, {116, 30}}},
	{"dial-off", dial(72), [][2]int{{26, 9}, {40, 14}}},
	{"dial-below", dial(-6), [][2]int{{26, 9}, {40, 14}}},
	{"fall", fall(), [][2]int{{30, 3}, {40, 8}, {60, 12}, {80, 16}, {116, 28}}},
	{"bore", bore(0.81, 0.22), [][2]int{{14, 6}, {40, 8}, {60, 12}, {116, 30}}},
	{"bore-off", bore(1.2, -0.1), [][2]int{{40, 8}}},
	{"ruler", ruler(5.5), [][2]int{{24, 4}, {40, 8}, {60, 12}, {116, 20}}},
	{"ruler-off", ruler(9), [][2]int{{24, 4}, {60, 12}}},
	{"climate", climate(75, 45), [][2]int{{30, 8}, {40, 10}, {60, 12}, {80, 20}, {116, 30}}},
	{"climate-off", climate(120, 45), [][2]int{{40, 10}}},
	{"climate-above", climate(100, 104), [][2]int{{40, 10}}},
	{"ranges", ranges(31), [][2]int{{30, 3}, {40, 12}, {60, 12}, {80, 20}, {116, 30}}},
	{"ranges-off", ranges(39), [][2]int{{60, 12}}},
}

func TestPictures(t *testing.T) {
	for _, c := range pictures {
		for _, s := range c.sizes {
			name := fmt.Sprintf("%s-%dx%d", c.name, s[0], s[1])
			t.Run(name, func(t *testing.T) {
				blocks := requireRows(t, c.p, s[0], s[1], draw.Blocks)
				plain := requireRows(t, c.p, s[0], s[1], draw.ASCII)
				require.NotEmpty(t, blocks)
				for _, r := range strings.Join(blocks, "") {
					require.True(t, r < utf8.RuneSelf || strings.ContainsRune(allGlyphs(draw.Blocks), r), "%q is one of the known glyphs", r)
				}
				for _, r := range strings.Join(plain, "") {
					require.Less(t, r, rune(utf8.RuneSelf), "the ASCII set is ASCII")
				}
				golden.Equal(t, name+".txt", strings.Join(blocks, "\n")+"\n\n"+strings.Join(plain, "\n")+"\n")
			})
		}
	}
}
