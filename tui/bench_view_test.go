package tui

import (
	"strings"
	"testing"

	"boothset/calc/line"
	"boothset/calc/spread"
	"boothset/presets/answer"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

func TestAllReasonsAreThereOnceAskedFor(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toSupply, "6")...)
		all := screenfulsText(r)
		for _, about := range []string{"gun", "weather", "wall", "valve", "distance", "line", "setup", "supply"} {
			require.Contains(t, all, r.s.say("why-of-"+about), "%v", l)
		}
		require.Contains(t, all, r.s.say("would-help"))
		for _, fix := range r.result().Plan.Setup.Fixes {
			require.Contains(t, strings.ReplaceAll(all, "- ", ""), fix.Part, "%v", l)
		}
	}
}

func TestEveryPartOfTheLineIsShownAndTheWorstIsMarked(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toAnswer, "3")...)
		all := strings.ToLower(screenfulsText(r))
		v := r.result().Plan.Setup
		require.Greater(t, len(v.Line), 4)
		for i, part := range v.Line {
			name := strings.ToLower(part.Name)
			switch i {
			case 0: // the fall begins behind it
				require.Equal(t, line.RegulatorKind, part.Kind)
			case v.Bottleneck:
				require.Contains(t, all, "the most is lost in: "+name+", ", "%v", l)
			default:
				require.Contains(t, all, name[:min(len(name), 10)], "%v", l)
			}
		}
	}
}

// What a screenful of a view does not show the next one does: every row that is laid out can
// be seen.
func TestEveryRowOfAViewCanBeReached(t *testing.T) {
	for _, l := range theSizes {
		for n, v := range views {
			r := start(t, look{size: l})
			press(r, toSupply...)
			openView(r, n)
			b := r.bench
			room := b.share(frameOf(b, l).room).view
			for i, page := range b.screenfuls(b.view, room) {
				require.LessOrEqual(t, len(page), room.h, "%s %v", v.id, l)
				frame := r.View()
				for _, row := range page {
					require.Contains(t, frame, strings.TrimRight(row, " "), "%s %v page %d", v.id, l, i)
				}
				press(r, "pgdown")
			}
		}
	}
}

// What harms in the coat, and what keeps it off, is on every view: of a coat that may be
// either, as of isocyanate.
func TestTheHazardOfTheCoatIsOnEveryViewAtAnySize(t *testing.T) {
	for hardener, says := range map[string]string{
		"": "Isocyanate? Supplied air, skin", "isocyanate": "Isocyanate: supplied air, skin", "amine": "Amine: respirator, gloves, skin",
		"acrylate": "Acrylate: gloves, skin and", "none": "Respirator on until the booth",
	} {
		for _, l := range theSizes {
			r := start(t, look{size: l})
			press(r, toAnswer...)
			b := r.bench
			a := b.tried.answers.Changed(question.Coat, r.s.reader.Read(question.Coat, "metallic-base", r.s.sys))
			if hardener != "" {
				a = a.With(question.Hardener, r.s.reader.Read(question.Hardener, hardener, r.s.sys))
			}
			j, err := r.s.work(a)
			require.NoError(t, err)
			b.kept, b.tried = j, j
			for n := range views {
				openView(r, n)
				require.Contains(t, r.View(), says, "%v", l)
			}
		}
	}
}

func TestAJobThatCannotBeDoneSaysStopFirst(t *testing.T) {
	for _, keys := range [][]string{toStarved, toDew} {
		for _, l := range theSizes {
			r := start(t, look{size: l})
			press(r, keys...)
			require.True(t, r.bench.kept.Setup.Stopped())
			rows := strings.Split(r.View(), "\n")
			require.True(t, strings.HasPrefix(rows[1], "[STOP] "), "%v\n%s", l, r.View())
			cure := answer.TurnText(r.s.words, r.s.sys, r.bench.tried.Setup.Turn())
			require.Contains(t, bodyText(r.View()), cure[:24], "%v: and then what turns it", l)
			forbids := r.s.words.Text(r.s.sys, r.bench.tried.Setup.Against[0].ID, r.bench.tried.Setup.Against[0].Figures)
			require.Contains(t, bodyText(r.View()), "STOP "+forbids[:30], "and what forbids it")
		}
	}
}

func TestWhatToSetAndHowSureStandOnTheFirstPageAtAnySize(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		frame := bodyText(r.View())
		for _, text := range []string{"WALL", "28 to 34", "DISTANCE", "4.8 to 6.3", "VALVE", "0 to 1 turn"} {
			require.Contains(t, frame, text, "%v", l)
		}
	}
}

func TestHowSureIsTheSpread(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	got := r.result()
	require.Equal(t, spread.Of(got.Plan.Request, got.Plan.Setup), got.Plan.Spread)
	require.Less(t, got.Plan.Spread.Wall.Low, got.Plan.Setup.Wall.Flowing)
	require.Greater(t, got.Plan.Spread.Wall.High, got.Plan.Setup.Wall.Flowing)
	press(r, "5")
	all := screenfulsText(r)
	require.Contains(t, all, "Check the regulator's gauge against a good one", "what to measure")
	require.Contains(t, all, "eight times in ten")
}

func TestNoRangeStandsBesideAWallThatIsOnlyWhereTheSupplyEnds(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toShort...)
		require.True(t, r.result().Plan.Setup.Short.Is)
		for n := range views {
			openView(r, n)
			require.NotContains(t, screenfulsText(r), "likely", "%v", l)
		}
	}
}

func TestWhatATriedWallDoesIsInSightAtAnySize(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toAnswer, "right")...)
		require.Contains(t, bodyText(r.View()), "> Turn the wall regulator down to 31.0 psi first.", "%v", l)
	}
}

// Enter goes through every screenful of every view and then to the way out; esc comes back.
func TestEnterGoesThroughEveryViewToTheWayOut(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toSupply...)
		seen := map[int]int{}
		for where(r) == "bench" {
			seen[r.bench.view]++
			before := r.View()
			press(r, "enter")
			require.NotEqual(t, before, r.View())
		}
		require.Equal(t, "finish", where(r))
		require.Len(t, seen, len(views))
		press(r, "esc")
		for n := range views {
			openView(r, n)
			require.Equal(t, len(r.bench.screenfuls(r.bench.view, r.bench.share(frameOf(r.bench, l).room).view)), seen[n], "%v %s", l, views[n].id)
		}
	}
}

func TestAKeyOpensItsViewAndGoesThroughIt(t *testing.T) {
	r := start(t, look{size: size{40, 12}})
	press(r, toAnswer...)
	for n, k := range viewKeys() {
		openView(r, n)
		require.Equal(t, n, r.bench.view)
		require.Zero(t, r.bench.screenful)
		first := r.View()
		pages := len(r.bench.screenfuls(r.bench.view, r.bench.share(frameOf(r.bench, r.size).room).view))
		for i := 1; i < pages; i++ {
			press(r, k)
			require.Equal(t, i, r.bench.screenful)
			require.NotEqual(t, first, r.View())
		}
		press(r, k)
		require.Equal(t, first, r.View(), "behind the last screenful comes the first")
	}
}
