package answer_test

import (
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everyPlan answers a mild day for each coat with each gun that goes with it, and how sure it is.
func everyPlan(t *testing.T, r *question.Reader, with func(name string, p *answer.Plan)) {
	t.Helper()
	for _, coat := range questiontest.Entries(r, question.Coat) {
		for _, gun := range questiontest.Entries(r, question.Gun) {
			if !r.GoTogether(coat, gun) {
				continue
			}
			p, err := answer.AskPlan(r, r.ReadAll(question.Plan, questiontest.MildDay(coat, gun), unit.US), unit.US)
			require.NoError(t, err, coat+" "+gun)
			p.Sure()
			with(coat+" "+gun, p)
		}
	}
}

// Nobody is told a distance to hold that lies outside of what it is likely to be.
func TestTheDistanceIsWithinItsRange(t *testing.T) {
	held := 0
	everyPlan(t, questiontest.Open(t), func(name string, p *answer.Plan) {
		if p.Spread == nil {
			return
		}
		if p.Setup.Distance.Held != calc.NotHeld {
			held++
		}
		const rounding = 1e-12
		likely := p.LikelyDistance()
		assert.LessOrEqual(t, float64(likely.Low), float64(p.Setup.Distance.Target)+rounding, name)
		assert.GreaterOrEqual(t, float64(likely.High), float64(p.Setup.Distance.Target)-rounding, name)
	})
	assert.Positive(t, held, "a class or a stage that holds the gun is among them")
}

// What a value rests on says its basis once.
func TestAGroundSaysItsBasisOnce(t *testing.T) {
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		everyPlan(t, questiontest.Open(t), func(name string, p *answer.Plan) {
			for _, reason := range p.Reasons() {
				basis, ground := w.Basis(reason.Basis), w.Ground(reason.Ground)
				if rest, leads := strings.CutPrefix(ground, basis+": "); leads {
					assert.NotContains(t, rest, ": "+basis, "%s in %s", name, lang)
				}
			}
		})
	}
}
