package command

import (
	"bufio"
	"bytes"
	"io"
	"slices"
)

// block is lines of a batch that are handed out together, with their answers once answered
// says so. Blank lines have none.
type block struct {
	first, last int // of its lines, from 1
	text        []byte
	answers     []byte
	code        int   // the worst of them
	err         error // that broke the input off, behind its lines
	answered    chan struct{}
}

// lineAnswer appends the answer to a line of a number, with its end, and gives its exit code.
// said is that the general caution was said before. Several lines are answered at once.
type lineAnswer func(dst, text []byte, n int, said bool) ([]byte, int)

// queue is the lines of a batch on their way through their workers, in their order. Its blocks
// are as many as are in hand at once, and are used again: the memory does not grow with the
// input.
type queue struct {
	together          int // lines that are handed out together
	answerLine        lineAnswer
	free, work, order chan *block
	over              chan struct{}
}

const (
	// manyLines is the most lines of a question that are handed out together, so that handing out
	// is little beside answering; fewer are where no more are there to read. What takes longer is
	// handed out one by one.
	manyLines, oneLine = 8, 1
	// ahead is how many blocks are in hand for each worker: some 5 ms of work, so that none waits
	// for one that the system keeps waiting.
	ahead = 8
	// longText is the most bytes that are handed out together, many times what requests take, and
	// longAnswers the room for answers that is kept for others.
	longText, longAnswers = 1 << 17, 1 << 19
)

// answerAll reads lines and has them answered by so many workers.
func answerAll(in io.Reader, workers, together int, answer lineAnswer) *queue {
	room := ahead * workers
	q := &queue{together, answer, make(chan *block, room), make(chan *block, room), make(chan *block, room), make(chan struct{})}
	for range room {
		q.free <- &block{answered: make(chan struct{}, 1)}
	}
	for range workers {
		go func() {
			for x := range q.work {
				q.answer(x, true)
			}
		}()
	}
	go q.read(in)
	return q
}

// answer answers the lines of a block. said is that the general caution was said before, and
// after it.
func (q *queue) answer(x *block, said bool) bool {
	x.answers, x.code = x.answers[:0], ExitAnswered
	n := x.first
	for text := range bytes.Lines(x.text) {
		if len(bytes.TrimSpace(text)) > 0 {
			var code int
			x.answers, code = q.answerLine(x.answers, text, n, said)
			x.code = worse(x.code, code)
			said = said || code != ExitBadInput
		}
		n++
	}
	x.answered <- struct{}{}
	return said
}

// worse is the exit code that weighs more: of what failed, then of input that will not do, then
// of a job that cannot be done.
func worse(a, b int) int {
	weight := func(code int) int {
		return slices.Index([]int{ExitAnswered, ExitCannot, ExitBadInput, ExitFailed}, code)
	}
	if weight(b) > weight(a) {
		return b
	}
	return a
}

// read hands out the lines of an input. Until one is answered, which says the general caution
// for all, they are answered here, and so are very long ones, of which not many may be in hand.
func (q *queue) read(in io.Reader) {
	defer close(q.order)
	defer close(q.work)
	from := bufio.NewReaderSize(in, 1<<16)
	said := false
	for n := 0; ; {
		var x *block
		select {
		case x = <-q.free:
		case <-q.over:
			return
		}
		x.first, x.text, x.err = n+1, x.text[:0], nil
		for x.err == nil {
			x.text, x.err = readLine(from, x.text)
			if n++; n == 1 {
				x.text = bytes.TrimPrefix(x.text, []byte("\ufeff")) // some shells put a byte order mark first
			}
			if n-x.first+1 == q.together || len(x.text) > longText || !lineThere(from) {
				break
			}
		}
		x.last = n
		ended := x.err != nil
		if !said || len(x.text) > longText {
			said, x.text = q.answer(x, said), nil
		} else {
			q.work <- x
		}
		q.order <- x
		if ended {
			return
		}
	}
}

// lineThere reports whether a whole line can be read without waiting for it.
func lineThere(in *bufio.Reader) bool {
	there, _ := in.Peek(in.Buffered())
	return bytes.IndexByte(there, '\n') >= 0
}

// next is the next block in the order of the input, answered; nil after the last. Where it has
// to be waited for because none is in hand, what was answered before leaves first.
func (q *queue) next(out *bufio.Writer) *block {
	var x *block
	select {
	case x = <-q.order:
	default:
		_ = out.Flush() // were it to fail the next write would too
		x = <-q.order
	}
	if x != nil {
		<-x.answered
	}
	return x
}

// again gives a block back for others.
func (q *queue) again(x *block) {
	if cap(x.answers) > longAnswers {
		x.answers = nil
	}
	q.free <- x
}

// leave ends the reading, for who wants no more answers.
func (q *queue) leave() { close(q.over) }
