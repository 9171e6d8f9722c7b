package draw_test

import (
	"testing"

	"boothset/tui/draw"
)

func BenchmarkPictures(b *testing.B) {
	for name, p := range map[string]picture{
		"dial": dial(29), "fall": fall(), "bore": bore(0.81, 0.22), "ruler": ruler(5.5), "climate": climate(75, 45), "ranges": ranges(31),
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p.Rows(116, 30, draw.Blocks, nil)
			}
		})
	}
}
