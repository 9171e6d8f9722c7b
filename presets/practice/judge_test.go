package practice

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The solver's own answer is the advice, tested against itself: it is always right, nothing
// shows on the panel, and no idea is missing.
func TestTheAnswerItselfIsRight(t *testing.T) {
	verdicts := map[calc.Verdict]int{}
	for _, j := range jobs() {
		verdicts[j.Setup.Verdict]++
		d := j.Judge(Guess{j.Setup.Verdict, j.Setup.Set()})
		assert.True(t, d.Right(), "%s: %s", j.Answers.Texts(), d.Idea)
		assert.Empty(t, d.Signs)
		assert.Empty(t, d.Against)
		assert.Equal(t, Sprays(j.Setup.Verdict), len(d.Marks) > 0)
		for _, m := range d.Marks {
			assert.Zero(t, m.off(), m.Of)
		}
	}
	for v := calc.VerdictGo; v <= calc.VerdictStop; v++ {
		assert.Greater(t, verdicts[v], many/20, v)
	}
	assert.Greater(t, verdicts[calc.VerdictGo]+verdicts[calc.VerdictWatch], many/3, "days that are sprayed on")
}

// Every job has an idea behind its verdict and asks for what can be set there.
func TestEveryJobTeaches(t *testing.T) {
	met := map[Idea]bool{}
	for _, j := range jobs() {
		for _, of := range j.Lessons() {
			require.NotEmpty(t, of, j.Setup.Against)
			met[of] = true
		}
		assert.Equal(t, !j.Setup.Valve.None && !j.Setup.Foot.Is, len(j.Asks()) == 3)
	}
	for _, of := range []Idea{Dew, Cold, Fine, Lost, Reserve, Eased, Feeds, Farther, Class, LandsDry} {
		assert.True(t, met[of], of)
	}
}

// What speaks against spraying, as calc's source has it, has an idea behind it each.
func TestEveryCauseHasAnIdea(t *testing.T) {
	cause := regexp.MustCompile(`(?:Verdict\w+|level|landing), "([a-z-]+)", "limit-|id :?= "([a-z-]+)"`)
	found := 0
	for _, file := range []string{"dayverdict.go", "planverdict.go"} {
		source, err := os.ReadFile(filepath.Join("..", "..", "calc", file))
		require.NoError(t, err)
		for _, m := range cause.FindAllSubmatch(source, -1) {
			id := string(m[1]) + string(m[2])
			if strings.HasPrefix(id, "turn-") || strings.HasPrefix(id, "limit-") {
				continue
			}
			found++
			assert.NotEmpty(t, ofCause[id], id)
		}
	}
	assert.Greater(t, found, 20)
}

// Guesses that miss in one way come to the idea that explains it.
func TestTheIdeaOfAMiss(t *testing.T) {
	seen := map[Idea]int{}
	for _, j := range jobs() {
		s := j.Setup
		if !Sprays(s.Verdict) {
			d := j.Judge(Guess{calc.VerdictGo, s.Set()})
			assert.Equal(t, j.verdict(), d.Idea)
			assert.Equal(t, s.Against, d.Against, "what is sprayed against is told")
			assert.Equal(t, j.Sets(), len(d.Marks) > 0, "nothing is set on a day that stops or a supply that is short")
			seen["sprayed"]++
			continue
		}
		if d := j.Judge(Guess{calc.VerdictStop, calc.Set{}}); assert.Equal(t, j.verdict(), d.Idea) {
			assert.Empty(t, d.Marks)
		}
		guess := func(change func(*calc.Set)) Idea {
			set := s.Set()
			change(&set)
			d := j.Judge(Guess{s.Verdict, set})
			assert.Equal(t, d.Idea == "", d.Right())
			seen[d.Idea]++
			return d.Idea
		}
		far := guess(func(set *calc.Set) { set.Distance = unit.Inches(14) })
		assert.Contains(t, []Idea{Class, Farther}, far)
		switch {
		case s.Foot.Is:
			assert.Equal(t, Feeds, guess(func(set *calc.Set) { set.Wall = s.Foot.Flowing - unit.PSIG(15) }))
		case s.Valve.None:
			assert.Equal(t, NoValve, guess(func(set *calc.Set) { set.Wall = s.Wall.Flowing * 2 }))
		default:
			low := j.mark(Wall).Low
			if float64(s.Working.Pressure) < low {
				assert.Equal(t, Lost, guess(func(set *calc.Set) { set.Wall, set.Opening = s.Working.Pressure, 1 }), "the gun's pressure at the wall")
			}
			assert.Equal(t, TooHigh, guess(func(set *calc.Set) { set.Wall *= 3 }))
			assert.Equal(t, Choked, guess(func(set *calc.Set) { set.Wall, set.Opening = set.Wall*3, s.Valve.Floor/2 }))
			assert.Equal(t, Reserve, guess(func(set *calc.Set) { set.Opening = j.mark(Opening).Low / 2 }))
		}
	}
	for _, of := range []Idea{"sprayed", Class, Feeds, Lost, TooHigh, Choked, Reserve} {
		assert.Positive(t, seen[of], of)
	}
}

// Settings that lie each in its range and give the gun too little together are told so.
func TestInRangeAndNotTogether(t *testing.T) {
	told := 0
	for _, j := range jobs() {
		if !Sprays(j.Setup.Verdict) || len(j.Asks()) < 3 {
			continue
		}
		set := j.Setup.Set()
		set.Wall, set.Opening = unit.Gauge(j.mark(Wall).Low), j.mark(Opening).Low
		d := j.Judge(Guess{j.Setup.Verdict, set})
		for _, m := range d.Marks {
			assert.True(t, m.Right(), "%s %v", m.Of, m)
		}
		if len(d.Signs) > 0 {
			assert.Equal(t, Together, d.Idea)
			told++
		}
	}
	assert.Positive(t, told)
}

// A setting is read with its unit or without; the valve's as turns as the knob is counted, or as
// a share.
func TestReadingAGuess(t *testing.T) {
	var j *Job
	for _, one := range jobs() {
		if len(one.Asks()) == 3 && !one.Setup.Valve.CountsFromShut {
			j = one
			break
		}
	}
	require.NotNil(t, j)
	of := j.Setup.Valve.TurnsOf
	for _, c := range []struct {
		of   Setting
		text string
		want calc.Set
	}{
		{Wall, "31", calc.Set{Wall: unit.PSIG(31)}}, {Wall, "2,1 bar", calc.Set{Wall: unit.BarG(2.1)}},
		{Distance, "5 1/2", calc.Set{Distance: unit.Inches(5.5)}}, {Distance, "14cm", calc.Set{Distance: 0.14}},
		{Opening, "80%", calc.Set{Opening: 0.8}}, {Opening, "1/2", calc.Set{Opening: 1 - 0.5/of}},
		{Opening, "0", calc.Set{Opening: 1}}, {Opening, "1/4 vuelta", calc.Set{Opening: 1 - 0.25/of}},
	} {
		var g Guess
		fault := j.Read(&g, c.of, c.text, unit.US)
		if assert.Nil(t, fault, c.text) {
			assert.InDelta(t, float64(c.want.Wall), float64(g.Set.Wall), 1e-6, c.text)
			assert.InDelta(t, c.want.Opening, g.Set.Opening, 1e-9, c.text)
			assert.InDelta(t, float64(c.want.Distance), float64(g.Set.Distance), 1e-9, c.text)
		}
	}
	for _, text := range []string{"", "open", "120%", "0%", "9", "-1", "1e3"} {
		g := Guess{Set: calc.Set{Opening: 0.5}}
		assert.NotNil(t, j.Read(&g, Opening, text, unit.US), text)
		assert.Equal(t, 0.5, g.Set.Opening, "it stays")
	}
	assert.NotNil(t, j.Read(&Guess{}, Wall, "0", unit.US))
	assert.NotNil(t, j.Read(&Guess{}, Distance, "1in", unit.US))
	assert.Equal(t, question.Wall.Name, string(Wall))
}
