package command

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// serving is what a run of the command serves with, nil where it was refused, and what it said.
func serving(getenv func(string) string, args ...string) (s *Serve, says string, code int) {
	var err bytes.Buffer
	code = Run(&Program{
		Std: Stdio{In: strings.NewReader(""), Out: io.Discard, Err: &err}, Getenv: getenv, Version: func() string { return "" },
		Serve: func(asked *Serve) int {
			s = asked
			return ExitAnswered
		},
	}, append([]string{Serving}, args...))
	return s, err.String(), code
}

func TestNobodyButThisMachineComesInUnlessToldSo(t *testing.T) {
	s, says, code := serving(noEnv)
	require.Equal(t, ExitAnswered, code, says)
	assert.Equal(t, "127.0.0.1:2222", s.Listen)
	assert.Equal(t, time.Hour, s.Idle)
	assert.Empty(t, s.Keys)
	s, _, _ = serving(noEnv, "--listen", ":2222")
	assert.Equal(t, ":2222", s.Listen)
}

func TestHowLongASessionMayBeIdle(t *testing.T) {
	for given, want := range map[string]time.Duration{"20min": 20 * time.Minute, "5": 5 * time.Minute, "2h": 2 * time.Hour, "1min": time.Minute, "24h": 24 * time.Hour} {
		s, says, _ := serving(noEnv, "--idle", given)
		require.NotNil(t, s, says)
		assert.Equal(t, want, s.Idle, given)
	}
	for _, given := range []string{"0", "59s", "25h", "long", "-5min", "1e9h", "5psi"} {
		s, says, code := serving(noEnv, "--idle", given)
		assert.Nil(t, s, given)
		assert.Equal(t, ExitBadInput, code)
		assert.Contains(t, says, "give 1min to 24h")
	}
}

// The arguments that are handed to the program that serves say there what they said here.
func TestTheProgramThatServesIsToldTheSame(t *testing.T) {
	given := []string{"--listen", ":0", "--keys", "-odd name", "--idle", "90s", "--lang", "es", "--units", "metric", "--shop", "/srv/shop"}
	first, says, _ := serving(noEnv, given...)
	require.NotNil(t, first, says)
	again, says, _ := serving(noEnv, first.Args()...)
	require.NotNil(t, again, says)
	assert.Equal(t, first.Args(), again.Args())
	assert.Equal(t, "-odd name", again.Keys)
	assert.Equal(t, 90*time.Second, again.Idle)
	assert.Equal(t, "es", again.Lang())
	assert.Equal(t, []string{"--lang", "en", "--units", "metric", "--shop", "/srv/shop"}, again.sessionArgs("en"))
}

// A session is a run of the program in the language that is named, else that of its own locale;
// what who serves was told of units and shop holds for it.
func TestASessionIsARunOfTheProgram(t *testing.T) {
	s, _, _ := serving(noEnv, "--units", "metric")
	for _, c := range []struct{ lang, locale, want string }{{"es", "en_US.UTF-8", "es"}, {"", "es_MX.UTF-8", "es"}, {"", "", "en"}} {
		var in *words.Words
		code := s.Session(Stdio{In: strings.NewReader(""), Out: io.Discard, Err: io.Discard}, locale(c.locale), c.lang, func(a *Assistant) int {
			in = a.Words
			assert.Equal(t, "metric", a.p.common.units)
			return ExitStopped
		})
		assert.Equal(t, ExitStopped, code)
		assert.Equal(t, c.want, in.Lang())
	}
}
