package shop

import (
	"hash/fnv"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"

	"github.com/fsnotify/fsnotify"
)

// Stamp is another one once a booth, a gun, a setting, the bands or the painters of a folder have
// changed, by the names, sizes and times of their files. The log does not count.
func Stamp(dir string) uint64 {
	h := fnv.New64a()
	for _, of := range watched(dir) {
		entries, err := os.ReadDir(of)
		if err != nil {
			continue
		}
		io.WriteString(h, of)
		for _, e := range entries {
			info, err := e.Info()
			if err != nil || e.IsDir() || isAside(e.Name()) {
				continue
			}
			io.WriteString(h, e.Name()+" "+strconv.FormatInt(info.Size(), 10)+" "+strconv.FormatInt(info.ModTime().UnixNano(), 10)+"\n")
		}
	}
	return h.Sum64()
}

// watched is the folders of a folder whose files count.
func watched(dir string) []string {
	all := []string{dir, filepath.Join(dir, boothsDir), filepath.Join(dir, gunsDir), filepath.Join(dir, settingsDir)}
	entries, _ := os.ReadDir(all[len(all)-1])
	for _, e := range entries {
		if e.IsDir() && IsID(e.Name()) {
			all = append(all, filepath.Join(dir, settingsDir, e.Name()))
		}
	}
	return all
}

// Watcher tells that something has changed in a folder.
type Watcher struct {
	changed chan struct{}
	over    chan struct{}
	close   sync.Once
}

// How long changes are gathered before they are told, and how often a folder is looked at that
// does not tell of them, as one on a share.
const (
	settles = 100 * time.Millisecond
	polled  = 3 * time.Second
)

// Watch tells of what has changed in a folder since it had a stamp.
func Watch(dir string, since uint64) *Watcher { return watchEvery(dir, since, polled, true) }

func watchEvery(dir string, since uint64, every time.Duration, told bool) *Watcher {
	w := &Watcher{changed: make(chan struct{}, 1), over: make(chan struct{})}
	var tell *fsnotify.Watcher
	if told {
		tell, _ = fsnotify.NewWatcher() // where there is none left the folder is looked at
	}
	go w.run(dir, since, every, tell)
	return w
}

func (w *Watcher) run(dir string, last uint64, every time.Duration, tell *fsnotify.Watcher) {
	var events chan fsnotify.Event
	var errs chan error
	add := func() {
		for _, of := range watched(dir) {
			_ = tell.Add(of) // what cannot be watched is looked at
		}
	}
	if tell != nil {
		defer tell.Close()
		events, errs = tell.Events, tell.Errors
		add()
	}
	tick := time.NewTicker(every)
	defer tick.Stop()
	settled := time.After(0) // for what has changed by now
	for {
		select {
		case <-w.over:
			return
		case e := <-events:
			if !strings.HasPrefix(filepath.Base(e.Name), asideBegin) && settled == nil {
				settled = time.After(settles)
			}
			continue
		case <-errs:
			continue
		case <-settled:
			settled = nil
		case <-tick.C:
		}
		if now := Stamp(dir); now != last {
			last = now
			if tell != nil {
				add()                         // a folder that is new
				settled = time.After(settles) // and what came into it before it was watched
			}
			select {
			case w.changed <- struct{}{}:
			default: // it is to be told already
			}
		}
	}
}

// Wait waits until something has changed; it is false once the watcher is closed.
func (w *Watcher) Wait() bool {
	select {
	case <-w.changed:
		return true
	case <-w.over:
		return false
	}
}

// Close ends the watching.
func (w *Watcher) Close() { w.close.Do(func() { close(w.over) }) }
