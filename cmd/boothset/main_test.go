//go:build unix

package main

import (
	"bytes"
	"errors"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestVersion(t *testing.T) {
	for _, arg := range []string{"version", "-version", "--version"} {
		r := boothset("", arg)
		assert.Equal(t, command.ExitAnswered, r.code)
		assert.Regexp(t, `^boothset \S.*\n$`, r.out)
	}
	var errs bytes.Buffer
	code := run([]string{"version"}, command.Stdio{In: strings.NewReader(""), Out: closed{}, Err: &errs}, noEnv)
	assert.Equal(t, command.ExitFailed, code)
	assert.Contains(t, errs.String(), errClosed.Error())
}

// closed is an output that takes nothing.
type closed struct{}

var errClosed = errors.New("closed")

func (closed) Write([]byte) (int, error) { return 0, errClosed }

// initialized are the packages whose inits a run of the program ran.
func initialized(t *testing.T, args ...string) (packages []string) {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Env = []string{"GODEBUG=inittrace=1", "HOME=" + t.TempDir()}
	cmd.Stdin = strings.NewReader("")
	var trace bytes.Buffer
	cmd.Stderr = &trace
	_, err := cmd.Output()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		require.NoError(t, err)
	}
	for _, m := range regexp.MustCompile(`(?m)^init (\S+) @`).FindAllStringSubmatch(trace.String(), -1) {
		packages = append(packages, m[1])
	}
	require.Contains(t, packages, "runtime")
	return packages
}

// An answer on the command line does not wait for the inits of what draws.
func TestASubCommandIsAnsweredBeforeTheTerminalLibrary(t *testing.T) {
	const terminal = "github.com/charmbracelet/bubbletea"
	require.Contains(t, initialized(t, "version"), terminal)
	for _, args := range [][]string{
		strings.Fields("plan --coat clear --gun reduced-pressure --temp 72F --humidity 45 --supply 90psi --json"),
		{"plan", "--help"}, {"help"}, {"spray"},
		strings.Fields("day --coat clear --temp 75F --humidity 60"),
	} {
		for _, p := range []string{terminal, "github.com/charmbracelet/lipgloss", "github.com/charmbracelet/x/ansi", "github.com/mattn/go-runewidth", "regexp", "boothset/tui"} {
			require.NotContains(t, initialized(t, args...), p, args)
		}
	}
	require.Contains(t, initialized(t, "plan", "--batch"), terminal, "a batch waits for main")
}
