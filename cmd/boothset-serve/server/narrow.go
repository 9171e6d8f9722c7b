package server

import (
	"maps"
	"slices"
	"strings"

	"boothset/tui"

	"github.com/charmbracelet/ssh"
	gossh "golang.org/x/crypto/ssh"
)

// The requests of a session's channel that are let through, as RFC 4254 calls them. There is no
// exec, subsystem, signal, break, and no forwarding of an agent or of windows.
const (
	requestTerminal = "pty-req"
	requestSize     = "window-change"
	requestVariable = "env"
	requestBegin    = "shell" // the assistant stands in its place
)

// locale is the variables that say how a person speaks and counts, looks those that say how the
// screen looks: all that a client may set.
var (
	locale = []string{"LC_ALL", "LC_CTYPE", "LC_MESSAGES", "LC_MEASUREMENT", "LC_NUMERIC", "LANG"}
	looks  = []string{"NO_COLOR", "COLORFGBG", tui.EnvColours}
)

// narrowed is a channel that a session was asked for on, of which the library sees no more than a
// terminal needs: it would let a client set any variable, and use its agent.
type narrowed struct {
	gossh.NewChannel
	of *conn
}

// openSession hands the one channel of a connection to the library.
func openSession(srv *ssh.Server, far *gossh.ServerConn, ch gossh.NewChannel, ctx ssh.Context) {
	c := connOf(ctx)
	if c.used.Swap(true) {
		_ = ch.Reject(gossh.Prohibited, "") // it is gone where that fails
		return
	}
	ssh.DefaultSessionHandler(srv, far, narrowed{ch, c}, ctx)
}

// Accept is the channel with the requests that are let through.
func (n narrowed) Accept() (gossh.Channel, <-chan *gossh.Request, error) {
	ch, all, err := n.NewChannel.Accept()
	if err != nil {
		return nil, nil, err
	}
	through := make(chan *gossh.Request)
	go func() {
		defer close(through)
		for r := range all {
			if n.of.takes(r) {
				through <- r
			}
		}
	}()
	return ch, through, nil
}

// takes reports whether the library is to have a request; the others are answered.
func (c *conn) takes(r *gossh.Request) bool {
	done := false
	switch r.Type {
	case requestBegin:
		return true
	case requestTerminal:
		var t struct {
			Term                      string
			Columns, Rows, Wide, High uint32
			Modes                     string
		}
		if gossh.Unmarshal(r.Payload, &t) == nil && fits(t.Term) {
			c.resize(sizeOf(t.Columns, t.Rows))
			return true
		}
	case requestSize:
		var w struct{ Columns, Rows, Wide, High uint32 }
		if done = gossh.Unmarshal(r.Payload, &w) == nil; done {
			c.resize(sizeOf(w.Columns, w.Rows))
		}
	case requestVariable:
		var v struct{ Name, Value string }
		done = gossh.Unmarshal(r.Payload, &v) == nil && c.set(v.Name, v.Value)
	}
	_ = r.Reply(done, nil) // the client is gone where that fails
	return false
}

// usualSize is the window of a terminal that does not say its own.
var usualSize = tui.Size{Columns: 80, Rows: 24}

func sizeOf(columns, rows uint32) tui.Size {
	if columns == 0 || rows == 0 {
		return usualSize
	}
	return tui.Size{Columns: int(columns), Rows: int(rows)}
}

// set takes a variable, false for one that a client may not set, or not so.
func (c *conn) set(name, value string) bool {
	if !slices.Contains(locale, name) && !slices.Contains(looks, name) || !fits(value) {
		return false
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.env[name] = value
	return true
}

// speaks reports whether a client said what language its person speaks.
func (c *conn) speaks() bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.env["LC_ALL"]+c.env["LC_MESSAGES"]+c.env["LANG"] != ""
}

// getenv is the environment of a session on a terminal: what its client said, and all else as it
// is here, the locale too where the client said no language.
func (c *conn) getenv(t ssh.Pty, own func(string) string) func(string) string {
	speaks := c.speaks()
	c.mu.Lock()
	said := maps.Clone(c.env)
	c.mu.Unlock()
	said["TERM"] = t.Term
	for _, name := range slices.Concat(locale, looks) {
		switch _, is := said[name]; {
		case is:
		case speaks || slices.Contains(looks, name):
			said[name] = ""
		case name == "LC_CTYPE" && t.Modes[gossh.IUTF8] != 0: // it has all characters, whatever is set here
			said[name] = "C.UTF-8"
		default:
			said[name] = own(name)
		}
	}
	return func(name string) string {
		if value, is := said[name]; is {
			return value
		}
		return own(name)
	}
}

// fits reports whether what a client says of itself is short and plain.
func fits(s string) bool {
	return len(s) <= longestValue && strings.IndexFunc(s, func(c rune) bool { return c <= ' ' || c > '~' }) < 0
}
