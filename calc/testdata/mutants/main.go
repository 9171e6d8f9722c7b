// Mutants changes the arithmetic of calc by one token at a time and asks its tests whether
// they see it.
//
//	go run ./calc/testdata/mutants [-n 400] [-seed 1] [-only calc/line]
//
// A seed draws n changes (mutants) from all that can be made (find.go). Each is built and
// put to the tests of its own package, then, while it lives, to those of the packages above
// it, the quickest first (run.go). What no test sees is listed: a test is missing, or the
// change changes nothing. Exit 1 where fewer than least percent are killed, 2 where the
// tests fail before anything was changed.
package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"sync"
	"time"
)

func main() {
	n := flag.Int("n", 400, "how many mutants")
	seed := flag.Uint64("seed", 1, "of the draw")
	only := flag.String("only", "calc", "mutate the files below this folder, or this file")
	least := flag.Float64("least", 85, "percent to be killed")
	workers := flag.Int("parallel", 2, "mutants tried at once")
	flag.Parse()
	killed, tried, err := run(*n, *seed, *only, *workers)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(2)
	case percent(killed, tried) < *least:
		fmt.Printf("fewer than %.0f%% killed\n", *least)
		os.Exit(1)
	}
}

// result is what became of a mutant.
type result struct {
	mutant
	fate   fate
	killer string // the package whose tests saw it
}

func run(n int, seed uint64, only string, workers int) (killed, tried int, err error) {
	start := time.Now()
	all, err := findAll(only)
	if err != nil {
		return 0, 0, err
	}
	if len(all) == 0 {
		return 0, 0, errors.New("nothing to change below " + only)
	}
	r := rand.New(rand.NewPCG(seed, 0))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	b, err := newBench()
	if err != nil {
		return 0, 0, err
	}
	defer b.close()
	if err := b.baseline(); err != nil {
		return 0, 0, err
	}
	fmt.Printf("%d mutants can be made, seed %d draws %d; the tests as they are took %s\n", len(all), seed, min(n, len(all)), time.Since(start).Round(time.Second))
	results, err := tryAll(b, all, n, workers)
	if err != nil {
		return 0, 0, err
	}
	report(results)
	for _, r := range results {
		if r.fate != lived {
			killed++
		}
	}
	fmt.Printf("seed %d: %d of %d killed, %.1f%%, in %s\n", seed, killed, len(results), percent(killed, len(results)), time.Since(start).Round(time.Second))
	return killed, len(results), nil
}

// tryAll tries mutants in their order until n of them could be built; the others, such as a
// difference of strings, are no changes that a programmer could make.
func tryAll(b *bench, all []mutant, n, workers int) ([]result, error) {
	var (
		mu      sync.Mutex
		next    int
		kept    []int // indexes of those that could be built
		results = make([]result, len(all))
		failed  error
		wg      sync.WaitGroup
	)
	take := func() (int, bool) {
		mu.Lock()
		defer mu.Unlock()
		if next == len(all) || len(kept) >= n || failed != nil {
			return 0, false
		}
		next++
		return next - 1, true
	}
	for range workers {
		wg.Go(func() {
			for {
				i, ok := take()
				if !ok {
					return
				}
				res, err := b.try(i, all[i])
				mu.Lock()
				results[i] = res
				switch {
				case err != nil:
					failed = errors.Join(failed, err)
				case res.fate != unbuilt:
					kept = append(kept, i)
					if res.fate == lived {
						fmt.Println("lived  ", res.mutant)
					}
				}
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	slices.Sort(kept)
	var out []result
	for _, i := range kept[:min(n, len(kept))] {
		out = append(out, results[i])
	}
	return out, failed
}

// report counts the mutants by kind, package and killer, and lists those that lived.
func report(results []result) {
	count := func(title string, key func(result) string) {
		type row struct {
			name          string
			killed, tried int
		}
		var rows []row
		for _, r := range results {
			i := slices.IndexFunc(rows, func(w row) bool { return w.name == key(r) })
			if i < 0 {
				i = len(rows)
				rows = append(rows, row{name: key(r)})
			}
			rows[i].tried++
			if r.fate != lived {
				rows[i].killed++
			}
		}
		slices.SortFunc(rows, func(a, b row) int { return strings.Compare(a.name, b.name) })
		fmt.Println()
		for _, w := range rows {
			fmt.Printf("%-12s %-26s %4d of %4d  %5.1f%%\n", title, w.name, w.killed, w.tried, percent(w.killed, w.tried))
		}
	}
	count("kind", func(r result) string { return r.kind })
	count("package", func(r result) string { return r.pkg() })
	count("seen by", func(r result) string {
		switch {
		case r.fate == lived:
			return "nobody"
		case r.fate == endless:
			return "the clock"
		case r.killer == r.pkg():
			return "its own package"
		}
		return r.killer
	})
	slices.SortFunc(results, func(a, b result) int {
		return cmp.Or(strings.Compare(a.file, b.file), cmp.Compare(a.line, b.line), cmp.Compare(a.column, b.column))
	})
	fmt.Println()
	for _, r := range results {
		if r.fate == lived {
			fmt.Println("survivor", r.mutant)
		}
	}
	fmt.Println()
}

func percent(part, whole int) float64 { return 100 * float64(part) / float64(max(whole, 1)) }
