package command

import (
	"strings"
	"testing"

	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Help, in every language, names each command and shows the examples as they are typed.
func TestHelpInEveryLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		env := locale(lang + "_US.UTF-8")
		all := boothsetIn(env, "", "--help")
		require.Equal(t, ExitAnswered, all.code, all.err)
		assert.Contains(t, all.out, w.Say("usage-intro"))
		for _, c := range question.Questions() {
			require.True(t, w.Has("brief-"+c.Name), "brief-"+c.Name)
			assert.Contains(t, all.out, c.Name+strings.Repeat(" ", 13-len(c.Name))+w.Say("brief-"+c.Name)+"\n")
			one := boothsetIn(env, "", c.Name, "--help")
			require.Equal(t, ExitAnswered, one.code, one.err)
			assert.Contains(t, one.out, "\n  boothset "+c.Name+" --coat ")
			assert.Contains(t, one.out, w.Say("intro-"+c.Name))
			assert.Contains(t, one.out, "boothset."+c.Name+"/")
			assert.NotContains(t, one.out, "{")
			assert.NotContains(t, one.out, "usage-")
		}
	}
}

// Help is of the command that is named, wherever it is named and whatever flags stand where;
// a command that there is not has none.
func TestHelpHonoursFlagsInAnyOrder(t *testing.T) {
	want := boothset("", "plan", "--units", "metric", "--lang", "es", "--help")
	require.Equal(t, ExitAnswered, want.code, want.err)
	require.Contains(t, want.out, "boothset plan: qué ajustar")
	for _, args := range []string{
		"help plan --units metric --lang es", "--lang es help --units metric plan", "help --lang es --units metric plan", "--help plan --lang es --units metric",
		"--lang es --help --units metric plan", "plan --help --units metric --lang es", "plan -h --lang es --units metric", "--units metric plan --help --lang es", "plan -help -lang es -units metric",
	} {
		assert.Equal(t, want, boothset("", strings.Fields(args)...), args)
	}
	for _, args := range []string{"help nope", "nope --help", "--help nope", "nope", "help plan nope", "nope -h", "help nope --lang en", "help nope plan"} {
		got := boothset("", strings.Fields(args)...)
		assert.Equal(t, ExitBadInput, got.code, args)
		assert.Empty(t, got.out, args)
		assert.Contains(t, got.err, "nope", args)
		assert.Contains(t, got.err, "use plan, day, thin, film, mix", args)
	}
	for _, args := range []string{"plan --help --units imperial", "help --units imperial", "--units imperial help plan"} {
		got := boothset("", strings.Fields(args)...)
		assert.Equal(t, ran{err: "boothset: units \"imperial\": choose us or metric\n", code: ExitBadInput}, got, args)
	}
}

// What is wrong with the flags and with a line of a batch is told in the language asked
// for, by name and as it was given.
func TestFaultsInSpanish(t *testing.T) {
	for _, c := range []struct {
		args  []string
		input string
		says  string
	}{
		{args: clearJob("--colour", "red"), says: "boothset: no hay tal opción: --colour; vea boothset plan --help\n"},
		{args: clearJob("--wall"), says: "boothset: a la opción le falta su valor: --wall; vea boothset plan --help\n"},
		{args: clearJob("---wall"), says: "boothset: opción mal escrita: ---wall; vea boothset plan --help\n"},
		{args: clearJob("--json=perhaps"), says: `boothset: el valor "perhaps" no sirve para --json: dé true o false; vea boothset plan --help` + "\n"},
		{args: clearJob("extra"), says: `boothset: "extra": aquí solo van opciones; vea boothset plan --help` + "\n"},
		{args: []string{"--wrong"}, says: "boothset: no hay tal opción: --wrong; vea boothset --help\n"},
		{args: []string{"spray"}, says: `boothset: command "spray": use plan, day, thin, film, mix, trouble, learn, prove, shop, agree, settings, log, sheet, card, compare, drift, practice, demo, serve, version, completion, help, o ninguno para el asistente` + "\n"},
		{args: clearJob("--units", "imperial"), says: `boothset: units "imperial": elija us o metric` + "\n"},
		{args: []string{"plan", "--batch", "--coat", "clear"}, says: "boothset: coat: con --batch cada petición da lo suyo; junto a ella solo van --units, --lang, --shop, --fields y --jobs\n"},
		{args: []string{"plan", "--batch"}, input: "hola", says: `"want":"no es JSON; dé un objeto por línea, como {`},
		{args: []string{"plan", "--batch"}, input: "{} {}", says: `"want":"un objeto JSON por línea, nada después"`},
		{args: []string{"plan", "--batch"}, input: "[]", says: `"want":"un valor JSON (array); dé un objeto por línea"`},
		{args: []string{"plan", "--batch"}, input: `{"hose":{}}`, says: `"want":"un valor JSON (object) no sirve; dé un texto o un número, o una lista de ellos"`},
		{args: []string{"plan", "--batch"}, input: `{"spread":3}`, says: `"want":"un valor JSON (number) no sirve; dé true o false"`},
		{args: []string{"plan", "--batch"}, input: `{"units":3}`, says: `"want":"un valor JSON (number) no sirve; elija us o metric"`},
		{args: []string{"plan", "--batch"}, input: `{"colour":3}`, says: `"want":"no hay tal campo; una petición puede llevar coat, `},
		{args: []string{"day", "--batch"}, input: `{"colour":3}`, says: `"want":"no hay tal campo; una petición puede llevar coat, stage, hardener, gun, temp, `},
		{args: []string{"day", "--batch"}, input: `{"temp":{}}`, says: `"want":"un valor JSON (object) no sirve; dé un texto o un número"`},
		{args: []string{"day", "--batch"}, input: `"` + strings.Repeat("x", longestLine) + `"`, says: `"want":"dé una línea de a lo más 1048576 bytes"`},
		{args: nil, says: "boothset: la entrada estándar no es una terminal, así que el asistente no puede abrir. Sin pantalla use\n"},
	} {
		r := boothsetIn(locale("es_US.UTF-8"), c.input, c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.out+r.err, c.says)
	}
}

func TestOutputThatIsClosedInSpanish(t *testing.T) {
	var err strings.Builder
	code := runOn(Stdio{strings.NewReader(""), closed{}, &err}, noEnv, clearJob("--lang", "es")...)
	assert.Equal(t, ExitFailed, code)
	assert.Equal(t, "boothset: al escribir la respuesta: "+errClosed.Error()+"\n", err.String())
}
