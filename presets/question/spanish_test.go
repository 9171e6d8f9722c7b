package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spanish(t *testing.T, shop string) (*question.Reader, error) {
	t.Helper()
	w, ok := words.For("es")
	require.True(t, ok)
	c, err := catalogue.LoadIn(w, words.Locale{Lang: "es", System: unit.Metric, HasSystem: true}, []byte(shop), "shop.toml")
	require.NoError(t, err)
	return question.New(c)
}

// Choices, the parts of the line and what will not do are in the catalogue's language.
func TestAReaderSpeaksItsLanguage(t *testing.T) {
	r, err := spanish(t, "[coat.clear]\nrank = 1\n[coupling.mine]\nname = \"our coupling\"\nbore = \"7mm\"\nratio = 0.3\nbasis = \"estimate\"\nsource = \"measured\"\n")
	require.NoError(t, err)
	assert.Equal(t, unit.Metric, r.System())
	called := func(f *question.Field, id string) string { return r.Called(f, r.Read(f, id, unit.Metric)) }
	assert.Equal(t, "transparente", called(question.Coat, "clear"))
	assert.Equal(t, "regulador de 1/2 in", called(question.Regulator, "1/2in"))
	assert.Equal(t, "en la pared", called(question.RegulatorAt, question.AtWall))
	assert.Equal(t, "our coupling", called(question.Coupling, "mine"))

	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "24 grados C", "humidity", "45 por ciento", "supply", "6 bar", "hose", "25 pies,3/8 pulg")
	q := plan(t, r, texts, unit.Metric)
	us := questiontest.With(questiontest.With(questiontest.With(texts, "temp", "24C"), "humidity", "45%"), "hose", "25ft,3/8in")
	same := plan(t, r, us, unit.US)
	assert.Equal(t, same.Day, q.Day)
	assert.Equal(t, same.Line[1].Hose, q.Line[1].Hose)
	_, s := solved(t, r, texts)
	var parts []string
	for _, p := range s.Line {
		parts = append(parts, p.Name)
	}
	assert.Equal(t, []string{"regulador de pared (1/2in)", "acople de pared (de paso amplio)", "manguera principal", "acople de pistola (de paso amplio)", "válvula de aire", "conductos de la pistola", "tapa de aire"}, parts)

	for typed, want := range map[string]string{
		"":    "escriba un número con F o C, como 75F o 24C",
		"99C": "99 C está fuera de -10 a 60 C",
	} {
		faults := planFaults(r, questiontest.With(texts, "temp", typed), unit.Metric)
		require.NotEmpty(t, faults)
		assert.Equal(t, "temp", faults[0].Field)
		assert.Equal(t, typed, faults[0].Given)
		assert.Equal(t, want, faults[0].Want())
	}
	faults := planFaults(r, questiontest.With(texts, "coat", "milk"), unit.Metric)
	require.NotEmpty(t, faults)
	assert.ErrorContains(t, faults[0], "elija clear, epoxy-primer, ")
	assert.ErrorContains(t, faults[0], " o high-solids-clear")
}

// What is wrong with a shop's usual line is told in the language.
func TestFaultsOfAShopsLineInSpanish(t *testing.T) {
	for shop, want := range map[string]string{
		"[line]\nunits = \"both\"\n":    `shop.toml:2:1: line: units "both": elija us o metric`,
		"[line]\nsupply = \"900bar\"\n": `shop.toml:2:1: line: supply "900bar": `,
		"[line]\nsupply = 9\n":          `la clave "line.supply" lleva texto entre comillas`,
	} {
		_, err := spanish(t, shop)
		assert.ErrorContains(t, err, want)
	}
}
