package command

import (
	"bytes"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBadInputNamesFieldGivenAndWant(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		args []string
		says []string
	}{
		{[]string{"plan"}, []string{"coat: " + questiontest.Choose(r, question.Coat)}},
		{clearJob("--coat", "varnish"), []string{`coat "varnish": ` + questiontest.Choose(r, question.Coat)}},
		{clearJob("--gun", "airless"), []string{`gun "airless"`, "reduced-pressure"}},
		{clearJob("--temp", "warm"), []string{`temp "warm"`, "75F or 24C"}},
		{clearJob("--temp", "0F"), []string{`temp "0F": 0 F is outside 14 to 140 F`}},
		{clearJob("--temp", ""), []string{"temp: type a number with F or C"}},
		{clearJob("--humidity", "450"), []string{`humidity "450"`, "outside 1 to 100%"}},
		{clearJob("--panel", "200F"), []string{`panel "200F"`, "outside 14 to 140 F"}},
		{clearJob("--altitude", "20000ft"), []string{`altitude "20000ft"`, "outside"}},
		{clearJob("--supply", "90bar"), []string{`supply "90bar"`, "outside 1 to 300 psi"}},
		{clearJob("--hose", "25ft"), []string{`hose "25ft"`, "such as 25ft,3/8in or 8m,10mm"}},
		{clearJob("--hose", "25ft,3/8in", "--hose", ""), []string{"hose: type length and bore"}},
		{clearJob("--coupling", "huge"), []string{`coupling "huge": ` + questiontest.Choose(r, question.Coupling, question.None)}},
		{clearJob("--filter", "coffee"), []string{`filter "coffee"`}},
		{clearJob("--regulator", "2in"), []string{`regulator "2in": ` + questiontest.Choose(r, question.Regulator, question.None)}},
		{clearJob("--regulator-at", "roof"), []string{`regulator-at "roof": choose wall or gun`}},
		{clearJob("--gauge", "hose"), []string{`gauge "hose": choose handle, foot or none`}},
		{clearJob("--wall", "much"), []string{`wall "much"`, "psi, bar or kPa"}},
		{clearJob("--mark", "0psi"), []string{`mark "0psi"`, "0.01 to 20 psi"}},
		{clearJob("--units", "imperial"), []string{`units "imperial": choose us or metric`}},
		{clearJob("--json=perhaps"), []string{"json", "perhaps", "plan --help"}},
		{clearJob("--colour", "red"), []string{"colour", "see boothset plan --help"}},
		{clearJob("--wall"), []string{"wall", "see boothset plan --help"}},
		{clearJob("extra"), []string{`"extra": only flags are expected here; see boothset plan --help`}},
		{[]string{"spray"}, []string{`command "spray": use plan`, "or none for the assistant"}},
		{[]string{""}, []string{"command", "plan"}},
	} {
		r := boothset("", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Empty(t, r.out, c.args)
		assert.True(t, strings.HasPrefix(r.err, "boothset: "), r.err)
		assert.Equal(t, 1, strings.Count(r.err, "\n"), "one line: %s", r.err)
		for _, says := range c.says {
			assert.Contains(t, r.err, says)
		}
	}
}

func TestEveryFlagIsInTheHelp(t *testing.T) {
	for _, args := range [][]string{{"plan", "--help"}, {"plan", "-h"}} {
		r := boothset("", args...)
		require.Equal(t, ExitAnswered, r.code)
		require.Empty(t, r.err)
		for _, name := range []string{"units", "lang", "json", "batch", "fields", "jobs"} {
			assert.Contains(t, r.out, "\n  --"+name+" ")
		}
		for _, row := range question.Plan.Fields {
			assert.Contains(t, r.out, "\n  --"+row.Name+" ")
		}
		for _, l := range strings.Split(r.out, "\n") {
			assert.NotContains(t, l, "`")
		}
	}
}

// Every field of a request can be given by a flag of the same name, and the other way
// round; a plan's spread needs no asking for.
func TestFlagsAndRequestFieldsAreTheSame(t *testing.T) {
	var flags []string
	for _, l := range strings.Split(boothset("", "plan", "--help").out, "\n") {
		if name, found := strings.CutPrefix(l, "  --"); found {
			flags = append(flags, strings.ReplaceAll(strings.Fields(name)[0], "-", "_"))
		}
	}
	assert.ElementsMatch(t, append(requestKeys(question.Plan), "json", "batch", "fields", "jobs", "lang", "shop"), append(flags, "spread"))
}

// What the help says a choice is, the catalogue offers.
func TestHelpNamesTheShippedChoices(t *testing.T) {
	r, err := question.Open(noEnv, words.English())
	require.NoError(t, err)
	for _, q := range question.Commands() {
		help := boothset("", q.Name, "--help").out
		for _, row := range q.Fields {
			for _, choice := range r.Choices(row.Field) {
				assert.Contains(t, help, choice.ID, row.Name)
			}
		}
	}
	help := boothset("", "plan", "--help").out
	assert.Equal(t, ExitAnswered, boothset("", exampleIn(t, help)...).code, "the example in the help")
}

// exampleIn is the arguments of the first example in a help text.
func exampleIn(t *testing.T, help string) []string {
	t.Helper()
	for _, l := range strings.Split(help, "\n") {
		if args := strings.Fields(l); len(args) > 2 && args[0] == "boothset" && strings.HasPrefix(args[2], "--") {
			return args[1:]
		}
	}
	require.Fail(t, "no example")
	return nil
}

func TestHelp(t *testing.T) {
	for _, arg := range []string{"help", "-h", "-help", "--help"} {
		r := boothset("", arg)
		assert.Equal(t, ExitAnswered, r.code)
		assert.Empty(t, r.err)
		for _, c := range question.Commands() {
			assert.Contains(t, r.out, "boothset "+c.Name)
			assert.Contains(t, r.out, words.English().Say("brief-"+c.Name))
		}
		assert.Contains(t, r.out, "Exit: 0 answered, 2 bad input, 3")
	}
}

func TestOutputThatIsClosedIsAFailureAndNoPanic(t *testing.T) {
	for _, args := range [][]string{
		{"help"}, {"plan", "--help"}, clearJob(), clearJob("--json"), clearJob("--supply", "20psi"), {"plan", "--batch"},
	} {
		var errs bytes.Buffer
		code := runOn(Stdio{strings.NewReader(strings.Repeat(goodLine+"\n", 50)), closed{}, &errs}, noEnv, args...)
		assert.Equal(t, ExitFailed, code, args)
		assert.Contains(t, errs.String(), errClosed.Error(), args)
		assert.Equal(t, ExitBadInput, runOn(Stdio{strings.NewReader(""), closed{}, closed{}}, noEnv, "spray"))
	}
}

// FuzzAnswers gives every field anything at all, a line each: it is refused in one
// line, or answered in finite numbers.
func FuzzAnswers(f *testing.F) {
	fields := question.Plan.Fields
	linesOf := func(pairs ...string) string {
		texts, lines := questiontest.Texts(pairs...), make([]string, len(fields))
		for i, row := range fields {
			lines[i] = strings.Join(texts[row.Name], "")
			delete(texts, row.Name)
		}
		require.Empty(f, texts, "fields of the plan")
		return strings.Join(lines, "\n")
	}
	for _, s := range []string{
		"", "\n\n\n",
		linesOf("coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45", "supply", "90psi"),
		linesOf("coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45", "supply", "90psi", "panel", "68F", "altitude", "5000ft", "hose", "25ft,3/8in + 6ft,5/16in", "coupling", "slim", "filter", "clogged", "regulator", "1/4in", "regulator-at", "gun", "gauge", "foot", "wall", "70psi", "mark", "2psi"),
		linesOf("coat", "waterborne-base", "gun", "high-volume-low-pressure", "temp", "-10C", "humidity", "1", "supply", "1psi", "panel", "60C", "altitude", "-430m", "hose", "500ft,3mm", "coupling", "none", "filter", "none", "regulator", "none", "regulator-at", "wall", "gauge", "none", "wall", "300psi", "mark", "0.01psi"),
		linesOf("coat", "epoxy-primer", "gun", "high-pressure", "temp", "60C", "humidity", "100%", "supply", "300psi", "panel", "-10C", "altitude", "5000m", "hose", "0.5ft,40mm", "coupling", "large-bore", "filter", "point-of-use", "regulator", "1/2in", "regulator-at", "wall", "gauge", "handle", "wall", "1psi", "mark", "20psi"),
		linesOf("coat", "single-stage", "gun", "high-pressure", "temp", "22,5", "humidity", "12,5%", "supply", "6", "hose", "7,5m,10", "coupling", "ordinary"),
		linesOf("coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45", "supply", "90psi", "compressor", "18cfm", "receiver", "60gal", "cut-in", "100psi", "cut-out", "130psi", "main", "100ft,3/4in", "other", "10cfm,50% + 5cfm", "spray-time", "3min", "receiver-temp", "90F", "line-temp", "65F"),
		linesOf("coat", "clear", "gun", "high-volume-low-pressure", "temp", "35C", "humidity", "100", "supply", "40psi", "compressor", "0.1hp", "receiver", "1L", "cut-in", "41psi", "cut-out", "500psi", "main", "1000ft,1/4in", "other", "100cfm", "spray-time", "24h", "receiver-temp", "60C", "line-temp", "0C"),
	} {
		f.Add(s, false)
		f.Add(s, true)
	}
	reader, err := question.Open(noEnv, words.English())
	require.NoError(f, err)
	f.Fuzz(func(t *testing.T, text string, metric bool) {
		args := []string{"plan", "--json"}
		sys := unit.US
		if metric {
			sys, args = unit.Metric, append(args, "--units=metric")
		}
		texts := question.Texts{}
		for i, typed := range strings.Split(text, "\n") {
			if i == len(fields) {
				break
			}
			for _, v := range reader.ReadText(fields[i].Field, reader.Expand(fields[i].Field, typed), sys) {
				texts[fields[i].Name] = append(texts[fields[i].Name], v.Text)
				args = append(args, "--"+fields[i].Name+"="+v.Text)
			}
		}
		_, faults := reader.Plan(reader.ReadAll(question.Plan, texts, sys), sys)
		r := boothset("", args...)
		if len(faults) > 0 {
			require.Equal(t, ExitBadInput, r.code)
			require.Equal(t, "boothset: "+faults[0].Error()+"\n", r.err)
			for _, x := range faults {
				require.NotEmpty(t, x.Field)
				require.NotEmpty(t, x.Want())
			}
			return
		}
		if r.code == ExitBadInput { // together they will not do, though each does
			require.Empty(t, r.out)
			require.Regexp(t, `^boothset: [a-z-]+( ".*")?: .+\n$`, r.err)
			return
		}
		require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
		require.Empty(t, r.err)
		require.Empty(t, faultsOf(t, r.out))
		require.Equal(t, r.code == ExitCannot, decoded(t, r.out).Stopped)
	})
}
