package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/spread"
	"boothset/presets"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// walkTo goes to an input of the bench with the arrow keys.
func walkTo(t test, r *root, field string, piece int) {
	t.Helper()
	for range r.bench.inputs() {
		if in := r.bench.inputs()[r.bench.input]; in.Field == field && in.Piece == piece {
			return
		}
		press(r, "down")
	}
	t.Errorf("%s cannot be walked to", field)
	t.FailNow()
}

// openView shows a view from its first page on.
func openView(r *root, n int) {
	if r.bench.view == n {
		press(r, digits(len(views)).Keys()[(n+1)%len(views)])
	}
	press(r, digits(len(views)).Keys()[n])
}

// triedAnswer is what counts for a field as it is tried.
func triedAnswer(r *root, field string) string {
	all := r.s.complete(r.bench.tried.answers)
	return all.Field(field)
}

// bodyText is all that a frame says, its rows joined and its blanks single.
func bodyText(frame string) string { return strings.Join(strings.Fields(ansi.Strip(frame)), " ") }

// leavesText is all pages of the view that shows.
func leavesText(r *root) string {
	var all []string
	for range len(r.bench.pages(r.bench.share(frameOf(r.bench, r.size).room).view)) {
		all = append(all, r.View())
		press(r, "pgdown")
	}
	press(r, strings.Split(strings.Repeat("pgup ", len(all)-1), " ")...)
	return bodyText(strings.Join(all, "\n"))
}

func TestTryingTheWallShowsWhatTheGunGetsAndIsForgotten(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	b := r.bench
	press(r, "right")
	require.InDelta(t, before.Setup.Wall.Flowing.PSI()+1, b.tried.setup.Now.Wall.PSI(), 1e-6, "one mark up")
	press(r, "shift+right", "shift+right", "shift+right", "shift+right", "left")
	require.InDelta(t, before.Setup.Wall.Flowing.PSI()+40, b.tried.setup.Now.Wall.PSI(), 1e-6)
	require.Contains(t, bodyText(r.View()), "With the wall at 71")
	require.Equal(t, before, r.result(), "what is printed at the end is the job as answered")
	for range 30 {
		press(r, "shift+right")
	}
	require.InDelta(t, 90, b.tried.setup.Now.Wall.PSI(), 1e-6, "no higher than the supply")
	for range 30 {
		press(r, "shift+left")
	}
	require.InDelta(t, calc.LowestSupply.PSI(), b.tried.setup.Now.Wall.PSI(), 1e-6)
	press(r, "esc")
	require.False(t, b.tried.setup.Now.Given)
}

func TestTryingStartsFromTheWallAsItStands(t *testing.T) {
	r := open80x24(t)
	press(r, then(toAnswer[:12], "70psi", "enter", "enter", "left")...)
	require.InDelta(t, 69, r.bench.tried.setup.Now.Wall.PSI(), 1e-6)
	require.InDelta(t, 70, r.result().Request.Now.PSI(), 1e-6)
}

func TestWhatIsTriedMovesEverythingAndIsKeptByEnterAlone(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	walkTo(t, r, presets.FieldHose, 0)
	press(r, "right", "right", "right", "right", "right", "shift+right")
	require.Equal(t, before, r.result())
	require.Contains(t, r.View(), " -> ", "what was and what is")
	require.Contains(t, r.View(), r.s.say("tried"))
	press(r, "enter")
	require.Equal(t, "bench", where(r))
	require.NotContains(t, r.View(), r.s.say("tried"))
	after := r.result()
	hose := slices.IndexFunc(after.Request.Line, func(p line.Part) bool { return p.Kind == line.HoseKind })
	require.InDelta(t, 100, after.Request.Line[hose].Hose.Length.Feet(), 1e-6, "25 ft, five steps of 5 ft and ten more")
	solved, err := calc.Solve(after.Request)
	require.NoError(t, err)
	require.Equal(t, solved, after.Setup)
	require.Greater(t, after.Setup.Wall.Flowing, before.Setup.Wall.Flowing, "a longer hose wants more at the wall")
}

// What was kept is what the questions have when they are gone through again.
func TestWhatIsKeptStandsInItsQuestionToo(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	walkTo(t, r, presets.FieldTemp, 0)
	press(r, "right", "right", "enter")
	walkTo(t, r, presets.FieldGun, 0)
	press(r, "right", "enter")
	want := r.result()
	press(r, "n")
	for range len(steps) {
		if where(r) != "bench" {
			press(r, "enter")
		}
	}
	require.Equal(t, "bench", where(r))
	require.Equal(t, want, r.result())
}

func TestPartsOfTheLineAreSwappedInPlace(t *testing.T) {
	for _, field := range []string{presets.FieldRegulator, presets.FieldRegulatorAt, presets.FieldFilter, presets.FieldCoupling, presets.FieldGauge} {
		r := open80x24(t)
		press(r, toAnswer...)
		walkTo(t, r, field, 0)
		was := triedAnswer(r, field)
		press(r, "right")
		if triedAnswer(r, field) == was { // at the end of its list
			press(r, "left")
		}
		is := triedAnswer(r, field)
		require.NotEqual(t, was, is, field)
		require.Equal(t, field, r.bench.inputs()[r.bench.input].Field, "it stays the one that is moved")
		press(r, "enter")
		require.Equal(t, is, r.s.answers.Field(field))
	}
}

func TestEveryInputCanBeWalkedToBothWays(t *testing.T) {
	for _, keys := range [][]string{toAnswer, toSupply} {
		r := open80x24(t)
		press(r, keys...)
		all := r.bench.inputs()
		require.Greater(t, len(all), 14)
		for _, k := range []string{"up", "down"} {
			seen := map[presets.Input]bool{}
			for range all {
				press(r, k)
				seen[r.bench.inputs()[r.bench.input]] = true
			}
			require.Len(t, seen, len(all))
		}
	}
}

// A window shows the input that is moved, wherever the walk has come to.
func TestTheInputThatIsMovedShowsAtAnySize(t *testing.T) {
	t.Parallel()
	for _, l := range theSizes {
		for _, lang := range []string{"en", "es"} {
			r := start(t, look{size: l, lang: lang})
			press(r, toSupply...)
			for range r.bench.inputs() {
				press(r, "down")
				in := r.bench.inputs()[r.bench.input]
				name, value := r.s.inputName(in), r.s.inputValue(r.s.complete(r.bench.tried.answers), in)
				frame := r.View()
				require.True(t, strings.Contains(frame, cut("< "+name+" "+value+" >", l.w)) || strings.Contains(frame, "> "+name+" ") && strings.Contains(frame, cut(" < "+value+" >", 16)), "%v %s %s\n%s", l, name, value, frame)
			}
		}
	}
}

func TestAllReasonsAreThereOnceAskedFor(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toSupply, "6")...)
		all := leavesText(r)
		for _, about := range []string{"gun", "weather", "wall", "valve", "distance", "line", "supply"} {
			require.Contains(t, all, r.s.say("why-of-"+about), "%v", l)
		}
		require.Contains(t, all, r.s.say("would-help"))
		for _, fix := range r.result().Setup.Fixes {
			require.Contains(t, strings.ReplaceAll(all, "- ", ""), fix.Part, "%v", l)
		}
	}
}

func TestEveryPartOfTheLineIsShownAndTheWorstIsMarked(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toAnswer, "3")...)
		all := strings.ToLower(leavesText(r))
		v := r.result().Setup
		require.Greater(t, len(v.Line), 4)
		for i, part := range v.Line {
			name := strings.ToLower(part.Name)
			switch i {
			case 0: // the fall begins behind it
				require.Equal(t, line.RegulatorKind, part.Kind)
			case v.Bottleneck:
				require.Contains(t, all, "> "+name[:9], "%v", l)
				require.Contains(t, all, "most on the way to the gun: "+name+", ", "%v", l)
			default:
				require.Contains(t, all, name[:min(len(name), 10)], "%v", l)
			}
		}
	}
}

// What a page of a view does not show the next one does: every row that is laid out can
// be seen.
func TestTurningReachesEveryRow(t *testing.T) {
	for _, l := range theSizes {
		for n, v := range views {
			r := start(t, look{size: l})
			press(r, toSupply...)
			openView(r, n)
			b := r.bench
			room := b.share(frameOf(b, l).room).view
			for i, page := range b.pages(room) {
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

func TestTheSafetyLineIsOnEveryViewAtAnySize(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		for n := range views {
			openView(r, n)
			require.Contains(t, r.View(), "Respirator, exhaust, no sparks", "%v", l)
		}
	}
}

func TestAJobThatCannotBeDoneSaysStopFirst(t *testing.T) {
	for _, keys := range [][]string{toShort, toDew} {
		for _, l := range theSizes {
			r := start(t, look{size: l})
			press(r, keys...)
			require.True(t, r.bench.kept.setup.Stopped())
			require.Equal(t, verdictStop, r.bench.tried.verdict())
			rows := strings.Split(r.View(), "\n")
			stop := r.s.say(string(verdictStop))
			require.True(t, strings.HasPrefix(rows[2], stop) || strings.HasPrefix(rows[3], stop), "%v\n%s", l, r.View())
			require.Contains(t, r.View(), "\nSTOP ", "and what forbids it")
		}
	}
}

func TestWhatToSetAndHowSureStandOnTheFirstPageAtAnySize(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		frame := bodyText(r.View())
		for _, text := range []string{"WALL", "28 to 34", "DISTANCE", "5.3 to 5.7", "VALVE", "49 to 100%"} {
			require.Contains(t, frame, text, "%v", l)
		}
	}
}

func TestHowSureIsTheSpread(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	got := r.result()
	require.Equal(t, spread.Of(got.Request, got.Setup), got.Spread)
	require.Less(t, got.Spread.Wall.Low, got.Setup.Wall.Flowing)
	require.Greater(t, got.Spread.Wall.High, got.Setup.Wall.Flowing)
	press(r, "5")
	all := leavesText(r)
	require.Contains(t, all, "Check the wall gauge against a good one", "what to measure")
	require.Contains(t, all, "Eight times in ten")
}

func TestNoRangeStandsBesideAWallThatIsOnlyWhereTheSupplyEnds(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toShort...)
		require.True(t, r.result().Setup.Short.Is)
		for n := range views {
			openView(r, n)
			require.NotContains(t, leavesText(r), "likely", "%v", l)
		}
	}
}

func TestWhatATriedWallDoesIsInSightAtAnySize(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(toAnswer, "right")...)
		require.Contains(t, r.View(), "> ", "%v", l)
		require.Contains(t, bodyText(r.View()), "32.0 psi", "%v", l)
	}
}

// Enter goes through every page of every view and then to the way out; esc comes back.
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
			require.Equal(t, len(r.bench.pages(r.bench.share(frameOf(r.bench, l).room).view)), seen[n], "%v %s", l, views[n].id)
		}
	}
}

func TestADigitOpensItsViewAndTurnsItsPages(t *testing.T) {
	r := start(t, look{size: size{40, 12}})
	press(r, toAnswer...)
	for n, k := range digits(len(views)).Keys() {
		openView(r, n)
		require.Equal(t, n, r.bench.view)
		require.Zero(t, r.bench.leaf)
		first := r.View()
		pages := len(r.bench.pages(r.bench.share(frameOf(r.bench, r.size).room).view))
		for i := 1; i < pages; i++ {
			press(r, k)
			require.Equal(t, i, r.bench.leaf)
			require.NotEqual(t, first, r.View())
		}
		press(r, k)
		require.Equal(t, first, r.View(), "behind the last page comes the first")
	}
}

// The gauge's mark is no question, and can be tried all the same: in a shop that has its
// own too.
func TestTheMarkOfTheGaugeIsTriedLikeAllElse(t *testing.T) {
	for _, shop := range []string{"", "[line]\nmark = \"2psi\"\n"} {
		r := start(t, look{shop: shop})
		press(r, toAnswer...)
		before := r.View()
		walkTo(t, r, presets.FieldMark, 0)
		press(r, "shift+right")
		require.True(t, r.bench.changed())
		require.NotEqual(t, r.bench.kept.setup.Wall, r.bench.tried.setup.Wall)
		require.Contains(t, r.View(), r.s.say("tried"))
		press(r, "esc")
		walkTo(t, r, presets.FieldWall, 0)
		require.Equal(t, before, r.View())
	}
}

// The three numbers stand whole on the first page, large or in a row, each with its unit,
// whatever is answered or tried; on the second where what forbids it fills the first.
func TestTheNumbersAreNeverCut(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		if rapid.Bool().Draw(t, "least") {
			l.size = theSizes[0]
		}
		l.colour = false
		r := start(t, l)
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toRead}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			press(r, k)
		}
		openView(r, 0)
		frame := r.View()
		if r.bench.tried.verdict() == verdictStop { // what forbids it may fill the first
			press(r, "pgdown")
			frame += "\n" + r.View()
		}
		for _, n := range r.bench.three(&r.bench.tried) {
			drawn := strings.Contains(frame, n.value+" "+n.unit) || strings.Contains(frame, n.value+"%")
			for _, scale := range []draw.Size{draw.Small, draw.Medium, draw.Large} {
				whole := true
				for _, row := range draw.Number(n.value, scale, r.s.glyphs) {
					whole = whole && strings.Contains(frame, strings.TrimRight(row, " "))
				}
				drawn = drawn || whole
			}
			require.True(t, drawn, "%s %s\n%s", n.value, n.unit, frame)
			unit, _, _ := strings.Cut(n.unit, " ")
			require.Contains(t, frame, unit)
		}
	})
}
