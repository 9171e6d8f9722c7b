package draw_test

import (
	"slices"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The pressure falls from left to right wherever each part takes some of it.
func TestPipeFallsWhereEachPartTakesSome(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := 40.0
		p := draw.Pipe{Pressure: draw.NewScale(0, 40, 5, whole)}
		for range rapid.IntRange(1, 8).Draw(t, "parts") {
			out := at * rapid.Float64Range(0.3, 1).Draw(t, "left")
			p.Parts = append(p.Parts, draw.PipePart{Name: "a", In: at, Out: out, Bore: 8, Length: rapid.Float64Range(0, 9).Draw(t, "length")})
			at = out
		}
		const pipe, names, top = 4, 1, 1
		rows := p.Rows(70, 24, draw.Blocks, byRole)
		highest := map[int]int{}
		for _, c := range cells(rows, draw.RoleLost, 24-pipe-names) {
			if y, ok := highest[c[0]]; !ok || c[1] < y {
				highest[c[0]] = c[1]
			}
		}
		last := top
		for x := 4; x < 70; x++ {
			require.GreaterOrEqual(t, highest[x], last, "column %d", x)
			last = highest[x]
		}
	})
}

func TestPipeNamesEveryPartOrNumbersAll(t *testing.T) {
	wide, narrow := strings.Join(pipe().Rows(90, 28, draw.Blocks, nil), "\n"), strings.Join(pipe().Rows(40, 24, draw.Blocks, nil), "\n")
	for i, k := range pipe().Parts {
		require.Contains(t, narrow, whole(float64(i+1))+" "+k.Name)
		for _, word := range strings.Fields(k.Name) {
			require.Contains(t, wide, word)
		}
	}
	require.NotContains(t, wide, "1 wall")
}

func TestNarrowPipeNamesItsWorstPartFirst(t *testing.T) {
	rows := pipe().Rows(30, 9, draw.Blocks, nil)
	require.Contains(t, rows[len(rows)-1], "2 main hose 25 ft")
}

func TestWiderBoreIsDrawnWider(t *testing.T) {
	height := func(bore float64) int {
		p := draw.Pipe{Pressure: draw.NewScale(0, 40, 5, whole), Parts: []draw.PipePart{{Name: "a", In: 40, Out: 39, Bore: bore, Own: true}, {Name: "b", In: 39, Out: 38, Bore: 10}}}
		var ys []int
		for _, c := range cells(p.Rows(60, 24, draw.Blocks, byRole), draw.RoleOwn, 23) {
			if c[1] > 17 && c[0] == 8 {
				ys = append(ys, c[1])
			}
		}
		require.NotEmpty(t, ys)
		return slices.Max(ys) - slices.Min(ys)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0, 10)
		require.LessOrEqual(t, height(a), height(b))
	})
}

// Each region shows its own tone: the worse, the more dots.
func TestWeatherIsDenserWhereItIsWorse(t *testing.T) {
	dots := func(r draw.Region) (n int) {
		w := draw.Weather{Temperature: draw.NewScale(0, 10, 3, whole), Humidity: draw.NewScale(0, 10, 3, whole), At: func(float64, float64) draw.Region { return r }}
		for _, c := range strings.Join(w.Rows(40, 12, draw.Blocks, nil), "") {
			if c > draw.Blocks.Braille && c <= draw.Blocks.Braille+255 {
				for b := c - draw.Blocks.Braille; b > 0; b &= b - 1 {
					n++
				}
			}
		}
		return n
	}
	require.Zero(t, dots(draw.Go))
	require.Less(t, 0, dots(draw.Watch))
	require.Less(t, dots(draw.Watch), dots(draw.Wait))
	require.Less(t, dots(draw.Wait), dots(draw.Stop))
}

func TestWeatherAsksForMuchLessThanEachDot(t *testing.T) {
	asked := 0
	w := weather(75, 45)
	at := w.At
	w.At = func(x, y float64) draw.Region { asked++; return at(x, y) }
	w.Rows(90, 28, draw.Blocks, nil)
	require.Less(t, asked, 90*28*4, "of the eight dots of a cell fewer than half")
}
