package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// changeFile changes a text in a file.
func changeFile(t *testing.T, file, old, with string) {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Contains(t, string(data), old)
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(string(data), old, with, 1)), 0o600))
}

// What another terminal agrees on shows in this one, and what is typed here stays.
func TestAnotherTerminalsAgreementShows(t *testing.T) {
	dir := shopCopy(t)
	here, there := start(t, look{folder: dir}), start(t, look{folder: dir})
	press(here, deskAnswer...)
	press(here, "a", "down", "down", "down", "my reason")
	press(there, deskAnswer...)
	done(there, "a", "enter")

	here.hear(here.look()())
	require.Equal(t, "agree", where(here))
	require.Equal(t, "my reason", here.page().(*entryPage).text(agreeWhy))
	require.Contains(t, bodyText(here.View()), "It takes the place of")
	press(here, "esc")
	require.Contains(t, here.View(), "Agreed: ")
	there.hear(there.look()())
	press(there, "down", "up") // what was told of the writing goes
	require.Equal(t, bodyText(there.View()), bodyText(here.View()), "both show the same")
}

// A booth that is changed elsewhere is gone by at once: what was taken as it had it follows,
// what was typed stays, and it is said.
func TestABoothThatIsChangedElsewhere(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	file := filepath.Join(dir, "booths", "two.toml")
	changeFile(t, file, "100psi", "104psi")
	changeFile(t, file, "50ft,5/16in", "25ft,1/2in")
	was := r.result().Plan
	r.hear(r.look()())
	require.Contains(t, r.View(), "Booth two was changed from elsewhere")
	now := r.result().Plan
	require.InDelta(t, 104, now.Request.Supply.PSI(), 1e-9)
	require.Less(t, now.Setup.Wall.Flowing, was.Setup.Wall.Flowing)

	press(r, "n", "2", "2", "8", "enter", "95psi", "enter", "enter", "enter")
	for range 3 {
		if where(r) != "bench" {
			press(r, "enter")
		}
	}
	require.InDelta(t, 95, r.result().Plan.Request.Supply.PSI(), 1e-9, "typed")
	changeFile(t, file, "104psi", "106psi")
	r.hear(r.look()())
	require.InDelta(t, 95, r.result().Plan.Request.Supply.PSI(), 1e-9, "what was typed beats the booth")
}

// A booth that is gone, or will not do any more, stays the job's; it is offered no more.
func TestABoothThatIsGoneStaysTheJobs(t *testing.T) {
	dir := shopCopy(t)
	r := start(t, look{folder: dir})
	press(r, deskAnswer...)
	was := r.result()
	changeFile(t, filepath.Join(dir, "booths", "two.toml"), "supply", "<<<<<<< HEAD\nsupply")
	r.hear(r.look()())
	require.Equal(t, was, r.result())
	require.Contains(t, r.View(), "Booth two")
	press(r, "n")
	require.NotContains(t, r.View(), "> 2  Booth two")
	require.Contains(t, r.View(), "booths/two.toml:6")
}

// In lines of text too, before what is asked next.
func TestPlainHearsOfOtherTerminals(t *testing.T) {
	dir := shopCopy(t)
	at := 0
	o := look{folder: dir}.options(t)
	input := lines("2", "2", "8", "75F", "45", "", "", "", "", "", "", "", "7", "=", "q")
	o.In = &steady{lines: strings.SplitAfter(input, "\n"), before: func(line string) {
		if at++; line == "=\n" {
			changeFile(t, filepath.Join(dir, "booths", "two.toml"), "100psi", "104psi")
		}
	}}
	var out strings.Builder
	o.Out = &out
	_, err := Plain(o)
	require.NoError(t, err)
	require.Contains(t, out.String(), "Booth two was changed from elsewhere")
	require.Positive(t, at)
}

// steady is an input that gives a line at a time, and does something before each.
type steady struct {
	lines  []string
	before func(line string)
}

func (s *steady) Read(p []byte) (int, error) {
	line := s.lines[0]
	s.lines = s.lines[1:]
	s.before(line)
	return copy(p, line), nil
}
