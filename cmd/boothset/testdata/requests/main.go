// Requests asks two builds of boothset the same requests and says where their answers
// differ.
//
//	requests -old PROGRAM -new PROGRAM [-seed 1] [-n 10000] [-flags 300] [-commands plan,day]
//
// It makes n requests to each of the commands plan, day, thin, film and mix, from a seed: most
// of them sensible, many at bounds, in every spelling of units, about 15 % with one fault. It
// gives them to both programs by --batch, and a sample through flags. Answers are compared as
// JSON, numbers by their text. What -ignore lists is left out: paths such as wall.low or
// reasons.gun-start.text, where "*" is any name, for the requests with one kind of fault alone
// as unknown-name:error.want; the exit code is "exit", and what a run by flags says on standard
// error "stderr". It exits 1 on a difference or a crash.
//
// With -panics the answers are not compared: of the programs given, crashes alone are told.
// With -print the requests are written and no program is run.
//
// It imports nothing of the project, so that it judges any build from outside, and it is not
// to be changed while a change is judged by it: the hash of the requests shows that they are the
// same.
package main

import (
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// spreadPaths is what a spread adds to a plan's answer.
const spreadPaths = "spread,wall.low,wall.high,wall.static_low,wall.static_high,distance.spread_low,distance.spread_high,valve.low,valve.high"

// options is what the flags say.
type options struct {
	old, new      string
	seed          uint64
	n, byFlags    int
	commands      string
	ignored       ignored
	most          int
	panics, print bool
}

func main() {
	var o options
	flag.StringVar(&o.old, "old", "", "the `program` before the change")
	flag.StringVar(&o.new, "new", "", "the `program` after it")
	flag.Uint64Var(&o.seed, "seed", 1, "seed of the requests")
	flag.IntVar(&o.n, "n", 10000, "requests to each command")
	flag.IntVar(&o.byFlags, "flags", 300, "how many of them are given through flags too")
	flag.StringVar(&o.commands, "commands", "", "commands to ask, with commas between; all where left out")
	ignore := flag.String("ignore", spreadPaths, "JSON `paths` that may differ, each for all requests or as KIND:PATH for those with a fault of that kind")
	flag.IntVar(&o.most, "show", 20, "differences that are shown of a command")
	flag.BoolVar(&o.panics, "panics", false, "tell crashes alone, of either program or of both")
	flag.BoolVar(&o.print, "print", false, "write the requests")
	flag.Parse()
	o.ignored = readIgnored(*ignore)
	same, err := o.judge()
	if err != nil {
		fmt.Fprintln(os.Stderr, "requests:", err)
		os.Exit(2)
	}
	if !same {
		os.Exit(1)
	}
}

// judge does what the options say; same is false where anything differs or crashes.
func (o *options) judge() (same bool, err error) {
	wanted := strings.Split(o.commands, ",")
	for _, name := range wanted {
		if name != "" && !slices.ContainsFunc(commands, func(c command) bool { return c.name == name }) {
			return false, fmt.Errorf("no command %q", name)
		}
	}
	if o.n < 1 || o.byFlags < 0 {
		return false, errors.New("-n is 1 or more, -flags 0 or more")
	}
	home, err := os.MkdirTemp("", "requests")
	if err != nil {
		return false, err
	}
	defer os.RemoveAll(home)
	programs, err := o.programs(home)
	if err != nil {
		return false, err
	}
	same = true
	start := time.Now()
	for i, c := range commands {
		if o.commands != "" && !slices.Contains(wanted, c.name) {
			continue
		}
		all := make([]*request, o.n)
		for number := range all {
			all[number] = makeRequest(o.seed, i, number, o.n)
		}
		if o.print {
			for _, r := range all {
				fmt.Println(r.number, r.run, r.fault, r.line())
			}
			continue
		}
		fmt.Printf("%-5s seed %d, requests %x\n", c.name, o.seed, sha256.Sum256([]byte(lines(all))))
		for _, t := range []func([]*program, []*request) (*tally, error){o.allByBatch, o.allByFlags} {
			came, err := t(programs, all)
			if err != nil {
				return false, err
			}
			came.print(os.Stdout, c.name, o.most)
			same = same && came.differ == 0
		}
	}
	if !o.print {
		fmt.Printf("took %s\n", time.Since(start).Round(time.Second))
	}
	return same, nil
}

// programs is the programs that are asked: the old and the new one, or with -panics what is
// given of them.
func (o *options) programs(home string) (all []*program, err error) {
	for _, p := range []*program{{name: oldName, path: o.old}, {name: newName, path: o.new}} {
		if p.path == "" {
			continue
		}
		if p.path, err = filepath.Abs(p.path); err != nil {
			return nil, err
		}
		if _, err := os.Stat(p.path); err != nil {
			return nil, err
		}
		p.home = home
		all = append(all, p)
	}
	if !o.print && (len(all) == 0 || len(all) < 2 && !o.panics) {
		return nil, errors.New("give -old and -new")
	}
	return all, nil
}
