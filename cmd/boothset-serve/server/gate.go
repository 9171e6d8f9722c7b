package server

import (
	"net"
	"net/netip"
	"sync"
	"sync/atomic"
	"time"

	"boothset/tui"
)

// gate is the listener: it takes no more connections than the limits say, and shuts those that
// do not log in, or open no session, in time.
type gate struct {
	net.Listener
	turnedAway func()

	mu      sync.Mutex
	open    map[*conn]bool // true while it has not logged in
	waiting map[netip.Prefix]int
	shut    bool
}

func newGate(l net.Listener, turnedAway func()) *gate {
	return &gate{Listener: l, turnedAway: turnedAway, open: map[*conn]bool{}, waiting: map[netip.Prefix]int{}}
}

// Accept is the next connection that there is room for; others are shut at once.
func (g *gate) Accept() (net.Conn, error) {
	for {
		c, err := g.Listener.Accept()
		if err != nil {
			return nil, err
		}
		if in := g.let(c); in != nil {
			return in, nil
		}
		_ = c.Close() // nobody waits for it
		g.turnedAway()
	}
}

// let counts a connection, nil where there is no room for it.
func (g *gate) let(c net.Conn) *conn {
	from := placeOf(c.RemoteAddr())
	g.mu.Lock()
	defer g.mu.Unlock()
	all := 0
	for _, n := range g.waiting {
		all += n
	}
	switch {
	case g.shut, all >= mostWaiting, len(g.open) >= mostWaiting+mostSessions:
		return nil
	case !from.Addr().IsLoopback() && g.waiting[from] >= mostOfOne:
		return nil
	}
	in := &conn{Conn: c, gate: g, from: from, sizes: make(chan tui.Size, 1), env: map[string]string{}}
	in.late = time.AfterFunc(loginTime, func() { _ = in.Close() }) // it is of no use any more
	g.open[in] = true
	g.waiting[from]++
	return in
}

// placeOf is whom an address counts for: of IPv6 a whole network, since its machines have as many
// addresses as they like.
func placeOf(a net.Addr) netip.Prefix {
	at, err := netip.ParseAddrPort(a.String())
	if err != nil {
		return netip.Prefix{} // all that are not known count as one
	}
	ip, bits := at.Addr().Unmap().WithZone(""), 64
	if ip.Is4() {
		bits = 32
	}
	if ip.IsLoopback() {
		bits = ip.BitLen()
	}
	p, _ := ip.Prefix(bits) // it has as many
	return p
}

// loggedIn no longer counts a connection as one that has not logged in.
func (g *gate) loggedIn(c *conn) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.open[c] {
		g.open[c] = false
		g.less(c.from)
		c.late.Reset(loginTime) // for its session
	}
}

func (g *gate) less(from netip.Prefix) {
	if g.waiting[from]--; g.waiting[from] == 0 {
		delete(g.waiting, from)
	}
}

// left forgets a connection.
func (g *gate) left(c *conn) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.open[c] {
		g.less(c.from)
	}
	delete(g.open, c)
}

// Close takes no more connections, and shuts those that have not logged in.
func (g *gate) Close() error {
	err := g.Listener.Close()
	g.mu.Lock()
	g.shut = true
	var waiting []*conn
	for c, is := range g.open {
		if is {
			waiting = append(waiting, c)
		}
	}
	g.mu.Unlock()
	for _, c := range waiting {
		_ = c.Close()
	}
	return err
}

// conn is a connection, with what its client said of its terminal.
type conn struct {
	net.Conn
	gate *gate
	from netip.Prefix
	late *time.Timer // shuts it
	used atomic.Bool // its one session was asked for

	sizes chan tui.Size     // of the window, the last one alone
	width atomic.Int64      // of it
	mu    sync.Mutex        // of env
	env   map[string]string // what its client set
}

// Close shuts the connection, as often as it is called.
func (c *conn) Close() error {
	c.gate.left(c)
	c.late.Stop()
	return c.Conn.Close()
}

// resize tells of the window's size. One goroutine does, so that there is room for it.
func (c *conn) resize(s tui.Size) {
	c.width.Store(int64(s.Columns))
	select {
	case <-c.sizes:
	default:
	}
	c.sizes <- s
}
