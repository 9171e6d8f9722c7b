package draw

import (
	"math"
	"math/bits"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// inked are the places of a layer's dots.
func inked(d *dots) map[[2]int]bool {
	all := map[[2]int]bool{}
	for y := range d.h {
		for x := range d.w {
			if c, b := d.at(x, y); c.bits&b != 0 {
				all[[2]int{x, y}] = true
			}
		}
	}
	return all
}

func TestRingHasNoHolesAndIsAsWideAsHigh(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := newDots(40, 20)
		r := rapid.Float64Range(3, 35).Draw(t, "r")
		thick := rapid.Float64Range(1, 4).Draw(t, "thick")
		d.ring(39.5, 39.5, r, thick, RoleAxis)
		all := inked(d)
		for i := range 2000 {
			x, y := polar(39.5, 39.5, r, float64(i)/2000*fullTurn)
			near := false
			for _, dx := range []int{-1, 0, 1} {
				for _, dy := range []int{-1, 0, 1} {
					near = near || all[[2]int{round(x) + dx, round(y) + dy}]
				}
			}
			require.True(t, near, "a hole at %v, %v", x, y)
		}
		for p := range all {
			require.LessOrEqual(t, math.Abs(math.Hypot(float64(p[0])-39.5, float64(p[1])-39.5)-r), thick/2+1e-9)
			require.True(t, all[[2]int{79 - p[0], p[1]}], "left as right")
			require.True(t, all[[2]int{p[0], 79 - p[1]}], "top as bottom")
			require.True(t, all[[2]int{p[1], p[0]}], "across as down")
		}
	})
}

func TestLineIsEvenlyThick(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := newDots(20, 10)
		v := rapid.Float64Range(4, 34)
		x0, y0, x1, y1 := v.Draw(t, "x0"), v.Draw(t, "y0"), v.Draw(t, "x1"), v.Draw(t, "y1")
		thick := rapid.IntRange(1, 3).Draw(t, "thick")
		d.line(x0, y0, x1, y1, thick, RoleMark)
		at := 0
		if math.Abs(y1-y0) > math.Abs(x1-x0) {
			at = 1
		}
		across := map[int]int{}
		for p := range inked(d) {
			across[p[at]]++
		}
		for _, n := range across {
			require.Equal(t, thick, n)
		}
	})
}

func TestLinesFromAnywhereKeepToTheLayer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-100, 100), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64}))
		newDots(10, 5).line(v.Draw(t, "x0"), v.Draw(t, "y0"), v.Draw(t, "x1"), v.Draw(t, "y1"), rapid.IntRange(1, 3).Draw(t, "thick"), RoleMark)
	})
}

func TestCellTakesTheRoleOfHighestRank(t *testing.T) {
	d := newDots(1, 1)
	d.set(0, 0, RoleMark)
	d.set(1, 1, RoleAxis)
	require.Equal(t, dotCell{bits: bit[0][0] | bit[1][1], role: RoleMark}, d.cell[0])
}

func TestFillGivesWayToLines(t *testing.T) {
	d := newDots(1, 1)
	d.fill(0, 0, RoleFill)
	d.set(1, 1, RoleAxis)
	d.fill(0, 3, RoleFill)
	require.Equal(t, dotCell{bits: bit[1][1], role: RoleAxis}, d.cell[0])
}

func TestTonesGrowDenserEvenly(t *testing.T) {
	for tone, want := range map[tone]int{blank: 0, sparse: 1, middling: 2, dense: 4} {
		d := newDots(6, 6)
		for y := range d.h {
			for x := range d.w {
				if tone.has(x, y) {
					d.fill(x, y, RoleGo)
				}
			}
		}
		for _, c := range d.cell {
			require.Equal(t, want, bits.OnesCount8(c.bits))
		}
	}
}

func TestEveryRoleHasItsOwnRank(t *testing.T) {
	seen := map[uint8]bool{}
	for _, r := range rank {
		require.False(t, seen[r])
		seen[r] = true
	}
}

func TestASCIIShowsTheShapeOfItsDots(t *testing.T) {
	for want, line := range map[rune][4]float64{'|': {0, 0, 0, 3}, '-': {0, 1, 1, 1}, '_': {0, 3, 1, 3}, '/': {0, 3, 1, 0}, '\\': {0, 0, 1, 3}} {
		d := newDots(1, 1)
		d.line(line[0], line[1], line[2], line[3], 1, RoleMark)
		require.Equal(t, string(want), string(d.cell[0].char(ASCII)))
	}
	for b := range 256 {
		c := dotCell{bits: uint8(b)}.char(ASCII)
		require.True(t, c >= ' ' && c <= '~')
	}
}
