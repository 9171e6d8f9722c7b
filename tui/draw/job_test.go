package draw_test

import (
	"math/bits"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// height is from which row of a picture's cells a role stands up.
func height(rows []string, role draw.Role) int {
	top := len(rows)
	for _, c := range cells(rows, role, len(rows)) {
		top = min(top, c[1])
	}
	return len(rows) - top
}

func TestMoreFilmStandsHigher(t *testing.T) {
	film := func(thick float64) draw.Layers {
		return draw.Layers{Scale: draw.NewScale(0, 8, 5, whole), Stacks: []draw.Stack{{Name: "wet", Coats: []draw.Coat{{Thick: thick / 3}, {Thick: thick * 2 / 3}}}}}
	}
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		a, b := two(t, 0.1, 8)
		require.LessOrEqual(t, height(film(a).Rows(40, 20, g, byRole), draw.RoleKept), height(film(b).Rows(40, 20, g, byRole), draw.RoleKept))
	})
}

func TestFilmBeyondItsScaleIsMarked(t *testing.T) {
	l := draw.Layers{Scale: draw.NewScale(0, 8, 5, whole), Stacks: []draw.Stack{{Coats: []draw.Coat{{Thick: 9}}}}}
	require.Contains(t, strings.Join(l.Rows(40, 20, draw.Blocks, nil), ""), "^")
}

// Each level to pour to stands over the one before, in the order poured.
func TestEachPourStandsOnTheOneBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := draw.Cup{Holds: 40}
		for i := range rapid.IntRange(1, 4).Draw(t, "pours") {
			u.Pours = append(u.Pours, draw.Pour{Name: "part" + whole(float64(i)), Amount: rapid.Float64Range(0.1, 12).Draw(t, "amount")})
		}
		rows := u.Rows(60, 20, anySet(t), nil)
		last := len(rows)
		for _, k := range u.Pours {
			at := -1
			for y, row := range rows {
				if strings.Contains(row, k.Name) {
					at = y
				}
			}
			require.GreaterOrEqual(t, at, 0)
			require.Less(t, at, last)
			last = at
		}
	})
}

func TestAFullerCupStandsHigher(t *testing.T) {
	cup := func(v float64) draw.Cup {
		return draw.Cup{Holds: 32, Pours: []draw.Pour{{Name: "clear", Amount: v}}}
	}
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		a, b := two(t, 0.5, 32)
		require.LessOrEqual(t, height(cup(a).Rows(40, 20, g, byRole), draw.RoleKeep), height(cup(b).Rows(40, 20, g, byRole), draw.RoleKeep))
	})
}

func TestLaterStagesStandFartherRight(t *testing.T) {
	first := func(from float64, g draw.Glyphs) int {
		k := draw.Clock{Scale: draw.NewScale(0, 120, 7, whole), Lanes: []draw.Lane{{Stages: []draw.Stage{{From: from, To: from + 5, Role: draw.RoleKept}}}}}
		at := 1000
		for _, c := range cells(k.Rows(80, 6, g, byRole), draw.RoleKept, 6) {
			at = min(at, c[0])
		}
		return at
	}
	rapid.Check(t, func(t *rapid.T) {
		g := anySet(t)
		a, b := two(t, 0, 115)
		require.LessOrEqual(t, first(a, g), first(b, g))
		require.Less(t, first(b, g), 80)
	})
}

// dotsIn counts the dots of a picture's left, right, upper and lower half, and of its middle
// third of rows.
func dotsIn(p draw.Pattern) (left, right, top, bottom, middle int) {
	const w, h = 14, 9
	for y, row := range p.Rows(w, h, draw.Blocks, nil) {
		for x, c := range []rune(row) {
			if c <= draw.Blocks.Braille {
				continue
			}
			n := bits.OnesCount32(uint32(c - draw.Blocks.Braille))
			if x < w/2 {
				left += n
			} else {
				right += n
			}
			switch {
			case y < h/2:
				top += n
			case y > h/2:
				bottom += n
			}
			if y >= h/3 && y < h-h/3 {
				middle += n
			}
		}
	}
	return left, right, top, bottom, middle
}

func TestPatternsAreHeavyWhereTheySay(t *testing.T) {
	even := draw.Pattern{Wide: 0.6, High: 0.95, Wet: 0.8}
	with := func(change func(*draw.Pattern)) draw.Pattern {
		p := even
		change(&p)
		return p
	}
	_, _, top, bottom, middle := dotsIn(even)
	require.InDelta(t, top, bottom, 0.1*float64(top))
	all := top + bottom + middle
	_, _, top, bottom, _ = dotsIn(with(func(p *draw.Pattern) { p.Lean = 0.8 }))
	require.Greater(t, top, 3*bottom/2)
	_, _, top, bottom, _ = dotsIn(with(func(p *draw.Pattern) { p.Lean = -0.8 }))
	require.Greater(t, bottom, 3*top/2)
	_, _, _, _, split := dotsIn(with(func(p *draw.Pattern) { p.Ends = 0.9 }))
	require.Less(t, split, middle/2)
	left, right, _, _, _ := dotsIn(with(func(p *draw.Pattern) { p.Bend = -0.9 }))
	require.Greater(t, left, right)
	left, right, _, _, _ = dotsIn(with(func(p *draw.Pattern) { p.Bend = 0.9 }))
	require.Greater(t, right, left)
	_, _, top, bottom, middle = dotsIn(with(func(p *draw.Pattern) { p.Sputter = 0.6 }))
	require.Less(t, top+bottom+middle, all)
}

func TestWetterPaperShowsMoreDots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := two(t, 0.01, 1)
		sum := func(wet float64) int {
			left, right, _, _, _ := dotsIn(draw.Pattern{Wide: 0.7, High: 0.9, Wet: wet})
			return left + right
		}
		require.LessOrEqual(t, sum(a), sum(b))
	})
}
