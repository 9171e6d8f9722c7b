package server

import (
	"context"
	"fmt"
	"io"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"
	"syscall"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/cmd/boothset/command"
	"boothset/presets/last"
	"boothset/presets/words"

	"github.com/charmbracelet/ssh"
	"github.com/charmbracelet/wish"
	gossh "golang.org/x/crypto/ssh"
)

// server is what is running.
type server struct {
	*command.Serve
	keys   *keys
	folder string // of what it keeps

	mu       sync.Mutex
	open     map[*session]bool
	stopping bool
	all      sync.WaitGroup // of the sessions

	log  sync.Mutex
	away int // connections turned away that were not told of yet
}

// Run serves until a signal stops it, and gives the exit code. A second signal does not wait for
// the sessions.
func Run(s *command.Serve) int {
	signals := make(chan os.Signal, 2)
	signal.Notify(signals, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP)
	defer signal.Stop(signals)
	return run(s, signals)
}

func run(s *command.Serve, signals <-chan os.Signal) int {
	state := last.File(s.Getenv)
	if state == "" {
		return s.Refuse("shop-no-state")
	}
	v := &server{Serve: s, folder: filepath.Join(filepath.Dir(state), "serve"), open: map[*session]bool{}}
	v.keys = &keys{file: s.Keys, warn: s.Warn}
	if v.keys.file == "" {
		v.keys.file = keysFile(s.Getenv)
	}
	if f := v.keys.load(); f != nil {
		return s.Refuse(f.id, f.figures...)
	}
	text, key, f := hostKey(v.folder)
	if f != nil {
		return s.Refuse(f.id, f.figures...)
	}
	l, err := net.Listen("tcp", addressOf(s.Listen))
	if err != nil {
		return s.Refuse("serve-cannot-listen", calc.GivenFigure("address", s.Listen), calc.GivenFigure("error", err.Error()))
	}
	library, err := wish.NewServer(wish.WithHostKeyPEM(text), wish.WithVersion("boothset"),
		wish.WithPublicKeyAuth(func(_ ssh.Context, key ssh.PublicKey) bool {
			_, ok := v.keys.name(key)
			return ok
		}))
	if err != nil {
		return s.Refuse("serve-cannot-listen", calc.GivenFigure("address", s.Listen), calc.GivenFigure("error", err.Error()))
	}
	v.narrow(library)

	v.tell("serve-open", calc.TextFigure("address", l.Addr().String()), calc.CountFigure("keys", v.keys.count()), calc.TextFigure("fingerprint", gossh.FingerprintSHA256(key.PublicKey())))
	over := make(chan error, 1)
	go func() { over <- library.Serve(newGate(l, v.turnedAway)) }()
	select {
	case err = <-over: // it was not stopped: the system took the address away
		v.stop(library, signals)
		return s.Refuse("serve-cannot-listen", calc.GivenFigure("address", s.Listen), calc.GivenFigure("error", err.Error()))
	case <-signals:
	}
	v.stop(library, signals)
	v.tell("serve-stopped")
	return command.ExitAnswered
}

// addressOf is where to listen: a port alone is one of this machine's own address.
func addressOf(listen string) string {
	if !strings.Contains(listen, ":") {
		host, _, _ := net.SplitHostPort(command.ListenUsual)
		return net.JoinHostPort(host, listen)
	}
	return listen
}

// narrow leaves of what the library can do a session on a terminal, for who has a key.
func (s *server) narrow(library *ssh.Server) {
	library.Handler = s.handle
	library.ChannelHandlers = map[string]ssh.ChannelHandler{"session": openSession}
	library.RequestHandlers = map[string]ssh.RequestHandler{}
	library.SubsystemHandlers = map[string]ssh.SubsystemHandler{}
	library.ConnCallback = func(ctx ssh.Context, c net.Conn) net.Conn {
		ctx.SetValue(connKey{}, c)
		return c
	}
	library.ServerConfigCallback = func(ctx ssh.Context) *gossh.ServerConfig {
		good := gossh.SupportedAlgorithms() // the library's usual ones have weak ones among them
		return &gossh.ServerConfig{
			Config:                  gossh.Config{KeyExchanges: good.KeyExchanges, Ciphers: good.Ciphers, MACs: good.MACs},
			PublicKeyAuthAlgorithms: good.PublicKeyAuths,
			AuthLogCallback: func(_ gossh.ConnMetadata, _ string, err error) {
				if err == nil {
					c := connOf(ctx)
					c.gate.loggedIn(c)
				}
			},
		}
	}
	library.ConnectionFailedCallback = func(net.Conn, error) { s.turnedAway() }
}

// connKey is what the connection of a context stands under.
type connKey struct{}

func connOf(ctx ssh.Context) *conn { return ctx.Value(connKey{}).(*conn) }

// enter counts a session in, false where there is no room for it.
func (s *server) enter(x *session) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stopping || len(s.open) == mostSessions {
		return false
	}
	s.open[x] = true
	s.all.Add(1)
	return true
}

func (s *server) leave(x *session) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.open, x)
	s.all.Done()
}

// recovered ends a session alone that a fault of the program's own ended.
func (s *server) recovered(x *session) {
	if wrong := recover(); wrong != nil {
		s.tell("serve-fault", calc.GivenFigure("error", fmt.Sprint(wrong)))
		s.write(string(debug.Stack()))
		_ = x.Exit(command.ExitFailed)
	}
}

// stop lets nobody in any more, tells the sessions to end and waits for them as long as that may
// take, or until another signal comes.
func (s *server) stop(library *ssh.Server, signals <-chan os.Signal) {
	s.mu.Lock()
	s.stopping = true
	for x := range s.open {
		x.end(endStop)
	}
	s.mu.Unlock()
	ctx, cancel := context.WithTimeout(context.Background(), stopTime)
	defer cancel()
	go func() {
		select {
		case <-signals:
			cancel()
		case <-ctx.Done():
		}
	}()
	_ = library.Shutdown(ctx) // where it takes too long the rest is shut
	_ = library.Close()
	written := make(chan struct{})
	go func() {
		s.all.Wait()
		close(written)
	}()
	select {
	case <-written:
	case <-time.After(keepTime):
	}
	s.tellAway()
}

// turnedAway counts a connection that came to nothing. They are told of together: whoever floods
// this machine does not fill its disk.
func (s *server) turnedAway() {
	s.log.Lock()
	defer s.log.Unlock()
	if s.away++; s.away == 1 {
		time.AfterFunc(tellEvery, s.tellAway)
	}
}

func (s *server) tellAway() {
	s.log.Lock()
	n := s.away
	s.away = 0
	s.log.Unlock()
	if n > 0 {
		s.tell("serve-turned-away", calc.CountFigure("n", n))
	}
}

// tell says with the time what happens.
func (s *server) tell(id string, f ...calc.Figure) {
	s.write(time.Now().Format(time.DateTime) + " " + s.Say(id, f...) + "\n")
}

func (s *server) write(text string) {
	s.log.Lock()
	defer s.log.Unlock()
	_, _ = io.WriteString(s.Err(), text) // there is nowhere else to say that it failed
}

// say says a sentence that is no answer.
func say(to io.Writer, w *words.Words, id string, f ...calc.Figure) {
	fmt.Fprintln(to, w.Text(unit.US, id, f))
}
