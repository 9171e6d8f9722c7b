package main

import (
	"fmt"
	"runtime"
	"slices"
	"sync"
)

// The ways that requests are given.
const (
	byBatch = "by batch"
	byFlags = "by flags"
)

// perBatch is how many requests are given to a program at a time.
const perBatch = 500

// allByBatch gives requests to the programs by batches.
func (o *options) allByBatch(programs []*program, all []*request) (*tally, error) {
	runs := map[run][]*request{}
	for _, r := range all {
		runs[r.run] = append(runs[r.run], r)
	}
	var chunks [][]*request
	for _, of := range runs {
		chunks = slices.AppendSeq(chunks, slices.Chunk(of, perBatch))
	}
	return side(chunks, byBatch, func(chunk []*request, t *tally) error { return o.askBatch(programs, chunk, t) })
}

// allByFlags gives a sample of requests to the programs through flags.
func (o *options) allByFlags(programs []*program, all []*request) (*tally, error) {
	var sample []*request
	for _, r := range all {
		if o.byFlags > 0 && nth(r.number, len(all), o.byFlags, 7) {
			sample = append(sample, nextThroughFlags(all, r.number))
		}
	}
	chunks := slices.Collect(slices.Chunk(sample, 10))
	return side(chunks, byFlags, func(chunk []*request, t *tally) error {
		for _, r := range chunk {
			if err := o.askFlags(programs, r, t); err != nil {
				return err
			}
		}
		return nil
	})
}

// nextThroughFlags is the first request from a number on that flags can give.
func nextThroughFlags(all []*request, number int) *request {
	for !all[number].throughFlags() && number < len(all)-1 {
		number++
	}
	return all[number]
}

// side works chunks side by side and adds up what came of them.
func side(chunks [][]*request, way string, work func([]*request, *tally) error) (*tally, error) {
	sum := newTally(way)
	var failed error
	var locked sync.Mutex
	var wait sync.WaitGroup
	next := make(chan []*request)
	for range runtime.NumCPU() {
		wait.Go(func() {
			for chunk := range next {
				t := newTally(way)
				err := work(chunk, t)
				locked.Lock()
				if sum.add(t); failed == nil {
					failed = err
				}
				locked.Unlock()
			}
		})
	}
	for _, chunk := range chunks {
		next <- chunk
	}
	close(next)
	wait.Wait()
	return sum, failed
}

// askBatch gives one batch to the programs and compares.
func (o *options) askBatch(programs []*program, chunk []*request, t *tally) error {
	var answers [][]answer
	var exits []string
	for _, p := range programs {
		a, exit, err := p.batch(chunk)
		if err != nil {
			return err
		}
		answers, exits = append(answers, a), append(exits, exit)
	}
	for i, r := range chunk {
		var crashes []difference
		for j, p := range programs {
			if why := answers[j][i].crash; why != "" {
				crashes = append(crashes, crashOf(p, why))
			}
		}
		if len(crashes) > 0 {
			t.crash(r, crashes)
			continue
		}
		c := comparison{request: r, ignored: o.ignored}
		other := answers[0][i].line
		if !o.panics {
			other = answers[1][i].line
		}
		of, err := c.answers(answers[0][i].line, other)
		if err != nil {
			return fmt.Errorf("%s %s: %w", r.command, r.asLine(), err)
		}
		t.take(r, of, c.found)
	}
	if first := chunk[0]; !o.panics && !slices.Contains(exits, "") && exits[0] != exits[1] && !o.ignored.holds("exit", first) {
		t.found(first, []difference{{path: "exit", old: exits[0], new: exits[1]}})
	}
	return nil
}

// askFlags gives one request to the programs through flags and compares.
func (o *options) askFlags(programs []*program, r *request, t *tally) error {
	var ends []ended
	var crashes []difference
	for _, p := range programs {
		e := p.run("", r.arguments()...)
		if e.crash != "" {
			crashes = append(crashes, crashOf(p, e.crash))
		}
		ends = append(ends, e)
	}
	if len(crashes) > 0 {
		t.crash(r, crashes)
		return nil
	}
	c := comparison{request: r, ignored: o.ignored}
	other := ends[0]
	if !o.panics {
		other = ends[1]
	}
	of, err := c.runs(ends[0], other)
	if err != nil {
		return fmt.Errorf("%s: %w", r.asFlags(), err)
	}
	t.take(r, of, c.found)
	return nil
}
