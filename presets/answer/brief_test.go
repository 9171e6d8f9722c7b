package answer_test

import (
	"strings"
	"testing"

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

// brief is a plan's few lines, 80 columns wide.
func brief(t *testing.T, lang string, sys unit.System, pairs ...string) string {
	t.Helper()
	w, ok := words.For(lang)
	require.True(t, ok)
	r, err := question.Open(func(string) string { return "" }, w)
	require.NoError(t, err)
	p, err := answer.AskPlan(r, r.ReadAll(question.Plan, questiontest.Texts(pairs...), sys), sys)
	require.NoError(t, err)
	return string(answer.Print(p.Brief(w, sys), answer.Width, w))
}

// The usual job in the order of doing, and those without one or the other value; on STOP the
// cure and its reason, and nothing to set.
func TestTheFewLinesThatStayBehind(t *testing.T) {
	job := []string{"coat", "clear", "gun", "reduced-pressure", "temp", "75F", "humidity", "45", "supply", "90psi"}
	with := func(more ...string) []string { return append(job[:len(job):len(job)], more...) }
	require.Equal(t, `GO: set it like this and spray. Clearcoat, reduced-pressure gun.
WALL 31 psi; INLET VALVE closed 3/8 turn; DISTANCE 5.5 in; GUN GAUGE 26.0 psi
! Isocyanate: supplied air, skin and eyes covered, until the booth has cleared.
`, brief(t, "en", unit.US, job...))
	require.Equal(t, `ADELANTE: ajuste así y pinte. Transparente, pistola de presión reducida.
PARED 2.15 bar; VÁLVULA cerrada 3/8 de vuelta; DISTANCIA 140 mm;
MANÓMETRO 1.79 bar
! Isocianato: aire respirable, piel y ojos cubiertos hasta despejar la cabina.
`, brief(t, "es", unit.Metric, job...))
	require.NotContains(t, brief(t, "en", unit.US, with("gauge", "none")...), "GAUGE")
	require.Contains(t, brief(t, "en", unit.US, with("hardener", "none")...), "\n! Respirator on until the booth has cleared")
	second := brief(t, "en", unit.US, with("line", "regulator=1/2in", "line", "hose=25ft,3/8in", "line", "regulator=1/4in")...)
	require.Regexp(t, `\nWALL \d+ psi; (SECOND|GUN INLET) [\d.]+ psi; INLET VALVE `, second)
	stages := brief(t, "en", unit.US, "coat", "metallic-base", "gun", "reduced-pressure", "temp", "75F", "humidity", "45", "supply", "90psi", "stage", "drop")
	require.Contains(t, strings.Join(strings.Fields(stages), " "), " (drop coat), reduced-pressure gun.")

	stop := brief(t, "en", unit.US, "coat", "clear", "gun", "reduced-pressure", "temp", "75F", "humidity", "45", "supply", "20psi")
	require.True(t, strings.HasPrefix(stop, "STOP: do not spray. Raise the supply to 31.2 psi. Clearcoat, reduced-pressure\n      gun.\nSTOP Not enough air"), stop)
}

// Whatever is asked, no row is wider than its width, a word longer than that apart, and
// nothing that is set shows on STOP.
func TestTheFewLinesFitAndSetNothingOnStop(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		p, ok := draw(t, r).(*answer.Plan)
		if !ok {
			t.Skip("no plan")
		}
		width := rapid.IntRange(60, answer.Width).Draw(t, "width")
		for _, w := range languages(t) {
			for _, sys := range bothSystems {
				rows := p.Brief(w, sys)
				for _, l := range answer.Lay(rows, width, w) {
					assert.LessOrEqual(t, displaywidth.String(l.Text), width, l.Text)
					assert.NotContains(t, l.Text, "{")
				}
				set := 0
				for _, row := range rows {
					if row.Role == answer.Together {
						set++
						assert.Contains(t, row.Text, w.Say("label-distance"))
					}
				}
				require.Equal(t, p.Stopped(), set == 0)
			}
		}
	})
}
