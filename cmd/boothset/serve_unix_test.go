//go:build unix

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/require"
)

// said is what a program writes, which can be read meanwhile.
type said struct {
	mu  sync.Mutex
	all bytes.Buffer
}

func (s *said) Write(b []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.all.Write(b)
}

func (s *said) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.all.String()
}

// The program that serves lies beside the plain one, which a link may lead to; it takes its place,
// and is told the same. Where it is missing that is said.
func TestServingIsTheProgramBeside(t *testing.T) {
	dir, home := t.TempDir(), t.TempDir()
	own, link := filepath.Join(dir, "boothset"), filepath.Join(t.TempDir(), "setup")
	text, err := os.ReadFile(program)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(own, text, 0o755))
	require.NoError(t, os.Symlink(own, link))
	env := []string{"HOME=" + home, "LANG=es_MX.UTF-8"}

	alone := exec.Command(link, "serve")
	alone.Env = env
	out, err := alone.CombinedOutput()
	require.Error(t, err)
	require.Equal(t, command.ExitBadInput, alone.ProcessState.ExitCode())
	require.Contains(t, string(out), "boothset-serve no está")

	server := filepath.Join(dir, "boothset-serve")
	built, err := exec.Command("go", "build", "-o", server, "../boothset-serve").CombinedOutput()
	require.NoError(t, err, string(built))
	wrong := exec.Command(link, "serve", "--idle", "1s")
	wrong.Env = env
	out, err = wrong.CombinedOutput()
	require.Error(t, err)
	require.Contains(t, string(out), "dé de 1min a 24h")

	keys := filepath.Join(home, "keys")
	require.NoError(t, os.WriteFile(keys, []byte("ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIGPcnoJ8nY4F0Y6yLxNq3zVgNfLqBf8qcpK5VYcD3Vnv nobody\n"), 0o600))
	var says said
	serving := exec.Command(link, "--lang", "en", "serve", "--listen", "0", "--keys", keys)
	serving.Env, serving.Stderr = env, &says
	require.NoError(t, serving.Start())
	defer serving.Process.Kill() //nolint:errcheck // it may have ended
	require.Eventually(t, func() bool { return strings.Contains(says.String(), "Open at 127.0.0.1:") }, 10*patience, 5*time.Millisecond)
	if exe, err := os.Readlink(fmt.Sprintf("/proc/%d/exe", serving.Process.Pid)); err == nil { // where there is such
		require.Equal(t, server, exe)
	}
	require.NoError(t, serving.Process.Signal(syscall.SIGTERM))
	require.NoError(t, serving.Wait())
	require.True(t, strings.HasSuffix(says.String(), "Stopped.\n"))

	require.NoError(t, os.Chmod(server, 0o600))
	shut := exec.Command(link, "serve", "--lang", "en")
	shut.Env = env
	out, err = shut.CombinedOutput()
	require.Error(t, err)
	require.Contains(t, string(out), "boothset-serve cannot be started. The system says: permission denied")
}
