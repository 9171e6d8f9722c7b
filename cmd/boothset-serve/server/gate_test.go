package server

import (
	"errors"
	"net"
	"net/netip"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// knocker is a connection from an address, which is open until it is closed.
type knocker struct {
	net.Conn
	from string
	shut chan struct{}
	once sync.Once
}

func (k *knocker) RemoteAddr() net.Addr {
	return net.TCPAddrFromAddrPort(netip.MustParseAddrPort(k.from))
}

func (k *knocker) Close() error {
	k.once.Do(func() { close(k.shut) })
	return nil
}

func (k *knocker) isShut() bool {
	select {
	case <-k.shut:
		return true
	default:
		return false
	}
}

// knocks is a listener that connections come to from a channel.
type knocks struct {
	come chan net.Conn
	over chan struct{}
}

func (l *knocks) Accept() (net.Conn, error) {
	select {
	case c := <-l.come:
		return c, nil
	case <-l.over:
		return nil, net.ErrClosed
	}
}

func (l *knocks) Close() error   { close(l.over); return nil }
func (l *knocks) Addr() net.Addr { return nil }

// street is a gate with what it let in.
type street struct {
	*gate
	t    *testing.T
	l    *knocks
	in   map[*knocker]*conn
	away int
}

func newStreet(t *testing.T) *street {
	s := &street{t: t, l: &knocks{make(chan net.Conn), make(chan struct{})}, in: map[*knocker]*conn{}}
	s.gate = newGate(s.l, func() { s.away++ })
	go func() {
		for {
			c, err := s.Accept()
			if err != nil {
				return
			}
			in := c.(*conn)
			s.in[in.Conn.(*knocker)] = in
		}
	}()
	return s
}

// knock comes from an address, and gives the connection where it was let in.
func (s *street) knock(from string) (k *knocker, in *conn) {
	k = &knocker{from: from, shut: make(chan struct{})}
	s.l.come <- k
	synctest.Wait()
	require.Equal(s.t, s.in[k] == nil, k.isShut(), from)
	return k, s.in[k]
}

// Of a hundred silent connections twenty are kept, for ten seconds; then others are let in.
func TestSilentConnectionsTakeNoMoreThanTheirPlaces(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newStreet(t)
		defer s.Close()
		var first []*knocker
		for range 100 {
			if k, in := s.knock("127.0.0.1:4000"); in != nil {
				first = append(first, k)
			}
		}
		require.Len(t, first, 20)
		require.Equal(t, 80, s.away)
		time.Sleep(9 * time.Second)
		for _, k := range first {
			require.False(t, k.isShut())
		}
		_, in := s.knock("127.0.0.1:4000")
		require.Nil(t, in)
		time.Sleep(2 * time.Second)
		synctest.Wait()
		for _, k := range first {
			require.True(t, k.isShut())
		}
		_, in = s.knock("127.0.0.1:4000")
		require.NotNil(t, in)
	})
}

// One address has five of the places, this machine's own excepted; of IPv6 a network counts as one,
// and an address of IPv4 written as one of IPv6 as what it is.
func TestOneAddressHasItsPlaces(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for name, c := range map[string]struct {
			from func(i int) string
			in   int
		}{
			"one address":       {func(int) string { return "192.0.2.7:1" }, 5},
			"its other ports":   {func(i int) string { return netip.AddrPortFrom(netip.MustParseAddr("192.0.2.7"), uint16(i)).String() }, 5},
			"written as IPv6":   {func(i int) string { return []string{"192.0.2.7:1", "[::ffff:192.0.2.7]:1"}[i%2] }, 5},
			"a network of IPv6": {func(i int) string { return "[2001:db8::" + string(rune('a'+i%6)) + "]:1" }, 5},
			"with a zone":       {func(i int) string { return "[fe80::" + string(rune('a'+i%6)) + "%eth0]:1" }, 5},
			"two networks":      {func(i int) string { return []string{"[2001:db8:0:1::1]:1", "[2001:db8:0:2::1]:1"}[i%2] }, 10},
			"many addresses": {func(i int) string {
				return netip.AddrPortFrom(netip.AddrFrom4([4]byte{198, 51, 100, byte(i)}), 1).String()
			}, 20},
			"this machine":        {func(int) string { return "127.0.0.1:1" }, 20},
			"this machine, by v6": {func(int) string { return "[::1]:1" }, 20},
		} {
			s := newStreet(t)
			for i := range 40 {
				s.knock(c.from(i))
			}
			assert.Len(t, s.in, c.in, name)
			require.NoError(t, s.Close())
			for k := range s.in { // nothing is left of those that did not log in
				require.True(t, k.isShut(), name)
			}
			require.Empty(t, s.waiting, name)
			require.Empty(t, s.open, name)
		}
	})
}

// Who has logged in no longer counts, and has ten seconds more for a session; whoever leaves makes
// room, once, however often the connection is closed.
func TestWhoLoggedInMakesRoom(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := newStreet(t)
		defer s.Close()
		var all []*conn
		for range mostSessions {
			_, in := s.knock("192.0.2.7:1")
			require.NotNil(t, in)
			s.loggedIn(in)
			s.loggedIn(in)
			in.late.Stop() // as for a session
			all = append(all, in)
		}
		for range mostOfOne {
			_, in := s.knock("192.0.2.7:1")
			require.NotNil(t, in)
		}
		_, in := s.knock("192.0.2.7:1")
		require.Nil(t, in, "these five are waiting")
		for range mostWaiting - mostOfOne {
			_, in := s.knock("127.0.0.1:1")
			require.NotNil(t, in)
		}
		for range 3 {
			require.NoError(t, all[0].Close())
		}
		_, in = s.knock("127.0.0.1:1")
		require.Nil(t, in, "twenty are waiting")
		time.Sleep(loginTime + time.Second)
		synctest.Wait()
		k, in := s.knock("192.0.2.7:1")
		require.NotNil(t, in)
		time.Sleep(loginTime - time.Second)
		s.loggedIn(in)
		time.Sleep(loginTime - time.Second)
		require.False(t, k.isShut())
		time.Sleep(2 * time.Second)
		synctest.Wait()
		require.True(t, k.isShut(), "it opened no session")
		require.Empty(t, s.waiting)
		require.Len(t, s.open, mostSessions-1)
	})
}

// Addresses that are none count as one.
func TestWhatIsNoAddressCountsAsOne(t *testing.T) {
	require.Equal(t, placeOf(&net.UnixAddr{Name: "a"}), placeOf(&net.UnixAddr{Name: "b"}))
}

// What the system cannot do is the library's to wait for.
func TestAnErrorOfTheListenerIsHandedOn(t *testing.T) {
	wrong := errors.New("too many open files")
	_, err := newGate(failing{err: wrong}, func() {}).Accept()
	require.ErrorIs(t, err, wrong)
}

type failing struct {
	net.Listener
	err error
}

func (f failing) Accept() (net.Conn, error) { return nil, f.err }
