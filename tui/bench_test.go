package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/words"
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

// pageKey is the key from the answer to the page of a question.
func pageKey(asks *question.Question) string {
	at := len(views)
	for _, q := range question.Questions() {
		if q == asks {
			return destinationKeys[at : at+1]
		}
		if q != question.Plan {
			at++
		}
	}
	panic(asks.Name + " has no page")
}

// triedAnswer is what counts for a field as it is tried.
func triedAnswer(r *root, field *question.Field) string {
	return r.s.counting(r.bench.tried.answers).Text(field)
}

// bodyText is all that a frame says, its rows joined and its blanks single.
func bodyText(frame string) string { return strings.Join(strings.Fields(ansi.Strip(frame)), " ") }

// screenfulsText is all screenfuls of the view that shows.
func screenfulsText(r *root) string {
	var all []string
	for range len(r.bench.screenfuls(r.bench.view, r.bench.share(frameOf(r.bench, r.size).room).view)) {
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
	require.Contains(t, bodyText(r.View()), "> Turn the wall regulator down to 31.0 psi first.")
	press(r, "6")
	require.Contains(t, screenfulsText(r), "With the wall regulator at 71", "what the valve would need is there once asked for")
	press(r, "1")
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
	press(r, then(toRead, "left")...)
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
		for _, lang := range words.Languages() {
			r := start(t, look{size: l, lang: lang})
			press(r, toSupply...)
			for range r.bench.inputs() {
				press(r, "down")
				in := r.bench.inputs()[r.bench.input]
				all := r.s.counting(r.bench.tried.answers)
				name, value := r.s.inputName(all, in), r.s.inputValue(all, in)
				frame := r.View()
				require.True(t, strings.Contains(frame, fit("< "+name+" "+value+" >", l.w)) || strings.Contains(frame, "> "+name+" ") && strings.Contains(frame, cut(" < "+value+" >", 8)), "%v %s %s\n%s", l, name, value, frame)
			}
		}
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
// whatever is answered or tried; nowhere where the job is stopped.
func TestTheNumbersAreNeverCut(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		if rapid.Bool().Draw(t, "least") {
			l.size = theSizes[0]
		}
		l.colour = false
		r := start(t, l)
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toStarved, toRead}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			press(r, k)
		}
		openView(r, 0)
		frame := r.View()
		if r.bench.tried.Stopped() {
			require.NotContains(t, frame, r.bench.settings(&r.bench.tried)[0].name)
			return
		}
		for _, n := range r.bench.settings(&r.bench.tried) {
			drawn := strings.Contains(frame, n.text) || strings.Contains(frame, n.short)
			for _, high := range []int{3, 5, 7, 9} {
				whole := true
				for _, row := range draw.Digits(n.value, high, r.s.glyphs) {
					whole = whole && strings.Contains(frame, strings.TrimRight(row, " "))
				}
				drawn = drawn || whole
			}
			require.True(t, drawn, "%s %s\n%s", n.value, n.unit, frame)
			require.Contains(t, frame, n.label)
		}
	})
}

// Another system's mark moves the wall and the valve: the bench says so, on the screen and in
// plain lines, until something else is moved.
func TestAnotherMarkSaysWhatItMoved(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		before := r.result().Plan.Setup.Wall.Flowing
		press(r, "u")
		after := r.result().Plan.Setup.Wall.Flowing
		require.NotEqual(t, before, after)
		require.Contains(t, r.View(), "Gauge divisions now 0.05 bar", "%v", l)
		require.Contains(t, r.bench.marked.text, unit.US.Gauge(before, unit.Usual)+" became "+unit.Metric.Gauge(after, unit.Usual))
		press(r, "right")
		require.NotContains(t, r.View(), "Gauge divisions now", "%v", l)
		press(r, "esc")
		require.Contains(t, r.View(), "Gauge divisions now", "it is as it was")
	}
	r := open80x24(t)
	press(r, toAnswer...)
	walkTo(t, r, question.Mark, 0)
	press(r, "right", "enter", "u")
	require.Empty(t, r.bench.marked.text, "a mark that was answered stays as it is")
	plain := dialogueOf(t, look{}, lines(append(slices.Clone(linesToAnswer), plainUnits, "")...))
	require.Contains(t, strings.Join(strings.Fields(plain.out), " "), "Gauge divisions now 0.05 bar: 31 psi became")
}
