package command

import (
	"strings"
	"testing"

	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A shell is told the flags of a command with their sentences, and what the catalogue has
// for a flag, in the language of the locale.
func TestShellsAreToldFlagsAndChoices(t *testing.T) {
	flags := boothset("", "__complete", "plan", "--").out
	for _, row := range question.Plan.Fields {
		assert.Contains(t, flags, "--"+row.Name+"\t")
	}
	assert.NotContains(t, flags, "usage-")
	assert.NotContains(t, flags, "`")
	guns := boothset("", "__complete", "plan", "--gun", "").out
	r, err := question.Open(noEnv, words.English())
	require.NoError(t, err)
	for _, c := range r.Choices(question.Gun) {
		assert.Contains(t, guns, c.ID+"\t"+c.Name+"\n")
	}
	spanish := boothsetIn(locale("es_MX.UTF-8"), "", "__complete", "plan", "--coup").out
	assert.Contains(t, spanish, "acople")
}

// What the shop's folder has is completed too.
func TestShellsAreToldWhatTheFolderHas(t *testing.T) {
	_, env := quarryLane(t)
	require.Equal(t, ExitAnswered, boothsetIn(env, "", "shop", "painter", "MK").code)
	job := recorded(t, env, recordJob...)
	for says, args := range map[string][]string{
		"two\tBooth two\n":               {"agree", "--booth", ""},
		"number-four\tnumber four\n":     {"log", "record", "--gun", ""},
		"hot-dry\thot and dry\n":         {"agree", "--band", ""},
		"MK\n":                           {"log", "record", "--by", ""},
		"wall=\n":                        {"agree", "--set", ""},
		"popping\n":                      {"log", "outcome", "--outcome", ""},
		job.Record + "\t":                {"log", "outcome", ""},
		"outcome\tsay how a job of the ": {"log", ""},
	} {
		assert.Contains(t, boothsetIn(env, "", append([]string{"__complete"}, args...)...).out, says, args)
	}
}

func TestCompletionOfEachShell(t *testing.T) {
	for shell := range shells {
		r := boothset("", "completion", shell)
		assert.Equal(t, ExitAnswered, r.code, r.err)
		assert.Contains(t, r.out, "boothset")
	}
	for _, args := range [][]string{{"completion"}, {"completion", "tcsh"}, {"completion", "bash", "zsh"}} {
		r := boothset("", args...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Contains(t, r.err, "choose bash, fish, powershell or zsh")
	}
}

// Everything that is documented has sentences in every language, none an id.
func TestDocumentedInEveryLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		p := &Program{Getenv: locale(lang)}
		root, err := p.Documented()
		require.NoError(t, err)
		w, _ := words.For(lang)
		var check func(c *cobra.Command)
		check = func(c *cobra.Command) {
			for _, s := range []string{c.Short, c.Long} {
				assert.NotEmpty(t, s, c.Name())
				assert.False(t, w.Has(s), "%s: %q is an id", c.Name(), s)
				assert.NotContains(t, s, "intro-")
			}
			c.Flags().VisitAll(func(f *pflag.Flag) {
				assert.Contains(t, f.Usage, " ", "%s --%s: %q", c.Name(), f.Name, f.Usage)
				assert.False(t, strings.ContainsAny(f.Usage, "{`"), f.Usage)
			})
			for _, sub := range c.Commands() {
				check(sub)
			}
		}
		check(root)
	}
}

// One dash before a flag's name is as good as two.
func TestOneDashIsAsGoodAsTwo(t *testing.T) {
	one := boothset("", "plan", "-coat=clear", "-gun", "reduced-pressure", "-temp", "-5C", "-humidity", "45", "-supply", "90psi", "-json")
	two := boothset("", "plan", "--coat", "clear", "--gun=reduced-pressure", "--temp", "-5C", "--humidity", "45", "--supply", "90psi", "--json")
	assert.Equal(t, ExitAnswered, one.code, one.err)
	assert.Equal(t, two, one)
}

// The everyday names of guns, other cases of letters and unambiguous beginnings do on the
// command line; a batch takes names alone.
func TestNamesOnTheCommandLine(t *testing.T) {
	for given, code := range map[string]int{"reduced-pressure": ExitAnswered, "Reduced-Pressure": ExitAnswered, "red": ExitAnswered, "high": ExitBadInput, "": ExitBadInput} {
		args := []string{"plan", "--coat", "clear", "--gun", given, "--temp", "72F", "--humidity", "45", "--supply", "90psi", "--json"}
		r := boothset("", args...)
		assert.Equal(t, code, r.code, given)
	}
	r := boothset(strings.Replace(goodLine, "reduced-pressure", "red", 1), "plan", "--batch")
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, boothset("", "plan", "--gun", "reduced-presure", "--coat", "clear", "--temp", "72F", "--humidity", "45", "--supply", "90psi").err, "nearest is reduced-pressure")
}

func TestHelpOfACommand(t *testing.T) {
	assert.Equal(t, boothset("", "day", "--help"), boothset("", "help", "day"))
	assert.Equal(t, ExitBadInput, boothset("", "help", "spray").code)
}
