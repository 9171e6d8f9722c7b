package main

import (
	"bytes"
	"fmt"
	"io"
	"testing"

	"boothset/cmd/boothset/command"
)

// BenchmarkBatch is one answer of a batch: a request line in, an answer line out. On two cores
// two jobs take little more than half the time of one: compare them in one run.
func BenchmarkBatch(b *testing.B) {
	for _, jobs := range []int{1, 2} {
		b.Run(fmt.Sprintf("jobs=%d", jobs), func(b *testing.B) { benchmarkBatch(b, jobs) })
	}
}

func benchmarkBatch(b *testing.B, jobs int) {
	request := []byte(`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}` + "\n")
	const most = 10_000 // as many a batch, so that opening the catalogue does not count
	lines := bytes.Repeat(request, most)
	b.ReportAllocs()
	b.ResetTimer()
	for done := 0; done < b.N; done += most {
		n := min(most, b.N-done)
		code := run([]string{"plan", "--batch", "--jobs", fmt.Sprint(jobs)}, command.Stdio{In: bytes.NewReader(lines[:n*len(request)]), Out: io.Discard, Err: io.Discard}, noEnv)
		if code != command.ExitAnswered {
			b.Fatal(code)
		}
	}
}
