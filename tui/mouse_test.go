package tui

import (
	"strings"
	"testing"

	"boothset/calc/calctest"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// click presses and lets go of the left button.
func click(r *root, x, y int) {
	r.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	r.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionRelease})
}

func turn(r *root, button tea.MouseButton) {
	r.Update(tea.MouseMsg{Button: button, Action: tea.MouseActionPress})
}

// listIn is the list of the page that shows, nil where it has none.
func listIn(r *root) *list {
	switch p := r.page().(type) {
	case *stepPage:
		if !p.step.typed() {
			return &p.list
		}
	case *resume:
		return &p.list
	case *finish:
		return &p.list
	case *kindsPage:
		return &p.list
	}
	return nil
}

// In every list of every page, in a small window and the usual one, a click on a row marks the entry that stands in
// it, a click on the marked one takes it as enter does, and every entry that shows can be
// clicked.
func TestAClickMarksTheEntryInItsRow(t *testing.T) {
	calctest.WithoutRace(t)
	t.Parallel()
	lists := 0
	for _, f := range shots() {
		for _, l := range []size{theSizes[0], usualSize} {
			r := f.at(t, look{size: l})
			if listIn(r) == nil {
				continue
			}
			lists++
			shown := 0
			for y, row := range strings.Split(ansi.Strip(r.View()), "\n") {
				if r.clicked(5, y) == nil {
					continue
				}
				clicked := f.at(t, look{size: l})
				before, items := where(clicked), listIn(clicked)
				was := items.at
				click(clicked, 5, y)
				if where(clicked) != before || clicked.done {
					require.Contains(t, row, "> ", "only the marked entry is taken")
					entered := f.at(t, look{size: l})
					press(entered, "enter")
					require.Equal(t, entered.View(), clicked.View(), f.name)
					shown++
					continue
				}
				if items.at != was {
					require.Contains(t, row, cut(plain(items.picked().Name), l.w-10), "%s %v row %d", f.name, l, y)
					shown++
				}
			}
			top := around(listIn(r).at, len(listIn(r).items), l.h)
			require.GreaterOrEqual(t, shown, min(2, len(listIn(r).items)-top), "%s %v", f.name, l)
		}
	}
	require.Greater(t, lists, 20)
}

// Every entry that shows is clicked, all of a list that has the room.
func TestEveryEntryThatShowsCanBeClicked(t *testing.T) {
	r := open80x24(t)
	press(r, "enter")
	n := len(listIn(r).items)
	require.Greater(t, n, 5)
	frame := strings.Split(r.View(), "\n")
	for i := 1; i < n; i++ {
		y := -1
		for at, row := range frame {
			if name := "  " + plain(listIn(r).items[i].Name); strings.HasSuffix(strings.TrimRight(row, " "), name) || strings.Contains(row, name+"  ") {
				y = at
			}
		}
		require.Positive(t, y, listIn(r).items[i].Name)
		click(r, 40, y)
		require.Equal(t, i, listIn(r).at)
	}
	click(r, 40, 0)
	require.Equal(t, n-1, listIn(r).at, "a click beside them does nothing")
	require.Equal(t, question.Coat.Name, where(r))
}

// A click on a tab is its key.
func TestAClickOnATabOpensIt(t *testing.T) {
	for _, l := range append(theSizes[:len(theSizes):len(theSizes)], largeWindow) {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		for _, d := range r.bench.destinations() {
			openView(r, 0)
			f := frameOf(r.bench, l)
			y := f.top() - 1
			row := strings.Split(r.View(), "\n")[y]
			x := strings.Index(row, " "+d.key)
			if d.key == troubleKey { // other names begin so
				x = strings.LastIndex(row, " "+d.key)
			}
			if x++; d.view == 0 && d.page == nil {
				x = 1
			}
			require.Positive(t, x, "%v: %s in %q", l, d.key, row)
			byKey := start(t, look{size: l})
			press(byKey, toAnswer...)
			press(byKey, d.key)
			click(r, x, y)
			if d.view != 0 || d.page != nil {
				require.Equal(t, byKey.View(), r.View(), "%v %s", l, d.key)
			}
			if d.page != nil {
				press(r, "esc")
			}
		}
	}
}

func TestAClickOnAnInputMarksIt(t *testing.T) {
	r := start(t, look{size: size{120, 40}})
	press(r, toAnswer...)
	side := string(r.s.glyphs.Upright)
	marked := map[int]bool{}
	for i, in := range r.bench.shownInputs(r.bench.tried.answers) {
		for y, row := range strings.Split(r.View(), "\n") {
			at := strings.LastIndex(row, side)
			if at < 0 {
				continue
			}
			value, named := strings.CutPrefix(strings.TrimLeft(row[at+len(side):], "> ^v"), in.name+" ")
			if named && strings.HasPrefix(strings.TrimLeft(value, "< "), cut(in.value, 5)) {
				click(r, 118, y)
				require.Equal(t, i, r.bench.input, in.name)
				marked[i] = true
				break
			}
		}
	}
	require.Greater(t, len(marked), leastInputs)
}

// The wheel walks a list and scrolls, and changes nothing.
func TestTheWheelWalksAndScrolls(t *testing.T) {
	r := open80x24(t)
	press(r, "enter")
	turn(r, tea.MouseButtonWheelDown)
	turn(r, tea.MouseButtonWheelDown)
	turn(r, tea.MouseButtonWheelUp)
	require.Equal(t, 1, listIn(r).at)

	press(r, "8", "2")
	typed := typedText(r)
	turn(r, tea.MouseButtonWheelDown)
	require.Equal(t, typed, typedText(r), "the next field is marked, and none stepped")
	turn(r, tea.MouseButtonWheelUp)

	press(r, toAnswer[3:]...)
	r.Update(resize(size{60, 20}))
	input := r.bench.input
	turn(r, tea.MouseButtonWheelDown)
	require.Equal(t, 1, r.bench.screenful)
	turn(r, tea.MouseButtonWheelUp)
	turn(r, tea.MouseButtonWheelUp)
	require.Zero(t, r.bench.screenful)
	require.Equal(t, input, r.bench.input)

	press(r, "?")
	frame := r.View()
	turn(r, tea.MouseButtonWheelDown)
	require.NotEqual(t, frame, r.View())
}

// Wherever it is clicked and turned, every frame fits, nothing is tried and nothing kept.
func TestTheMouseChangesNoAnswer(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toRead}).Draw(t, "start")...)
		answers := r.s.answers
		for range rapid.IntRange(1, 20).Draw(t, "clicks") {
			x, y := rapid.IntRange(0, r.size.w).Draw(t, "x"), rapid.IntRange(0, r.size.h).Draw(t, "y")
			button := rapid.SampledFrom([]tea.MouseButton{tea.MouseButtonLeft, tea.MouseButtonRight, tea.MouseButtonWheelUp, tea.MouseButtonWheelDown}).Draw(t, "button")
			r.Update(tea.MouseMsg{X: x, Y: y, Button: button, Action: tea.MouseActionPress})
			requireFits(t, r.View(), r.size)
			require.Equal(t, answers, r.s.answers)
			require.False(t, r.bench.changed())
		}
	})
}

func TestTooSmallAWindowTakesNoClick(t *testing.T) {
	r := open80x24(t)
	press(r, "enter")
	r.Update(resize(size{30, 8}))
	for y := range 8 {
		click(r, 3, y)
		turn(r, tea.MouseButtonWheelDown)
	}
	r.Update(resize(usualSize))
	require.Zero(t, listIn(r).at)
}

// A click on a field of a page of several marks it, what was typed in another taken.
func TestAClickOnAFieldMarksIt(t *testing.T) {
	for _, l := range theSizes {
		r := start(t, look{size: l})
		press(r, then(atTemp, "75")...)
		for _, want := range []string{"altitude", "humidity", "panel", "air"} {
			for y, row := range strings.Split(r.View(), "\n") {
				if strings.HasPrefix(strings.TrimLeft(row, " >"), want+" ") {
					click(r, 4, y)
					break
				}
			}
			g := r.page().(*groupPage)
			require.Equal(t, want, r.s.label(g.all[g.at].Field), l)
		}
		require.Equal(t, "75 F", r.s.answers.Text(question.Temp))
	}
}
