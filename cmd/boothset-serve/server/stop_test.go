//go:build unix

package server

import (
	"io"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"boothset/cmd/boothset/command"
	"boothset/presets/demo"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// aShop is a home with keys and an invented shop's folder.
func aShop(t *testing.T, keys ...gossh.Signer) string {
	t.Helper()
	dir := home(t, keys...)
	r, err := question.Open(inHome(dir), words.English())
	require.NoError(t, err)
	require.NoError(t, demo.Make(filepath.Join(dir, ".local", "share", "boothset", "shop"), r, time.Date(2031, 3, 14, 0, 0, 0, 0, time.UTC)))
	return dir
}

// However the server ends, what was answered is kept, the shop's folder is as it was, and the next
// server offers each their own. One that is told to stop tells the sessions, leaves their
// terminals clean and ends well.
func TestTheServerEndsWithSessionsOpen(t *testing.T) {
	for name, signal := range map[string]syscall.Signal{"SIGTERM": syscall.SIGTERM, "SIGINT": syscall.SIGINT, "SIGHUP": syscall.SIGHUP, "SIGKILL": syscall.SIGKILL} {
		t.Run(name, func(t *testing.T) {
			keys := []gossh.Signer{newKey(t), newKey(t), newKey(t)}
			dir := aShop(t, keys...)
			before := filesOf(t, dir)
			r := serve(t, dir)
			var all []*terminal
			coats := []string{"clear", "single-stage", "clear"}
			for i, key := range keys {
				x := r.come(key)
				x.keys("before you spray", "\r", "Which booth are you in", "1", "Which gun is it", "1", "What are you spraying", []string{"8", "7", "8"}[i], "How warm is the air", "")
				awaitKept(t, kept(dir, key), "coat", coats[i])
				all = append(all, x)
			}
			waiting, err := net.Dial("tcp", r.at)
			require.NoError(t, err)
			defer waiting.Close()
			require.Contains(t, firstLine(waiting), "SSH-2.0-boothset")

			code := r.end(signal)
			if signal == syscall.SIGKILL {
				require.Equal(t, -1, code)
			} else {
				require.Zero(t, code, r.says)
				for _, x := range all {
					require.Equal(t, command.ExitStopped, x.code())
					requireClean(t, x.wrote.String())
					require.Contains(t, x.wrote.String(), "is being stopped")
				}
				require.True(t, strings.HasSuffix(r.says.String(), "Stopped.\n"), r.says)
			}
			require.Equal(t, before, filesOf(t, dir))
			r = serve(t, dir)
			for i, key := range keys {
				d, found, err := last.Load(kept(dir, key))
				require.NoError(t, err)
				require.True(t, found)
				require.Equal(t, coats[i], d.Answers["coat"][0])
				r.come(key).keys("before you spray", "\r", "A moment ago you left", "\r", "How warm is the air", "\x03")
			}
		})
	}
}

// A client that takes nothing more does not keep the server from stopping, nor what it answered
// from being kept.
func TestAStuckClientDoesNotKeepTheServer(t *testing.T) {
	key := newKey(t)
	dir := home(t, key)
	r := serve(t, dir)
	client, err := r.dial("painter", key)
	require.NoError(t, err)
	defer client.Close()
	ch, requests, err := client.OpenChannel("session", nil)
	require.NoError(t, err)
	go gossh.DiscardRequests(requests)
	terminal := gossh.Marshal(struct {
		Term                      string
		Columns, Rows, Wide, High uint32
		Modes                     string
	}{Term: "xterm", Columns: 300, Rows: 100})
	for _, begun := range []func() (bool, error){
		func() (bool, error) { return ch.SendRequest(requestTerminal, true, terminal) },
		func() (bool, error) { return ch.SendRequest(requestBegin, true, nil) },
	} {
		done, err := begun()
		require.NoError(t, err)
		require.True(t, done)
	}
	_, err = ch.Write([]byte("\r8"))
	require.NoError(t, err)
	awaitKept(t, kept(dir, key), "coat", "clear")
	go func() { // far more is drawn than the channel has room for, and nothing of it is read
		for {
			if _, err := ch.Write([]byte(strings.Repeat("?\x1b[B\x1b[B\x1b\x1b[A", 50))); err != nil {
				return
			}
		}
	}()
	time.Sleep(2 * time.Second) // so that it is stuck by then; nothing hangs on it
	require.Zero(t, r.end(syscall.SIGTERM))
	d, found, err := last.Load(kept(dir, key))
	require.NoError(t, err)
	require.True(t, found)
	require.Equal(t, []string{"clear"}, d.Answers["coat"])
}

// requireShut holds that a connection is shut in the end.
func requireShut(t *testing.T, c net.Conn) {
	t.Helper()
	require.NoError(t, c.SetReadDeadline(time.Now().Add(patience)))
	_, err := io.Copy(io.Discard, c)
	require.NotErrorIs(t, err, os.ErrDeadlineExceeded)
}

// Connections that say nothing take no more than their places, and none for long: a hundred of
// them do not keep a key out for good, nor touch who is in.
func TestAFloodOfSilentConnections(t *testing.T) {
	t.Parallel()
	key := newKey(t)
	r := serve(t, home(t, key))
	x := r.come(key)
	x.keys("before you spray", "\r", "What are you spraying", "")
	greeted := 0
	var all []net.Conn
	for range 100 {
		c, err := net.Dial("tcp", r.at)
		require.NoError(t, err)
		defer c.Close()
		if all = append(all, c); firstLine(c) != "" {
			greeted++
		}
	}
	require.Equal(t, mostWaiting, greeted)
	_, err := r.dial("painter", key)
	require.Error(t, err)
	x.keys("What are you spraying", "8", "Which gun", "")
	require.Eventually(t, func() bool {
		client, err := r.dial("painter", key)
		if err != nil {
			return false
		}
		client.Close()
		return true
	}, patience, 100*time.Millisecond)
	for _, c := range all {
		requireShut(t, c)
	}
	x.keys("Which gun", "\x03")
	require.Equal(t, command.ExitStopped, x.code())
}

// From an address that is not this machine's own five may wait at a time.
func TestAFloodFromOneAddress(t *testing.T) {
	addresses, err := net.InterfaceAddrs()
	require.NoError(t, err)
	own := ""
	for _, a := range addresses {
		if ip, ok := a.(*net.IPNet); ok && ip.IP.To4() != nil && !ip.IP.IsLoopback() {
			own = ip.IP.String()
		}
	}
	if own == "" {
		t.Skip("this machine has no address but its own")
	}
	key := newKey(t)
	r := serve(t, home(t, key), "--listen", own+":0")
	greeted := 0
	for range 30 {
		c, err := net.Dial("tcp", r.at)
		require.NoError(t, err)
		defer c.Close()
		if firstLine(c) != "" {
			greeted++
		}
	}
	require.Equal(t, mostOfOne, greeted)
}

// Who logs in and opens no session is shut out, and who sends what is no SSH.
func TestWhoOpensNoSessionIsShutOut(t *testing.T) {
	t.Parallel()
	key := newKey(t)
	r := serve(t, home(t, key))
	client, err := r.dial("painter", key)
	require.NoError(t, err)
	defer client.Close()
	var all []net.Conn
	for _, junk := range []string{"GET / HTTP/1.1\r\n\r\n", "SSH-1.5-old\r\n", "SSH-2.0-x\r\n\xff\xff\xff\xff\xff", "SSH-2.0-x\r\n" + strings.Repeat("\x00", 1<<16)} {
		c, err := net.Dial("tcp", r.at)
		require.NoError(t, err)
		defer c.Close()
		c.Write([]byte(junk)) //nolint:errcheck // it may be shut by then
		all = append(all, c)
	}
	for _, c := range all {
		requireShut(t, c)
	}
	gone := make(chan error, 1)
	go func() { gone <- client.Wait() }()
	select {
	case <-gone:
	case <-time.After(patience):
		t.Fatal("it stays")
	}
	r.come(key).keys("before you spray", "\x03")
}

// Who vanishes without a word leaves what they answered.
func TestWhoVanishesLeavesTheirAnswers(t *testing.T) {
	key := newKey(t)
	dir := home(t, key)
	r := serve(t, dir)
	for range 10 {
		x := r.come(key)
		x.keys("before you spray", "\r")
		require.NoError(t, x.client.Close())
	}
	x := r.come(key)
	x.keys("before you spray", "\r", "What are you spraying", "8", "Which gun", "")
	require.NoError(t, x.client.Close())
	require.Eventually(t, func() bool { return strings.Count(r.says.String(), "Left: terminal-0.") == 11 }, patience, 5*time.Millisecond)
	all, err := last.LoadAll(kept(dir, key)) // whoever vanished first may be seen to last
	require.NoError(t, err)
	require.True(t, slices.ContainsFunc(all, func(d last.Draft) bool { return slices.Equal(d.Answers["coat"], []string{"clear"}) }))
}

// There are so many places; who comes when all are taken is told, and comes in when one has left.
func TestAllPlacesAreTaken(t *testing.T) {
	key := newKey(t)
	r := serve(t, home(t, key))
	var all []*terminal
	for range mostSessions {
		x := r.come(key)
		x.keys("before you spray", "")
		all = append(all, x)
	}
	late := r.come(key)
	require.Equal(t, command.ExitFailed, late.code())
	require.Contains(t, late.wrote.String(), "All 64 places are taken")
	all[7].keys("before you spray", "q")
	require.Zero(t, all[7].code())
	r.come(key).keys("before you spray", "\x03")
}

// A fault of the program itself ends the session that it is in, clean and kept, and no other.
func TestAPanicEndsItsOwnSession(t *testing.T) {
	t.Setenv(panicking, "1")
	one, two := newKey(t), newKey(t)
	dir := home(t, one, two)
	r := serve(t, dir)
	x, other := r.come(one), r.come(two)
	other.keys("before you spray", "\r", "What are you spraying", "")
	x.keys(toAnswer...)
	x.keys("INLET VALVE", "8")
	require.Equal(t, command.ExitFailed, x.code())
	requireClean(t, x.wrote.String())
	require.Contains(t, x.wrote.String(), "panic")
	awaitKept(t, kept(dir, one), "humidity", "45%")
	other.keys("What are you spraying", "8", "Which gun", "\x03")
	require.Equal(t, command.ExitStopped, other.code())
}

// What is pasted without an end takes no more memory than there is room for, and no other session
// waits for it.
func TestAPasteWithoutAnEnd(t *testing.T) {
	one, two := newKey(t), newKey(t)
	dir := home(t, one, two)
	r := serve(t, dir)
	x, other := r.come(one), r.come(two)
	x.keys("before you spray", "\r", "What are you spraying", "8", "Which gun", "\x1b[200~")
	go io.Copy(x.typed, io.LimitReader(letters{}, 64<<20)) //nolint:errcheck // it is cut off
	other.keys("before you spray", "\r", "What are you spraying", "8", "Which gun", "\x03")
	require.Equal(t, command.ExitStopped, other.code())
	require.Equal(t, command.ExitStopped, x.code())
	requireClean(t, x.wrote.String())
	require.Contains(t, x.wrote.String(), "More than 1 MB was sent")
	awaitKept(t, kept(dir, one), "coat", "clear")
}

// letters is endless text.
type letters struct{}

func (letters) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = 'a'
	}
	return len(b), nil
}
