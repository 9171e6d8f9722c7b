//go:build unix

package server

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// BenchmarkFiftySessions is fifty people at the answer, each of whom presses a key that works it out
// anew about twice a second: from a key to its frame, and what a session takes of memory and time.
func BenchmarkFiftySessions(b *testing.B) {
	const (
		many  = 50
		each  = 40 // keys
		pause = time.Second
	)
	var keys []gossh.Signer
	for range many {
		keys = append(keys, newKey(b))
	}
	r := serve(b, home(b, keys...))
	empty := status(b, r.cmd.Process.Pid, "VmRSS")
	var all []*terminal
	for _, key := range keys {
		x := r.come(key)
		x.keys(toAnswer...)
		x.wrote.await(b, "INLET VALVE")
		all = append(all, x)
	}
	time.Sleep(time.Second) // the frames of the last answers
	idle := ticks(b, r.cmd.Process.Pid)
	time.Sleep(5 * time.Second)
	idle = ticks(b, r.cmd.Process.Pid) - idle
	for b.Loop() {
		var mu sync.Mutex
		var took []time.Duration
		var done sync.WaitGroup
		busy, began := ticks(b, r.cmd.Process.Pid), time.Now()
		for i, x := range all {
			done.Go(func() {
				wait := rand.New(rand.NewPCG(1, uint64(i)))
				for n := range each {
					time.Sleep(time.Duration(wait.Int64N(int64(pause))))
					d, err := x.press([]string{"\x1b[C", "\x1b[D"}[n/2%2])
					if err != nil {
						b.Error(err)
						return
					}
					mu.Lock()
					took = append(took, d)
					mu.Unlock()
				}
			})
		}
		done.Wait()
		slices.Sort(took)
		b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "ms/key-median")
		b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "ms/key-95th")
		b.ReportMetric(float64(ticks(b, r.cmd.Process.Pid)-busy)/time.Since(began).Seconds(), "%cpu-busy")
	}
	b.ReportMetric(float64(idle)/5, "%cpu-idle")
	b.ReportMetric(float64(empty), "kB-empty")
	b.ReportMetric(float64(status(b, r.cmd.Process.Pid, "VmRSS")-empty)/many, "kB/session")
}

// press types a key and waits for what is drawn for it.
func (x *terminal) press(key string) (time.Duration, error) {
	had := x.wrote.size()
	began := time.Now()
	if _, err := io.WriteString(x.typed, key); err != nil {
		return 0, err
	}
	for x.wrote.size() == had {
		if time.Since(began) > patience {
			return 0, fmt.Errorf("no frame for %q", key)
		}
		time.Sleep(100 * time.Microsecond)
	}
	return time.Since(began), nil
}

func (w *text) size() int {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.all.Len()
}

// status is a row of what Linux tells of a process, in kB.
func status(b *testing.B, pid int, name string) int {
	b.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		b.Skip("only Linux tells of the memory of others")
	}
	found := regexp.MustCompile(name + `:\s+(\d+) kB`).FindSubmatch(text)
	require.NotNil(b, found)
	kb, err := strconv.Atoi(string(found[1]))
	require.NoError(b, err)
	return kb
}

// ticks is the time that a process has had of the processors, in hundredths of a second.
func ticks(b *testing.B, pid int) int {
	b.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	require.NoError(b, err)
	var user, system int
	_, err = fmt.Sscanf(string(regexp.MustCompile(`^.*\) (?:\S+ ){11}`).ReplaceAll(text, nil)), "%d %d", &user, &system)
	require.NoError(b, err)
	return user + system
}
