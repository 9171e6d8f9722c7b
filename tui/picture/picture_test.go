package picture

import (
	"strings"
	"testing"

	"boothset/tui/golden"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// small has every shape, style and escape there is.
const small = "\x1b[1mWall\x1b[0m  31 psi, 5 < 6 & 7 > 6\n" +
	"┌──┬──┐ \x1b[36m█▀▄▌▐\x1b[m\n" +
	"├──┼──┤ \x1b[1;7m set it \x1b[27m so\x1b[0m\n" +
	"│░▒│▓█│ \x1b[4;31mlow  air\x1b[24m dry\x1b[39m on\n" +
	"└──┴──┘ \x1b[1;93mbright\x1b[22;7m back\x1b[0m"

func TestSmallFrame(t *testing.T) {
	got, err := SVG(small, Text{"A & B", "1 < 2"})
	require.NoError(t, err)
	golden.Equal(t, "small.svg", got)
}

func TestContrastOfKnownColours(t *testing.T) {
	for _, c := range []struct {
		a, b rgb
		want float64
	}{
		{0x000000, 0xffffff, 21},
		{0xffffff, 0xffffff, 1},
		{0x767676, 0xffffff, 4.54}, // the lightest grey that passes on white, and the next
		{0x777777, 0xffffff, 4.48},
		{0xff0000, 0xffffff, 4.00}, // 1.05 / (0.2126 + 0.05)
		{0x00ff00, 0x000000, 15.30},
		{0x0000ff, 0x000000, 2.44},
	} {
		require.InDelta(t, c.want, contrast(c.a, c.b), 0.005, "%06x on %06x", c.a, c.b)
		require.Equal(t, contrast(c.a, c.b), contrast(c.b, c.a))
	}
}

func TestEveryColourIsReadableOnThePaper(t *testing.T) {
	for name, s := range map[string]scheme{"light": light, "dark": dark} {
		for p := range paper {
			require.GreaterOrEqual(t, contrast(s[p], s[paper]), leastContrast, "%s: %s", name, p.class())
		}
	}
	require.Greater(t, light[paper].luminance(), 0.9)
	require.Less(t, dark[paper].luminance(), 0.02)
}

// styles are SGR sequences with what they make of text: its class and what lies behind.
var styles = []struct {
	sgr, fg, bg string
	bold        bool
}{
	{"", "ink", "paper", false},
	{"1", "ink", "paper", true},
	{"4", "ink", "paper", false},
	{"7", "paper", "ink", false},
	{"31", "c1", "paper", false},
	{"1;32", "c2", "paper", true},
	{"95", "c13", "paper", false},
	{"33;7", "paper", "c3", false},
	{"96;7", "paper", "c14", false},
	{"41;104;35;49", "c5", "paper", false},
	{"1;7;36;22;27", "c6", "paper", false},
}

// What a frame says can be read back from its picture: each character in its place, in
// its colour.
func TestPictureSaysWhatTheFrameSays(t *testing.T) {
	chars := []rune("aZ09.,<>&%'\"-·é")
	blocks := []rune("█▀▄▌▐░▒▓─│┌┐└┘├┤┬┴┼")
	for _, c := range blocks {
		require.NotNil(t, shapeOf(c), "%c", c)
	}
	rapid.Check(t, func(t *rapid.T) {
		var frame strings.Builder
		var want [][]mark
		for y := range rapid.IntRange(1, 6).Draw(t, "rows") {
			if y > 0 {
				frame.WriteByte('\n')
			}
			var row []mark
			for range rapid.IntRange(0, 8).Draw(t, "pieces") {
				style := rapid.SampledFrom(styles).Draw(t, "style")
				set := chars
				switch rapid.IntRange(0, 2).Draw(t, "kind") {
				case 1: // without what would look like another character
					set = blocks
					style = rapid.SampledFrom(styles[4:7]).Draw(t, "colour")
				case 2:
					set, style = []rune{' '}, styles[0]
				}
				frame.WriteString("\x1b[" + style.sgr + "m")
				for _, c := range rapid.SliceOfN(rapid.SampledFrom(set), 1, 5).Draw(t, "text") {
					frame.WriteRune(c)
					m := mark{char: c, fg: style.fg, bg: style.bg}
					if c == ' ' {
						m = blank
					} else if shapeOf(c) == nil {
						m.bold = style.bold
					}
					row = append(row, m)
				}
				frame.WriteString("\x1b[0m")
			}
			want = append(want, row)
		}
		svg, err := SVG(frame.String(), Text{"A title", "What is seen."})
		require.NoError(t, err)
		require.Equal(t, trimmed(want), trimmed(read(t, svg)))
		again, err := SVG(frame.String(), Text{"A title", "What is seen."})
		require.NoError(t, err)
		require.Equal(t, svg, again)
	})
}

// Dots, quarters, eighths and heavy lines are told apart, and none leaves its cell.
func TestEveryFinePieceHasAShapeOfItsOwn(t *testing.T) {
	fine := []rune("━╸╺╾╼▁▂▃▅▆▇")
	for c := firstQuarter; c < firstQuarter+rune(len(quarters)); c++ {
		fine = append(fine, c)
	}
	for c := rune(firstBraille + 1); c <= lastBraille; c++ {
		fine = append(fine, c)
	}
	seen := map[[cellWide * cellHigh]bool]rune{}
	for _, c := range fine {
		var dots [cellWide * cellHigh]bool
		boxes := shapeOf(c)
		require.NotEmpty(t, boxes, "%c", c)
		for _, b := range boxes {
			require.True(t, b.x >= 0 && b.y >= 0 && b.x+b.w <= cellWide && b.y+b.h <= cellHigh && b.w > 0 && b.h > 0, "%c %v", c, b)
			for y := b.y; y < b.y+b.h; y++ {
				for x := b.x; x < b.x+b.w; x++ {
					dots[y*cellWide+x] = true
				}
			}
		}
		require.Zero(t, seen[dots], "%c is drawn as %c", c, seen[dots])
		seen[dots] = c
	}
}

func TestWhatAPictureCannotShowIsRefused(t *testing.T) {
	for frame, why := range map[string]string{
		"a\x1b[2Jb":         "neither",
		"a\tb":              "neither",
		"a\r\n":             "neither",
		"\x1b]0;title\x07":  "neither",
		"wide 界":            "neither",
		"e\u0301":           "neither",
		"\xff":              "neither",
		"\x1b[2mfaint":      "2 is not known",
		"\x1b[3mslanted":    "3 is not known",
		"\x1b[38;5;196m256": "38 is not known",
		"\x1b[4:3mcurly":    "sub-parameters",
		"ok\n\x1b[31;44m!":  "row 2, column 1: c1 on c4 has a contrast of 1.0 to 1",
		"\x1b[30;40mdark":   "c0 on c0 has a contrast of 1.0",
		"\x1b[92;101mred":   "c10 on c9",
	} {
		_, err := SVG(frame, Text{})
		require.ErrorContains(t, err, why, "%q", frame)
	}
}

func TestWhatCannotBeToldIsRefused(t *testing.T) {
	_, err := SVG("a", Text{Title: "two\nlines", Desc: "a\n\nb é"})
	require.NoError(t, err)
	for _, text := range []Text{{Title: "\x1b[1mbold"}, {Desc: "tab\t"}, {Desc: "\xff"}, {Desc: "\x00"}} {
		_, err := SVG("a", text)
		require.ErrorContains(t, err, "cannot be told", "%q", text)
	}
}

// A bar is one rectangle and a column of bars too, so that nothing shows between.
func TestPiecesAreJoined(t *testing.T) {
	svg, err := SVG("███\n███\n▀▀▀", Text{})
	require.NoError(t, err)
	require.Contains(t, svg, `<rect class="ink" x="0" y="0" width="27" height="45"/>`)
	require.Equal(t, 3, strings.Count(svg, "<rect"), "with the edge and the paper")
}
