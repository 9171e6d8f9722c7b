// Soak runs every fuzz target, the program on a terminal where anything happens, and the
// writers that are killed, in turn and for as long as asked:
//
//	go run ./cmd/boothset/testdata/soak -for 2h -keep bin/soak
//
// An input that a fuzz target fails on goes into its testdata/fuzz, as ever; what another test
// fails on, into the folder that is kept, with the test's output, which says its seed.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// round is the longest time until each has had its turn again.
const round = time.Hour

// shares of a round: of the fuzz targets in all, of the terminal, of all that is killed.
const fuzzShare, terminalShare, killShare = 0.5, 0.25, 0.25

// turn is a test or a fuzz target that gets a share of a round.
type turn struct {
	pkg, name string
	fuzz      bool
	share     float64
	found     bool // an input is kept that it fails on at once
}

func main() {
	long := flag.Duration("for", 2*time.Hour, "how long in all")
	keep := flag.String("keep", filepath.Join("bin", "soak"), "the folder for what is found")
	parallel := flag.Int("parallel", 2, "workers of a fuzz target")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	s := &soak{ctx: ctx, keep: *keep, parallel: *parallel, end: time.Now().Add(*long)}
	if err := s.run(*long); err != nil {
		fmt.Fprintln(os.Stderr, "soak:", err)
		os.Exit(1)
	}
	if s.finds > 0 {
		os.Exit(1)
	}
}

// soak is what all turns share.
type soak struct {
	ctx      context.Context
	keep     string
	parallel int
	end      time.Time
	runs     int
	finds    int
}

func (s *soak) run(long time.Duration) error {
	keep, err := filepath.Abs(s.keep)
	if err != nil {
		return err
	}
	s.keep = keep
	all, err := turns()
	if err != nil {
		return err
	}
	for rounds := int((long + round - 1) / round); rounds > 0; rounds-- {
		end := time.Now().Add(time.Until(s.end) / time.Duration(rounds))
		for i, t := range all {
			if s.over() {
				break
			}
			if err := s.take(t, portion(all[i:], time.Until(end))); err != nil {
				return err
			}
		}
	}
	fmt.Printf("%s: %d found in %d runs of %d tests and fuzz targets\n", time.Now().Format(time.DateTime), s.finds, s.runs, len(all))
	return nil
}

// portion is the first one's part of the time that is left for all: what the others took too
// long for, a build, is taken from each alike.
func portion(all []*turn, left time.Duration) time.Duration {
	sum := 0.0
	for _, t := range all {
		sum += t.share
	}
	return max(time.Second, time.Duration(float64(left)*all[0].share/sum))
}

// over tells whether the time is up or somebody stopped it.
func (s *soak) over() bool { return s.ctx.Err() != nil || !time.Now().Before(s.end) }

// turns is every fuzz target and what is killed and disturbed from outside, each with its share.
func turns() ([]*turn, error) {
	all := []*turn{
		{pkg: "./cmd/boothset", name: "TestAnythingOnATerminal", share: terminalShare},
		{pkg: "./presets/shop", name: "TestKilledWritersLoseNothing", share: killShare / 2},
		{pkg: "./presets/last", name: "TestAKilledProgramLeavesAWholeFile", share: killShare / 2},
	}
	out, err := exec.Command("go", "list", "-f", `{{range .TestGoFiles}}{{$.Dir}}/{{.}}{{"\n"}}{{end}}{{range .XTestGoFiles}}{{$.Dir}}/{{.}}{{"\n"}}{{end}}`, "./...").Output()
	if err != nil {
		return nil, err
	}
	var targets []*turn
	for _, file := range strings.Fields(string(out)) {
		text, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		for _, m := range target.FindAllStringSubmatch(string(text), -1) {
			targets = append(targets, &turn{pkg: filepath.Dir(file), name: m[1], fuzz: true})
		}
	}
	for _, t := range targets {
		t.share = fuzzShare / float64(len(targets))
	}
	return append(all, targets...), nil
}

var target = regexp.MustCompile(`(?m)^func (Fuzz\w+)\(`)

// take is a turn's part of a round: a fuzz target is run once, a test again and again.
func (s *soak) take(t *turn, long time.Duration) error {
	if t.found {
		return nil
	}
	until := time.Now().Add(long)
	fmt.Printf("%s: %s for %v\n", time.Now().Format(time.DateTime), t.name, long.Round(time.Second))
	if t.fuzz {
		out, failed := s.test(t.pkg, "-run=^$", "-fuzz=^"+t.name+"$", "-fuzztime="+long.String(), "-fuzzminimizetime=20x", fmt.Sprint("-parallel=", s.parallel))
		// At the end of its time a target may be told to have failed by its own deadline.
		if failed && (strings.Contains(out, "Failing input") || !strings.Contains(out, "context deadline exceeded")) {
			t.found = true
			return s.found(t, s.folder(t), out)
		}
		return nil
	}
	for time.Now().Before(until) && !s.over() {
		dir := s.folder(t)
		if err := os.MkdirAll(dir, 0o755); err != nil {
			return err
		}
		out, failed := s.test(t.pkg, "-run=^"+t.name+"$", "-count=3", "-timeout=30m", "-artifacts", "-outputdir="+dir)
		if failed {
			if err := s.found(t, dir, out); err != nil {
				return err
			}
		} else if err := os.RemoveAll(dir); err != nil {
			return err
		}
	}
	return nil
}

// test runs go test and tells whether it failed, and not because somebody stopped it.
func (s *soak) test(pkg string, args ...string) (out string, failed bool) {
	s.runs++
	cmd := exec.CommandContext(s.ctx, "go", append(append([]string{"test"}, args...), pkg)...)
	all, err := cmd.CombinedOutput()
	return string(all), err != nil && s.ctx.Err() == nil
}

// folder is a folder of its own for a run.
func (s *soak) folder(t *turn) string {
	return filepath.Join(s.keep, fmt.Sprintf("%s-%s", t.name, time.Now().Format("20060102-150405.000")))
}

// found keeps what a failed run said.
func (s *soak) found(t *turn, dir, out string) error {
	s.finds++
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	fmt.Printf("%s: FOUND, kept in %s\n", time.Now().Format(time.DateTime), dir)
	return os.WriteFile(filepath.Join(dir, "output.txt"), []byte(out), 0o644)
}
