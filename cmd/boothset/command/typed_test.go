package command

import (
	"strings"
	"testing"

	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
)

// What phones and keyboards of other countries put in place of plain characters answers as
// those do.
func TestWhatLooksAlikeIsAnsweredAlike(t *testing.T) {
	for _, c := range [][2][]string{
		{clearJob("--temp", "24ºC", "--panel", "23℃"), clearJob("--temp", "24C", "--panel", "23C")},
		{clearJob("--humidity", "４５％", "--supply", "９０ psi"), clearJob("--humidity", "45%", "--supply", "90psi")},
		{clearJob("--hose", "25′，⅜″", "--hose", "6’, ¼in"), clearJob("--hose", "25ft,3/8in", "--hose", "6ft,1/4in")},
		{clearJob("--sheet-distance", "5½in"), clearJob("--sheet-distance", "5 1/2 in")},
		{clearJob("--hose", "25ft,3/8in＋6ft,1/4in"), clearJob("--hose", "25ft,3/8in", "--hose", "6ft,1/4in")},
		{clearJob("--coat", "ＣＬＥＡＲ", "--gun", "Reduced‑Pressure"), clearJob()},
		{[]string{"mix", "--coat", "clear", "--gun", "hvlp", "--area", "2 × door", "--area", "1.2m²", "--ratio", "4：1：1"}, []string{"mix", "--coat", "clear", "--gun", "hvlp", "--area", "2 x door", "--area", "1.2m2", "--ratio", "4:1:1"}},
		{[]string{"thin", "--coat", "clear", "--cup", "DIN４", "--seconds", "21", "--paint", "68 ºF", "--sheet-seconds", "16–18"}, []string{"thin", "--coat", "clear", "--cup", "din4", "--seconds", "21", "--paint", "68F", "--sheet-seconds", "16-18"}},
	} {
		want := boothset("", c[1]...)
		assert.NotEqual(t, ExitBadInput, want.code, "%v: %s", c[1], want.err)
		assert.Equal(t, want, boothset("", c[0]...), c[0])
	}
}

// A point before three digits is asked about in either language where both readings are what
// may be, and nowhere else.
func TestAPointThatMayMarkThousandsIsAskedAbout(t *testing.T) {
	for lang, says := range map[string]string{
		"en": "boothset: altitude \"1.500m\": the point can be read two ways: type 1500m or 1.5m\n",
		"es": "boothset: altitude \"1.500m\": el punto se puede leer de dos maneras: escriba 1500m o bien 1.5m\n",
	} {
		got := boothset("", clearJob("--lang", lang, "--altitude", "1.500m")...)
		assert.Equal(t, ran{err: says, code: ExitBadInput}, got)
	}
	for _, args := range [][]string{
		clearJob("--altitude", "1500m"), clearJob("--altitude", "1.5m"), clearJob("--altitude", "0.500m"),
		clearJob("--panel", "72.125F"), clearJob("--supply", "90.125psi"), clearJob("--hose", "7.625m,10.125mm"),
	} {
		got := boothset("", args...)
		assert.NotEqual(t, ExitBadInput, got.code, "%v: %s", args, got.err)
	}
	price := boothset("", "mix", "--coat", "clear", "--gun", "hvlp", "--area", "door", "--ratio", "4:1:1", "--price", "$1.500/L")
	assert.Contains(t, price.err, "type 1500 or 1.5")
}

// An entry of a list is found in any case of letters, on the command line and in a batch.
func TestEntriesInAnyCase(t *testing.T) {
	r := questiontest.Open(t)
	upper := func(args []string) []string {
		out := []string{args[0]}
		for i := 1; i < len(args); i += 2 {
			out = append(out, args[i], strings.ToUpper(args[i+1]))
		}
		return out
	}
	for _, args := range [][]string{
		clearJob("--units", "metric", "--lang", "es"),
		clearJob("--regulator", "3/8in", "--regulator-at", "gun", "--gauge", "foot", "--coupling", "slim", "--filter", "none"),
		clearJob("--line", "regulator=3/8in", "--line", "coupling=slim", "--line", "hose=25ft,3/8in"),
		{"thin", "--coat", "clear", "--cup", "ford4", "--seconds", "26", "--paint", "68F"},
		{"mix", "--coat", "clear", "--gun", "hvlp", "--area", "hood", "--ratio", "4:1:1"},
		clearJob("--compressor", "none"),
	} {
		want := boothset("", args...)
		assert.NotEqual(t, ExitBadInput, want.code, "%v: %s", args, want.err)
		assert.Equal(t, want, boothset("", upper(args)...), args)
	}
	for _, q := range question.Commands() {
		for _, row := range q.Fields {
			for _, c := range r.Choices(row.Field) {
				v := r.Read(row.Field, strings.ToUpper(c.ID), r.System())
				assert.Equal(t, c.ID, v.ID, row.Name)
			}
		}
	}
	line := strings.Replace(goodLine, "clear", "CLEAR", 1)
	assert.Equal(t, boothset(goodLine, "plan", "--batch"), boothset(line, "plan", "--batch"))
}
