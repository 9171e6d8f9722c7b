package print

import (
	"bytes"
	_ "embed"
	"html/template"
	"strconv"
	"strings"
	"sync"

	"boothset/presets/card"
)

// beside is the size of type of a page beside that of the same PDF: whoever reads it may have
// fonts that run wider.
const beside = 0.87

//go:embed page.html
var pageHTML string

// page is the template of a page, read when the first one is printed.
var page = sync.OnceValues(func() (*template.Template, error) {
	return template.New("page").Funcs(template.FuncMap{
		"points": points, "mm": millimetres, "grey": grey, "at": func(s card.Shape, i int) string { return millimetres(s.Points[0][i]) },
		"anchor": func(a card.Anchor) string { return [...]string{"start", "middle", "end"}[a] },
	}).Parse(pageHTML)
})

// HTML is a page as a document of its own: no script, no font, nothing that is fetched.
func (p *Page) HTML() ([]byte, error) {
	t, err := page()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = t.Execute(&b, map[string]any{
		"Lang": p.Words.Lang(), "Title": p.plain(p.Title), "Blocks": p.blocks(), "Paper": p.Paper, "Margin": millimetres(margin),
		"Wide": millimetres(p.Paper.Width - 2*margin), "Points": millimetres(p.size() * beside),
	})
	return b.Bytes(), err
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
func points(s card.Shape) string {
	var all []string
	for _, at := range s.Points {
		all = append(all, strconv.FormatFloat(at[0], 'f', 2, 64)+","+strconv.FormatFloat(at[1], 'f', 2, 64))
	}
	return strings.Join(all, " ")
}
