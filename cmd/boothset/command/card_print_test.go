package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/answer"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// jobInTwo is the job of a clear in booth two on a mild day.
var jobInTwo = []string{"card", "--booth", "two", "--coat", "clear", "--gun", "number-four", "--temp", "21C", "--humidity", "50"}

func flags(base []string, more ...string) []string {
	return append(append([]string{}, base...), more...)
}

// The card says the booth, and what was agreed on with who did it and when, until the line has
// changed.
func TestTheCardOfABooth(t *testing.T) {
	w := words.English()
	dir, env := quarryLane(t)
	printed := func() string {
		r := boothsetIn(env, "", jobInTwo...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		return r.out
	}
	before := printed()
	assert.Contains(t, before, "Booth: Booth two\n")
	assert.NotContains(t, before, "Agreed")

	agreedOn(t, dir, 41)
	agreed := printed()
	assert.Contains(t, agreed, "Agreed on 2031-03-04. It holds in this weather ("+w.Say("band-mild")+").")
	assert.Regexp(t, `WALL +41 psi +today's answer: \d+ psi`, agreed)
	assert.Contains(t, strings.Join(strings.Fields(agreed), " "), "With the wall regulator at 41.0 psi", "what it makes of today's line")
	for _, lang := range words.Languages() {
		for line := range strings.Lines(boothsetIn(env, "", flags(jobInTwo, "--lang", lang)...).out) {
			assert.LessOrEqual(t, displaywidth.String(strings.TrimRight(line, "\n")), answer.Width, line)
		}
	}
	hot := boothsetIn(env, "", flags(jobInTwo, "--temp", "35C", "--humidity", "20")...)
	require.Equal(t, ExitAnswered, hot.code, hot.err)
	assert.NotContains(t, hot.out, "Agreed", "on mild days alone")

	two, err := os.ReadFile(filepath.Join(dir, "booths", "two.toml"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "booths", "two.toml"), []byte(strings.Replace(string(two), "50ft", "35ft", 1)), 0o600))
	void := printed()
	assert.Contains(t, strings.Join(strings.Fields(void), " "), "Agreed on 2031-03-04. "+w.Say("card-void"))
	assert.NotContains(t, void, "41 psi")
}

// A setting that gives the gun more than it may have is said to, where it stands.
func TestAnAgreedSettingOverTheGunsRating(t *testing.T) {
	dir, env := quarryLane(t)
	agreedOn(t, dir, 90)
	r := boothsetIn(env, "", jobInTwo...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	assert.Regexp(t, `(?m)^! With the wall regulator at 90\.0 psi an open valve puts`, r.out)
	assert.NotContains(t, r.out, words.English().Say("agreed-set"))
}

// A stopped job gives no setting, agreed or not, in any format, and exit code 3.
func TestTheCardOfAJobThatStops(t *testing.T) {
	dir, env := quarryLane(t)
	agreedOn(t, dir, 41)
	for _, format := range formats {
		r := boothsetIn(env, "", flags(jobInTwo, "--supply", "15psi", "--format", format)...)
		assert.Equal(t, ExitCannot, r.code, r.err)
		assert.Contains(t, r.out, "STOP")
		assert.NotContains(t, r.out, "41 psi")
		assert.NotContains(t, r.out, "WALL")
	}
}

// A card is kept in a file that was not there, and over one that was only where that is said.
func TestTheCardsFile(t *testing.T) {
	_, env := quarryLane(t)
	for _, format := range formats {
		file := filepath.Join(t.TempDir(), "clear."+format)
		keep := flags(jobInTwo, "--format", format, "-o", file)
		r := boothsetIn(env, "", keep...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		assert.Contains(t, r.out, "Card written: "+file)
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		begins := map[string]string{formatText: "GO", formatHTML: "<!DOCTYPE html>", formatPDF: "%PDF-"}[format]
		assert.True(t, strings.HasPrefix(string(data), begins), "%.20q", data)

		require.NoError(t, os.WriteFile(file, []byte("mine"), 0o600))
		r = boothsetIn(env, "", keep...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Contains(t, r.err, "--force")
		data, err = os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, "mine", string(data))

		r = boothsetIn(env, "", flags(keep, "--force")...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		data, err = os.ReadFile(file)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(data), begins))
		left, err := os.ReadDir(filepath.Dir(file))
		require.NoError(t, err)
		assert.Len(t, left, 1, "nothing is left beside it")
	}
	r := boothsetIn(env, "", flags(jobInTwo, "-o", filepath.Join(t.TempDir(), "none", "clear.txt"))...)
	assert.Equal(t, ExitFailed, r.code)
}

func TestTheCardsFlags(t *testing.T) {
	_, env := quarryLane(t)
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--format", "docx"}, "format"},
		{[]string{"--paper", "b5"}, "paper"},
		{[]string{"-o", "a\x1b[31m.txt"}, "control characters"},
		{[]string{"-o", "a\u202e.txt"}, "control characters"},
		{[]string{"--hose", "long"}, "hose"},
		{[]string{"--booth", "nine"}, "booth"},
	} {
		r := boothsetIn(env, "", flags(jobInTwo, c.args...)...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says)
		assert.NotContains(t, r.err, "\x1b")
		assert.Empty(t, r.out)
	}
}

// Letter goes with psi and A4 with bar where no paper is named.
func TestTheCardsPaper(t *testing.T) {
	_, env := quarryLane(t)
	for _, c := range [][]string{{"letter", "--units", "us"}, {"a4", "--units", "metric"}, {"a4", "--units", "us", "--paper", "A4"}} {
		r := boothsetIn(env, "", flags(flags(jobInTwo, "--format", "html"), c[1:]...)...)
		require.Equal(t, ExitAnswered, r.code, r.err)
		assert.Contains(t, r.out, "size: "+c[0]+";")
	}
}
