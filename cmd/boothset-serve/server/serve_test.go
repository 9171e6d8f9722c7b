//go:build unix

package server

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"boothset/cmd/boothset/command"
	"boothset/presets/last"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// Each key has a place, a language and kept answers of its own, on the one shop; coming in again
// goes on where it was left, and what is left behind is the answer.
func TestEachHasTheirOwnPlaceAndLanguage(t *testing.T) {
	one, two := newKey(t), newKey(t)
	dir := home(t, one, two)
	shop := filepath.Join(dir, ".config", "boothset", "shop.toml")
	require.NoError(t, os.WriteFile(shop, []byte("[line]\nsupply = \"93psi\"\n"), 0o600))
	r := serve(t, dir)
	first, second := r.come(one), r.come(two, "LANG=es_MX.UTF-8")
	first.keys("before you spray", "\r", "What are you spraying", "8", "Which gun", "2", "How warm is the air", "75F\r", "How humid", "45\r", "How warm is the panel", "\r", "93", "\x03")
	second.keys("antes de pintar", "\r", "pintar o aplicar", "7")
	awaitKept(t, kept(dir, two), "coat", "single-stage")
	require.Equal(t, command.ExitStopped, first.code())
	requireClean(t, first.wrote.String())
	awaitKept(t, kept(dir, one), "temp", "75F")

	again := r.come(one)
	again.keys("before you spray", "\r", "A moment ago you left", "\r", "93", "90psi\r", "Is this your air line", "\r", "sheet say otherwise", "\r", "INLET VALVE", "q")
	require.Zero(t, again.code())
	requireClean(t, again.wrote.String())
	left := again.wrote.String()[strings.LastIndex(again.wrote.String(), "\x1b[?1049l"):]
	require.Contains(t, left, "31 psi")
	require.NotContains(t, strings.ReplaceAll(left, "\r\n", ""), "\n", "each row begins at the left")
	d, _, err := last.Load(kept(dir, two))
	require.NoError(t, err)
	require.Equal(t, []string{"single-stage"}, d.Answers["coat"])
	require.NoFileExists(t, last.File(inHome(dir)), "what is kept of this machine's own person is another's")
}

// Who says nothing of their language is spoken to as it is spoken here, or as their name says; a
// terminal says by its modes that it has all characters.
func TestTheLanguageOfWhoSaysNothing(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key), "--lang", "es", "--units", "metric")
	x := r.come(key)
	x.keys("antes de pintar", "\r")
	x.wrote.await(t, "─")
	r.come(key, "LC_CTYPE=UTF-8").keys("antes de pintar", "\r")
	r.comeAs("en", key, "LANG=es_ES.UTF-8").keys("before you spray", "\r")
	r.comeAs("es", key, "LANG=en_US.UTF-8").keys("antes de pintar", "\r", "métric", "\x03")
	ascii := r.come(key, "LANG=en_US")
	ascii.keys("before you spray", "\r", "What are you spraying", "\x03")
	require.NotContains(t, ascii.wrote.String(), "─")
}

// The terminal's kind and NO_COLOR decide the colours, which are the terminal's own sixteen.
func TestColoursAreAsTheClientSays(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	x := r.come(key)
	x.keys("before you spray", "\r", "What are you spraying", "\x03")
	require.Contains(t, x.wrote.String(), "\x1b[1;96m")
	require.NotContains(t, x.wrote.String(), "\x1b[38;")
	plain := r.come(key, "NO_COLOR=1")
	plain.keys("before you spray", "\r", "What are you spraying", "\x03")
	require.NotRegexp(t, "\x1b\\[[0-9;]+m", plain.wrote.String())
	wrong := r.come(key, "BOOTHSET_COLOURS=pink")
	wrong.wrote.await(t, "choose dark, light, contrast or none")
	require.Equal(t, command.ExitBadInput, wrong.code())
}

// Only a key of the file comes in, under any name; there is no other way.
func TestNobodyComesInWithoutAKey(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	_, err := r.dial("root", newKey(t))
	require.ErrorContains(t, err, "unable to authenticate")
	for name, way := range map[string]gossh.AuthMethod{
		"a password": gossh.Password("boothset"),
		"questions": gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) {
			t.Error("nothing is asked")
			return nil, nil
		}),
	} {
		_, err := gossh.Dial("tcp", r.at, &gossh.ClientConfig{User: "painter", Auth: []gossh.AuthMethod{way}, HostKeyCallback: gossh.InsecureIgnoreHostKey()})
		require.ErrorContains(t, err, "no supported methods remain", name)
		require.ErrorContains(t, err, "attempted methods [none]", name)
	}
	require.Equal(t, 0, r.end(syscall.SIGTERM))
	require.Contains(t, r.says.String(), "3 connections came to nothing")
}

// All that SSH has besides a terminal is refused: commands, files, forwarding of ports, windows
// and agents, variables, a second session; and after all that the session goes on.
func TestThereIsNothingButTheAssistant(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	client, err := r.dial("painter", key)
	require.NoError(t, err)
	defer client.Close()
	_, err = client.Listen("tcp", "127.0.0.1:0")
	assert.Error(t, err)
	_, err = client.Dial("tcp", r.at)
	assert.ErrorContains(t, err, "unsupported channel type")
	_, _, err = client.OpenChannel("direct-streamlocal@openssh.com", nil)
	assert.Error(t, err)

	s, err := client.NewSession()
	require.NoError(t, err)
	for _, request := range []string{"exec", "subsystem", "x11-req", "auth-agent-req@openssh.com", "signal", "break", "eow@openssh.com", "xon-xoff"} {
		done, err := s.SendRequest(request, true, gossh.Marshal(struct{ What string }{"sftp"}))
		require.NoError(t, err, request)
		assert.False(t, done, request)
	}
	for _, v := range []string{"PATH=/tmp", "HOME=/tmp", "BOOTHSET_SHOP=/tmp", "XDG_STATE_HOME=/tmp", "LD_PRELOAD=x", "TERM=x", "LANG=" + strings.Repeat("e", 65), "LANG=e\x1bs", "LC_ALL=e s"} {
		name, value, _ := strings.Cut(v, "=")
		assert.Error(t, s.Setenv(name, value), "%q", v)
	}
	assert.NoError(t, s.Setenv("LC_MESSAGES", "es"))
	assert.Error(t, s.RequestPty(strings.Repeat("x", 65), 24, 80, nil))
	assert.Error(t, s.RequestPty("x\x1b", 24, 80, nil))
	require.NoError(t, s.RequestPty("xterm", 24, 80, nil))
	var wrote text
	s.Stdout = &wrote
	require.NoError(t, s.Shell())
	_, err = client.NewSession()
	assert.ErrorContains(t, err, "prohibited")
	wrote.await(t, "antes de pintar")
	done, err := s.SendRequest("exec", true, gossh.Marshal(struct{ What string }{"id"}))
	require.NoError(t, err)
	assert.False(t, done)
}

// A session has no shell and no files of this machine: ctrl+z and w do nothing there.
func TestASessionNeitherPausesNorWritesFiles(t *testing.T) {
	key := newKey(t)
	dir := home(t, key)
	before, here := filesOf(t, dir), filesOf(t, ".")
	r := serve(t, dir)
	x := r.come(key)
	x.keys(toAnswer...)
	x.keys("INLET VALVE", "w\x1ay", "copied", "q") // the clipboard is the terminal's own
	require.Zero(t, x.code())
	require.Equal(t, 1, strings.Count(x.wrote.String(), "\x1b[?1049h"))
	require.Contains(t, x.wrote.String(), "\x1b]52;c;")
	require.Equal(t, before, filesOf(t, dir))
	require.Equal(t, here, filesOf(t, "."), "where the server was started")
}

func TestASessionWithoutATerminalIsTold(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	client, err := r.dial("es", key)
	require.NoError(t, err)
	defer client.Close()
	s, err := client.NewSession()
	require.NoError(t, err)
	var says text
	s.Stderr = &says
	require.NoError(t, s.Shell())
	var exit *gossh.ExitError
	require.ErrorAs(t, s.Wait(), &exit)
	require.Equal(t, command.ExitFailed, exit.ExitStatus())
	require.Contains(t, says.String(), "necesita una terminal")
}

// The window is laid out as it is, however it changes; one that does not say its size is usual,
// one that says too much is laid out as far as anything is.
func TestAWindowThatChanges(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	x := r.come(key)
	x.keys("before you spray", "\r", "What are you spraying", "")
	require.NoError(t, x.in.WindowChange(8, 30))
	x.wrote.await(t, "too")
	require.NoError(t, x.in.WindowChange(50, 132))
	x.wrote.await(t, strings.Repeat("─", 132))
	require.NoError(t, x.in.WindowChange(1<<31, 1<<31))
	x.wrote.await(t, strings.Repeat("─", 300))
	require.NotContains(t, x.wrote.String(), strings.Repeat("─", 301))
	for range 500 { // far faster than they are drawn
		require.NoError(t, x.in.WindowChange(30, 90))
		require.NoError(t, x.in.WindowChange(24, 80))
	}
	require.NoError(t, x.in.WindowChange(0, 0))
	x.keys("What are you spraying", "8", "Which gun", "\x03")
	require.Equal(t, command.ExitStopped, x.code())
}
