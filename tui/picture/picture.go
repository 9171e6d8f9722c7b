// Package picture turns a frame of the screen into a picture for a page: an SVG that
// follows the page's light or dark scheme, keeps the grid whatever the font, and says
// what is seen to those who do not see it. The same frame gives the same bytes.
//
//	svg, err := picture.SVG(frame, picture.Text{Title: "The answer", Desc: "Three numbers: ..."})
package picture

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text stands in place of the picture: what it is, and what it shows.
type Text struct{ Title, Desc string }

// margin is the room between the frame and the picture's edge.
const margin = 14

// escape is for text between tags.
var escape = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;")

// SVG draws a frame: rows of characters one column wide, coloured by the SGR sequences of
// the sixteen colours, bold, reverse and underline. Anything else in it is an error, and
// so are text that its colours make unreadable and a control character in the text.
func SVG(frame string, t Text) (string, error) {
	for _, c := range t.Title + t.Desc {
		if c != '\n' && unicode.IsControl(c) || c == utf8.RuneError {
			return "", fmt.Errorf("%q cannot be told", c)
		}
	}
	rows, err := cells(frame)
	if err != nil {
		return "", err
	}
	wide := 0
	var behind, drawn []box
	var written strings.Builder
	for y, row := range rows {
		wide = max(wide, len(row))
		for x, c := range row {
			fg, bg := c.inks()
			if err := readable(fg, bg); err != nil {
				return "", fmt.Errorf("row %d, column %d: %w", y+1, x+1, err)
			}
			if bg != paper {
				behind = append(behind, shapes['█'][0].at(x, y, bg))
			}
			for _, b := range shapeOf(c.char) {
				drawn = append(drawn, b.at(x, y, fg))
			}
			if c.underline {
				drawn = append(drawn, box{y: underY, w: cellWide, h: 1, shade: solid}.at(x, y, fg))
			}
		}
		writeRow(&written, row, y)
	}
	w, h := wide*cellWide+2*margin, len(rows)*cellHigh+2*margin
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" role="img" aria-labelledby="title desc">`+"\n", w, h, w, h)
	fmt.Fprintf(&b, "<title id=\"title\">%s</title>\n<desc id=\"desc\">%s</desc>\n", escape.Replace(t.Title), escape.Replace(t.Desc))
	fmt.Fprintf(&b, "<style>\ntext{font:%dpx ui-monospace,Menlo,Consolas,'DejaVu Sans Mono',monospace}\n.b{font-weight:bold}\n%s@media (prefers-color-scheme: dark){\n%s}\n</style>\n", fontSize, light.rules(), dark.rules())
	fmt.Fprintf(&b, `<rect class="ink" fill-opacity=".3" width="%d" height="%d" rx="6"/>`+"\n", w, h)
	fmt.Fprintf(&b, `<rect class="paper" x="1" y="1" width="%d" height="%d" rx="5"/>`+"\n", w-2, h-2)
	fmt.Fprintf(&b, `<g transform="translate(%d %d)" shape-rendering="crispEdges" xml:space="preserve">`+"\n", margin, margin)
	for _, r := range append(joined(behind), joined(drawn)...) {
		b.WriteString(r.svg())
	}
	b.WriteString(written.String() + "</g>\n</svg>\n")
	return b.String(), nil
}

func (b box) svg() string {
	shade := ""
	if b.shade != solid {
		shade = fmt.Sprintf(` fill-opacity="%g"`, float64(b.shade)/solid)
	}
	return fmt.Sprintf(`<rect class="%s" x="%d" y="%d" width="%d" height="%d"%s/>`+"\n", b.class(), b.x, b.y, b.w, b.h, shade)
}

// writeRow writes the text of a row: a piece for each run of one style, so that none can
// push the next off its columns. A run ends at two spaces too.
func writeRow(b *strings.Builder, row []cell, y int) {
	for x := 0; x < len(row); x++ {
		if !row[x].isText() {
			continue
		}
		end := x + 1
		for i := end; i < len(row) && i <= end+1 && row[i].pen == row[x].pen; i++ {
			if row[i].isText() {
				end = i + 1
			} else if row[i].char != ' ' {
				break
			}
		}
		var text strings.Builder
		for _, c := range row[x:end] {
			text.WriteRune(c.char)
		}
		fg, _ := row[x].inks()
		class := fg.class()
		if row[x].bold {
			class += " b"
		}
		fmt.Fprintf(b, `<text class="%s" x="%d" y="%d" textLength="%d" lengthAdjust="spacingAndGlyphs">%s</text>`+"\n",
			class, x*cellWide, y*cellHigh+baseline, (end-x)*cellWide, escape.Replace(text.String()))
		x = end - 1
	}
}

// isText reports whether a character is written: not blank and not drawn.
func (c cell) isText() bool { return c.char != ' ' && shapeOf(c.char) == nil }
