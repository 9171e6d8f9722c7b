//go:build unix

package server

import (
	"encoding/pem"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// client is the OpenSSH client with a key of its own, which knows the server's.
type client struct {
	t    testing.TB
	r    *running
	path string
	dir  string
	gossh.Signer
}

// openSSH is a client whose key a home is made for; the test is skipped where there is none.
func openSSH(t testing.TB) *client {
	t.Helper()
	path, err := exec.LookPath("ssh")
	if err != nil {
		t.Skip("there is no OpenSSH client here")
	}
	c := &client{t: t, path: path, dir: t.TempDir()}
	out, err := exec.Command("ssh-keygen", "-q", "-t", "ed25519", "-N", "", "-f", filepath.Join(c.dir, "key")).CombinedOutput()
	require.NoError(t, err, string(out))
	text, err := os.ReadFile(filepath.Join(c.dir, "key"))
	require.NoError(t, err)
	block, _ := pem.Decode(text)
	require.NotNil(t, block)
	c.Signer, err = gossh.ParsePrivateKey(text)
	require.NoError(t, err)
	return c
}

// to lets the client know a server.
func (c *client) to(home string, r *running) *client {
	c.t.Helper()
	_, key, f := hostKey(filepath.Dir(filepath.Dir(kept(home, c))))
	require.Nil(c.t, f)
	host, port, err := net.SplitHostPort(r.at)
	require.NoError(c.t, err)
	known := fmt.Sprintf("[%s]:%s %s", host, port, gossh.MarshalAuthorizedKey(key.PublicKey()))
	require.NoError(c.t, os.WriteFile(filepath.Join(c.dir, "known"), []byte(known), 0o600))
	c.r = r
	return c
}

// command is the client's, with further arguments before the address and behind it.
func (c *client) command(before []string, behind ...string) *exec.Cmd {
	host, port, _ := net.SplitHostPort(c.r.at)
	args := append([]string{
		"-F", "/dev/null", "-i", filepath.Join(c.dir, "key"), "-p", port, "-o", "IdentitiesOnly=yes", "-o", "BatchMode=yes",
		"-o", "StrictHostKeyChecking=yes", "-o", "UserKnownHostsFile=" + filepath.Join(c.dir, "known"), "-o", "LogLevel=ERROR",
	}, before...)
	cmd := exec.Command(c.path, append(append(args, "painter@"+host), behind...)...)
	cmd.Env = []string{"HOME=" + c.dir, "TERM=xterm-256color", "LANG=en_US.UTF-8"}
	return cmd
}

// refused runs the client, which is to fail, and gives what it says.
func (c *client) refused(before []string, behind ...string) string {
	c.t.Helper()
	out, err := c.command(before, behind...).CombinedOutput()
	require.Error(c.t, err, string(out))
	return string(out)
}

// window is the client on a terminal.
type window struct {
	t     testing.TB
	cmd   *exec.Cmd
	near  *os.File
	wrote text
	left  chan error
	over  chan struct{} // closed once it has ended
}

// open opens the client on a terminal of 80 by 24.
func (c *client) open(before ...string) *window {
	c.t.Helper()
	w := &window{t: c.t, cmd: c.command(before), left: make(chan error, 1), over: make(chan struct{})}
	near, err := pty.StartWithSize(w.cmd, &pty.Winsize{Rows: 24, Cols: 80})
	require.NoError(c.t, err)
	w.near = near
	go func() {
		var b [4096]byte
		for {
			n, err := near.Read(b[:])
			w.wrote.Write(b[:n]) //nolint:errcheck // it takes anything
			if err != nil {
				break
			}
		}
		w.left <- w.cmd.Wait()
		close(w.over)
	}()
	c.t.Cleanup(func() {
		w.cmd.Process.Kill() //nolint:errcheck // it may have ended
		<-w.over
		near.Close()
	})
	return w
}

func (w *window) keys(pairs ...string) {
	w.t.Helper()
	for i := 0; i+1 < len(pairs); i += 2 {
		w.wrote.await(w.t, pairs[i])
		_, err := w.near.WriteString(pairs[i+1])
		require.NoError(w.t, err)
	}
}

func (w *window) code() int {
	w.t.Helper()
	select {
	case err := <-w.left:
		w.left <- err
	case <-time.After(patience):
		w.t.Fatal("the client does not end: ", w.wrote.String())
	}
	return w.cmd.ProcessState.ExitCode()
}

// The client that people have comes in, in the language and with the window that its terminal
// has, and its exit code is the program's.
func TestOpenSSHComesIn(t *testing.T) {
	c := openSSH(t)
	dir := home(t, c)
	c.to(dir, serve(t, dir, "--lang", "es"))
	w := c.open("-o", "SendEnv=LANG")
	w.keys("before you spray", "\r", "What are you spraying", "")
	require.NoError(t, pty.Setsize(w.near, &pty.Winsize{Rows: 40, Cols: 120}))
	w.wrote.await(t, strings.Repeat("─", 120))
	require.NoError(t, pty.Setsize(w.near, &pty.Winsize{Rows: 8, Cols: 30}))
	w.keys("too small", "")
	require.NoError(t, pty.Setsize(w.near, &pty.Winsize{Rows: 24, Cols: 130}))
	w.keys(strings.Repeat("─", 130), "") // more than it drew before: it has seen the new window
	w.keys(toAnswer[2:]...)
	w.keys("INLET VALVE", "q")
	require.Zero(t, w.code())
	requireClean(t, w.wrote.String())
	require.Contains(t, w.wrote.String()[strings.LastIndex(w.wrote.String(), "\x1b[?1049l"):], "31 psi")

	plain := c.open("-o", "SetEnv=NO_COLOR=1 LC_MESSAGES=en")
	plain.keys("before you spray", "\x03")
	require.Equal(t, command.ExitStopped, plain.code())
	require.NotRegexp(t, regexp.MustCompile(`\x1b\[[0-9;]+m`), plain.wrote.String())
	c.open().keys("antes de pintar", "\x03")
}

// All that the client can ask for besides is refused.
func TestOpenSSHIsRefusedTheRest(t *testing.T) {
	c, stranger := openSSH(t), openSSH(t)
	dir := home(t, c)
	r := serve(t, dir)
	c.to(dir, r)
	stranger.to(dir, r)
	require.Contains(t, stranger.refused(nil), "Permission denied (publickey)")
	require.Contains(t, c.refused([]string{"-o", "PubkeyAuthentication=no", "-o", "PreferredAuthentications=password,keyboard-interactive,gssapi-with-mic,hostbased"}), "Permission denied (publickey)")
	require.Contains(t, c.refused(nil, "id"), "exec request failed")
	require.Contains(t, c.refused([]string{"-s"}, "sftp"), "subsystem request failed")
	require.Contains(t, c.refused([]string{"-T"}), "The assistant needs a terminal")
	require.Contains(t, c.refused([]string{"-N", "-o", "ExitOnForwardFailure=yes", "-R", "0:127.0.0.1:1"}), "remote port forwarding failed")
	require.Contains(t, c.refused([]string{"-W", "127.0.0.1:1"}), "stdio forwarding failed")

	w := c.open("-A", "-X", "-o", "SetEnv=PATH=/tmp LD_PRELOAD=/tmp/x.so BOOTHSET_SHOP=/tmp")
	w.keys("before you spray", "\r", "What are you spraying", "\x03")
	require.Equal(t, command.ExitStopped, w.code())
}

// Fifty at once, each with a place and kept answers of their own; a third of them is killed, and
// then the server: what each answered is kept, and the shop's folder is as it was.
func TestFiftyClientsAtOnce(t *testing.T) {
	const many = 50
	var all []*client
	var keys []gossh.Signer
	for range many {
		c := openSSH(t)
		all, keys = append(all, c), append(keys, c)
	}
	dir := aShop(t, keys...)
	before := filesOf(t, dir)
	r := serve(t, dir)
	windows := make([]*window, many)
	atOnce := make(chan struct{}, mostWaiting/2) // no more than these log in at the same time
	var in sync.WaitGroup
	for i, c := range all {
		in.Go(func() {
			atOnce <- struct{}{}
			defer func() { <-atOnce }()
			w := c.to(dir, r).open()
			w.wrote.await(t, "before you spray")
			windows[i] = w
		})
	}
	in.Wait()
	coats := map[string]string{"7": "single-stage", "8": "clear"}
	coat := func(i int) string { return []string{"7", "8"}[i%2] }
	for i, w := range windows {
		require.NotNil(t, w)
		w.keys("before you spray", "\r", "Which booth are you in", "1", "Which gun is it", "1", "What are you spraying", coat(i))
	}
	for i, w := range windows {
		w.wrote.await(t, "How warm is the air")
		awaitKept(t, kept(dir, keys[i]), "coat", coats[coat(i)])
	}
	for i := 0; i < many; i += 3 {
		require.NoError(t, windows[i].cmd.Process.Signal(syscall.SIGKILL))
	}
	gone := (many + 2) / 3
	require.Eventually(t, func() bool { return strings.Count(r.says.String(), "Left: ") == gone }, patience, 5*time.Millisecond)
	for i, w := range windows {
		if i%3 != 0 {
			w.keys("How warm is the air", "75F\r", "How humid", "")
			awaitKept(t, kept(dir, keys[i]), "temp", "75F") // nothing is told to the server: it must be kept by then
		}
	}
	require.NoError(t, windows[1].cmd.Process.Signal(syscall.SIGSTOP)) // a tablet that sleeps
	defer windows[1].cmd.Process.Signal(syscall.SIGCONT)               //nolint:errcheck // it may have ended
	require.Equal(t, -1, r.end(syscall.SIGKILL))
	require.Equal(t, before, filesOf(t, dir))
	for i, key := range keys {
		awaitKept(t, kept(dir, key), "coat", coats[coat(i)])
		if i%3 != 0 {
			awaitKept(t, kept(dir, key), "temp", "75F")
		}
	}
}
