package draw_test

import (
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

func TestNumberIsARectangleOfKnownHeight(t *testing.T) {
	heights := map[string]map[draw.Size]int{
		"blocks": {draw.Plain: 1, draw.Small: 3, draw.Medium: 5, draw.Large: 5},
		"ascii":  {draw.Plain: 1, draw.Small: 5, draw.Medium: 5, draw.Large: 5},
	}
	for name, g := range sets {
		for size, high := range heights[name] {
			for _, text := range []string{"0", "29", "5.5", "-12.75", "1 3/8", "1234567890"} {
				rows := draw.Number(text, size, g)
				require.Len(t, rows, high, "%s %d %s", name, size, text)
				for _, row := range rows {
					require.Equal(t, ansi.StringWidth(rows[0]), ansi.StringWidth(row))
				}
			}
		}
	}
}

func TestDigitsDiffer(t *testing.T) {
	for name, g := range sets {
		for _, size := range []draw.Size{draw.Small, draw.Medium, draw.Large} {
			seen := map[string]rune{}
			for _, c := range "0123456789.-/" {
				picture := strings.Join(draw.Number(string(c), size, g), "\n")
				require.Zero(t, seen[picture], "%s: %c looks like %c", name, c, seen[picture])
				seen[picture] = c
			}
		}
	}
}

func TestNumberInSmallBlocks(t *testing.T) {
	require.Equal(t, []string{
		"█▀▀   █▀▀",
		"▀▀█   ▀▀█",
		"▀▀▀ ▀ ▀▀▀",
	}, draw.Number("5.5", draw.Small, draw.Blocks))
}

func TestNumberInLargeASCII(t *testing.T) {
	require.Equal(t, []string{
		"###### ######",
		"    ## ##  ##",
		"###### ######",
		"##         ##",
		"###### ######",
	}, draw.Number("29", draw.Large, draw.ASCII))
}

func TestNumberInMediumASCII(t *testing.T) {
	require.Equal(t, []string{
		" ##   ##### #####",
		"###   ##       ##",
		" ##   #####  ##  ",
		" ##      ##  ##  ",
		"##### #####  ##  ",
	}, draw.Number("157", draw.Medium, draw.ASCII))
}

func TestWhatIsNoNumberStaysText(t *testing.T) {
	require.Equal(t, []string{"n/a"}, draw.Number("n/a", draw.Large, draw.Blocks))
}
