package tui

import (
	"strings"
	"testing"

	"boothset/calc/calctest"
	"boothset/calc/learn"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// proving is an assistant on the page that proves its answer, what readings say worked out at
// once.
func proving(t test, l look) *root {
	r := start(t, l)
	r.s.atOnce = true
	press(r, toAnswer...)
	press(r, proveKey)
	require.Equal(t, "prove", where(r))
	return r
}

// A gun's gauge that reads 1.5 psi low is found by the first pair, and the wall is worked anew; the
// next pair is judged too, and what is to be read next is asked for.
func TestTheGunsGaugeIsProvedByTheFirstPair(t *testing.T) {
	calctest.WithoutRace(t)
	r := proving(t, look{size: size{80, 40}})
	p := r.bench.prove
	require.Len(t, p.all, 11)
	require.Contains(t, r.View(), "(31.2 to 36.8 psi)")
	press(r, "35", "enter", "33.5", "enter")
	require.Equal(t, 2, p.at)
	require.Len(t, p.answer.Request.Readings, 1)
	frame := bodyText(r.View())
	require.Contains(t, frame, "With no air moving the gun's gauge reads 1.5 psi lower than the wall's.")
	require.Contains(t, frame, "Wall 33.0 psi, not 31.0 psi.")
	require.Contains(t, frame, "Reading 1: showed 33.5 psi, expected 32.2 psi to 37.8 psi: as expected.")

	press(r, "31", "enter", "10", "enter", "pgdown")
	require.True(t, p.onAnswer())
	require.Contains(t, bodyText(r.View()), "below")
	require.Greater(t, len(p.all), 11, "what to read next is asked for")
	next, _ := p.answer.JudgedRow(r.s.words, r.s.sys, 1)
	require.Equal(t, "prove-judged-low", next.ID)

	press(r, "enter")
	require.Equal(t, "bench", where(r))
	require.Len(t, r.s.ownReadings, 2)
	require.NotNil(t, r.bench.tried.Request.Learnt)
	require.Contains(t, bodyText(r.View()), "2 readings count in this run")
	press(r, "5")
	require.Contains(t, bodyText(r.View()), "Worked with 2 of this line's own readings")
	press(r, proveKey)
	require.Len(t, p.answer.Request.Readings, 2, "they count on the page too")
	require.False(t, p.counts())
}

// The page says what the command line's rows say.
func TestProvingSaysTheAnswersRows(t *testing.T) {
	r := proving(t, look{})
	press(r, "35", "enter", "33.5", "enter", "pgdown")
	p := r.bench.prove
	rows, rest := p.answerRows(r.frame().room)
	require.Greater(t, len(rows), rest.h)
	for i, line := range p.answer.Rows(r.s.words, r.s.sys) {
		require.Contains(t, bodyText(strings.Join(rows, "\n")), bodyText(plain(line.Text)), i)
	}
}

// saying is all that the page says of what was read and seen.
func (p *provePage) saying() string { return bodyText(strings.Join(p.s.told(p.lines(90), 90), " ")) }

// skip presses enter so often.
func skip(n int) (keys []string) {
	for range n {
		keys = append(keys, "enter")
	}
	return keys
}

// What is seen at the gun is judged as it is typed, and what falls is asked for once something
// fell; a pattern leads to the page of bad spray with its sign, and back.
func TestWhatIsSeenIsJudgedOnThePage(t *testing.T) {
	calctest.WithoutRace(t)
	r := proving(t, look{size: size{100, 44}})
	p := r.bench.prove
	press(r, "enter", "enter", "30", "enter", "26", "enter", "26", "enter")
	require.Len(t, p.all, 11)
	require.Contains(t, bodyText(r.View()), "Held ten seconds: 26.0 psi at first, then 26.0 psi: it holds.")
	press(r, "up", "ctrl+u", "30", "enter")
	require.Len(t, p.all, 13, "and what falls")
	require.Equal(t, question.FirstWall, p.all[p.at].Field)
	require.Contains(t, bodyText(r.View()), "What falls?")
	press(r, "enter", "85", "enter")
	require.Contains(t, bodyText(r.View()), "the wall regulator does not hold. It has 85.0 psi")
	require.Contains(t, bodyText(r.View()), "Expected: closed")
	press(r, "31", "enter", "3/4", "enter")
	require.Contains(t, p.saying(), "valve closed 3/4 turn, expected")
	press(r, "7", "enter")
	require.Contains(t, bodyText(r.View()), "hold the gun 6.0 in, the farthest that it is held")
	press(r, "right", "right", "enter")
	require.Contains(t, bodyText(r.View()), "Pattern on paper: split pattern.")
	press(r, "right", "enter", "4", "enter")
	require.Contains(t, bodyText(r.View()), "Move the gun about 65% faster")
	press(r, "pgdown")
	require.True(t, p.onAnswer())
	require.Len(t, p.readings, 2)
	press(r, troubleKey)
	require.Equal(t, "trouble", where(r))
	require.Equal(t, "split", r.bench.trouble.sign)
	press(r, "esc", "esc")
	require.Equal(t, "prove", where(r))

	press(r, "enter")
	require.Equal(t, "bench", where(r))
	require.Contains(t, bodyText(r.View()), "2 readings count in this run")
	press(r, proveKey)
	require.Contains(t, p.saying(), "Before: push felt at 7.0 in")
	require.Contains(t, p.saying(), "Reading 2: valve closed 3/4 turn")
	require.Contains(t, p.saying(), "Before: pattern on paper split pattern")
}

// What was seen without a reading of the gauges is kept as well, and makes nothing of the line.
func TestWhatIsSeenAloneStays(t *testing.T) {
	r := proving(t, look{size: size{80, 24}})
	press(r, skip(7)...)
	press(r, "5.5", "enter", "pgdown", "enter")
	require.Contains(t, bodyText(r.View()), r.s.say("prove-seen-stays"))
	require.Nil(t, r.bench.tried.Request.Learnt)
	press(r, proveKey)
	require.Empty(t, r.bench.prove.answer.Request.Readings)
	require.Len(t, r.bench.prove.answer.Before, 1)
}

// What cannot be is told, what will not do stays to be mended, and nothing typed is lost.
func TestReadingsThatCannotBe(t *testing.T) {
	r := proving(t, look{size: size{80, 40}})
	p := r.bench.prove
	press(r, "31", "enter", "12", "enter")
	require.Contains(t, bodyText(r.View()), "cannot both be right within their class")
	press(r, "900psi", "enter")
	require.Equal(t, 2, p.at, "it stays where it is wrong")
	require.NotEmpty(t, p.fault)
	require.Equal(t, "900psi", p.all[2].own())
	press(r, "esc")
	require.Equal(t, "bench", where(r))
	press(r, "right")
	press(r, proveKey)
	for i, text := range []string{"31 psi", "12 psi", "900psi"} {
		require.Equal(t, text, p.all[i].own())
	}
	require.Len(t, p.answer.Request.Readings, 1)
	press(r, "esc", "esc", "u", proveKey)
	require.Equal(t, "31 psi", p.all[0].own(), "what was typed keeps its meaning")
	require.Empty(t, r.s.ownReadings)
}

// On the screen the keys do not wait for what is worked out, which shows once it is.
func TestProvingDoesNotHoldTheKeys(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	r.Update(keyOf(proveKey))
	require.True(t, r.bench.prove.running)
	require.Contains(t, r.View(), r.s.say("prove-working"))
	press(r, "esc")
	require.Equal(t, "bench", where(r))

	r = open80x24(t)
	press(r, toAnswer...)
	_, cmd := r.Update(keyOf(proveKey))
	feed(r, cmd)
	require.False(t, r.bench.prove.running)
	require.Contains(t, r.View(), "(set to 34.0 psi)")
}

// feed runs what follows a key, and gives the assistant what comes of it.
func feed(r *root, cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case tea.BatchMsg:
		for _, c := range msg {
			feed(r, c)
		}
	case learnt, leftOf:
		_, cmd := r.Update(msg)
		feed(r, cmd)
	}
}

// In a booth of the shop's the readings are kept there, and count in the next run.
func TestReadingsAreKeptWithTheBooth(t *testing.T) {
	h := newBooths(t)
	r := h.open(t)
	typed(r, deskAnswer...)
	typed(r, proveKey, "35psi", "enter", "33.5psi", "enter", "pgdown", "enter")
	require.Equal(t, "bench", where(r))
	require.Contains(t, bodyText(r.View()), "1 reading counts, kept with Booth two.")
	f, err := shop.At(h.dir)
	require.NoError(t, err)
	defer f.Close()
	all, faults := f.Readings("two")
	require.Empty(t, faults)
	require.Len(t, all, 1)
	require.Equal(t, "clear-1", all[0].Gun)
	require.Contains(t, all[0].Text, "still")
	require.Len(t, r.s.readings(), 1, "kept and of this run are one")

	r = h.open(t)
	typed(r, deskAnswer...)
	require.NotNil(t, r.bench.tried.Request.Learnt)
	require.Equal(t, 1, r.bench.tried.Request.Learnt.Readings)
	plan := r.bench.tried.Setup.Wall.Flowing
	typed(r, proveKey)
	p := r.bench.prove
	require.Len(t, p.answer.Request.Readings, 1)
	require.Equal(t, learn.WallGauge, p.answer.Request.Readings[0].Shows[0].Gauge)
	require.Equal(t, p.answer.Found.Set, plan, "the answer and the page that proves it say the same")
	require.Equal(t, p.answer.Found.Sure.Wall, r.bench.tried.Spread.Wall)
	require.Greater(t, plan, p.answer.Found.Setup.Wall.Flowing, "as the line is described")
}

// What was read of a gun in one booth holds in another.
func TestAGunIsKnownInOtherBooths(t *testing.T) {
	dir := shopCopy(t)
	open := func() *root { return (&booths{*newShelf(t), dir}).open(t) }
	elsewhere := append([]string{"enter", "1"}, deskAnswer[2:]...)
	r := open()
	typed(r, elsewhere...)
	require.NotEqual(t, "two", r.s.desk.boothID())
	require.Nil(t, r.bench.tried.Request.Learnt)
	described := r.bench.tried.Spread.Wall

	r = open()
	typed(r, deskAnswer...)
	typed(r, proveKey, "35psi", "enter", "33.5psi", "enter", "pgdown", "enter")
	require.Contains(t, bodyText(r.View()), "1 reading counts, kept with Booth two.")

	r = open()
	typed(r, elsewhere...)
	x := r.bench.tried.Request.Learnt
	require.NotNil(t, x)
	require.Equal(t, []int{0, 1}, []int{x.Readings, x.Elsewhere})
	require.Contains(t, bodyText(r.View()), "Worked with 1 reading of this gun in other booths")
	wall := r.bench.tried.Spread.Wall
	require.Less(t, wall.High-wall.Low, described.High-described.Low)
}

// Whatever is pressed, in any window, the page stays within it and back leads out.
func TestAnyKeysOnProving(t *testing.T) {
	calctest.WithoutRace(t)
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, rapid.SampledFrom([][]string{toAnswer, toDew, toShort, toRead}).Draw(t, "start")...)
		_, cmd := r.Update(keyOf(proveKey))
		if rapid.Bool().Draw(t, "worked out") {
			feed(r, cmd)
		}
		for range rapid.IntRange(0, 16).Draw(t, "keys") {
			press(r, rapid.SampledFrom([]string{"3", "1", "psi", "bar", ".", "-", "x", "enter", "down", "up", "pgdown", "u", "left", "right", "ctrl+u", "t"}).Draw(t, "key"))
			if where(r) != "prove" || r.done {
				return
			}
			requireFits(t, r.View(), r.size)
		}
		press(r, "esc")
		require.Equal(t, "bench", where(r))
	})
}

// What readings left of the line is worked out behind the keys: the answer is that of the line as
// it is described until then, and what was being tried stays tried.
func TestTheLineAsReadDoesNotHoldTheKeys(t *testing.T) {
	r := proving(t, look{size: size{80, 24}})
	press(r, "35", "enter", "33.5", "enter", "pgdown")
	was := r.bench.kept.Setup.Wall.Flowing
	r.s.atOnce = false
	_, cmd := r.Update(keyOf("enter"))
	require.Equal(t, "bench", where(r))
	require.Len(t, r.s.ownReadings, 1)
	require.Nil(t, r.bench.kept.Request.Learnt)
	require.True(t, r.s.lines.running)
	require.Equal(t, was, r.bench.kept.Setup.Wall.Flowing)
	press(r, "right")
	tried := r.bench.tried.answers
	require.True(t, r.bench.changed())
	feed(r, cmd)
	require.Equal(t, 1, r.bench.kept.Request.Learnt.Readings)
	require.Greater(t, r.bench.kept.Setup.Wall.Flowing, was)
	require.True(t, sameAnswers(tried, r.bench.tried.answers))
	require.NotNil(t, r.bench.tried.Request.Learnt)
}

// In lines of text the gauges are asked for one by one, by the same sentences.
func TestProvingInLines(t *testing.T) {
	calctest.WithoutRace(t)
	for _, lang := range words.Languages() {
		in := append(linesToAnswer[:len(linesToAnswer):len(linesToAnswer)], "p", "35psi", "oops", "33.5psi", "", "", "", "31psi", "3/8", "7in", "split", "2", "oops", "4mil", "=", "5", "q")
		got := dialogueOf(t, look{lang: lang}, lines(in...))
		require.NoError(t, got.err)
		w, _ := words.For(lang)
		for _, id := range []string{"prove-title", "prove-heading", "plain-prove", "plain-prove-count", "choice-flood-split"} {
			require.Contains(t, bodyText(got.out), w.Say(id), id)
		}
		require.Contains(t, bodyText(got.out), map[string]string{"en": "1.5 psi lower", "es": "1.5 psi menos"}[lang])
		require.Contains(t, bodyText(got.out), map[string]string{"en": "valve closed 3/8 turn, expected", "es": "válvula cerrada 3/8 de vuelta, se esperaba"}[lang])
		require.Contains(t, bodyText(got.out), map[string]string{"en": "the farthest that it is held", "es": "lo más lejos que se lleva"}[lang])
		require.Contains(t, bodyText(got.out), map[string]string{"en": "faster", "es": "más rápido"}[lang])
		require.Contains(t, bodyText(got.out), map[string]string{"en": "2 of this line's own readings", "es": "2 lecturas propias de esta línea"}[lang])
	}
}
