// Start measures how long boothset takes to its first frame, beside an empty program on the
// same libraries, and to a plan with its spread, beside its own version and a hello world,
// and what it takes of memory and disk.
//
//	start DIR
//
// DIR holds hello, empty and boothset. The programs are run in turn, so that what else the
// machine does falls on all of them alike; the ratios are what counts.
package main

import (
	"bufio"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/creack/pty"
)

// runs is how often each program is run; a median of them is shown.
const runs = 41

const (
	job     = "plan --coat clear --gun reduced-pressure --temp 72F --humidity 45 --supply 90psi --json"
	request = `{"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":45,"supply":"90psi","spread":true}` + "\n"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "start: give the folder of the programs")
		os.Exit(2)
	}
	if err := measure(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "start:", err)
		os.Exit(1)
	}
}

func measure(dir string) error {
	program := func(name string) string { return filepath.Join(dir, name) }
	var hello, version, plan, empty, assistant []time.Duration
	for range runs {
		for _, r := range []struct {
			to  *[]time.Duration
			run func() (time.Duration, error)
		}{
			{&hello, func() (time.Duration, error) { return toEnd(dir, program("hello")) }},
			{&version, func() (time.Duration, error) { return toEnd(dir, program("boothset"), "version") }},
			{&plan, func() (time.Duration, error) { return toEnd(dir, program("boothset"), strings.Fields(job)...) }},
			{&empty, func() (time.Duration, error) { return toFrame(dir, program("empty"), nil) }},
			{&assistant, func() (time.Duration, error) { return toFrame(dir, program("boothset"), nil) }},
		} {
			took, err := r.run()
			if err != nil {
				return err
			}
			*r.to = append(*r.to, took)
		}
	}
	line := func(what string, ours, theirs []time.Duration, wanted float64) {
		a, b := median(ours), median(theirs)
		fmt.Printf("| %s | %.1f ms | %.1f ms | %.2f | %.2f |\n", what, ms(a), ms(b), float64(a)/float64(b), wanted)
	}
	fmt.Printf("| to (median of %d) | boothset | beside it | ratio | wanted |\n| --- | --- | --- | --- | --- |\n", runs)
	line("the first frame; an empty program's", assistant, empty, 1.25)
	line("a plan with its spread; its version's end", plan, version, 1.8)
	fmt.Printf("\nA hello world ends after %.1f ms.\n", ms(median(hello)))

	var screen, batch int
	if _, err := toFrame(dir, program("boothset"), func(pid int) { screen = peak(pid) }); err != nil {
		return err
	}
	batch, err := peakOfAPlan(dir, program("boothset"))
	if err != nil {
		return err
	}
	info, err := os.Stat(program("boothset"))
	if err != nil {
		return err
	}
	fmt.Printf("\n| size | MB | wanted |\n| --- | --- | --- |\n")
	fmt.Printf("| peak memory at the first frame | %.1f | 12 |\n", float64(screen)/1024)
	fmt.Printf("| peak memory of a plan with its spread | %.1f | 12 |\n", float64(batch)/1024)
	fmt.Printf("| the program, stripped | %.1f | 8 |\n", float64(info.Size())/1e6)
	return nil
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

func median[T cmp.Ordered](d []T) T {
	d = slices.Sorted(slices.Values(d))
	return d[len(d)/2]
}

func command(home, program string, args ...string) *exec.Cmd {
	c := exec.Command(program, args...)
	c.Env = []string{"TERM=xterm-256color", "LANG=C.UTF-8", "HOME=" + home}
	return c
}

// toEnd is how long a program runs.
func toEnd(home, program string, args ...string) (time.Duration, error) {
	c := command(home, program, args...)
	start := time.Now()
	err := c.Run()
	return time.Since(start), err
}

// toFrame is how long a program takes until text stands on the alternate screen of a
// terminal that answers nothing. It is then killed, after look has had its look.
func toFrame(home, program string, look func(pid int)) (time.Duration, error) {
	c := command(home, program)
	start := time.Now()
	near, err := pty.StartWithSize(c, &pty.Winsize{Rows: 40, Cols: 120})
	if err != nil {
		return 0, err
	}
	defer func() {
		c.Process.Kill() //nolint:errcheck // it may have ended
		c.Wait()         //nolint:errcheck // killed
		near.Close()
	}()
	var wrote []byte
	b := make([]byte, 1<<16)
	for {
		n, err := near.Read(b)
		wrote = append(wrote, b[:n]...)
		if _, shown, ok := bytes.Cut(wrote, []byte("\x1b[?1049h")); ok && strings.TrimSpace(ansi.Strip(string(shown))) != "" {
			took := time.Since(start)
			if look != nil {
				look(c.Process.Pid)
			}
			return took, nil
		}
		if err != nil {
			return 0, fmt.Errorf("%s ended without a frame: %w", program, err)
		}
	}
}

// peakOfAPlan is the peak memory, KB, of a batch that has answered one request.
func peakOfAPlan(home, program string) (kb int, err error) {
	c := command(home, program, "plan", "--batch")
	in, err1 := c.StdinPipe()
	out, err2 := c.StdoutPipe()
	if err := errors.Join(err1, err2, c.Start()); err != nil {
		return 0, err
	}
	if _, err := in.Write([]byte(request)); err != nil {
		return 0, err
	}
	if _, err := bufio.NewReaderSize(out, 1<<16).ReadString('\n'); err != nil {
		return 0, err
	}
	kb = peak(c.Process.Pid)
	return kb, errors.Join(in.Close(), c.Wait())
}

// peak is a process's peak memory, KB, 0 where the system does not tell. What the system
// tells of one that has ended counts the one that started it too.
func peak(pid int) int {
	status, err := os.ReadFile(filepath.Join("/proc", strconv.Itoa(pid), "status"))
	if err != nil {
		return 0
	}
	_, rest, _ := bytes.Cut(status, []byte("VmHWM:"))
	fields := bytes.Fields(rest)
	if len(fields) == 0 {
		return 0
	}
	kb, err := strconv.Atoi(string(fields[0]))
	if err != nil {
		return 0
	}
	return kb
}
