package command

import (
	"regexp"
	"slices"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func locale(lang string) func(string) string {
	return func(name string) string {
		if name == "LANG" {
			return lang
		}
		return ""
	}
}

// The flag chooses the language, else the locale does; both choose the units alike.
func TestLanguageByFlagAndByLocale(t *testing.T) {
	spanish, ok := words.For("es")
	require.True(t, ok)
	english := words.English()
	safety := func(w *words.Words) string { return w.Say("safety")[:20] }
	require.NotEqual(t, safety(english), safety(spanish))
	for _, c := range []struct {
		lang  string
		args  []string
		words *words.Words
		unit  string
	}{
		{"en_US.UTF-8", nil, english, " psi"},
		{"es_US.UTF-8", nil, spanish, " psi"},
		{"es_MX.UTF-8", nil, spanish, " bar"},
		{"es_MX.UTF-8", []string{"--lang", "en"}, english, " bar"},
		{"", []string{"--lang=es", "--units=metric"}, spanish, " bar"},
		{"de_DE.UTF-8", []string{"--units", "us"}, english, " psi"},
	} {
		r := boothsetIn(locale(c.lang), "", clearJob(c.args...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		assert.Contains(t, r.out, safety(c.words), c)
		assert.Contains(t, r.out, c.unit, c)
	}
}

func TestALanguageThatIsNotThere(t *testing.T) {
	for _, lang := range words.Languages() {
		w, ok := words.For(lang)
		require.True(t, ok)
		r := boothsetIn(locale(lang), "", clearJob("--lang", "xx")...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Contains(t, r.err, `lang "xx": `+w.Choose(words.Languages()))
	}
}

func TestHelpIsInTheLanguageAskedFor(t *testing.T) {
	spanish, _ := words.For("es")
	r := boothsetIn(locale(""), "", "plan", "--lang", "es", "--help")
	require.Equal(t, ExitAnswered, r.code, r.err)
	r2 := boothsetIn(locale("es_MX"), "", "plan", "--help")
	for _, out := range []string{r.out, r2.out} {
		assert.Contains(t, out, "--lang idioma")
	}
	assert.Contains(t, spanish.Say("usage-lang"), "`idioma`")
}

// What is wrong with the flags is told in the language asked for wherever that stands.
func TestTheLanguageIsThatAskedForWhereverItStands(t *testing.T) {
	for _, lang := range [][]string{{"--lang", "es"}, {"--lang=es"}, {"-lang", "es"}} {
		for says, args := range map[string][]string{
			"no hay tal opción: --tipp":                 {"film", "--tipp", "1.3mm"},
			"a la opción le falta su valor: --coat":     {"film", "--coat"},
			"el valor \"perhaps\" no sirve para --json": {"film", "--json=perhaps"},
			"\"clear\": aquí solo van opciones":         {"film", "clear"},
			"use plan, day, thin, film, mix, trouble, learn, prove, shop, agree, settings, log, sheet, card, compare, drift, practice, demo, serve, version, completion, help, o ninguno": {"paint"},
		} {
			after := boothset("", append(slices.Clone(args), lang...)...)
			if args[len(args)-1] == "--coat" {
				after = boothset("", append(slices.Clone(lang), args...)...)
			}
			assert.Contains(t, after.err, says, "%v %v", args, lang)
			assert.Contains(t, boothset("", append(slices.Clone(lang), args...)...).err, says)
		}
	}
}

// Spanish marks decimals by its place, from the locale or the flag; what programs read never
// changes, and both marks are read everywhere.
func TestDecimalsByPlace(t *testing.T) {
	comma, point := regexp.MustCompile(`\d,\d+ bar`), regexp.MustCompile(`\d\.\d+ bar`)
	plan := func(lang string, more ...string) string {
		r := boothsetIn(locale(lang), "", clearJob(append(more, "--units", "metric")...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		return r.out
	}
	for _, c := range []struct {
		locale string
		args   []string
		comma  bool
	}{
		{"es_ES.UTF-8", nil, true},
		{"es_AR.UTF-8", nil, true},
		{"es_MX.UTF-8", nil, false},
		{"es", nil, false},
		{"", []string{"--lang", "es"}, false},
		{"es_ES.UTF-8", []string{"--lang", "es"}, true},
		{"en_US.UTF-8", []string{"--lang", "es-CO"}, true},
		{"es_ES.UTF-8", []string{"--lang", "en"}, false},
		{"de_DE.UTF-8", nil, false},
	} {
		out := plan(c.locale, c.args...)
		require.Equal(t, c.comma, comma.MatchString(out), c)
		require.Equal(t, !c.comma, point.MatchString(out), c)
	}
	require.Equal(t, plan("es_MX.UTF-8", "--json"), plan("es_ES.UTF-8", "--json"))
	batch := func(lang string) string {
		r := boothsetIn(locale(lang), `{"coat":"clear","gun":"reduced-pressure","temp":"22.5C","humidity":"45,5","supply":"6,2bar"}`+"\n", "plan", "--batch")
		require.Equal(t, ExitAnswered, r.code, r.err+r.out)
		return r.out
	}
	require.Equal(t, batch("es_MX.UTF-8"), batch("es_ES.UTF-8"))
	require.Equal(t, plan("es_ES.UTF-8", "--wall", "2.5bar"), plan("es_ES.UTF-8", "--wall", "2,5bar"))
}
