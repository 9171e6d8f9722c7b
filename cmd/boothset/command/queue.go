package command

import (
	"bufio"
	"bytes"
	"io"
)

// queued is a line of a batch, with its answer once answered says so. A blank one has none.
type queued struct {
	n        int // from 1
	text     []byte
	answer   []byte
	code     int
	err      error // of reading it
	answered chan struct{}
}

// queue is the lines of a batch on their way through their workers, in their order. They are as
// many as are in hand at once, and are used again: the memory does not grow with the input.
type queue struct {
	free, work, order chan *queued // order has room for one more, which says what broke the input
	over              chan struct{}
}

const (
	// ahead is how many lines are in hand for each worker: enough that none waits for another's
	// long one.
	ahead = 16
	// keptRoom is the largest line, or answer, whose room is kept for others.
	keptRoom = 1 << 17
)

// answerAll reads lines and has them answered by so many workers.
func (b *batch) answerAll(in io.Reader, workers int) *queue {
	room := ahead * workers
	q := &queue{make(chan *queued, room), make(chan *queued, room), make(chan *queued, room+1), make(chan struct{})}
	for range room {
		q.free <- &queued{answered: make(chan struct{}, 1)}
	}
	for range workers {
		go func() {
			for x := range q.work {
				x.answer, x.code = b.appendLine(x.answer[:0], x.text, x.n, true)
				x.answered <- struct{}{}
			}
		}()
	}
	go b.read(in, q)
	return q
}

// read hands out the lines of an input. Until one is answered, which says the general caution
// for all, they are answered here, one by one.
func (b *batch) read(in io.Reader, q *queue) {
	defer close(q.order)
	defer close(q.work)
	from := bufio.NewReaderSize(in, 1<<16)
	said := false
	for n := 1; ; n++ {
		var x *queued
		select {
		case x = <-q.free:
		case <-q.over:
			return
		}
		x.n, x.err = n, nil
		var err error
		x.text, err = readLine(from, x.text[:0])
		if n == 1 {
			x.text = bytes.TrimPrefix(x.text, []byte("\ufeff")) // some shells put a byte order mark first
		}
		switch {
		case len(bytes.TrimSpace(x.text)) == 0:
			x.answer, x.code = x.answer[:0], ExitAnswered
			x.answered <- struct{}{}
		case !said:
			x.answer, x.code = b.appendLine(x.answer[:0], x.text, n, false)
			said = x.code != ExitBadInput
			x.answered <- struct{}{}
		default:
			q.work <- x
		}
		q.order <- x
		switch {
		case err == io.EOF:
			return
		case err != nil:
			q.order <- &queued{n: n, err: err}
			return
		}
	}
}

// next is the next line in the order of the input, answered; nil after the last. Where it has
// to be waited for because none is in hand, what was answered before leaves first.
func (q *queue) next(out *bufio.Writer) *queued {
	var x *queued
	select {
	case x = <-q.order:
	default:
		_ = out.Flush() // were it to fail the next write would too
		x = <-q.order
	}
	if x != nil && x.err == nil {
		<-x.answered
	}
	return x
}

// again gives a line back for another.
func (q *queue) again(x *queued) {
	if cap(x.text) > keptRoom {
		x.text = nil
	}
	if cap(x.answer) > keptRoom {
		x.answer = nil
	}
	q.free <- x
}

// leave ends the reading, for who wants no more answers.
func (q *queue) leave() { close(q.over) }
