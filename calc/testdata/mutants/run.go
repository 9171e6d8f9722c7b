package main

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// judges are the packages whose tests may see a mutant.
var judges = []string{"./calc/...", "./presets/...", "./cmd/boothset/command/..."}

// fate is what became of a mutant.
type fate uint8

const (
	lived fate = iota
	seen
	endless // its tests did not come to an end
	unbuilt // it is not Go
)

// patience is how long a package's tests may take with a mutant in it, over several times
// what any takes without.
const patience = time.Minute

// bench is a copy of the module to try mutants on, so that what is worked on meanwhile,
// and what failing tests leave behind, does not matter.
type bench struct {
	dir   string // of the copy
	temp  string // of the mutants
	tests []tested
}

// tested is a package with tests: what they and the package stand on, whether they know
// rapid's flags, and how long they take as they are.
type tested struct {
	pkg   string
	deps  map[string]bool
	rapid bool
	took  time.Duration
}

func newBench() (*bench, error) {
	temp, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	b := &bench{dir: filepath.Join(temp, "module"), temp: temp}
	if err := os.CopyFS(b.dir, module{os.DirFS(".")}); err != nil {
		return nil, errors.Join(err, b.close())
	}
	if err := b.list(); err != nil {
		return nil, errors.Join(err, b.close())
	}
	return b, nil
}

func (b *bench) close() error { return os.RemoveAll(b.temp) }

// list finds the packages with tests and what they stand on.
func (b *bench) list() error {
	cmd := exec.Command(goTool(), append([]string{"list", "-test", "-deps", "-json=ImportPath,Deps"}, judges...)...)
	cmd.Dir = b.dir
	var wrong strings.Builder
	cmd.Stderr = &wrong
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("go list: %w\n%s", err, wrong.String())
	}
	dec := json.NewDecoder(strings.NewReader(string(out)))
	for {
		var p struct {
			ImportPath string
			Deps       []string
		}
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
		name, isTest := strings.CutSuffix(p.ImportPath, ".test")
		if !isTest {
			continue
		}
		t := tested{pkg: strings.TrimPrefix(name, "boothset/"), deps: map[string]bool{}}
		for _, d := range p.Deps {
			d, _, _ = strings.Cut(d, " ") // "boothset/calc [boothset/calc.test]"
			t.deps[strings.TrimPrefix(d, "boothset/")] = true
			t.rapid = t.rapid || d == "pgregory.net/rapid"
		}
		b.tests = append(b.tests, t)
	}
}

// baseline runs every judge on the module as it is, and puts the quickest first.
func (b *bench) baseline() error {
	for i := range b.tests {
		t := &b.tests[i]
		start := time.Now()
		f, out, err := b.test(*t, "")
		if err != nil {
			return err
		}
		if f != lived {
			return fmt.Errorf("the tests of %s fail as they are:\n%s", t.pkg, out)
		}
		t.took = time.Since(start)
	}
	slices.SortStableFunc(b.tests, func(x, y tested) int { return cmp.Compare(x.took, y.took) })
	return nil
}

// try puts the i-th mutant to its own package's tests and then to those above it.
func (b *bench) try(i int, m mutant) (result, error) {
	source, err := os.ReadFile(filepath.Join(b.dir, m.file))
	if err != nil {
		return result{}, err
	}
	changed := filepath.Join(b.temp, fmt.Sprintf("%d.go", i))
	overlay := filepath.Join(b.temp, fmt.Sprintf("%d.json", i))
	replace, err := json.Marshal(map[string]any{"Replace": map[string]string{filepath.Join(b.dir, m.file): changed}})
	if err != nil {
		return result{}, err
	}
	if err := errors.Join(os.WriteFile(changed, m.apply(source), 0o600), os.WriteFile(overlay, replace, 0o600)); err != nil {
		return result{}, err
	}
	own := func(t tested) bool { return t.pkg == m.pkg() }
	var order []tested
	if i := slices.IndexFunc(b.tests, own); i >= 0 {
		order = append(order, b.tests[i])
	}
	for _, t := range b.tests {
		if !own(t) && t.deps[m.pkg()] {
			order = append(order, t)
		}
	}
	for _, t := range order {
		f, _, err := b.test(t, overlay)
		if err != nil || f != lived {
			return result{m, f, t.pkg}, err
		}
	}
	return result{m, lived, ""}, nil
}

// goTool is the go of the Makefile's GO, or the one on the path.
func goTool() string { return cmp.Or(os.Getenv("GO"), "go") }

// test runs the tests of a package with an overlay, where there is one.
func (b *bench) test(t tested, overlay string) (fate, string, error) {
	args := []string{"test", "-vet=off", "-failfast", "-count=1", "-timeout=" + patience.String()}
	if overlay != "" {
		args = append(args, "-overlay="+overlay)
	}
	args = append(args, "./"+t.pkg)
	if t.rapid {
		args = append(args, "-rapid.nofailfile", "-rapid.shrinktime=1ms")
	}
	// The tests' own limit ends them; this one is for what they may have started.
	ctx, cancel := context.WithTimeout(context.Background(), 3*patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, goTool(), args...)
	cmd.Dir = b.dir
	out, err := cmd.CombinedOutput()
	text := string(out)
	var exit *exec.ExitError
	switch {
	case err == nil:
		return lived, text, nil
	case !errors.As(err, &exit):
		return lived, text, err
	case strings.Contains(text, "[build failed]"), strings.Contains(text, "[setup failed]"):
		return unbuilt, text, nil
	case ctx.Err() != nil, strings.Contains(text, "panic: test timed out"):
		return endless, text, nil
	}
	return seen, text, nil
}
