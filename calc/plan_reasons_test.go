package calc

import (
	"slices"
	"strings"
	"testing"
	"time"

	"boothset/calc/line"
	"boothset/calc/supply"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// told is the ids of a setup's reasons but for those of its verdict, and, with their verdict or the first letter of their
// level, of what speaks against it and its cautions but for those that protect people.
func told(s *Setup) (reasons, cautions []string) {
	for _, c := range s.Against {
		cautions = append(cautions, c.Level.String()+" "+c.ID)
	}
	for _, r := range s.Reasons {
		if r.About != "verdict" {
			reasons = append(reasons, r.ID)
		}
	}
	for _, c := range s.Cautions {
		if !c.Safety {
			cautions = append(cautions, string(c.Level[0])+" "+c.ID)
		}
	}
	return reasons, cautions
}

// without is what of all is not in other.
func without(all, other []string) (left []string) {
	for _, id := range all {
		if !slices.Contains(other, id) {
			left = append(left, id)
		}
	}
	return left
}

// inAShop gives a request the air of a shop that keeps up with the gun.
func inAShop(r *Request) {
	r.Shop = Shop{
		Known: true, Spraying: 3 * time.Minute, Panels: 1, ReceiverTemp: unit.Celsius(30), LineTemp: unit.Celsius(30),
		System: supply.System{
			Rated: unit.SCFM(30), RatedInlet: supply.SCFMInlet, CutIn: unit.PSIG(90), CutOut: unit.PSIG(120),
			Receiver: supply.Receiver{Volume: unit.USGallons(60)},
		},
	}
}

// inOrder is how the gun's knobs are set.
var inOrder = []string{"setup-fan", "setup-fluid", "setup-air", "setup-paper", "setup-flood"}

// What is told of a bench beyond, and in place of, what is told of a clear on a mild day:
// each for what it is about, and a caution only where there is something to do.
func TestWhatAPlanSays(t *testing.T) {
	mild, calm := told(solved(t, mildClear(t)))
	assert.Equal(t, []string{
		"gun-start", "weather-mild", "weather-dew", "gun-flow", "wall-set", "wall-static", "valve-opening", "valve-floor",
		"compare", "distance-jet", "distance-class", "line-bottleneck",
		"setup-fan", "setup-fluid", "setup-air", "setup-paper", "setup-flood", "supply-unchecked",
	}, mild)
	assert.Equal(t, []string{"n local-gun-rules"}, calm)
	// Of a job that is stopped nothing is said that is to be set.
	unset := []string{"gun-start", "gun-flow", "wall-set", "wall-static", "valve-opening", "valve-floor", "compare", "distance-jet", "distance-class"}
	for _, c := range []struct {
		name            string
		change          func(*Request)
		added, replaced []string // reasons
		warned          []string
	}{
		{"a hot, dry day", func(r *Request) { r.Day = Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12} },
			[]string{"weather-hot", "lever-thinner", "lever-cooler", "lever-nearer", "lever-pressure"}, []string{"weather-mild"}, []string{"wait hot-air", "wait lands-dry"}},
		{"a hot, dry day, and a coat that may not be sprayed lower", func(r *Request) {
			r.Day = Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12}
			r.Coat.Working.Low = r.Coat.Working.Start
		}, []string{"weather-hot-held", "lever-thinner", "lever-cooler", "lever-nearer"}, []string{"weather-mild"}, []string{"wait hot-air", "wait lands-dry"}},
		{"a hot, dry day, and a coat that may be sprayed a little lower: the drops stay as they print", func(r *Request) {
			r.Day = Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12}
			r.Coat.Working.Low = r.Coat.Working.Start - unit.Gauge(unit.PSIDrop(0.1))
		}, []string{"weather-hot-drops", "lever-thinner", "lever-cooler", "lever-nearer"}, []string{"weather-mild"}, []string{"wait hot-air", "wait lands-dry"}},
		{"a cold day", func(r *Request) { r.Day = Day{Air: unit.Celsius(12), Panel: unit.Celsius(12), Humidity: 0.5} },
			[]string{"weather-slow"}, []string{"weather-mild"}, []string{"wait cold"}},
		{"a panel under the dew point", func(r *Request) { r.Day.Panel = unit.Celsius(2) },
			[]string{"weather-dew-below"}, []string{"gun-start", "weather-dew", "gun-flow", "wall-set", "wall-static", "valve-opening", "valve-floor", "compare", "distance-jet", "distance-class", "line-bottleneck"}, []string{"stop dew-on-panel", "wait cold-panel"}},
		{"regulator and gauge at the gun's foot", func(r *Request) { regulate(r, Foot); r.Gauge = AtFoot },
			[]string{"wall-foot", "gauge-foot"}, []string{"wall-set"}, nil},
		{"neither regulator nor gauge", func(r *Request) { regulate(r, Nowhere); r.Gauge = NoGauge },
			[]string{"wall-none", "valve-below-floor", "gauge-none"}, []string{"wall-set", "wall-static", "valve-floor", "compare"}, []string{"wait no-regulator"}},
		{"no regulator on 140 psi", func(r *Request) { regulate(r, Nowhere); r.Supply = unit.PSIG(140) },
			[]string{"wall-none", "valve-below-floor"}, []string{"wall-set", "wall-static", "valve-floor", "compare"}, []string{"wait no-regulator", "w valve-choked"}},
		{"28 psi of supply", func(r *Request) { inAShop(r); r.Supply = unit.PSIG(28) },
			[]string{"wall-short", "valve-open-wide", "line-limit", "supply-short-first"},
			[]string{"wall-set", "wall-static", "valve-opening", "valve-floor", "compare", "line-bottleneck", "supply-unchecked"}, []string{"wait supply-short"}},
		{"22 psi of supply", func(r *Request) { inAShop(r); r.Supply = unit.PSIG(22) },
			[]string{"line-limit", "supply-short-first"}, append(slices.Clone(unset), "line-bottleneck", "supply-unchecked"), []string{"stop supply-below-target"}},
		{"no more supply than the gun is to have", func(r *Request) { r.Supply = unit.PSIG(26) },
			[]string{"line-limit"}, append(slices.Clone(unset), "line-bottleneck"), []string{"stop supply-below-target"}},
		{"hardly enough supply", func(r *Request) { r.Supply = unit.PSIG(30.4) }, nil, []string{"compare"}, []string{"w little-reserve"}},
		{"the wall at 70 psi", func(r *Request) { r.HasNow, r.Now = true, unit.PSIG(70) }, []string{"now-valve"}, nil, []string{"w now-over-stamp"}},
		{"the wall at 140 psi", func(r *Request) { r.HasNow, r.Now = true, unit.PSIG(140) },
			[]string{"now-choked", "compare-choked"}, []string{"compare"}, []string{"w now-above-supply", "w now-over-stamp"}},
		{"the wall at 20 psi", func(r *Request) { r.HasNow, r.Now = true, unit.PSIG(20) }, []string{"now-too-low"}, []string{"compare"}, nil},
		{"slim couplings", func(r *Request) {
			slim := line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
			r.Line[1].Restriction, r.Line[3].Restriction = slim, slim
		}, []string{"line-couplings"}, nil, nil},
		{"a start above the stamp", func(r *Request) {
			r.Coat.Working = Band{Start: unit.PSIG(40), Low: unit.PSIG(23), High: unit.PSIG(50)}
		}, []string{"gun-held-by-stamp", "distance-held-far"}, []string{"distance-jet"}, []string{"w wall-over-stamp"}},
		{"a class that is held nearer", func(r *Request) { r.Gun.Farthest = unit.Inches(5.2) }, []string{"distance-held-far"}, []string{"distance-jet"}, nil},
		{"a class that is held farther, and a coat as well", func(r *Request) {
			r.Gun.Nearest, r.Coat.Farther = unit.Inches(5.9), unit.Inches(0.2)
		}, []string{"distance-held-near", "distance-coat"}, []string{"distance-jet"}, nil},
		{"a shop's air that keeps up", inAShop, []string{"supply-keeps-up", "water-receiver"}, []string{"supply-unchecked"}, nil},
		{"a small machine with a large receiver", func(r *Request) { inAShop(r); r.Shop.System.Rated = unit.SCFM(7) },
			[]string{"supply-holds", "water-receiver"}, []string{"supply-unchecked"}, []string{"watch supply-deficit"}},
		{"and panels that it recovers between", func(r *Request) {
			inAShop(r)
			r.Shop.System.Rated, r.Shop.Panels, r.Shop.Pause = unit.SCFM(7), 4, 5*time.Minute
		}, []string{"supply-holds", "supply-series-recovers", "water-receiver"}, []string{"supply-unchecked"}, nil},
		{"and too many panels without a pause", func(r *Request) {
			inAShop(r)
			r.Shop.System.Rated, r.Shop.Panels = unit.SCFM(7), 40
		}, []string{"supply-holds", "supply-series-falls", "water-receiver"}, []string{"supply-unchecked"}, []string{"wait supply-series"}},
		{"a motor of 5 hp", func(r *Request) { inAShop(r); r.Shop.Power = 5 }, []string{"supply-keeps-up", "supply-motor", "water-receiver"}, []string{"supply-unchecked"}, nil},
		{"a small machine with a small receiver", func(r *Request) {
			inAShop(r)
			r.Shop.System.Rated, r.Shop.System.Receiver.Volume = unit.SCFM(5), unit.USGallons(10)
		}, []string{"supply-compressor", "water-receiver"}, append(slices.Clone(unset), "line-bottleneck", "supply-unchecked"), []string{"stop supply-gives-out"}},
		{"a receiver that does when it is full", func(r *Request) {
			inAShop(r)
			r.Shop.System.Rated, r.Shop.Spraying = 0, 2*time.Minute
			r.Shop.System.Receiver.Volume = unit.USGallons(30)
		}, []string{"supply-receiver", "water-receiver"}, []string{"supply-unchecked"}, []string{"wait supply-from-full"}},
		{"a switch below what the wall takes", func(r *Request) { inAShop(r); r.Shop.System.CutIn = unit.PSIG(20) },
			[]string{"supply-switch", "water-hose"}, []string{"supply-unchecked"}, []string{"wait supply-from-full", "w water-in-hose"}},
		{"a main that is too thin", func(r *Request) {
			inAShop(r)
			r.Shop.System.Main = supply.Main{Length: 100, Bore: unit.MM(7)}
		}, []string{"supply-main", "water-receiver"}, append(slices.Clone(unset), "line-bottleneck", "supply-unchecked"), []string{"stop supply-gives-out"}},
		{"a warm receiver and a cold main", func(r *Request) { inAShop(r); r.Shop.LineTemp = unit.Celsius(5) },
			[]string{"supply-keeps-up", "water-main"}, []string{"supply-unchecked"}, nil},
		{"desert air", func(r *Request) { inAShop(r); r.Day.Humidity = 0.02 }, []string{"supply-keeps-up", "water-none"}, []string{"supply-unchecked"}, nil},
		{"a cap near its limit", func(r *Request) { r.Gun.CapLimit = unit.PSIG(16.3) }, []string{"wall-held"}, []string{"wall-set"}, []string{"w cap-near-limit"}},
		{"a valve far down", func(r *Request) { r.Mark, r.Line = unit.PSIDrop(20), r.Line[:1] },
			[]string{"valve-below-floor"}, []string{"valve-floor"}, []string{"w valve-low", "w wall-over-stamp"}},
	} {
		r := mildClear(t)
		c.change(&r)
		s := solved(t, r)
		reasons, cautions := told(s)
		for _, against := range s.Against {
			assert.True(t, slices.ContainsFunc(s.Reasons, func(x Reason) bool {
				return x.About == "verdict" && x.ID == against.Limit && x.Source == against.Source
			}), "%s: the limit that %s passes", c.name, against.ID)
		}
		assert.Equal(t, c.added, without(reasons, mild), c.name)
		gone := without(mild, reasons)
		set := !slices.Contains(gone, "gun-start")
		assert.Equal(t, !set, slices.Contains(gone, "setup-fan"), "%s: the gun is set where there is something to set", c.name)
		assert.Equal(t, c.replaced, without(gone, inOrder), c.name)
		assert.Equal(t, c.warned, without(cautions, calm), c.name)
		assert.True(t, slices.IsSortedFunc(cautions, func(a, b string) int {
			order := []string{"stop", "wait", "watch", "w", "n"} // the gravest first
			level := func(s string) int { return slices.Index(order, strings.Fields(s)[0]) }
			return level(a) - level(b)
		}), c.name)
	}
}

// A cap is told of from 95 % of its limit on, not at it: mildClear's 15.542 psi are 95 % of
// 16.360.
func TestCapNearItsLimit(t *testing.T) {
	r := mildClear(t)
	for limit, near := range map[float64]bool{16.35: true, 16.37: false} {
		r.Gun.CapLimit = unit.PSIG(limit)
		_, cautions := told(solved(t, r))
		assert.Equal(t, near, slices.Contains(cautions, "w cap-near-limit"), "%v psi", limit)
		assert.NotContains(t, cautions, "n local-gun-rules", "a class with a limit is what the rules ask for")
	}
}

// A valve that chokes is at Mach 1, not a rounding below.
func TestAChokedValveIsAtMachOne(t *testing.T) {
	r := mildClear(t)
	regulate(&r, Nowhere)
	r.Supply = unit.PSIG(140)
	s := solved(t, r)
	assert.True(t, s.Valve.Choked)
	assert.Equal(t, 1.0, s.Valve.Mach)
}

// The figures of a reason are the setup's own, and the differences that it speaks of those
// of its figures.
func TestFiguresOfAPlansReasons(t *testing.T) {
	r := mildClear(t)
	r.HasNow, r.Now = true, unit.PSIG(70)
	s := solved(t, r)
	figures := func(id string) map[string]float64 {
		i := slices.IndexFunc(s.Reasons, func(x Reason) bool { return x.ID == id })
		require.GreaterOrEqual(t, i, 0, id)
		out := map[string]float64{}
		for _, f := range s.Reasons[i].Figures {
			out[f.Name] = f.Value
		}
		return out
	}
	wall := figures("wall-set")
	assert.InDelta(t, wall["open"]-wall["working"], wall["lost"], 1e-6)
	assert.InDelta(t, wall["flowing"]-wall["open"], wall["reserve"], 1e-6)
	assert.Equal(t, float64(r.Supply), wall["supply"])
	now := figures("now-valve")
	assert.Equal(t, float64(s.Wall.Flowing), now["set"])
	assert.Equal(t, float64(unit.PSIG(70)), now["wall"])
	compare := figures("compare")
	assert.Equal(t, 0.05, compare["sagShare"])
	assert.Equal(t, float64(unit.PSIG(70)), compare["highWall"])
	dew := figures("weather-dew")
	assert.InDelta(t, dew["panel"]-dew["dew"], dew["margin"], 1e-9)

	// Short of supply, what would be set had the supply it is what the open valve takes.
	r.Supply = unit.PSIG(28)
	s = solved(t, r)
	assert.Equal(t, float64(s.Wall.Open), figures("now-valve")["set"])
	assert.Equal(t, float64(-s.Weather.Correction), figures("weather-mild")["less"])
	// Under the dew point the margin is told as how far under.
	r.Day.Panel = s.Weather.DewPoint - 2
	s = solved(t, r)
	assert.InDelta(t, 2, figures("weather-dew-below")["margin"], 1e-9)
}

// The answer that a fault of the shop's air lies in; what is nobody's is the supply's.
func TestFaultsOfAShopNameTheirAnswer(t *testing.T) {
	for field, change := range map[string]func(*Shop){
		"receiver":      func(s *Shop) { s.System.Receiver.Volume = 0 },
		"receiver-temp": func(s *Shop) { s.ReceiverTemp = unit.Celsius(200) },
		"cut-in":        func(s *Shop) { s.System.CutIn = unit.PSIG(1) },
		"cut-out":       func(s *Shop) { s.System.CutOut = unit.PSIG(50) },
		"main":          func(s *Shop) { s.System.Main = supply.Main{Length: 10, Bore: 1} },
		"line-temp":     func(s *Shop) { s.LineTemp = unit.Celsius(90) },
		"compressor":    func(s *Shop) { s.System.Rated = -1 },
		"other":         func(s *Shop) { s.System.Others = []supply.User{{Flow: 1e-3, Duty: 2}} },
		"spray-time":    func(s *Shop) { s.Spraying = -time.Minute },
	} {
		r := mildClear(t)
		inAShop(&r)
		change(&r.Shop)
		_, err := Solve(&r)
		var p *Problem
		require.ErrorAs(t, err, &p, field)
		assert.Equal(t, field, p.Field)
	}
	var p *Problem
	require.ErrorAs(t, problemOf(&supply.InputError{Field: supply.FieldNeeded}), &p)
	assert.Equal(t, "supply", p.Field)
}

// Of two larger couplings the one that wins more is named, whichever comes first.
func TestTheBetterOfTwoSwaps(t *testing.T) {
	large := Swap{ID: "large", Kind: SwapCouplings, Part: line.Restriction{C: unit.DM3PerSBar(20), B: 0.4}}
	larger := Swap{ID: "larger", Kind: SwapCouplings, Part: line.Restriction{C: unit.DM3PerSBar(30), B: 0.4}}
	for _, swaps := range [][]Swap{{large, larger}, {larger, large}} {
		r := mildClear(t)
		r.Line[1].Restriction.C, r.Line[3].Restriction.C = unit.DM3PerSBar(3), unit.DM3PerSBar(3)
		r.Swaps = swaps
		s := solved(t, r)
		require.Len(t, s.Fixes, 1)
		assert.Equal(t, "larger", s.Fixes[0].Swap.ID)
	}
}

// Shares are of what is lost between the set pressure and the gun: they add up to one, and
// the gun's own parts and a regulator have none.
func TestSharesOfTheLine(t *testing.T) {
	for _, at := range []Place{Wall, Foot, Nowhere} {
		r := mildClear(t)
		regulate(&r, at)
		s := solved(t, r)
		sum := 0.0
		for _, step := range s.Line {
			switch step.Kind {
			case line.RegulatorKind, line.PassagesKind, line.CapKind:
				assert.Zero(t, step.Share, step.Kind)
			default:
				assert.Positive(t, step.Share, step.Kind)
			}
			sum += step.Share
		}
		assert.InDelta(t, 1, sum, 1e-9)
		assert.Equal(t, "main hose", s.Line[s.Bottleneck].Name)
	}
	// Only where the supply is short can the regulator's seat be what limits it.
	r := mildClear(t)
	r.Supply, r.Line[0].Restriction = unit.PSIG(90), line.Restriction{C: unit.DM3PerSBar(0.5), B: 0.3}
	s := solved(t, r)
	require.True(t, s.Short.Is)
	assert.Equal(t, line.RegulatorKind, s.Line[s.Bottleneck].Kind)
}

// A plan says what harms in the hardener, what the booth's air owes to the painter, and, where
// someone may breathe the shop's air, that it is not for that. None of it stops the job.
func TestWhatAPlanSaysOfSafety(t *testing.T) {
	for h, id := range map[Hardener]string{UnknownHardener: "isocyanate-unknown", Isocyanate: "isocyanate", Amine: "amine", Acrylate: "acrylate", OnePart: ""} {
		for _, others := range [][]supply.User{nil, {{Flow: unit.SCFM(1), Duty: 1}}} {
			r := mildClear(t)
			inAShop(&r)
			r.Coat.Hardener, r.Shop.System.Others = h, others
			s := solved(t, r)
			var ids []string
			for _, c := range s.Cautions {
				if c.Safety {
					ids = append(ids, c.ID)
				}
			}
			want := []string{"booth-clear", "booth-air"}
			if h != OnePart || len(others) > 0 {
				want = slices.Insert(want, 1, "breathing-air")
			}
			if id != "" {
				want = slices.Insert(want, 0, id)
			}
			assert.Equal(t, want, ids, h)
			assert.False(t, s.Stopped())
		}
	}
}
