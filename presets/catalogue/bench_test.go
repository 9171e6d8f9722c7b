package catalogue_test

import (
	"fmt"
	"strings"
	"testing"

	"boothset/presets/catalogue"
)

// A shop's file takes time in proportion to its entries: the time an entry is about the same
// for few and for many.
func BenchmarkShopOf(b *testing.B) {
	for _, n := range []int{1000, 16_000} {
		var file strings.Builder
		for i := range n {
			fmt.Fprintf(&file, "[coat.c%d]\nlike = \"clear\"\n", i)
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				if _, err := catalogue.Load([]byte(file.String()), "shop.toml"); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*n), "ns/entry")
		})
	}
}
