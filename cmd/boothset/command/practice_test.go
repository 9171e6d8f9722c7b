package command

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/presets/demo"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// practised is what the assistant would practise with, and what was said.
func practised(t *testing.T, getenv func(string) string, args ...string) (with *Practice, said ran) {
	t.Helper()
	var out, err bytes.Buffer
	p := &Program{
		Std: Stdio{strings.NewReader(""), &out, &err}, Getenv: getenv, Version: func() string { return "" },
		Assistant: func(a *Assistant) int { with = a.Practice; return ExitAnswered },
	}
	code := Run(p, append([]string{"practice"}, args...))
	return with, ran{out.String(), err.String(), code}
}

// The booths are the shop's where it has some, else an invented shop's; a seed repeats.
func TestPractice(t *testing.T) {
	with, said := practised(t, noEnv, "--seed", "7")
	require.NotNil(t, with, said.err)
	assert.True(t, with.Deck.Invented())
	assert.Equal(t, uint64(7), with.Seed)
	assert.Empty(t, with.Kept)
	again, _ := practised(t, noEnv, "--seed=7")
	assert.Equal(t, with.Deck.Job().Answers, again.Deck.Job().Answers)
	drawn, _ := practised(t, noEnv)
	assert.Less(t, drawn.Seed, uint64(mostSeed))

	dir := filepath.Join(t.TempDir(), "shop")
	require.NoError(t, demo.Make(dir, questiontest.Open(t), time.Date(2031, 3, 9, 0, 0, 0, 0, time.UTC)))
	with, said = practised(t, noEnv, "--shop", dir, "--booth", "two")
	require.NotNil(t, with, said.err)
	assert.False(t, with.Deck.Invented())
	assert.Equal(t, "two", with.Deck.Job().Booth.ID)
	assert.Empty(t, said.err)
}

// Initials name the file that is kept in; one that will not do is told, and left as it is.
func TestPracticeUnderInitials(t *testing.T) {
	dir := t.TempDir()
	getenv := func(name string) string {
		return map[string]string{"XDG_STATE_HOME": dir, "LocalAppData": dir}[name]
	}
	with, said := practised(t, getenv, "--initials", "MK")
	require.NotNil(t, with, said.err)
	assert.Equal(t, filepath.Join(dir, "boothset", "practice-mk.json"), with.Kept)
	require.NoError(t, os.MkdirAll(filepath.Dir(with.Kept), 0o700))
	newer := []byte(`{"format": "boothset.practice/2"}`)
	require.NoError(t, os.WriteFile(with.Kept, newer, 0o600))
	other, said := practised(t, getenv, "--initials", "MK")
	require.NotNil(t, other)
	assert.Empty(t, other.Kept)
	assert.Contains(t, said.err, "another version")
	left, err := os.ReadFile(with.Kept)
	require.NoError(t, err)
	assert.Equal(t, newer, left)
}

// What will not do is told by its flag, in either language.
func TestPracticeRefuses(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"--seed", "x"}, `seed "x": type a whole number`},
		{[]string{"--seed", "-1"}, `seed "-1"`},
		{[]string{"--initials", "M.K"}, `initials "M.K": type one to 4 letters`},
		{[]string{"--booth", "nine"}, `booth "nine": choose one, two or three`},
		{[]string{"more"}, "only flags"},
		{[]string{"--lang", "es", "--initials", "12"}, `escriba de una a 4 letras`},
	} {
		with, said := practised(t, noEnv, c.args...)
		assert.Nil(t, with)
		assert.Equal(t, ExitBadInput, said.code, c.args)
		assert.Contains(t, said.err, c.says)
	}
}
