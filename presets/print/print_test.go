package print_test

import (
	"bytes"
	"encoding/xml"
	"html"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/print"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func noEnv(string) string { return "" }

// jobs is jobs whose cards differ: usual, a coat of several stages, two regulators, no gauge,
// one that cannot be done.
var jobs = map[string]question.Texts{
	"usual":  {"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}, "humidity": {"45"}, "supply": {"90psi"}},
	"stages": {"coat": {"metallic-base"}, "gun": {"high-volume-low-pressure"}, "temp": {"95F"}, "humidity": {"30"}, "supply": {"90psi"}, "stage": {"drop"}, "pot-life": {"2h"}, "recoat": {"4h"}},
	"two":    {"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}, "humidity": {"45"}, "supply": {"120psi"}, "line": {"regulator=1/2in", "hose=25ft,3/8in", "regulator=1/4in", "coupling=slim"}},
	"blind":  {"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}, "humidity": {"45"}, "supply": {"90psi"}, "gauge": {"none"}},
	"stop":   {"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}, "humidity": {"45"}, "supply": {"20psi"}},
}

// planned is the card of a job.
func planned(t testing.TB, texts question.Texts, w *words.Words, sys unit.System) *card.Card {
	t.Helper()
	r, err := question.Open(noEnv, w)
	require.NoError(t, err)
	p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, sys), sys)
	require.NoError(t, err)
	p.Sure()
	return &card.Card{Plan: p, Booth: "two", Span: unit.PSIG(160), Printed: time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC)}
}

// agreed is a setting that stands for any job.
var agreed = card.Agreed{By: "AB", Settings: []*shop.Setting{{
	Subject: shop.Subject{Band: shop.Any}, Agreed: time.Date(2031, 3, 4, 9, 30, 0, 0, time.UTC), Why: "dry at the roof", Knobs: "fan out two turns",
	Values: shop.Values{Wall: unit.PSIG(60), Distance: 0.15, Opening: 0.7, Gun: unit.PSIG(26), Tip: 1.3e-3},
}}}

func pageOf(c *card.Card, w *words.Words, sys unit.System, paper *print.Paper) *print.Page {
	return &print.Page{Title: c.Title(w), Rows: c.Rows(w, sys), Pictures: c.Pictures(w, sys), Words: w, Paper: paper, Printed: c.Printed}
}

// said is the words of rows in their order, as they stand on any paper.
func said(rows []answer.Row, w *words.Words) []string {
	var all []string
	for _, r := range rows {
		switch r.Role {
		case answer.Head, answer.Part:
			all = append(all, r.Cells...)
			continue
		case answer.Verdict:
			all = append(all, r.Name+":")
		case answer.Caution:
			all = append(all, answer.LevelMark(w, r.Level))
		case answer.Remark, answer.Range:
			all = append(all, "-")
		default:
			all = append(all, r.Name)
		}
		all = append(all, r.Text)
		if r.Ground != "" && r.Role == answer.Caution {
			all = append(all, "["+r.Ground+"]")
		}
		all = append(all, r.More)
	}
	return strings.Fields(w.Marked(strings.Join(all, " ")))
}

var (
	notSaid = regexp.MustCompile(`(?s)<(svg|style|title)\b.*?</(svg|style|title)>`)
	tag     = regexp.MustCompile(`<[^>]*>`)
	shown   = regexp.MustCompile(`BT [-\d. ]+ Td \(((?:[^()\\]|\\.)*)\) Tj ET`)
)

func htmlText(page []byte) []string {
	return strings.Fields(html.UnescapeString(tag.ReplaceAllString(notSaid.ReplaceAllString(string(page), ""), "")))
}

// pdfText is the texts of a PDF in the order that they are written in. All that the sentences
// have beyond ASCII is in Latin-1, where code page 1252 is the same.
func pdfText(t testing.TB, page []byte) (all []string) {
	t.Helper()
	for _, m := range shown.FindAllSubmatch(page, -1) {
		raw := regexp.MustCompile(`\\(.)`).ReplaceAll(m[1], []byte("$1"))
		var b strings.Builder
		for _, c := range raw {
			require.False(t, c >= 0x80 && c < 0xa0, "%q", raw)
			b.WriteRune(rune(c))
		}
		all = append(all, strings.Fields(b.String())...)
	}
	return all
}

// drawn is the words of pictures.
func drawn(all []card.Picture, w *words.Words) (texts []string) {
	for _, p := range all {
		for _, s := range p.Shapes {
			texts = append(texts, strings.Fields(w.Marked(s.Text))...)
		}
	}
	return texts
}

// without is all words without those of one run of them, which must be there.
func without(t testing.TB, all, run []string) []string {
	t.Helper()
	for i := 0; len(run) > 0 && i+len(run) <= len(all); i++ {
		if strings.Join(all[i:i+len(run)], " ") == strings.Join(run, " ") {
			return append(append([]string{}, all[:i]...), all[i+len(run):]...)
		}
	}
	require.Empty(t, run, "the pictures' words do not stand together")
	return all
}

// What stands on paper is what the rows say, word by word and in their order, in every language
// and both systems, on one page.
func TestPaperSaysWhatTheRowsSay(t *testing.T) {
	for name, job := range jobs {
		for _, lang := range words.Languages() {
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				for _, paper := range print.Papers {
					t.Run(strings.Join([]string{name, lang, [...]string{"us", "metric"}[sys], paper.Name}, "-"), func(t *testing.T) {
						w, _ := words.For(lang)
						c := planned(t, job, w, sys)
						c.Agreed = agreed
						p := pageOf(c, w, sys, paper)
						want := said(p.Rows, w)
						require.Greater(t, len(want), 60)
						h, err := p.HTML()
						require.NoError(t, err)
						assert.Equal(t, want, htmlText(h))
						pdf, err := p.PDF()
						require.NoError(t, err)
						assert.Equal(t, want, without(t, pdfText(t, pdf), drawn(p.Pictures, w)))
						assert.Equal(t, 1, bytes.Count(pdf, []byte("/Type /Page\n")))
						for _, m := range regexp.MustCompile(`BT [-\d.]+ ([-\d.]+) Td`).FindAllStringSubmatch(string(pdf), -1) {
							y, err := strconv.ParseFloat(m[1], 64)
							require.NoError(t, err)
							assert.Greater(t, y, 34.0, "above the margin at the foot, 12 mm in points")
						}
					})
				}
			}
		}
	}
}

// A card of a job that cannot be done says so and what would turn it; nothing that could be
// set, and no picture of it.
func TestNothingIsSetOnACardThatStops(t *testing.T) {
	w := words.English()
	c := planned(t, jobs["stop"], w, unit.US)
	rows := c.Rows(w, unit.US)
	require.Equal(t, answer.Verdict, rows[0].Role)
	assert.Equal(t, w.Say("verdict-stop"), rows[0].Name)
	assert.Contains(t, rows[0].Text, answer.TurnText(w, unit.US, c.Plan.Setup.Turn()))
	cautions := 0
	for _, r := range rows {
		assert.NotContains(t, []answer.Role{answer.Setting, answer.Value, answer.First, answer.Range, answer.Part}, r.Role)
		if r.Role == answer.Caution {
			cautions++
		}
	}
	assert.Equal(t, len(c.Plan.Cautions())+1, cautions, "with the one that holds for every job")
	assert.Empty(t, c.Pictures(w, unit.US))
}

// Every row of the card but the booth, the check, what was agreed, what the values rest on and
// the day it was printed is a row of the plan.
func TestTheCardHasNoWordingOfItsOwn(t *testing.T) {
	w := words.English()
	for name, job := range jobs {
		c := planned(t, job, w, unit.US)
		plan := map[string]bool{}
		for _, r := range append(c.Plan.Rows(w, unit.US), answer.GeneralRows(w, unit.US)...) {
			plan[r.Text] = true
			plan[r.Ground] = true
		}
		own := 0
		for _, r := range c.Rows(w, unit.US) {
			if !plan[r.Text] {
				own++
			}
		}
		want := 4 // booth, check, the title of what the values rest on, printed
		if c.Plan.Stopped() {
			want = 2
		}
		assert.Equal(t, want, own, name)
	}
}

// The check names the pressure that the gun's gauge reads at the target with its valve open, or
// the pattern where there is no gauge.
func TestTheCheckAtTheGun(t *testing.T) {
	w := words.English()
	check := func(job string) (string, *calc.Setup) {
		c := planned(t, jobs[job], w, unit.US)
		for _, r := range c.Rows(w, unit.US) {
			if strings.HasPrefix(r.ID, "check-") {
				return r.Text, c.Plan.Setup
			}
		}
		require.Fail(t, "no check", job)
		return "", nil
	}
	text, s := check("usual")
	assert.Contains(t, text, unit.US.Gauge(s.Working.ReadsOpen, unit.Pressure.Fine(unit.US)))
	assert.Contains(t, text, "one division at a time")
	text, _ = check("blind")
	assert.Contains(t, text, "pattern")
	text, _ = check("two")
	assert.Contains(t, text, "nearer the gun")
}

// Names are data: nothing that steers a terminal, turns text or is markup gets onto paper.
func TestNamesOnPaper(t *testing.T) {
	w := words.English()
	c := planned(t, jobs["usual"], w, unit.US)
	c.Booth = "a\x1b[31m\u202ei\u200b<script>alert(1)</script>) Tj & \"x\" ñ 塗"
	c.Plan.Request.Coat.Name = "\x07<b>\u2066coat"
	p := pageOf(c, w, unit.US, print.Papers[0])
	h, err := p.HTML()
	require.NoError(t, err)
	pdf, err := p.PDF()
	require.NoError(t, err)
	for _, bad := range []string{"\x1b", "\x07", "\u202e", "\u200b", "\u2066", "<script", "<b>"} {
		assert.NotContains(t, string(h), bad)
	}
	assert.Contains(t, strings.Join(htmlText(h), " "), `a\x1b[31m\u202ei\u200b<script>alert(1)</script>) Tj & "x" ñ 塗`)
	assert.Contains(t, strings.Join(pdfText(t, pdf), " "), `a\x1b[31m\u202ei\u200b<script>alert(1)</script>) Tj & "x" ñ \u5857`)
	assert.NotContains(t, string(pdf), "\x1b")
}

// The document is whole, fetches nothing and runs nothing; the dial and the line are in it with
// the plan's own figures.
func TestThePageStandsAlone(t *testing.T) {
	w := words.English()
	c := planned(t, jobs["usual"], w, unit.US)
	for _, paper := range print.Papers {
		h, err := pageOf(c, w, unit.US, paper).HTML()
		require.NoError(t, err)
		text := string(h)
		assert.Contains(t, text, "size: "+paper.Name)
		assert.NotRegexp(t, `(?i)<script|<link|<img|@import|url\(|@font-face|ZgotmplZ`, text)
		assert.NotContains(t, text, "http")
		drawings := regexp.MustCompile(`(?s)<svg.*?</svg>`).FindAllString(text, -1)
		require.Len(t, drawings, 2)
		for _, d := range drawings {
			require.NoError(t, xml.Unmarshal([]byte(d), new(struct{})))
		}
		s := c.Plan.Setup
		for _, v := range []unit.Gauge{s.Wall.Flowing, s.Wall.Static, s.Wall.Limit} {
			assert.Contains(t, drawings[0], unit.US.Gauge(v, unit.Usual))
		}
		for _, step := range s.Line {
			assert.Contains(t, html.UnescapeString(drawings[1]), step.Name)
			assert.Contains(t, drawings[1], unit.US.Gauge(step.Out, unit.Pressure.Fine(unit.US)))
		}
	}
}
