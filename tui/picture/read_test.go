package picture

import (
	"encoding/xml"
	"io"
	"strconv"
	"strings"

	"github.com/stretchr/testify/require"
)

// mark is what is seen at a place of a picture.
type mark struct {
	char   rune
	fg, bg string
	bold   bool
}

var blank = mark{char: ' ', fg: "ink", bg: "paper"}

// trimmed is the rows without the blanks at their ends, and without the last empty rows.
func trimmed(rows [][]mark) [][]mark {
	out := make([][]mark, 0, len(rows))
	for _, row := range rows {
		for len(row) > 0 && row[len(row)-1] == blank {
			row = row[:len(row)-1]
		}
		out = append(out, append([]mark{}, row...))
	}
	for len(out) > 0 && len(out[len(out)-1]) == 0 {
		out = out[:len(out)-1]
	}
	return out
}

// dot is one unit of the picture: what fills it, and how much of that shows.
type dot struct{ class, shade string }

// edges tells a shape by its dots: how many in all, and how many along the top, the right,
// the bottom and the left of its cell.
type edges [5]int

var byEdges = map[edges]rune{
	{81, 9, 9, 0, 9}: '▀', {81, 0, 9, 9, 9}: '▄', {72, 4, 0, 4, 18}: '▌', {90, 5, 18, 5, 0}: '▐',
	{9, 0, 1, 0, 1}: '─', {18, 1, 0, 1, 0}: '│',
	{13, 0, 1, 1, 0}: '┌', {13, 0, 0, 1, 1}: '┐', {14, 1, 1, 0, 0}: '└', {14, 1, 0, 0, 1}: '┘',
	{22, 1, 1, 1, 0}: '├', {22, 1, 0, 1, 1}: '┤', {17, 0, 1, 1, 1}: '┬', {18, 1, 1, 0, 1}: '┴', {26, 1, 1, 1, 1}: '┼',
}

// byShade tells the shapes that fill their cell.
var byShade = map[string]rune{"": '█', "0.25": '░', "0.5": '▒', "0.75": '▓'}

type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// number is an attribute that is a whole number.
func (e element) number(t require.TestingT, name string) int {
	n, err := strconv.Atoi(e.attr(name))
	require.NoError(t, err, "%s of %s", name, e.XMLName.Local)
	return n
}

// read sees a picture as a person does: rectangles painted one on the other, text in its
// place.
func read(t require.TestingT, svg string) [][]mark {
	var root element
	d := xml.NewDecoder(strings.NewReader(svg))
	require.NoError(t, d.Decode(&root))
	_, err := d.Token()
	for err == nil {
		_, err = d.Token()
	}
	require.Equal(t, io.EOF, err)
	require.Equal(t, "A title", root.Children[0].Text)
	require.Equal(t, "What is seen.", root.Children[1].Text)

	wide, high := root.number(t, "width")-2*margin, root.number(t, "height")-2*margin
	require.Zero(t, wide%9)
	require.Zero(t, high%18)
	dots := make([][]dot, high)
	for y := range dots {
		dots[y] = make([]dot, wide)
	}
	rows := make([][]mark, high/18)
	for y := range rows {
		rows[y] = make([]mark, wide/9)
	}
	for _, e := range root.Children[len(root.Children)-1].Children {
		x, y, class := e.number(t, "x"), e.number(t, "y"), e.attr("class")
		if e.XMLName.Local == "rect" {
			for v := range e.number(t, "height") {
				for u := range e.number(t, "width") {
					dots[y+v][x+u] = dot{class, e.attr("fill-opacity")}
				}
			}
			continue
		}
		require.Equal(t, "text", e.XMLName.Local)
		require.Zero(t, x%9)
		require.Equal(t, 14, y%18, "the baseline")
		chars := []rune(e.Text)
		require.Equal(t, 9*len(chars), e.number(t, "textLength"))
		fg, bold := strings.CutSuffix(class, " b")
		for i, c := range chars {
			at := &rows[y/18][x/9+i]
			require.Zero(t, at.char, "no text lies on other text")
			if c != ' ' {
				*at = mark{char: c, fg: fg, bold: bold}
			}
		}
	}
	for y, row := range rows {
		for x := range row {
			row[x].see(t, dots[y*18:y*18+18], x*9)
		}
	}
	return rows
}

// see adds what the dots of a cell show to the text in it.
func (m *mark) see(t require.TestingT, rows [][]dot, x int) {
	var e edges
	var first dot
	for v, row := range rows {
		for u, d := range row[x : x+9] {
			if d == (dot{}) {
				continue
			}
			if e[0] == 0 {
				first = d
			}
			if m.char == 0 {
				require.Equal(t, first, d, "a shape is of one colour")
			}
			for i, on := range []bool{true, v == 0, u == 8, v == 17, u == 0} {
				if on {
					e[i]++
				}
			}
		}
	}
	switch {
	case m.char != 0: // a line under it may be there too
		m.bg = "paper"
		if e[0] > 9 {
			require.Equal(t, 162, e[0], "the ground of a character fills its cell")
			m.bg = first.class
		}
	case e[0] == 0:
		*m = blank
	case e[0] == 162:
		*m = mark{char: byShade[first.shade], fg: first.class, bg: "paper"}
	default:
		require.Empty(t, first.shade)
		require.Contains(t, byEdges, e)
		*m = mark{char: byEdges[e], fg: first.class, bg: "paper"}
	}
}
