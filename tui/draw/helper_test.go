package draw_test

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var sets = map[string]draw.Glyphs{"blocks": draw.Blocks, "ascii": draw.ASCII}

// allGlyphs are the characters of a set.
func allGlyphs(g draw.Glyphs) string {
	var all strings.Builder
	v := reflect.ValueOf(g)
	for i := range v.NumField() {
		if c := rune(v.Field(i).Int()); c != 0 {
			all.WriteRune(c)
		}
	}
	return all.String()
}

// picture is any of them.
type picture interface {
	Rows(w, h int, g draw.Glyphs, ink draw.Ink) []string
}

func whole(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func percent(v float64) string { return strconv.FormatFloat(100*v, 'f', 0, 64) + "%" }

// test is a test or a rapid one.
type test interface {
	require.TestingT
	Helper()
}

// requireRows holds what every picture keeps to, and returns its rows.
func requireRows(t test, p picture, w, h int, g draw.Glyphs) []string {
	t.Helper()
	rows := p.Rows(w, h, g, nil)
	require.LessOrEqual(t, len(rows), max(h, 0))
	for _, row := range rows {
		require.LessOrEqual(t, ansi.StringWidth(row), w, "%q", row)
		require.Equal(t, strings.TrimRight(row, " "), row, "no blanks behind")
	}
	inked := p.Rows(w, h, g, func(r draw.Role, s string) string { return fmt.Sprintf("\x1b[%dm%s\x1b[0m", 30+r%8, s) })
	require.Len(t, inked, len(rows))
	for i := range rows {
		require.Equal(t, rows[i], ansi.Strip(inked[i]), "colour adds nothing and takes nothing")
	}
	return rows
}

// anyNumber is any there is, and most often one a picture is made of.
func anyNumber() *rapid.Generator[float64] {
	return rapid.OneOf(
		rapid.Float64Range(-20, 150),
		rapid.Float64Range(-0.2, 1.2),
		rapid.SampledFrom([]float64{0, 1, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64}),
		rapid.Float64(),
	)
}

// anyText is any there is, with what is no single column wide among it.
func anyText() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "set 29", "válvula", "漢字", "e\u0301", "🇩🇪", "👩\u200d🚒", "1\ufe0f\u20e3", "a\nb\tc", "\x1b[31mx", "\xff\xfe", "한국", "\u200b", "°·█"}),
		rapid.String(),
	)
}

func anyScale(t *rapid.T) draw.Scale {
	if rapid.Bool().Draw(t, "made") {
		text := anyText().Draw(t, "tick")
		return draw.NewScale(anyNumber().Draw(t, "low"), anyNumber().Draw(t, "high"), rapid.IntRange(-1, 30).Draw(t, "most"), func(float64) string { return text })
	}
	s := draw.Scale{Low: anyNumber().Draw(t, "low"), High: anyNumber().Draw(t, "high")}
	for range rapid.IntRange(0, 12).Draw(t, "ticks") {
		s.Ticks = append(s.Ticks, draw.Tick{At: anyNumber().Draw(t, "at"), Text: anyText().Draw(t, "tick")})
	}
	return s
}

func anyMark(t *rapid.T) draw.Mark {
	return draw.Mark{At: anyNumber().Draw(t, "mark"), Text: anyText().Draw(t, "text")}
}

func anyBand(t *rapid.T) draw.Span {
	return draw.Span{Low: anyNumber().Draw(t, "from"), High: anyNumber().Draw(t, "to"), Text: anyText().Draw(t, "text")}
}

func anyDay(t *rapid.T) draw.DayPoint {
	return draw.DayPoint{Temperature: anyNumber().Draw(t, "temperature"), Humidity: anyNumber().Draw(t, "humidity"), Text: anyText().Draw(t, "text")}
}

// cells are the places of a picture's characters of a role, in its first h rows.
func cells(rows []string, role draw.Role, h int) (all [][2]int) {
	for y, row := range rows[:min(h, len(rows))] {
		for x, r := range []rune(row) {
			if r == letter(role) {
				all = append(all, [2]int{x, y})
			}
		}
	}
	return all
}

// letter stands for a role.
func letter(r draw.Role) rune { return 'A' + rune(r) }

// byRole makes each character that of its role.
func byRole(r draw.Role, text string) string {
	return strings.Map(func(c rune) rune {
		if c == ' ' {
			return c
		}
		return letter(r)
	}, text)
}

// two are values on a scale, the first not above the second.
func two(t *rapid.T, low, high float64) (a, b float64) {
	v := rapid.Float64Range(low, high)
	a, b = v.Draw(t, "a"), v.Draw(t, "b")
	return min(a, b), max(a, b)
}

// anySet is a set of glyphs.
func anySet(t *rapid.T) draw.Glyphs {
	return sets[rapid.SampledFrom([]string{"blocks", "ascii"}).Draw(t, "set")]
}
