package tui

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// fill types into a page's fields by their names and solves it anew.
func fill(f *form, texts question.Texts) {
	f.fill(texts, unit.US)
	f.solve()
}

// said is all that a page says in words.
func said(f *form) string { return bodyText(strings.Join(f.lines(200), "\n")) }

// onLine is how high a line of points stands at a place.
func onLine(l draw.CurveLine, x float64) float64 {
	for i := 1; i < len(l.Points); i++ {
		if a, b := l.Points[i-1], l.Points[i]; a.X <= x && x <= b.X {
			if a.X == b.X {
				return a.Y
			}
			return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
		}
	}
	return math.NaN()
}

// Every spot of the curve stands at the seconds and the temperature that the answer has for it,
// on the line that it belongs to, and is named by what the page says.
func TestTheCurvesSpotsAreTheAnswers(t *testing.T) {
	r := open80x24(t)
	press(r, toThin...)
	f := formOf(r)
	remedies := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		fill(f, question.Texts{
			"cup": {"din4"}, "seconds": {strconv.Itoa(rapid.IntRange(12, 60).Draw(t, "seconds"))},
			"paint": {strconv.Itoa(rapid.IntRange(50, 95).Draw(t, "paint")) + "F"},
		})
		if f.err != nil {
			t.Skip(f.err)
		}
		a := f.answer.(*answer.Thin)
		found, c := a.Found, f.s.thinCurve(a)
		remedies[string(found.Remedy)] = true
		text := said(f)
		for i, s := range c.Spots {
			require.Contains(t, s.Text, words.CupText(math.Round(s.Y)))
			require.Contains(t, text, strings.SplitN(s.Text, " ", 2)[1])
			line := c.Lines[0]
			if i == len(c.Spots)-1 && found.Add > 0 && len(c.Lines) > 1 {
				line = c.Lines[1]
			}
			require.InDelta(t, s.Y, onLine(line, s.X), 1e-6, s.Text)
			require.GreaterOrEqual(t, s.Y, c.Y.Low)
			require.LessOrEqual(t, s.Y, c.Y.High)
		}
		count := func(at unit.Temp) float64 { return unit.Temperature.Count(f.s.sys, float64(at)) }
		require.InDelta(t, count(a.Request.Reading.At), c.Spots[0].X, 1e-9)
		require.InDelta(t, a.Request.Reading.Seconds, c.Spots[0].Y, 1e-9)
		if last := c.Spots[len(c.Spots)-1]; len(c.Spots) > 1 {
			require.InDelta(t, count(found.To), last.X, 1e-9)
			require.InDelta(t, found.Reached.Seconds, last.Y, 1e-9)
		}
		if a.Stopped() {
			require.Len(t, c.Spots, 1, "no step that does not help")
		}
		require.InDelta(t, found.Wanted.Low.Seconds, c.WantedY.Low, 1e-9)
		require.InDelta(t, found.Wanted.High.Seconds, c.WantedY.High, 1e-9)
		require.Contains(t, text, strings.SplitN(c.WantedY.Text, " ", 2)[1])
	})
	require.Greater(t, len(remedies), 3)
}

// The layers are as thick as the answer's coats, and end where it says the film does.
func TestTheLayersAreTheAnswersCoats(t *testing.T) {
	for _, texts := range []question.Texts{
		{}, {"coats": {"3"}}, {"film": {"4mil"}}, {"wet": {"3mil,4mil"}},
		{"fluid-rate": {"180mL/min"}, "fan": {"10in"}, "gun-speed": {"20in/s"}},
	} {
		r := open80x24(t)
		press(r, then(toAnswer, pageKey(question.Film))...)
		f := formOf(r)
		fill(f, texts)
		require.NoError(t, f.err, texts)
		a := f.answer.(*answer.Film)
		l, text := f.s.filmLayers(a), said(f)
		count := func(l unit.Length) float64 { return unit.Film.Count(f.s.sys, float64(l)) }
		wet, dry := l.Stacks[0], l.Stacks[1]
		require.Len(t, dry.Coats, len(a.Found.Laid)+a.Found.Left)
		require.Len(t, wet.Coats, len(dry.Coats))
		sum := 0.0
		for i := range dry.Coats {
			sum += dry.Coats[i].Thick
			require.InDelta(t, dry.Coats[i].Thick, wet.Coats[i].Thick*a.Request.Solids.Value, 1e-6)
			if i >= len(a.Found.Laid) {
				require.Contains(t, text, dry.Coats[i].Text)
				require.Contains(t, text, wet.Coats[i].Text)
			}
		}
		require.InDelta(t, count(a.Found.Running.Total), sum, 1e-6, texts)
		require.Contains(t, text, f.s.sys.Film(a.Found.Running.Total, unit.Usual))
		require.Contains(t, dry.Name, f.s.sys.Film(a.Found.Running.Total, unit.Usual))
		require.InDelta(t, count(a.Request.Wants.Low), dry.Low.At, 1e-9)
		require.InDelta(t, count(a.Request.Wants.High), dry.High.At, 1e-9)
	}
}

// The cup's marks are those that the page says to pour up to, each over the one before.
func TestTheCupsMarksAreTheAnswers(t *testing.T) {
	for _, ratio := range []string{"", "4:1", "4:1:1", "2:1+10%"} {
		for _, metric := range []bool{false, true} {
			r := start(t, look{metric: metric})
			press(r, toMix...)
			f := formOf(r)
			texts := question.Texts{"area": {"hood"}}
			if ratio != "" {
				texts["ratio"] = []string{ratio}
			}
			fill(f, texts)
			require.NoError(t, f.err)
			m := f.answer.(*answer.Mix)
			c := f.s.mixCup(m)
			var rows []answer.Row
			for _, row := range m.Rows(f.s.words, f.s.sys) {
				if row.About == "pour" {
					rows = append(rows, row)
				}
			}
			require.Len(t, rows, len(m.Request.Ratio.Value.Parts))
			require.Len(t, c.Pours, max(len(rows), 1))
			upTo := 0.0
			for i, p := range c.Pours {
				upTo += p.Amount
				require.Equal(t, f.s.sys.Volume(unit.Volume(upTo), unit.Usual), p.Mark)
				if len(rows) > 0 {
					require.Equal(t, rows[i].Text, p.Text)
				}
				if i > 0 {
					require.Contains(t, rows[i].More, p.Mark)
				}
			}
			require.Contains(t, said(f), c.Pours[len(c.Pours)-1].Mark, "the mix")
			require.Greater(t, c.Holds, upTo)
		}
	}
}

// The clock's stages are as long as the page says, one after the other; a day that stops the
// job has none.
func TestTheClocksStagesAreSaid(t *testing.T) {
	r := open80x24(t)
	press(r, toDay...)
	f := formOf(r)
	fill(f, question.Texts{"pot-life": {"2h"}})
	require.NoError(t, f.err)
	d := f.answer.(*answer.Day)
	c, text := f.s.dayClock(d), said(f)
	flash, _ := d.Found.Waits(d.Request)
	require.True(t, flash.Known())
	require.Len(t, c.Lanes, 2)
	last := 0.0
	for _, s := range c.Lanes[0].Stages {
		require.InDelta(t, last, s.From, 1e-9)
		require.InDelta(t, flash.Usual.Minutes(), s.To-s.From, 1e-9)
		last = s.To
	}
	require.Contains(t, text, "about "+f.s.words.Minutes(flash.Usual))
	pot := c.Lanes[1].Stages
	require.InDelta(t, d.Found.PotLife.LastFill.Minutes(), pot[0].To, 1e-9)
	require.InDelta(t, d.Found.PotLife.Life.Minutes(), pot[1].To, 1e-9)
	for _, of := range []string{f.s.words.Minutes(d.Found.PotLife.Life), f.s.words.Minutes(d.Found.PotLife.LastFill)} {
		require.Contains(t, text, of)
	}
	r = open80x24(t)
	press(r, then(toDew, pageKey(question.Day))...)
	require.True(t, formOf(r).answer.Stopped())
	require.Empty(t, r.s.dayClock(formOf(r).answer.(*answer.Day)).Lanes)
}

// The picture stands at the right of a wide window, in a narrow one under the answer where it
// scrolls, and nowhere without an answer.
func TestThePictureStandsBesideOrBelow(t *testing.T) {
	for _, keys := range [][]string{toDay, then(toThin, "up", "din4", "enter", "22", "enter", "pgdown"), then(toAnswer, pageKey(question.Film), "pgdown"), then(toMix, "hood", "enter", "pgdown")} {
		r := start(t, look{size: size{120, 40}})
		press(r, keys...)
		f := formOf(r)
		room := frameOf(f, r.size).room
		text, picture := f.beside(room)
		require.NotEmpty(t, picture)
		require.Less(t, text.w, room.w)
		rows, _ := f.answerRows(room)
		require.Equal(t, f.lines(text.w), rows, "once is enough")
		require.Contains(t, r.View(), strings.TrimRight(picture[0], " "))
		r.Update(resize(usualSize))
		room = frameOf(f, r.size).room
		_, picture = f.beside(room)
		require.Nil(t, picture)
		press(r, "end")
		rows, rest := f.answerRows(room)
		below := f.below(rest)
		require.NotEmpty(t, below, keys)
		require.LessOrEqual(t, len(below)-1, rest.h)
		require.Equal(t, below, rows[len(rows)-len(below):])
		require.Contains(t, r.View(), strings.TrimRight(ansi.Strip(below[1]), " "))
	}
	r := start(t, look{size: size{120, 40}})
	press(r, toThin...)
	_, picture := formOf(r).beside(frameOf(formOf(r), r.size).room)
	require.Nil(t, picture, "no answer")
}
