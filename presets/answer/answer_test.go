package answer_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var bothSystems = []unit.System{unit.US, unit.Metric}

// languages is the words of every language.
func languages(t require.TestingT) (all []*words.Words) {
	for _, lang := range words.Languages() {
		w, ok := words.For(lang)
		require.True(t, ok)
		all = append(all, w)
	}
	return all
}

// draw draws a question and an answer to it.
func draw(t *rapid.T, r *question.Reader) answer.Answer {
	d := questiontest.Drawer{T: t}
	gun, coat := d.Choice(r, question.Gun), d.Choice(r, question.Coat)
	q, texts := question.Plan, question.Texts{}
	switch rapid.IntRange(0, 4).Draw(t, "question") {
	case 0:
		texts = d.AnyLine(r, rapid.Bool().Draw(t, "with the shop's air"))
	case 1:
		q, texts = question.Day, d.Day(r)
	case 2:
		q, texts = question.Thin, questiontest.Texts("coat", coat, "cup", "din4", "seconds", d.Number("seconds", "%.1f", 12, 40), "paint", d.Number("paint", "%.1fC", 8, 35), "max-thinner", d.Maybe("thinner", "%.1f", 0, 30))
	case 3:
		q, texts = question.Film, questiontest.Texts("coat", coat, "gun", gun, "fluid-rate", d.Number("rate", "%.0f", 20, 1400), "before", d.Maybe("before", "%.1fmil", 0, 15), "height", d.Maybe("height", "%.1fft", 1, 6), "gun-speed", d.Maybe("speed", "%.2fft/s", .3, 4))
	case 4:
		q, texts = question.Mix, questiontest.Texts("coat", coat, "gun", gun, "area", fmt.Sprintf("%d door", rapid.IntRange(1, 50).Draw(t, "doors")), "price", d.Maybe("price", "%.2f/L", 1, 200), "pot-life", d.Maybe("pot-life", "%.1fh", .1, 8), "ratio", "4:1:1")
	}
	sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
	a, err := answer.Ask(r, q, r.ReadAll(q, texts, sys), sys)
	if err != nil {
		var fault *question.Fault
		require.ErrorAs(t, err, &fault)
		t.Skip(err)
	}
	if p, ok := a.(*answer.Plan); ok && !p.Setup.Short.Is {
		p.Sure()
	}
	return a
}

// said is what a row says, in words.
func said(r *answer.Row) []*string {
	all := []*string{&r.Name, &r.Text, &r.More, &r.Ground}
	for i := range r.Cells {
		all = append(all, &r.Cells[i])
	}
	return all
}

// Whatever is asked, its rows are whole, and the same in every language and system but for
// their words: what they are, how much they weigh, what they are of.
func TestRowsAreTheSameInEveryLanguage(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a := draw(t, r)
		var first []answer.Row
		for _, w := range languages(t) {
			for _, sys := range bothSystems {
				rows := a.Rows(w, sys)
				for i := range rows {
					for _, s := range said(&rows[i]) {
						assert.NotContains(t, *s, "{", "%+v", rows[i])
						assert.NotContains(t, *s, "NaN", "%+v", rows[i])
						if *s != "" {
							*s = "words"
						}
					}
					assert.True(t, rows[i].Text != "" || rows[i].Cells != nil, "%+v", rows[i])
				}
				if first == nil {
					first = rows
				}
				require.Equal(t, first, rows)
			}
		}
		stop := false
		for _, row := range first {
			stop = stop || row.Level == calc.Stop && (row.Role == answer.Caution || row.Role == answer.Verdict)
		}
		assert.Equal(t, a.Stopped(), stop, "a job that cannot be done says so in a row of that level")
	})
}

// How sure an answer is, in whole sentences: what can be checked first, what each range is
// given, and the regulator that sets called what it is.
func TestEverySentenceOfHowSureIsWhole(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		regulator, at, gauge string
		ids                  []string
	}{
		{"1/2in", "wall", "handle", []string{"spread-check", "spread-given-wall", "spread-start", "spread-cause-wall", "spread-short-wall"}},
		{"1/2in", "wall", "foot", []string{"spread-check", "spread-given-wall", "spread-start", "spread-cause-wall", "spread-short-wall"}},
		{"1/2in", "wall", "none", []string{"spread-given-wall", "spread-start", "spread-cause-wall", "spread-blind-wall"}},
		{"1/2in", "gun", "handle", []string{"spread-check", "spread-given-foot", "spread-start", "spread-cause-foot", "spread-short-foot"}},
		{"1/2in", "gun", "none", []string{"spread-given-foot", "spread-start", "spread-cause-foot", "spread-blind-foot"}},
		{"none", "", "handle", []string{"spread-given-none", "spread-start"}},
	} {
		for _, gun := range []string{"reduced-pressure", "high-volume-low-pressure"} {
			texts := questiontest.With(questiontest.With(questiontest.MildDay("clear", gun), "gauge", c.gauge), "regulator", c.regulator)
			if c.at != "" {
				texts = questiontest.With(texts, "regulator-at", c.at)
			}
			p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, unit.US), unit.US)
			require.NoError(t, err)
			assert.Nil(t, p.SureRows(r.Words(), unit.US), "it is not worked out yet")
			p.Sure()
			for _, sys := range bothSystems {
				var ids []string
				for _, row := range p.SureRows(r.Words(), sys) {
					ids = append(ids, row.ID)
					assert.NotContains(t, row.Text, "{")
					assert.NotRegexp(t, `\b(cause|measure)-`, row.Text)
					assert.True(t, strings.HasSuffix(row.Text, "."), row.Text)
				}
				assert.Equal(t, c.ids, ids, "%s %s %s %s", c.regulator, c.at, c.gauge, gun)
			}
		}
	}
}

// A day on which nothing may be sprayed weighs as much in any language as in English.
func TestAStopIsAStopInEveryLanguage(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.Texts("coat", "waterborne-base", "temp", "20C", "humidity", "100")
	a, err := answer.Ask(r, question.Day, r.ReadAll(question.Day, texts, unit.US), unit.US)
	require.NoError(t, err)
	for _, w := range languages(t) {
		verdicts := 0
		for _, l := range answer.Lay(a.Rows(w, unit.US), answer.Width, w) {
			if l.Role == answer.Verdict {
				verdicts++
				assert.Equal(t, calc.Stop, l.Level, l.Text)
			}
		}
		assert.Positive(t, verdicts, w.Lang())
	}
}

// Laid out, no line is wider than it may be, and every word is there.
func TestLinesKeepToTheirWidth(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a := draw(t, r)
		width := rapid.IntRange(40, 120).Draw(t, "width")
		for _, w := range languages(t) {
			rows := a.Rows(w, unit.Metric)
			lines := answer.Lay(rows, width, w)
			var all strings.Builder
			for _, l := range lines {
				assert.LessOrEqual(t, displaywidth.String(l.Text), width, l.Text)
				assert.Equal(t, strings.TrimRight(l.Text, " "), l.Text)
				all.WriteString(l.Text + " ")
			}
			flat := strings.Join(strings.Fields(all.String()), " ")
			for _, row := range rows {
				if row.Role != answer.Part && row.Role != answer.Head {
					assert.Contains(t, flat, strings.Join(strings.Fields(row.Text), " "))
				}
			}
		}
	})
}

// What will not do comes as the fault of a field, whether it is found in resolving or in
// solving.
func TestWhatWillNotDo(t *testing.T) {
	r := questiontest.Open(t)
	mild := questiontest.MildDay("clear", "reduced-pressure")
	for _, x := range []struct {
		of    *question.Question
		texts question.Texts
		says  string
	}{
		{question.Plan, questiontest.With(mild, "gun", "airless"), `gun "airless": choose high-volume-low-pressure`},
		{question.Plan, questiontest.With(questiontest.With(mild, "compressor", "18cfm"), "receiver", "900000gal"), `receiver "900000gal": 3407000 L is outside`},
		{question.Plan, questiontest.With(questiontest.With(questiontest.With(mild, "compressor", "18cfm"), "receiver", "60gal"), "line-temp", "5000F"), `line-temp "5000F": 5000 F is outside -40 to 140 F`},
		{question.Day, questiontest.With(mild, "temp", "200F"), `temp "200F": 200 F is outside 14 to 140 F`},
		{question.Thin, questiontest.Texts("coat", "clear", "cup", "din4", "seconds", "5", "paint", "20C"), `seconds "5": `},
		{question.Film, questiontest.Texts("coat", "clear", "film", "900mil"), `film "900mil": 900 mil is outside`},
		{question.Mix, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "wing"), `area "wing": type an area`},
	} {
		a, err := answer.Ask(r, x.of, r.ReadAll(x.of, x.texts, unit.US), unit.US)
		var fault *question.Fault
		require.ErrorAs(t, err, &fault)
		assert.True(t, a == nil, "no answer at all")
		assert.Contains(t, err.Error(), x.says)
	}
}

// With the regulator at the gun's foot nothing tells to set, lower or read a wall, in any
// language: there is none to be set.
func TestARegulatorAtTheFootIsNotCalledTheWall(t *testing.T) {
	r := questiontest.Open(t)
	wall := map[string]*regexp.Regexp{"en": regexp.MustCompile(`(?i)\bthe wall\b|\bwall at\b`), "es": regexp.MustCompile(`(?i)\bla pared\b|\bpared a\b`)}
	rapid.Check(t, func(t *rapid.T) {
		d := questiontest.Drawer{T: t}
		texts := d.Plan(r)
		texts["regulator"], texts["regulator-at"] = []string{"3/8in"}, []string{"gun"}
		p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, unit.US), unit.US)
		require.NoError(t, err)
		p.Sure()
		for _, w := range languages(t) {
			for _, row := range p.Rows(w, unit.US) {
				if !strings.HasPrefix(row.ID, "water-") { // the trap at the wall is another thing
					assert.NotRegexp(t, wall[w.Lang()], row.Text, row.ID)
				}
			}
		}
	})
}
