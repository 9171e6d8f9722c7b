package words_test

import (
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func read(t *testing.T, toml string) *words.Words {
	t.Helper()
	w, err := words.Of(none, toml)
	require.NoError(t, err)
	return w
}

func TestEnglishReads(t *testing.T) {
	w := words.English()
	assert.NotEmpty(t, w.IDs())
	assert.True(t, w.Has("safety"))
	assert.Empty(t, w.Needs("safety"), "it must be whole whatever the answer")
}

func TestASentenceTakesItsFigures(t *testing.T) {
	w := read(t, `one = "Set {wall}, not {high}; {wall} it is."`)
	assert.Equal(t, []string{"one"}, w.IDs())
	assert.Equal(t, []string{"wall", "high", "wall"}, w.Needs("one"))
	f := calc.Figures{
		{Name: "high", Kind: calc.FigureText, Text: "more"},
		{Name: "wall", Kind: calc.FigureGauge, Value: float64(unit.PSIG(30))},
		{Name: "unused", Kind: calc.FigureRatio, Value: 3},
	}
	assert.Equal(t, "Set 30.0 psi, not more; 30.0 psi it is.", w.Text(unit.US, "one", f))
	assert.Equal(t, "Set 2.07 bar, not more; 2.07 bar it is.", w.Text(unit.Metric, "one", f))
	assert.Equal(t, "before Set 30.0 psi, not more; 30.0 psi it is.", string(w.Append([]byte("before "), unit.US, "one", f)))
}

// What is missing shows, so that it cannot pass unseen.
func TestWhatIsMissingShows(t *testing.T) {
	w := read(t, `one = "Set {wall}."`)
	assert.Equal(t, "Set {wall}.", w.Text(unit.US, "one", nil))
	assert.Equal(t, "two", w.Text(unit.US, "two", nil))
	assert.False(t, w.Has("two"))
	assert.Empty(t, w.Needs("two"))
}

func TestEveryKindOfFigureInBothSystems(t *testing.T) {
	for _, c := range []struct {
		kind       calc.FigureKind
		value      float64
		us, metric string
	}{
		{calc.FigureGauge, float64(unit.PSIG(26)), "26.0 psi", "1.79 bar"},
		{calc.FigureDrop, float64(unit.PSIG(2)), "2.0 psi", "0.14 bar"},
		{calc.FigureDistance, float64(unit.Inches(5.5)), "5.5 in", "140 mm"},
		{calc.FigureRun, float64(unit.Feet(25)), "25 ft", "7.6 m"},
		{calc.FigureTemp, float64(unit.Celsius(20)), "68 F", "20.0 C"},
		{calc.FigureTempDiff, 3, "5.4 F", "3.0 C"},
		{calc.FigureFlow, float64(unit.SCFM(10)), "10.0 cfm", "287 L/min"},
		{calc.FigureShare, 0.45, "45%", "45%"},
		{calc.FigureRatio, 1.08, "1.08", "1.08"},
	} {
		f := calc.Figure{Name: "x", Kind: c.kind, Value: c.value}
		assert.Equal(t, c.us, string(words.English().AppendFigure(nil, unit.US, &f)), c.kind)
		assert.Equal(t, c.metric, string(words.English().AppendFigure(nil, unit.Metric, &f)), c.kind)
	}
	f := calc.Figure{Text: "clear"}
	assert.Equal(t, "clear", string(words.English().AppendFigure(nil, unit.US, &f)))
}

func TestStandingSaysBasisAndSourceOnce(t *testing.T) {
	assert.Equal(t, "computed", words.English().Ground(calc.Ground{Basis: calc.Computed}))
	assert.Equal(t, "published: a handbook", words.English().Ground(calc.Ground{Basis: calc.Published, Source: "a handbook"}))
	assert.Equal(t, "common practice, no published source", words.English().Ground(calc.Ground{Basis: calc.CommonPractice, Source: "common practice, no published source"}))
}

// A sentence that begins with a name begins with a capital; inside another one it does not.
func TestACapitalBeginsASentenceAndNoPartOfOne(t *testing.T) {
	w := words.English()
	require.True(t, strings.HasPrefix(w.Say("now-above-supply"), "{regulator} "))
	f := calc.Figures{calc.SentenceFigure("regulator", "set-foot"), calc.SentenceFigure("why", "now-above-supply"), calc.FigureOf("wall", calc.FigureGauge, unit.PSIG(60)), calc.FigureOf("supply", calc.FigureGauge, unit.PSIG(50))}
	assert.Equal(t, "The regulator at the gun inlet reads 60.0 psi and the supply was entered as 50.0 psi: one of the two is off.", w.Text(unit.US, "now-above-supply", f))
	assert.Equal(t, "cup: the regulator at the gun inlet reads 60.0 psi and the supply was entered as 50.0 psi: one of the two is off.", w.Text(unit.US, "file-cup", f))
}
