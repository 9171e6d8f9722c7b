package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/presets/answer"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// walkTo goes to an input of the bench with the arrow keys.
func walkTo(t test, r *root, field *question.Field, piece int) {
	t.Helper()
	for range r.bench.inputs() {
		if in := r.bench.inputs()[r.bench.input]; in.Field == field && in.Piece == piece {
			return
		}
		press(r, "down")
	}
	t.Errorf("%s cannot be walked to", field.Name)
	t.FailNow()
}

// openView shows a view from its first page on.
func openView(r *root, n int) {
	if r.bench.view == n {
		press(r, viewKeys()[(n+1)%len(views)])
	}
	press(r, viewKeys()[n])
}

// viewKeys is the key of each view.
func viewKeys() []string { return strings.Split(destinationKeys[:len(views)], "") }

// triedAnswer is what counts for a field as it is tried.
func triedAnswer(r *root, field *question.Field) string {
	return r.s.counting(r.bench.tried.answers).Text(field)
}

// bodyText is all that a frame says, its rows joined and its blanks single.
func bodyText(frame string) string { return strings.Join(strings.Fields(ansi.Strip(frame)), " ") }

// screenfulsText is all screenfuls of the view that shows.
func screenfulsText(r *root) string {
	var all []string
	for range len(r.bench.screenfuls(r.bench.share(frameOf(r.bench, r.size).room).view)) {
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
	require.InDelta(t, before.Plan.Setup.Wall.Flowing.PSI()+1, b.tried.Setup.Now.Wall.PSI(), 1e-6, "one mark up")
	press(r, "shift+right", "shift+right", "shift+right", "shift+right", "left")
	require.InDelta(t, before.Plan.Setup.Wall.Flowing.PSI()+40, b.tried.Setup.Now.Wall.PSI(), 1e-6)
	require.Contains(t, bodyText(r.View()), "With the wall at 71")
	require.Equal(t, before, r.result(), "what is printed at the end is the job as answered")
	for range 30 {
		press(r, "shift+right")
	}
	require.InDelta(t, 90, b.tried.Setup.Now.Wall.PSI(), 1e-6, "no higher than the supply")
	for range 30 {
		press(r, "shift+left")
	}
	require.InDelta(t, calc.LowestSupply.PSI(), b.tried.Setup.Now.Wall.PSI(), 1e-6)
	press(r, "esc")
	require.False(t, b.tried.Setup.Now.Given)
}

func TestTryingStartsFromTheWallAsItStands(t *testing.T) {
	r := open80x24(t)
	press(r, then(toAnswer[:12], "70psi", "enter", "enter", "left")...)
	require.InDelta(t, 69, r.bench.tried.Setup.Now.Wall.PSI(), 1e-6)
	require.InDelta(t, 70, r.result().Plan.Request.Now.PSI(), 1e-6)
}

func TestWhatIsTriedMovesEverythingAndIsKeptByEnterAlone(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	walkTo(t, r, question.Hose, 0)
	press(r, "right", "right", "right", "right", "right", "shift+right")
	require.Equal(t, before, r.result())
	require.Contains(t, r.View(), " -> ", "what was and what is")
	require.Contains(t, r.View(), r.s.say("tried"))
	press(r, "enter")
	require.Equal(t, "bench", where(r))
	require.NotContains(t, r.View(), r.s.say("tried"))
	after := r.result()
	hose := slices.IndexFunc(after.Plan.Request.Line, func(p line.Part) bool { return p.Kind == line.HoseKind })
	require.InDelta(t, 100, after.Plan.Request.Line[hose].Hose.Length.Feet(), 1e-6, "25 ft, five steps of 5 ft and ten more")
	solved, err := calc.Solve(after.Plan.Request)
	require.NoError(t, err)
	require.Equal(t, solved, after.Plan.Setup)
	require.Greater(t, after.Plan.Setup.Wall.Flowing, before.Plan.Setup.Wall.Flowing, "a longer hose wants more at the wall")
}

// What was kept is what the questions have when they are gone through again.
func TestWhatIsKeptStandsInItsQuestionToo(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	walkTo(t, r, question.Temp, 0)
	press(r, "right", "right", "enter")
	walkTo(t, r, question.Gun, 0)
	press(r, "right", "enter")
	want := r.result()
	press(r, "n")
	for range len(r.s.steps) {
		if where(r) != "bench" {
			press(r, "enter")
		}
	}
	require.Equal(t, "bench", where(r))
	require.Equal(t, want, r.result())
}

func TestPartsOfTheLineAreSwappedInPlace(t *testing.T) {
	for _, field := range []*question.Field{question.Regulator, question.RegulatorAt, question.Filter, question.Coupling, question.Gauge} {
		r := open80x24(t)
		press(r, toAnswer...)
		walkTo(t, r, field, 0)
		was := triedAnswer(r, field)
		press(r, "right")
		if triedAnswer(r, field) == was { // at the end of its list
			press(r, "left")
		}
		is := triedAnswer(r, field)
		require.NotEqual(t, was, is, field.Name)
		require.Equal(t, field, r.bench.inputs()[r.bench.input].Field, "it stays the one that is moved")
		press(r, "enter")
		require.Equal(t, is, r.s.answers.Text(field))
	}
}

func TestEveryInputCanBeWalkedToBothWays(t *testing.T) {
	for _, keys := range [][]string{toAnswer, toSupply} {
		r := open80x24(t)
		press(r, keys...)
		all := r.bench.inputs()
		require.Greater(t, len(all), 14)
		for _, k := range []string{"up", "down"} {
			seen := map[edit.Input]bool{}
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
				name, value := r.s.inputName(in), r.s.inputValue(r.s.counting(r.bench.tried.answers), in)
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
		all := screenfulsText(r)
		for _, about := range []string{"gun", "weather", "wall", "valve", "distance", "line", "supply"} {
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
				require.Contains(t, all, "> "+name[:9], "%v", l)
				require.Contains(t, all, name+" costs most", "%v", l)
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
			for i, page := range b.screenfuls(room) {
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
			require.True(t, r.bench.kept.Setup.Stopped())
			require.Equal(t, answer.PlanStop, r.bench.tried.Verdict())
			rows := strings.Split(r.View(), "\n")
			stop := r.s.say(string(answer.PlanStop))
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
		for _, text := range []string{"WALL", "28 to 34", "DISTANCE", "5.3 to 5.7", "VALVE", "48 to 100%"} {
			require.Contains(t, frame, text, "%v", l)
		}
	}
}

func TestHowSureIsThatOfThePropagation(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	got := r.result()
	require.Equal(t, calc.Propagate(got.Plan.Request, got.Plan.Setup), got.Plan.Spread)
	require.Less(t, got.Plan.Spread.Wall.Low, got.Plan.Setup.Wall.Flowing)
	require.Greater(t, got.Plan.Spread.Wall.High, got.Plan.Setup.Wall.Flowing)
	press(r, "5")
	all := screenfulsText(r)
	require.Contains(t, all, "Check the wall gauge against a good one", "what to measure")
	require.Contains(t, all, "Eight times in ten")
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
			require.Equal(t, len(r.bench.screenfuls(r.bench.share(frameOf(r.bench, l).room).view)), seen[n], "%v %s", l, views[n].id)
		}
	}
}

func TestADigitOpensItsViewAndTurnsItsPages(t *testing.T) {
	r := start(t, look{size: size{40, 12}})
	press(r, toAnswer...)
	for n, k := range viewKeys() {
		openView(r, n)
		require.Equal(t, n, r.bench.view)
		require.Zero(t, r.bench.screenful)
		first := r.View()
		pages := len(r.bench.screenfuls(r.bench.share(frameOf(r.bench, r.size).room).view))
		for i := 1; i < pages; i++ {
			press(r, k)
			require.Equal(t, i, r.bench.screenful)
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
		walkTo(t, r, question.Mark, 0)
		press(r, "shift+right")
		require.True(t, r.bench.changed())
		require.NotEqual(t, r.bench.kept.Setup.Wall, r.bench.tried.Setup.Wall)
		require.Contains(t, r.View(), r.s.say("tried"))
		press(r, "esc")
		walkTo(t, r, question.Wall, 0)
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
		if r.bench.tried.Verdict() == answer.PlanStop { // what forbids it may fill the first
			press(r, "pgdown")
			frame += "\n" + r.View()
		}
		for _, n := range r.bench.settings(&r.bench.tried) {
			drawn := strings.Contains(frame, n.text) || strings.Contains(frame, n.short)
			for _, scale := range []draw.Size{draw.Small, draw.Medium, draw.Large} {
				whole := true
				for _, row := range draw.Number(n.value, scale, r.s.glyphs) {
					whole = whole && strings.Contains(frame, strings.TrimRight(row, " "))
				}
				drawn = drawn || whole
			}
			require.True(t, drawn, "%s %s\n%s", n.value, n.unit, frame)
			require.Contains(t, frame, n.label)
		}
	})
}
