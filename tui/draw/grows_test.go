package draw_test

import (
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// angle is how far a needle has turned from the foot of the dial, clockwise, in degrees.
func angle(t test, value float64, g draw.Glyphs) float64 {
	const w, h, legend = 40, 14, 1
	needle := func(v float64) [][2]int {
		d := draw.Dial{Scale: draw.NewScale(0, 60, 7, whole), Set: draw.Mark{At: v, Text: "set"}}
		return cells(d.Rows(w, h, g, byRole), draw.RoleMark, h-legend)
	}
	at := map[[2]int]bool{}
	for _, c := range needle(0) {
		at[c] = true
	}
	var hub [][2]int
	for _, c := range needle(60) {
		if at[c] {
			hub = append(hub, c)
		}
	}
	require.NotEmpty(t, hub, "both ends' needles meet in the hub")
	var x, y float64
	for _, c := range needle(value) {
		x, y = x+float64(c[0]-hub[0][0]), y+float64(c[1]-hub[0][1])*2
	}
	return math.Mod(math.Atan2(x, -y)*180/math.Pi+540, 360)
}

func TestNeedleTurnsWithTheValue(t *testing.T) {
	for name, g := range sets {
		for value, want := range map[float64]float64{0: 45, 15: 112.5, 30: 180, 45: 247.5, 60: 315} {
			require.InDelta(t, want, angle(t, value, g), 10, "%s %v", name, value)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 60)
		g := anySet(t)
		// A needle of some ten cells is drawn to within a few degrees.
		require.GreaterOrEqual(t, angle(t, b, g), angle(t, a, g)-4)
		if b-a > 5 {
			require.Greater(t, angle(t, b, g), angle(t, a, g))
		}
	})
}

func TestBandAndLimitOfADialGrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 60)
		g := anySet(t)
		shown := func(v float64, role draw.Role) int {
			d := draw.Dial{Scale: draw.NewScale(0, 60, 7, whole), Likely: draw.Span{High: v, Text: "likely"}, Limit: draw.Mark{At: v, Text: "stamp"}}
			return len(cells(d.Rows(40, 14, g, byRole), role, 13))
		}
		require.GreaterOrEqual(t, shown(b, draw.RoleBand), shown(a, draw.RoleBand))
		require.LessOrEqual(t, shown(b, draw.RoleLimit), shown(a, draw.RoleLimit))
	})
}

func TestFallIsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 60)
		g := anySet(t)
		f := draw.Fall{Text: tenths, Parts: []draw.Segment{{Name: "regulator", In: 60, Out: b}, {Name: "hose", In: b, Out: a, Worst: true}}}
		rows := f.Rows(80, 4, g, byRole)
		require.Len(t, rows, 2)
		kept := func(y int) int {
			return len(cells(rows, draw.RoleKept, y+1)) - len(cells(rows, draw.RoleKept, y))
		}
		figures := func(v float64) int { return len(tenths(v)) }
		bars := [2]int{kept(0) - figures(60), kept(1) - figures(b)}
		require.GreaterOrEqual(t, bars[0], bars[1], "less is left behind the second")
		full := strings.Count(f.Rows(80, 4, g, nil)[0], string(g.Full)) + strings.Count(f.Rows(80, 4, g, nil)[0], string(g.Mid))
		// Half a cell of rounding, and one more where the loss would else have none.
		require.InDelta(t, b/60*float64(full), bars[0], 1.5)
		require.InDelta(t, a/60*float64(full), bars[1], 1.5)
	})
}

func TestFallTellsTheWorstAndGathersTheSmallest(t *testing.T) {
	whole := strings.Join(fall().Rows(80, 16, draw.ASCII, nil), "\n")
	for _, part := range fall().Parts {
		require.Contains(t, whole, part.Name)
	}
	require.NotContains(t, whole, "others")
	require.Contains(t, whole, "> Main hose 25 ft", "the worst has a sign")
	require.Contains(t, whole, "costs most", "and its words")
	few := fall().Rows(60, 6, draw.ASCII, nil)
	require.Len(t, few, 6)
	for i, want := range []string{"Regulator", "Main hose 25 ft", "Gun inlet valve", "Gun passages", "others", "at the cap"} {
		require.Contains(t, few[i], want)
	}
	require.Contains(t, few[4], "-3.3", "1.1, 0.6, 0.4 and 1.2 together")
}

func TestFallShowsStairsOnlyWhereTheyFit(t *testing.T) {
	require.Len(t, fall().Rows(80, 16, draw.Blocks, nil), 9, "eight parts and the cap")
	require.Len(t, fall().Rows(116, 28, draw.Blocks, nil), 28)
	rows := fall().Rows(116, 28, draw.Blocks, byRole)
	const stairs = 15 // rows, between the pressures on top and the names, two rows of them
	plain := fall().Rows(116, 28, draw.Blocks, nil)
	require.Contains(t, plain[1+stairs], "Main hose", "a name too long for its stair")
	require.Contains(t, plain[2+stairs], "25 ft", "goes on below")
	var last int
	for i, want := range fall().Parts {
		high := 0
		for _, c := range cells(rows[1:1+stairs], draw.RoleKept, stairs) {
			if c[0] == i*14 {
				high++
			}
		}
		// Half a cell of rounding, and one more where the loss would else have none.
		require.InDelta(t, want.Out/60*stairs, high, 1.5, want.Name)
		if i > 0 {
			require.LessOrEqual(t, high, last, "each stair begins where the one before ended")
		}
		last = high
	}
}

// openShare is the open part of the ink of one bore.
func openShare(t test, share float64, w, h int, g draw.Glyphs) float64 {
	b := draw.Bore{Now: draw.Opening{Share: share, Texts: []string{"set"}}}
	count := func(share float64) (n int) {
		b.Now.Share = share
		for _, row := range b.Rows(w, h, g, nil) {
			n += strings.Count(row, string(g.Full)) * 2
			if g.Upper != 0 {
				n += strings.Count(row, string(g.Upper)) + strings.Count(row, string(g.Lower))
			}
		}
		return n
	}
	all := count(1)
	require.Positive(t, all)
	return float64(count(share)) / float64(all)
}

func TestOpenAreaIsToScale(t *testing.T) {
	for name, g := range sets {
		for _, share := range []float64{0, 0.05, 0.22, 0.5, 0.81, 0.95, 1} {
			// Within a hundredth at 40 by 16 and above; smaller discs have fewer cells.
			require.InDelta(t, share, openShare(t, share, 40, 16, g), 0.01, "%s %v", name, share)
			require.InDelta(t, share, openShare(t, share, 116, 30, g), 0.01, "%s %v", name, share)
			require.InDelta(t, share, openShare(t, share, 14, 6, g), 0.05, "%s %v", name, share)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 1)
		g := anySet(t)
		require.GreaterOrEqual(t, openShare(t, b, 60, 12, g), openShare(t, a, 60, 12, g))
	})
}

func TestRulerMovesWithTheValue(t *testing.T) {
	const w, h = 81, 4
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 8)
		g := anySet(t)
		rows := draw.Ruler{Scale: draw.NewScale(0, 8, 9, whole), Target: draw.Mark{At: a, Text: "set"}, Keep: draw.Span{Low: b, High: a, Text: "keep"}}.Rows(w, h, g, byRole)
		target := cells(rows, draw.RoleMark, h)
		require.NotEmpty(t, target)
		require.Equal(t, int(math.Round(a*10)), target[0][0], "ten columns an inch")
		keep := cells(rows, draw.RoleKeep, h)
		require.Len(t, keep, int(math.Round(b*10))-int(math.Round(a*10)), "up to its end, but for the target's column")
	})
}

func TestDayMovesWithTheValues(t *testing.T) {
	c := draw.Climate{Temperature: draw.NewScale(0, 50, 2, whole), Humidity: draw.NewScale(0, 10, 2, whole)}
	place := func(t test, temperature, humidity float64, g draw.Glyphs) [2]int {
		c.Today = draw.DayPoint{Temperature: temperature, Humidity: humidity, Text: "x"}
		for y, row := range c.Rows(55, 14, g, nil)[:11] {
			if at := strings.IndexRune(row, g.Full); at >= 0 {
				return [2]int{utf8.RuneCountInString(row[:at]), y}
			}
		}
		require.Fail(t, "no mark")
		return [2]int{}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 50)
		p, q := two(t, 0, 10)
		g := anySet(t)
		low, high := place(t, a, p, g), place(t, b, q, g)
		const half = 0.5 + 1e-9 // what lies between two goes to either
		require.InDelta(t, 4+a, low[0], half, "a column a degree")
		require.InDelta(t, 10-p, low[1], half, "a row a percent")
		require.LessOrEqual(t, low[0], high[0])
		require.GreaterOrEqual(t, low[1], high[1])
	})
}

func TestRegionsStandWhereTheyAre(t *testing.T) {
	c := climate(75, 45)
	c.Today, c.Ghost, c.Dew = draw.DayPoint{}, draw.DayPoint{}, nil
	rows := c.Rows(65, 14, draw.ASCII, nil)
	at := func(temperature, humidity float64) string {
		x, y := 4+1+int(math.Round(temperature-50)), 10-int(math.Round(humidity/10))
		return rows[y][x : x+1]
	}
	require.Len(t, rows, 14)
	require.Contains(t, ".G", at(75, 40))
	require.Contains(t, ":W", at(60, 40))
	require.Contains(t, "=S", at(52, 40))
	require.Contains(t, "=S", at(75, 95))
	for _, letter := range []string{"G", "W", "S"} {
		require.Contains(t, strings.Join(rows[:10], ""), letter, "each region has its letter")
	}
}

// onEdge reports whether a value lies between two cells, where either is right.
func onEdge(v float64) bool { return math.Abs(v-math.Floor(v)-0.5) < 1e-9 }

func TestRangesGrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 50)
		if onEdge(a) || onEdge(b) {
			return
		}
		g := anySet(t)
		r := draw.Ranges{Answers: []draw.Answer{{Name: "WALL", Scale: draw.Scale{High: 50}, Low: a, High: b, At: a}}, Causes: []draw.Cause{{Name: "x", Share: a / 50}, {Name: "x", Share: b / 50}}}
		rows := r.Rows(59, 5, g, byRole) // the name and the gaps leave a column a unit
		require.Equal(t, [][2]int{{7 + int(math.Round(a)), 0}}, cells(rows, draw.RoleMark, 1))
		require.Len(t, cells(rows, draw.RoleBand, 1), int(math.Round(b))-int(math.Round(a)))
		bars := func(y int) int { return len(cells(rows[y:], draw.RoleBand, 1)) }
		require.LessOrEqual(t, bars(3), bars(4))
	})
}

func TestCausesAreGatheredTheSmallestFirst(t *testing.T) {
	rows := ranges(31).Rows(60, 8, draw.ASCII, nil)
	require.Len(t, rows, 8)
	require.Contains(t, rows[5], "the gun's valve 52% #")
	require.Contains(t, rows[6], "gauge           21% #")
	require.Contains(t, rows[7], "others          27% #", "14, 8 and 5 together")
}

func TestWhatIsOffTheScaleHasAnArrow(t *testing.T) {
	scale := draw.Scale{Low: 10, High: 20}
	at15 := draw.Mark{At: 15, Text: "x"}
	for _, c := range []struct {
		arrow string
		at    float64
	}{{"<", 9}, {"<", math.Inf(-1)}, {">", 21}, {">", math.Inf(1)}} {
		mark, band := draw.Mark{At: c.at, Text: "x"}, draw.Span{Low: c.at, High: c.at, Text: "x"}
		for name, p := range map[string]picture{
			"dial's needle": draw.Dial{Scale: scale, Set: mark}, "at rest": draw.Dial{Scale: scale, Rest: mark}, "ghost": draw.Dial{Scale: scale, Ghost: mark},
			"arc": draw.Dial{Scale: scale, Likely: band}, "limit": draw.Dial{Scale: scale, Limit: mark},
			"share":  draw.Bore{Now: draw.Opening{Share: c.at - 15, Texts: []string{"x"}}},
			"target": draw.Ruler{Scale: scale, Target: mark},
			"keep":   draw.Ruler{Scale: scale, Target: at15, Keep: band},
			"likely": draw.Ruler{Scale: scale, Target: at15, Likely: band},
			"old":    draw.Ruler{Scale: scale, Target: at15, Ghost: mark},
			"day":    draw.Climate{Temperature: scale, Humidity: scale, Today: draw.DayPoint{Temperature: c.at, Humidity: 15, Text: "x"}},
			"answer": draw.Ranges{Answers: []draw.Answer{{Scale: scale, Low: 15, High: 16, At: c.at}}},
			"end":    draw.Ranges{Answers: []draw.Answer{{Scale: scale, Low: min(15, c.at), High: max(15, c.at), At: 15}}},
			"cause":  draw.Ranges{Answers: []draw.Answer{{Scale: scale, Low: 15, High: 16, At: 15}}, Causes: []draw.Cause{{Name: "x", Share: c.at - 15}}},
		} {
			rows := p.Rows(60, 8, draw.ASCII, func(r draw.Role, s string) string {
				if r == draw.RoleText {
					return strings.Repeat(".", len(s)) // the gun has an arrow of its own
				}
				return s
			})
			require.Contains(t, strings.Join(rows, "\n"), c.arrow, "%s %v", name, c.at)
		}
	}
	below := draw.Fall{Text: tenths, Parts: []draw.Segment{{Name: "x", In: 5, Out: -1}}}
	require.Contains(t, strings.Join(below.Rows(60, 5, draw.ASCII, nil), ""), "<")
	for arrow, humidity := range map[string]float64{"v": 9, "^": 21} {
		day := draw.Climate{Temperature: scale, Humidity: scale, Today: draw.DayPoint{Temperature: 15, Humidity: humidity, Text: "x"}}
		require.Contains(t, strings.Join(day.Rows(60, 12, draw.ASCII, nil), ""), arrow)
	}
}
