//go:build unix

package main

import (
	"encoding/base64"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// awaitSent waits until the terminal was sent something between two marks, and gives it.
func (s *session) awaitSent(from, to string) (sent string) {
	s.t.Helper()
	require.Eventually(s.t, func() bool {
		_, after, began := strings.Cut(s.wrote(), from)
		text, _, ended := strings.Cut(after, to)
		sent = text
		return began && ended
	}, patience, 5*time.Millisecond)
	return sent
}

// The card is written to the folder the program stands in and copied through the terminal; both
// are what --card leaves.
func TestTheCardIsTakenAlong(t *testing.T) {
	home, folder := t.TempDir(), t.TempDir()
	cmd := exec.Command(program, "--card")
	cmd.Env, cmd.Dir = []string{"HOME=" + home}, folder
	s := onTerminal(t, 120, 40, nil, cmd)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "w", "Card written: ", "y", "Card copied", "q")
	require.Zero(t, s.code())
	s.requireClean()
	copied, err := base64.StdEncoding.DecodeString(s.awaitSent("\x1b]52;c;", "\x07"))
	require.NoError(t, err)
	files, err := filepath.Glob(filepath.Join(folder, "*"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	require.Regexp(t, `clear-\d{4}-\d\d-\d\d\.txt$`, files[0])
	written, err := os.ReadFile(files[0])
	require.NoError(t, err)
	require.Equal(t, string(written), string(copied))
	require.True(t, strings.HasSuffix(s.allWrote(), strings.ReplaceAll(string(written), "\n", "\r\n")), "and left behind")
}

// A file that was asked for is whole, however fast the program is left.
func TestLeavingWaitsForTheFile(t *testing.T) {
	folder := t.TempDir()
	cmd := exec.Command(program)
	cmd.Env, cmd.Dir = []string{"HOME=" + t.TempDir()}, folder
	s := onTerminal(t, 80, 24, nil, cmd)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "wq")
	require.Zero(t, s.code())
	files, err := filepath.Glob(filepath.Join(folder, "clear-*.txt"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	written, err := os.ReadFile(files[0])
	require.NoError(t, err)
	require.Contains(t, string(written), "Why")
}

func TestTheTitleIsGivenBack(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys(toAnswer...)
	s.await("INLET VALVE")
	require.Equal(t, "boothset", s.awaitSent("\x1b[22;0t\x1b]2;", "\x07"), "it is kept first")
	s.awaitSent("\x1b]2;boothset: clearcoat, GO", "\x07")
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	wrote := s.allWrote()
	require.Equal(t, 1, strings.Count(wrote, "\x1b[22;0t"))
	require.Equal(t, 1, strings.Count(wrote, "\x1b[23;0t"))
	require.Greater(t, strings.Index(wrote, "\x1b[23;0t"), strings.LastIndex(wrote, "boothset: clear"))
}

// Lines of text set no title.
func TestLinesSetNoTitle(t *testing.T) {
	s := open(t, 80, 24, nil, "--plain")
	s.keys("How do you want to begin?", "\n", "What are you spraying?", "8\n", "Which gun", "q\n")
	require.Zero(t, s.code())
	require.NotContains(t, s.allWrote(), "\x1b")
}
