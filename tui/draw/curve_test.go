package draw_test

import (
	"fmt"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func ExampleBands() {
	b := draw.Bands{Bands: []draw.Band{
		{Name: "WALL", Text: "31 psi", Scale: draw.Scale{Low: 20, High: 40}, Low: 28, High: 34, At: 31, LowText: "28", HighText: "34"},
		{Name: "DISTANCE", Text: "5.5 in", Scale: draw.Scale{Low: 4, High: 7}, Low: 5.3, High: 5.8, At: 5.5, LowText: "5.3", HighText: "5.8"},
	}}
	for _, row := range b.Rows(50, 2, draw.ASCII, nil) {
		fmt.Println(row)
	}
	// Output:
	// WALL     31 psi  28 ----------====#====------- 34
	// DISTANCE 5.5 in 5.3 -----------==#==---------- 5.8
}

// A line that rises is drawn rising.
func TestCurveRisesWhereItsPointsDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		var points []draw.Point
		y := 0.0
		for x := range 11 {
			points = append(points, draw.Point{X: float64(x), Y: y})
			y = min(y+rapid.Float64Range(0, 4).Draw(t, "by"), 20)
		}
		k := draw.Curve{X: draw.NewScale(0, 10, 6, whole), Y: draw.NewScale(0, 20, 5, whole), Lines: []draw.CurveLine{{Points: points, Role: draw.RoleKept}}}
		last := 100
		all := cells(k.Rows(60, 20, g, byRole), draw.RoleKept, 20)
		for x := 4; x < 60; x++ {
			top := -1
			for _, c := range all {
				if c[0] == x {
					top = c[1]
					break
				}
			}
			require.GreaterOrEqual(t, top, 0, "no hole at %d", x)
			require.LessOrEqual(t, top, last)
			last = top
		}
	})
}

func TestSpotOffTheCurveStandsAtItsEdge(t *testing.T) {
	for sign, at := range map[string]draw.Point{"<": {X: -5, Y: 5}, ">": {X: 50, Y: 5}, "v": {X: 5, Y: -1}, "^": {X: 5, Y: 99}} {
		k := draw.Curve{X: draw.Scale{High: 10}, Y: draw.Scale{High: 10}, Spots: []draw.Spot{{Point: at, Text: "here", Role: draw.RoleMark}}}
		for _, g := range sets {
			all := strings.Join(k.Rows(40, 12, g, nil), "\n")
			require.Contains(t, all, sign)
			require.Contains(t, all, "here")
		}
	}
}

func TestEveryShareOfTheBandsHasAPiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bands(31)
		b.Shares = nil
		for i := range rapid.IntRange(1, 5).Draw(t, "shares") {
			b.Shares = append(b.Shares, draw.Share{Name: "cause" + whole(float64(i)), Share: rapid.Float64Range(0.001, 0.2).Draw(t, "share")})
		}
		all := strings.Join(b.Rows(90, 28, anySet(t), nil), "\n")
		for _, k := range b.Shares {
			require.Contains(t, all, k.Name)
		}
	})
}
