package draw_test

import (
	"math"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// direction is how far a pointer has turned with the clock from straight up, in turns: that
// of the cell of the mark's role farthest from the middle of those of another role.
func direction(rows []string, ring, mark draw.Role, h int) float64 {
	left, right, top, bottom := math.MaxInt, 0, math.MaxInt, 0
	for _, c := range cells(rows, ring, h) {
		left, right, top, bottom = min(left, c[0]), max(right, c[0]), min(top, c[1]), max(bottom, c[1])
	}
	// The middle of a ring whose lower part may be missing.
	x := float64(left+right) / 2
	y := float64(2*top) + float64(right-left)/2
	far, turn := -1.0, 0.0
	for _, c := range cells(rows, mark, h) {
		dx, dy := float64(c[0])-x, float64(2*c[1])+0.5-y
		if r := math.Hypot(dx, dy); r > far {
			far, turn = r, math.Atan2(dx, -dy)/(2*math.Pi)
		}
	}
	return turn
}

func TestGaugeNeedleTurnsWithItsValue(t *testing.T) {
	at := func(v float64, g draw.Glyphs) float64 {
		p := draw.Gauge{Scale: draw.NewScale(0, 60, 7, whole), Set: draw.Mark{At: v, Text: "set"}, Name: "WALL"}
		return direction(p.Rows(60, 24, g, byRole), draw.RoleAxis, draw.RoleMark, 23)
	}
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		v := rapid.Float64Range(0, 60).Draw(t, "v")
		require.InDelta(t, (v/60-0.5)*0.75, at(v, g), 0.03)
	})
}

func TestGaugeShowsWhatLiesOffItAtItsEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		p := draw.Gauge{Scale: draw.NewScale(0, 60, 7, whole), Set: draw.Mark{At: rapid.Float64Range(60.001, 1e9).Draw(t, "v"), Text: "set"}}
		joined := ""
		for _, row := range p.Rows(60, 24, g, nil) {
			joined += row
		}
		require.Contains(t, joined, ">")
	})
}

func TestKnobTurnsWithTheClockOrAgainstIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		v := rapid.Float64Range(0, 3).Draw(t, "v")
		p := draw.Knob{Shut: 3, Set: draw.Mark{At: v, Text: "set"}, Anticlock: rapid.Bool().Draw(t, "anticlock")}
		turn := direction(p.Rows(60, 24, g, byRole), draw.RoleAxis, draw.RoleMark, 23)
		if p.Anticlock {
			turn = -turn
		}
		apart := math.Abs(math.Mod(v-turn+3.5, 1) - 0.5)
		require.Less(t, apart, 0.04, "%v turns stand at %v", v, turn)
	})
}

func TestPanelStandsFartherForAGreaterDistance(t *testing.T) {
	at := func(v float64, g draw.Glyphs) int {
		p := draw.Reach{Scale: draw.NewScale(0, 9, 10, whole), Set: draw.Mark{At: v, Text: "x"}}
		for _, c := range cells(p.Rows(60, 12, g, byRole), draw.RoleMark, 12) {
			if c[1] == 4 {
				return c[0]
			}
		}
		return -1
	}
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		a, b := two(t, 0.5, 9)
		require.LessOrEqual(t, at(a, g), at(b, g))
		require.Positive(t, at(a, g))
	})
}
