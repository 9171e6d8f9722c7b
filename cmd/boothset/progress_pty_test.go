//go:build unix

package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

const batchLine = `{"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45,"supply":"90psi"}` + "\n"

// While a batch runs standard error says how far it has come, where that is a terminal and the
// answers go elsewhere; in the end the row is gone.
func TestABatchShowsItsProgressOnATerminal(t *testing.T) {
	for lang, says := range map[string]string{"en": "3 lines, ", "es": "3 líneas, "} {
		var out bytes.Buffer
		in, toIn := io.Pipe()
		cmd := exec.Command(program, "plan", "--batch", "--lang", lang)
		cmd.Env = []string{"HOME=" + t.TempDir()}
		s := onTerminal(t, 80, 24, &out, cmd, func(cmd *exec.Cmd) { cmd.Stdin = in })
		_, err := io.WriteString(toIn, strings.Repeat(batchLine, 3))
		require.NoError(t, err)
		s.await(says)
		require.NotContains(t, s.shown(), "left", "nobody knows how much is to come")
		require.NoError(t, toIn.Close())
		require.Zero(t, s.code())
		all := s.allWrote()
		require.NotContains(t, all, "\n", "it stays on one row")
		rows := strings.Split(all, "\r")
		shown, blank := rows[len(rows)-3], rows[len(rows)-2]
		require.Contains(t, shown, says)
		require.Equal(t, strings.Repeat(" ", utf8.RuneCountInString(shown)), blank, "blanks lie over the last one")
		require.Empty(t, rows[len(rows)-1])
		require.Equal(t, 3, strings.Count(out.String(), "\n"))
	}
}

// Of a plain file it also says how long the rest takes. It is made long enough to be seen on
// any machine, and given up once it is.
func TestABatchOfAFileSaysHowLongTheRestTakes(t *testing.T) {
	file := filepath.Join(t.TempDir(), "in")
	spread := strings.Replace(batchLine, "{", `{"spread":true,`, 1)
	require.NoError(t, os.WriteFile(file, []byte(strings.Repeat(spread, 200_000)), 0o600))
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	cmd := exec.Command(program, "plan", "--batch", "--fields", "verdict")
	cmd.Env = []string{"HOME=" + t.TempDir()}
	s := onTerminal(t, 80, 24, &bytes.Buffer{}, cmd, func(cmd *exec.Cmd) { cmd.Stdin = f })
	s.await(" left")
	require.NoError(t, cmd.Process.Kill())
	s.code()
}

// Beside answers on the same terminal, and where standard error is none, there is no such row.
func TestABatchShowsNoProgressBesideItsAnswers(t *testing.T) {
	in, toIn := io.Pipe()
	cmd := exec.Command(program, "plan", "--batch", "--fields", "verdict")
	cmd.Env = []string{"HOME=" + t.TempDir()}
	s := onTerminal(t, 80, 24, nil, cmd, func(cmd *exec.Cmd) { cmd.Stdin = in })
	_, err := io.WriteString(toIn, batchLine)
	require.NoError(t, err)
	s.await(`{"verdict":"go"}`)
	time.Sleep(700 * time.Millisecond) // one would show by now
	require.NoError(t, toIn.Close())
	require.Zero(t, s.code())
	require.NotContains(t, s.allWrote(), "second")
}
