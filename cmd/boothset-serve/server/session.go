package server

import (
	"io"
	"net"
	"path/filepath"
	"slices"
	"sync"
	"time"

	"boothset/calc"
	"boothset/cmd/boothset/assistant"
	"boothset/cmd/boothset/command"
	"boothset/presets/textfile"
	"boothset/presets/words"
	"boothset/tui"

	"github.com/charmbracelet/ssh"
)

// keptFile is where the answers of a key are kept, in a folder of its own.
const keptFile = "last.json"

// Why a session ends that its person did not end, as the sentences for it are called.
const (
	endIdle = "serve-idle"
	endMuch = "serve-much"
	endStop = "serve-stopping"
	endGone = "" // there is nobody left to tell
)

// session is a run of the program on the terminal of one who came in.
type session struct {
	ssh.Session
	conn *conn
	rest time.Duration // for which it may be idle
	idle *time.Timer   // ends it after that

	stop chan struct{} // closed to end it
	once sync.Once     // it is
	why  string        // it was
}

// handle is a session from its beginning to its end.
func (s *server) handle(far ssh.Session) {
	c := connOf(far.Context())
	c.late.Stop()
	defer c.late.Reset(lingerTime)
	who, _ := s.keys.name(far.PublicKey())
	x := &session{Session: far, conn: c, rest: s.Idle, stop: make(chan struct{})}
	defer s.recovered(x)
	terminal, _, has := far.Pty()
	lang, env := s.surroundings(x, terminal)
	switch {
	case !has:
		x.refuse(lang, env, "serve-no-terminal")
		return
	case !s.enter(x):
		x.refuse(lang, env, "serve-full", calc.CountFigure("most", mostSessions))
		return
	}
	defer s.leave(x)
	from, _, _ := net.SplitHostPort(c.RemoteAddr().String())
	s.tell("serve-came", calc.GivenFigure("who", who), calc.TextFigure("from", from))
	defer s.tell("serve-left", calc.GivenFigure("who", who))

	x.idle = time.AfterFunc(s.Idle, func() { x.end(endIdle) })
	defer x.idle.Stop()
	code := s.run(x, lang, env)
	_ = far.Exit(code) // nobody is there where it fails
}

// run is the assistant, in the session's language and environment.
func (s *server) run(x *session, lang string, env func(string) string) (code int) {
	std := command.Stdio{In: &input{x, mostTyped}, Out: x, Err: x.Stderr()}
	return s.Session(std, env, lang, func(a *command.Assistant) int {
		code := assistant.Remote(a, std, env, assistant.Far{
			Remote: tui.Remote{Sizes: x.conn.sizes, Stop: x.stop},
			Width:  func() int { return int(x.conn.width.Load()) },
			Kept:   filepath.Join(s.folder, folderOf(x.PublicKey()), keptFile),
		})
		if x.ended() && x.why != endGone {
			a.Warn(x.why, calc.Figures{calc.TextFigure("time", a.Words.Minutes(x.rest)), calc.TextFigure("most", textfile.Size(mostTyped))})
		}
		return code
	})
}

// surroundings is the language of a session, empty where its environment says it, and the
// environment. Who comes in under the name of a language has that.
func (s *server) surroundings(x *session, terminal ssh.Pty) (lang string, getenv func(string) string) {
	if !x.conn.speaks() {
		lang = s.Lang()
	}
	if slices.Contains(words.Languages(), x.User()) {
		lang = x.User()
	}
	return lang, x.conn.getenv(terminal, s.Getenv)
}

// refuse says why there is no session.
func (x *session) refuse(lang string, getenv func(string) string, id string, f ...calc.Figure) {
	w, ok := words.For(lang)
	if !ok {
		w, _ = words.For(words.LocaleOf(getenv).Lang)
	}
	say(x.Stderr(), w, id, f...)
	_ = x.Exit(command.ExitFailed)
}

// end ends the session, in time, and keeps why.
func (x *session) end(why string) {
	x.once.Do(func() {
		x.why = why
		close(x.stop)
		time.AfterFunc(leaveTime, func() { _ = x.conn.Close() }) // whose client takes nothing any more
	})
}

// ended reports whether the session was ended from here.
func (x *session) ended() bool {
	select {
	case <-x.stop:
		return true
	default:
		return false
	}
}

// input is what is typed in a session. Where it ends nobody is there any more. It has a limit: the
// library keeps what is pasted until its end comes.
type input struct {
	*session
	left int // bytes that may still come
}

func (i *input) Read(b []byte) (int, error) {
	if i.left == 0 {
		i.end(endMuch)
		return 0, io.EOF
	}
	n, err := i.session.Read(b[:min(len(b), i.left)])
	if i.left -= n; n > 0 {
		i.idle.Reset(i.rest)
	}
	if err != nil {
		i.end(endGone)
	}
	return n, err
}
