package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"
)

// The names of the programs.
const (
	oldName = "old"
	newName = "new"
)

// program is a build of boothset, run with no shop's file and a locale of its own.
type program struct {
	name, path string
	home       string // an empty folder
}

// ended is how a run of a program came out.
type ended struct {
	out, err []byte
	exit     int
	crash    string // what it died of, empty where it did not
}

// longestRun is how long a program may take; one that takes longer counts as crashed.
const longestRun = 30 * time.Second

// run runs a program to its end.
func (p *program) run(input string, args ...string) ended {
	ctx, cancel := context.WithTimeout(context.Background(), longestRun)
	defer cancel()
	c := exec.CommandContext(ctx, p.path, args...)
	c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + p.home, "XDG_CONFIG_HOME=" + p.home, "XDG_STATE_HOME=" + p.home, "LANG=es_MX.UTF-8", "TERM=dumb"}
	var out, err bytes.Buffer
	c.Stdin, c.Stdout, c.Stderr = strings.NewReader(input), &out, &err
	failed := c.Run()
	e := ended{out: out.Bytes(), err: err.Bytes(), exit: c.ProcessState.ExitCode()}
	if e.crash = e.diedOf(failed); ctx.Err() != nil {
		e.crash = fmt.Sprintf("no end within %s", longestRun)
	}
	return e
}

// diedOf is what a run died of: Go's own panics exit like bad input does.
func (e *ended) diedOf(failed error) string {
	var left *exec.ExitError
	text := string(e.err)
	switch {
	case failed != nil && !errors.As(failed, &left):
		return failed.Error()
	case strings.Contains(text, "panic: ") && strings.Contains(text, "goroutine "), strings.HasPrefix(text, "fatal error: "), strings.HasPrefix(text, "runtime: "):
		line, _, _ := strings.Cut(text, "\n")
		return line
	case e.exit != 0 && e.exit != 2 && e.exit != 3:
		line, _, _ := strings.Cut(text, "\n")
		return strings.TrimSpace(fmt.Sprintf("exit code %d %s", e.exit, line))
	}
	return ""
}

// answer is what a program made of one request; crash is empty where it answered.
type answer struct {
	line  []byte
	crash string
}

// batch answers requests of one command and one run by a batch. Where the program crashes,
// the request that does it is looked for and the batch goes on with the next. exit is the
// exit code and what was written beside the answers, empty where it crashed.
func (p *program) batch(requests []*request) (answers []answer, exit string, err error) {
	crashed := false
	args := append([]string{requests[0].command, "--batch"}, requests[0].run.flags()...)
	for len(answers) < len(requests) {
		rest := requests[len(answers):]
		e := p.run(blank(len(answers))+lines(rest), args...)
		got := bytes.Split(e.out, []byte("\n"))
		got = got[:len(got)-1] // behind the last end of line is nothing, or an answer cut short
		if len(got) > len(rest) || e.crash == "" && len(got) < len(rest) {
			return nil, "", fmt.Errorf("%s %s: %d answers to %d requests", p.name, strings.Join(args, " "), len(got), len(rest))
		}
		for _, line := range got {
			answers = append(answers, answer{line: line})
		}
		if e.crash == "" {
			exit = strings.TrimSpace(fmt.Sprintf("exit code %d %s", e.exit, e.err))
			break
		}
		crashed = true
		answers = p.find(requests, answers, args, e.crash)
	}
	if crashed {
		return answers, "", nil
	}
	return answers, exit, nil
}

func lines(requests []*request) string {
	var b strings.Builder
	for _, r := range requests {
		b.WriteString(r.line())
		b.WriteByte('\n')
	}
	return b.String()
}

// blank is as many empty lines, which a batch counts and does not answer: the requests behind
// them keep the numbers of their lines.
func blank(n int) string { return strings.Repeat("\n", n) }

// find gives the requests that a crashed batch left unanswered one by one, up to the one
// that crashes alone. Where none does, the first of them stands for the batch, or the last
// request where all were answered.
func (p *program) find(requests []*request, answers []answer, args []string, crash string) []answer {
	first := min(len(answers), len(requests)-1)
	for _, r := range requests[len(answers):] {
		e := p.run(blank(len(answers))+r.line()+"\n", args...)
		line, _, whole := bytes.Cut(e.out, []byte("\n"))
		if e.crash == "" && whole {
			answers = append(answers, answer{line: line})
			continue
		}
		return append(answers, answer{crash: cmp.Or(e.crash, "no answer")})
	}
	answers[first] = answer{crash: crash + " (in a batch, not alone)"}
	return answers
}
