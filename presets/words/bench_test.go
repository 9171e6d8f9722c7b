package words_test

import (
	"testing"

	"boothset/presets/words"
)

// BenchmarkSay is what a frame pays for each of its sentences.
func BenchmarkSay(b *testing.B) {
	w := words.English()
	ids := w.IDs()
	b.ReportAllocs()
	for n := 0; b.Loop(); n++ {
		if w.Say(ids[n%len(ids)]) == "" {
			b.Fatal(ids[n%len(ids)])
		}
	}
}
