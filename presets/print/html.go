package print

import (
	"bytes"
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"boothset/presets/card"

	"golang.org/x/net/html"
)

// beside is the size of type of a page beside that of the same PDF: whoever reads it may have
// fonts that run wider.
const beside = 0.87

//go:embed page.css
var pageCSS string

// HTML is a page as a document of its own: no script, no font, nothing that is fetched.
func (p *Page) HTML() ([]byte, error) {
	var blocks []*html.Node
	for _, b := range p.blocks() {
		blocks = append(blocks, b.element())
		if len(b.Pictures) > 0 {
			blocks = append(blocks, drawings(b.Pictures))
		}
	}
	head := parent("head", nil,
		parent("meta", attributes{"charset": "utf-8"}), parent("meta", attributes{"name": "viewport", "content": "width=device-width"}),
		leaf("title", nil, p.plain(p.Title)), leaf("style", nil, p.style()+pageCSS))
	document := &html.Node{Type: html.DocumentNode}
	document.AppendChild(&html.Node{Type: html.DoctypeNode, Data: "html"})
	document.AppendChild(parent("html", attributes{"lang": p.Words.Lang()}, head, parent("body", nil, blocks...)))
	var b bytes.Buffer
	err := html.Render(&b, document)
	return b.Bytes(), err
}

// style is what goes by the paper and by how much stands on it.
func (p *Page) style() string {
	return fmt.Sprintf("@page { size: %s; margin: %smm; }\n:root { --margin: %[2]smm; --wide: %smm; --type: %spt; }\n",
		p.Paper.Name, millimetres(margin), millimetres(p.Paper.Width-2*margin), millimetres(p.size()*beside))
}

type attributes map[string]string

// parent is an element with others in it, each on a line of its own, so that words stay apart
// wherever the page is read as text.
func parent(name string, of attributes, children ...*html.Node) *html.Node {
	n := &html.Node{Type: html.ElementNode, Data: name}
	for _, key := range slices.Sorted(maps.Keys(of)) {
		n.Attr = append(n.Attr, html.Attribute{Key: key, Val: of[key]})
	}
	for _, c := range children {
		n.AppendChild(c)
		n.AppendChild(&html.Node{Type: html.TextNode, Data: "\n"})
	}
	return n
}

// leaf is an element with text in it.
func leaf(name string, of attributes, text string) *html.Node {
	n := parent(name, of)
	n.AppendChild(&html.Node{Type: html.TextNode, Data: text})
	return n
}

// element is a block as HTML.
func (b *block) element() *html.Node {
	var rows []*html.Node
	for i := range b.Items {
		it := &b.Items[i]
		switch {
		case b.Kind == textKind:
			rows = append(rows, it.line())
		case b.Kind == tableKind:
			rows = append(rows, it.part())
		case it.Name != "":
			rows = append(rows, it.value())
		}
	}
	if b.Kind == textKind {
		return parent("div", attributes{"class": "block"}, rows...)
	}
	return parent("table", attributes{"class": "block " + string(b.Kind)}, rows...)
}

// line is an item of text behind its mark.
func (it *item) line() *html.Node {
	class := "row"
	if it.Strong {
		class += " strong"
	}
	if it.Large {
		class += " large"
	}
	text := leaf("span", nil, it.Text)
	if it.Mark == "" {
		return parent("div", attributes{"class": class}, text)
	}
	return parent("div", attributes{"class": class}, leaf("span", nil, it.Mark), text)
}

// part is an item of a table.
func (it *item) part() *html.Node {
	var cells []*html.Node
	for _, c := range it.Cells {
		cells = append(cells, leaf("td", nil, c))
	}
	if it.Strong {
		return parent("tr", attributes{"class": "strong"}, cells...)
	}
	return parent("tr", nil, cells...)
}

// value is an item with a name.
func (it *item) value() *html.Node {
	name := leaf("th", nil, it.Name)
	if it.More == "" {
		return parent("tr", nil, name, leaf("td", attributes{"class": "text", "colspan": "2"}, it.Text))
	}
	return parent("tr", nil, name, leaf("td", attributes{"class": "text"}, it.Text), leaf("td", nil, it.More))
}

// drawings is pictures beside each other; what they say stands in the rows too.
func drawings(all []card.Picture) *html.Node {
	var drawn []*html.Node
	for _, x := range all {
		var shapes []*html.Node
		for i := range x.Shapes {
			shapes = append(shapes, shape(&x.Shapes[i]))
		}
		w, h := millimetres(x.Width), millimetres(x.Height)
		drawn = append(drawn, parent("svg", attributes{"width": w + "mm", "height": h + "mm", "viewBox": "0 0 " + w + " " + h}, shapes...))
	}
	return parent("div", attributes{"class": "pictures", "aria-hidden": "true"}, drawn...)
}

func shape(s *card.Shape) *html.Node {
	switch {
	case s.Text != "":
		anchor := [...]string{"start", "middle", "end"}[s.Anchor]
		return leaf("text", attributes{"x": millimetres(s.Points[0][0]), "y": millimetres(s.Points[0][1]), "font-size": millimetres(s.Size), "text-anchor": anchor}, s.Text)
	case s.Fill:
		return parent("polygon", attributes{"points": points(s), "fill": grey(s.Grey)})
	}
	return parent("polyline", attributes{"points": points(s), "fill": "none", "stroke": grey(s.Grey), "stroke-width": millimetres(s.Stroke)})
}

func millimetres(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// grey is a shade as a colour.
func grey(v float64) string {
	hex := strconv.FormatUint(uint64(v*255), 16)
	if len(hex) < 2 {
		hex = "0" + hex
	}
	return "#" + hex + hex + hex
}

// points is the points of a line, to hundredths of a millimetre.
func points(s *card.Shape) string {
	var all []string
	for _, at := range s.Points {
		all = append(all, strconv.FormatFloat(at[0], 'f', 2, 64)+","+strconv.FormatFloat(at[1], 'f', 2, 64))
	}
	return strings.Join(all, " ")
}
