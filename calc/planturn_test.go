package calc

import (
	"testing"

	"boothset/calc/line"
	"boothset/calc/supply"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// weighs is the level of the cause with an id, go where there is none.
func weighs(s *Setup, id string) Verdict {
	for _, c := range s.Against {
		if c.ID == id {
			return c.Level
		}
	}
	return VerdictGo
}

// What turns the worst of a line, a gun or a supply does: once it is done the cause is gone,
// and the verdict is milder where nothing else weighs as much.
func TestWhatIsAdvisedTurnsThePlan(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		r.Day = mildClear(t).Day
		r.HasNow = false
		r.Swaps = everySwap(r.Line)
		r.Supply = unit.PSIG(f(15, 200, "a shop's supply"))
		if rapid.Bool().Draw(t, "with the shop's air") {
			inAShop(&r)
			sys := &r.Shop.System
			sys.CutOut = TopSupply
			for i := range r.Line {
				r.Line[i].DewPoint = unit.Celsius(3) // of a dryer
			}
			sys.Rated, sys.Receiver.Volume = unit.SCFM(f(0, 20, "rated")), unit.USGallons(f(5, 80, "receiver"))
			if rapid.Bool().Draw(t, "masked") {
				sys.Others = []supply.User{{Flow: unit.SCFM(6), Duty: 1, Mask: true}}
			}
		}
		s := solved(t, r)
		if len(s.Against) == 0 {
			return
		}
		worst := s.Against[0]
		figure := func(name string) float64 {
			for _, f := range worst.Turn.Figures {
				if f.Name == name {
					return f.Value
				}
			}
			require.Fail(t, "no figure", name)
			return 0
		}
		switch worst.Turn.ID {
		case "turn-mask":
			r.Shop.System.Others = nil
		case "turn-more-supply":
			r.Supply = unit.Gauge(figure("needed"))
		case "turn-receiver":
			r.Shop.System.Receiver.Volume = unit.Volume(figure("receiver") * (1 + 1e-6))
		case "turn-compressor": // what it delivers here is less than its plate says
			v := &s.Supplied.Verdict
			if v.Delivered == 0 {
				return
			}
			r.Shop.System.Rated *= unit.Flow(figure("delivered")/float64(v.Delivered)) * (1 + 1e-6)
		case "turn-regulator":
			r.Line = append([]line.Part{regulatorPart(mildClear(t))}, r.Line...)
		default:
			return // mended by hand: told, not a figure
		}
		seen[worst.Turn.ID]++
		after := solved(t, r)
		require.Less(t, weighs(after, worst.ID), worst.Level, "%+v", worst)
		alone := len(s.Against) == 1 || s.Against[1].Level < worst.Level
		shows := worst.Turn.ID == "turn-regulator" || worst.Turn.ID == "turn-more-supply" && r.Shop.Known // what else is wrong
		if alone && !shows {
			require.Less(t, after.Verdict, s.Verdict, "%+v then %+v", s.Against, after.Against)
		}
	})
	for _, id := range []string{"turn-more-supply", "turn-regulator"} {
		require.Positive(t, seen[id], id)
	}
}

// regulatorPart is the regulator of a request's line.
func regulatorPart(r Request) line.Part {
	wall, _ := r.Regulators()
	return r.Line[wall]
}
