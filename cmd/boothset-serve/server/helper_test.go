//go:build unix

package server

import (
	"bufio"
	"bytes"
	"crypto/ed25519"
	"crypto/rand"
	"fmt"
	"io"
	"io/fs"
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

	"boothset/calc/unit"
	"boothset/cmd/boothset/command"
	"boothset/presets/last"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// asServer is set for a run of the tests that is to be the program itself, panicking for one with a
// page that panics when it is opened.
const (
	asServer  = "BOOTHSET_SERVES"
	panicking = "BOOTHSET_PANICS"
)

func TestMain(m *testing.M) {
	if os.Getenv(panicking) != "" {
		question.Seconds.Read = func(*question.Reader, *question.Field, string, unit.System) question.Value {
			panic("programmer error")
		}
	}
	if os.Getenv(asServer) != "" {
		os.Exit(command.Run(program(os.Stderr, os.Getenv, Run), append([]string{command.Serving}, os.Args[1:]...)))
	}
	os.Exit(m.Run())
}

// program is the program as it is built, but for what it serves with.
func program(errs io.Writer, getenv func(string) string, serve func(*command.Serve) int) *command.Program {
	return &command.Program{
		Std: command.Stdio{In: strings.NewReader(""), Out: io.Discard, Err: errs}, Getenv: getenv,
		Version: func() string { return "" }, Serve: serve,
	}
}

// patience is far longer than anything takes here, on a busy machine too.
const patience = 20 * time.Second

// text is what is written to, whole.
type text struct {
	mu  sync.Mutex
	all bytes.Buffer
}

func (w *text) Write(b []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.all.Write(b)
}

func (w *text) String() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.all.String()
}

// await waits until something was written.
func (w *text) await(t testing.TB, what string) {
	t.Helper()
	require.Eventually(t, func() bool { return strings.Contains(w.String(), what) }, patience, 5*time.Millisecond, "%q", what)
}

// newKey is a key made for a test.
func newKey(t testing.TB) gossh.Signer {
	t.Helper()
	_, private, err := ed25519.GenerateKey(rand.Reader)
	require.NoError(t, err)
	key, err := gossh.NewSignerFromKey(private)
	require.NoError(t, err)
	return key
}

// row is a key as a row of the file of keys.
func row(key gossh.PublicKey, name string) string {
	return strings.TrimSpace(string(gossh.MarshalAuthorizedKey(key))) + " " + name + "\n"
}

// home is a person's home with keys that may come in.
func home(t testing.TB, keys ...gossh.Signer) string {
	t.Helper()
	dir := t.TempDir()
	var rows string
	for i, k := range keys {
		rows += row(k.PublicKey(), fmt.Sprint("terminal-", i))
	}
	file := keysFile(inHome(dir))
	require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o700))
	require.NoError(t, os.WriteFile(file, []byte(rows), 0o600))
	return dir
}

func inHome(dir string) func(string) string {
	return func(name string) string { return map[string]string{"HOME": dir}[name] }
}

// kept is where the answers of a key are kept.
func kept(home string, key gossh.Signer) string {
	return filepath.Join(filepath.Dir(last.File(inHome(home))), "serve", folderOf(key.PublicKey()), keptFile)
}

// running is the program, serving.
type running struct {
	t    testing.TB
	cmd  *exec.Cmd
	at   string // the address
	says *text
	left chan error
}

// serve starts the program in a home, on a free port of this machine unless the arguments say
// otherwise.
func serve(t testing.TB, home string, args ...string) *running {
	t.Helper()
	own, err := os.Executable()
	require.NoError(t, err)
	r := &running{t: t, says: &text{}, left: make(chan error, 1)}
	r.cmd = exec.Command(own, append([]string{"--listen", "127.0.0.1:0"}, args...)...)
	r.cmd.Env = []string{"HOME=" + home, "LANG=C.UTF-8", asServer + "=1", panicking + "=" + os.Getenv(panicking)}
	r.cmd.Stderr = r.says
	require.NoError(t, r.cmd.Start())
	go func() { r.left <- r.cmd.Wait() }()
	t.Cleanup(func() {
		r.cmd.Process.Kill() //nolint:errcheck // it may have ended
		<-r.left
	})
	r.opened()
	return r
}

// serveHere serves in this process, changed first, until the test ends.
func serveHere(t testing.TB, home string, change func(*command.Serve)) *running {
	t.Helper()
	r := &running{t: t, says: &text{}}
	signals, left := make(chan os.Signal, 1), make(chan int)
	go func() {
		left <- command.Run(program(r.says, inHome(home), func(s *command.Serve) int {
			change(s)
			return run(s, signals)
		}), []string{command.Serving, "--listen", "0"})
	}()
	t.Cleanup(func() {
		signals <- syscall.SIGTERM
		require.Zero(t, <-left)
	})
	r.opened()
	return r
}

// opened waits until the program serves, and keeps where.
func (r *running) opened() {
	r.t.Helper()
	r.says.await(r.t, "Ctrl+C")
	r.at = regexp.MustCompile(`(?:Open at|Abierto en) (\S+) `).FindStringSubmatch(r.says.String())[1]
}

// end sends a signal and waits for the end, and gives the exit code, -1 where it was killed.
func (r *running) end(signal syscall.Signal) int {
	r.t.Helper()
	require.NoError(r.t, r.cmd.Process.Signal(signal))
	select {
	case err := <-r.left:
		r.left <- err
	case <-time.After(patience):
		r.t.Fatal("it does not end: ", r.says.String())
	}
	return r.cmd.ProcessState.ExitCode()
}

// dial comes in with a key, under a name.
func (r *running) dial(name string, key gossh.Signer) (*gossh.Client, error) {
	host := regexp.MustCompile(`SHA256:[\w+/]+`).FindString(r.says.String())
	return gossh.Dial("tcp", r.at, &gossh.ClientConfig{
		User: name, Auth: []gossh.AuthMethod{gossh.PublicKeys(key)}, Timeout: patience,
		HostKeyCallback: func(_ string, _ net.Addr, k gossh.PublicKey) error {
			if gossh.FingerprintSHA256(k) != host {
				return fmt.Errorf("another machine: %s", gossh.FingerprintSHA256(k))
			}
			return nil
		},
	})
}

// terminal is one who came in, on a terminal.
type terminal struct {
	t      testing.TB
	client *gossh.Client
	in     *gossh.Session
	typed  io.WriteCloser
	wrote  text
}

// come comes in with a key and opens a session on a terminal of 80 by 24 in an environment.
func (r *running) come(key gossh.Signer, env ...string) *terminal {
	r.t.Helper()
	return r.comeAs("painter", key, env...)
}

func (r *running) comeAs(name string, key gossh.Signer, env ...string) *terminal {
	r.t.Helper()
	client, err := r.dial(name, key)
	require.NoError(r.t, err, r.says)
	r.t.Cleanup(func() { client.Close() })
	x := &terminal{t: r.t, client: client}
	x.in, err = client.NewSession()
	require.NoError(r.t, err)
	for _, v := range env {
		name, value, _ := strings.Cut(v, "=")
		require.NoError(r.t, x.in.Setenv(name, value), v)
	}
	require.NoError(r.t, x.in.RequestPty("xterm-256color", 24, 80, gossh.TerminalModes{gossh.IUTF8: 1}))
	x.in.Stdout, x.in.Stderr = &x.wrote, &x.wrote
	x.typed, err = x.in.StdinPipe()
	require.NoError(r.t, err)
	require.NoError(r.t, x.in.Shell())
	return x
}

// keys waits for each text and types what stands behind it.
func (x *terminal) keys(pairs ...string) {
	x.t.Helper()
	for i := 0; i+1 < len(pairs); i += 2 {
		x.wrote.await(x.t, pairs[i])
		_, err := io.WriteString(x.typed, pairs[i+1])
		require.NoError(x.t, err)
	}
}

// code waits for the end of the session and gives its exit code.
func (x *terminal) code() int {
	x.t.Helper()
	ended := make(chan error, 1)
	go func() { ended <- x.in.Wait() }()
	select {
	case err := <-ended:
		var exit *gossh.ExitError
		if err == nil {
			return 0
		}
		require.ErrorAs(x.t, err, &exit)
		return exit.ExitStatus()
	case <-time.After(patience):
		x.t.Fatal("the session does not end")
		return 0
	}
}

// requireClean holds that a terminal was left as it was.
func requireClean(t testing.TB, wrote string) {
	t.Helper()
	for what, on := range map[string]string{"the alternate screen": "1049", "pasting": "2004", "the mouse": "1002", "its rows and columns": "1006"} {
		require.Greater(t, strings.LastIndex(wrote, "\x1b[?"+on+"l"), strings.LastIndex(wrote, "\x1b[?"+on+"h"), what)
	}
	require.Greater(t, strings.LastIndex(wrote, "\x1b[?25h"), strings.LastIndex(wrote, "\x1b[?25l"), "the cursor")
}

// toAnswer is the keys from the first page to the answer, each after what it waits for.
var toAnswer = []string{
	"before you spray", "\r", "What are you spraying", "8", "Which gun", "2", "How warm is the air", "75F\r", "How humid", "45\r", "How warm is the panel", "\r",
	"gauge before the regulator", "90psi\r", "Is this your air line", "\r", "sheet say otherwise", "\r",
}

// filesOf is what stands in the files of a folder, by their names, but for what is kept of this
// machine.
func filesOf(t testing.TB, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.Contains(file, filepath.Join(".local", "state")) {
			return err
		}
		data, err := os.ReadFile(file)
		all[file] = string(data)
		return err
	}))
	return all
}

// awaitKept waits until what is kept of a key holds an answer.
func awaitKept(t testing.TB, file, field, answer string) {
	t.Helper()
	require.Eventually(t, func() bool {
		d, found, err := last.Load(file)
		return err == nil && found && len(d.Answers[field]) == 1 && d.Answers[field][0] == answer
	}, patience, 5*time.Millisecond, "%s in %s", field, file)
}

// firstLine is what a connection is greeted with, empty where it is shut.
func firstLine(c net.Conn) string {
	c.SetReadDeadline(time.Now().Add(patience)) //nolint:errcheck // seen by what is read
	line, _ := bufio.NewReader(c).ReadString('\n')
	return line
}
