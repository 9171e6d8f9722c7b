package calc

import (
	"slices"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// everySwap is one swap of each kind for each part of a line.
func everySwap(parts []line.Part) (all []Swap) {
	wide := line.Restriction{C: unit.DM3PerSBar(12), B: 0.4}
	add := func(i int, kinds ...SwapKind) {
		for _, k := range kinds {
			all = append(all, Swap{
				ID: "wide", Kind: k, Index: i, Part: wide, Scale: 0.5, Bore: unit.Inches(0.5), End: line.Restriction{C: unit.DM3PerSBar(16), B: 0.5},
				Regulator: line.Regulator{Seat: line.Restriction{C: unit.DM3PerSBar(20), B: 0.3}, Droop: line.DroopOf(unit.PSIDrop(1), unit.SCFM(150))},
			})
		}
	}
	for i := range parts {
		switch parts[i].Kind {
		case line.RegulatorKind:
			add(i, SwapRegulator)
		case line.FilterKind:
			add(i, SwapFilter, DropFilter)
		case line.DryerKind:
			add(i, SwapDryer)
		case line.CouplingKind:
			add(i, SwapCouplings, SwapCoupling)
		case line.HoseKind:
			add(i, SwapBore, ShortenHose)
		case line.ValveKind:
			add(i, SwapValve, DropValve)
		}
	}
	return all
}

// swapped is a request with the change made by hand.
func swapped(r Request, w Swap) Request {
	r.Line = slices.Clone(r.Line)
	p := &r.Line[w.Index]
	switch w.Kind {
	case SwapCouplings:
		for i := range r.Line {
			if r.Line[i].Kind == line.CouplingKind {
				r.Line[i].Restriction = w.Part
			}
		}
	case SwapBore:
		p.Hose.Bore, p.Hose.End = w.Bore, w.End
	case ShortenHose:
		p.Hose.Length *= unit.Length(w.Scale)
	case SwapRegulator:
		p.Regulate(w.Regulator)
	case DropFilter, DropValve:
		r.Line = slices.Delete(r.Line, w.Index, w.Index+1)
	default:
		p.Restriction = w.Part
	}
	return r
}

// What a fix claims to win is what solving the line with the change made wins.
func TestFixesWinWhatTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		for i := range r.Line {
			if h := &r.Line[i].Hose; r.Line[i].Kind == line.HoseKind {
				h.Length = max(h.Length, 2*ShortestHose) // half of it is tried
			}
		}
		r.HasNow = false
		r.Swaps = append(everySwap(r.Line), Swap{ID: "wider", Kind: SwapCouplings, Part: line.Restriction{C: unit.DM3PerSBar(20), B: 0.4}})
		s, err := Solve(&r)
		require.NoError(t, err)
		require.LessOrEqual(t, len(s.Fixes), BestFixes)
		for i, f := range s.Fixes {
			require.GreaterOrEqual(t, float64(f.Won), float64(leastFix))
			for _, g := range s.Fixes[:i] {
				require.False(t, g.Part == f.Part && g.Swap.Kind == f.Swap.Kind, "the same change twice")
			}
			if i > 0 {
				require.GreaterOrEqual(t, float64(s.Fixes[i-1].Won), float64(f.Won), "the best first")
			}
			after := swapped(r, f.Swap)
			after.Swaps = nil
			if f.OfSupply {
				// What the target needs is only given for a short supply: starve both alike.
				r.Supply, after.Supply = LowestSupply, LowestSupply
				before, err := Solve(&r)
				require.NoError(t, err)
				then, err := Solve(&after)
				require.NoError(t, err)
				require.True(t, then.Short.Is)
				assert.InDelta(t, (before.Short.Needed - then.Short.Needed).PSI(), f.Won.PSI(), 1e-6, f.ID())
				continue
			}
			then, err := Solve(&after)
			require.NoError(t, err)
			asked := func(r *Request, s *Setup) float64 {
				wall, _ := r.Regulators()
				return r.regulator(wall).Set(s.Wall.Open, s.Working.Flow).PSI()
			}
			assert.InDelta(t, asked(&r, s)-asked(&after, then), f.Won.PSI(), 1e-6, f.ID())
		}
	})
}

// Slim couplings are the first thing to change on a line that has them.
func TestLargerCouplingsComeFirstWhereTheyAreSlim(t *testing.T) {
	r := mildClear(t)
	slim := line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
	r.Line[1].Restriction, r.Line[3].Restriction = slim, slim
	r.Swaps = []Swap{
		{ID: "1/2in", Kind: SwapBore, Index: 2, Bore: unit.Inches(0.5), End: line.Restriction{C: unit.DM3PerSBar(16), B: 0.5}},
		{ID: "large-bore", Kind: SwapCouplings, Part: line.Restriction{C: unit.DM3PerSBar(8), B: 0.4}},
		{Kind: ShortenHose, Index: 2, Scale: 0.5},
	}
	s, err := Solve(&r)
	require.NoError(t, err)
	require.Len(t, s.Fixes, 3)
	assert.Equal(t, SwapCouplings, s.Fixes[0].Swap.Kind)
	assert.Greater(t, s.Fixes[0].Won.PSI(), 10.0)
}
