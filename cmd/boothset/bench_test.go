package main

import (
	"bytes"
	"io"
	"testing"
)

// BenchmarkBatch is one answer of a batch: a request line in, an answer line out.
func BenchmarkBatch(b *testing.B) {
	request := []byte(`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}` + "\n")
	lines := bytes.Repeat(request, 1000)
	b.ReportAllocs()
	b.ResetTimer()
	for done := 0; done < b.N; done += 1000 {
		n := min(1000, b.N-done)
		code := run([]string{"plan", "--batch"}, stdio{bytes.NewReader(lines[:n*len(request)]), io.Discard, io.Discard}, func(string) string { return "" })
		if code != exitAnswered {
			b.Fatal(code)
		}
	}
}
