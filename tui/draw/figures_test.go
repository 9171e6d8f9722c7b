package draw_test

import (
	"fmt"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func ExampleDigits() {
	fmt.Println(strings.Join(draw.Digits("29", 5, draw.Blocks), "\n"))
	// Output:
	// █████▄ ▄████▄
	//     ██ ██  ██
	// ▄████▀ ▀█████
	// ██         ██
	// ██████ █████▀
}

func TestDigitsAreARectangleOfTheRowsAskedFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9.,/ -]{1,9}`).Draw(t, "text")
		high := rapid.SampledFrom([]int{3, 5, 7, 9}).Draw(t, "rows")
		for _, g := range sets {
			rows := draw.Digits(text, high, g)
			require.Len(t, rows, high)
			for _, row := range rows {
				require.Equal(t, ansi.StringWidth(rows[0]), ansi.StringWidth(row))
			}
		}
	})
}

func TestLargerDigitsAreWider(t *testing.T) {
	for _, g := range sets {
		for _, c := range "0123456789.,-/" {
			last := 0
			for _, high := range []int{3, 5, 7, 9} {
				w := ansi.StringWidth(draw.Digits(string(c), high, g)[0])
				require.GreaterOrEqual(t, w, last, "%c", c)
				last = w
			}
		}
	}
}

func TestLargeDigitsDiffer(t *testing.T) {
	for name, g := range sets {
		for _, high := range []int{3, 5, 7, 9} {
			seen := map[string]rune{}
			for _, c := range "0123456789.,-/" {
				p := strings.Join(draw.Digits(string(c), high, g), "\n")
				require.Zero(t, seen[p], "%s: %c looks like %c", name, c, seen[p])
				seen[p] = c
			}
		}
	}
}

func TestANoughtIsAsRoundBelowAsAbove(t *testing.T) {
	for _, g := range sets {
		for _, high := range []int{5, 7, 9} {
			rows := draw.Digits("0", high, g)
			for y, row := range rows {
				require.Equal(t, ink(row), ink(rows[high-1-y]), "%d rows", high)
			}
		}
	}
}

// ink is how many cells of a row are not blank.
func ink(row string) int { return ansi.StringWidth(strings.ReplaceAll(row, " ", "")) }

func TestFitDigitsIsTheLargestThatFits(t *testing.T) {
	for _, g := range sets {
		require.Len(t, draw.FitDigits("31", 80, 24, g), 9)
		require.Len(t, draw.FitDigits("31", 80, 8, g), 7)
		require.Len(t, draw.FitDigits("31", 8, 24, g), 3)
		require.Equal(t, []string{"31"}, draw.FitDigits("31", 2, 2, g))
		require.Nil(t, draw.FitDigits("31", 1, 9, g))
		require.Nil(t, draw.FitDigits("31", 9, 0, g))
	}
	require.Equal(t, []string{"n/a"}, draw.FitDigits("n/a", 80, 24, draw.Blocks))
}
