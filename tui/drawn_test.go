package tui

import (
	"fmt"
	"testing"

	"boothset/calc/spread"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Whatever is pressed, what was drawn before is not shown for what is now.
func TestAFrameIsNeverStale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := open80x24(t)
		press(r, toSupply...)
		for range rapid.IntRange(1, 25).Draw(t, "presses") {
			if rapid.IntRange(0, 5).Draw(t, "resized") == 0 {
				r.Update(resize(rapid.SampledFrom(theSizes).Draw(t, "size")))
			}
			press(r, rapid.SampledFrom([]string{"left", "right", "up", "down", "enter", "esc", "u", "n", "1", "2", "3", "4", "5", "6", "7", "pgdown", "pgup", " "}).Draw(t, "key"))
			frame := r.View()
			r.bench.cache, r.bench.response = nil, response{}
			require.Equal(t, r.View(), frame)
		}
	})
}

// BenchmarkKeyToFrame is what a press takes, from the key to the frame, in a usual large window
// and in one with tiles: the wall is nudged there and back, all is worked out again, how sure it is
// too, and the view is drawn.
func BenchmarkKeyToFrame(b *testing.B) {
	for _, l := range []size{{120, 40}, largeWindow} {
		for _, glyphs := range []string{"blocks", "ascii"} {
			for i, v := range views {
				b.Run(fmt.Sprintf("%dx%d/%s/%s", l.w, l.h, v.id, glyphs), func(b *testing.B) {
					r := start(b, look{size: l, colour: true, ascii: glyphs == "ascii"})
					press(r, toAnswer...)
					r.s.sure = spread.Of // nothing is known beforehand
					r.bench.open(i, frameOf(r.bench, r.size).room)
					keys := [2]string{"right", "left"}
					before := r.View()
					press(r, keys[0])
					if r.View() == before {
						b.Fatal("nothing moved")
					}
					n := 1
					b.ReportAllocs()
					for b.Loop() {
						press(r, keys[n%2])
						n++
						if r.View() == "" {
							b.Fatal("no frame")
						}
					}
				})
			}
		}
	}
}
